/*
 * A plan as JSON, for programs. Lengths, masses and minutes are strings with their unit, exact
 * (quantity_print_exact); money is a string in the workshop's currency. Each function writes
 * members of the open object: one that bears its name, where nothing else is said.
 */
#ifndef CLI_REPORT_H
#define CLI_REPORT_H

#include "exchange/json.h"
#include "paper/sheets.h"
#include "plan/doable.h"
#include "plan/plan.h"

/* "name", "state", "units", "currency" and "tally". */
void report_heading(struct json *json, const struct plan *plan);
void report_boxes(struct json *json, const struct plan *plan);
void report_screws(struct json *json, const struct plan *plan);
void report_joins(struct json *json, const struct plan *plan);
void report_maps(struct json *json, const struct plan *plan);

/* "paddings", "coatings", "clearances" and "finished". */
void report_padding(struct json *json, const struct plan *plan);
/* What is cut and sewn, "outlines" to "used"; "edges" with their staples; "purchases". */
void report_cloth(struct json *json, const struct plan *plan);
void report_staples(struct json *json, const struct plan *plan);
/* Of a line of a shopping list: packs, or a length of roll. */
void report_bought(struct json *json, const struct plan *plan, bool by_length, int64_t bought);
void report_buying(struct json *json, const struct plan *plan);
void report_money(struct json *json, const struct plan *plan);
void report_steps(struct json *json, const struct plan *plan);

/* What things weigh, who lifts them in which step, how they come into the room ("way_in"), what
 * they bear ("spans", "holds" and "tips"). */
void report_weights(struct json *json, const struct plan *plan);
void report_lifts(struct json *json, const struct plan *plan);
void report_route(struct json *json, const struct plan *plan);
void report_strength(struct json *json, const struct plan *plan);
void report_findings(struct json *json, const struct plan *plan);

/* The member "cutting": every layout; and one layout as an object. */
void report_cutting(struct json *json, const struct plan *plan);
void report_layout(struct json *json, const struct cut_sheet *sheet);

/* The member "maps" with one join's map. */
void report_join_map(struct json *json, const struct plan *plan, const struct junction *junction);

/* The member "ways": every way to a join's heads that was looked at; and "meets": what meets the
 * chosen one, with the steps that put it there. */
void report_ways(struct json *json, const struct plan *plan, int64_t join);

/* What can be done now: a whole text, one object. */
void report_doable(struct text *out, const struct plan *plan, const struct doable *doable);

#endif
