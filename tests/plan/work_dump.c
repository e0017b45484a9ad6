/* A plan as text: two plans are the same when their texts are, whatever addresses they hold. */
#include "work.h"

#include <inttypes.h>

#define LL(value) ((long long)(value))

static void add_vector(struct text *out, struct vector at)
{
    text_format(out, " (%lld %lld %lld)", LL(at.x), LL(at.y), LL(at.z));
}

static void add_solid(struct text *out, const struct solid *solid)
{
    add_vector(out, solid->low);
    add_vector(out, solid->high);
}

static void add_area(struct text *out, const struct area *area)
{
    text_format(out, " [%lld %lld %lld %lld]", LL(area->u0), LL(area->v0), LL(area->u1),
                LL(area->v1));
}

/* ---- room and wood ---- */

static void dump_room(const struct plan *plan, struct text *out)
{
    for (size_t i = 0; i < plan->poses.count; i++) {
        const struct pose *pose = &plan->poses.at[i];

        text_format(out, "pose %lld %d %d", LL(pose->box), pose->turn, pose->placed);
        add_vector(out, pose->at);
        text_add_char(out, '\n');
    }
    for (size_t i = 0; i < plan->paddings.count; i++) {
        const struct padding *padding = &plan->paddings.at[i];

        text_format(out, "padding %lld %lld %lld %lld %lld %lld %lld %lld %d\n", LL(padding->box),
                    LL(padding->side), LL(padding->pad), LL(padding->at[0]), LL(padding->at[1]),
                    LL(padding->at[2]), LL(padding->at[3]), LL(padding->cloth), padding->covered);
    }
    for (size_t i = 0; i < plan->loads.count; i++) {
        const struct load *load = &plan->loads.at[i];

        text_format(out, "load %lld %lld %d", LL(load->box), LL(load->mass), load->people);
        add_vector(out, load->finished);
        text_add_char(out, '\n');
    }
}

static void dump_wood(const struct plan *plan, struct text *out)
{
    for (size_t i = 0; i < plan->panels.count; i++) {
        const struct panel *panel = &plan->panels.at[i];

        text_format(out, "panel %s %lld %lld %lld %lld %lld %d", panel->label, LL(panel->box),
                    LL(panel->facing), LL(panel->stock), LL(panel->side), LL(panel->thickness),
                    panel->loose);
        add_area(out, &panel->area);
        add_solid(out, &panel->solid);
        text_add_char(out, '\n');
    }
    for (size_t i = 0; i < plan->members.count; i++) {
        const struct plan_member *member = &plan->members.at[i];

        text_format(out, "member %s %lld %lld %lld %lld %lld %lld", member->label, LL(member->box),
                    LL(member->by_hand), LL(member->kind), LL(member->axis), LL(member->stock),
                    LL(member->length));
        add_solid(out, &member->solid);
        text_add_char(out, '\n');
    }
    for (size_t i = 0; i < plan->joints.count; i++) {
        const struct joint *joint = &plan->joints.at[i];

        text_format(out, "joint %lld %zu %zu %d %d", LL(joint->box), joint->through, joint->into,
                    joint->end_grain, joint->screws);
        add_solid(out, &joint->contact);
        text_add_char(out, '\n');
    }
}

/* ---- screws and joins ---- */

static void dump_screws(const struct plan *plan, struct text *out)
{
    for (size_t i = 0; i < plan->screw_kinds.count; i++) {
        const struct screw_kind *kind = &plan->screw_kinds.at[i];

        text_format(out, "kind %lld %lld %lld %lld %lld %lld %lld %lld %lld %lld %lld\n",
                    LL(kind->gauge), LL(kind->length), LL(kind->diameter), LL(kind->pilot),
                    LL(kind->clearance), LL(kind->stock), LL(kind->count),
                    LL(kind->count_by_use[0]), LL(kind->count_by_use[1]), LL(kind->count_by_use[2]),
                    LL(kind->count_by_use[3]));
    }
    for (size_t i = 0; i < plan->screws.count; i++) {
        const struct screw *screw = &plan->screws.at[i];

        text_format(out, "screw %d %zu %lld %d %d %lld %d %zu", (int)screw->use, screw->kind,
                    LL(screw->box), screw->axis, screw->sign, LL(screw->bite), screw->end_grain,
                    screw->of);
        add_vector(out, screw->at);
        text_add_char(out, '\n');
    }
}

static void dump_junction(const struct junction *junction, struct text *out)
{
    text_format(out, "junction %lld %lld %lld %zu %zu %lld %lld %lld", LL(junction->join),
                LL(junction->box_a), LL(junction->box_b), junction->first_point,
                junction->point_count, LL(junction->length), LL(junction->pitch),
                LL(junction->cloth));
    text_format(out, " %lld %lld %d %lld %lld %lld %lld %d %lld", LL(junction->head_box),
                LL(junction->head_side), junction->head_inside, LL(junction->reach_side),
                LL(junction->tool), LL(junction->room_needed), LL(junction->room),
                junction->reachable, LL(junction->patch));
    add_area(out, &junction->zone);
    add_area(out, &junction->zone_b);
    text_add_char(out, '\n');
}

static void dump_point(const struct plan_point *point, struct text *out)
{
    text_format(out, "point %lld %d %lld %lld %zu %zu %zu %lld %d", LL(point->join), point->rank,
                LL(point->u), LL(point->v), point->screw, point->member_a, point->member_b,
                LL(point->limit), point->taken);
    for (int i = 0; i < 2; i++)
        text_format(out, " %lld:%lld %lld:%lld", LL(point->edges[i].edge),
                    LL(point->edges[i].distance), LL(point->edges_b[i].edge),
                    LL(point->edges_b[i].distance));
    add_vector(out, point->in_a);
    add_vector(out, point->in_b);
    text_add_char(out, '\n');
}

static void dump_joins(const struct plan *plan, struct text *out)
{
    for (size_t i = 0; i < plan->junctions.count; i++)
        dump_junction(&plan->junctions.at[i], out);
    for (size_t i = 0; i < plan->points.count; i++)
        dump_point(&plan->points.at[i], out);
    for (size_t i = 0; i < plan->constraints.count; i++) {
        const struct constraint *constraint = &plan->constraints.at[i];

        text_format(out, "constraint %d %lld %lld %s\n", (int)constraint->kind,
                    LL(constraint->join), LL(constraint->item), constraint->rule);
    }
}

/* ---- cloth ---- */

static void dump_layers(const struct plan *plan, struct text *out)
{
    for (size_t i = 0; i < plan->covers.count; i++) {
        const struct cover *cover = &plan->covers.at[i];

        text_format(out, "cover %lld %lld %lld %lld %d %lld %lld %d %lld\n", LL(cover->layer),
                    LL(cover->box), LL(cover->cut_width), LL(cover->cut_height), cover->width_count,
                    LL(cover->side_strip), LL(cover->seam), cover->railroaded, LL(cover->area));
    }
    for (size_t i = 0; i < plan->pieces.count; i++) {
        const struct piece *piece = &plan->pieces.at[i];

        text_format(out, "piece %s %s %lld %lld %lld %lld %lld %d %d\n", piece->label, piece->name,
                    LL(piece->layer), LL(piece->box), LL(piece->stock), LL(piece->width),
                    LL(piece->height), piece->turned_allowed, piece->across);
    }
    for (size_t i = 0; i < plan->patches.count; i++) {
        const struct patch *patch = &plan->patches.at[i];

        text_format(out, "patch %lld %zu %lld %lld %lld %lld %d\n", LL(patch->layer), patch->point,
                    LL(patch->side), LL(patch->u), LL(patch->v), LL(patch->diameter), patch->slit);
    }
    for (size_t i = 0; i < plan->tufts.count; i++)
        text_format(out, "tuft %lld %lld %lld\n", LL(plan->tufts.at[i].layer),
                    LL(plan->tufts.at[i].u), LL(plan->tufts.at[i].v));
    for (size_t i = 0; i < plan->consumables.count; i++) {
        const struct consumable *used = &plan->consumables.at[i];

        text_format(out, "consumable %lld %lld %lld %d %lld %s\n", LL(used->layer), LL(used->kind),
                    LL(used->stock), (int)used->measure, LL(used->amount),
                    used->what ? used->what : "");
    }
}

static void dump_edges(const struct plan *plan, struct text *out)
{
    for (size_t i = 0; i < plan->edges.count; i++) {
        const struct edge *edge = &plan->edges.at[i];

        text_format(out, "edge %lld %lld %lld %lld %lld %lld %lld", LL(edge->layer), LL(edge->box),
                    LL(edge->edge), LL(edge->landing_side), LL(edge->length), LL(edge->pitch),
                    LL(edge->landing));
        text_format(out, " %lld %lld %lld %lld %lld %zu %zu\n", LL(edge->handle), LL(edge->leg),
                    LL(edge->staples), LL(edge->corners), LL(edge->temporary), edge->first_interval,
                    edge->interval_count);
    }
    for (size_t i = 0; i < plan->intervals.count; i++) {
        const struct interval *interval = &plan->intervals.at[i];

        text_format(out, "interval %zu %lld %lld %lld %lld %d %lld\n", interval->edge,
                    LL(interval->from), LL(interval->to), LL(interval->class), LL(interval->join),
                    (int)interval->pass, LL(interval->staples));
    }
}

/* ---- shop ---- */

static void dump_cutting(const struct plan *plan, struct text *out)
{
    for (size_t i = 0; i < plan->parts.count; i++) {
        const struct part *part = &plan->parts.at[i];

        text_format(out, "part %s %lld %lld %lld %lld %d %zu %zu %zu\n", part->label,
                    LL(part->stock), LL(part->box), LL(part->length), LL(part->width),
                    part->may_turn, part->member, part->panel, part->piece);
    }
    for (size_t i = 0; i < plan->placements.count; i++) {
        const struct placement *placement = &plan->placements.at[i];

        text_format(out, "placement %zu %lld %lld %d\n", placement->part, LL(placement->along),
                    LL(placement->across), placement->turned);
    }
    for (size_t i = 0; i < plan->cuttings.count; i++) {
        const struct cutting *cutting = &plan->cuttings.at[i];

        text_format(out, "cutting %lld %lld %lld %lld %lld %zu %zu %lld %lld\n", LL(cutting->stock),
                    LL(cutting->source->offer), LL(cutting->source->leftover), LL(cutting->length),
                    LL(cutting->width), cutting->first_placement, cutting->placement_count,
                    LL(cutting->used), LL(cutting->rest));
    }
}

static void dump_money(const struct plan *plan, struct text *out)
{
    const struct cost *cost = &plan->cost;

    for (size_t i = 0; i < plan->purchases.count; i++) {
        const struct purchase *line = &plan->purchases.at[i];

        text_format(out, "purchase %lld %lld %lld %lld %lld %d %lld", LL(line->stock),
                    LL(line->offer), LL(line->aisle), LL(line->need), LL(line->used),
                    (int)line->measure, LL(line->shelf));
        text_format(out, " %lld %lld %lld %lld %d %s\n", LL(line->packs), LL(line->length),
                    LL(line->price), LL(line->value), line->priced, line->what);
    }
    text_format(out, "cost %lld %lld %lld %lld %lld %lld %lld\n", LL(cost->bought), LL(cost->used),
                LL(cost->tax), LL(cost->estimate), LL(cost->spent), LL(cost->forecast),
                LL(cost->left));
    for (int i = 0; i < AISLE_COUNT; i++)
        text_format(out, "aisle %lld %lld\n", LL(cost->by_aisle[i].estimate),
                    LL(cost->by_aisle[i].paid));
}

/* ---- work ---- */

static void dump_step(const struct step *step, struct text *out)
{
    text_format(out, "step %s | %s | %d %d %lld %lld %lld %lld", step->name, step->title,
                step->kind, step->phase, LL(step->box), LL(step->join), LL(step->layer),
                LL(step->facing));
    text_format(out, " %lld %d %lld %d %d %d %d %d\n", LL(step->place), step->people,
                LL(step->minutes), step->session, step->hold, step->ticked, step->older,
                step->ready);
    text_format(out, "  %s %s | %s | %s | %s | %016" PRIx64 "\n", step->rule, step->because,
                step->unusual, step->closes, step->caution, step->content);
    for (size_t i = 0; i < step->action_count; i++)
        text_format(out, "  do %s\n", step->actions[i]);
    for (size_t i = 0; i < step->need_count; i++)
        text_format(out, "  need %s\n", step->needs[i].text);
    for (size_t i = 0; i < step->measure_count; i++)
        text_format(out, "  measure %s\n", step->measures[i]);
}

static void dump_work(const struct plan *plan, struct text *out)
{
    const struct tally *tally = &plan->tally;

    for (size_t i = 0; i < plan->steps.count; i++)
        dump_step(&plan->steps.at[i], out);
    for (size_t i = 0; i < plan->precedences.count; i++) {
        const struct precedence *precedence = &plan->precedences.at[i];

        text_format(out, "precedence %zu %zu %s %d\n", precedence->before, precedence->after,
                    precedence->rule, precedence->hard);
    }
    for (size_t i = 0; i < plan->findings.count; i++) {
        const struct finding *finding = &plan->findings.at[i];

        text_format(out, "finding %d %lld ", (int)finding->entity, LL(finding->key));
        plan_finding_text(plan, finding, out);
        text_add_char(out, '\n');
    }
    text_format(out, "tally %lld %lld %lld %lld %lld %lld %lld", LL(tally->cost), LL(tally->sticks),
                LL(tally->sheets), LL(tally->cloth), LL(tally->staples), LL(tally->screws),
                LL(tally->minutes));
    text_format(out, " %lld %lld %lld %lld %lld\n", LL(tally->stops), LL(tally->warns),
                LL(tally->notes), LL(tally->steps), LL(tally->steps_done));
}

void work_dump(const struct plan *plan, struct text *out)
{
    dump_room(plan, out);
    dump_wood(plan, out);
    dump_screws(plan, out);
    dump_joins(plan, out);
    dump_layers(plan, out);
    dump_edges(plan, out);
    dump_cutting(plan, out);
    dump_money(plan, out);
    dump_work(plan, out);
}
