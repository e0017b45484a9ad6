/*
 * The papers a maker carries, in one table: what each is called and what makes it, whether as text
 * of 80 columns or on pages.
 */
#ifndef PAPER_PAPERS_H
#define PAPER_PAPERS_H

#include "paper/flow.h"
#include "paper/sheets.h"

struct paper {
    const char *name;  /* as the option gives it */
    const char *title; /* on its pages */
    const char *help;
    void (*make)(struct flow *flow); /* makes nothing where the plan has nothing to tell */
    bool priced;                     /* it tells money, unless the flow is not to */
};

/* Ends with an entry whose name is NULL. */
extern const struct paper papers[];

/* NULL: unknown. `length` bytes of `name` are its name. */
const struct paper *paper_named(const char *name, size_t length);

/* A paper alone, as text or on new pages. `priced` false leaves money out of what could tell it. */
void paper_as_text(struct text *out, const struct plan *plan, const struct paper *paper,
                   bool priced);
void paper_on_pages(struct pages *pages, const struct plan *plan, const struct paper *paper,
                    bool priced);

/* A cutting layout, for the bench or the saw: each stick, sheet and length of roll drawn; a sheet
 * on a page by itself, since it goes to the saw alone. */
void paper_put_layout(struct flow *flow, const struct cut_sheet *sheet);

/*
 * A number for the plan that papers carry, so that two prints of different plans are told apart:
 * eight digits of a digest of what all its steps say.
 */
struct paper_number {
    char at[12];
};
struct paper_number paper_number(const struct plan *plan);
struct paper_number paper_number_of_digest(uint64_t digest);

#endif
