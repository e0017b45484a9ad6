/*
 * A plan as text sheets, in the build's units. Each function appends one sheet with its heading, or
 * nothing where there is nothing to tell; people's text goes through the filter on the way. Where
 * memory runs out text_failed() says so.
 */
#ifndef PAPER_SHEETS_H
#define PAPER_SHEETS_H

#include "base/text.h"
#include "desk/account.h"
#include "desk/compare.h"
#include "desk/stock.h"
#include "desk/trip.h"
#include "draw/piece.h"
#include "draw/raster.h"
#include "draw/section.h"
#include "paper/print.h"
#include "plan/cloth_built.h"
#include "plan/cloth_ways.h"
#include "plan/doable.h"
#include "plan/plan.h"
#include "plan/rehearse.h"

/* ---- a plan ---- */

void sheet_heading(struct text *out, const struct plan *plan); /* name, state, the tally */
/* "cost 412.60 USD, 10 sticks, 2 sheets, cloth 6.00 yd, 905 staples, 194 screws, 31 h 56; 0 stop,
 * 5 warn, 3 note" */
void sheet_tally(struct text *out, const struct plan *plan);
/* With the story of each and its cures, numbered as `check --cure` takes them: finding.cure. */
void sheet_findings(struct text *out, const struct plan *plan);
void sheet_cautions(struct text *out, const struct plan *plan); /* those that the build calls for */
/* Heading, picture, findings, wood, cloth, buying, money, steps and cautions, in this order. */
void sheet_plan(struct text *out, const struct plan *plan);

/* ---- wood ---- */

void sheet_boxes(struct text *out, const struct plan *plan); /* members and panels of each box */
void sheet_screws(struct text *out, const struct plan *plan);
void sheet_joins(struct text *out, const struct plan *plan); /* holes with two distances each */

/*
 * Hole maps: each join's faces, what is bored, kept bare and left open, and every hole by its
 * distances from two named edges, in inches and millimetres side by side, with columns to tick. A
 * join laid or hung on has none. sheet_map is all joins, sheet_join_map one.
 */
void sheet_map(struct text *out, const struct plan *plan);
void sheet_join_map(struct text *out, const struct plan *plan, const struct junction *junction);

/*
 * One hole of a join (an index into the plan's points): its measures, what meets it when, and
 * every way to its head that was looked at, chosen, possible or shut and by what. Lines of
 * `columns`.
 */
void sheet_point(struct text *out, const struct plan *plan, size_t point, int columns);

/* ---- cloth and padding ---- */

void sheet_padding(struct text *out, const struct plan *plan); /* build-up and finished sizes */
void sheet_cloth(struct text *out, const struct plan *plan);
void sheet_sewing(struct text *out, const struct plan *plan); /* seams in the order of sewing */
void sheet_staples(struct text *out, const struct plan *plan);
void sheet_cover_sizes(struct text *out, const struct plan *plan); /* of all covers, as cut */
/* One cover whole: its size and seams, what is told of it, its sewing, its pieces on the roll. */
void sheet_cover(struct text *out, const struct plan *plan, const struct cover *cover);
/* "C cover": what a cover is called. */
void sheet_cover_name(struct text *out, const struct plan *plan, const struct cover *cover);
/* Is it cut from cloth, not from batting or foam? */
bool sheet_cover_is_cloth(const struct plan *plan, const struct cover *cover);

/* Ways to take the cloth, numbered as `cloth` takes them, those that are barred with the reason;
 * and one of them beside the one in force. */
void sheet_cloth_ways(struct text *out, const struct plan *plan, const struct cloth_way *ways,
                      size_t count);
void sheet_cloth_way(struct text *out, const struct plan *plan, const struct cloth_way *way,
                     const struct cloth_way *now);

/* Cut sizes and lengths to buy as planned and as built, with the differences; nothing where nothing
 * was measured. */
void sheet_cloth_built(struct text *out, const struct plan *plan, const struct cloth_built *built);

/* ---- cutting ---- */

/* A cutting layout to print. Units and names are the plan's. */
struct cut_sheet {
    const struct plan *plan;
    int64_t stock;
    enum cut_way way;
    const struct cut_job *job;
    const struct cut_layout *layout;
    bool taken;
    bool cut;                         /* it was cut so */
    bool again;                       /* of what is cut after the others of its stock */
    bool beside_bought;               /* some of the job's sizes were bought already */
    const struct cut_source *sources; /* of the job's sizes */
    const struct part *parts; /* the plan's, of the job; NULL where the job is of several plans */
    const char *(*label)(const struct cut_sheet *sheet, size_t part);
    const void *source; /* the caller's, for its label; NULL: the job is the plan's own */
    int64_t layer;      /* of `parts` only the pieces of one layer are named; 0: all */
    int columns;        /* that pictures may take, where they are fewer than on paper; 0: those */
};
struct cut_sheet sheet_of_job(const struct plan *plan, const struct plan_job *job);
struct cut_sheet sheet_of_pool_job(const struct plan *plan, const struct pool_job *job);

/* One stick, sheet or length of it (its picture, the marks, the cuts), and all of them. */
void sheet_blank(struct text *out, const struct cut_sheet *sheet, size_t blank);
void sheet_layout(struct text *out, const struct cut_sheet *sheet);

/* Every layout of the plan, drawn to scale, with the marks and the cuts in their order. */
void sheet_cutting(struct text *out, const struct plan *plan);

/* The sticks, sheets and rolls that the pieces of a layer come out of, those alone named. */
void sheet_layer_cutting(struct text *out, const struct plan *plan, int64_t layer);

/* Of all sheets that do not go into the vehicle whole: the cut that the shop makes first. */
void sheet_ways_home(struct text *out, const struct plan *plan);

/* ---- buying and money ---- */

void sheet_buying(struct text *out, const struct plan *plan); /* by aisle, with packs and money */
void sheet_needs(struct text *out, const struct plan *plan);  /* the same without money */
/* "total 412.60, of it tax 31.20" */
void sheet_total(struct text *out, const struct plan *plan);

/* Of one line of it: what it is called, how much of it is bought ("10 of 96"), and both, as a spend
 * for it says ("2x3 stud, 10 of 96"), with a name of less than so many bytes. */
#define SHEET_PURCHASE_NAME 81
const char *sheet_purchase_name(const struct plan *plan, const struct purchase *purchase);
void sheet_purchase_size(struct text *out, const struct plan *plan,
                         const struct purchase *purchase);
void sheet_purchase_words(struct text *out, const struct plan *plan,
                          const struct purchase *purchase);
/* What ticked steps bought of it: "bought", "10 bought" where it has come to be more, or "". The
 * same of any amount of packs, or of a length of roll. */
struct printed sheet_purchase_bought(const struct plan *plan, const struct purchase *purchase);
struct printed sheet_bought(const struct plan *plan, bool by_length, int64_t bought,
                            int64_t wanted);
/* Of its need, or of what of it lies on the shelf, as the shop sells it: "1.98 yd". */
struct printed sheet_purchase_amount(const struct plan *plan, const struct purchase *purchase,
                                     int64_t amount);

/* Estimate beside spend, by category and line by line; what a line is called is cut to so many
 * bytes. */
#define SHEET_MONEY_WORDS 35
void sheet_money(struct text *out, const struct plan *plan);

/* Money of all builds, month by month, hours, and weeks at the bench. */
void sheet_account(struct text *out, const struct model *model, const struct account *account);

/* A trip for several builds, with each build's share and what is saved; and the layouts of what is
 * cut together, parts with their builds. */
void sheet_trip(struct text *out, const struct trip *trip);
void sheet_trip_cutting(struct text *out, const struct trip *trip);
/* Of one line of it what it says, what of it was bought (as of a purchase), and whose it is. */
void sheet_trip_words(struct text *out, const struct trip *trip, const struct trip_line *line);
struct printed sheet_trip_bought(const struct trip *trip, const struct trip_line *line);
void sheet_trip_shares(struct text *out, const struct trip *trip, const struct trip_line *line);

/* Builds side by side, figure by figure; and what a build could be made from otherwise. */
void sheet_compare(struct text *out, const struct plan *const *plans, size_t count);
void sheet_otherwise(struct text *out, const struct plan *plan, const struct otherwise *ways,
                     size_t count);

/* ---- stock, in the workshop's unit ---- */

/* Stock by kind with every offer; the shelf by stock and lot, pieces numbered within each stock,
 * with what they are worth; and one stock whole. `paid`: what was paid for it before. */
void sheet_stocks(struct text *out, const struct model *model);
void sheet_shelf(struct text *out, const struct model *model);
void sheet_stock(struct text *out, const struct model *model, const struct stock *stock,
                 const struct paid_before *paid, size_t count);
/* Of one stock all but its offers: what they cost before, the shelf, what was paid. */
void sheet_stock_before(struct text *out, const struct model *model, const struct stock *stock,
                        const struct paid_before *paid, size_t count);
/* "96 in x 48 in", "100 in a pack" */
void sheet_offer_words(struct text *out, const struct model *model, const struct offer *offer);
/* "with tax"; nothing for tax that comes on top at the workshop's rate. */
void sheet_offer_tax(struct text *out, const struct offer *offer);

/* ---- work ---- */

void sheet_steps(struct text *out, const struct plan *plan); /* in order, with reasons */
/* One step whole, as it is read at the bench. */
void sheet_step(struct text *out, const struct plan *plan, const struct step *step);

/* What can be done in the time there is, and what holds the other free steps back. */
void sheet_doable(struct text *out, const struct plan *plan, const struct doable_ask *ask,
                  const struct doable *doable);

/* A rehearsal point by point, with what is not proved and why; and the order of taking apart. */
void sheet_rehearsal(struct text *out, const struct plan *plan, const struct rehearsal *rehearsal);
void sheet_apart(struct text *out, const struct plan *plan, const struct rehearsed_steps *steps);

/* ---- what goes along with a piece ---- */

void sheet_site(struct text *out, const struct plan *plan); /* way in, loads, what is brought */
void sheet_leftovers(struct text *out, const struct plan *plan);
void sheet_label(struct text *out, const struct plan *plan); /* for the inside of the piece */

/* What things weigh; who lifts what in which step; how it all comes into the room. */
void sheet_weights(struct text *out, const struct plan *plan);
void sheet_lifts(struct text *out, const struct plan *plan);
void sheet_route(struct text *out, const struct plan *plan);
void sheet_strength(struct text *out, const struct plan *plan); /* guidance, no engineering */

/* ---- pictures: a line that says which and what its signs mean, and the cells under it ---- */

void sheet_piece(struct text *out, const struct plan *plan, const struct piece_ask *ask,
                 enum raster_style style);
/* The whole piece as it stands, in characters that every printer has; nothing without boxes. */
void sheet_whole(struct text *out, const struct plan *plan);
/* A face with its joins; where it is tufted its field follows. */
void sheet_face(struct text *out, const struct plan *plan, int64_t box, int64_t side,
                enum raster_style style);
/* A face cut open at one of its edges (draw_section). */
void sheet_section(struct text *out, const struct plan *plan, int64_t box, int64_t side,
                   int64_t edge, enum raster_style style);
/* Every padded face cut open, and every tufting field, in plain characters. */
void sheet_sections(struct text *out, const struct plan *plan);

#endif
