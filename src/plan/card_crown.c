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
                                       "Cut posts above the rail on the slant; glue and screw the "
                                       "landing wood along them, %s",
                                       from_to(carding, first->label, last->label)));
    if (first && blocks.first)
        card_say(carding, arena_format(carding->planning->arena,
                                       "Glue blocks %s on the landing wood, flush with the posts; "
                                       "one screw each, off the middle",
                                       from_to(carding, blocks.first->label, blocks.last->label)));
}

/* The longest panel of a facing along the outline that it is bent over; 0 where it lies flat. How
 * it is bent is the same for all of them. */
static int64_t bent_length(const struct carding *carding, int64_t facing, enum bend_way *ret_way)
{
    const struct plan *plan = carding->planning->plan;
    int64_t longest = 0;

    for (size_t i = 0; i < plan->panels.count; i++) {
        const struct panel *panel = &plan->panels.at[i];

        if (panel->facing != facing)
            continue;
        *ret_way = bend_of(carding->planning, panel).way;
        if (panel->width > area_width(&panel->area))
            longest = length_larger(longest, panel->width);
        if (panel->height > area_height(&panel->area))
            longest = length_larger(longest, panel->height);
    }
    return longest;
}

/* What there is to know of a sheet before it is bent. */
static const char *bend_words(enum bend_way way)
{
    static const char *const words[] = {
        [BEND_NONE] = "; where it will not bend, kerf its inside",
        [BEND_EITHER] = "",
        [BEND_ACROSS] = ", its grain across the bend",
        [BEND_WIDE] = "; first kerf its inside, or it breaks",
        [BEND_SHARP] = "; first kerf its inside, or it breaks",
    };

    return words[way];
}

void card_outline(struct carding *carding)
{
    const struct model *model = carding->planning->model;
    enum bend_way way = BEND_NONE;
    int64_t bent = bent_length(carding, carding->step->facing, &way);
    const struct step *step = carding->step;
    const struct facing *facing = MODEL_FIND(model, facing, step->facing);
    const struct box *box = MODEL_FIND(model, box, step->box);

    if (facing && box && curve_has(box, facing->side))
        card_say(carding, blocks_of(carding->planning->plan, facing->box).first
                              ? "Mark the outline by its heights, cut the panel to it, ease the "
                                "edge; glue and screw it to posts and blocks"
                              : "Mark the outline by its heights, cut the panel to it; ease the "
                                "edge");
    if (bent > 0)
        card_say(carding,
                 arena_format(carding->planning->arena,
                              "Bend it over the landing wood, screw it down from the middle "
                              "outwards, %s along it%s",
                              card_marked(carding, bent), bend_words(way)));
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
