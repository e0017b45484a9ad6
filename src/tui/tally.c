#include "tui/tally.h"

#include "base/show.h"
#include "paper/print.h"

#include <stdio.h>
#include <string.h>

/* What the plan comes to, figure by figure, and while something is edited what it would change. */
struct figure {
    char text[96];
    bool changes;
};

enum { FIGURES_MOST = 9 };

struct tally_line {
    struct figure figures[FIGURES_MOST];
    int count;
};

static void add_figure(struct tally_line *line, const char *figure, const char *change)
{
    struct figure *last = &line->figures[line->count++];
    last->changes = *change;
    if (last->changes)
        snprintf(last->text, sizeof last->text, "%s (%s)", figure, change);
    else
        snprintf(last->text, sizeof last->text, "%s", figure);
}

static void add_count(struct tally_line *line, const char *name, int64_t now, int64_t then)
{
    char figure[48];
    char change[24] = "";
    snprintf(figure, sizeof figure, "%lld %s", (long long)then, name);
    if (then != now)
        snprintf(change, sizeof change, "%+lld", (long long)(then - now));
    add_figure(line, figure, change);
}

/* "cost 412.60 (+18.40)"; "cost 380.10+" while prices are missing */
static void add_cost(struct tally_line *line, const struct plan *now, const struct plan *then)
{
    char figure[MONEY_TEXT + 8];
    char change[MONEY_TEXT + 1] = "";
    int64_t more = then->tally.cost - now->tally.cost;
    snprintf(figure, sizeof figure, "cost %s%s", print_money(then, then->tally.cost).at,
             plan_unpriced(then) ? "+" : "");
    if (more)
        snprintf(change, sizeof change, "%s%s", more > 0 ? "+" : "", print_money(then, more).at);
    add_figure(line, figure, change);
}

/* Figures that have no sign of their own: what was is named. */
static void add_plain(struct tally_line *line, struct printed now, struct printed then)
{
    char change[QUANTITY_TEXT + 8] = "";
    if (strcmp(now.at, then.at) != 0)
        snprintf(change, sizeof change, "was %s", now.at);
    add_figure(line, then.at, change);
}

static void tally_make(struct tally_line *line, const struct plan *now, const struct plan *then)
{
    const struct tally *before = &now->tally;
    const struct tally *after = &then->tally;
    line->count = 0;
    add_cost(line, now, then);
    add_count(line, "sticks", before->sticks, after->sticks);
    add_count(line, "sheets", before->sheets, after->sheets);
    add_plain(line, print_roll(now, before->cloth), print_roll(then, after->cloth));
    add_count(line, "staples", before->staples, after->staples);
    add_count(line, "screws", before->screws, after->screws);
    add_plain(line, print_minutes(before->minutes), print_minutes(after->minutes));
    add_count(line, "warn", before->warns, after->warns);
    if (after->stops || before->stops)
        add_count(line, "stop", before->stops, after->stops);
}

static int tally_width(const struct tally_line *line, int gap)
{
    int width = 0;
    for (int i = 0; i < line->count; i++)
        width += gap + text_columns(line->figures[i].text);
    return width;
}

/* Where there is no room for all, figures that stay as they are give way: the cost and the findings
 * last. */
static void tally_fit(struct tally_line *line, int gap, int room)
{
    static const char rounds[] = {1, 0}; /* first those that stay, then any */
    for (size_t round = 0; round < sizeof rounds; round++) {
        for (int i = line->count - 2; i > 0 && tally_width(line, gap) > room; i--) {
            if (rounds[round] && line->figures[i].changes)
                continue;
            memmove(&line->figures[i], &line->figures[i + 1],
                    (size_t)(line->count - i - 1) * sizeof *line->figures);
            line->count--;
        }
    }
}

void tally_paint(struct tui *tui, int row)
{
    const struct plan *now = tui->preview ? desk_quick_plan(tui->desk) : tui_plan(tui);
    const struct plan *then = tui->preview ? tui->preview : now;
    struct tally_line line;
    int columns = tui->view.columns;
    if (!tui_model(tui)->build.key)
        return;
    tally_make(&line, now, then);
    int gap = tally_width(&line, 3) <= columns ? 3 : tally_width(&line, 2) <= columns ? 2 : 1;
    tally_fit(&line, gap, columns);
    int column = 0;
    for (int i = 0; i < line.count; i++) {
        bool stops = then->tally.stops && i + 1 == line.count;
        int style = line.figures[i].changes || stops ? VIEW_STRONG : VIEW_PLAIN;
        column += i ? gap : 1;
        column += view_text(&tui->view, row, column, columns - column, style, line.figures[i].text);
    }
}
