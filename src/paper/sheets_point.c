/* One hole of a join: its measures, the ways to its head, and what meets the chosen one when. */
#include "paper/sheets.h"

#include "base/show.h"
#include "paper/lines.h"
#include "paper/print.h"
#include "plan/geometry.h"
#include "plan/hole.h"
#include "plan/meeting.h"

#define INDENT 12

struct looking {
    struct text *out;
    const struct plan *plan;
    const struct junction *junction;
    const struct join *join;
    const struct plan_point *point;
    int columns;
};

static void add_line(const struct looking *looking, const char *heading, struct text *words)
{
    lines_add_within(looking->out, heading, INDENT, text_string(words), looking->columns);
    text_release(words);
}

/* ---- measures ---- */

static void add_distance(const struct looking *looking, const struct join_end *end,
                         const struct from_edge *from, struct text *words)
{
    text_format(words, "%s from the %s", print_both(looking->plan, from->distance).at,
                words_side.at[edge_side(end->side, from->edge)].name);
}

static void add_place(const struct looking *looking, bool of_b)
{
    struct join_end end;
    struct text words;
    if (!hole_end(looking->plan, looking->junction, of_b, &end))
        return;
    text_init(&words);
    text_format(&words, "%s, %s face: ", print_box(looking->plan, end.box),
                words_side.at[end.seen].name);
    for (int i = 0; i < 2; i++) {
        text_add(&words, i ? ", " : "");
        add_distance(looking, &end, &hole_edges(looking->point, of_b)[i], &words);
    }
    add_line(looking, of_b ? "and on" : "on", &words);
}

static void add_screw(const struct looking *looking)
{
    const struct plan *plan = looking->plan;
    struct bore bore = hole_bore(plan, looking->point);
    struct text words;
    text_init(&words);
    if (bore.kind) {
        plan_screw_text(plan, bore.kind, &words);
        text_format(&words, "; clearance %s, %s deep",
                    print_length_unit(plan, bore.kind->clearance).at,
                    print_length_unit(plan, bore.clearance_depth).at);
        text_format(&words, "; pilot %s, %s deep", print_length_unit(plan, bore.kind->pilot).at,
                    print_length_unit(plan, bore.pilot_depth).at);
    } else {
        text_add(&words, words_fastener.at[looking->join->fastener].help);
    }
    add_line(looking, "screw", &words);
}

static void add_bare(const struct looking *looking)
{
    const struct plan *plan = looking->plan;
    struct text words;
    text_init(&words);
    if (looking->junction->patch)
        text_format(&words, "a patch %s across; ",
                    print_length_unit(plan, looking->junction->patch).at);
    text_format(&words, "no staple nearer than %s",
                print_length_unit(plan, plan->value[TRADE_STAPLE_KEEP_OFF_HOLE]).at);
    add_line(looking, "bare", &words);
}

/* ---- ways ---- */

static const char *const states[] = {
    [WAY_SHUT] = "shut", [WAY_POSSIBLE] = "possible", [WAY_CHOSEN] = "chosen"};

static void add_blockers(const struct looking *looking, const struct plan_way *way,
                         struct text *words)
{
    bool begun = false;
    for (size_t i = 0; i < way->blocker_count; i++) {
        const struct blocker *blocker = &looking->plan->blockers.at[way->first_blocker + i];
        if (way->state == WAY_SHUT && !blocker->lasting)
            continue;
        text_add(words, begun ? ", " : way->state == WAY_SHUT ? ": shut by " : "; before ");
        meeting_name(looking->plan, blocker->kind, blocker->item, words);
        begun = true;
    }
}

static void add_room(const struct looking *looking, const struct plan_way *way, struct text *words)
{
    text_format(words, ", needs %s", print_length_unit(looking->plan, way->room_needed).at);
    if (way->room >= 0)
        text_format(words, ", has %s", print_length_unit(looking->plan, way->room).at);
    if (way->state != WAY_SHUT && way->beside >= 0 && way->beside < way->beside_needed)
        text_format(words, "; wood %s beside it, %s wanted",
                    print_length_unit(looking->plan, way->beside).at,
                    print_length_unit(looking->plan, way->beside_needed).at);
}

static void add_way(const struct looking *looking, const struct plan_way *way)
{
    static const char *const treatments[] = {[WAY_BARE] = "",
                                             [WAY_LEFT_OPEN] = ", cloth left open",
                                             [WAY_PIERCED] = ", through the cover",
                                             [WAY_LATER] = ""};
    struct text words;
    text_init(&words);
    text_format(&words, "heads %s %s, by the %s", way->inside ? "inside" : "on",
                print_box(looking->plan, way->head_box), words_side.at[way->reach_side].name);
    text_format(&words, ", %s%s", words_tool.at[way->tool].help, treatments[way->treatment]);
    if (way->opened >= 0)
        text_format(&words, ", its %s panelled after", words_side.at[way->opened].name);
    add_room(looking, way, &words);
    add_blockers(looking, way, &words);
    add_line(looking, states[way->state], &words);
}

static void add_ways(const struct looking *looking)
{
    const struct plan *plan = looking->plan;
    bool begun = false;
    for (size_t i = 0; i < plan->ways.count; i++) {
        if (plan->ways.at[i].join != looking->junction->join)
            continue;
        text_add(looking->out, begun ? "" : "\nWays to the head\n");
        add_way(looking, &plan->ways.at[i]);
        begun = true;
    }
}

/* ---- when ---- */

static void add_step(const struct looking *looking, const char *before, size_t step,
                     struct text *words)
{
    text_format(words, "%sstep %zu, %s", before, step + 1, looking->plan->steps.at[step].title);
}

static void add_meeting(const struct looking *looking, const struct meeting *meeting, size_t drive)
{
    struct text words;
    text_init(&words);
    bool before = meeting->placed != PLAN_NONE && drive != PLAN_NONE && meeting->placed < drive;
    meeting_name(looking->plan, meeting->kind, meeting->item, &words);
    if (meeting->placed == PLAN_NONE)
        text_add(&words, meeting->lasting ? ": is there for good" : ": no step puts it there");
    else
        add_step(looking, ": ", meeting->placed, &words);
    if (meeting->closed != PLAN_NONE)
        add_step(looking, "; closed in ", meeting->closed, &words);
    add_line(looking, before ? "before" : "after", &words);
}

/* What meets a head is worked out in an arena; where memory runs out in it the sheet says so. */
struct telling_when {
    const struct looking *looking;
    struct arena *arena;
};

static void tell_when(void *context)
{
    const struct telling_when *telling = context;
    const struct looking *looking = telling->looking;
    size_t drive = meeting_drive_step(looking->plan, looking->junction->join);
    struct meetings meetings;
    struct text words;
    meetings_make(&meetings, looking->plan, looking->junction->join, telling->arena);
    text_add(looking->out, "\nWhat meets it, and when\n");
    for (size_t i = 0; i < meetings.of.count; i++)
        add_meeting(looking, &meetings.of.at[i], drive);
    text_init(&words);
    if (drive == PLAN_NONE)
        text_add(&words, "no step drives it");
    else
        add_step(looking, "", drive, &words);
    add_line(looking, "driven", &words);
}

static void add_when(const struct looking *looking)
{
    struct arena arena;
    arena_init(&arena);
    if (!arena_try(&arena, tell_when, &(struct telling_when){looking, &arena}))
        text_add(looking->out, "there is not enough memory to tell what meets it\n");
    arena_release(&arena);
}

void sheet_point(struct text *out, const struct plan *plan, size_t index, int columns)
{
    const struct plan_point *point = &plan->points.at[index];
    const struct junction *junction = plan_junction(plan, point->join);
    const struct looking looking = {.out = out,
                                    .plan = plan,
                                    .junction = junction,
                                    .join = MODEL_FIND(plan->facts, join, point->join),
                                    .point = point,
                                    .columns = columns};
    text_add(out, "Join ");
    show_text(out, looking.join->name);
    text_format(out, ", hole %d of %zu%s\n", point->rank, junction->point_count,
                point->taken ? ", there already" : "");
    add_place(&looking, false);
    add_place(&looking, true);
    add_screw(&looking);
    add_bare(&looking);
    add_when(&looking);
    add_ways(&looking);
}
