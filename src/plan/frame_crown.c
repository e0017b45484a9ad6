/*
 * The crown of a ladder: what rises above its top rail under an outline that is no rectangle.
 *
 * 1  The ladder itself ends at the lowest place of the outline, so that no rail is cut by the
 *    curve. Where a ladder has no room under it, the frame stays as high as the box, and a finding
 *    tells that its members are cut by hand.
 *
 * 2  Posts stand on the top rail at both ends, under the seams between panels, and no farther
 *    apart than the panels allow. Each is cut on the slant, from the outline over its one side to
 *    that over its other; where that is less than a stick is wide none stands.
 *
 * 3  From end to end along the outline lie pieces of the face's sheet, cut to the curve, as deep
 *    below it as a landing or down to the rail: they take the staples of what is pulled over it.
 *    Each is glued, and screwed to every post that it passes.
 */
#include "plan/ladder.h"

#include "plan/curve.h"
#include "plan/findings.h"
#include "plan/screws.h"

#include <stdio.h>

#define SCREWS_A_POST 2
#define SAMPLES 16                       /* of the outline over one piece */
#define NOTHING_TO_CUT (LENGTH_INCH / 4) /* the rail itself lies that near to the outline */

static bool has_crown(const struct framing *framing)
{
    return framing->box->frame == FRAME_LADDER && curve_has(framing->box, framing->box->main_side);
}

/* Of the outline over a place of the plane; an image is framed as its twin. */
static int64_t height_over(const struct framing *framing, int64_t u)
{
    struct area face = face_area(framing->box, framing->box->main_side);
    int64_t at = length_larger(face.u0, length_smaller(u, face.u1)) - face.u0;

    if (framing->turned_round)
        at = area_width(&face) - at;
    return face.v0 + curve_height(framing->planning->model, framing->box, at);
}

void crown_lower(struct ladder *ladder)
{
    struct framing *framing = ladder->framing;
    int64_t lowest = curve_lowest(framing->planning->model, framing->box);
    struct finding *finding;

    if (!has_crown(framing) || lowest >= ladder->field.v1)
        return;
    if (lowest - ladder->field.v0 > 2 * ladder->show) {
        ladder->field.v1 = lowest;
        return;
    }
    finding = finding_add(framing->planning, FINDING_OUTLINE_DEEP, ENTITY_box, framing->box->key);
    argument_length(finding, 0, lowest);
    argument_length(finding, 1, ladder->field.v1);
}

/* ---- posts ---- */

struct posts {
    LIST_OF(int64_t) of; /* their left sides */
};

static void add_post(struct ladder *ladder, int64_t u, int64_t top, struct posts *posts)
{
    struct framing *framing = ladder->framing;
    int64_t left = height_over(framing, u);
    int64_t right = height_over(framing, u + ladder->show);
    int64_t floor = ladder->field.v1;

    if (length_smaller(left, right) - floor < ladder->show)
        return;
    ladder_upright(ladder, MEMBER_SUPPORT, u, floor,
                   length_smaller(top, length_larger(left, right)));
    framing_last(framing)->slant = right - left;
    *LIST_ADD(framing->planning->arena, &posts->of) = u;
}

/* From one post up to the next one that has its place, that one left out. */
static void divide_crown(struct ladder *ladder, const struct area *crown, int64_t from, int64_t to,
                         struct posts *posts)
{
    int64_t span = length_smaller(ladder_span(ladder, crown),
                                  ladder->framing->planning->value[TRADE_SPAN_COVERING_1_2]);
    int64_t bays = span > 0 ? whole_divide_up(to - from, span + ladder->show) : 1;

    for (int64_t i = 0; i < bays; i++)
        add_post(ladder, from + whole_divide_even((to - from) * i, bays), crown->v1, posts);
}

static struct posts add_posts(struct ladder *ladder, const struct area *crown)
{
    struct places seams = ladder_seams(ladder, crown, true);
    int64_t last = crown->u1 - ladder->show;
    int64_t from = crown->u0;
    struct posts posts = {0};

    for (size_t i = 0; i < seams.of.count; i++) {
        int64_t under = seams.of.at[i] - ladder->show / 2;

        if (under < from + ladder->show || under + ladder->show > last)
            continue;
        divide_crown(ladder, crown, from, under, &posts);
        from = under;
    }
    divide_crown(ladder, crown, from, last, &posts);
    add_post(ladder, last, crown->v1, &posts);
    return posts;
}

/* ---- landing wood ---- */

/* The sheet of the main face; 0 without a panel there. */
static int64_t sheet_of(const struct framing *framing)
{
    const struct model *model = framing->planning->model;

    for (size_t i = 0; i < model->facings.count; i++)
        if (model->facings.at[i].box == framing->box->key &&
            model->facings.at[i].side == framing->box->main_side &&
            model->facings.at[i].kind == FACING_PANEL)
            return model->facings.at[i].stock;
    return 0;
}

static size_t count_of(const struct plan *plan, int64_t box)
{
    size_t count = 0;

    for (size_t i = plan->crown_pieces.count; i > 0 && plan->crown_pieces.at[i - 1].box == box; i--)
        count++;
    return count;
}

/* Through the sheet into the posts behind it. */
static void screw_piece(struct ladder *ladder, const struct posts *posts, struct crown_piece *piece)
{
    struct framing *framing = ladder->framing;
    struct planning *planning = framing->planning;
    const struct stock *sheet = MODEL_FIND(planning->model, stock, piece->stock);
    const struct stock *stick = MODEL_FIND(planning->model, stock, framing->box->stick);
    struct screw_need need = {.gauge = planning->value[TRADE_SCREW_GAUGE_PANEL],
                              .passed = sheet ? sheet->thickness : 0,
                              .receiving = solid_size(&framing->space, framing->normal),
                              .wood = stick ? stick->wood : WOOD_SOFT,
                              .panel = true};
    struct screw_choice choice;

    piece->screw = PLAN_NONE;
    for (size_t i = 0; i < posts->of.count; i++)
        if (posts->of.at[i] < piece->area.u1 && piece->area.u0 < posts->of.at[i] + ladder->show)
            piece->screws += SCREWS_A_POST;
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
static void add_piece(struct ladder *ladder, const struct posts *posts, int64_t from, int64_t to)
{
    struct framing *framing = ladder->framing;
    struct plan *plan = framing->planning->plan;
    int64_t floor = ladder->field.v1;
    int64_t low = INT64_MAX, high = 0;
    struct crown_piece *piece;

    for (int64_t i = 0; i <= SAMPLES; i++) {
        int64_t height = height_over(framing, from + (to - from) * i / SAMPLES);

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
    piece->area = (struct area){
        from, length_larger(floor, low - framing->planning->value[TRADE_LANDING]), to, high};
    for (int64_t i = 0; i < CROWN_HEIGHTS; i++)
        piece->heights[i] =
            height_over(framing, from + (to - from) * i / (CROWN_HEIGHTS - 1)) - piece->area.v0;
    screw_piece(ladder, posts, piece);
}

static void add_pieces(struct ladder *ladder, const struct area *crown, const struct posts *posts)
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

void crown_add(struct ladder *ladder)
{
    struct framing *framing = ladder->framing;
    struct area crown = solid_on_side(&framing->space, framing->box->main_side);
    struct posts posts;

    if (!has_crown(framing) || ladder->field.v1 >= crown.v1)
        return;
    crown.v0 = ladder->field.v1;
    posts = add_posts(ladder, &crown);
    add_pieces(ladder, &crown, &posts);
}
