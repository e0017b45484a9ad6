/* What offers say: who has them, and what they cost with and without tax. */
#ifndef MODEL_OFFER_H
#define MODEL_OFFER_H

#include "model/model.h"

/* The supplier's name: the offer's own, else its stock's; "" where neither has one. */
const char *offer_supplier(const struct model *model, const struct offer *offer);

/* Its rate of tax, in millionths: its own, else the workshop's; 0 where none is asked. `offer`
 * NULL: the workshop's. */
int64_t offer_tax(const struct model *model, const struct offer *offer);

/* The price of one without tax; rounded half to even where the price has tax in it. 0: no price. */
int64_t offer_price(const struct model *model, const struct offer *offer);

/* How many packs of an offer what was bought comes to, rounded up; single pieces where `offer` is
 * NULL. Where nothing says how many pieces were in a pack, packs are packs. */
int64_t bought_packs(const struct bought *bought, const struct offer *offer);

/* Whether what was bought counts on the line of an offer: it is of its stock, size and, of what is
 * cut, pack; of any pack where that is not known, or nobody offers it any more. NULL: of none. */
bool bought_is_of(const struct model *model, const struct bought *bought,
                  const struct offer *offer);

/*
 * What is paid at the till, line by line. Tax that comes on top is worked out on all lines so far,
 * so that the rounding of many lines adds nothing; a price with tax in it is paid as it stands.
 */
struct till {
    const struct model *model;
    int64_t tax;   /* on top, of the lines so far */
    int64_t carry; /* of it, what the rounding left: millionths of the smallest coin, +-500000 */
};

/*
 * What a line adds to the whole with tax. `price` is the line's without tax, by offer_price;
 * `stated` what it comes to by the price as the offer says it. Sums that do not fit leave the tax
 * out.
 */
int64_t till_line(struct till *till, const struct offer *offer, int64_t price, int64_t stated);

#endif
