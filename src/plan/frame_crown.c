/*
 * The crown of a ladder: what rises above its top rail under an outline that is no rectangle. A
 * crate carries one on each of its two ladders, which stand where the outline is (frame_laid.c).
 *
 * 1  The frame itself ends at the lowest place of the outline, so that no rail is cut by the
 *    curve. Where there is no room for a frame under that, it stays as high as the box, and a
 *    finding says that its members are cut by hand.
 *
 * 2  Posts stand on the top rail at both ends, under the seams between panels and of what is bent
 *    over the outline, and no farther apart than the panels allow, each set off from what ends
 * under the rail there; an end upright that runs through rises itself. Each is cut on the slant,
 * from the outline over its one side to that over its other; where that is less than two sticks are
 * wide none stands.
 *
 * 3  From end to end along the outline lie pieces of the face's sheet, cut to the curve, as deep
 *    below it as a landing or, where it passes no post, down to the rail: they take the staples of
 *    what is pulled over it. Each is glued, and screwed to every post and block that it passes.
 *
 * 4  In a crate a cross goes from each post that is high enough to the one behind it, under their
 *    tops: it holds the two crowns apart and carries what is bent over them.
 */
#include "plan/ladder.h"

#include "plan/curve.h"
#include "plan/findings.h"
#include "plan/screws.h"
#include "plan/slices.h"

#include <assert.h>
#include <stdio.h>

#define SCREWS_A_POST 2
#define SAMPLES 16                       /* of the outline over one piece */
#define NOTHING_TO_CUT (LENGTH_INCH / 4) /* the rail itself lies that near to the outline */

static bool has_crown(const struct framing *framing)
{
    const struct box *box = framing->box;

    return (box->frame == FRAME_LADDER || box->frame == FRAME_CRATE) &&
           framing->normal == side_axis(box->main_side) && curve_has(box, box->main_side);
}

/* What of the face's height a panel that lies over the frame takes. */
static int64_t panel_over(const struct framing *framing)
{
    struct area face = face_area(framing->box, framing->box->main_side);

    return face.v1 - solid_on_side(&framing->space, framing->box->main_side).v1;
}

int64_t crown_height(const struct framing *framing, int64_t u)
{
    struct area face = face_area(framing->box, framing->box->main_side);
    int64_t at = length_larger(face.u0, length_smaller(u, face.u1)) - face.u0;

    if (framing->turned_round)
        at = area_width(&face) - at;
    return face.v0 + curve_height(framing->planning->model, framing->box, at) - panel_over(framing);
}

int64_t crown_floor(struct framing *framing, int64_t floor, int64_t top, int64_t least)
{
    const struct box *box = framing->box;
    int64_t lowest = curve_lowest(framing->planning->model, box) - panel_over(framing);
    struct finding *finding;

    if (!curve_has(box, box->main_side) || lowest >= top)
        return top;
    if (has_crown(framing) && lowest - floor > least)
        return lowest;
    finding = finding_add(framing->planning, FINDING_OUTLINE_DEEP, ENTITY_box, box->key);
    argument_length(finding, 0, lowest);
    argument_length(finding, 1, top);
    return top;
}

/* ---- posts ---- */

/* A crown while its posts are set: under the rail `below` ends. */
struct crown {
    struct ladder *ladder;
    struct area area;
    struct places below;
    struct places posts; /* their left sides */
};

static bool is_of_ladder(const struct ladder *ladder, const struct plan_member *member)
{
    int normal = ladder->framing->normal;
    const struct solid *space = &ladder->framing->space;

    return member->axis == ladder->up &&
           vector_along(member->solid.low, normal) < vector_along(space->high, normal) &&
           vector_along(space->low, normal) < vector_along(member->solid.high, normal);
}

static void find_below(struct crown *crown)
{
    struct ladder *ladder = crown->ladder;
    const struct plan *plan = ladder->framing->planning->plan;

    for (size_t i = ladder->framing->first; i < plan->members.count; i++) {
        const struct plan_member *member = &plan->members.at[i];

        if (is_of_ladder(ladder, member) &&
            vector_along(member->solid.high, ladder->up) < ladder->field.v1 &&
            vector_along(member->solid.high, ladder->up) >= ladder->field.v1 - ladder->show)
            ladder_place(ladder, &crown->below, vector_along(member->solid.low, ladder->along));
    }
}

/* The upright that runs through up to the top of the ladder at a place; NULL without one. */
static struct plan_member *through_at(const struct ladder *ladder, int64_t u)
{
    struct plan *plan = ladder->framing->planning->plan;

    for (size_t i = ladder->framing->first; i < plan->members.count; i++) {
        struct plan_member *member = &plan->members.at[i];

        if (is_of_ladder(ladder, member) &&
            vector_along(member->solid.high, ladder->up) == ladder->field.v1 &&
            vector_along(member->solid.low, ladder->along) == u)
            return member;
    }
    return NULL;
}

/* The outline is nowhere higher than the face. */
static void cut_slant(const struct ladder *ladder, struct plan_member *post, int64_t left,
                      int64_t right)
{
    vector_set(&post->solid.high, ladder->up, length_larger(left, right));
    post->length = solid_size(&post->solid, ladder->up);
    post->slant = right - left;
}

void crown_slant(struct ladder *ladder, int64_t left, int64_t right)
{
    cut_slant(ladder, framing_last(ladder->framing), left, right);
}

static void set_top(struct crown *crown, struct plan_member *post, int64_t u)
{
    struct ladder *ladder = crown->ladder;

    cut_slant(ladder, post, crown_height(ladder->framing, u),
              crown_height(ladder->framing, u + ladder->show));
    *LIST_ADD(ladder->framing->planning->arena, &crown->posts.of) = u;
    assert(post->length > 0);
}

/* How high a post is at least: one that stands on the rail takes the screw from below and those of
 * the panel. */
static int64_t least_post(const struct ladder *ladder, bool through)
{
    return through ? NOTHING_TO_CUT : 2 * ladder->show;
}

static void add_post(struct crown *crown, int64_t u, bool left)
{
    struct ladder *ladder = crown->ladder;
    struct plan_member *through = through_at(ladder, u);
    int64_t floor = ladder->field.v1;
    int64_t at = through ? u : ladder_stagger(ladder, &crown->below, u, left);
    int64_t lower;

    if (at < crown->area.u0 || at + ladder->show > crown->area.u1)
        return;
    lower = length_smaller(crown_height(ladder->framing, at),
                           crown_height(ladder->framing, at + ladder->show));
    if (lower - floor < least_post(ladder, through != NULL))
        return;
    if (!through)
        ladder_upright(ladder, MEMBER_SUPPORT, at, floor, lower);
    set_top(crown, through ? through : framing_last(ladder->framing), at);
}

/* From one post up to the next one that has its place, that one left out. */
static void divide_crown(struct crown *crown, int64_t from, int64_t to)
{
    struct ladder *ladder = crown->ladder;
    int64_t span = length_smaller(ladder_span(ladder, &crown->area),
                                  ladder->framing->planning->value[TRADE_SPAN_COVERING_1_2]);
    int64_t bays = span > 0 ? whole_divide_up(to - from, span + ladder->show) : 1;

    for (int64_t i = 0; i < bays; i++)
        add_post(crown, from + whole_divide_even((to - from) * i, bays), false);
}

/* Where two panels that lie over the outline meet. */
static void add_bent_seams(const struct crown *crown, struct places *seams)
{
    struct ladder *ladder = crown->ladder;
    const struct box *box = ladder->framing->box;
    const struct plan *plan = ladder->framing->planning->plan;
    struct slice panels = plan_panels_of(plan, box->key);

    for (size_t i = panels.from; i < panels.to; i++) {
        const struct panel *panel = &plan->panels.at[i];
        int64_t end = vector_along(panel->solid.high, ladder->along);

        if (!panel->loose && curve_under(box, panel->side) && crown->area.u0 < end &&
            end < crown->area.u1)
            ladder_place(ladder, seams, end);
    }
}

static void add_posts(struct crown *crown)
{
    struct ladder *ladder = crown->ladder;
    struct places seams = ladder_seams(ladder, &crown->area, true);
    int64_t last = crown->area.u1 - ladder->show;
    int64_t from = crown->area.u0;

    add_bent_seams(crown, &seams);
    find_below(crown);
    for (size_t i = 0; i < seams.of.count; i++) {
        int64_t under = seams.of.at[i] - ladder->show / 2;

        if (under < from + ladder->show || under + ladder->show > last)
            continue;
        divide_crown(crown, from, under);
        from = under;
    }
    divide_crown(crown, from, last);
    add_post(crown, last, true);
}

/* ---- landing wood ---- */

/* The sheet of the main face; 0 without a panel there. */
static int64_t sheet_of(const struct framing *framing)
{
    const struct plan *plan = framing->planning->plan;
    struct slice panels = plan_panels_of(plan, framing->box->key);

    for (size_t i = panels.from; i < panels.to; i++)
        if (plan->panels.at[i].side == framing->box->main_side)
            return plan->panels.at[i].stock;
    return 0;
}

static size_t count_of(const struct plan *plan, int64_t box)
{
    size_t count = 0;

    for (size_t i = plan->crown_pieces.count; i > 0 && plan->crown_pieces.at[i - 1].box == box; i--)
        count++;
    return count;
}

static int64_t posts_behind(const struct ladder *ladder, const struct places *posts,
                            const struct area *area)
{
    int64_t count = 0;

    for (size_t i = 0; i < posts->of.count; i++)
        count += posts->of.at[i] < area->u1 && area->u0 < posts->of.at[i] + ladder->show;
    return count;
}

/* Each block belongs to the piece that its middle lies on. */
static int64_t blocks_behind(const struct ladder *ladder, const struct area *area)
{
    const struct plan *plan = ladder->framing->planning->plan;
    int64_t count = 0;

    for (size_t i = ladder->framing->first; i < plan->members.count; i++) {
        const struct plan_member *block = &plan->members.at[i];
        int64_t middle = vector_along(block->solid.low, ladder->along) + ladder->show / 2;

        count += block->kind == MEMBER_BLOCK && is_of_ladder(ladder, block) && area->u0 <= middle &&
                 middle < area->u1;
    }
    return count;
}

/* Through the sheet into the posts and blocks behind it. */
static void screw_piece(struct ladder *ladder, const struct places *posts,
                        struct crown_piece *piece)
{
    struct framing *framing = ladder->framing;
    struct planning *planning = framing->planning;
    const struct stock *sheet = MODEL_FIND(planning->model, stock, piece->stock);
    struct screw_need need = {.gauge = planning->value[TRADE_SCREW_GAUGE_PANEL],
                              .passed = sheet ? sheet->thickness : 0,
                              .receiving = solid_size(&framing->space, framing->normal),
                              .wood = stock_wood(planning->model, framing->box->stick),
                              .panel = true};
    struct screw_choice choice;

    piece->screw = PLAN_NONE;
    piece->screws = SCREWS_A_POST * posts_behind(ladder, posts, &piece->area) +
                    blocks_behind(ladder, &piece->area);
    if (piece->screws == 0)
        return;
    choice = screw_choose(planning, &need);
    screw_choice_tell(planning, &choice, ENTITY_box, piece->box);
    piece->screw = choice.kind;
    if (choice.kind == PLAN_NONE)
        piece->screws = 0;
    else
        screw_count(planning, choice.kind, SCREW_FRAME, piece->screws);
}

/* One piece from place to place; none where the rail lies as high as it would. */
static void add_piece(struct ladder *ladder, const struct places *posts, int64_t from, int64_t to)
{
    struct framing *framing = ladder->framing;
    struct plan *plan = framing->planning->plan;
    int64_t floor = ladder->field.v1;
    int64_t low = INT64_MAX, high = 0;
    struct crown_piece *piece;

    for (int64_t i = 0; i <= SAMPLES; i++) {
        int64_t height = crown_height(framing, from + (to - from) * i / SAMPLES);

        low = length_smaller(low, height);
        high = length_larger(high, height);
    }
    if (high - floor < NOTHING_TO_CUT || to <= from)
        return;
    piece = LIST_ADD(framing->planning->arena, &plan->crown_pieces);
    piece->box = framing->box->key;
    snprintf(piece->label, sizeof piece->label, "%s-K%zu", framing->box->name,
             count_of(plan, piece->box));
    piece->stock = sheet_of(framing);
    piece->area = (struct area){from, floor, to, high};
    if (posts_behind(ladder, posts, &piece->area) > 0)
        piece->area.v0 = length_larger(floor, low - framing->planning->value[TRADE_LANDING]);
    for (int64_t i = 0; i < CROWN_HEIGHTS; i++)
        piece->heights[i] =
            crown_height(framing, from + (to - from) * i / (CROWN_HEIGHTS - 1)) - piece->area.v0;
    assert(piece->area.v0 >= floor && piece->area.v0 <= piece->area.v1);
    screw_piece(ladder, posts, piece);
}

static void add_pieces(struct ladder *ladder, const struct area *crown, const struct places *posts)
{
    int64_t from = crown->u0;

    for (size_t i = 0; i < posts->of.count; i++) {
        int64_t middle = posts->of.at[i] + ladder->show / 2;

        if (posts->of.at[i] <= crown->u0 || posts->of.at[i] + ladder->show >= crown->u1)
            continue; /* the piece reaches over the posts at the ends */
        add_piece(ladder, posts, from, middle);
        from = middle;
    }
    add_piece(ladder, posts, from, crown->u1);
}

static struct places raise_crown(struct ladder *ladder)
{
    struct framing *framing = ladder->framing;
    struct crown crown = {.ladder = ladder,
                          .area = solid_on_side(&framing->space, framing->box->main_side)};

    crown.area.v0 = ladder->field.v1;
    add_posts(&crown);
    crown_back_edge(ladder, &crown.area, &crown.posts);
    add_pieces(ladder, &crown.area, &crown.posts);
    return crown.posts;
}

void crown_add(struct ladder *ladder)
{
    struct framing *framing = ladder->framing;

    if (has_crown(framing) &&
        ladder->field.v1 < solid_on_side(&framing->space, framing->box->main_side).v1)
        raise_crown(ladder);
}

/* ---- crates ---- */

/* From a post to the one behind it, under the lower side of their tops; none where the screws that
 * hold it would meet those of the post's foot. */
static void add_cross(const struct crown_crate *crate, const struct framing *framing, int64_t post)
{
    int64_t high =
        length_smaller(crown_height(framing, post), crown_height(framing, post + crate->show));
    struct solid cross = framing->space;

    if (high - crate->floor < 2 * crate->cross_z)
        return;
    cross.low.x = post + (crate->show - crate->cross_x) / 2;
    cross.high.x = cross.low.x + crate->cross_x;
    cross.low.y += crate->deep;
    cross.high.y -= crate->deep;
    cross.low.z = high - crate->cross_z;
    cross.high.z = high;
    framing_add(crate->framing, MEMBER_CROSS, AXIS_Y, &cross);
}

/* On one of the two ladders. */
static struct places raise_on(const struct crown_crate *crate, bool front)
{
    struct framing one = *crate->framing;
    struct ladder ladder = {.framing = &one, .along = AXIS_X, .up = AXIS_Z, .show = crate->show};
    struct plan *plan = one.planning->plan;
    size_t first = plan->crown_pieces.count;
    struct places posts;

    if (front)
        one.space.low.y = one.space.high.y - crate->deep;
    else
        one.space.high.y = one.space.low.y + crate->deep;
    ladder.field = solid_on_side(&one.space, one.box->main_side);
    ladder.field.v1 = crate->floor;
    posts = raise_crown(&ladder);
    for (size_t i = first; i < plan->crown_pieces.count; i++)
        plan->crown_pieces.at[i].behind = front != (one.box->main_side == SIDE_FRONT);
    return posts;
}

void crown_add_to_crate(const struct crown_crate *crate)
{
    const struct framing *framing = crate->framing;
    struct places posts;

    if (!has_crown(framing) || crate->floor >= framing->space.high.z)
        return;
    raise_on(crate, true);
    posts = raise_on(crate, false);
    for (size_t i = 0; i < posts.of.count; i++)
        add_cross(crate, framing, posts.of.at[i]);
}
