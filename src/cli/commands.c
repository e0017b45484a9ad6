#include "cli/commands.h"

/* Reads as a call, so that a row stays one. */
#define TAKES(...)  \
    {               \
        __VA_ARGS__ \
    }

const struct command commands[] = {
    {"list", "", "all builds", 0, 0, TAKES(OPTION_JSON), ON_WORKSHOP, command_list},
    {"show", "BUILD [BOX]",
     "boxes, screws, joins, cloth and staples of a build, or its layers alone, or what takes care: "
     "weights, lifting, the way in, strength; or a picture of it, of a box, of a box's face",
     1, 2,
     TAKES(OPTION_JSON, OPTION_LAYERS, OPTION_CARE, OPTION_PICTURE, OPTION_CORNER, OPTION_FACE,
           OPTION_CUT, OPTION_APART),
     ON_BUILD, command_show},
    {"plan", "BUILD", "the whole plan of a build", 1, 1, TAKES(OPTION_JSON), ON_BUILD,
     command_plan},
    {"cut", "BUILD ...", "sticks, sheets and rolls as they are cut; several builds together", 1, -1,
     TAKES(OPTION_JSON, OPTION_EFFORT, OPTION_TAKE, OPTION_BACK), ON_BUILD, command_cut},
    {"cloth", "BUILD [WAY]",
     "ways to take the cloth, side by side, or take one; each cover, and what measures changed", 1,
     2, TAKES(OPTION_JSON), ON_BUILD, command_cloth},
    {"map", "BUILD [JOIN [HOLE]]",
     "hole maps: every join, or one, or one hole with its ways and what meets it when", 1, 3,
     TAKES(OPTION_JSON), ON_BUILD, command_map},
    {"steps", "BUILD [STEP]", "the order of work, or one step whole", 1, 2,
     TAKES(OPTION_JSON, OPTION_MINUTES, OPTION_ALONE, OPTION_REHEARSE, OPTION_APART), ON_BUILD,
     command_steps},
    {"tick", "BUILD STEP ...", "tick steps, one with NAME=VALUE measures; or take ticks back", 2,
     -1, TAKES(OPTION_MINUTES, OPTION_MEASURE, OPTION_BACK), ON_BUILD, command_tick},
    {"clock", "BUILD STEP", "start the clock for a step, or stop it", 2, 2, TAKES(OPTION_NONE),
     ON_BUILD, command_clock},
    {"spoil", "BUILD PART", "a part that was cut is spoiled: cut it anew", 2, 2, TAKES(OPTION_BACK),
     ON_BUILD, command_spoil},
    {"leave", "BUILD JOIN", "leave an optional join out, or take it in again", 2, 2,
     TAKES(OPTION_BACK), ON_BUILD, command_leave},
    {"spend", "BUILD AMOUNT WHAT",
     "write down what was paid, for a build or (an empty name) the shelf, or split over several "
     "--with BUILD=PART",
     3, 3,
     TAKES(OPTION_AISLE, OPTION_DATE, OPTION_SUPPLIER, OPTION_TAX, OPTION_STOCK, OPTION_LENGTH,
           OPTION_WIDTH, OPTION_PACK, OPTION_COUNT, OPTION_PART, OPTION_WITH, OPTION_SETTLES),
     ON_WORKSHOP, command_spend},
    {"buy", "BUILD ...",
     "the shopping list of one build, or of several as one trip, cut together where that is "
     "cheaper",
     1, -1, TAKES(OPTION_JSON, OPTION_EFFORT, OPTION_TO, OPTION_PAGES, OPTION_REPLACE), ON_WORKSHOP,
     command_buy},
    {"compare", "BUILD ...",
     "builds side by side, figure by figure; of one, what it would come to otherwise", 1, -1,
     TAKES(OPTION_JSON), ON_WORKSHOP, command_compare},
    {"copy", "BUILD NAME | BUILD KIND ITEM",
     "begin a build as a copy of another one; or copy an item with all that hangs on it", 2, 3,
     TAKES(OPTION_NONE), ON_BUILD, command_copy},
    {"items", "BUILD [KIND [ITEM]]",
     "what was entered, field by field: items of a kind, or one; alone: the kinds there are", 1, 3,
     TAKES(OPTION_JSON), ON_WORKSHOP, command_items},
    {"add", "BUILD KIND FIELD=VALUE ...", "add an item", 2, -1, TAKES(OPTION_NONE), ON_WORKSHOP,
     command_add},
    {"change", "BUILD [KIND ITEM] FIELD=VALUE ...",
     "change fields of an item; of the build or the workshop itself without one", 2, -1,
     TAKES(OPTION_NONE), ON_WORKSHOP, command_change},
    {"delete", "BUILD [KIND ITEM]", "delete an item and all that hangs on it, or the whole build",
     1, 3, TAKES(OPTION_NONE), ON_WORKSHOP, command_delete},
    {"put", "BUILD BOX SIDE OTHER [FLUSH [FLUSH]]", "put a box beside a side of another one", 4, 6,
     TAKES(OPTION_NONE), ON_BUILD, command_put},
    {"stock", "[NAME [OFFER PRICE]]",
     "prices and the shelf; of one stock what was paid before, a new price, a count, or pieces "
     "kept "
     "for a build",
     0, 3,
     TAKES(OPTION_JSON, OPTION_DATE, OPTION_SUPPLIER, OPTION_LEFT, OPTION_COUNT, OPTION_BUILD),
     ON_WORKSHOP, command_stock},
    {"money", "[BUILD]",
     "shopping list, estimate beside spend; alone: all builds, months, hours, weeks at the bench",
     0, 1, TAKES(OPTION_JSON, OPTION_DATE, OPTION_EFFORT), ON_WORKSHOP, command_money},
    {"check", "[BUILD]",
     "findings and their cures, or take one; exit code 1 when one is a stop; alone: the workshop "
     "file itself",
     0, 1, TAKES(OPTION_JSON, OPTION_CURE), ON_WORKSHOP, command_check},
    {"trade", "[KEY [VALUE]]", "trade values, or change one (an empty value resets it)", 0, 2,
     TAKES(OPTION_JSON, OPTION_BUILD), ON_WORKSHOP, command_trade},
    {"new", "[STARTER [NAME [SIZE=VALUE ...]]]", "begin a build from a starter piece; alone: which",
     0, -1, TAKES(OPTION_UNITS), ON_WORKSHOP, command_new},
    {"mirror", "BUILD BOX [NAME]", "make the mirror image of a box with all on it", 2, 3,
     TAKES(OPTION_NONE), ON_BUILD, command_mirror},
    {"print", "[BUILD]", "papers of a build, as text or into a file; alone: which there are", 0, 1,
     TAKES(OPTION_PAPERS, OPTION_TO, OPTION_PAGES, OPTION_REPLACE, OPTION_UNPRICED), ON_WORKSHOP,
     command_print},
    {"import", "FILE ...",
     "take in builds or a workshop (stuffover-build(5)), or a table of prices, of the shelf or of "
     "spend; - is standard input",
     1, -1, TAKES(OPTION_TABLE), ON_WORKSHOP, command_import},
    {"export", "[BUILD]",
     "a build as a file; alone: the workshop; or a table of prices, of the shelf or of spend", 0, 1,
     TAKES(OPTION_TABLE, OPTION_SEMICOLONS), ON_WORKSHOP, command_export},
    {"backup", "FILE", "a copy of the workshop file, looked through before it gets its name", 1, 1,
     TAKES(OPTION_REPLACE), ON_WORKSHOP, command_backup},
    {"rescue", "FOLDER", "write what can still be read of a damaged workshop file into a folder", 1,
     1, TAKES(OPTION_NONE), ON_FILE, command_rescue},
    {"undo", "", "take the last edit back", 0, 0, TAKES(OPTION_NONE), ON_WORKSHOP, command_undo},
    {"redo", "", "do it again", 0, 0, TAKES(OPTION_NONE), ON_WORKSHOP, command_redo},
    {NULL, NULL, NULL, 0, 0, TAKES(OPTION_NONE), ON_WORKSHOP, NULL}};

bool command_takes(const struct command *command, int option)
{
    for (const enum cli_option *taken = command->options; *taken; taken++) {
        if ((int)*taken == option)
            return true;
    }
    return false;
}
