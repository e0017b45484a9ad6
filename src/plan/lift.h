/*
 * Lifting, as guidance: what one person is good for at a place, and what several are.
 *
 * Formula lift.niosh: the revised NIOSH equation in its metric form,
 *
 *     limit = LC x HM x VM x DM x AM x FM x CM
 *     HM = 25 / H     VM = 1 - 0.003 |V - 75|     DM = 0.82 + 4.5 / D     AM = 1 - 0.0032 A
 *
 * with H, V, D in centimetres and A in degrees; LC is the trade value `lift.constant`, 23 kg. FM is
 * 1: a box is lifted now and then. CM is 1 for a good grip, 0.95 for a fair one below 75 cm (1
 * above) and 0.90 for a poor one. H counts at least 25 cm and gives nothing beyond 63, V nothing
 * beyond 175, D at least 25 and nothing beyond 175, A nothing beyond 135 degrees. Source: DHHS
 * (NIOSH) publication 94-110; its multipliers were seen in a textbook's section on it.
 *
 * Formula lift.team: two people are good for 2/3 of the sum of what each is good for, three for
 * half of it (HSE L23, Manual Handling Operations Regulations 1992); of four, half is taken; more
 * than four hardly work together.
 */
#ifndef PLAN_LIFT_H
#define PLAN_LIFT_H

#include "plan/plan.h"

enum lift_grip { LIFT_GOOD, LIFT_FAIR, LIFT_POOR };

#define LIFT_TEAM 4 /* more hardly work together */

struct lift_place {
    int64_t across; /* hands in front of the ankles */
    int64_t up;     /* hands above the floor, where it begins */
    int64_t travel; /* how far it is raised */
    int64_t turn;   /* body turned from straight on, 1/1000 degree */
    enum lift_grip grip;
};

struct lift_factors {
    double across, up, travel, turn, grip; /* 0 to 1 */
};

struct lift_factors lift_factors(const struct lift_place *place);

/* What one person is good for there, in mg, of a load constant in mg. */
int64_t lift_limit(int64_t constant, const struct lift_place *place);

/* What so many people (1 to LIFT_TEAM) are good for together, where each is for `limit`. */
int64_t lift_team(const struct plan *plan, int64_t limit, int people);

/* The fewest who are good for a mass; 0 where LIFT_TEAM are not. */
int lift_people(const struct plan *plan, int64_t limit, int64_t mass);

/* ---- the steps of a plan ---- */

/* The heaviest lift of a step: a box, boxes joined by then, or a panel, with what is on by then. */
struct lift {
    size_t step;
    int64_t box;  /* the first, where several are lifted as one */
    size_t boxes; /* lifted as one; 0: a panel of the box */
    int64_t mass; /* that is lifted: half of all where it is only turned over */
    bool turned;  /* over an edge that stays where it is */
    struct lift_place place;
    int64_t limit; /* of one person there */
    int people;    /* by lift_people */
};

/*
 * The lifts of all steps, in their order; steps in which nothing over a tenth of the load constant
 * is lifted have none. In the arena, whose escape is armed. Needs the load and order passes;
 * without loads there are no lifts.
 *
 * Positions are rules of thumb, no source: a thing is held at half its height, at most at 75 cm,
 * half its thinnest size and 20 cm in front of the ankles (25 where the hands are below 25 cm, as
 * publication 94-110 takes it); it is raised as high as its place in the piece, by 25 cm at least.
 * The grip is fair on bare wood, poor on cloth. O(steps + steps of layers x pieces).
 */
struct lifts {
    LIST_OF(struct lift) of;
};
struct lifts lift_make(const struct plan *plan, struct arena *arena);

/* "C weighs 70.3 lb by then; the lifting equation gives one person 42.4 lb here, two 56.6 lb". In
 * the arena, whose escape is armed. */
const char *lift_words(const struct plan *plan, const struct lift *lift, struct arena *arena);

/* People by the trade's own limits: `one_person.weight`, `two_people.weight`, `one_person.length`.
 */
int lift_usual(const struct plan *plan, int64_t mass, int64_t longest);

#endif
