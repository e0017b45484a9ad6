/* Boxes, screws and joins. */
#include "paper/sheets.h"

#include "base/show.h"
#include "paper/print.h"
#include "paper/table.h"
#include "plan/geometry.h"

/* Of a post under an outline, which side of its end is cut shorter; by how much goes on after it.
 */
static const char *slant_words(const struct plan_member *member)
{
    static const char *const words[2][2] = {
        {"; its front shorter at the left by ", "; its front shorter at the right by "},
        {"; its top lower at the left by ", "; its top lower at the right by "}};

    return member->slant == 0 ? "" : words[member->axis == AXIS_Z][member->slant < 0];
}

static struct printed print_slant(const struct plan *plan, const struct plan_member *member)
{
    int64_t by = member->slant < 0 ? -member->slant : member->slant;

    return print_marked(by, model_units(plan->facts));
}

static void box_members(struct text *out, const struct plan *plan, int64_t box)
{
    struct table table;
    table_begin(&table, "llrl");
    for (size_t i = 0; i < plan->members.count; i++) {
        const struct plan_member *member = &plan->members.at[i];
        if (member->box != box)
            continue;
        const struct vector at = member->solid.low;
        table_cell(&table, "%s", member->label);
        table_cell(&table, "%s", words_member.at[member->kind].name);
        table_cell(&table, "%s", print_length(plan, member->length).at);
        table_cell(&table, "along %s from x %s, y %s, z %s%s%s", words_axis.at[member->axis].name,
                   print_length(plan, at.x).at, print_length(plan, at.y).at,
                   print_length(plan, at.z).at, slant_words(member),
                   member->slant ? print_slant(plan, member).at : "");
    }
    table_end(&table, out);
}

static void box_panels(struct text *out, const struct plan *plan, int64_t box)
{
    struct table table;
    table_begin(&table, "llrl");
    for (size_t i = 0; i < plan->panels.count; i++) {
        const struct panel *panel = &plan->panels.at[i];
        if (panel->box != box)
            continue;
        table_cell(&table, "%s", panel->label);
        table_cell(&table, "%s", words_side.at[panel->side].name);
        table_cell(&table, "%s x %s", print_length(plan, panel->width).at,
                   print_length(plan, panel->height).at);
        table_cell(&table, "%s%s", plan_stock_name(plan, panel->stock),
                   panel->loose ? ", loose" : "");
    }
    table_end(&table, out);
}

/* The landing wood under an outline. */
static void box_crown(struct text *out, const struct plan *plan, int64_t box)
{
    enum units units = model_units(plan->facts);
    struct table table;

    table_begin(&table, "llrll");
    for (size_t i = 0; i < plan->crown_pieces.count; i++) {
        const struct crown_piece *piece = &plan->crown_pieces.at[i];
        struct text heights;

        if (piece->box != box)
            continue;
        text_init(&heights);
        for (int k = 0; k < CROWN_HEIGHTS; k++)
            text_format(&heights, "%s%s", k ? ", " : "", print_marked(piece->heights[k], units).at);
        table_cell(&table, "%s", piece->label);
        table_cell(&table, "landing wood%s", piece->behind ? " behind" : "");
        table_cell(&table, "%s x %s", print_marked(area_width(&piece->area), units).at,
                   print_marked(area_height(&piece->area), units).at);
        table_cell(&table, "from the left %s, up %s", print_marked(piece->area.u0, units).at,
                   print_marked(piece->area.v0, units).at);
        table_cell(&table, "cut to %s high, left to right", text_string(&heights));
        text_release(&heights);
    }
    table_end(&table, out);
}

static void box_cutouts(struct text *out, const struct plan *plan, int64_t box)
{
    struct table table;

    table_begin(&table, "lrrl");
    for (size_t i = 0; i < plan->facts->cutouts.count; i++) {
        const struct cutout *hole = &plan->facts->cutouts.at[i];
        if (hole->box != box)
            continue;
        table_cell(&table, "hole in the %s", words_side.at[hole->side].name);
        table_cell(&table, "%s, %s", print_length(plan, hole->u).at,
                   print_length(plan, hole->v).at);
        table_cell(&table, "%s x %s", print_length(plan, hole->width).at,
                   print_length(plan, hole->height).at);
        table_cell(&table, "%s", hole->purpose);
    }
    table_end(&table, out);
}

/* "; the left one of a pair with R" */
static void pair_text(struct text *out, const struct plan *plan, int64_t box)
{
    const struct pose *pose = plan_pose(plan, box);
    const struct box *twin = MODEL_FIND(plan->facts, box, pose->twin);
    if (pose->hand == HAND_NONE || !twin)
        return;
    text_format(out, "; the %s one of a pair with ", plan_hand_word(pose->hand));
    show_text(out, twin->name);
}

void sheet_boxes(struct text *out, const struct plan *plan)
{
    for (size_t i = 0; i < plan->facts->boxes.count; i++) {
        const struct box *box = &plan->facts->boxes.at[i];
        text_add(out, i ? "" : "\nBOXES\n");
        text_add(out, "\nBox ");
        show_text(out, box->name);
        text_format(out, ", %s: %s wide, %s deep, %s high", words_frame.at[box->frame].name,
                    print_length(plan, box->width).at, print_length(plan, box->depth).at,
                    print_length_unit(plan, box->height).at);
        pair_text(out, plan, box->key);
        const struct load *load = plan_load(plan, box->key);
        if (load)
            text_format(out, "; %s", print_quantity(plan, QUANTITY_MASS, load->mass).at);
        if (box->stick) {
            text_add(out, "; ");
            show_text(out, plan_stock_name(plan, box->stick));
        }
        text_add_char(out, '\n');
        box_members(out, plan, box->key);
        box_panels(out, plan, box->key);
        box_crown(out, plan, box->key);
        box_cutouts(out, plan, box->key);
    }
}

/* "16 frame, 4 join": what they are for. */
static void use_cell(struct table *table, const struct screw_kind *kind)
{
    static const char *const uses[] = {[SCREW_FRAME] = "frame",
                                       [SCREW_PANEL] = "panel",
                                       [SCREW_JOIN] = "join",
                                       [SCREW_FITTING] = "fitting"};
    struct text words;
    text_init(&words);
    for (size_t use = 0; use < sizeof uses / sizeof *uses; use++) {
        if (kind->count_by_use[use])
            text_format(&words, "%s%lld %s", words.length ? ", " : "",
                        (long long)kind->count_by_use[use], uses[use]);
    }
    table_cell(table, "%s", text_string(&words));
    text_release(&words);
}

void sheet_screws(struct text *out, const struct plan *plan)
{
    if (plan->screw_kinds.count == 0)
        return;
    text_add(out, "\nSCREWS\n");
    struct table table;
    table_begin(&table, "lrlll");
    for (size_t i = 0; i < plan->screw_kinds.count; i++) {
        const struct screw_kind *kind = &plan->screw_kinds.at[i];
        struct text name;
        text_init(&name);
        plan_screw_text(plan, kind, &name);
        table_cell(&table, "%s", text_string(&name));
        text_release(&name);
        table_cell(&table, "%lld", (long long)kind->count);
        table_cell(&table, "pilot %s", print_length_unit(plan, kind->pilot).at);
        table_cell(&table, "clearance %s", print_length_unit(plan, kind->clearance).at);
        use_cell(&table, kind);
    }
    table_end(&table, out);
}

/* ---- joins ---- */

/* As they are marked: the hole map tells the same. */
static void join_holes(struct text *out, const struct plan *plan, const struct junction *junction,
                       int64_t side)
{
    struct table table;
    table_begin(&table, "lrlrl");
    for (size_t i = 0; i < junction->point_count; i++) {
        const struct plan_point *point = &plan->points.at[junction->first_point + i];
        table_cell(&table, "hole %d", point->rank);
        for (int k = 0; k < 2; k++) {
            const struct from_edge *from = &point->edges[k];
            table_cell(&table, "%s", print_both(plan, from->distance).at);
            table_cell(&table, "from %s", words_side.at[edge_side(side, from->edge)].name);
        }
    }
    table_end(&table, out);
}

static void join_heads(struct text *out, const struct plan *plan, const struct junction *junction)
{
    if (junction->point_count == 0)
        return;
    const struct plan_point *first = &plan->points.at[junction->first_point];
    text_format(out, "  %zu points", junction->point_count);
    if (first->screw != PLAN_NONE) {
        const struct screw *screw = &plan->screws.at[first->screw];
        text_add(out, ", ");
        plan_screw_text(plan, &plan->screw_kinds.at[screw->kind], out);
        text_format(out, ", bite %s", print_length_unit(plan, screw->bite).at);
    }
    if (junction->head_box) {
        text_format(out, ", heads %s ", junction->head_inside ? "inside" : "on the outside of");
        show_text(out, print_box(plan, junction->head_box));
        if (junction->reachable)
            text_format(out, ", reached through the %s: %s",
                        words_side.at[junction->reach_side].name,
                        words_tool.at[junction->tool].help);
    }
    if (junction->cloth)
        text_format(out, "; spacer for the dry fit %s",
                    print_length_unit(plan, junction->cloth).at);
    text_add_char(out, '\n');
}

void sheet_joins(struct text *out, const struct plan *plan)
{
    if (plan->junctions.count == 0)
        return;
    text_add(out, "\nJOINS\n");
    for (size_t i = 0; i < plan->junctions.count; i++) {
        const struct junction *junction = &plan->junctions.at[i];
        const struct join *join = MODEL_FIND(plan->facts, join, junction->join);
        text_add(out, "\nJoin ");
        show_text(out, join->name);
        text_format(out, ": %s of ", words_side.at[join->side_a].name);
        show_text(out, print_box(plan, join->box_a));
        if (junction->box_b) {
            text_format(out, " to %s of ", words_side.at[join->side_b].name);
            show_text(out, print_box(plan, junction->box_b));
        } else {
            text_format(out, " to %s", words_target.at[join->target].help);
        }
        text_format(out, ", %s%s\n", join->place == PLACE_SITE ? "in the room" : "at the bench",
                    join->fastener == FASTENER_REST ? ", laid or hung on" : "");
        join_heads(out, plan, junction);
        join_holes(out, plan, junction, join->side_a);
    }
}
