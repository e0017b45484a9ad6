/*
 * One table of cautions by kind of step; a row with a test holds only where the test does, a row
 * with a count says the number and is left out at 0.
 */
#include "plan/caution.h"

#include "plan/steps.h"
#include "plan/strength.h"

#include <assert.h>
#include <inttypes.h>

/* ---- where a caution holds ---- */

static bool joins_the_wall(const struct plan *plan, const struct step *step)
{
    const struct join *join = MODEL_FIND(plan->facts, join, step->join);

    return join && join->target == TARGET_WALL;
}

static bool has_foam(const struct plan *plan, const struct step *step)
{
    (void)step;
    for (size_t i = 0; i < plan->facts->layers.count; i++)
        if (plan->facts->layers.at[i].kind == LAYER_FOAM)
            return true;
    return false;
}

static bool something_tips(const struct plan *plan, const struct step *step)
{
    (void)step;
    for (size_t i = 0; i < plan->facts->boxes.count; i++) {
        struct strength_tip tip;

        if (strength_tip(plan, &plan->facts->boxes.at[i], &tip) &&
            tip.height >= plan->value[TRADE_TIP_HEIGHT] && tip.push < plan->value[TRADE_TIP_PUSH])
            return true;
    }
    return false;
}

static bool has_joints(const struct plan *plan, const struct step *step)
{
    for (size_t i = 0; i < plan->joints.count; i++)
        if (plan->joints.at[i].box == step->box)
            return true;
    return false;
}

/* ---- what is counted ---- */

static int64_t temporary_staples(const struct plan *plan, const struct step *step)
{
    int64_t count = 0;

    for (size_t i = 0; i < plan->edges.count; i++)
        if (plan->edges.at[i].layer == step->layer)
            count += plan->edges.at[i].temporary;
    return count;
}

static int64_t locators(const struct plan *plan, const struct step *step)
{
    const struct junction *junction = plan_junction(plan, step->join);

    return junction ? (int64_t)junction->point_count : 0;
}

/* ---- the table ---- */

static const struct {
    int kind;          /* of step */
    const char *words; /* after the number where something is counted */
    bool (*holds)(const struct plan *plan, const struct step *step);
    int64_t (*count)(const struct plan *plan, const struct step *step);
} cautions[] = {
    {STEP_FRAME, "no weight on glued joints before the glue has cured", has_joints, NULL},
    {STEP_DRILL, "a printed template is laid on only when its scale bar measures right", NULL,
     NULL},
    {STEP_MAP, "check the scale bar of what was printed before it is measured from", NULL, NULL},
    {STEP_LOCATE,
     "locators go in: count them in, and later out, before children or pets find "
     "one",
     NULL, locators},
    {STEP_FIND, "locators come out: count them, none stays under cloth", NULL, locators},
    {STEP_HANG, "a falling lid can kill a child: prop it, no child near", NULL, NULL},
    {STEP_HINGE,
     "a falling lid can kill a child: stays that hold at every angle, air gaps, no "
     "latch; set them again after padding",
     NULL, NULL},
    {STEP_SLICE,
     "foam burns fast and its smoke is poisonous: no flame or heater near; take up its "
     "dust with a vacuum",
     NULL, NULL},
    {STEP_PAD, "foam burns fast and its smoke is poisonous: no flame, heater or bare lamp near",
     NULL, NULL},
    {STEP_COVER,
     "temporary staples: count them in and out, sweep, and go over the floor with "
     "a magnet",
     NULL, temporary_staples},
    {STEP_STAPLE, "temporary staples come out: count them", NULL, temporary_staples},
    {STEP_MARK, "look for cables and pipes before a wall is drilled", NULL, NULL},
    {STEP_FIX, "cables and pipes: look before the wall is drilled; studs or proper anchors",
     joins_the_wall, NULL},
    {STEP_SET, "it stands free and tips: one person holds it until it is held to the wall",
     something_tips, NULL},
    {STEP_PUSH, "it stands free and tips: hold it to the wall before anybody uses it",
     something_tips, NULL},
    {STEP_FINAL, "foam burns fast: keep the piece from flame, heaters and bare lamps", has_foam,
     NULL},
};

static const char *row_words(const struct plan *plan, const struct step *step, size_t row,
                             struct arena *arena)
{
    assert(row < sizeof cautions / sizeof *cautions);

    int64_t count;

    if (cautions[row].kind != step->kind ||
        (cautions[row].holds && !cautions[row].holds(plan, step)))
        return NULL;
    if (!cautions[row].count)
        return cautions[row].words;
    count = cautions[row].count(plan, step);
    if (count == 0)
        return NULL;
    return arena_format(arena, "%" PRId64 " %s", count, cautions[row].words);
}

const char *caution_of_step(const struct plan *plan, const struct step *step, const char *said,
                            struct arena *arena)
{
    const char *words = said ? said : "";

    for (size_t i = 0; i < sizeof cautions / sizeof *cautions; i++) {
        const char *more = row_words(plan, step, i, arena);

        if (more)
            words = *words ? arena_format(arena, "%s; %s", words, more) : more;
    }
    return words;
}

/* ---- what a seller meets ---- */

static bool is_sat_on(const struct plan *plan, const struct step *step)
{
    (void)step;
    for (size_t i = 0; i < plan->facts->facings.count; i++)
        if (plan->facts->facings.at[i].use == USE_SEAT ||
            plan->facts->facings.at[i].use == USE_BACK)
            return true;
    return false;
}

static bool is_covered(const struct plan *plan, const struct step *step)
{
    (void)step;
    return plan->facts->layers.count > 0;
}

static const struct {
    struct caution_rule rule;
    bool (*holds)(const struct plan *plan, const struct step *step);
} rules[] = {
    {{"USA", "16 CFR 1640, made after 25 June 2021",
      "seats, backs and arms that are upholstered: smoulder test of California TB 117-2013, and a "
      "lasting label with the sentence that the rule gives"},
     is_sat_on},
    {{"USA, many states", "bedding and upholstery laws",
      "a label that lists materials, and a licence of the maker"},
     is_covered},
    {{"UK", "SI 1988/1324, changed 1989 and 1993",
      "upholstered furniture, beds and head-boards: cigarette and match tests, labels"},
     is_covered},
    {{"USA", "16 CFR 1261, 2023",
      "tip-over of clothing storage only; what else stands free is held to the wall by good sense"},
     something_tips},
};

const struct caution_rule *caution_rule_next(const struct plan *plan, size_t *index)
{
    while (*index < sizeof rules / sizeof *rules) {
        size_t at = (*index)++;

        if (rules[at].holds(plan, NULL))
            return &rules[at].rule;
    }
    return NULL;
}
