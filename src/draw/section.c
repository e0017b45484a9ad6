/*
 * A cut through the padding.
 *
 * The ground is a profile: how high what lies on the face reaches, stretch by stretch from the edge
 * inward; and one height each for the side round the edge and for the face behind. Layers are laid
 * on it from the wood outward. Where one begins or ends within the face the next goes up or down
 * with the step.
 */
#include "draw/section.h"

#include "base/show.h"
#include "plan/drape.h"
#include "plan/geometry.h"
#include "plan/padding.h"
#include "plan/slices.h"

/* What a picture shows at least and at most of the face and of the box's depth. */
#define SHOWN_ALONG FIELDS_MM(50)
#define SHOWN_DEEP FIELDS_MM(150)

#define STRETCHES 24

/* One stretch of the face, from its beginning to that of the next. */
struct stretch_of_face {
    int64_t from, height;
};

struct cut_open {
    struct drawing *drawing;
    const struct plan *plan;
    const struct box *box;
    int64_t side, edge, chosen;
    int along, across, deep; /* axes: of the edge, into the face, into the box */
    int64_t middle;          /* along the edge: where the cut goes */
    int64_t reach;           /* of the face, across */
    int64_t depth;           /* of the box */
    struct stretch_of_face face[STRETCHES];
    int stretches;
    int64_t beside, behind; /* heights on the side round the edge and on the face behind */
    struct arena *arena;
};

/* ---- marks ---- */

static void add_area(const struct cut_open *cut, enum mark_kind kind, struct area area)
{
    area = area_cut(&area, &cut->drawing->bounds);
    if (area.u0 <= area.u1 && area.v0 <= area.v1)
        *LIST_ADD(cut->arena, &cut->drawing->marks) = (struct mark){kind, area};
}

static void add_label(const struct cut_open *cut, int64_t v, const char *text)
{
    const struct area *bounds = &cut->drawing->bounds;

    v = v < bounds->v0 ? bounds->v0 : v > bounds->v1 ? bounds->v1 : v;
    *LIST_ADD(cut->arena, &cut->drawing->labels) = (struct label){bounds->u1, v, true, text};
}

static const char *length_text(const struct cut_open *cut, int64_t length)
{
    char printed[QUANTITY_TEXT];

    quantity_print_unit(printed, QUANTITY_LENGTH, model_units(cut->plan->facts), length);
    return arena_text(cut->arena, printed);
}

/* ---- wood ---- */

static int64_t u_of(const struct cut_open *cut, int64_t at)
{
    return cut->edge == EDGE_LEFT || cut->edge == EDGE_BOTTOM ? at : cut->reach - at;
}

/* Outward from the face. */
static int64_t v_of(const struct cut_open *cut, int64_t at)
{
    return side_sign(cut->side) > 0 ? at - cut->depth : -at;
}

/* False where the cut does not go through it. */
static bool cut_solid(const struct cut_open *cut, const struct solid *solid, struct area *ret_area)
{
    int64_t u0 = u_of(cut, vector_along(solid->low, cut->across));
    int64_t u1 = u_of(cut, vector_along(solid->high, cut->across));
    int64_t v0 = v_of(cut, vector_along(solid->low, cut->deep));
    int64_t v1 = v_of(cut, vector_along(solid->high, cut->deep));

    if (vector_along(solid->low, cut->along) > cut->middle ||
        vector_along(solid->high, cut->along) <= cut->middle)
        return false;
    *ret_area = (struct area){length_smaller(u0, u1), length_smaller(v0, v1), length_larger(u0, u1),
                              length_larger(v0, v1)};
    *ret_area = area_cut(ret_area, &cut->drawing->bounds);
    return !area_empty(ret_area);
}

static void add_wood(const struct cut_open *cut, enum mark_kind kind, const struct solid *solid,
                     const char *name)
{
    struct area area;

    if (!cut_solid(cut, solid, &area))
        return;
    add_area(cut, kind, area);
    add_label(
        cut, (area.v0 + area.v1) / 2,
        arena_format(cut->arena, "%s %s", name, length_text(cut, solid_size(solid, cut->deep))));
}

static void add_all_wood(const struct cut_open *cut)
{
    struct slice members = plan_members_of(cut->plan, cut->box->key);
    struct slice panels = plan_panels_of(cut->plan, cut->box->key);

    for (size_t i = members.from; i < members.to; i++) {
        const struct plan_member *member = &cut->plan->members.at[i];
        add_wood(cut, MARK_CUT_WOOD, &member->solid, words_member.at[member->kind].name);
    }
    for (size_t i = panels.from; i < panels.to; i++)
        add_wood(cut, MARK_CUT_PANEL, &cut->plan->panels.at[i].solid, "panel");
}

/* ---- the profile ---- */

/* Makes a stretch begin at a place; the index of that one. No more than fit. */
static int part_at(struct cut_open *cut, int64_t at)
{
    int i = 0;

    while (i < cut->stretches && cut->face[i].from < at)
        i++;
    if ((i < cut->stretches && cut->face[i].from == at) || cut->stretches == STRETCHES)
        return i;
    for (int k = cut->stretches++; k > i; k--)
        cut->face[k] = cut->face[k - 1];
    cut->face[i] = (struct stretch_of_face){at, i ? cut->face[i - 1].height : 0};
    return i;
}

static int64_t stretch_end(const struct cut_open *cut, int i)
{
    return i + 1 < cut->stretches ? cut->face[i + 1].from : cut->reach;
}

/* ---- one layer ---- */

/* A layer as it lies at the cut. */
struct laid {
    const struct layer *layer;
    const struct edge *stapled; /* the edge's staples, NULL without */
    enum mark_kind kind;
    int64_t from, to; /* on the face, from the edge */
    int64_t thick;
    int64_t round;   /* how far down the side it goes; 0: it ends at the edge */
    int64_t landing; /* on the face behind; 0 for none */
    int64_t top;     /* highest place that it reached */
};

static enum mark_kind kind_of(const struct layer *layer)
{
    switch (layer->kind) {
    case LAYER_FOAM:
        return MARK_CUT_FOAM;
    case LAYER_BATTING:
        return MARK_CUT_BATTING;
    case LAYER_COVER:
        return MARK_CUT_COVER;
    default:
        return MARK_CUT_LINING;
    }
}

static int64_t ending_at(const struct cut_open *cut, const struct layer *layer)
{
    const int64_t endings[] = {[EDGE_LEFT] = layer->left,
                               [EDGE_RIGHT] = layer->right,
                               [EDGE_TOP] = layer->top,
                               [EDGE_BOTTOM] = layer->bottom};

    return endings[cut->edge];
}

/* What is stapled along this edge: its own row, or a loop that it is part of. */
static const struct edge *staples_of(const struct cut_open *cut, const struct layer *layer)
{
    for (size_t i = 0; i < cut->plan->edges.count; i++) {
        const struct edge *edge = &cut->plan->edges.at[i];
        if (edge->layer == layer->key && (edge->edge == cut->edge || edge->edge == EDGE_LOOP))
            return edge;
    }
    return NULL;
}

static bool lands_on(const struct laid *laid, int64_t side)
{
    return laid->stapled && laid->stapled->landing_side == side;
}

/* How it goes on round the edge. Padding is cut off where it has gone round: only what is stapled
 * behind goes on there. */
static void set_round(const struct cut_open *cut, struct laid *laid)
{
    const struct layer *layer = laid->layer;
    int64_t ending = ending_at(cut, layer);
    int64_t landing = laid->stapled && laid->stapled->landing ? laid->stapled->landing
                                                              : cut->plan->value[TRADE_LANDING];

    if (laid->from > 0 || layer->shape == SHAPE_SLAB || layer->shape == SHAPE_FLAT ||
        ending == ENDING_STOP)
        return;
    if (layer->shape == SHAPE_SEWN && ending == ENDING_SEWN) {
        laid->round = layer->boxing ? layer->boxing : cut->depth;
    } else if (ending == ENDING_WRAP) {
        laid->round = cut->depth;
        laid->landing = lands_on(laid, side_opposite(cut->side)) ? landing : 0;
    } else {
        laid->round = landing;
    }
}

/* Where it lies on the face at the cut; false where the cut does not go through it. */
static bool lay(const struct cut_open *cut, const struct layer *layer, struct laid *ret_laid)
{
    struct area area = layer_area(cut->box, cut->side, layer);
    bool upright = edge_is_upright(cut->edge);
    int64_t begin = upright ? area.v0 : area.u0;
    int64_t end = upright ? area.v1 : area.u1;
    int64_t low = u_of(cut, upright ? area.u0 : area.v0);
    int64_t high = u_of(cut, upright ? area.u1 : area.v1);

    *ret_laid = (struct laid){.layer = layer,
                              .stapled = staples_of(cut, layer),
                              .kind = kind_of(layer),
                              .from = length_smaller(low, high),
                              .to = length_larger(low, high),
                              .thick = layer_thickness(cut->plan, layer)};
    if (begin > cut->middle || end <= cut->middle || ret_laid->from >= ret_laid->to)
        return false;
    set_round(cut, ret_laid);
    return true;
}

/* Up or down from one height to another at a place of the face. */
static void add_step(const struct cut_open *cut, const struct laid *laid, int64_t at, int64_t one,
                     int64_t other)
{
    if (one != other)
        add_area(cut, laid->kind,
                 (struct area){at, length_smaller(one, other), at,
                               length_larger(one, other) + laid->thick});
}

static void lay_on_face(struct cut_open *cut, struct laid *laid)
{
    int first = part_at(cut, laid->from);
    int last = part_at(cut, laid->to);

    for (int i = first; i < last; i++) {
        int64_t height = cut->face[i].height;
        int64_t begin = i == 0 && laid->round ? -cut->beside - laid->thick : cut->face[i].from;
        add_area(cut, laid->kind,
                 (struct area){begin, height, stretch_end(cut, i), height + laid->thick});
        if (i > first)
            add_step(cut, laid, cut->face[i].from, cut->face[i - 1].height - laid->thick, height);
        cut->face[i].height += laid->thick;
        laid->top = length_larger(laid->top, height + laid->thick);
    }
}

static void lay_round(struct cut_open *cut, const struct laid *laid)
{
    int64_t out = -cut->beside - laid->thick;

    if (!laid->round)
        return;
    add_area(cut, laid->kind,
             (struct area){out, -laid->round - (laid->landing ? cut->behind + laid->thick : 0),
                           -cut->beside, cut->face[0].height});
    if (laid->landing) {
        add_area(cut, laid->kind,
                 (struct area){out, -cut->depth - cut->behind - laid->thick, laid->landing,
                               -cut->depth - cut->behind});
        cut->behind += laid->thick;
    }
    cut->beside += laid->thick;
}

/* A staple through the layer at its landing, as deep as its leg is long. On the face it only shows
 * where it reaches wood: over a slab the layer is held by what goes round. */
static void add_staple(const struct cut_open *cut, const struct laid *laid)
{
    const struct edge *row = laid->stapled;
    int64_t leg = row ? row->leg : 0;
    int64_t at = row ? laid->from + row->landing / 2 : 0;
    int64_t down = row ? row->landing / 2 - laid->round : 0;

    if (!row || row->staples == 0)
        return;
    if (laid->landing)
        add_area(cut, MARK_CUT_STAPLE,
                 (struct area){laid->landing / 2, -cut->depth - cut->behind, laid->landing / 2,
                               -cut->depth - cut->behind + leg});
    else if (lands_on(laid, edge_side(cut->side, cut->edge)) && laid->round)
        add_area(cut, MARK_CUT_STAPLE, (struct area){-cut->beside, down, -cut->beside + leg, down});
    else if (lands_on(laid, cut->side) && laid->top <= leg)
        add_area(cut, MARK_CUT_STAPLE, (struct area){at, laid->top - leg, at, laid->top});
}

/* "foam 2 in", "cover". */
static const char *words_for(const struct cut_open *cut, const struct laid *laid)
{
    const char *name = drawing_word(words_layer.at[laid->layer->kind].name, cut->arena);

    return laid->thick ? arena_format(cut->arena, "%s %s", name, length_text(cut, laid->thick))
                       : name;
}

/* "lands 1-1/2 in", where it does so round the edge. */
static void add_landing(const struct cut_open *cut, const struct laid *laid)
{
    const struct edge *row = laid->stapled;

    if (!laid->round || !row || !row->landing || lands_on(laid, cut->side))
        return;
    add_label(cut, laid->landing ? -cut->depth : row->landing / 2 - laid->round,
              arena_format(cut->arena, "lands %s", length_text(cut, row->landing)));
}

static void add_layer(struct cut_open *cut, const struct layer *layer)
{
    struct laid laid;

    if (!lay(cut, layer, &laid) || laid.from >= cut->drawing->bounds.u1)
        return;
    if (cut->chosen == layer->key)
        laid.kind = MARK_CUT_CHOSEN;
    lay_on_face(cut, &laid);
    lay_round(cut, &laid);
    add_staple(cut, &laid);
    add_label(cut, laid.top - laid.thick / 2, words_for(cut, &laid));
    add_landing(cut, &laid);
}

/* ---- all of them ---- */

static bool is_on_face(const struct plan *plan, const struct layer *layer, const struct box *box,
                       int64_t side)
{
    int64_t on = layer_side_on(plan, layer, box->key);

    return layer->shape != SHAPE_RUN && on >= 0 &&
           (on == side || (layer->both && side_opposite(on) == side));
}

/* The first layer on a face that has a thickness, and covers some of it; NULL without. */
static const struct layer *first_pad(const struct plan *plan, const struct box *box, int64_t side)
{
    for (size_t i = 0; i < plan->facts->layers.count; i++) {
        const struct layer *layer = &plan->facts->layers.at[i];
        struct area area = layer_area(box, side, layer);

        if (is_on_face(plan, layer, box, side) && layer_thickness(plan, layer) > 0 &&
            !area_empty(&area))
            return layer;
    }
    return NULL;
}

static void add_layers(struct cut_open *cut)
{
    const struct model *model = cut->plan->facts;

    for (int64_t rank = 0; rank <= LAYER_RANK_MOST; rank++) {
        for (size_t i = 0; i < model->layers.count; i++) {
            const struct layer *layer = &model->layers.at[i];
            if (layer->rank == rank && is_on_face(cut->plan, layer, cut->box, cut->side))
                add_layer(cut, layer);
        }
    }
}

/* Less far into the face than all is thick, so that it is large; with room for what goes round. */
static void set_bounds(struct cut_open *cut)
{
    const struct padding *face = plan_padding(cut->plan, cut->box->key, cut->side);
    const struct padding *beside =
        plan_padding(cut->plan, cut->box->key, edge_side(cut->side, cut->edge));
    int64_t pad = face->pad + FIELDS_MM(4);
    int64_t deep = length_smaller(cut->depth, SHOWN_DEEP);
    int64_t along = length_smaller(cut->reach, length_larger(SHOWN_ALONG, 2 * (pad + deep) / 3));

    cut->drawing->bounds =
        (struct area){-beside->pad - FIELDS_MM(4), -deep - FIELDS_MM(4), along, pad};
}

/* Through the middle of the padding, or of the face where there is none. */
static int64_t middle_of(const struct cut_open *cut, bool upright)
{
    const struct layer *pad = first_pad(cut->plan, cut->box, cut->side);
    struct area area = pad ? layer_area(cut->box, cut->side, pad) : face_area(cut->box, cut->side);

    return upright ? (area.v0 + area.v1) / 2 : (area.u0 + area.u1) / 2;
}

/* Cuts off what stayed empty above and outside: the padding may be thicker elsewhere. */
static void tighten(struct drawing *drawing)
{
    int64_t left = 0;
    int64_t top = 0;

    for (size_t i = 0; i < drawing->marks.count; i++) {
        left = length_smaller(left, drawing->marks.at[i].area.u0);
        top = length_larger(top, drawing->marks.at[i].area.v1);
    }
    drawing->bounds.u0 = left;
    drawing->bounds.v1 = top;
    for (size_t i = 0; i < drawing->labels.count; i++)
        drawing->labels.at[i].v = length_smaller(drawing->labels.at[i].v, top);
}

void draw_section(struct drawing *drawing, const struct plan *plan, int64_t box, int64_t side,
                  int64_t edge, int64_t chosen, struct arena *arena)
{
    struct cut_open cut = {.drawing = drawing,
                           .plan = plan,
                           .box = MODEL_FIND(plan->facts, box, box),
                           .side = side,
                           .edge = edge,
                           .chosen = chosen,
                           .arena = arena};
    bool upright = edge_is_upright(edge);

    *drawing = (struct drawing){0};
    if (!cut.box)
        return;
    cut.along = upright ? side_v_axis(side) : side_u_axis(side);
    cut.across = upright ? side_u_axis(side) : side_v_axis(side);
    cut.deep = side_axis(side);
    cut.middle = middle_of(&cut, upright);
    cut.reach = vector_along(box_size(cut.box), cut.across);
    cut.depth = vector_along(box_size(cut.box), cut.deep);
    cut.face[cut.stretches++] = (struct stretch_of_face){0, 0};
    set_bounds(&cut);
    add_all_wood(&cut);
    add_layers(&cut);
    tighten(drawing);
}

bool draw_has_section(const struct plan *plan, int64_t box, int64_t side)
{
    const struct box *of = MODEL_FIND(plan->facts, box, box);

    return of && first_pad(plan, of, side);
}

int64_t draw_section_edge(const struct plan *plan, int64_t box, int64_t side)
{
    static const int64_t by_choice[] = {EDGE_TOP, EDGE_LEFT, EDGE_RIGHT, EDGE_BOTTOM};

    for (size_t k = 0; k < sizeof by_choice / sizeof *by_choice; k++) {
        for (size_t i = 0; i < plan->edges.count; i++) {
            const struct edge *edge = &plan->edges.at[i];
            const struct layer *layer = MODEL_FIND(plan->facts, layer, edge->layer);
            if (layer && edge->box == box && layer->side == side && edge->edge == by_choice[k])
                return by_choice[k];
        }
    }
    return EDGE_TOP;
}
