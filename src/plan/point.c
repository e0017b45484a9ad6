/*
 * Where joins are screwed. For every join the mating zone is found through the poses, the runs with
 * wood on both sides are laid out in it, and points are spread on those.
 *
 * 1  What was drilled is a fact: a join with holes has these points and those given by hand, and no
 *    others; no default moves them. A join with points by hand alone has just those.
 * 2  A join that is laid on, left out or faces nothing has a zone and no points.
 * 3  Points of a join lie together in the plan's list, in order of rank.
 * 4  Joins whose points were taken come first: the others keep clear of what cannot move.
 *
 * Which side the heads are on, and so the screw, is decided by the pass `access`.
 */
#include "plan/place.h"

#include "plan/cures.h"
#include "plan/drape.h"
#include "plan/findings.h"
#include "plan/geometry.h"
#include "plan/layers.h"
#include "plan/standing.h"

/* ---- runs ---- */

static void add_wood(const struct placing *placing, struct patchwork *patchwork, struct area area,
                     bool end_grain)
{
    if (end_grain)
        *LIST_ADD(placing->planning->arena, &patchwork->end_grain) = area;
    else
        *LIST_ADD(placing->planning->arena, &patchwork->side_grain) = area;
}

static void add_wood_of_b(const struct placing *placing, struct patchwork *patchwork,
                          const struct backing *wood)
{
    int64_t strips = place_strips(placing, &wood->area);

    for (int64_t i = 0; i < strips; i++)
        add_wood(placing, patchwork, place_strip_to_a(placing, &wood->area, i), wood->end_grain);
}

static bool is_cushion(const struct planning *planning, int64_t key)
{
    const struct box *box = MODEL_FIND(planning->model, box, key);

    return box && box->frame == FRAME_CUSHION;
}

/* A cushion has none, and lies where it is put. */
static void tell_no_wood(struct placing *placing)
{
    struct planning *planning = placing->planning;
    const struct join *join = placing->join;
    struct finding *finding = finding_add(planning, FINDING_JOIN_NO_WOOD, ENTITY_join, join->key);
    struct cure_draft cure = cure_begin(planning, "Let the cushion rest there");

    if (!is_cushion(planning, join->box_a) && !is_cushion(planning, join->box_b))
        return;
    cure_word(&cure, ENTITY_join, join->key, "fastener", words_fastener.at[FASTENER_REST].name);
    cure_offer(&cure, finding);
}

static void find_runs(struct placing *placing)
{
    struct patchwork a = {0};
    struct patchwork b = {0};

    for (size_t i = 0; i < placing->faces.a.count; i++)
        add_wood(placing, &a, placing->faces.a.at[i].area, placing->faces.a.at[i].end_grain);
    for (size_t i = 0; placing->b && i < placing->faces.b.count; i++)
        add_wood_of_b(placing, &b, &placing->faces.b.at[i]);
    if (!placing->b)
        add_wood(placing, &b, placing->junction.zone, false);
    struct runs all = run_find(placing->planning, &placing->junction.zone, &a, &b);
    placing->runs = run_choose(placing->planning, placing->join, &placing->junction.zone, &all);
    if (all.count == 0)
        tell_no_wood(placing);
}

/* ---- what was taken ---- */

static bool is_point(const struct placing *placing, int64_t u, int64_t v)
{
    const struct plan *plan = placing->planning->plan;

    for (size_t i = placing->junction.first_point; i < plan->points.count; i++) {
        if (plan->points.at[i].u == u && plan->points.at[i].v == v)
            return true;
    }
    return false;
}

/* What the edges are chosen by: the run that a place lies on, else the place itself. */
static struct area area_about(const struct placing *placing, int64_t u, int64_t v)
{
    for (size_t i = 0; i < placing->runs.count; i++) {
        if (area_holds(&placing->runs.at[i].area, u, v))
            return placing->runs.at[i].area;
    }
    return (struct area){u, v, u, v};
}

static struct plan_point *add_taken(struct placing *placing, int64_t u, int64_t v, int64_t rank)
{
    struct area about = area_about(placing, u, v);
    struct plan_point *point = place_add(placing, u, v, &about);

    point->taken = true;
    if (rank > 0)
        point->rank = (int)rank;
    return point;
}

static void sort_by_rank(struct placing *placing)
{
    struct plan_point *at = &placing->planning->plan->points.at[placing->junction.first_point];

    for (size_t i = 1; i < placing->junction.point_count; i++) {
        for (size_t j = i; j > 0 && at[j].rank < at[j - 1].rank; j--) {
            struct plan_point lower = at[j];

            at[j] = at[j - 1];
            at[j - 1] = lower;
        }
    }
}

/* Holes that were drilled, then points by hand; false when there are neither. */
static bool take_points(struct placing *placing)
{
    const struct model *model = placing->planning->model;

    for (size_t i = 0; i < model->holes.count; i++) {
        const struct hole *hole = &model->holes.at[i];

        if (hole->join == placing->join->key)
            add_taken(placing, hole->u, hole->v, hole->rank);
    }
    for (size_t i = 0; i < model->points.count; i++) {
        const struct point *point = &model->points.at[i];

        if (point->join == placing->join->key && !is_point(placing, point->u, point->v))
            add_taken(placing, point->u, point->v, 0)->existing = point->existing;
    }
    if (placing->junction.point_count == 0)
        return false;
    sort_by_rank(placing);
    return true;
}

/* ---- a join ---- */

/* Landings are notched round a screw and so add nothing there. */
static bool is_landing(const struct placing *placing, const struct layer *layer,
                       const struct box *box, int64_t side, int64_t u, int64_t v)
{
    for (int64_t edge = 0; edge < EDGE_COUNT; edge++) {
        struct landing landing = drape_landing(placing->planning, layer, box, edge);
        const struct area *area = &landing.area;

        if (landing.side == side && area_holds(area, u, v))
            return true;
    }
    return false;
}

static bool is_under(const struct placing *placing, const struct layer *layer, bool of_b)
{
    const struct planning *planning = placing->planning;
    const struct box *box = of_b ? placing->b : placing->a;
    int64_t side = of_b ? placing->join->side_b : placing->join->side_a;
    int64_t u, v;

    for (size_t i = 0; i < placing->junction.point_count; i++) {
        const struct plan_point *point =
            &planning->plan->points.at[placing->junction.first_point + i];

        point_on_face(planning, &placing->junction, point, of_b, &u, &v);
        if (drape_covers(planning, layer, box, side, u, v) &&
            !is_landing(placing, layer, box, side, u, v))
            return true;
    }
    return false;
}

static bool is_covered(const struct placing *placing, bool of_b)
{
    const struct model *model = placing->planning->model;
    const struct box *box = of_b ? placing->b : placing->a;

    for (size_t i = 0; i < model->layers.count; i++) {
        const struct layer *layer = &model->layers.at[i];

        if (drape_is_cloth(layer) && layer_touches(model, layer, box->key) &&
            is_under(placing, layer, of_b))
            return true;
    }
    return false;
}

/* Pressed cloth in the joint: only what lies under the points is pressed by them. */
static int64_t cloth_between(const struct placing *placing)
{
    int64_t per_face = placing->planning->value[TRADE_JOINT_CLOTH_PER_FACE];

    if (placing->join->cloth > 0)
        return placing->join->cloth;
    return per_face * (is_covered(placing, false) + (placing->b && is_covered(placing, true)));
}

static void tell_few(struct placing *placing)
{
    const int64_t *value = placing->planning->value;
    int64_t count = (int64_t)placing->junction.point_count;
    int64_t wanted = value[placing->junction.length > value[TRADE_JOIN_LONG] ? TRADE_JOIN_LEAST_LONG
                                                                             : TRADE_JOIN_LEAST];
    if (placing->join->count > 0)
        wanted = placing->join->count;
    if (count == 0 || count >= wanted)
        return;
    struct finding *finding =
        finding_add(placing->planning, FINDING_JOIN_FEW_POINTS, ENTITY_join, placing->join->key);
    argument_quantity(finding, 0, QUANTITY_COUNT, count);
    argument_quantity(finding, 1, QUANTITY_COUNT, wanted);
}

static void stand_taken(struct placing *placing)
{
    for (size_t i = 0; i < placing->junction.point_count; i++)
        place_stand(placing,
                    &placing->planning->plan->points.at[placing->junction.first_point + i]);
}

static void place_points(struct placing *placing)
{
    placing->faces = fasten_faces(placing->planning, &placing->junction);
    find_runs(placing);
    if (take_points(placing)) {
        stand_taken(placing);
    } else {
        place_rows(placing);
        tell_few(placing);
    }
    placing->junction.cloth = cloth_between(placing);
}

static struct thicket *room_of(struct thicket *rooms, const struct planning *planning, int64_t box)
{
    return &rooms[model_index(planning->model, ENTITY_box, box)];
}

static void plan_join(const struct vicinity *vicinity, const struct join *join,
                      struct thicket *rooms, struct junction *ret_junction)
{
    struct planning *planning = vicinity->planning;
    struct placing placing = {.planning = planning, .vicinity = vicinity, .join = join};
    bool has_b = join->target == TARGET_BOX;

    placing.a = MODEL_FIND(planning->model, box, join->box_a);
    placing.b = has_b ? MODEL_FIND(planning->model, box, join->box_b) : NULL;
    placing.junction = (struct junction){.join = join->key,
                                         .box_a = join->box_a,
                                         .box_b = placing.b ? join->box_b : 0,
                                         .first_point = planning->plan->points.count,
                                         .head_box = join->box_a,
                                         .head_side = side_opposite(join->side_a),
                                         .room = -1};
    if (placing.a && (placing.b || !has_b)) {
        placing.in_a = room_of(rooms, planning, join->box_a);
        placing.in_b = placing.b ? room_of(rooms, planning, join->box_b) : NULL;
        place_zone(&placing);
        if (join->fastener != FASTENER_REST && !area_empty(&placing.junction.zone) &&
            !model_left_out(planning->model, join->key))
            place_points(&placing);
    }
    *ret_junction = placing.junction;
}

/* One flag a join: it has holes or points by hand. */
static bool *find_pinned(const struct planning *planning)
{
    const struct model *model = planning->model;
    bool *pinned = ARENA_MANY(planning->arena, bool, model->joins.count);

    for (size_t i = 0; i < model->holes.count; i++)
        pinned[model_index(model, ENTITY_join, model->holes.at[i].join)] = true;
    for (size_t i = 0; i < model->points.count; i++)
        pinned[model_index(model, ENTITY_join, model->points.at[i].join)] = true;
    return pinned;
}

void pass_point(struct planning *planning)
{
    const struct model *model = planning->model;
    struct thicket *rooms = standing_by_box(planning);
    const struct vicinity vicinity = vicinity_make(planning);
    const bool *pinned = find_pinned(planning);
    struct junction *junctions = ARENA_MANY(planning->arena, struct junction, model->joins.count);

    for (int round = 0; round < 2; round++)
        for (size_t i = 0; i < model->joins.count; i++)
            if (pinned[i] == (round == 0))
                plan_join(&vicinity, &model->joins.at[i], rooms, &junctions[i]);
    for (size_t i = 0; i < model->joins.count; i++)
        *LIST_ADD(planning->arena, &planning->plan->junctions) = junctions[i];
}
