#include "cut/bound.h"

#include "base/whole.h"

#include <assert.h>

/* What is left of `total` when the shelf is used up. */
static int64_t beyond_shelf(const struct cut_job *job, const int64_t *contents, int64_t total)
{
    for (size_t i = 0; i < job->size_count; i++) {
        int64_t shelf;

        if (job->sizes[i].limit == CUT_ANY || contents[i] <= 0)
            continue;
        if (whole_multiply(contents[i], job->sizes[i].limit, &shelf))
            return 0;
        total -= shelf < total ? shelf : total;
    }
    return total;
}

/* The price of so much content, in whole blanks or in fractions; 0 where it does not fit. */
static int64_t price_of(const struct cut_size *size, int64_t content, int64_t total, bool whole)
{
    int64_t product;

    if (content <= 0)
        return INT64_MAX;
    if (whole)
        return whole_multiply(whole_divide_up(total, content), size->price, &product) ? 0 : product;
    return whole_multiply(total, size->price, &product) ? 0 : whole_divide_up(product, content);
}

int64_t bound_by_content(const struct cut_job *job, const int64_t *contents, int64_t total)
{
    int64_t left = beyond_shelf(job, contents, total);
    int64_t least = INT64_MAX;
    size_t offers = 0;

    assert(total >= 0 && left >= 0 && left <= total);
    for (size_t i = 0; i < job->size_count; i++)
        offers += job->sizes[i].limit == CUT_ANY;
    for (size_t i = 0; i < job->size_count && left > 0; i++) {
        int64_t price;

        if (job->sizes[i].limit != CUT_ANY)
            continue;
        price = price_of(&job->sizes[i], contents[i], left, offers == 1);
        if (price < least)
            least = price;
    }
    return least == INT64_MAX ? 0 : least;
}
