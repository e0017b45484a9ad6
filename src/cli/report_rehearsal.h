/* The rehearsal as JSON, like the reports of a plan: each function writes members of the open
 * object. */
#ifndef CLI_REPORT_REHEARSAL_H
#define CLI_REPORT_REHEARSAL_H

#include "exchange/json.h"
#include "plan/rehearse.h"

/* "proved", "points", "lost": steps by their lasting names, reasons as sentences. */
void report_rehearsal(struct json *json, const struct plan *plan,
                      const struct rehearsal *rehearsal);

/* "apart": what is taken back, in order. */
void report_apart(struct json *json, const struct plan *plan, const struct rehearsed_steps *steps);

#endif
