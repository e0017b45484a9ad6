/*
 * What was ticked beside what the plan says now.
 *
 * A tick keeps the lines that its step said, and what it made is a fact of its own: parts as they
 * were cut, goods as they were bought. Where there are such facts they are compared, since they
 * tell which part and by how much; else the lines are.
 *
 * 1  A tick without lines and facts was made before there were any, or by hand: it is taken as it
 *    stands.
 * 2  Measures that a step only asks for are no part of what it says.
 */
#include "plan/card.h"

#include "base/digest.h"
#include "plan/buy.h"
#include "plan/findings.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

/* ---- what a step says ---- */

static bool says_measures(const struct step *step)
{
    return step_kinds[step->kind].takes != STEP_TAKES_MEASURES;
}

uint64_t step_digest(const struct step *step)
{
    uint64_t digest = digest_text(DIGEST_START, step->title);

    for (size_t i = 0; i < step->action_count; i++)
        digest = digest_text(digest, step->actions[i]);
    for (size_t i = 0; i < step->need_count; i++)
        digest = digest_text(digest, step->needs[i].text);
    for (size_t i = 0; says_measures(step) && i < step->measure_count; i++)
        digest = digest_text(digest, step->measures[i]);
    return digest;
}

static const char *add_line(struct arena *arena, const char *lines, const char *line)
{
    return arena_format(arena, "%s%s\n", lines, line);
}

const char *step_said(const struct step *step, struct arena *arena)
{
    const char *lines = "";

    for (size_t i = 0; i < step->need_count; i++)
        lines = add_line(arena, lines, step->needs[i].text);
    for (size_t i = 0; says_measures(step) && i < step->measure_count; i++)
        lines = add_line(arena, lines, step->measures[i]);
    for (size_t i = 0; i < step->action_count; i++)
        lines = add_line(arena, lines, step->actions[i]);
    return lines;
}

/* ---- a list of differences ---- */

struct changes {
    struct carding *carding;
    LIST_OF(const char *) lines;
};

static void change_add(struct changes *changes, const char *line)
{
    *LIST_ADD(changes->carding->planning->arena, &changes->lines) = line;
}

/* ---- lines then and now ---- */

/* The line that begins at `at`, without its end; moves on to the next. */
static const char *next_line(struct arena *arena, const char **at)
{
    size_t length = strcspn(*at, "\n");
    const char *line = arena_format(arena, "%.*s", (int)length, *at);

    *at += length + ((*at)[length] == '\n');
    return line;
}

static bool has_line(const char *lines, const char *line)
{
    size_t length = strlen(line);

    for (const char *at = lines; *at; at += strcspn(at, "\n") + 1) {
        if (strncmp(at, line, length) == 0 && (at[length] == '\n' || !at[length]))
            return true;
        if (!strchr(at, '\n'))
            break;
    }
    return false;
}

static void compare_lines(struct changes *changes, const char *then, const char *now)
{
    struct arena *arena = changes->carding->planning->arena;

    for (const char *at = then; *at;) {
        const char *line = next_line(arena, &at);

        if (!has_line(now, line))
            change_add(changes, arena_format(arena, "then: %s", line));
    }
    for (const char *at = now; *at;) {
        const char *line = next_line(arena, &at);

        if (!has_line(then, line))
            change_add(changes, arena_format(arena, "now: %s", line));
    }
}

/* ---- parts ---- */

static const char *part_size(const struct carding *carding, int64_t length, int64_t width)
{
    if (width == 0)
        return card_length(carding, length);
    return arena_format(carding->planning->arena, "%s x %s", card_length(carding, length),
                        card_length(carding, width));
}

static bool is_part(const struct part *part, const struct cut_part *cut)
{
    return strcmp(part->label, cut->part) == 0 && part->length == cut->length &&
           part->width == cut->width;
}

/* A part that was cut: as the plan has it, of another size, or not there any more. */
static void compare_cut(struct changes *changes, const struct cut_part *cut)
{
    struct arena *arena = changes->carding->planning->arena;
    const struct plan *plan = changes->carding->planning->plan;
    const char *was = part_size(changes->carding, cut->length, cut->width);
    const struct part *now = NULL;

    for (size_t i = 0; i < plan->parts.count; i++) {
        if (is_part(&plan->parts.at[i], cut))
            return;
        if (!now && strcmp(plan->parts.at[i].label, cut->part) == 0)
            now = &plan->parts.at[i];
    }
    if (now)
        change_add(changes, arena_format(arena, "%s was cut to %s, now it is %s", cut->part, was,
                                         part_size(changes->carding, now->length, now->width)));
    else
        change_add(changes,
                   arena_format(arena, "%s, cut to %s, is not needed any more", cut->part, was));
}

static bool was_cut(const struct model *facts, const char *label)
{
    for (size_t i = 0; i < facts->cut_parts.count; i++)
        if (strcmp(facts->cut_parts.at[i].part, label) == 0)
            return true;
    return false;
}

/* Whether parts of a label are to be cut again. */
static bool is_missing(const struct plan *plan, const char *label)
{
    for (size_t i = 0; i < plan->parts.count; i++)
        if (plan->parts.at[i].again && strcmp(plan->parts.at[i].label, label) == 0)
            return true;
    return false;
}

static bool is_in_plan(const struct plan *plan, const char *label)
{
    for (size_t i = 0; i < plan->parts.count; i++)
        if (strcmp(plan->parts.at[i].label, label) == 0)
            return true;
    return false;
}

/* Where it is known what was cut from what: what a step cut and no part stands for is told until
 * one of its label is cut that does. */
static void compare_pieces(struct changes *changes, const struct tick *tick)
{
    const struct plan *plan = changes->carding->planning->plan;
    const struct model *facts = plan->facts;
    const bool *spare = cut_parts_to_spare(plan, facts, changes->carding->planning->arena);

    for (size_t i = 0; i < facts->cut_parts.count; i++) {
        const struct cut_part *cut = &facts->cut_parts.at[i];

        if (cut->tick == tick->key && spare[i] &&
            (is_missing(plan, cut->part) || !is_in_plan(plan, cut->part)))
            compare_cut(changes, cut);
    }
}

static void compare_cuts(struct changes *changes, const struct tick *tick)
{
    const struct plan *plan = changes->carding->planning->plan;
    const struct model *facts = plan->facts;
    int64_t stock = step_key_of(changes->carding->step->name);

    if (stock_is_begun(facts, stock))
        compare_pieces(changes, tick);
    for (size_t i = 0; i < facts->cut_parts.count && !stock_is_begun(facts, stock); i++)
        if (facts->cut_parts.at[i].tick == tick->key && !facts->cut_parts.at[i].spoiled)
            compare_cut(changes, &facts->cut_parts.at[i]);
    for (size_t i = 0; i < plan->parts.count; i++) {
        const struct part *part = &plan->parts.at[i];

        if (part->stock == stock && changes->carding->step->kind != STEP_RECUT &&
            !was_cut(facts, part->label))
            change_add(changes,
                       arena_format(changes->carding->planning->arena, "%s, %s, has not been cut",
                                    part->label,
                                    part_size(changes->carding, part->length, part->width)));
    }
}

/* ---- all ---- */

static bool has_cuts(const struct model *facts, int64_t tick)
{
    for (size_t i = 0; i < facts->cut_parts.count; i++)
        if (facts->cut_parts.at[i].tick == tick)
            return true;
    return false;
}

static bool is_otherwise(const struct step *step, const struct tick *tick)
{
    char now[17];

    snprintf(now, sizeof now, "%016" PRIx64, step->content);
    return *tick->content && strcmp(tick->content, now) != 0;
}

void card_compare(struct carding *carding)
{
    struct step *step = carding->step;
    const struct tick *tick = ticked_find(&carding->ticked, step->name);
    struct changes changes = {.carding = carding};

    step->content = step_digest(step);
    if (!tick)
        return;
    if (has_cuts(carding->planning->model, tick->key)) {
        compare_cuts(&changes, tick);
        step->older = changes.lines.count > 0;
    } else {
        step->older = is_otherwise(step, tick);
        if (step->older && *tick->said)
            compare_lines(&changes, tick->said, step_said(step, carding->planning->arena));
    }
    step->changes = changes.lines.at;
    step->change_count = changes.lines.count;
    if (step->older)
        argument_text(
            finding_add(carding->planning, FINDING_DONE_OTHERWISE, ENTITY_tick, tick->key), 0,
            step->title);
}
