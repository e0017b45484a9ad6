/* What the cards of a frame and of its panel say where the main face has an outline. */
#include "plan/card.h"

#include "plan/bend.h"
#include "plan/curve.h"
#include "plan/slices.h"
#include "plan/wood.h"

#include <string.h>

/* The first and the last of the blocks behind the curved edge of a panel; NULL without any. */
struct blocks {
    const struct plan_member *first, *last;
};

static struct blocks blocks_of(const struct plan *plan, int64_t box)
{
    struct slice members = plan_members_of(plan, box);
    struct blocks blocks = {NULL, NULL};

    for (size_t i = members.from; i < members.to; i++)
        if (member_backs_edge(&plan->members.at[i])) {
            blocks.first = blocks.first ? blocks.first : &plan->members.at[i];
            blocks.last = &plan->members.at[i];
        }
    return blocks;
}

/* "H-K1 to H-K3", "H-K1". */
static const char *from_to(const struct carding *carding, const char *first, const char *last)
{
    bool one = strcmp(first, last) == 0;

    return arena_format(carding->planning->arena, "%s%s%s", first, one ? "" : " to ",
                        one ? "" : last);
}

void card_crown(struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    const struct crown_piece *first = NULL, *last = NULL;
    struct blocks blocks = blocks_of(plan, carding->step->box);

    for (size_t i = 0; i < plan->crown_pieces.count; i++)
        if (plan->crown_pieces.at[i].box == carding->step->box) {
            first = first ? first : &plan->crown_pieces.at[i];
            last = &plan->crown_pieces.at[i];
        }
    if (first)
        card_say(carding, arena_format(carding->planning->arena,
                                       "Cut posts beyond the rail on the slant; glue and screw the "
                                       "landing wood along them, %s",
                                       from_to(carding, first->label, last->label)));
    if (first && blocks.first)
        card_say(carding, arena_format(carding->planning->arena,
                                       "Glue blocks %s on the landing wood, flush with the posts; "
                                       "one screw each, off the middle",
                                       from_to(carding, blocks.first->label, blocks.last->label)));
}

/* What lies over an outline: its longest panel along it, 0 where it lies flat, and how the one is
 * bent that is bent worst. */
struct bent {
    int64_t length;
    enum bend_way way;
    size_t panels;
};

static struct bent bent_of(const struct carding *carding, int64_t facing)
{
    const struct plan *plan = carding->planning->plan;
    struct bent bent = {.way = BEND_NONE};

    for (size_t i = 0; i < plan->panels.count; i++) {
        const struct panel *panel = &plan->panels.at[i];
        enum bend_way way;

        if (panel->facing != facing)
            continue;
        way = bend_of(carding->planning, panel).way;
        bent.way = way > bent.way ? way : bent.way;
        bent.panels++;
        if (panel->width > area_width(&panel->area))
            bent.length = length_larger(bent.length, panel->width);
        if (panel->height > area_height(&panel->area))
            bent.length = length_larger(bent.length, panel->height);
    }
    return bent;
}

/* What there is to know of a sheet before it is bent. */
static const char *bend_words(enum bend_way way)
{
    static const char *const words[] = {
        [BEND_NONE] = "",
        [BEND_EITHER] = "",
        [BEND_ACROSS] = ", its grain across the bend",
        [BEND_WIDE] = "; first kerf its inside, or it breaks",
        [BEND_SHARP] = "; first kerf its inside, or it breaks",
    };

    return words[way];
}

static void say_bent(struct carding *carding, const struct box *box, const struct bent *bent)
{
    struct arena *arena = carding->planning->arena;
    const char *length = card_marked(carding, bent->length);

    if (bent->way == BEND_NONE)
        card_say(carding, arena_format(arena,
                                       "Lay it on the landing wood and screw it down, %s along the "
                                       "outline",
                                       length));
    else
        card_say(carding, arena_format(arena,
                                       "Bend it over the landing wood, screw it down from the "
                                       "middle outwards, %s along it%s",
                                       length, bend_words(bent->way)));
    if (bent->panels > 1 && bend_corners(carding->planning, box).of.count > 0)
        card_say(carding, "Where two meet at a corner of the outline, saw the edge of each to half "
                          "the angle");
}

void card_outline(struct carding *carding)
{
    const struct model *model = carding->planning->model;
    struct bent bent = bent_of(carding, carding->step->facing);
    const struct step *step = carding->step;
    const struct facing *facing = MODEL_FIND(model, facing, step->facing);
    const struct box *box = MODEL_FIND(model, box, step->box);

    if (facing && box && curve_has(box, facing->side))
        card_say(carding, blocks_of(carding->planning->plan, facing->box).first
                              ? "Mark the outline by its heights, cut the panel to it, ease the "
                                "edge; glue and screw it to posts and blocks"
                              : "Mark the outline by its heights, cut the panel to it; ease the "
                                "edge");
    if (box && bent.length > 0)
        say_bent(carding, box, &bent);
}

void card_board_outline(struct carding *carding)
{
    const struct plan *plan = carding->planning->plan;
    const struct box *box = MODEL_FIND(carding->planning->model, box, carding->step->box);

    for (size_t i = 0; i < plan->outlines.count; i++)
        if (box && box->frame == FRAME_BOARD && plan->outlines.at[i].box == box->key)
            card_say(carding,
                     arena_format(carding->planning->arena,
                                  "Mark the outline by its heights, saw it along them, %s",
                                  card_marked(carding, plan->outlines.at[i].lengths[EDGE_TOP])));
}
