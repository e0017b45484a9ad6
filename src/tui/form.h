/* What a form knows of an item, without a screen. */
#ifndef TUI_FORM_H
#define TUI_FORM_H

#include "model/model.h"

/* The fields that a form shows: all but counters. `at` has room for FORM_FIELDS; how many. */
#define FORM_FIELDS 40
int form_fields(enum entity_kind kind, const struct field *at[FORM_FIELDS]);

/* "first point from the end" is the help; the label is the field's name with blanks. */
void form_label(const struct field *field, struct text *out);

/* What may stand in the field: the words of a choice, the names of what can be referred to, the
 * range of a number in the build's units. */
void form_allowed(const struct field *field, const struct model *model, struct text *out);

/*
 * The values of a field that has few: words, yes and no, names of items ("" first where nothing may
 * stand); as text for field_read. How many there are: 0 for a field that is typed.
 */
int form_choices(const struct field *field, const struct model *model);
void form_choice(const struct field *field, const struct model *model, int index, struct text *out);

/*
 * The choice after (`by` 1) or before (-1) the one that is typed; where that is none, the first
 * that begins so. False for a field that is typed. Linear in the choices.
 */
bool form_turn(const struct field *field, const struct model *model, const char *typed, int by,
               struct text *out);

/* What is meant by a beginning: the one choice that starts so, in letters of either case; else what
 * is typed. */
void form_complete(const struct field *field, const struct model *model, const char *typed,
                   struct text *out);

/*
 * Gives a new item what it must have: names that are free, today's date, sizes to begin with, and
 * what it must refer to: `owner` is a box of the build, or a
 * stock for an item of the workshop, 0 for neither. REFUSED when the model has nothing that
 * it could refer to; the note says what is missing.
 */
enum fault form_fill(struct model *model, enum entity_kind kind, void *item, int64_t owner,
                     const char *today, struct fault_note *note);

#endif
