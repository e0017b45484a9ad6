/* Commands that change something; each is one named edit of the desk. */
#include "cli/commands.h"

#include "base/show.h"
#include "desk/starters.h"
#include "paper/sheets.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

void command_tally(struct cli *cli)
{
    const struct model *model = desk_model(cli->desk);

    if (!model->build.key)
        return;
    show_text(&cli->out, model->build.name);
    text_add(&cli->out, ": ");
    sheet_tally(&cli->out, desk_plan(cli->desk));
    text_add_char(&cli->out, '\n');
}

/* ---- new ---- */

struct new_build {
    const struct starter *starter;
    const char *name;
    const char *units;
    int64_t sizes[STARTER_QUESTIONS];
    char **given; /* KEY=SIZE */
    int given_count;
    bool ask;
};

static int question_named(const struct starter *starter, const char *given, size_t length)
{
    for (int i = 0; i < STARTER_QUESTIONS && starter->questions[i].key; i++) {
        const char *key = starter->questions[i].key;
        if (strlen(key) == length && strncmp(key, given, length) == 0)
            return i;
    }
    return -1;
}

/* Says which sizes there are instead. */
static enum fault refuse_size(const struct starter *starter, const char *given,
                              struct fault_note *note)
{
    struct text names;
    text_init(&names);
    for (int i = 0; i < STARTER_QUESTIONS && starter->questions[i].key; i++)
        text_format(&names, "%s%s=", i ? ", " : "", starter->questions[i].key);
    enum fault fault = names.length
                           ? fault_say(note, FAULT_USAGE, "\"%s\" is none of its sizes: %s", given,
                                       text_string(&names))
                           : fault_say(note, FAULT_USAGE, "%s takes no sizes", starter->name);
    text_release(&names);
    return fault;
}

static enum fault read_given(struct new_build *new_build, enum units units, struct fault_note *note)
{
    for (int i = 0; i < new_build->given_count; i++) {
        const char *given = new_build->given[i];
        const char *equals = strchr(given, '=');
        int question =
            equals ? question_named(new_build->starter, given, (size_t)(equals - given)) : -1;
        if (question < 0)
            return refuse_size(new_build->starter, given, note);
        enum fault fault =
            quantity_parse(QUANTITY_LENGTH, units, equals + 1, &new_build->sizes[question], note);
        if (fault) {
            fault_at(note, "%s", new_build->starter->questions[question].key);
            return fault;
        }
    }
    return FAULT_NONE;
}

/* Asks for a size until it can be read; an empty line or the end of input takes the standard. */
static void ask_size(const struct starter_question *question, enum units units, int64_t *size)
{
    char line[80];
    char standard[QUANTITY_TEXT];
    struct fault_note why;
    quantity_print_unit(standard, QUANTITY_LENGTH, units, question->standard[units]);
    printf("%s\n", question->why);
    for (;;) {
        printf("%s (%s): ", question->text, standard);
        fflush(stdout);
        if (!fgets(line, sizeof line, stdin))
            return;
        line[strcspn(line, "\n")] = '\0';
        if (!line[0] || !quantity_parse(QUANTITY_LENGTH, units, line, size, &why))
            return;
        printf("  %s\n", why.why);
    }
}

static enum fault change_new(struct model *draft, void *context, struct fault_note *note)
{
    struct new_build *new_build = context;
    const struct field *units_field = field_named(entity_of(ENTITY_build), "units");
    draft->build.units = draft->workshop.units;
    enum fault fault = FAULT_NONE;
    if (new_build->units)
        fault = field_read(units_field, draft, &draft->build, new_build->units, note);
    enum units units = model_units(draft);
    if (!fault)
        fault = read_given(new_build, units, note);
    if (fault)
        return fault;
    const struct starter *starter = new_build->starter;
    for (int i = 0; new_build->ask && i < STARTER_QUESTIONS && starter->questions[i].key; i++) {
        if (!new_build->sizes[i])
            ask_size(&starter->questions[i], units, &new_build->sizes[i]);
    }
    return starter_make(starter, draft, new_build->name, new_build->sizes, note);
}

static void list_starters(struct text *out)
{
    for (const struct starter *starter = starters; starter->name; starter++) {
        text_format(out, "%s: %s\n", starter->name, starter->help);
        for (int i = 0; i < STARTER_QUESTIONS && starter->questions[i].key; i++) {
            const struct starter_question *question = &starter->questions[i];
            char inch[QUANTITY_TEXT];
            char mm[QUANTITY_TEXT];
            quantity_print_unit(inch, QUANTITY_LENGTH, UNITS_INCH, question->standard[UNITS_INCH]);
            quantity_print_unit(mm, QUANTITY_LENGTH, UNITS_MM, question->standard[UNITS_MM]);
            text_format(out, "  %s=%s or %s: %s\n", question->key, inch, mm, question->text);
        }
    }
}

enum fault command_new(struct cli *cli, struct fault_note *note)
{
    if (cli->count == 0) {
        list_starters(&cli->out);
        return FAULT_NONE;
    }
    const struct starter *starter = starter_named(cli->operands[0]);
    if (!starter)
        return fault_say(note, FAULT_UNKNOWN, "there is no starter piece \"%s\"", cli->operands[0]);
    struct new_build new_build = {
        .starter = starter,
        .name = cli->count > 1 ? cli->operands[1] : starter->title,
        .units = cli->units,
        .given = cli->operands + 2,
        .given_count = cli->count > 2 ? cli->count - 2 : 0,
        .ask = isatty(STDIN_FILENO) && isatty(STDOUT_FILENO),
    };
    char label[STORE_LABEL];
    snprintf(label, sizeof label, "new build %.60s", new_build.name);
    enum fault fault = desk_new_build(cli->desk, label, change_new, &new_build, note);
    if (!fault)
        command_tally(cli);
    return fault;
}

/* ---- mirror ---- */

enum fault command_mirror(struct cli *cli, struct fault_note *note)
{
    int64_t box = model_key_named(desk_model(cli->desk), ENTITY_box, cli->operands[1]);
    enum fault fault;

    if (!box)
        return fault_say(note, FAULT_UNKNOWN, "there is no box \"%s\"", cli->operands[1]);
    fault = desk_mirror(cli->desk, box, cli->count > 2 ? cli->operands[2] : NULL, note);
    if (!fault)
        command_tally(cli);
    return fault;
}

/* ---- undo ---- */

enum fault command_undo(struct cli *cli, struct fault_note *note)
{
    char label[STORE_LABEL];
    enum fault fault = desk_undo(cli->desk, label, note);
    if (!fault)
        text_format(&cli->out, "taken back: %s\n", label);
    return fault;
}

enum fault command_redo(struct cli *cli, struct fault_note *note)
{
    char label[STORE_LABEL];
    enum fault fault = desk_redo(cli->desk, label, note);
    if (!fault)
        text_format(&cli->out, "done again: %s\n", label);
    return fault;
}
