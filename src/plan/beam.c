#include "plan/beam.h"

#include <assert.h>

#define STIFFNESS_OVER_SHEAR 16

static const struct beam_factors factors[BEAM_LOADS] = {
    [BEAM_SPREAD] = {5.0 / 384, 1.0 / 8},    [BEAM_SPREAD_CLAMPED] = {1.0 / 384, 1.0 / 8},
    [BEAM_MIDDLE] = {1.0 / 48, 1.0 / 4},     [BEAM_MIDDLE_CLAMPED] = {1.0 / 192, 1.0 / 4},
    [BEAM_QUARTERS] = {11.0 / 768, 1.0 / 8}, [BEAM_QUARTERS_AT] = {1.0 / 96, 1.0 / 8},
    [BEAM_CANTILEVER] = {1.0 / 8, 1.0 / 2},  [BEAM_END] = {1.0 / 3, 1.0},
};

struct beam_factors beam_factors(enum beam_load load)
{
    assert(load < BEAM_LOADS);

    return factors[load];
}

double beam_inertia(const struct beam *beam)
{
    return beam->width * beam->depth * beam->depth * beam->depth / 12;
}

struct beam_bend beam_bend(const struct beam *beam, enum beam_load load, double pounds)
{
    double area = 5 * beam->width * beam->depth / 6;
    double shear = beam->stiffness / STIFFNESS_OVER_SHEAR;

    return (struct beam_bend){
        .bending = factors[load].bending * pounds * beam->span * beam->span * beam->span /
                   (beam->stiffness * beam_inertia(beam)),
        .shear = factors[load].shear * pounds * beam->span / (shear * area),
    };
}

double beam_carries(const struct beam *beam, enum beam_load load, double stress)
{
    double modulus = beam->width * beam->depth * beam->depth / 6;

    assert(load == BEAM_SPREAD || load == BEAM_MIDDLE);
    return (load == BEAM_SPREAD ? 8 : 4) * stress * modulus / beam->span;
}
