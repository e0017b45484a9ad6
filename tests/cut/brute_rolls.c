#include "brute_rolls.h"

#include "dice.h"

#include <assert.h>

struct lying {
    const struct cut_piece *part;
    int64_t near, far, left, right;
};

struct brute {
    const struct cut_job *job;
    int64_t length;
    struct lying lying[BRUTE_ROLL_PARTS];
};

static bool meet(const struct lying *a, const struct lying *b)
{
    return a->near < b->far && b->near < a->far && a->left < b->right && b->left < a->right;
}

static bool blemished(const struct brute *brute, const struct lying *lying)
{
    for (size_t i = 0; i < brute->job->blemish_count; i++) {
        const struct cut_blemish *blemish = &brute->job->blemishes[i];
        const struct lying other = {NULL, blemish->along, blemish->along + blemish->length,
                                    blemish->across, blemish->across + blemish->width};

        if (meet(lying, &other))
            return true;
    }
    return false;
}

static void wish(const struct lying *lying, int64_t *ret_along, int64_t *ret_across)
{
    const struct cut_piece *part = lying->part;

    *ret_along = lying->near - part->along + (part->centred_along ? part->length / 2 : 0);
    *ret_across = lying->left - part->across + (part->centred_across ? part->width / 2 : 0);
}

/* Whether what lies `along` and `across` further is the same spot of the pattern: some number of
 * repeats across, each with half a repeat along in a half-drop, and then some number along. Repeats
 * are even, so that halves are whole. */
static bool same_spot(const struct cut_pattern *pattern, int64_t along, int64_t across)
{
    bool drops = pattern->half_drop && pattern->along > 0 && pattern->across > 0;

    for (int64_t x = -8; x <= 8; x++)
        for (int64_t y = -12; y <= 12; y++) {
            int64_t to_along = y * pattern->along + (drops ? x * (pattern->along / 2) : 0);

            if ((pattern->across == 0 || x * pattern->across == across) &&
                (pattern->along == 0 || to_along == along))
                return true;
        }
    return false;
}

static bool matches(const struct brute *brute, size_t part)
{
    const struct cut_pattern *pattern = &brute->job->pattern;
    const struct lying *lying = &brute->lying[part];
    int64_t along, across, other_along, other_across;

    if (lying->part->group == 0 || (pattern->along == 0 && pattern->across == 0))
        return true;
    wish(lying, &along, &across);
    if (lying->part->group == CUT_PINNED)
        return same_spot(pattern, along, across);
    for (size_t i = 0; i < part; i++) {
        if (brute->lying[i].part->group != lying->part->group)
            continue;
        wish(&brute->lying[i], &other_along, &other_across);
        if (!same_spot(pattern, along - other_along, across - other_across))
            return false;
    }
    return true;
}

static bool may_lie(const struct brute *brute, size_t part)
{
    const struct lying *lying = &brute->lying[part];

    for (size_t i = 0; i < part; i++)
        if (meet(&brute->lying[i], lying))
            return false;
    return !blemished(brute, lying) && matches(brute, part);
}

static bool lay(struct brute *brute, size_t part);

static bool lay_one_way(struct brute *brute, size_t part, int64_t length, int64_t width)
{
    struct lying *lying = &brute->lying[part];

    for (int64_t along = 0; along + length <= brute->length; along++)
        for (int64_t across = 0; across + width <= brute->job->sizes[0].width; across++) {
            *lying = (struct lying){&brute->job->parts[part], along, along + length, across,
                                    across + width};
            if (may_lie(brute, part) && lay(brute, part + 1))
                return true;
        }
    return false;
}

static bool lay(struct brute *brute, size_t part)
{
    const struct cut_piece *piece = &brute->job->parts[part];
    bool matched = brute->job->pattern.along > 0 || brute->job->pattern.across > 0;

    if (part == brute->job->part_count)
        return true;
    if (lay_one_way(brute, part, piece->length, piece->width))
        return true;
    return piece->may_turn && !(matched && piece->group > 0) &&
           lay_one_way(brute, part, piece->width, piece->length);
}

int64_t brute_length(const struct cut_job *job, int64_t most)
{
    struct brute brute = {.job = job};

    assert(job->part_count <= BRUTE_ROLL_PARTS && job->kerf == 0 && job->trim == 0);
    for (brute.length = 0; brute.length <= most; brute.length++)
        if (lay(&brute, 0))
            return brute.length;
    return -1;
}

/* ---- jobs by chance ---- */

static struct cut_piece tiny_part(struct dice *dice, bool pattern)
{
    struct cut_piece part = {.length = dice_between(dice, 1, 3), .width = dice_between(dice, 1, 4)};

    part.may_turn = dice_between(dice, 0, 2) == 0;
    if (!pattern)
        return part;
    part.group = (size_t)dice_between(dice, 0, 2);
    if (dice_between(dice, 0, 5) == 0)
        part.group = CUT_PINNED;
    part.along = dice_between(dice, 0, 2);
    part.across = dice_between(dice, 0, 2);
    part.centred_along = dice_between(dice, 0, 2) == 0;
    part.centred_across = dice_between(dice, 0, 2) == 0;
    return part;
}

struct cut_job brute_job(struct dice *dice, struct cut_piece *parts, struct cut_size *roll,
                         struct cut_blemish *blemish)
{
    struct cut_job job = {.parts = parts, .sizes = roll, .size_count = 1};
    bool pattern = dice_between(dice, 0, 2) > 0;

    *roll = (struct cut_size){0, dice_between(dice, 4, 5), 0, CUT_ANY};
    job.part_count = (size_t)dice_between(dice, 1, BRUTE_ROLL_PARTS);
    for (size_t i = 0; i < job.part_count; i++)
        parts[i] = tiny_part(dice, pattern);
    if (pattern) {
        job.pattern.along = 2 * dice_between(dice, 0, 2);
        job.pattern.across = 2 * dice_between(dice, 0, 2);
        job.pattern.half_drop = dice_between(dice, 0, 1);
    }
    job.blemish_count = dice_between(dice, 0, 3) == 0;
    *blemish = (struct cut_blemish){dice_between(dice, 0, 4), dice_between(dice, 0, 3),
                                    dice_between(dice, 1, 2), dice_between(dice, 1, 4)};
    job.blemishes = blemish;
    return job;
}
