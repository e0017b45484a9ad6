/*
 * Builds for tests of the order of work: the worked examples from their files, small ones made by
 * hand and ones by chance; and a checker of orders that shares nothing with the rules of the
 * engine.
 */
#ifndef WORK_H
#define WORK_H

#include "../base/inch.h"
#include "base/arena.h"
#include "base/text.h"
#include "model/model.h"
#include "plan/pass.h"

#include "dice.h"

struct work_bench {
    struct arena facts, made;
    jmp_buf escape;
    struct model model;
    const struct plan *plan;
    struct plan *hand; /* the same, where its lists are filled by hand */
    int64_t stick, sheet, cloth, foam, batting;
};

void work_begin(struct work_bench *bench);
void work_end(struct work_bench *bench);

/* Takes in a worked example ("headboard") and plans it. */
void work_case(struct work_bench *bench, const char *name);

/* cmocka's setup and teardown: a bench with the worked example "headboard". */
int work_begin_headboard(void **state);
int work_finish(void **state);

/* Plans the model anew, every pass, as a draft: without stories and ways out. */
void work_plan(struct work_bench *bench);

/* An empty plan of the model, to be filled by hand and finished with work_order. */
void work_empty(struct work_bench *bench);
void work_order(struct work_bench *bench);

int64_t work_box(struct work_bench *bench, const char *name, int64_t frame);
int64_t work_facing(struct work_bench *bench, int64_t box, int64_t side);
int64_t work_layer(struct work_bench *bench, int64_t box, int64_t kind, int64_t side, int64_t rank);
int64_t work_join(struct work_bench *bench, const char *name, int64_t a, int64_t b, int64_t place);
int64_t work_fitting(struct work_bench *bench, int64_t box, int64_t kind);
void work_tick(struct work_bench *bench, const char *step, const char *content);

void work_constrain(struct work_bench *bench, enum constraint_kind kind, int64_t join,
                    int64_t item);
/* An edge of a layer whose one interval waits for a join. */
void work_flap(struct work_bench *bench, int64_t layer, int64_t join, enum pass_of_staples pass);

/* work_chance.c: one to six boxes by chance, of every frame, with facings, layers, fittings and
 * joins of every kind. The model passes model_check. */
void work_chance(struct work_bench *bench, struct dice *dice);

/* Makes and plans that many builds by chance, fewer under the sanitizers, and lets each be checked.
 */
#define WORK_BUILDS 300
typedef void work_check(struct work_bench *bench, struct dice *dice);
void work_builds(uint64_t seed, work_check *check);

/* The place of a step in the order; fails the test when there is none. */
size_t work_at(const struct work_bench *bench, const char *name);
bool work_has(const struct work_bench *bench, const char *name);
const struct step *work_step(const struct work_bench *bench, const char *name);
size_t work_findings(const struct work_bench *bench, int kind);

/* ---- the checker ---- */

/* What cannot be done the other way round, whatever a rule says: pairs of steps of two kinds that
 * have something in common. */
struct physical {
    const char *what;
    const char *before, *after; /* first part of the lasting names */
    bool (*together)(const struct plan *plan, const struct step *before, const struct step *after);
};

extern const struct physical physicals[];
extern const size_t physical_count;

/* Each step at its own place, for a change; free() it. */
size_t *places_as_planned(const struct plan *plan);

/* Whether the plan tells of rules that wait for each other, which leave no order. */
bool has_no_order(const struct plan *plan);

/* What of the table an order breaks; NULL when nothing. `place` gives each step's place. */
const char *order_breaks(const struct plan *plan, const size_t *place);

/* Whether a pair of steps is one of the row. */
bool physical_binds(const struct physical *row, const struct plan *plan, size_t before,
                    size_t after);

/*
 * work_links.c: every link of the rules table, every constraint and every precedence of the plan,
 * with relations read anew from the model. A link that is not hard may be broken where what must
 * come before holds it back: a chain of precedences runs the other way; a hard one only where the
 * plan tells of a circle. NULL, or a sentence that stays good until the next call.
 */
const char *links_broken(const struct plan *plan, const size_t *place);

/* The other way round: a precedence between steps of a link's two kinds that neither that link as
 * it is read here nor a constraint asks for; so that nothing waits for what it has no part in. */
const char *links_groundless(const struct plan *plan);

/* Whether some pair of steps is related by the link with this index. */
bool link_is_used(const struct plan *plan, size_t link);

/* work_dump.c: the whole plan as text, a line for each thing in it. */
void work_dump(const struct plan *plan, struct text *out);

#endif
