/*
 * Layouts that are known already, by the content of their job; and layouts as text, for files.
 */
#ifndef CUT_KNOWN_H
#define CUT_KNOWN_H

#include "base/text.h"
#include "cut/search.h"

/* A digest of the job: the same for jobs that are the same in every measure, price and order. */
uint64_t cut_digest(enum cut_way way, const struct cut_job *job);

/* A copy that needs nothing of the original. */
struct cut_job cut_job_copy(const struct cut_job *job, struct arena *arena);
struct cut_layout cut_layout_copy(const struct cut_layout *layout, struct arena *arena);

struct cut_known_layout {
    uint64_t digest;
    enum cut_effort effort; /* that the search was given; CUT_BEST for one that can gain no more */
    struct cut_layout layout;
};

/* In order of digests. All memory is the arena's. */
struct cut_known {
    LIST_OF(struct cut_known_layout) layouts;
};

/* NULL when the job is not known, and where `known` is NULL. */
const struct cut_known_layout *cut_known_find(const struct cut_known *known, uint64_t digest);

/* Keeps a copy; a layout that was known for the job is replaced. */
void cut_known_keep(struct cut_known *known, struct arena *arena,
                    const struct cut_known_layout *layout);

/*
 * A layout as text: "b SIZE USED REST REST_ACROSS" for each blank, then its parts as
 * "p PART ALONG ACROSS TURNED" and its cuts as "s ACROSS AT FROM TO FENCE", all whole numbers with
 * blanks between. Parts left out are those that are named nowhere. When it is read the cost is
 * added up anew and the bound is 0: a file proves nothing. False where the text is of another kind
 * or its layout is not sound for the job.
 */
void cut_layout_print(const struct cut_layout *layout, struct text *out);
bool cut_layout_read(const char *text, enum cut_way way, const struct cut_job *job,
                     struct arena *arena, struct cut_layout *ret_layout);

#endif
