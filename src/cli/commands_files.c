/* Files in and out: builds and workshops, and tables of prices, of the shelf and of spend. */
#include "cli/commands.h"

#include "base/show.h"
#include "desk/ledger.h"
#include "exchange/exchange.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#define FILE_MOST (INT64_C(16) << 20) /* as much as exchange takes in */

/* ---- reading ---- */

static enum fault read_stream(FILE *stream, struct text *bytes, struct fault_note *note)
{
    char chunk[65536];
    size_t got;
    while ((got = fread(chunk, 1, sizeof chunk, stream)) > 0) {
        text_add_bytes(bytes, chunk, got);
        if (bytes->length > FILE_MOST)
            return fault_say(note, FAULT_REFUSED, "the file is over 16 MiB");
    }
    if (ferror(stream))
        return fault_say(note, FAULT_IO, "%s", strerror(errno));
    if (text_failed(bytes))
        return fault_say(note, FAULT_MEMORY, "there is not enough memory for the file");
    return FAULT_NONE;
}

static enum fault read_file(const char *path, struct text *bytes, struct fault_note *note)
{
    if (strcmp(path, "-") == 0)
        return read_stream(stdin, bytes, note);
    FILE *stream = fopen(path, "rb");
    if (!stream)
        return fault_say(note, FAULT_IO, "%s", strerror(errno));
    enum fault fault = read_stream(stream, bytes, note);
    fclose(stream);
    return fault;
}

struct file_faults {
    struct cli *cli;
    const char *path;
};

static void tell_fault(void *context, const struct fault_note *note)
{
    const struct file_faults *faults = context;
    char line[512];
    show_text(&faults->cli->error, faults->path);
    fault_print(line, sizeof line, note);
    text_format(&faults->cli->error, ": %s\n", line);
}

static enum fault find_table(const struct cli *cli, enum ledger_kind *ret_kind,
                             struct fault_note *note)
{
    *ret_kind = cli->table ? ledger_named(cli->table) : LEDGER_KINDS;
    if (cli->table && *ret_kind == LEDGER_KINDS)
        return fault_say(note, FAULT_USAGE,
                         "there is no table \"%s\": it is prices, shelf or spend", cli->table);
    return FAULT_NONE;
}

/* ---- in ---- */

static enum fault take_in(struct cli *cli, enum ledger_kind kind, const struct text *bytes,
                          struct file_faults *faults, struct fault_note *note)
{
    size_t changed = 0;
    enum fault fault =
        kind == LEDGER_KINDS
            ? desk_import(cli->desk, text_string(bytes), bytes->length, tell_fault, faults, note)
            : desk_ledger_in(cli->desk, kind, text_string(bytes), bytes->length, tell_fault, faults,
                             &changed, note);
    if (fault) {
        fault_at(note, "%s", faults->path);
        return fault;
    }
    show_text(&cli->out, faults->path);
    if (kind == LEDGER_KINDS)
        text_add(&cli->out, ": taken in\n");
    else
        text_format(&cli->out, ": taken in, %zu lines changed something\n", changed);
    return FAULT_NONE;
}

enum fault command_import(struct cli *cli, struct fault_note *note)
{
    enum ledger_kind kind;
    enum fault fault = find_table(cli, &kind, note);
    for (int i = 0; i < cli->count && !fault; i++) {
        struct file_faults faults = {cli, cli->operands[i]};
        struct text bytes;
        text_init(&bytes);
        fault = read_file(cli->operands[i], &bytes, note);
        if (fault)
            fault_at(note, "%s", cli->operands[i]);
        else
            fault = take_in(cli, kind, &bytes, &faults, note);
        text_release(&bytes);
    }
    return fault;
}

/* ---- out ---- */

static enum fault put_table(struct cli *cli, enum ledger_kind kind, struct fault_note *note)
{
    const struct csv_style *style = cli->semicolons ? &csv_semicolons : &csv_plain;
    int64_t build = cli->count ? desk_model(cli->desk)->build.key : 0;
    if (build && kind != LEDGER_SPEND)
        return fault_say(note, FAULT_USAGE, "the table of %s is the workshop's, not a build's",
                         ledger_word(kind));
    return desk_ledger_out(cli->desk, kind, build, style, &cli->out, note);
}

enum fault command_export(struct cli *cli, struct fault_note *note)
{
    enum ledger_kind kind;
    enum fault fault = find_table(cli, &kind, note);
    if (!fault && cli->count)
        fault = desk_take_up_named(cli->desk, cli->operands[0], note);
    if (fault)
        return fault;
    if (kind != LEDGER_KINDS)
        return put_table(cli, kind, note);
    if (cli->semicolons)
        return fault_say(note, FAULT_USAGE, "--semicolons is for tables");
    if (cli->count)
        exchange_build_out(&cli->out, desk_model(cli->desk));
    else
        exchange_shop_out(&cli->out, desk_model(cli->desk));
    return FAULT_NONE;
}
