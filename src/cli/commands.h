/* What the commands share. */
#ifndef CLI_COMMANDS_H
#define CLI_COMMANDS_H

#include "base/text.h"
#include "desk/desk.h"

#include <stdbool.h>

/* Options that commands take after their name. */
enum cli_option {
    OPTION_JSON = 1,
    OPTION_MINUTES = 2,
    OPTION_BACK = 4,
    OPTION_AISLE = 8,
    OPTION_DATE = 16,
    OPTION_SUPPLIER = 32,
    OPTION_TAX = 64,
    OPTION_BUILD = 128,
    OPTION_UNITS = 256,
    OPTION_ALONE = 512,
    OPTION_MEASURE = 1024,
    OPTION_LEFT = 2048,
    OPTION_REHEARSE = 4096,
    OPTION_APART = 8192,
    OPTION_CURE = 16384,
    OPTION_EFFORT = 32768,
    OPTION_TAKE = 65536,
    OPTION_LAYERS = 131072,
    OPTION_PICTURE = 262144,
    OPTION_CORNER = 524288,
    OPTION_FACE = 1048576,
    OPTION_PAPERS = 1 << 21,
    OPTION_TO = 1 << 22,
    OPTION_PAGES = 1 << 23,
    OPTION_REPLACE = 1 << 24,
    OPTION_UNPRICED = 1 << 25,
    OPTION_CUT = 1 << 26,
    OPTION_TABLE = 1 << 27,
    OPTION_SEMICOLONS = 1 << 28,
    OPTION_CARE = 1 << 29,
    OPTION_COUNT = 1 << 30
};

#define CLI_MEASURES 64 /* more of them are not given in one command */

struct cli {
    struct desk *desk;
    const char *store; /* where no desk is open */
    struct text out;   /* printed when the command is done */
    struct text error; /* faults of files, one a line */
    int negative;      /* exit code of an answer that is no: `check` found a stop */
    bool json;
    bool back;
    bool alone;
    const char *measures[CLI_MEASURES]; /* NAME=VALUE, as given */
    size_t measure_count;
    bool rehearse, apart, take, layers, picture, replace, unpriced, semicolons, care;
    const char *minutes, *aisle, *date, *supplier, *tax, *build, *units, *cure, *effort, *corner,
        *face, *cut, *papers, *to, *pages, *table, *left, *counted; /* NULL: not given */
    int count;                                                      /* operands */
    char **operands;
};

/* What a command works on, opened before it runs. */
enum command_on {
    ON_WORKSHOP,
    ON_BUILD, /* the first operand, taken up */
    ON_FILE   /* nothing is opened: cli->store is the workshop file's name */
};

struct command {
    const char *name;
    const char *operands; /* as the synopsis shows them */
    const char *help;
    int least, most; /* how many operands; most -1: any number */
    int options;     /* enum cli_option, those it takes */
    enum command_on on;
    enum fault (*run)(struct cli *cli, struct fault_note *note);
};

/* Ends with an entry whose name is NULL. */
extern const struct command commands[];

/* The keys of the builds that the operands name, one each. Faults: UNKNOWN, DUPLICATE. */
enum fault command_keys(struct cli *cli, int64_t *keys, struct fault_note *note);

/* The effort that --effort names, `standard` without it. */
enum fault command_effort(const struct cli *cli, enum cut_effort standard,
                          enum cut_effort *ret_effort, struct fault_note *note);

/* What was made of papers: how many pages, and characters that no typeface has. */
struct pressed;
void command_pressed(struct cli *cli, const struct pressed *pressed);

enum fault command_list(struct cli *cli, struct fault_note *note);
enum fault command_show(struct cli *cli, struct fault_note *note);
enum fault command_picture(struct cli *cli, struct fault_note *note); /* of `show` */
enum fault command_plan(struct cli *cli, struct fault_note *note);
enum fault command_cut(struct cli *cli, struct fault_note *note);
enum fault command_cloth(struct cli *cli, struct fault_note *note);
enum fault command_map(struct cli *cli, struct fault_note *note);
enum fault command_steps(struct cli *cli, struct fault_note *note);
enum fault command_doable(struct cli *cli, struct fault_note *note); /* of `steps` */
enum fault command_spoil(struct cli *cli, struct fault_note *note);
enum fault command_leave(struct cli *cli, struct fault_note *note);
enum fault command_rehearse(struct cli *cli, struct fault_note *note); /* of `steps` */
enum fault command_apart(struct cli *cli, struct fault_note *note);
enum fault command_buy(struct cli *cli, struct fault_note *note);
enum fault command_compare(struct cli *cli, struct fault_note *note);
enum fault command_copy(struct cli *cli, struct fault_note *note);
enum fault command_stock(struct cli *cli, struct fault_note *note);
enum fault command_account(struct cli *cli, struct fault_note *note); /* of `money` */
enum fault command_money(struct cli *cli, struct fault_note *note);
enum fault command_check(struct cli *cli, struct fault_note *note);
enum fault command_trade(struct cli *cli, struct fault_note *note);
enum fault command_tick(struct cli *cli, struct fault_note *note);
enum fault command_clock(struct cli *cli, struct fault_note *note);
enum fault command_spend(struct cli *cli, struct fault_note *note);
enum fault command_new(struct cli *cli, struct fault_note *note);
enum fault command_mirror(struct cli *cli, struct fault_note *note);
enum fault command_print(struct cli *cli, struct fault_note *note);
enum fault command_import(struct cli *cli, struct fault_note *note);
enum fault command_export(struct cli *cli, struct fault_note *note);
enum fault command_health(struct cli *cli, struct fault_note *note); /* of `check` */
enum fault command_backup(struct cli *cli, struct fault_note *note);
enum fault command_rescue(struct cli *cli, struct fault_note *note);
enum fault command_undo(struct cli *cli, struct fault_note *note);
enum fault command_redo(struct cli *cli, struct fault_note *note);

#endif
