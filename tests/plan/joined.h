/*
 * Pieces with joins, made in C: the wood of the worked examples and a plan of it.
 */
#ifndef JOINED_H
#define JOINED_H

#include "../base/inch.h"
#include "plan/plan.h"

struct joined {
    struct arena facts, made;
    struct model model;
    const struct plan *plan;
    int64_t stick, sheet, cloth; /* stocks */
};

void joined_start(struct joined *piece, double stick_width);
void joined_plan(struct joined *piece); /* again, after a change of the model */
void joined_end(struct joined *piece);

struct box *joined_box(struct joined *piece, int64_t frame, double width, double depth,
                       double height);
struct facing *joined_facing(struct joined *piece, int64_t box, int64_t side, int64_t stock);
struct join *joined_join(struct joined *piece, int64_t a, int64_t side_a, int64_t b,
                         int64_t side_b);
struct layer *joined_layer(struct joined *piece, int64_t box, int64_t kind, int64_t shape,
                           int64_t side);
int64_t joined_sheet(struct joined *piece, double thickness);
/* A point of a join by hand, so many inches from the left and the bottom of its first face. */
void joined_hole(struct joined *piece, int64_t join, double u, double v);

/* The first join; a point of it; the screw there. */
const struct junction *joined_junction(const struct joined *piece, int64_t join);
const struct plan_point *joined_point(const struct joined *piece, int64_t join, size_t index);
const struct screw_kind *joined_screw(const struct joined *piece, int64_t join, size_t index);

/* How many findings of a kind there are, the first one (there is one), and its argument. */
size_t joined_findings(const struct joined *piece, int kind);
const struct finding *joined_finding(const struct joined *piece, int kind);
int64_t joined_argument(const struct joined *piece, int kind, int index);

/* Whether some sentence of a finding's story has these words. */
bool joined_tells(const struct finding *finding, const char *words);

bool joined_constrained(const struct joined *piece, enum constraint_kind kind, int64_t join,
                        int64_t item, const char *rule);

/*
 * The worked examples, computed by hand: box C and wing L of the wing headboard (keys of the boxes
 * are returned through the join), the base and top of the tufted ottoman, boxes A and B of the
 * banquette; and box C with the open wing W. Each gives the key of the join.
 */
int64_t joined_headboard(struct joined *piece);
int64_t joined_ottoman(struct joined *piece);
int64_t joined_banquette(struct joined *piece);

struct open_wing {
    int64_t join, wing, lining, cover;
};
struct open_wing joined_open_wing(struct joined *piece);

#endif
