/*
 * Precedence rules: which kind of step comes before which, and why. A rule has an id, a kind and
 * its reason; a link applies it to two kinds of steps that something relates. The order of work is
 * made from the links; the reasons stand on the step cards.
 *
 * Rules P01 to P78 are common practice of the trade, no source. Rules S01 on say what follows from
 * the steps themselves: nothing is framed before it is cut. Rules about what is done inside one
 * step (longest part first, centre before corners) are lines of its card and have no link; those
 * that hang on where a screw's head lies come as constraints from the access pass and have only
 * their reason here.
 */
#ifndef PLAN_RULES_H
#define PLAN_RULES_H

#include "plan/steps.h"

#include <stddef.h>

/* HARD: otherwise it cannot be done, or something is destroyed. QUALITY: otherwise a fault shows.
 * SOFT: otherwise it is slower or dirtier. */
enum rule_kind { RULE_HARD, RULE_QUALITY, RULE_SOFT };

struct rule {
    const char *id; /* "P18" */
    enum rule_kind kind;
    const char *reason; /* to be read after "because" */
};

/* What makes two steps of the kinds of a link belong together. */
enum relation {
    RELATE_BUILD, /* always; one of the two is about the whole build */
    RELATE_BOX,   /* they touch the same box: a join touches both of its boxes */
    RELATE_JOIN,
    RELATE_LAYER,
    RELATE_STOCK, /* the layer is cut from the stock */
    RELATE_OVER,  /* the second layer lies over the first on some face, or on its hem where it is
                     wrapped round to the far side */
    RELATE_UNDER, /* the second layer lies under the first on some face */
    RELATE_FACE,  /* the layer lies on the face of the panels or webbing */
    RELATE_GROUP, /* the join joins two boxes that the layer covers together */
    RELATE_WAY,   /* the heads of the join are reached through the face that the layer shuts */
    RELATE_FLAPS, /* both flaps wait for the same join, and the second lies over the first */
    RELATE_ROOM,  /* the second is a step of a join that is made in the room */
    RELATE_LATE,  /* as BOX, for panels that no join holds back */
    RELATE_NUTS,  /* the panels shut the way that the nuts of the join go in by; the layer lies on
                     the box that they are in */
    RELATE_PLACE, /* the layer waits for no join to a wall or the floor */
    RELATE_SLIT,  /* the layer is slit over points of the join, and does not wait for it whole */
    RELATIONS
};

struct link {
    const char *rule; /* id */
    int before, after;
    enum relation relation;
};

extern const struct rule rules[];
extern const size_t rule_count;
extern const struct link links[];
extern const size_t link_count;

/* By id; NULL when the table has none such. */
const struct rule *rule_find(const char *id);

/* Ids of the rules that code knows one by one. */
#define RULE_NEEDED_WOOD "P16"  /* wood that a join needs is there before the boxes are tried */
#define RULE_TRIED_DRY "P17"    /* boxes are tried dry before they meet for good */
#define RULE_HOLES_FIRST "P18"  /* holes are drilled before padding */
#define RULE_UNDER "P26"        /* what lies under comes first */
#define RULE_TRAPPED_EDGE "P45" /* an edge between boxes is stapled before they meet */
#define RULE_FLAP "P46"         /* heads are in before the flap over them is closed */
#define RULE_LAID_OVER "P50"    /* heads are in before another box is set over them */
#define RULE_SHUT_SIDE "P51"    /* heads are in before the side that they are reached by is shut */
#define RULE_MOVE "P58"       /* joins of the bench come before the move, those of the room after */
#define RULE_INNER_FLAP "P77" /* the inner flap is closed before the outer */
#define RULE_GROUP "S11"      /* boxes are joined before the layer over all of them */
#define RULE_HELD_TOGETHER "S12" /* boxes are offered up before their screws are driven */
#define RULE_PANEL_FIRST "S14"   /* a panel is on before what lies on it */
#define RULE_LAST "S15"          /* all is done before the final check */
#define RULE_AT_BENCH "S18"      /* what can be done at the bench is done before the move */
#define RULE_SUPPLIES "S21"      /* all is bought before work begins */
#define RULE_STRAIGHT_IN "S24"   /* a box comes to its place before what would stand in its way */

/* Whether what comes after, by the rule with this id, shuts the heads of a join away for good. */
bool rule_shuts_heads(const char *id);

/* What a rule of the trade holds for, and what sees to it. */
enum rule_scope {
    SCOPE_OF_PIECE,
    SCOPE_OF_BOX,
    SCOPE_OF_JOIN,
    SCOPE_OF_FACE,
    SCOPE_OF_EDGE,
    SCOPE_OF_CELL
};
enum rule_keeper {
    KEPT_BY_LINK,   /* of the table above */
    KEPT_ON_CARD,   /* it is about the work inside one step: a line of its card */
    KEPT_BY_ACCESS, /* a constraint of the access pass, with the id of the rule */
    KEPT_BY_PASS    /* another pass sees to it */
};

struct kept_rule {
    const char *id;
    enum rule_scope scope;
    enum rule_keeper keeper;
    int kind;          /* of the step with the card; STEP_KINDS without one */
    const char *words; /* of the card's line, or which pass and how; NULL */
};

/* P01 to P78, each once, in order. */
extern const struct kept_rule kept_rules[];
extern const size_t kept_rule_count;

#endif
