/*
 * The wood of a ladder under an outline. Heights of the arch are those of a circle through both
 * ends and the top (radius = (w^2 / 4 + r^2) / 2 r), in floating point here.
 */
#include "soft.h"

#include "dice.h"
#include "plan/cure.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/steps.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define CLOSE (LENGTH_MM / 10) /* whole-number roots are rounded */

/* A ladder of 1-1/2 x 2-1/2 sticks with a panel of 1/2 on its front. */
static struct box *add_head(struct soft *soft, double width, double height,
                            enum outline_word outline, double rise)
{
    int64_t box = soft_box(soft, "H", width, 3, height);
    struct box *head = model_find(&soft->model, ENTITY_box, box);
    struct facing *facing = MODEL_ADD(&soft->model, facing);

    head->stick = soft_wood(soft, STOCK_STICK, 1.5, 2.5);
    head->outline = (int64_t)outline;
    head->rise = IN(rise);
    facing->box = box;
    facing->side = SIDE_FRONT;
    facing->stock = soft_wood(soft, STOCK_SHEET, 0.5, 0);
    return model_find(&soft->model, ENTITY_box, box);
}

static void make_crate(struct box *box)
{
    box->frame = FRAME_CRATE;
    box->depth = IN(16);
}

/* Of the outline over u, both in inches. */
static double height_of(const struct box *box, double u)
{
    double width = (double)box->width / LENGTH_INCH;
    double height = (double)box->height / LENGTH_INCH;
    double rise = (double)box->rise / LENGTH_INCH;
    double radius = (width * width / 4 + rise * rise) / (2 * rise);
    double near = u < width - u ? u : width - u;

    switch (box->outline) {
    case OUTLINE_ARCH:
        return height - radius + sqrt(radius * radius - (u - width / 2) * (u - width / 2));
    case OUTLINE_SHOULDER:
        return near >= rise ? height
                            : height - rise + sqrt(rise * rise - (rise - near) * (rise - near));
    case OUTLINE_SLOPE:
        return height - rise * u / width;
    default:
        return height;
    }
}

static double inches(int64_t length)
{
    return (double)length / LENGTH_INCH;
}

/* The lower side of a member's top; `right`: the higher one is at its right. */
static void assert_under(const struct box *box, const struct plan_member *member)
{
    int64_t left = member->solid.high.z - (member->slant > 0 ? member->slant : 0);
    int64_t right = member->solid.high.z + (member->slant < 0 ? member->slant : 0);

    assert_true(inches(left) <= height_of(box, inches(member->solid.low.x)) + inches(CLOSE));
    assert_true(inches(right) <= height_of(box, inches(member->solid.high.x)) + inches(CLOSE));
}

static void no_member_stands_out_of_the_outline(void **state)
{
    static const enum outline_word outlines[] = {OUTLINE_ARCH, OUTLINE_SHOULDER, OUTLINE_SLOPE};
    struct dice dice = {31};

    for (int round = 0; round < 60; round++) {
        void *fixture;
        struct soft *soft;
        struct box *box;

        assert_int_equal(soft_begin(&fixture), 0);
        soft = fixture;
        box =
            add_head(soft, (double)dice_between(&dice, 24, 90), (double)dice_between(&dice, 20, 60),
                     outlines[round % 3], (double)dice_between(&dice, 2, 11));
        if (round % 2)
            make_crate(box);
        soft_plan(soft);
        assert_int_equal(soft_findings(soft, FINDING_OUTLINE_DEEP), 0);
        assert_int_equal(soft_findings(soft, FINDING_FRAME_SHUT), 0);
        assert_int_equal(soft_findings(soft, FINDING_SCREWS_MEET), 0);
        assert_true(soft->plan->members.count >= 4);
        for (size_t i = 0; i < soft->plan->members.count; i++)
            assert_under(box, &soft->plan->members.at[i]);
        soft_end(&fixture);
    }
    (void)state;
}

/* 40 wide, 30 high, 6 of rise: the rail ends at 24, and the wood of the edge goes from side to
 * side, each piece under the curve and as high as it. */
static void landing_wood_follows_an_arch_from_side_to_side(void **state)
{
    struct soft *soft = *state;
    const struct box *box = add_head(soft, 40, 30, OUTLINE_ARCH, 6);
    int64_t at = 0;
    int64_t rail = 0;

    soft_plan(soft);
    for (size_t i = 0; i < soft->plan->members.count; i++)
        if (soft->plan->members.at[i].kind == MEMBER_RAIL)
            rail = length_larger(rail, soft->plan->members.at[i].solid.high.z);
    assert_int_equal(rail, IN(24));
    assert_true(soft->plan->crown_pieces.count > 0);
    for (size_t i = 0; i < soft->plan->crown_pieces.count; i++) {
        const struct crown_piece *piece = &soft->plan->crown_pieces.at[i];

        assert_int_equal(piece->area.u0, at);
        at = piece->area.u1;
        assert_true(piece->area.v0 >= rail);
        for (int k = 0; k < CROWN_HEIGHTS; k++) {
            double u = inches(piece->area.u0) + inches(area_width(&piece->area)) * k / 4;

            assert_true(fabs(inches(piece->area.v0 + piece->heights[k]) - height_of(box, u)) <
                        0.01);
        }
    }
    assert_int_equal(at, IN(40));
}

/* 30 down to 24 over 60: 0.1 in an inch. The upright at the left runs through and rises to 30, as
 * much lower at its right as it is wide; posts stand between it and the other. */
static void posts_of_a_slope_are_cut_on_the_slant(void **state)
{
    struct soft *soft = *state;
    int64_t posts = 0;

    add_head(soft, 60, 30, OUTLINE_SLOPE, 6);
    soft_plan(soft);
    for (size_t i = 0; i < soft->plan->members.count; i++) {
        const struct plan_member *post = &soft->plan->members.at[i];
        int64_t wide = post->solid.high.x - post->solid.low.x;

        if (post->axis != AXIS_Z || post->solid.high.z <= IN(24) || post->kind == MEMBER_BLOCK)
            continue;
        posts++;
        if (post->solid.low.x == 0)
            assert_int_equal(post->length, IN(30));
        else
            assert_int_equal(post->solid.low.z, IN(24));
        assert_in_range(-post->slant, wide * 10 / 100 - 1, wide * 10 / 100 + 1);
    }
    assert_true(posts >= 2);
}

/* No post stands over a support: the screws of that would have no way in. Rails may run through. */
static void posts_stand_beside_what_ends_under_the_rail(void **state)
{
    static const enum outline_word outlines[] = {OUTLINE_ARCH, OUTLINE_SLOPE};

    for (int round = 0; round < 8; round++) {
        void *fixture;
        struct soft *soft;
        struct box *box;
        int64_t inner = 0;

        assert_int_equal(soft_begin(&fixture), 0);
        soft = fixture;
        box = add_head(soft, round < 4 ? 63 : 110, 56, outlines[round % 2], 10);
        box->through = round / 2 % 2 ? THROUGH_RAILS : THROUGH_UPRIGHTS;
        soft_plan(soft);
        for (size_t i = 0; i < soft->plan->members.count; i++)
            for (size_t k = 0; k < soft->plan->members.count; k++) {
                const struct solid *post = &soft->plan->members.at[i].solid;
                const struct solid *support = &soft->plan->members.at[k].solid;

                if (post->low.z != IN(46) || soft->plan->members.at[k].axis != AXIS_Z ||
                    support->high.z >= IN(46) || support->high.z < IN(40))
                    continue;
                inner++;
                assert_true(post->low.x >= support->high.x + IN(0.5) ||
                            support->low.x >= post->high.x + IN(0.5));
            }
        assert_true(inner > 0);
        assert_int_equal(soft_findings(soft, FINDING_FRAME_SHUT), 0);
        soft_end(&fixture);
    }
    (void)state;
}

static void landing_wood_is_cut_from_the_sheet_of_the_face(void **state)
{
    struct soft *soft = *state;
    size_t found = 0;

    add_head(soft, 40, 30, OUTLINE_ARCH, 6);
    soft_plan(soft);
    for (size_t i = 0; i < soft->plan->parts.count; i++) {
        const struct part *part = &soft->plan->parts.at[i];

        for (size_t k = 0; k < soft->plan->crown_pieces.count; k++) {
            const struct crown_piece *piece = &soft->plan->crown_pieces.at[k];

            if (strcmp(part->label, piece->label) != 0)
                continue;
            found++;
            assert_int_equal(part->stock, soft->model.facings.at[0].stock);
            assert_int_equal(part->length,
                             length_larger(area_width(&piece->area), area_height(&piece->area)));
        }
    }
    assert_int_equal(found, soft->plan->crown_pieces.count);
    assert_string_equal(soft->plan->crown_pieces.at[0].label, "H-K1");
}

static int64_t screws_needed(const struct step *step)
{
    int64_t sum = 0;

    for (size_t i = 0; i < step->need_count; i++)
        if (strstr(step->needs[i].text, " screws "))
            sum += strtoll(step->needs[i].text, NULL, 10);
    return sum;
}

/* Two screws where a piece passes a post, and one in each block; counted, bought and on the card of
 * the frame. */
static void landing_wood_is_screwed_to_each_post(void **state)
{
    struct soft *soft = *state;
    int64_t in_wood = 0, counted = 0;

    add_head(soft, 60, 40, OUTLINE_ARCH, 8);
    soft_plan(soft);
    for (size_t i = 0; i < soft->plan->crown_pieces.count; i++) {
        const struct crown_piece *piece = &soft->plan->crown_pieces.at[i];
        int64_t passed = 0, blocks = 0;

        for (size_t k = 0; k < soft->plan->members.count; k++) {
            const struct solid *post = &soft->plan->members.at[k].solid;
            int64_t middle = (post->low.x + post->high.x) / 2;

            if (soft->plan->members.at[k].kind == MEMBER_BLOCK)
                blocks += piece->area.u0 <= middle && middle < piece->area.u1;
            else
                passed += post->high.z > IN(32) && post->low.x < piece->area.u1 &&
                          piece->area.u0 < post->high.x;
        }
        assert_int_equal(piece->screws, 2 * passed + blocks);
        in_wood += piece->screws;
    }
    assert_true(in_wood > 0);
    for (size_t i = 0; i < soft->plan->screw_kinds.count; i++)
        counted += soft->plan->screw_kinds.at[i].count_by_use[SCREW_FRAME];
    for (size_t i = 0; i < soft->plan->screws.count; i++)
        counted -= soft->plan->screws.at[i].use == SCREW_FRAME;
    assert_int_equal(counted, in_wood);
    assert_int_equal(screws_needed(soft_step(soft, STEP_FRAME)),
                     in_wood + 2 * (int64_t)soft->plan->joints.count);
}

/* ---- the panel's edge ---- */

#define MOST_SCREWS 256

static bool is_on_main(const struct soft *soft, const struct screw *screw)
{
    return screw->use == SCREW_PANEL && soft->plan->panels.at[screw->of].side == SIDE_FRONT;
}

static int by_place(const void *a, const void *b)
{
    double left = *(const double *)a, right = *(const double *)b;

    return (left > right) - (left < right);
}

/* Places across, from the left, of the main panel's screws that stand within 3 in under the
 * outline, and of those in the rail where that lies as near. */
static int screws_of_edge(const struct soft *soft, const struct box *box, double at[])
{
    int count = 0;

    for (size_t i = 0; i < soft->plan->screws.count; i++) {
        const struct screw *screw = &soft->plan->screws.at[i];
        double u = inches(screw->at.x);

        if (!is_on_main(soft, screw) || height_of(box, u) - inches(screw->at.z) > 3)
            continue;
        assert_true(count < MOST_SCREWS);
        at[count++] = u;
    }
    qsort(at, (size_t)count, sizeof *at, by_place);
    return count;
}

/* In chords of a hundredth of an inch. */
static double along_outline(const struct box *box, double from, double to)
{
    double length = 0;

    for (double u = from; u < to; u += 0.01)
        length += hypot(fmin(0.01, to - u), height_of(box, fmin(u + 0.01, to)) - height_of(box, u));
    return length;
}

/* Facings are screwed every 8 in along their edges (common practice, no source), and along one that
 * is sawn to an outline no less. A tenth for blocks on the marking grid and posts off the middle;
 * down to the rail, where it comes so near that there is no room for a block. */
static void the_edge_of_a_panel_is_screwed_along_its_outline(void **state)
{
    static const enum outline_word outlines[] = {OUTLINE_ARCH, OUTLINE_SHOULDER, OUTLINE_SLOPE};
    struct dice dice = {77};

    for (int round = 0; round < 48; round++) {
        void *fixture;
        struct soft *soft;
        struct box *box;
        double at[MOST_SCREWS];
        int count;

        assert_int_equal(soft_begin(&fixture), 0);
        soft = fixture;
        box =
            add_head(soft, (double)dice_between(&dice, 30, 92), (double)dice_between(&dice, 24, 60),
                     outlines[round % 3], (double)dice_between(&dice, 4, 11));
        if (round % 2)
            make_crate(box);
        soft_plan(soft);
        count = screws_of_edge(soft, box, at);
        assert_true(count > 2);
        for (int i = 1; i < count; i++)
            if (along_outline(box, at[i - 1], at[i]) > 8.8)
                fail_msg("round %d: %.2f from %.2f to %.2f", round,
                         along_outline(box, at[i - 1], at[i]), at[i - 1], at[i]);
        soft_end(&fixture);
    }
    (void)state;
}

static void the_cards_say_what_is_cut_to_the_outline(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_head(soft, 60, 40, OUTLINE_ARCH, 8);

    soft_plan(soft);
    assert_true(soft_says(soft, STEP_FRAME, "landing wood along them, H-K1 to H-K3"));
    assert_true(soft_says(soft, STEP_PANEL, "Mark the outline"));
    box->outline = OUTLINE_RECTANGLE;
    soft_plan(soft);
    assert_false(soft_says(soft, STEP_FRAME, "landing wood"));
    assert_false(soft_says(soft, STEP_PANEL, "Mark the outline"));
}

/* A curve 1.6 m long at 4 minutes a metre: landing wood along all of it, half a minute a screw. */
static void sawing_to_the_outline_takes_time(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_head(soft, 60, 40, OUTLINE_ARCH, 8);
    int64_t frame, panel, screws = 0, joints;
    double curve;

    soft_plan(soft);
    frame = soft_step(soft, STEP_FRAME)->minutes;
    panel = soft_step(soft, STEP_PANEL)->minutes;
    joints = (int64_t)soft->plan->joints.count;
    curve = inches(soft->plan->outlines.at[0].lengths[EDGE_TOP]) * 0.0254;
    for (size_t i = 0; i < soft->plan->crown_pieces.count; i++)
        screws += soft->plan->crown_pieces.at[i].screws;
    assert_in_range(frame, joints * 4000 + screws * 500 + (int64_t)(60 * 0.0254 * 4000) - 10,
                    joints * 4000 + screws * 500 + (int64_t)(60 * 0.0254 * 4000) + 10);
    screws = 0;
    for (size_t i = 0; i < soft->plan->screws.count; i++)
        screws += soft->plan->screws.at[i].use == SCREW_PANEL;
    assert_in_range(panel, screws * 500 + (int64_t)(curve * 4000) - 10,
                    screws * 500 + (int64_t)(curve * 4000) + 10);
    box->outline = OUTLINE_RECTANGLE;
    soft_plan(soft);
    assert_true(soft_step(soft, STEP_PANEL)->minutes < panel);
}

/* 96 in of panel come from two sheets: a support stands under the seam, and over the rail a post
 * beside it; the landing wood goes on over the seam. */
static void a_post_stands_beside_a_seam_of_the_panels(void **state)
{
    struct soft *soft = *state;
    bool found = false, over = false;
    int64_t seam;

    add_head(soft, 110, 40, OUTLINE_ARCH, 8);
    soft_plan(soft);
    assert_true(soft->plan->panels.count > 1);
    seam = soft->plan->panels.at[0].area.u1;
    for (size_t i = 0; i < soft->plan->members.count; i++) {
        const struct solid *post = &soft->plan->members.at[i].solid;

        found |= post->high.z > IN(32) && post->low.x > seam && post->low.x < seam + IN(2);
    }
    for (size_t i = 0; i < soft->plan->crown_pieces.count; i++)
        over |= soft->plan->crown_pieces.at[i].area.u0 < seam - IN(1) &&
                seam + IN(1) < soft->plan->crown_pieces.at[i].area.u1;
    assert_true(found);
    assert_true(over);
}

/* The strip at the side is 2-1/4 wide: under its seam a support of 1-1/2 stands right beside the
 * end upright, which runs through; over the rail its post is set off 2 in to the right, as screws
 * are driven up between the two. */
static void a_seam_right_beside_the_end_has_its_post(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_head(soft, 40, 30, OUTLINE_SLOPE, 10);
    struct facing *rest;
    int posts = 0;

    soft->model.facings.at[0].width = IN(2.25);
    rest = MODEL_ADD(&soft->model, facing);
    rest->box = box->key;
    rest->side = SIDE_FRONT;
    rest->stock = soft->model.facings.at[0].stock;
    rest->u = IN(2.25);
    soft_plan(soft);
    for (size_t i = 0; i < soft->plan->members.count; i++)
        posts += soft->plan->members.at[i].solid.low.x == IN(3.5) &&
                 soft->plan->members.at[i].solid.low.z == IN(20);
    assert_int_equal(posts, 1);
}

/* Front and back are alike, with a cross from each post that is high enough to the one behind it,
 * under the outline and held by a joint at both ends. */
static void a_crate_has_a_crown_on_both_its_ladders(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_head(soft, 60, 40, OUTLINE_ARCH, 12);
    int64_t before = 0, behind = 0, crosses = 0;

    make_crate(box);
    soft_plan(soft);
    for (size_t i = 0; i < soft->plan->crown_pieces.count; i++)
        *(soft->plan->crown_pieces.at[i].behind ? &behind : &before) +=
            area_width(&soft->plan->crown_pieces.at[i].area);
    assert_int_equal(before, IN(60));
    assert_int_equal(behind, IN(60));
    for (size_t i = 0; i < soft->plan->members.count; i++) {
        const struct plan_member *cross = &soft->plan->members.at[i];
        int joints = 0;

        if (cross->kind != MEMBER_CROSS || cross->solid.low.z < IN(28))
            continue;
        crosses++;
        for (size_t k = 0; k < soft->plan->joints.count; k++)
            joints += soft->plan->joints.at[k].into == i;
        assert_int_equal(joints, 2);
        assert_under(box, cross);
    }
    assert_true(crosses >= 2);
    assert_int_equal(soft_findings(soft, FINDING_SCREWS_MEET), 0);
    assert_int_equal(soft_findings(soft, FINDING_OUTLINE_DEEP), 0);
}

/* ---- crates whose outline is not in front ---- */

/* A bare crate of that size, its outline on a side. */
static void plan_crate(struct soft *soft, struct vector size, int64_t side,
                       enum outline_word outline, double rise)
{
    int64_t key = soft_box(soft, "H", 20, 20, 20);
    struct box *box = model_find(&soft->model, ENTITY_box, key);

    box->width = size.x;
    box->depth = size.y;
    box->height = size.z;
    box->frame = FRAME_CRATE;
    box->stick = soft_wood(soft, STOCK_STICK, 1.5, 2.5);
    box->main_side = side;
    box->outline = (int64_t)outline;
    box->rise = IN(rise);
    soft_plan(soft);
}

static struct vector swapped(struct vector vector, int axis)
{
    int64_t y = vector.y;

    vector.y = vector_along(vector, axis);
    vector_set(&vector, axis, y);
    return vector;
}

/* Member for member what a crate is that has the outline in front, with y and another axis in each
 * other's place. */
static void assert_swapped(const struct soft *soft, const struct soft *front, int axis)
{
    assert_int_equal(soft->plan->members.count, front->plan->members.count);
    assert_true(soft->plan->crown_pieces.count > 0);
    assert_int_equal(soft->plan->crown_pieces.count, front->plan->crown_pieces.count);
    for (size_t i = 0; i < soft->plan->members.count; i++) {
        const struct plan_member *member = &soft->plan->members.at[i];
        const struct plan_member *other = &front->plan->members.at[i];
        struct vector low = swapped(other->solid.low, axis);
        struct vector high = swapped(other->solid.high, axis);

        assert_memory_equal(&member->solid.low, &low, sizeof low);
        assert_memory_equal(&member->solid.high, &high, sizeof high);
        assert_int_equal(member->length, other->length);
        assert_int_equal(member->slant, other->slant);
        assert_string_equal(member->label, other->label);
        assert_int_equal(solid_size(&member->solid, (int)member->axis), member->length);
    }
    for (size_t i = 0; i < soft->plan->crown_pieces.count; i++)
        assert_memory_equal(soft->plan->crown_pieces.at[i].heights,
                            front->plan->crown_pieces.at[i].heights,
                            sizeof front->plan->crown_pieces.at[i].heights);
}

static void compare_crates(struct vector size, int64_t side, int axis, enum outline_word outline)
{
    void *fixtures[2];

    assert_int_equal(soft_begin(&fixtures[0]), 0);
    plan_crate(fixtures[0], size, side, outline, 5);
    assert_int_equal(soft_findings(fixtures[0], FINDING_OUTLINE_DEEP), 0);
    assert_int_equal(soft_begin(&fixtures[1]), 0);
    plan_crate(fixtures[1], swapped(size, axis),
               side == SIDE_LEFT || side == SIDE_BOTTOM ? SIDE_BACK : SIDE_FRONT, outline, 5);
    assert_swapped(fixtures[0], fixtures[1], axis);
    soft_end(&fixtures[0]);
    soft_end(&fixtures[1]);
}

static void a_crate_with_an_outline_at_its_end_is_framed_from_there(void **state)
{
    (void)state;
    compare_crates((struct vector){IN(16), IN(40), IN(30)}, SIDE_RIGHT, AXIS_X, OUTLINE_SLOPE);
    compare_crates((struct vector){IN(12), IN(28), IN(26)}, SIDE_LEFT, AXIS_X, OUTLINE_ARCH);
}

/* A seat, whose front is bowed. */
static void a_crate_with_an_outline_on_its_top_is_framed_from_there(void **state)
{
    (void)state;
    compare_crates((struct vector){IN(60), IN(22), IN(16)}, SIDE_TOP, AXIS_Z, OUTLINE_ARCH);
    compare_crates((struct vector){IN(48), IN(24), IN(14)}, SIDE_BOTTOM, AXIS_Z, OUTLINE_SHOULDER);
}

/* The outline lies in the plane of the seat: y is the height that it has over x. */
static void no_wood_stands_out_of_a_bowed_front(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_head(soft, 60, 22, OUTLINE_ARCH, 3);
    struct box upright;

    soft->model.facings.at[0].side = SIDE_TOP;
    box->frame = FRAME_CRATE;
    box->depth = IN(22);
    box->height = IN(16);
    box->main_side = SIDE_TOP;
    soft_plan(soft);
    upright = *box;
    upright.height = box->depth;
    for (size_t i = 0; i < soft->plan->members.count; i++) {
        struct plan_member member = soft->plan->members.at[i];

        member.solid.low = swapped(member.solid.low, AXIS_Z);
        member.solid.high = swapped(member.solid.high, AXIS_Z);
        assert_under(&upright, &member);
    }
    assert_int_equal(soft_findings(soft, FINDING_SCREWS_MEET), 0);
    assert_int_equal(soft_findings(soft, FINDING_PANEL_SPAN), 0);
    assert_true(soft->plan->crown_pieces.count > 0);
    assert_int_equal(soft->plan->crown_pieces.at[0].stock, soft->model.facings.at[0].stock);
}

/* Two arms: the right one's main face is its right, the left one's its left. */
static void the_image_of_an_arm_is_framed_as_its_image(void **state)
{
    struct soft *soft = *state;
    struct vector size = {IN(12), IN(28), IN(26)};
    int64_t keys[2];
    size_t half;

    for (int i = 0; i < 2; i++) {
        plan_crate(soft, size, i ? SIDE_LEFT : SIDE_RIGHT, OUTLINE_SLOPE, 6);
        keys[i] = soft->model.boxes.at[i].key;
    }
    for (int i = 0; i < 2; i++)
        soft->model.boxes.at[i].mirror_of = keys[1 - i];
    soft_plan(soft);
    half = soft->plan->members.count / 2;
    for (size_t i = 0; i < half; i++) {
        const struct plan_member *member = &soft->plan->members.at[i];
        const struct plan_member *image = &soft->plan->members.at[half + i];

        assert_int_equal(image->solid.low.x, size.x - member->solid.high.x);
        assert_int_equal(image->solid.high.x, size.x - member->solid.low.x);
        assert_int_equal(image->solid.low.y, member->solid.low.y);
        assert_int_equal(image->solid.high.z, member->solid.high.z);
        assert_int_equal(image->slant, member->slant);
    }
}

/* 40 x 30 sloping by 6 to the right: a panel on the right is cut 30 and measures 24 there. */
static void a_panel_along_the_outline_is_told(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_head(soft, 40, 30, OUTLINE_SLOPE, 6);
    int64_t key = box->key, sheet = soft->model.facings.at[0].stock;
    struct facing *side = MODEL_ADD(&soft->model, facing);
    const struct finding *found = NULL;

    make_crate(model_find(&soft->model, ENTITY_box, key));
    side->box = key;
    side->side = SIDE_RIGHT;
    side->stock = sheet;
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_PANEL_ON_OUTLINE), 1);
    for (size_t i = 0; i < soft->plan->findings.count; i++)
        if (soft->plan->findings.at[i].kind == FINDING_PANEL_ON_OUTLINE)
            found = &soft->plan->findings.at[i];
    assert_int_equal(found->arguments[1].value, IN(24));
    assert_int_equal(found->arguments[2].value, IN(30));
    assert_int_equal(cure_apply(&soft->model, &found->cures[0], NULL), FAULT_NONE);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_PANEL_ON_OUTLINE), 0);
}

static const struct part *part_of_panel(const struct soft *soft, enum side_word side)
{
    for (size_t i = 0; i < soft->plan->parts.count; i++) {
        const struct part *part = &soft->plan->parts.at[i];

        if (part->panel != PLAN_NONE && soft->plan->panels.at[part->panel].side == (int64_t)side)
            return part;
    }
    fail_msg("no such part");
    return NULL;
}

/* Over an arch of 12 on 48 goes one of 60 asin(4/5) (see test_curves.c), as wide as the crate is
 * deep. */
static void a_panel_over_an_arch_is_cut_as_long_as_it(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_head(soft, 48, 30, OUTLINE_ARCH, 12);
    int64_t key = box->key, sheet = soft->model.facings.at[0].stock;
    struct facing *top = MODEL_ADD(&soft->model, facing);

    make_crate(model_find(&soft->model, ENTITY_box, key));
    top->box = key;
    top->side = SIDE_TOP;
    top->stock = sheet;
    soft_plan(soft);
    assert_in_range(part_of_panel(soft, SIDE_TOP)->length, IN(55.636), IN(55.640));
    assert_int_equal(part_of_panel(soft, SIDE_TOP)->width,
                     ((struct box *)model_find(&soft->model, ENTITY_box, key))->depth);
    assert_int_equal(soft_findings(soft, FINDING_PANEL_ON_OUTLINE), 0);
    assert_true(soft_says(soft, STEP_PANEL, "55-5/8 in along it"));
}

static int64_t screws_of_step(const struct soft *soft, const struct panel *panel)
{
    for (size_t i = 0; i < soft->plan->steps.count; i++)
        if (soft->plan->steps.at[i].kind == STEP_PANEL &&
            soft->plan->steps.at[i].facing == panel->facing)
            return screws_needed(&soft->plan->steps.at[i]);
    fail_msg("no step for %s", panel->label);
    return 0;
}

/* It is screwed to the landing wood in front and behind, an inch from both ends and every 8 in: by
 * n = ceil((L - 2 e) / p) + 1 (common practice, no source) 7 + 1 along each arc; every 4 in 14 + 1.
 * They are bought, and on the card. */
static void a_panel_over_an_arch_is_screwed_along_it(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_head(soft, 48, 30, OUTLINE_ARCH, 12);
    int64_t key = box->key, sheet = soft->model.facings.at[0].stock;
    struct facing *top = MODEL_ADD(&soft->model, facing);

    make_crate(model_find(&soft->model, ENTITY_box, key));
    top->box = key;
    top->side = SIDE_TOP;
    top->stock = sheet;
    for (int64_t pitch = 8; pitch >= 4; pitch -= 4) {
        const struct panel *panel = NULL;
        int64_t counted = 0, placed = 0, on_top = 0;

        soft->model.facings.at[1].pitch = pitch * LENGTH_INCH;
        soft_plan(soft);
        for (size_t i = 0; i < soft->plan->panels.count; i++)
            if (soft->plan->panels.at[i].side == SIDE_TOP)
                panel = &soft->plan->panels.at[i];
        assert_non_null(panel);
        assert_int_equal(panel->screws, pitch == 8 ? 2 * 8 : 2 * 15);
        for (size_t i = 0; i < soft->plan->screw_kinds.count; i++)
            counted += soft->plan->screw_kinds.at[i].count_by_use[SCREW_PANEL];
        for (size_t i = 0; i < soft->plan->screws.count; i++) {
            const struct screw *screw = &soft->plan->screws.at[i];

            placed += screw->use == SCREW_PANEL;
            on_top += screw->use == SCREW_PANEL && &soft->plan->panels.at[screw->of] == panel;
        }
        assert_int_equal(counted, placed + panel->screws);
        assert_int_equal(screws_of_step(soft, panel), on_top + panel->screws);
    }
}

/* A board is its panel, and has no step of its own for it. */
static void a_board_is_sawn_to_its_outline_before_its_edges_are_eased(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_head(soft, 48, 30, OUTLINE_ARCH, 12);
    int64_t with, without;

    box->frame = FRAME_BOARD;
    box->depth = IN(0.5);
    soft_plan(soft);
    with = soft_step(soft, STEP_EASE)->minutes;
    assert_true(soft_says(soft, STEP_EASE, "saw it along them, 55-5/8 in"));
    box->outline = OUTLINE_RECTANGLE;
    soft_plan(soft);
    without = soft_step(soft, STEP_EASE)->minutes;
    assert_false(soft_says(soft, STEP_EASE, "saw it"));
    assert_in_range(with - without, 1.413 * 4000 - 10, 1.413 * 4000 + 10);
}

/* No ladder fits under an outline that comes down to 2 in. */
static void an_outline_too_deep_for_a_frame_is_told(void **state)
{
    struct soft *soft = *state;
    struct box *box = add_head(soft, 40, 30, OUTLINE_SLOPE, 28);

    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_OUTLINE_DEEP), 1);
    assert_int_equal(soft->plan->crown_pieces.count, 0);
    box->rise = IN(6);
    soft_plan(soft);
    assert_int_equal(soft_findings(soft, FINDING_OUTLINE_DEEP), 0);
}

static void a_rectangle_has_no_crown(void **state)
{
    struct soft *soft = *state;

    add_head(soft, 40, 30, OUTLINE_RECTANGLE, 6);
    soft_plan(soft);
    assert_int_equal(soft->plan->crown_pieces.count, 0);
    for (size_t i = 0; i < soft->plan->members.count; i++)
        assert_int_equal(soft->plan->members.at[i].slant, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_member_stands_out_of_the_outline),
        SOFT_TEST(landing_wood_follows_an_arch_from_side_to_side),
        SOFT_TEST(posts_of_a_slope_are_cut_on_the_slant),
        cmocka_unit_test(posts_stand_beside_what_ends_under_the_rail),
        SOFT_TEST(landing_wood_is_cut_from_the_sheet_of_the_face),
        SOFT_TEST(landing_wood_is_screwed_to_each_post),
        SOFT_TEST(sawing_to_the_outline_takes_time),
        cmocka_unit_test(the_edge_of_a_panel_is_screwed_along_its_outline),
        SOFT_TEST(a_post_stands_beside_a_seam_of_the_panels),
        SOFT_TEST(a_seam_right_beside_the_end_has_its_post),
        SOFT_TEST(the_cards_say_what_is_cut_to_the_outline),
        SOFT_TEST(an_outline_too_deep_for_a_frame_is_told),
        SOFT_TEST(a_crate_has_a_crown_on_both_its_ladders),
        SOFT_TEST(a_crate_with_an_outline_at_its_end_is_framed_from_there),
        SOFT_TEST(a_crate_with_an_outline_on_its_top_is_framed_from_there),
        SOFT_TEST(no_wood_stands_out_of_a_bowed_front),
        SOFT_TEST(the_image_of_an_arm_is_framed_as_its_image),
        SOFT_TEST(a_panel_along_the_outline_is_told),
        SOFT_TEST(a_panel_over_an_arch_is_cut_as_long_as_it),
        SOFT_TEST(a_panel_over_an_arch_is_screwed_along_it),
        SOFT_TEST(a_board_is_sawn_to_its_outline_before_its_edges_are_eased),
        SOFT_TEST(a_rectangle_has_no_crown),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);

    return failed ? 1 : 0;
}
