/*
 * What reading a build and reading a workshop share: one attempt to read a file, on a copy of the
 * model.
 */
#ifndef EXCHANGE_IMPORT_H
#define EXCHANGE_IMPORT_H

#include "exchange/complaints.h"
#include "exchange/exchange.h"
#include "exchange/names.h"
#include "exchange/reader.h"
#include "exchange/sheet.h"
#include "exchange/source.h"

#include <stdbool.h>
#include <stddef.h>

struct import {
    struct arena arena; /* dies with the attempt */
    struct model *model;
    struct model draft; /* what the model will be; in the arena */
    struct source source;
    struct complaints complaints;
    struct sheet sheet;
    struct names names; /* of the draft's shop; see import_names */
    struct reader reader;
    int64_t first_new; /* shop items with this key or a larger one came with the file */
};

/* Reads a file of `kind`. `fill` takes what the sheet holds into the draft, and complains of what
 * is wrong. Faults and effects as exchange_build_in says. */
typedef void import_fill_fn(struct import *import);
struct import_file {
    const char *bytes;
    size_t length;
    enum exchange_kind kind;
    import_fill_fn *fill;
};
enum fault import_run(const struct import_file *file, struct model *model, model_fault_fn *tell,
                      void *context);

/* Reads the names of the draft's shop anew, so that references find what was added to it. */
void import_names(struct import *import);

/* The units of the file, by the field "units" of its head. */
enum units import_units(const struct import *import);

/*
 * Checks a changed trade value that was read from `object`: its name must be in the table of trade
 * values, and its value in that one's range. A value without a unit gets the file's (trade_text).
 */
void import_judge_value(struct import *import, enum entity_kind kind, void *item,
                        const struct source_value *object);

/*
 * Reads the items of a kind that has names. One whose name the workshop had before: with `replace`
 * its fields become the file's, without it stays. The others are added.
 */
void import_named(struct import *import, enum entity_kind kind, bool replace);

/* Reads offers that came with new stocks; those of stocks that were there are passed over. */
void import_offers(struct import *import);

/* Reads items of a kind without names, and adds those that have no equal from before. With
 * `clear`, for offers alone: those from before that have no equal in the file go, if their stock is
 * in the file. */
void import_nameless(struct import *import, enum entity_kind kind, bool clear);

/* Names that must be unique in the file: noted as they are met, and judged together. */
struct import_name {
    enum entity_kind kind;
    const char *name;
    const struct source_value *object;
};
struct import_list {
    LIST_OF(struct import_name) all;
};
void import_note_name(struct import *import, struct import_list *list, enum entity_kind kind,
                      const void *item, const struct source_value *object);
void import_judge_names(struct import *import, struct import_list *list);

#endif
