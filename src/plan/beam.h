/*
 * Beams, as guidance and no engineering advice: how far a straight stick or a strip of plywood
 * bends under a load. Inches, pounds, pounds a square inch.
 *
 * Formula beam.bend: bend = kb W L^3 / (E I) + ks W L / (G A'), W the whole load, L the span; the
 * second term is shear. For a rectangle I = b h^3 / 12 and A' = 5 b h / 6. Source: Wood Handbook,
 * FPL GTR-190, equation 9-2 and table 9-1 (coefficients seen; A' from memory). G is taken as E / 16
 * (from memory: the handbook's usual ratio).
 *
 * Formula beam.carry: W = c f S / L with S = b h^2 / 6, c 8 for a load spread evenly and 4 for one
 * in the middle. Source: L. D. Berg, Safe Building, rectangular beams.
 */
#ifndef PLAN_BEAM_H
#define PLAN_BEAM_H

enum beam_load {
    BEAM_SPREAD,         /* evenly, ends free to turn */
    BEAM_SPREAD_CLAMPED, /* evenly, ends held */
    BEAM_MIDDLE,
    BEAM_MIDDLE_CLAMPED,
    BEAM_QUARTERS,    /* half each at both quarter points, bend in the middle */
    BEAM_QUARTERS_AT, /* the same, bend under a load */
    BEAM_CANTILEVER,  /* evenly, one end held */
    BEAM_END,         /* at its free end */
    BEAM_LOADS
};

struct beam_factors {
    double bending, shear; /* kb, ks */
};

struct beam {
    double span;
    double width, depth; /* across the load, and along it */
    double stiffness;    /* E */
};

struct beam_factors beam_factors(enum beam_load load);
double beam_inertia(const struct beam *beam);

/* How far it bends, by bending and by shear. */
struct beam_bend {
    double bending, shear;
};
struct beam_bend beam_bend(const struct beam *beam, enum beam_load load, double pounds);

/* The load that brings the outer fibre to a stress; of BEAM_SPREAD or BEAM_MIDDLE. */
double beam_carries(const struct beam *beam, enum beam_load load, double stress);

#endif
