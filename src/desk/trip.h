/*
 * A shopping trip for several builds: one list by aisle, and of each line what every build has a
 * share in. Packs are counted over all builds together. What is cut from a stick, a sheet or a roll
 * is cut from them for all builds together where that is cheaper, and the layout goes along; else
 * it is bought for each build as its own plan cuts it. What lies on the shelf is given to the first
 * of the builds that has a use for it.
 *
 * Shares add up: those of a line to the line, the lines to the whole, the builds to the whole, to
 * the smallest coin.
 */
#ifndef DESK_TRIP_H
#define DESK_TRIP_H

#include "desk/desk.h"
#include "desk/pool.h"

struct trip_share {
    size_t build; /* index into trip.builds; a build may have several shares in one line */
    const struct purchase *purchase; /* of its own list */
    int64_t weight;                  /* what a line is shared by */
    int64_t till;                    /* of the line's */
    const struct spend *spend;       /* that was written down last for just it; NULL: none */
    bool paid;                       /* nothing more is to be paid for it */
    int64_t amount;                  /* that was paid for it, in one spend or several */
};

/* Packs of one offer, of a line that is cut together. */
struct trip_size {
    int64_t offer, packs;
    int64_t price, stated; /* as a purchase has them */
};

struct trip_use {
    size_t build;
    int64_t use; /* of the stock, in one measure for all */
};

/* What several builds cut from one stock together. */
struct trip_cut {
    int64_t stock;
    struct pool_job job;
    LIST_OF(struct trip_size) sizes;
    LIST_OF(struct trip_use) users;
    int64_t length;          /* of roll */
    int64_t apart, together; /* what is bought for it, without tax */
};

struct trip_line {
    int64_t stock, offer;
    const struct trip_cut *cut; /* that it is bought for; NULL: for none */
    int64_t aisle;
    int64_t packs;       /* 0 for a length of roll */
    int64_t saved;       /* packs fewer than each build by itself would buy */
    int64_t length;      /* of roll */
    int64_t bought;      /* of the packs or of the length, by ticked steps of its builds */
    int64_t price, till; /* without tax, and with it */
    int64_t stated;      /* as the offer says it (model/offer.h) */
    int64_t supplier;    /* whose charge for bringing the order it is; 0: goods */
    bool priced;
    bool paid;      /* all its shares are */
    int64_t amount; /* that was paid for them */
    LIST_OF(struct trip_share) shares;
};

struct trip_build {
    const struct model *model;
    const struct plan *plan;
    int64_t till; /* sum of its shares */
};

struct trip {
    LIST_OF(struct trip_build) builds;
    LIST_OF(struct trip_cut) cuts; /* by stock */
    size_t stale; /* layouts taken together, by build, that do not hold: something changed since, or
                     other builds go shopping */
    LIST_OF(struct trip_line) lines; /* by aisle */
    int64_t till;                    /* sum of the lines */
    int64_t apart;                   /* sum of what each build would pay by itself */
    int64_t paid;                    /* sum of what was paid */
};

/* What a spend for a line of a build's own list says; the list knows it by that again. */
typedef void trip_words_fn(struct text *out, const struct plan *plan,
                           const struct purchase *purchase);

/* The note of a spend for what is cut together begins so; the other builds follow. Papers of the
 * build tell by it that another layout than its own holds. */
#define TRIP_TOGETHER "cut together with "

struct desk_trip;

/* What a build has to pay of a line, and what it has paid. */
void trip_line_of(const struct trip_line *line, size_t build, int64_t *ret_till,
                  int64_t *ret_amount);

/*
 * Plans the builds, in the order in which they are given (each once), and pools their lists; what
 * is cut together is searched for with an effort (cut/search.h). Faults: as desk_take_up.
 * `desk_trip_of` is good until the trip is freed; a payment makes another trip necessary.
 */
enum fault desk_trip_begin(struct desk_trip **ret_trip, struct desk *desk, const int64_t *builds,
                           size_t count, enum cut_effort effort, trip_words_fn *words,
                           struct fault_note *note);
void desk_trip_free(struct desk_trip *trip); /* NULL-safe */
const struct trip *desk_trip_of(const struct desk_trip *trip);
trip_words_fn *desk_trip_words(const struct desk_trip *trip); /* as it was begun with */

/*
 * Makes the layouts of what is cut together facts of the builds that it is cut for, in the place of
 * those they took together before, and gives all of them back; each one edit. As long as those
 * builds go shopping together, and their parts stay the same, that is what they cut. REFUSED where
 * nothing is cut together, or nothing was taken.
 */
enum fault desk_trip_take(struct desk *desk, const struct desk_trip *trip, struct fault_note *note);
enum fault desk_trip_leave(struct desk *desk, const struct desk_trip *trip,
                           struct fault_note *note);

/*
 * Writes down that what is open of a line was paid: in every build that has an unpaid share, a
 * spend of `day` for it, after which nothing more is to be paid. `typed` is what was paid now, tax
 * included, or NULL for what is open by the line's price. One edit. Faults: those of field_read;
 * REFUSED where all is paid; those of store_save.
 */
enum fault desk_trip_pay(struct desk *desk, const struct desk_trip *trip, size_t line,
                         const char *day, const char *typed, struct fault_note *note);

/* Takes the last spends for just this line away again, as one edit. REFUSED where there are none:
 * what was paid by hand under another name is not the line's to take back. */
enum fault desk_trip_unpay(struct desk *desk, const struct desk_trip *trip, size_t line,
                           struct fault_note *note);

#endif
