/*
 * The choice of a screw, made in one place so that a frame, a panel and a join of the same gauge
 * and length count into the same box from the shop.
 *
 * 1  A kind stands in screw_kinds once for its gauge, length, stock and pilot; its index lasts.
 * 2  No screw is chosen that leaves less than the tip margin of wood before its tip.
 * 3  The choice depends on the need and the workshop alone, not on what was chosen before.
 */
#include "plan/screws.h"

#include "plan/cures.h"
#include "plan/findings.h"
#include "plan/geometry.h"

#include <assert.h>
#include <inttypes.h>
#include <stdio.h>

/* ---- what the trade sells ---- */

#define IN64(n) ((n)*LENGTH_64TH)
#define MM10(n) ((n)*LENGTH_MM / 10)

/*
 * Clearance in inches is (n + 3) / 64 for gauge n, the rule of a reprinted furniture-making
 * textbook; metric sizes and pilots are common practice: a pilot of about 7/8 of the root in
 * softwood, about the root in hardwood.
 */
static const struct screw_bits bits[] = {
    {6, MM10(35), IN64(9), MM10(35), {IN64(5), IN64(6)}, {MM10(20), MM10(25)}},
    {8, MM10(40), IN64(11), MM10(45), {IN64(6), IN64(7)}, {MM10(25), MM10(28)}},
    {10, MM10(50), IN64(13), MM10(50), {IN64(7), IN64(8)}, {MM10(28), MM10(32)}},
    {12, MM10(55), IN64(15), MM10(55), {IN64(8), IN64(9)}, {MM10(32), MM10(35)}},
    {14, MM10(60), IN64(17), MM10(65), {IN64(9), IN64(10)}, {MM10(35), MM10(40)}},
};

/* Lengths that shops keep, common practice; in 64ths of an inch and in millimetres. */
static const short lengths_6[] = {48, 64, 80, 104};
static const short lengths_8[] = {48, 64, 80, 96, 104, 128, 160, 192};
static const short lengths_10[] = {96, 128, 160, 192, 224, 256};
static const short lengths_mm[] = {16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 120};

struct usual {
    const short *at;
    size_t count;
    int64_t unit;
};

#define USUAL(array, unit) ((struct usual){array, sizeof(array) / sizeof *(array), unit})

static struct usual usual_lengths(enum units units, int64_t gauge)
{
    if (units == UNITS_MM)
        return USUAL(lengths_mm, LENGTH_MM);
    if (gauge <= 6)
        return USUAL(lengths_6, LENGTH_64TH);
    return gauge <= 8 ? USUAL(lengths_8, LENGTH_64TH) : USUAL(lengths_10, LENGTH_64TH);
}

int64_t screw_gauge_diameter(int64_t gauge)
{
    return whole_divide_even((60 + 13 * gauge) * LENGTH_INCH, 1000);
}

int64_t screw_edge_margin(const int64_t *value, int64_t diameter)
{
    int64_t diameters = 0;

    (void)whole_share(diameter, value[TRADE_EDGE_MIN_DIAMETERS], 1000000, &diameters);
    return length_larger(diameters, value[TRADE_EDGE_MIN]);
}

const struct screw_bits *screw_bits_of(int64_t gauge)
{
    for (size_t i = 0; i < sizeof bits / sizeof *bits; i++)
        if (gauge <= bits[i].gauge)
            return gauge + 1 < bits[0].gauge ? NULL : &bits[i];
    return NULL;
}

/* ---- the choice ---- */

struct sold {
    int64_t length;
    int64_t gauge;
    int64_t diameter; /* 0: by the gauge */
    int64_t stock;
};

struct sold_list {
    LIST_OF(struct sold) of;
};

#define SAME_DIAMETER MM10(3)

static bool is_of_gauge(const struct stock *stock, int64_t gauge)
{
    int64_t off = stock->diameter - screw_gauge_diameter(gauge);

    if (stock->gauge)
        return stock->gauge == gauge;
    return stock->diameter && -SAME_DIAMETER <= off && off <= SAME_DIAMETER;
}

static bool is_offered(const struct stock *stock, const struct screw_need *need)
{
    if (stock->kind != STOCK_SCREW || stock->length <= 0)
        return false;
    return need->stock ? stock->key == need->stock : is_of_gauge(stock, need->gauge);
}

static void collect_stock(const struct planning *planning, const struct screw_need *need,
                          struct sold_list *list)
{
    for (size_t i = 0; i < planning->model->stocks.count; i++) {
        const struct stock *stock = &planning->model->stocks.at[i];

        if (is_offered(stock, need))
            *LIST_ADD(planning->arena, &list->of) =
                (struct sold){stock->length, stock->gauge, stock->diameter, stock->key};
    }
}

static void collect_usual(const struct planning *planning, const struct screw_need *need,
                          struct sold_list *list)
{
    struct usual usual = usual_lengths(model_units(planning->model), need->gauge);

    for (size_t i = 0; i < usual.count; i++)
        *LIST_ADD(planning->arena, &list->of) =
            (struct sold){usual.at[i] * usual.unit, need->gauge, 0, 0};
}

/* The first of the shortest (of the longest) from `least` to `most`. */
static const struct sold *pick(const struct sold_list *list, int64_t least, int64_t most,
                               bool longest)
{
    const struct sold *best = NULL;

    for (size_t i = 0; i < list->of.count; i++) {
        const struct sold *sold = &list->of.at[i];

        if (sold->length < least || sold->length > most)
            continue;
        if (!best || (longest ? sold->length > best->length : sold->length < best->length))
            best = sold;
    }
    return best;
}

static void fill_bits(struct screw_kind *kind, enum units units, int64_t gauge, int64_t wood)
{
    const struct screw_bits *found = screw_bits_of(gauge);

    assert(wood >= 0 && wood < (int64_t)(sizeof found->pilot / sizeof *found->pilot));
    if (!found)
        return;
    kind->pilot = units == UNITS_MM ? found->pilot_metric[wood] : found->pilot[wood];
    kind->clearance = units == UNITS_MM ? found->clearance_metric : found->clearance;
    if (units == UNITS_MM && !kind->diameter)
        kind->diameter = found->metric;
}

static size_t kind_of(struct planning *planning, const struct screw_need *need,
                      const struct sold *sold)
{
    struct plan *plan = planning->plan;
    struct screw_kind wanted = {.gauge = sold->gauge,
                                .length = sold->length,
                                .diameter = sold->gauge ? 0 : sold->diameter,
                                .stock = sold->stock};

    fill_bits(&wanted, model_units(planning->model), sold->gauge ? sold->gauge : need->gauge,
              need->wood);
    if (!wanted.diameter)
        wanted.diameter = screw_gauge_diameter(sold->gauge);
    for (size_t i = 0; i < plan->screw_kinds.count; i++) {
        const struct screw_kind *kind = &plan->screw_kinds.at[i];

        if (kind->gauge == wanted.gauge && kind->length == wanted.length &&
            kind->stock == wanted.stock && kind->diameter == wanted.diameter &&
            kind->pilot == wanted.pilot)
            return i;
    }
    *LIST_ADD(planning->arena, &plan->screw_kinds) = wanted;
    return plan->screw_kinds.count - 1;
}

struct screw_choice screw_choose(struct planning *planning, const struct screw_need *need)
{
    const int64_t *value = planning->value;
    int64_t before = need->passed + need->cloth;
    int64_t margin = value[need->padded ? TRADE_SCREW_TIP_MARGIN_PADDED : TRADE_SCREW_TIP_MARGIN];
    int64_t bite = value[need->end_grain ? TRADE_SCREW_BITE_END
                         : need->panel   ? TRADE_SCREW_BITE_PANEL
                                         : TRADE_SCREW_BITE_SIDE];
    int64_t least = value[need->end_grain ? TRADE_SCREW_BITE_END_MIN : TRADE_SCREW_BITE_SIDE_MIN];
    int64_t limit = before + need->receiving - margin;
    struct screw_choice choice = {.fit = SCREW_FIT_GOOD,
                                  .kind = PLAN_NONE,
                                  .before = before,
                                  .need = before + bite,
                                  .limit = limit,
                                  .least_bite = least,
                                  .gauge = need->gauge,
                                  .stock = need->stock};
    struct sold_list list = {0};
    const struct sold *sold;

    collect_stock(planning, need, &list);
    if (list.of.count == 0 && !need->stock)
        collect_usual(planning, need, &list);
    sold = pick(&list, before + bite, limit, false);
    if (!sold)
        sold = pick(&list, before + least, limit, false);
    if (!sold) {
        choice.fit = SCREW_FIT_SHORT;
        sold = pick(&list, before + 1, limit, true);
    }
    if (!sold) {
        choice.fit = SCREW_FIT_NONE;
        return choice;
    }
    choice.kind = kind_of(planning, need, sold);
    choice.bite = sold->length - before;
    assert(choice.bite > 0 && choice.bite <= need->receiving);
    return choice;
}

/* "#10", or in millimetre work the diameter that it is sold as, "5 mm" or "5". */
static const char *gauge_words(const struct planning *planning, const struct screw_choice *choice,
                               bool with_unit)
{
    const struct stock *stock = MODEL_FIND(planning->model, stock, choice->stock);
    int64_t gauge = stock ? stock->gauge : choice->gauge;
    const struct screw_bits *found = screw_bits_of(gauge);
    int64_t diameter = gauge && found ? found->metric : stock ? stock->diameter : 0;
    char printed[QUANTITY_TEXT];

    if (gauge && model_units(planning->model) == UNITS_INCH)
        return arena_format(planning->arena, "#%" PRId64, gauge);
    if (with_unit)
        quantity_print_unit(printed, QUANTITY_LENGTH, UNITS_MM, diameter);
    else
        quantity_print(printed, QUANTITY_LENGTH, UNITS_MM, diameter);
    return arena_text(planning->arena, printed);
}

/* A workshop that has one screw of a gauge is asked for no other until it has one: the shortest
 * usual one that fits. */
static void offer_usual(struct planning *planning, const struct screw_choice *choice,
                        struct finding *finding)
{
    enum units units = model_units(planning->model);
    struct screw_need need = {.gauge = choice->gauge};
    struct sold_list list = {0};
    const struct sold *sold;
    char length[QUANTITY_TEXT];
    struct cure_draft cure;
    const char *name;

    collect_usual(planning, &need, &list);
    sold = pick(&list, choice->need, choice->limit, false);
    if (choice->stock || !sold)
        return;
    quantity_print(length, QUANTITY_LENGTH, units, sold->length);
    name = arena_format(planning->arena, "Screws %s x %s", gauge_words(planning, choice, false),
                        length);
    cure = cure_begin(planning, arena_format(planning->arena, "Buy %s", name));
    cure_word(&cure, ENTITY_stock, 0, "name", name);
    cure_word(&cure, ENTITY_stock, 0, "kind", words_stock.at[STOCK_SCREW].name);
    cure_count(&cure, ENTITY_stock, 0, "gauge", choice->gauge);
    cure_length(&cure, ENTITY_stock, 0, "length", sold->length);
    cure_offer(&cure, finding);
}

void screw_choice_tell(struct planning *planning, const struct screw_choice *choice,
                       enum entity_kind entity, int64_t key)
{
    struct finding *finding;

    if (choice->fit == SCREW_FIT_GOOD)
        return;
    if (choice->fit == SCREW_FIT_SHORT) {
        finding = finding_add(planning, FINDING_SCREW_SHORT_BITE, entity, key);
        argument_length(finding, 0, choice->bite);
        argument_length(finding, 1, choice->least_bite);
        return;
    }
    assert(choice->fit == SCREW_FIT_NONE && choice->kind == PLAN_NONE);
    finding = finding_add(planning, FINDING_SCREW_NONE_FITS, entity, key);
    argument_length(finding, 0, choice->need);
    argument_length(finding, 1, choice->limit);
    argument_text(finding, 2, gauge_words(planning, choice, true));
    argument_length(finding, 3, choice->before);
    offer_usual(planning, choice, finding);
}

void screw_count(struct planning *planning, size_t kind, enum screw_use use, int64_t count)
{
    struct plan *plan = planning->plan;

    assert(kind < plan->screw_kinds.count && count > 0);
    assert((int)use < SCREW_USES);
    plan->screw_kinds.at[kind].count += count;
    plan->screw_kinds.at[kind].count_by_use[use] += count;
}

size_t screw_add(struct planning *planning, const struct screw *screw)
{
    struct plan *plan = planning->plan;

    assert(screw->sign == 1 || screw->sign == -1);
    screw_count(planning, screw->kind, screw->use, 1);
    *LIST_ADD(planning->arena, &plan->screws) = *screw;
    return plan->screws.count - 1;
}

char *screw_kind_print(char buffer[SCREW_TEXT], const struct screw_kind *kind, enum units units)
{
    char length[QUANTITY_TEXT];
    char diameter[QUANTITY_TEXT];

    quantity_print_unit(length, QUANTITY_LENGTH, units, kind->length);
    if (kind->gauge && units == UNITS_INCH) {
        snprintf(buffer, SCREW_TEXT, "#%" PRId64 " x %s", kind->gauge, length);
        return buffer;
    }
    quantity_print(diameter, QUANTITY_LENGTH, units, kind->diameter);
    snprintf(buffer, SCREW_TEXT, "%s x %s", diameter, length);
    return buffer;
}

/* ---- distances ---- */

struct screw_axis screw_axis_of(const struct plan *plan, const struct screw *screw)
{
    assert(screw->kind < plan->screw_kinds.count);

    const struct screw_kind *kind = &plan->screw_kinds.at[screw->kind];
    struct screw_axis axis = {screw->at, screw->at, kind->diameter};

    vector_set(&axis.tip, screw->axis,
               vector_along(screw->at, screw->axis) + screw->sign * kind->length);
    return axis;
}

/* Between the two intervals from p to q (either way round); 0 where they touch. */
static int64_t gap_between(int64_t p, int64_t q, int64_t r, int64_t s)
{
    int64_t gap = length_larger(length_smaller(p, q), length_smaller(r, s)) -
                  length_smaller(length_larger(p, q), length_larger(r, s));

    return length_larger(gap, 0);
}

static bool is_along_an_axis(const struct screw_axis *axis)
{
    return (axis->head.x != axis->tip.x) + (axis->head.y != axis->tip.y) +
               (axis->head.z != axis->tip.z) <=
           1;
}

/* A segment along an axis is a box without thickness, and two such boxes are as far apart as their
 * gaps along the axes say. */
static int64_t square_along_axes(const struct screw_axis *a, const struct screw_axis *b)
{
    int64_t x = gap_between(a->head.x, a->tip.x, b->head.x, b->tip.x);
    int64_t y = gap_between(a->head.y, a->tip.y, b->head.y, b->tip.y);
    int64_t z = gap_between(a->head.z, a->tip.z, b->head.z, b->tip.z);

    return x * x + y * y + z * z;
}

struct line {
    double x, y, z;
};

static struct line line_between(struct vector from, struct vector to)
{
    return (struct line){(double)(to.x - from.x), (double)(to.y - from.y), (double)(to.z - from.z)};
}

static double dot(struct line a, struct line b)
{
    return a.x * b.x + a.y * b.y + a.z * b.z;
}

static double to_unit(double at)
{
    return at < 0 ? 0 : at > 1 ? 1 : at;
}

/* Two segments any way: the nearest places of their lines, each drawn back to its segment. */
static int64_t square_oblique(const struct screw_axis *a, const struct screw_axis *b)
{
    struct line along_a = line_between(a->head, a->tip);
    struct line along_b = line_between(b->head, b->tip);
    struct line off = line_between(b->head, a->head);
    double aa = dot(along_a, along_a);
    double bb = dot(along_b, along_b);
    double ab = dot(along_a, along_b);
    double apart = aa * bb - ab * ab;
    double on_a =
        apart > 0 ? to_unit((ab * dot(along_b, off) - dot(along_a, off) * bb) / apart) : 0;
    double on_b = bb > 0 ? to_unit((ab * on_a + dot(along_b, off)) / bb) : 0;

    on_a = aa > 0 ? to_unit((ab * on_b - dot(along_a, off)) / aa) : 0;
    struct line between = {off.x + along_a.x * on_a - along_b.x * on_b,
                           off.y + along_a.y * on_a - along_b.y * on_b,
                           off.z + along_a.z * on_a - along_b.z * on_b};
    return (int64_t)dot(between, between);
}

static int64_t square_between(const struct screw_axis *a, const struct screw_axis *b)
{
    return is_along_an_axis(a) && is_along_an_axis(b) ? square_along_axes(a, b)
                                                      : square_oblique(a, b);
}

static int64_t both_radii(const struct screw_axis *a, const struct screw_axis *b)
{
    return (a->diameter + b->diameter + 1) / 2;
}

int64_t screw_clear(const struct screw_axis *a, const struct screw_axis *b)
{
    return whole_root(square_between(a, b)) - both_radii(a, b);
}

/* A root rounded down is at least a whole number when the square is at least that one's. Most are
 * too far from each other along one axis already. */
bool screw_clears(const struct screw_axis *a, const struct screw_axis *b, int64_t least)
{
    int64_t apart = least + both_radii(a, b);

    return apart <= 0 || gap_between(a->head.x, a->tip.x, b->head.x, b->tip.x) > apart ||
           gap_between(a->head.y, a->tip.y, b->head.y, b->tip.y) > apart ||
           gap_between(a->head.z, a->tip.z, b->head.z, b->tip.z) > apart ||
           square_between(a, b) >= apart * apart;
}
