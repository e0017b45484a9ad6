/*
 * What step cards say. Figures are those of the worked example of the wing headboard, computed by
 * hand; what is said of each kind of work is common practice, no source.
 */
#include "work.h"

#include "plan/card.h"
#include "plan/findings.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

static void assert_needs(const struct step *step, const char *need)
{
    for (size_t i = 0; i < step->need_count; i++)
        if (strcmp(step->needs[i].text, need) == 0)
            return;
    fail_msg("%s does not need \"%s\"", step->name, need);
}

static void assert_says(const struct step *step, const char *part)
{
    for (size_t i = 0; i < step->action_count; i++)
        if (strstr(step->actions[i], part))
            return;
    fail_msg("%s does not say \"%s\"", step->name, part);
}

/* ---- words ---- */

static void every_kind_of_step_has_words(void **state)
{
    (void)state;
    for (int kind = 0; kind < STEP_KINDS; kind++)
        assert_non_null(card_words[kind].actions[0]);
}

static void no_card_promises_what_a_rule_asks(void **state)
{
    (void)state;
    for (int kind = 0; kind < STEP_KINDS; kind++) {
        const struct card_words *words = &card_words[kind];

        assert_true(!words->caution || !strstr(words->caution, "compl"));
        for (int i = 0; i < CARD_ACTIONS && words->actions[i]; i++)
            assert_null(strstr(words->actions[i], "compl"));
    }
}

static void work_that_hurts_has_a_caution(void **state)
{
    static const int kinds[] = {STEP_CUT,    STEP_FRAME, STEP_DRILL, STEP_PAD,  STEP_SLICE,
                                STEP_STAPLE, STEP_MOVE,  STEP_FIX,   STEP_HINGE};

    (void)state;
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
        assert_non_null(card_words[kinds[i]].caution);
}

/* ---- the trade's own catalogue ---- */

#define PHRASES 4

/* What the trade says of each kind of work, by the rows of the catalogue that the program was
 * written against (common practice, no source). Rows 7.5 to 7.7 are seams, each with a
 * line of its own. */
static const struct told {
    const char *row;
    int kind;
    const char *phrases[PHRASES];
} told[] = {
    {"0.1", STEP_DECIDE, {"wall and floor", "tape"}},
    {"0.2", STEP_ROUTE, {"right angle", "stairs", "vehicle"}},
    {"2.1", STEP_SHELF, {"that will do", "into the stock"}},
    {"2.2", STEP_BUY, {"one roll and lot"}},
    {"2.3", STEP_BUY, {"Sight along each stick"}},
    {"2.3", STEP_GAUGE, {"real section", "thickness of the sheets"}},
    {"3.1", STEP_CUT, {"Square one end first", "longest parts first", "one stop"}},
    {"3.2", STEP_LABEL, {"box, label, up and front", "will be hidden"}},
    {"3.3", STEP_UNROLL, {"overnight", "creased foam"}},
    {"3.4", STEP_INSPECT, {"side light", "flaws at the selvage", "every metre"}},
    {"4.1", STEP_FRAME, {"glue", "One screw in each joint", "diagonals", "drive the rest"}},
    {"4.2", STEP_FRAME, {"farthest from the edge first"}},
    {"4.3", STEP_PANEL, {"in a corner", "diagonals", "then the field", "middle of its member"}},
    {"4.4", STEP_RECORD, {"width, height, depth and both diagonals"}},
    {"5.1", STEP_DRY, {"spacers", "where cloth will be"}},
    {"5.2", STEP_DRILL, {"in one pass", "Open the holes"}},
    {"5.3", STEP_DRILL, {"sits flush", "back it out"}},
    {"5.4", STEP_MAP, {"card template", "arrow up", "Photograph"}},
    {"6.1", STEP_EASE, {"every edge that cloth crosses", "proud heads", "sharp knots", "Vacuum"}},
    {"6.2", STEP_INSERT, {"T-nuts", "hidden side"}},
    {"6.2", STEP_NUTS, {"straight", "with its bolt"}},
    {"6.3", STEP_TUFT, {"against the members", "both ends", "number the rows"}},
    {"6.4", STEP_CLEAT, {"side that will be padded", "below the surface"}},
    {"6.5", STEP_PATCH, {"hatch", "zone where the boxes meet", "KEEP CLEAR"}},
    {"6.6", STEP_LOCATE, {"in every hole", "just proud"}},
    {"7.1", STEP_CHALK, {"as measured"}},
    {"7.2", STEP_CHALK, {"before the first cut", "Count the pieces", "every arrow"}},
    {"7.3", STEP_SHEAR, {"largest first", "middle of all four sides"}},
    {"7.4", STEP_SEW, {"test seam on scrap"}},
    {"7.8", STEP_TRY, {"inside out", "pin", "sew again"}},
    {"7.9", STEP_BUTTON, {"Cover the buttons"}},
    {"8.1", STEP_PAD, {"Spray both faces", "tacky", "from one edge", "press"}},
    {"8.2", STEP_PAD, {"down to the holes in the wood"}},
    {"8.3", STEP_BATTING, {"stop short of zones", "inside the line of the cover", "lies double"}},
    {"8.4", STEP_BATTING, {"Cut every patch out now"}},
    {"8.5", STEP_LINING, {"Pull the shape here", "needs no force"}},
    {"9.1", STEP_COVER, {"Match the middle"}},
    {"9.2", STEP_COVER, {"temporary staple", "opposite sides in turn", "from the corners"}},
    {"9.3", STEP_LOOK, {"two metres", "straight edge"}},
    {"9.4", STEP_STAPLE, {"Middle outwards, opposite sides", "Skip the openings"}},
    {"9.5", STEP_CORNER, {"Trim the bulk", "seen least", "mirror each other"}},
    {"9.6", STEP_BUTTON, {"work outwards", "blunt blade", "staple each cord"}},
    {"9.7", STEP_SLIT, {"awl", "small cross", "only where the boxes meet"}},
    {"9.8", STEP_STAPLE, {"beyond the staples", "keeps its handle"}},
    {"10.1", STEP_FIND, {"awl, magnet or template", "Take the locators out"}},
    {"10.2", STEP_OFFER, {"blanket", "align top and front", "padded clamps"}},
    {"10.3", STEP_DRIVE, {"two turns", "tighten the middle, then the ends", "wood meets wood"}},
    {"10.4", STEP_FLAP, {"every head under it is in", "Pull it even", "Trim the handle"}},
    {"11.1", STEP_BACK, {"where the members are", "every head is in", "Fix the top"}},
    {"11.3", STEP_DUST, {"%E, staple every", "over each T-nut"}}, /* folded: test_backs.c */
    {"11.4", STEP_LEG, {"does not rock"}},
    {"12.1", STEP_MOVE, {"clean sheet, then a blanket", "Doors off", "on the long edge"}},
    {"13.1", STEP_MARK, {"level line", "studs"}},
    {"13.2", STEP_SET, {"lowest box first, then the corner", "Shim level"}},
    {"13.4", STEP_FIX, {"Start every screw", "then tighten"}},
    {"13.5", STEP_TRIM, {"whole pitches"}},
    {"14.1", STEP_FINAL, {"no rock", "Photograph"}},
    {"14.2", STEP_ACCOUNT, {"what was spent", "leftovers on the shelf"}},
};

static bool words_say(const struct card_words *words, const char *phrase)
{
    for (int i = 0; i < CARD_ACTIONS && words->actions[i]; i++)
        if (strstr(words->actions[i], phrase))
            return true;
    return false;
}

static void cards_say_what_the_catalogue_of_the_trade_says(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof told / sizeof *told; i++)
        for (int k = 0; k < PHRASES && told[i].phrases[k]; k++)
            if (!words_say(&card_words[told[i].kind], told[i].phrases[k]))
                fail_msg("row %s: the card of %s does not say \"%s\"", told[i].row,
                         step_kinds[told[i].kind].word, told[i].phrases[k]);
}

/* ---- figures ---- */

static void frame_needs_its_members_and_screws(void **state)
{
    const struct step *step = work_step(*state, "frame:3");

    assert_string_equal(step->title, "Frame box C");
    assert_needs(step, "3 rails 60 in");
    assert_needs(step, "2 uprights 56 in");
    assert_needs(step, "2 uprights 45-3/4 in");
    assert_needs(step, "3 blocks 5-3/4 in");
    assert_needs(step, "32 screws #8 x 3 in"); /* 16 joints, 2 each */
}

static void panel_needs_the_screws_of_all_its_panels(void **state)
{
    const struct step *step = work_step(*state, "panel:7");

    assert_needs(step, "3 panels");
    assert_needs(step, "54 screws #8 x 1-1/4 in"); /* 34 above, 10 and 10 below */
}

static void drilling_gives_every_hole_in_both_units(void **state)
{
    const struct step *step = work_step(*state, "drill:32");

    assert_int_equal(step->measure_count, 6);
    assert_non_null(strstr(step->measures[2], "hole 3:"));
    assert_non_null(strstr(step->measures[2], "23 in (584 mm) from the bottom"));
    assert_non_null(strstr(step->measures[2], "3/4 in (19 mm) from the back"));
    assert_needs(step, "6 screws #10 x 3 in");
    assert_says(step, "#10 x 3 in");
}

static void dry_fit_names_the_spacer(void **state)
{
    assert_says(work_step(*state, "dry:32"), "1/8 in");
}

static void covering_needs_its_staples(void **state)
{
    assert_needs(work_step(*state, "staple:24"), "254 staples");
    assert_needs(work_step(*state, "cover:24"), "40 temporary staples");
    assert_needs(work_step(*state, "batting:23"), "60 staples");
    assert_needs(work_step(*state, "back:25"), "119 staples");
}

static void last_closer_says_what_it_shuts(void **state)
{
    assert_string_equal(work_step(*state, "back:25")->closes,
                        "no driver reaches the heads of J1, J2 after this");
}

static void driving_says_how_the_hand_gets_in(void **state)
{
    assert_says(work_step(*state, "drive:32"), "back of C");
}

static void millimetre_work_reads_in_millimetres(void **state)
{
    struct work_bench *bench = *state;
    const struct step *step;

    bench->model.build.units = UNITS_MM;
    work_plan(bench);
    step = work_step(bench, "drill:32");
    assert_non_null(strstr(step->measures[0], " mm ("));
    assert_non_null(strstr(step->measures[0], " in)"));
}

static void fittings_are_listed_with_the_step_that_puts_them_on(void **state)
{
    struct work_bench *bench = *state;
    const struct step *step;

    work_fitting(bench, 3, FITTING_LEG);
    work_fitting(bench, 3, FITTING_T_NUT);
    work_plan(bench);
    step = work_step(bench, "leg:3");
    assert_needs(step, "4 leg");
    assert_int_equal(step->need_count, 1);
    assert_needs(work_step(bench, "insert:3"), "4 t_nut");
}

static void foam_is_cut_and_glued_away_from_flames(void **state)
{
    struct work_bench bench;

    (void)state;
    work_case(&bench, "ottoman");
    assert_non_null(strstr(work_step(&bench, "slice:5")->caution, "foam burns fast"));
    assert_non_null(strstr(work_step(&bench, "pad:9")->caution, "foam burns fast"));
    assert_null(strstr(work_step(&bench, "batting:10")->caution, "foam"));
    work_end(&bench);
}

static void reasons_are_of_the_rule_named(void **state)
{
    struct work_bench *bench = *state;

    for (size_t i = 0; i < bench->plan->steps.count; i++) {
        const struct step *step = &bench->plan->steps.at[i];

        if (step->rule[0])
            assert_true(strlen(step->because) > 10);
    }
    assert_string_equal(work_step(bench, "drill:32")->rule, "P17");
}

/* The binding rule is hard wherever a hard one ends at the step, and the latest of them. */
static void reason_is_the_last_hard_thing_waited_for(void **state)
{
    struct work_bench *bench = *state;
    const struct plan *plan = bench->plan;

    for (size_t i = 0; i < plan->steps.count; i++) {
        size_t last = 0;
        bool hard = false;
        bool named = false;

        for (size_t j = 0; j < plan->precedences.count; j++) {
            const struct precedence *precedence = &plan->precedences.at[j];

            if (precedence->after == i && precedence->hard && precedence->before >= last) {
                last = precedence->before;
                hard = true;
            }
        }
        for (size_t j = 0; hard && j < plan->precedences.count; j++) {
            const struct precedence *precedence = &plan->precedences.at[j];

            named |= precedence->after == i && precedence->hard && precedence->before == last &&
                     strcmp(precedence->rule, plan->steps.at[i].rule) == 0;
        }
        assert_int_equal(named, hard);
    }
}

/* ---- digests ---- */

static void tick_of_this_content(struct work_bench *bench, const char *name)
{
    char content[17];

    snprintf(content, sizeof content, "%016" PRIx64, work_step(bench, name)->content);
    work_tick(bench, name, content);
}

static void step_done_to_this_plan_is_not_older(void **state)
{
    struct work_bench *bench = *state;

    tick_of_this_content(bench, "frame:3");
    work_plan(bench);
    assert_true(work_step(bench, "frame:3")->ticked);
    assert_false(work_step(bench, "frame:3")->older);
    assert_int_equal(work_findings(bench, FINDING_DONE_OTHERWISE), 0);
}

static void step_done_to_another_plan_is_older_and_told(void **state)
{
    struct work_bench *bench = *state;

    tick_of_this_content(bench, "frame:3");
    tick_of_this_content(bench, "frame:4");
    bench->model.boxes.at[0].height += IN(2);
    work_plan(bench);
    assert_true(work_step(bench, "frame:3")->older);
    assert_false(work_step(bench, "frame:4")->older);
    assert_int_equal(work_findings(bench, FINDING_DONE_OTHERWISE), 1);
}

static struct cut_part *add_cut(struct work_bench *bench, const char *part, double length)
{
    struct cut_part *cut = MODEL_ADD(&bench->model, cut_part);

    cut->tick = bench->model.ticks.at[bench->model.ticks.count - 1].key;
    cut->part = part;
    cut->length = IN(length);
    return cut;
}

/* Of a stock of which one part was cut, that one is not told and each other is. */
static void parts_that_a_cutting_step_left_uncut_are_told(void **state)
{
    struct work_bench *bench = *state;
    const struct part *part = &bench->plan->parts.at[0];
    size_t others = 0, uncut = 0;
    char step[32], first[sizeof part->label + 2];

    for (size_t i = 0; i < bench->plan->parts.count; i++)
        others += bench->plan->parts.at[i].stock == part->stock &&
                  strcmp(bench->plan->parts.at[i].label, part->label) != 0;
    assert_true(others > 0);
    snprintf(step, sizeof step, "cut:%" PRId64, part->stock);
    snprintf(first, sizeof first, "%s,", part->label);
    work_tick(bench, step, "");
    add_cut(bench, arena_text(&bench->facts, part->label), 0)->length = part->length;
    work_plan(bench);
    for (size_t i = 0; i < work_step(bench, step)->change_count; i++) {
        const char *change = work_step(bench, step)->changes[i];

        uncut += strstr(change, "has not been cut") != NULL;
        assert_int_not_equal(strncmp(change, first, strlen(first)), 0);
    }
    assert_int_equal(uncut, others);
}

/* The centre's uprights are 56 in, its rails 60: one of these was cut as long as those. What was
 * spoiled, and what another step cut, is not this step's to tell. */
static void parts_that_were_cut_otherwise_are_told(void **state)
{
    struct work_bench *bench = *state;
    const struct step *cutting;
    size_t otherwise = 0;

    work_tick(bench, "cut:2", "");
    add_cut(bench, "C4", 59);
    work_tick(bench, "cut:1", "");
    add_cut(bench, "C5", 56);
    add_cut(bench, "C2", 56);
    add_cut(bench, "C3", 59)->spoiled = 1;
    add_cut(bench, "Z9", 12);
    work_plan(bench);
    cutting = work_step(bench, "cut:1");
    for (size_t i = 0; i < cutting->change_count; i++)
        otherwise += strstr(cutting->changes[i], "has not been cut") == NULL;
    assert_int_equal(otherwise, 2);
    assert_string_equal(cutting->changes[0], "C5 was cut to 56 in, now it is 60 in");
    assert_string_equal(cutting->changes[1], "Z9, cut to 12 in, is not needed any more");
}

static void tick_without_content_is_taken_as_it_stands(void **state)
{
    struct work_bench *bench = *state;

    work_tick(bench, "frame:3", "");
    work_plan(bench);
    assert_true(work_step(bench, "frame:3")->ticked);
    assert_false(work_step(bench, "frame:3")->older);
}

static void latest_tick_of_a_step_counts(void **state)
{
    struct work_bench *bench = *state;

    work_tick(bench, "frame:3", "0123456789abcdef");
    tick_of_this_content(bench, "frame:3");
    work_plan(bench);
    assert_false(work_step(bench, "frame:3")->older);
}

/* Members of a box that each wait for one joint, with turns from 1 on; and what its card says. */
static struct step card_of_waiting(struct arena *arena, int members)
{
    struct plan plan = {0};
    struct planning planning = {.plan = &plan, .arena = arena};
    struct step step = {
        .kind = STEP_FRAME, .box = 1, .actions = ARENA_MANY(arena, const char *, CARD_ACTIONS)};
    struct carding carding = {.planning = &planning, .step = &step};

    *LIST_ADD(arena, &plan.joints) = (struct joint){.through = 0, .into = 0};
    for (int i = 0; i < members; i++) {
        struct plan_member *member = LIST_ADD(arena, &plan.members);

        *member = (struct plan_member){.box = 1, .turn = i + 1};
        snprintf(member->label, sizeof member->label, "C%d", i + 1);
        *LIST_ADD(arena, &plan.frame_waits) = (struct frame_wait){.box = 1, .member = (size_t)i};
    }
    card_frame_order(&carding);
    return step;
}

static void every_member_that_waits_has_a_line_where_all_find_room(void **state)
{
    struct arena arena;
    struct step step;

    (void)state;
    arena_init(&arena);
    step = card_of_waiting(&arena, CARD_ACTIONS);
    assert_int_equal(step.action_count, CARD_ACTIONS);
    for (size_t i = 0; i < step.action_count; i++)
        assert_non_null(strstr(step.actions[i], "is on, screw"));
    arena_release(&arena);
}

static void where_not_all_members_that_wait_find_room_the_last_line_says_so(void **state)
{
    struct arena arena;
    struct step step;

    (void)state;
    arena_init(&arena);
    step = card_of_waiting(&arena, CARD_ACTIONS + 1);
    assert_int_equal(step.action_count, CARD_ACTIONS);
    for (size_t i = 0; i + 1 < step.action_count; i++)
        assert_non_null(strstr(step.actions[i], "is on, screw"));
    assert_non_null(strstr(step.actions[CARD_ACTIONS - 1], "the other members"));
    arena_release(&arena);
}

int main(void)
{
#define CARD_TEST(name) cmocka_unit_test_setup_teardown(name, work_begin_headboard, work_finish)
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_kind_of_step_has_words),
        cmocka_unit_test(cards_say_what_the_catalogue_of_the_trade_says),
        cmocka_unit_test(no_card_promises_what_a_rule_asks),
        cmocka_unit_test(work_that_hurts_has_a_caution),
        CARD_TEST(frame_needs_its_members_and_screws),
        CARD_TEST(panel_needs_the_screws_of_all_its_panels),
        CARD_TEST(drilling_gives_every_hole_in_both_units),
        CARD_TEST(dry_fit_names_the_spacer),
        CARD_TEST(covering_needs_its_staples),
        CARD_TEST(last_closer_says_what_it_shuts),
        CARD_TEST(driving_says_how_the_hand_gets_in),
        CARD_TEST(millimetre_work_reads_in_millimetres),
        CARD_TEST(fittings_are_listed_with_the_step_that_puts_them_on),
        cmocka_unit_test(foam_is_cut_and_glued_away_from_flames),
        CARD_TEST(reasons_are_of_the_rule_named),
        CARD_TEST(reason_is_the_last_hard_thing_waited_for),
        CARD_TEST(step_done_to_this_plan_is_not_older),
        CARD_TEST(step_done_to_another_plan_is_older_and_told),
        CARD_TEST(parts_that_a_cutting_step_left_uncut_are_told),
        CARD_TEST(parts_that_were_cut_otherwise_are_told),
        CARD_TEST(tick_without_content_is_taken_as_it_stands),
        CARD_TEST(latest_tick_of_a_step_counts),
        cmocka_unit_test(every_member_that_waits_has_a_line_where_all_find_room),
        cmocka_unit_test(where_not_all_members_that_wait_find_room_the_last_line_says_so),
    };
    int failed = cmocka_run_group_tests_name("plan card", tests, NULL, NULL);

    return failed ? 1 : 0;
}
