/* `show` with a box or --picture: the pictures of the screens as text. */
#include "cli/commands.h"

#include "paper/sheets.h"

#include <langinfo.h>
#include <string.h>

static enum raster_style style_here(void)
{
    return strcmp(nl_langinfo(CODESET), "UTF-8") == 0 ? RASTER_LINES : RASTER_PLAIN;
}

/* Corners are counted from 1. */
static enum fault read_corner(const char *given, enum corner *ret_corner, struct fault_note *note)
{
    if (given && (given[0] < '1' || given[0] > '0' + CORNER_COUNT || given[1]))
        return fault_say(note, FAULT_USAGE,
                         "corners are 1 (front right), 2 (back right), 3 (back left) and 4 (front "
                         "left), not \"%s\"",
                         given);
    *ret_corner = given ? (enum corner)(given[0] - '1') : CORNER_FRONT_RIGHT;
    return FAULT_NONE;
}

static enum fault print_section(struct cli *cli, int64_t box, int side, struct fault_note *note)
{
    int edge = words_find(&words_edge, cli->cut);

    if (edge < 0)
        return fault_say(note, FAULT_USAGE, "\"%s\" is no edge of a face", cli->cut);
    sheet_section(&cli->out, desk_plan(cli->desk), box, side, edge, style_here());
    return FAULT_NONE;
}

static enum fault print_face(struct cli *cli, int64_t box, struct fault_note *note)
{
    int side = words_find(&words_side, cli->face);

    if (side < 0)
        return fault_say(note, FAULT_USAGE, "\"%s\" is no face of a box", cli->face);
    if (!box)
        return fault_say(note, FAULT_USAGE, "--face needs a box: stuffover show BUILD BOX");
    if (cli->cut)
        return print_section(cli, box, side, note);
    sheet_face(&cli->out, desk_plan(cli->desk), box, side, style_here());
    return FAULT_NONE;
}

enum fault command_picture(struct cli *cli, struct fault_note *note)
{
    const struct plan *plan = desk_plan(cli->desk);
    struct piece_ask ask = {.apart = cli->apart};
    enum fault fault = read_corner(cli->corner, &ask.corner, note);

    if (fault)
        return fault;
    if (cli->json || cli->layers || cli->care)
        return fault_say(note, FAULT_USAGE,
                         "a picture is text: without --json, --layers and --care");
    if (cli->count > 1) {
        ask.box = model_key_named(plan->facts, ENTITY_box, cli->operands[1]);
        if (!ask.box)
            return fault_say(note, FAULT_UNKNOWN, "the build has no box \"%s\"", cli->operands[1]);
    }
    if (cli->cut && !cli->face)
        return fault_say(note, FAULT_USAGE, "--cut needs the face that is cut: --face FACE");
    if (cli->face)
        return print_face(cli, ask.box, note);
    sheet_piece(&cli->out, plan, &ask, style_here());
    return FAULT_NONE;
}
