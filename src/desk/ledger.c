/*
 * Tables of prices, of the shelf and of spend, out and in. What goes in is one edit, or nothing at
 * all. Spends of several builds are added to each of their models, loaded for the purpose.
 */
#include "desk/ledger.h"

#include "desk/internal.h"

#include <assert.h>

/* ---- out ---- */

struct putting {
    struct desk *desk;
    enum ledger_kind kind;
    const struct csv_style *style;
    struct text *out;
    int64_t build;
    struct arena arena;
};

static enum fault run_put(void *context, struct fault_note *note)
{
    struct putting *putting = context;
    struct model *model = ARENA_NEW(&putting->arena, struct model);
    enum fault fault =
        store_peek(putting->desk->store, putting->build, model, &putting->arena, note);
    if (!fault)
        ledger_put_lines(putting->out, putting->kind, putting->style, model, putting->build == 0);
    return fault;
}

static enum fault put_build(struct putting *putting, int64_t build, struct fault_note *note)
{
    putting->build = build;
    arena_init(&putting->arena);
    enum fault fault = desk_guard(&putting->arena, run_put, putting, note);
    arena_release(&putting->arena);
    return fault;
}

enum fault desk_ledger_out(struct desk *desk, enum ledger_kind kind, int64_t build,
                           const struct csv_style *style, struct text *out, struct fault_note *note)
{
    struct putting putting = {.desk = desk, .kind = kind, .style = style, .out = out};
    const struct store_build *builds = NULL;
    size_t count = 0;
    ledger_put_head(out, kind, style);
    enum fault fault = put_build(&putting, build, note);
    if (kind != LEDGER_SPEND || build || fault)
        return fault;
    fault = desk_builds(desk, &builds, &count, note);
    for (size_t i = 0; i < count && !fault; i++)
        fault = put_build(&putting, builds[i].key, note);
    return fault;
}

/* ---- in ---- */

struct taking {
    struct desk *desk;
    struct ledger_file file;
    model_fault_fn *tell;
    void *context;
    struct arena arena;
    LIST_OF(struct ledger_build) builds;
    struct ledger ledger;
    LIST_OF(struct store_change) changes;
    size_t changed;
};

static enum fault refuse(enum fault fault, struct fault_note *note)
{
    return fault ? fault_say(note, fault, "the table was not taken in") : FAULT_NONE;
}

/* Prices and the shelf are the workshop's, whichever build is open. */
static enum fault change_shop(struct model *draft, void *context, struct fault_note *note)
{
    struct taking *taking = context;
    enum fault fault =
        ledger_read(&taking->ledger, &taking->file, draft, taking->tell, taking->context);
    if (!fault)
        taking->changed = ledger_take(&taking->ledger, 0, draft);
    return refuse(fault, note);
}

static enum fault take_into(struct taking *taking, int64_t build, struct fault_note *note)
{
    struct model *before = ARENA_NEW(&taking->arena, struct model);
    struct model *after = ARENA_NEW(&taking->arena, struct model);
    enum fault fault = store_peek(taking->desk->store, build, before, &taking->arena, note);
    if (fault)
        return fault;
    model_copy(after, before, &taking->arena);
    size_t changed = ledger_take(&taking->ledger, build, after);
    taking->changed += changed;
    if (changed)
        *LIST_ADD(&taking->arena, &taking->changes) = (struct store_change){before, after};
    return FAULT_NONE;
}

static bool is_named(const struct ledger *ledger, int64_t build)
{
    for (size_t i = 0; i < ledger->entries.count; i++) {
        if (ledger->entries.at[i].build == build)
            return true;
    }
    return false;
}

static enum fault read_spends(struct taking *taking, struct fault_note *note)
{
    const struct store_build *builds = NULL;
    size_t count = 0;
    struct model *shop = ARENA_NEW(&taking->arena, struct model);
    enum fault fault = desk_builds(taking->desk, &builds, &count, note);
    if (!fault)
        fault = store_peek(taking->desk->store, 0, shop, &taking->arena, note);
    for (size_t i = 0; i < count && !fault; i++)
        *LIST_ADD(&taking->arena, &taking->builds) =
            (struct ledger_build){builds[i].key, arena_text(&taking->arena, builds[i].name)};
    taking->file.builds = taking->builds.at;
    taking->file.build_count = taking->builds.count;
    if (fault)
        return fault;
    return refuse(ledger_read(&taking->ledger, &taking->file, shop, taking->tell, taking->context),
                  note);
}

static enum fault run_spends(void *context, struct fault_note *note)
{
    struct taking *taking = context;
    enum fault fault = read_spends(taking, note);
    if (!fault && is_named(&taking->ledger, 0))
        fault = take_into(taking, 0, note);
    for (size_t i = 0; i < taking->builds.count && !fault; i++) {
        if (is_named(&taking->ledger, taking->builds.at[i].key))
            fault = take_into(taking, taking->builds.at[i].key, note);
    }
    return fault;
}

static enum fault take_spends(struct taking *taking, const char *label, struct fault_note *note)
{
    struct desk *desk = taking->desk;
    desk_abandon(desk);
    arena_init(&taking->arena);
    enum fault fault = desk_guard(&taking->arena, run_spends, taking, note);
    if (!fault && taking->changes.count)
        fault = store_save_together(desk->store, taking->changes.at, taking->changes.count, label,
                                    note);
    arena_release(&taking->arena);
    return fault ? fault : desk_take_up(desk, desk_model(desk)->build.key, note);
}

enum fault desk_ledger_in(struct desk *desk, enum ledger_kind kind, const char *bytes,
                          size_t length, model_fault_fn *tell, void *context, size_t *ret_changed,
                          struct fault_note *note)
{
    struct taking taking = {.desk = desk,
                            .file = {.kind = kind, .bytes = bytes, .length = length},
                            .tell = tell,
                            .context = context};
    char label[STORE_LABEL];
    desk_label(label, "table of %s", ledger_word(kind));
    enum fault fault = kind == LEDGER_SPEND ? take_spends(&taking, label, note)
                                            : desk_edit(desk, label, change_shop, &taking, note);
    if (!fault)
        *ret_changed = taking.changed;
    return fault;
}
