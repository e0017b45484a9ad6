/*
 * Within pass fix: the rows of screws of one panel.
 */
#ifndef PLAN_ROWS_H
#define PLAN_ROWS_H

#include "plan/wood.h"

/* Screws in a row along u or v, evenly spaced. */
struct row {
    bool upright;             /* along v */
    int64_t across;           /* its place across: u of an upright row, v of a level one */
    int64_t from, to;         /* the run, from end to end of what it holds */
    int64_t end;              /* from there to the first and the last screw */
    int64_t count;            /* on the whole run */
    int64_t beside;           /* how far a screw may stand off the row */
    int64_t shift;            /* of the screws between the first and the last: across a seam from
                                 another row they stand between those of that one */
    bool skip_low, skip_high; /* the corner's screw stands in another row */
};

struct rows {
    LIST_OF(struct row) of;
};

/* n = max(2, ceil((length - 2 end) / pitch) + 1): common practice, no source; all above 0. */
int64_t row_count(int64_t length, int64_t end, int64_t pitch);

/* The even place of the i-th screw along the row, shifted across a seam; exact to half a count; 0
 * <= i < count. */
int64_t row_place(const struct row *row, int64_t i);

/* Screw to screw in a panel's rows: along an edge of it, or in its field. Never less than the trade
 * value may be. */
int64_t row_pitch(const struct planning *planning, const struct panel *panel, bool edge);

/*
 * The rows of a panel: along each edge with a member behind it (the outermost that runs along it
 * with its axis within panel.edge.band), and along every other member behind it. Rows along the
 * panel's longer way are whole; those that cross them leave out the screws in corners that such an
 * edge row has already. A block that backs a curved edge has a row of which only the first screw is
 * driven, in its middle.
 */
struct rows rows_of_panel(const struct planning *planning, const struct panel *panel);

#endif
