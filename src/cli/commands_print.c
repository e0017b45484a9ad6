/* Papers: as text on standard output, or into a file. */
#include "cli/commands.h"

#include "desk/clock.h"
#include "paper/press.h"

static void list_papers(struct text *out)
{
    for (const struct paper *paper = papers; paper->name; paper++) {
        text_format(out, "  %s", paper->name);
        text_pad(out, 14);
        text_format(out, "%s: %s\n", paper->title, paper->help);
    }
    text_add(out, "  booklet     all that another maker needs, without money\n");
}

void command_pressed(struct cli *cli, const struct pressed *pressed)
{
    if (pressed->pages)
        text_format(&cli->out, "%zu %s\n", pressed->pages, pressed->pages == 1 ? "page" : "pages");
    if (pressed->unknown_glyphs)
        text_format(&cli->error,
                    "stuffover: %ld characters stand in no typeface of this machine and are empty "
                    "frames\n",
                    pressed->unknown_glyphs);
}

static enum fault into_file(struct cli *cli, const struct press *press, struct fault_note *note)
{
    struct pressed pressed;
    enum fault fault = press_file(press, desk_told_plan(cli->desk), &pressed, note);

    if (!fault)
        command_pressed(cli, &pressed);
    return fault;
}

enum fault command_print(struct cli *cli, struct fault_note *note)
{
    char today[CLOCK_TEXT];
    const struct press press = {.papers = cli->papers,
                                .format = cli->pages,
                                .path = cli->to,
                                .replace = cli->replace,
                                .unpriced = cli->unpriced,
                                .date = clock_today(today)};

    if (cli->count < 1) {
        list_papers(&cli->out);
        return FAULT_NONE;
    }
    enum fault fault = desk_take_up_named(cli->desk, cli->operands[0], note);
    if (!fault)
        fault = desk_cut(cli->desk, CUT_GOOD, note);
    if (fault)
        return fault;
    return cli->to ? into_file(cli, &press, note)
                   : press_text(&press, desk_told_plan(cli->desk), &cli->out, note);
}
