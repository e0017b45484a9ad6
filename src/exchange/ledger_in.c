/*
 * The way in. A line is read cell by cell into an item of its own; then it is looked for among the
 * items that are there; only what passed both stands in the ledger. Nothing of the model changes.
 */
#include "exchange/ledger_columns.h"

#include "exchange/complaints.h"
#include "exchange/near.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>

#define COLUMNS_MOST 40

/* A column: of a field, of the build where `field` is NULL and `of_build` is set, or unknown. */
struct column {
    const struct field *field;
    bool of_build;
};

struct reading {
    const struct ledger_file *file;
    const struct ledger_table *table;
    const struct entity *entity;
    struct model *model;
    struct arena *arena;
    struct complaints complaints;
    struct csv csv;
    struct column columns[COLUMNS_MOST];
    size_t column_count;
    bool given[COLUMNS_MOST]; /* by field: the table has a column for it */
    bool known[COLUMNS_MOST]; /* by field: an item is known by it */
    bool doubtful;            /* an item is known by a field that has no column */
    struct ledger ledger;
    int *taken; /* by item of the model: line that took its place, 0 for none */
};

static void complain_at(struct reading *reading, const struct csv_cell *cell, const char *column,
                        enum fault code, const char *why)
{
    struct fault_note note;

    fault_say_column(&note, code, cell->column, "%s", why);
    fault_at(&note, "%s", column);
    note.line = cell->line;
    complain_note(&reading->complaints, &note);
}

/* ---- the first line ---- */

static void say_unknown(struct reading *reading, const struct csv_cell *cell)
{
    const char *names[COLUMNS_MOST];
    size_t count = 0;
    char why[200];

    for (; count < reading->entity->field_count && count + 1 < COLUMNS_MOST; count++)
        names[count] = reading->entity->fields[count].name;
    if (reading->table->of_builds)
        names[count++] = LEDGER_BUILD;
    const char *near = near_word(cell->text, names, count);
    snprintf(why, sizeof why, "no column of %s is called \"%.60s\"%s%s%s", reading->table->word,
             cell->text, near ? ": perhaps \"" : "", near ? near : "", near ? "\"" : "");
    complain_at(reading, cell, "", FAULT_UNKNOWN, why);
}

static bool has_column(const struct reading *reading, const struct column *column)
{
    for (size_t i = 0; i < reading->column_count; i++)
        if (reading->columns[i].field == column->field &&
            reading->columns[i].of_build == column->of_build)
            return true;
    return false;
}

static void read_name(struct reading *reading, const struct csv_cell *cell)
{
    struct column column = {.field = field_named(reading->entity, cell->text)};

    column.of_build = reading->table->of_builds && strcmp(cell->text, LEDGER_BUILD) == 0;
    if (!column.field && !column.of_build)
        say_unknown(reading, cell);
    else if (has_column(reading, &column))
        complain_at(reading, cell, cell->text, FAULT_DUPLICATE, "this column stands here twice");
    if (reading->column_count < COLUMNS_MOST)
        reading->columns[reading->column_count++] = column;
}

static void read_head(struct reading *reading)
{
    struct csv_row row;
    struct fault_note note;
    struct csv_cell start = {.text = "", .line = 1, .column = 1};
    enum fault fault = FAULT_NONE;

    if (!csv_next(&reading->csv, reading->arena, &row, &fault, &note)) {
        complain_at(reading, &start, "", FAULT_MISSING,
                    "the table is empty: its first line names the columns");
        return;
    }
    if (fault)
        complain_note(&reading->complaints, &note);
    for (size_t i = 0; i < row.cells.count; i++)
        read_name(reading, &row.cells.at[i]);
    start.line = row.line;
    for (size_t i = 0; i < reading->entity->field_count && !fault; i++) {
        const struct column column = {.field = &reading->entity->fields[i]};

        reading->given[i] = has_column(reading, &column);
        reading->known[i] = ledger_knows_by(reading->table, column.field);
        reading->doubtful = reading->doubtful || (reading->known[i] && !reading->given[i]);
        if (ledger_needs(reading->table, column.field) && !reading->given[i])
            complain_at(reading, &start, column.field->name, FAULT_MISSING,
                        "this column is needed");
    }
}

/* ---- cells ---- */

/* One of a few words; an empty cell stands for the standard one. */
static bool is_word(const struct field *field)
{
    return field->type == FIELD_CHOICE || field->type == FIELD_FLAG;
}

static bool is_number(const struct field *field)
{
    return !field_is_text(field) && field->type != FIELD_REF && !is_word(field);
}

/* The one comma of a number; NULL where there is none, or also a point. */
static char *only_comma(char *text)
{
    char *comma = strchr(text, ',');

    return comma && !strchr(comma + 1, ',') && !strchr(text, '.') ? comma : NULL;
}

/* Whether "1,234" may be a thousand as well as one and a bit: where commas part the cells. */
static bool is_ambiguous(const struct reading *reading, const char *comma)
{
    size_t digits = strspn(comma + 1, "0123456789");

    return reading->csv.separator == ',' && digits == 3;
}

static enum fault read_number(struct reading *reading, const struct field *field, void *item,
                              const char *text, struct fault_note *note)
{
    char *number = arena_text(reading->arena, text);
    char *comma = only_comma(number);

    if (comma && is_ambiguous(reading, comma))
        return fault_say(note, FAULT_SYNTAX,
                         "this may be thousands or decimals: write it without the comma");
    if (comma)
        *comma = '.';
    return field_read(field, reading->model, item, number, note);
}

static void read_field(struct reading *reading, const struct field *field,
                       const struct csv_cell *cell, void *item)
{
    struct fault_note note;
    bool standard = !*cell->text && is_number(field);
    enum fault fault = FAULT_NONE;

    if (standard || (!*cell->text && is_word(field)))
        field_set_whole(field, item, field->standard);
    else if (is_number(field))
        fault = read_number(reading, field, item, cell->text, &note);
    else
        fault = field_read(field, reading->model, item, csv_unguarded(cell->text), &note);
    if (!fault && standard && ledger_needs(reading->table, field))
        fault = fault_say(&note, FAULT_MISSING, "%s is needed", field->name);
    if (fault)
        complain_at(reading, cell, field->name, fault, note.why);
}

static int64_t read_build(struct reading *reading, const struct csv_cell *cell)
{
    const char *name = csv_unguarded(cell->text);
    char why[200];

    for (size_t i = 0; *name && i < reading->file->build_count; i++)
        if (strcmp(reading->file->builds[i].name, name) == 0)
            return reading->file->builds[i].key;
    if (*name) {
        snprintf(why, sizeof why, "there is no build called \"%.60s\"", name);
        complain_at(reading, cell, LEDGER_BUILD, FAULT_UNKNOWN, why);
    }
    return 0;
}

static void *new_item(const struct reading *reading)
{
    void *item = arena_alloc(reading->arena, reading->entity->size);

    for (size_t i = 0; i < reading->entity->field_count; i++)
        field_set_standard(&reading->entity->fields[i], item);
    return item;
}

/* ---- the item that a line is about ---- */

/* Whether two items are one piece; `all` asks the fields too that the table has no column for. */
static bool is_same_piece(const struct reading *reading, const void *a, const void *b, bool all)
{
    for (size_t i = 0; i < reading->entity->field_count; i++) {
        const struct field *field = &reading->entity->fields[i];

        if (reading->known[i] && (all || reading->given[i]) && !field_equal(field, a, b))
            return false;
    }
    return true;
}

/* Whether a line says another item than the one found as well, and the two are not one piece. */
static bool could_be_another(const struct reading *reading, const void *item, size_t found)
{
    const void *first = model_at_const(reading->model, reading->table->entity, found);
    size_t count = model_count(reading->model, reading->table->entity);

    for (size_t i = 0; i < count; i++) {
        const void *other = model_at_const(reading->model, reading->table->entity, i);

        if (i != found && is_same_piece(reading, other, item, false) &&
            !is_same_piece(reading, other, first, true))
            return true;
    }
    return false;
}

/* The line before this one that says the same; 0 for none. */
static int line_before(const struct reading *reading, const void *item)
{
    for (size_t i = reading->ledger.entries.count; i-- > 0;)
        if (is_same_piece(reading, reading->ledger.entries.at[i].item, item, false))
            return reading->ledger.entries.at[i].line;
    return 0;
}

/* What was given takes the place of what is there. */
static void fill_from(const struct reading *reading, void *item, const void *old)
{
    for (size_t i = 0; i < reading->entity->field_count; i++) {
        const struct field *field = &reading->entity->fields[i];

        if (reading->given[i])
            continue;
        if (field_is_text(field))
            field_set_string(field, item, field_string(field, old));
        else
            field_set_whole(field, item, field_whole(field, old));
    }
}

/* The key of the item from before whose place a line takes; 0 for none. Items that are alike are
 * taken one by one, each by one line. */
static int64_t match(struct reading *reading, const struct csv_cell *start, void *item)
{
    enum entity_kind kind = reading->table->entity;
    size_t count = model_count(reading->model, kind);
    char why[120];

    for (size_t i = 0; i < count; i++) {
        const void *old = model_at_const(reading->model, kind, i);

        if (reading->taken[i] || !is_same_piece(reading, old, item, false))
            continue;
        if (reading->doubtful && could_be_another(reading, item, i)) {
            complain_at(reading, start, "", FAULT_REFUSED,
                        "several that are there could be meant: add the columns that tell them "
                        "apart");
            return 0;
        }
        reading->taken[i] = start->line;
        fill_from(reading, item, old);
        return item_key(old);
    }
    if (line_before(reading, item)) {
        snprintf(why, sizeof why, "line %d says the same piece", line_before(reading, item));
        complain_at(reading, start, "", FAULT_DUPLICATE, why);
    }
    return 0;
}

/* ---- lines ---- */

static bool is_blank(const struct csv_row *row)
{
    for (size_t i = 0; i < row->cells.count; i++)
        if (*row->cells.at[i].text)
            return false;
    return row->cells.count > 0;
}

static void read_row(struct reading *reading, const struct csv_row *row)
{
    struct ledger_entry entry = {.item = new_item(reading), .line = row->line};
    const struct csv_cell *start = &row->cells.at[0];
    size_t faults = reading->complaints.all.count + reading->complaints.beside;
    char why[160];

    if (row->cells.count != reading->column_count) {
        snprintf(why, sizeof why, "the first line has %zu cells, and this one %zu%s",
                 reading->column_count, row->cells.count,
                 reading->csv.separator == ',' && row->cells.count > reading->column_count
                     ? ": a decimal comma needs quotes round its cell"
                     : "");
        complain_at(reading, start, "", FAULT_SYNTAX, why);
        return;
    }
    for (size_t i = 0; i < row->cells.count; i++)
        if (reading->columns[i].of_build)
            entry.build = read_build(reading, &row->cells.at[i]);
        else
            read_field(reading, reading->columns[i].field, &row->cells.at[i], entry.item);
    if (reading->complaints.all.count + reading->complaints.beside > faults)
        return;
    if (reading->table->known_by[0])
        entry.key = match(reading, start, entry.item);
    *LIST_ADD(reading->arena, &reading->ledger.entries) = entry;
}

static void read_rows(struct reading *reading)
{
    struct csv_row row;
    struct fault_note note;
    enum fault fault;
    char why[60];

    for (int lines = 0; csv_next(&reading->csv, reading->arena, &row, &fault, &note);) {
        if (fault)
            complain_note(&reading->complaints, &note);
        if (fault || is_blank(&row))
            continue;
        if (++lines > LEDGER_LINES_MOST) {
            snprintf(why, sizeof why, "there are more than %d lines", LEDGER_LINES_MOST);
            complain_at(reading, &row.cells.at[0], "", FAULT_REFUSED, why);
            return;
        }
        read_row(reading, &row);
    }
}

enum fault ledger_read(struct ledger *ret_ledger, const struct ledger_file *file,
                       struct model *model, model_fault_fn *tell, void *context)
{
    struct fault_note note;
    int64_t units = model->build.units;
    struct reading reading = {.file = file,
                              .table = ledger_table(file->kind),
                              .entity = entity_of(ledger_entity(file->kind)),
                              .model = model,
                              .arena = model->arena,
                              .complaints = {.arena = model->arena},
                              .ledger = {.kind = file->kind}};
    enum fault fault;

    assert(model->arena->escape && reading.entity->field_count < COLUMNS_MOST);
    reading.taken = ARENA_MANY(model->arena, int, model_count(model, reading.table->entity));
    model->build.units = model->workshop.units;
    if (csv_begin(&reading.csv, file->bytes, file->length, &note))
        complain_note(&reading.complaints, &note);
    else
        read_head(&reading);
    if (reading.complaints.all.count == 0)
        read_rows(&reading);
    model->build.units = units;
    fault = complaints_tell(&reading.complaints, tell, context);
    if (!fault)
        *ret_ledger = reading.ledger;
    return fault;
}

/* ---- taking ---- */

/* An item from before that is the entry's equal, and no other's. */
static bool take_equal(const struct model *model, const struct entity *entity,
                       const struct ledger_entry *entry, bool *taken, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (taken[i] || !item_equal(entity, model_at_const(model, entity->kind, i), entry->item))
            continue;
        taken[i] = true;
        return true;
    }
    return false;
}

_Static_assert(sizeof(struct spend) == sizeof(struct shop_spend), "an entry holds either of them");

size_t ledger_take(const struct ledger *ledger, int64_t build, struct model *model)
{
    bool shelf = ledger->kind == LEDGER_SPEND && build == 0;
    const struct entity *entity =
        entity_of(shelf ? ENTITY_shop_spend : ledger_entity(ledger->kind));
    size_t before = model_count(model, entity->kind);
    bool *taken = ARENA_MANY(model->arena, bool, before);
    size_t changed = 0;

    assert(model->arena->escape);
    for (size_t i = 0; i < ledger->entries.count; i++) {
        const struct ledger_entry *entry = &ledger->entries.at[i];
        void *old = entry->key ? model_find(model, entity->kind, entry->key) : NULL;

        if (entry->build != build ||
            (!entry->key && take_equal(model, entity, entry, taken, before)) ||
            (old && item_equal(entity, old, entry->item)))
            continue;
        item_take_fields(entity, old ? old : model_add(model, entity->kind), entry->item);
        changed++;
    }
    return changed;
}
