/* What the files of the card pass share. */
#ifndef PLAN_CARD_H
#define PLAN_CARD_H

#include "plan/counted.h"
#include "plan/pass.h"
#include "plan/steps.h"

#define CARD_ACTIONS 7 /* more do not fit a card that is read with glue on the fingers */
#define CARD_LINE 240

/*
 * The words of a kind of step. A letter after % stands for a figure of this build; a line whose
 * figure is missing is left out.
 *
 *     b           the box
 *     G           of a panel: "Glue, lay" or "Lay"
 *     w p e       most of the screws (of the frame, the panels or the join): kind, bits for thread
 *                 and shank
 *     n q         holes of the join to be drilled; its points
 *     l h r o d   its spacer, the box with its heads, the face they are reached through, the tool,
 *                 the bare patch round a head
 *     m g k R     of a layer: pitch and leg of its staples, edge that stays loose, relief cuts
 *     t c T y     its button holes through foam, lines of channels, outline that padding is trimmed
 *                 along, how far a motif is raised
 *     i a j A     of a lid: gap at its hinges, gap for fingers, what its stays hold, gaps for air
 *     z v x f u s S   trade values: button holes in wood and in foam, what is left of a handle,
 *                 temporary staples from a corner, nails from the edge, the wait for spray, what a
 *                 relief cut stops short of
 */
struct card_words {
    const char *actions[CARD_ACTIONS]; /* ends early with NULL */
    const char *measure;               /* NULL when there is none */
    const char *closes;                /* NULL when it closes nothing by itself */
    const char *caution;
};

extern const struct card_words card_words[STEP_KINDS];

/* Of a step on a layer that lies on no wood, or on a cover that slips on and off, what it says
 * instead; NULL where it says the same (card_loose.c). */
const struct card_words *card_loose_words(const struct planning *planning, const struct step *step);

struct carding {
    struct planning *planning;
    struct counted counted;
    struct flaps flaps;
    struct screw_lots screws;
    struct member_lots members;
    struct ticked ticked;
    struct step *step;
    size_t precedence; /* the first of those that end at the step or after it */
};

/* Adds a line to what the card says, while it has room. `line` is kept: arena text or a constant.
 */
void card_say(struct carding *carding, const char *line);

/* card_cutout.c: a line for each hole that is cut into the panels of the step, as many as find room
 * beside the panel's own words; one on the access holes of a join that padding is kept off; and one
 * for each other hole that the step's layer lies over, which is opened in the cloth. */
void card_cutouts(struct carding *carding);
void card_access_holes(struct carding *carding);
void card_cloth_holes(struct carding *carding);

/* card_need.c: what a step takes, with counts for this step only. */
void card_needs(struct carding *carding);

/* card_need.c: what to measure; each hole of a step that drills or finds them. */
void card_measures(struct carding *carding);

/* The outline of a board, whose panel has no step of its own (card_crown.c). */
void card_board_outline(struct carding *carding);

/* Posts and wood along an outline; and the panel that is cut to it (card_crown.c). */
void card_crown(struct carding *carding);
void card_outline(struct carding *carding);

/* card_frame.c: which joints of a frame are screwed before which members are on. */
void card_frame_order(struct carding *carding);

/* card_sew.c: the seams of a layer in their order, what stays open; and its thread, "12 yd of
 * thread", "" without. */
void card_sew(struct carding *carding);
const char *card_thread(const struct carding *carding);

/* card_lid.c: figures of a lid, by their letters in card_words. */
const char *card_lid_figure(const struct carding *carding, char letter);

/* card_back.c: how what shuts a box is fixed, by its closing. */
void card_back(struct carding *carding);
void card_need_back(struct carding *carding);

/* How many holes of the step's join are to be drilled: those that were there before are not. */
int64_t card_to_drill(const struct carding *carding);

/* card_bolt.c: lines on the holes for the bolts of a join and for their nuts, and what is taken for
 * them; nothing where the join has none. */
void card_bolts(struct carding *carding);
void card_nuts(struct carding *carding);
void card_need_bolts(struct carding *carding);
void card_need_nuts(struct carding *carding);

/* card_need.c: "12 screws #8 x 3 in" among what is needed; nothing for a count of 0. */
void card_need_count(struct carding *carding, int64_t count, const char *what, const char *which);
/* "84 in of card strip"; nothing for a length of 0. */
void card_need_length(struct carding *carding, int64_t length, const char *what);

/* The screws of the step, kind by kind: those of the frame, the panels or the join it is about. */
const struct screw_lot *card_screws(const struct carding *carding, size_t *ret_count);

/* "#8 x 3 in", in the arena. */
const char *card_screw_text(const struct carding *carding, const struct screw_lot *lot);

/* "76-1/2 in", in the arena. */
const char *card_length(const struct carding *carding, int64_t length);

/* The same, as far as a tape shows it. */
const char *card_marked(const struct carding *carding, int64_t length);

/* card_older.c: a digest of what the step says, and where it is ticked, whether it was done to an
 * older plan and what is different now. */
void card_compare(struct carding *carding);

#endif
