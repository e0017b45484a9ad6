/* What the commands share. */
#ifndef CLI_COMMANDS_H
#define CLI_COMMANDS_H

#include "base/text.h"
#include "desk/desk.h"

#include <stdbool.h>

/*
 * Options that commands take after their name: X(NAME, field) makes OPTION_NAME and the field of
 * struct cli that it sets; a flag has no value.
 */
#define CLI_FLAGS(X)          \
    X(JSON, json)             \
    X(BACK, back)             \
    X(ALONE, alone)           \
    X(REHEARSE, rehearse)     \
    X(APART, apart)           \
    X(TAKE, take)             \
    X(LAYERS, layers)         \
    X(PICTURE, picture)       \
    X(REPLACE, replace)       \
    X(UNPRICED, unpriced)     \
    X(SEMICOLONS, semicolons) \
    X(CARE, care)             \
    X(SETTLES, settles)

#define CLI_TEXTS(X)      \
    X(MINUTES, minutes)   \
    X(AISLE, aisle)       \
    X(DATE, date)         \
    X(SUPPLIER, supplier) \
    X(TAX, tax)           \
    X(BUILD, build)       \
    X(UNITS, units)       \
    X(LEFT, left)         \
    X(CURE, cure)         \
    X(EFFORT, effort)     \
    X(CORNER, corner)     \
    X(FACE, face)         \
    X(PAPERS, papers)     \
    X(TO, to)             \
    X(PAGES, pages)       \
    X(CUT, cut)           \
    X(TABLE, table)       \
    X(COUNT, counted)     \
    X(STOCK, stock)       \
    X(LENGTH, length)     \
    X(WIDTH, width)       \
    X(PACK, pack)         \
    X(PART, part)

/* Numbered above every character, as getopt_long wants. */
enum cli_option {
    OPTION_NONE,
    OPTION_MEASURE = 256, /* may be given several times, as OPTION_WITH may */
    OPTION_WITH,
#define NUMBER(NAME, field) OPTION_##NAME,
    CLI_FLAGS(NUMBER) CLI_TEXTS(NUMBER)
#undef NUMBER
};

#define CLI_OPTIONS_MOST 13 /* of one command, and the end of its list */
#define CLI_WITH 31         /* a spend is split over no more builds beside the first */
#define CLI_MEASURES 64     /* no more are taken by one command */

struct cli {
    struct desk *desk;
    const char *store; /* where no desk is open */
    struct text out;   /* printed when the command is done */
    struct text error; /* faults of files, one a line */
    int negative;      /* exit code of an answer that is no: `check` found a stop */
#define FLAG(NAME, field) bool field;
#define TEXT(NAME, field) const char *field; /* NULL: not given */
    CLI_FLAGS(FLAG)
    CLI_TEXTS(TEXT)
#undef FLAG
#undef TEXT
    const char *measures[CLI_MEASURES]; /* NAME=VALUE, as given */
    size_t measure_count;
    const char *with[CLI_WITH]; /* BUILD=PART, as given */
    size_t with_count;
    int count; /* operands */
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
    int least, most;                           /* how many operands; most -1: any number */
    enum cli_option options[CLI_OPTIONS_MOST]; /* those it takes, then OPTION_NONE */
    enum command_on on;
    enum fault (*run)(struct cli *cli, struct fault_note *note);
};

/* Ends with an entry whose name is NULL. */
extern const struct command commands[];

/* Whether an option, as getopt_long gave it, is one of a command's. */
bool command_takes(const struct command *command, int option);

/* The key of a build by name. Faults: UNKNOWN. */
enum fault command_build_key(struct cli *cli, const char *name, int64_t *ret_key,
                             struct fault_note *note);

/* The keys of the builds that the operands name, one each. Faults: UNKNOWN, DUPLICATE. */
enum fault command_keys(struct cli *cli, int64_t *keys, struct fault_note *note);

/* The effort that --effort names, `standard` without it. */
enum fault command_effort(const struct cli *cli, enum cut_effort standard,
                          enum cut_effort *ret_effort, struct fault_note *note);

/* One line: the build that is in hand and what its plan comes to; nothing without a build. */
void command_tally(struct cli *cli);

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
enum fault command_copy_item(struct cli *cli, struct fault_note *note); /* of `copy` */
enum fault command_items(struct cli *cli, struct fault_note *note);
enum fault command_add(struct cli *cli, struct fault_note *note);
enum fault command_change(struct cli *cli, struct fault_note *note);
enum fault command_delete(struct cli *cli, struct fault_note *note);
enum fault command_put(struct cli *cli, struct fault_note *note);
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
