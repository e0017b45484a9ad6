/*
 * Hole maps, one a join.
 *
 * A hole is told by its distances from two edges of its own box, which the plan chose so that they
 * can be found (plan/measure.c). Inches are rounded to 1/16, millimetres to whole ones: a hole is
 * marked no finer than that, and both stand side by side because two people may work from one map.
 */
#include "paper/sheets.h"

#include "base/show.h"
#include "paper/lines.h"
#include "paper/print.h"
#include "paper/table.h"
#include "plan/geometry.h"
#include "plan/hole.h"

#define INDENT 14 /* of what follows the word of a line */

struct mapping {
    struct text *out;
    const struct plan *plan;
    const struct junction *junction;
    const struct join *join;
};

static const char *box_name(const struct mapping *mapping, int64_t box)
{
    return print_box(mapping->plan, box);
}

static const char *edge_name(const struct join_end *end, const struct from_edge *from)
{
    return words_side.at[edge_side(end->side, from->edge)].name;
}

/* ---- heading ---- */

static void add_title(const struct mapping *mapping)
{
    const struct join *join = mapping->join;
    struct text title;
    text_init(&title);
    text_format(&title, "Join %s: %s of %s%s to ", join->name, words_side.at[join->side_a].name,
                box_name(mapping, join->box_a), print_hand(mapping->plan, join->box_a));
    if (mapping->junction->box_b)
        text_format(&title, "%s of %s%s", words_side.at[join->side_b].name,
                    box_name(mapping, join->box_b), print_hand(mapping->plan, join->box_b));
    else
        text_add(&title, words_target.at[join->target].help);
    text_add(&title, join->place == PLACE_SITE ? ", in the room" : ", at the bench");
    text_add_char(mapping->out, '\n');
    show_text(mapping->out, text_string(&title));
    text_add_char(mapping->out, '\n');
    text_release(&title);
}

/* One line of the heading; the words are released. */
static void add_line(const struct mapping *mapping, const char *heading, struct text *words)
{
    if (words->length)
        lines_add(mapping->out, heading, INDENT, text_string(words));
    text_release(words);
}

static void add_mates(const struct mapping *mapping)
{
    struct text words;
    text_init(&words);
    text_format(&words, "%s-%s", box_name(mapping, mapping->junction->box_a), mapping->join->name);
    if (mapping->junction->box_b)
        text_format(&words, " to %s-%s", box_name(mapping, mapping->junction->box_b),
                    mapping->join->name);
    text_add(&words, ", with an arrow up on each box");
    add_line(mapping, "mates", &words);
}

/* A map is good for its own box: marked from the other's, holes come out on the wrong side. */
static void add_pair(const struct mapping *mapping, int64_t box)
{
    const struct pose *pose = plan_pose(mapping->plan, box);
    struct text words;

    text_init(&words);
    if (pose && pose->hand != HAND_NONE)
        text_format(
            &words, "%s is the %s one; %s has its own map, mirrored: mark each from its own",
            box_name(mapping, box), plan_hand_word(pose->hand), box_name(mapping, pose->twin));
    add_line(mapping, "pair", &words);
}

static void add_view(const struct mapping *mapping)
{
    const struct junction *junction = mapping->junction;
    struct text words;
    text_init(&words);
    if (!junction->head_box)
        text_add(&words, "from outside");
    else if (junction->head_inside)
        text_format(&words, "from inside box %s, %s open", box_name(mapping, junction->head_box),
                    words_side.at[junction->reach_side].name);
    else
        text_format(&words, "from outside box %s, on its %s", box_name(mapping, junction->head_box),
                    words_side.at[junction->head_side].name);
    add_line(mapping, "seen", &words);
}

static const struct plan_point *first_point(const struct mapping *mapping)
{
    return &mapping->plan->points.at[mapping->junction->first_point];
}

static void add_heads(const struct mapping *mapping)
{
    const struct junction *junction = mapping->junction;
    struct bore bore = hole_bore(mapping->plan, first_point(mapping));
    struct text words;
    text_init(&words);
    text_format(&words, "%s %s; ", junction->head_inside ? "inside" : "on the outside of",
                box_name(mapping, junction->head_box));
    if (bore.kind)
        plan_screw_text(mapping->plan, bore.kind, &words);
    else
        text_add(&words, words_fastener.at[mapping->join->fastener].help);
    text_format(&words, "; %s",
                junction->reachable ? words_tool.at[junction->tool].help : "no tool reaches them");
    add_line(mapping, "heads", &words);
}

/* A bit and how deep it goes into what. */
static void add_bore(const struct mapping *mapping, const char *heading, const char *what,
                     const char *bit, const int64_t lengths[2])
{
    struct text words;
    text_init(&words);
    text_format(&words, "%s: %s %s, %s deep", what, bit,
                print_length_unit(mapping->plan, lengths[0]).at,
                print_length_unit(mapping->plan, lengths[1]).at);
    add_line(mapping, heading, &words);
}

static void add_bores(const struct mapping *mapping)
{
    const struct junction *junction = mapping->junction;
    struct bore bore = hole_bore(mapping->plan, first_point(mapping));
    bool heads_in_a = junction->head_box == junction->box_a;
    int64_t other = heads_in_a ? junction->box_b : junction->box_a;
    if (!bore.kind)
        return;
    add_bore(mapping, "bore", box_name(mapping, junction->head_box), "clearance",
             (const int64_t[]){bore.kind->clearance, bore.clearance_depth});
    add_bore(mapping, "",
             other ? box_name(mapping, other) : words_target.at[mapping->join->target].help,
             "pilot", (const int64_t[]){bore.kind->pilot, bore.pilot_depth});
}

/* Padding is kept off holes that a hand comes through. */
static bool has_access_holes(const struct mapping *mapping)
{
    const struct plan *plan = mapping->plan;

    for (size_t i = 0; mapping->junction->head_inside && i < plan->patches.count; i++)
        if (!plan->patches.at[i].slit &&
            plan->points.at[plan->patches.at[i].point].join == mapping->junction->join)
            return true;
    return false;
}

static void add_bare(const struct mapping *mapping)
{
    const struct plan *plan = mapping->plan;
    struct text words;
    text_init(&words);
    if (mapping->junction->patch)
        text_format(&words, "a patch %s across round each head; ",
                    print_length_unit(plan, mapping->junction->patch).at);
    if (has_access_holes(mapping))
        text_add(&words, "no padding over the access holes; ");
    text_format(&words, "no staple or nail nearer than %s",
                print_length_unit(plan, plan->value[TRADE_STAPLE_KEEP_OFF_HOLE]).at);
    add_line(mapping, "keep bare", &words);
}

/* The edge that was named last, so that its next run is not named again. */
struct naming {
    const struct edge *edge;
    int64_t part;
};

static void add_layer_name(const struct mapping *mapping, int64_t key, int64_t box,
                           struct text *words)
{
    const struct layer *layer = MODEL_FIND(mapping->plan->facts, layer, key);
    text_format(words, "%s%s of %s", words->length ? "; " : "", print_layer(mapping->plan, key).at,
                box_name(mapping, box ? box : layer->box));
}

/* An edge is called by the side that it borders on, as in the distances of holes. */
static void add_edge_name(const struct mapping *mapping, const struct edge *edge,
                          const struct edge_part *part, struct text *words)
{
    const struct layer *layer = MODEL_FIND(mapping->plan->facts, layer, edge->layer);
    add_layer_name(mapping, edge->layer, edge->box, words);
    if (part->edge < 0)
        text_add(words, ", all round");
    else
        text_format(words, ", %s edge", words_side.at[edge_side(layer->side, part->edge)].name);
}

/* Runs of one edge follow each other after its name; a whole edge needs no figures. */
static void add_part(const struct mapping *mapping, const struct edge *edge,
                     const struct edge_part *part, struct naming *naming, struct text *words)
{
    bool same = naming->edge == edge && naming->part == part->edge;
    int64_t length = edge->length;
    if (part->edge >= 0) {
        const struct layer *layer = MODEL_FIND(mapping->plan->facts, layer, edge->layer);
        const struct box *box = MODEL_FIND(mapping->plan->facts, box, edge->box);
        length = edge_length(box, layer->side, part->edge);
    }
    if (!same)
        add_edge_name(mapping, edge, part, words);
    *naming = (struct naming){edge, part->edge};
    if (part->from > 0 || part->to < length)
        text_format(words, "%s %s to %s", same ? "," : ":",
                    print_length(mapping->plan, part->from).at,
                    print_length(mapping->plan, part->to).at);
}

static void add_opening(const struct mapping *mapping, const struct interval *interval,
                        struct naming *naming, struct text *words)
{
    const struct edge *edge = &mapping->plan->edges.at[interval->edge];
    struct edge_part part;
    for (int i = 0; i < EDGE_COUNT; i++) {
        if (hole_part(mapping->plan, interval, i, &part))
            add_part(mapping, edge, &part, naming, words);
    }
}

static void add_openings(const struct mapping *mapping)
{
    const struct plan *plan = mapping->plan;
    int64_t join = mapping->junction->join;
    struct naming naming = {NULL, 0};
    struct text words;
    text_init(&words);
    for (size_t i = 0; i < plan->intervals.count; i++) {
        if (hole_opening(plan, &plan->intervals.at[i], join))
            add_opening(mapping, &plan->intervals.at[i], &naming, &words);
    }
    for (size_t i = 0; i < plan->facts->layers.count; i++) {
        const struct layer *layer = &plan->facts->layers.at[i];
        if (!hole_keeps_off(plan, layer->key, join))
            continue;
        add_layer_name(mapping, layer->key, 0, &words);
        text_add(&words, " is put on after it");
    }
    if (!words.length)
        text_add(&words, "no edge of a cover");
    add_line(mapping, "left open", &words);
}

static void add_spacer(const struct mapping *mapping)
{
    int64_t cloth = mapping->junction->cloth;
    struct text words;
    text_init(&words);
    if (cloth)
        text_format(&words, "%s in the joint for the dry fit",
                    print_length_unit(mapping->plan, cloth).at);
    else
        text_add(&words, "none: no cloth lies in the joint");
    add_line(mapping, "spacer", &words);
}

/* ---- holes ---- */

static void distance_cells(const struct mapping *mapping, struct table *table, int64_t length)
{
    bool inch = model_units(mapping->plan->facts) == UNITS_INCH;
    table_cell(table, "%s", print_marked(length, inch ? UNITS_INCH : UNITS_MM).at);
    table_cell(table, "%s", print_marked(length, inch ? UNITS_MM : UNITS_INCH).at);
}

static void tick_cell(struct table *table, bool done)
{
    table_cell(table, "[%c]", done ? 'x' : ' ');
}

static void head_cells(const struct mapping *mapping, struct table *table,
                       const struct join_end *end, const struct from_edge *edges)
{
    bool inch = model_units(mapping->plan->facts) == UNITS_INCH;
    table_cell(table, "%s", "hole");
    for (int i = 0; i < 2; i++) {
        table_cell(table, "%s", edge_name(end, &edges[i]));
        table_cell(table, "%s", inch ? "mm" : "in");
    }
}

static void hole_rows(const struct mapping *mapping, struct table *table,
                      const struct join_end *end, bool of_b)
{
    static const char *const names[] = {"drilled", "trial", "locator", "found", "driven"};
    const struct from_edge *first = hole_edges(first_point(mapping), of_b);
    head_cells(mapping, table, end, first);
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        table_cell(table, "%s", names[i]);
    for (size_t i = 0; i < mapping->junction->point_count; i++) {
        const struct plan_point *point = first_point(mapping) + i;
        struct hole_work work = hole_work(mapping->plan, point);
        table_cell(table, "%d", point->rank);
        for (int k = 0; k < 2; k++)
            distance_cells(mapping, table, hole_edges(point, of_b)[k].distance);
        tick_cell(table, work.drilled);
        tick_cell(table, work.tried);
        tick_cell(table, work.located);
        tick_cell(table, work.found);
        tick_cell(table, work.driven);
    }
}

/* "On L (left), its right face: from the back edge, from the bottom edge" */
static void add_end_title(const struct mapping *mapping, const struct join_end *end,
                          const struct from_edge *edges)
{
    text_add(mapping->out, "\n  On ");
    show_text(mapping->out, box_name(mapping, end->box));
    text_format(mapping->out, "%s, its %s face: from the %s edge, from the %s edge\n",
                print_hand(mapping->plan, end->box), words_side.at[end->seen].name,
                edge_name(end, &edges[0]), edge_name(end, &edges[1]));
    for (int i = 0; i < 2; i++) {
        if (edges[i].hidden)
            text_format(mapping->out,
                        "  (padding will hide the %s edge: measure while the box is bare)\n",
                        edge_name(end, &edges[i]));
    }
}

static void add_end(const struct mapping *mapping, bool of_b)
{
    struct join_end end;
    struct table table;
    if (!hole_end(mapping->plan, mapping->junction, of_b, &end))
        return;
    add_end_title(mapping, &end, hole_edges(first_point(mapping), of_b));
    table_begin(&table, "rrrrrlllll");
    hole_rows(mapping, &table, &end, of_b);
    table_end(&table, mapping->out);
}

/* How many holes are facts: by a tick, by hand, or there before. */
static void add_taken(const struct mapping *mapping)
{
    size_t taken = 0;
    for (size_t i = 0; i < mapping->junction->point_count; i++)
        taken += first_point(mapping)[i].taken;
    if (taken)
        text_format(mapping->out, "\n  The places of %zu of %zu holes are facts, not plans.\n",
                    taken, mapping->junction->point_count);
}

void sheet_join_map(struct text *out, const struct plan *plan, const struct junction *junction)
{
    struct mapping mapping = {out, plan, junction, MODEL_FIND(plan->facts, join, junction->join)};
    if (junction->point_count == 0)
        return;
    add_title(&mapping);
    add_mates(&mapping);
    add_pair(&mapping, junction->box_a);
    add_pair(&mapping, junction->box_b);
    add_view(&mapping);
    add_heads(&mapping);
    add_bores(&mapping);
    add_bare(&mapping);
    add_openings(&mapping);
    add_spacer(&mapping);
    add_end(&mapping, false);
    add_end(&mapping, true);
    add_taken(&mapping);
}

void sheet_map(struct text *out, const struct plan *plan)
{
    if (plan->points.count == 0)
        return;
    text_add(out, "\nHOLE MAPS (inches to 1/16 and whole mm; measure, do not scale)\n");
    for (size_t i = 0; i < plan->junctions.count; i++)
        sheet_join_map(out, plan, &plan->junctions.at[i]);
}
