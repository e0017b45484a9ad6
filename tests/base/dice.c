#include "dice.h"

#include <assert.h>

uint64_t dice_bits(struct dice *dice)
{
    uint64_t bits = dice->state += UINT64_C(0x9e3779b97f4a7c15);

    bits = (bits ^ bits >> 30) * UINT64_C(0xbf58476d1ce4e5b9);
    bits = (bits ^ bits >> 27) * UINT64_C(0x94d049bb133111eb);
    return bits ^ bits >> 31;
}

int64_t dice_between(struct dice *dice, int64_t least, int64_t most)
{
    uint64_t span = (uint64_t)most - (uint64_t)least + 1;

    assert(least <= most && span != 0);
    return (int64_t)((uint64_t)least + dice_bits(dice) % span);
}

int64_t dice_any_size(struct dice *dice)
{
    uint64_t size = dice_bits(dice) >> (1 + dice_bits(dice) % 63);

    return dice_bits(dice) % 2 ? (int64_t)size : -(int64_t)size;
}
