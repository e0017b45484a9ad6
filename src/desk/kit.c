#include "desk/kit.h"

#include <assert.h>
#include <string.h>

/* ---- stock ---- */

struct kit_entry {
    const char *name[2]; /* by enum units */
    enum stock_word kind;
    bool any; /* any stock of the kind will do */
    int64_t thickness[2];
    int64_t width[2];
    int64_t length[2];
    int64_t gauge;
    enum nature_word nature;
};

#define BOTH(inch, mm)           \
    {                            \
        KIT_IN(inch), KIT_MM(mm) \
    }

/* Usual sizes: common practice, no source, but for the dressed sections (American Softwood Lumber
 * Standard, PS 20). Cloth, batting and foam differ from shop to shop: the maker measures. */
/* clang-format off */
static const struct kit_entry entries[KIT_STOCKS] = {
    [KIT_STUD]         = {{"2x3 stick", "38 x 63 stick"},           STOCK_STICK,   false, BOTH(1.5, 38),    BOTH(2.5, 63),  {0},             0,  NATURE_PLAIN},
    [KIT_SQUARE]       = {{"2x2 stick", "38 x 38 stick"},           STOCK_STICK,   false, BOTH(1.5, 38),    BOTH(1.5, 38),  {0},             0,  NATURE_PLAIN},
    [KIT_THIN_PANEL]   = {{"Plywood 1/2 in", "Plywood 12 mm"},      STOCK_SHEET,   false, BOTH(0.5, 12),    {0},            {0},             0,  NATURE_PLAIN},
    [KIT_THICK_PANEL]  = {{"Plywood 3/4 in", "Plywood 18 mm"},      STOCK_SHEET,   false, BOTH(0.75, 18),   {0},            {0},             0,  NATURE_PLAIN},
    [KIT_THIN_FOAM]    = {{"Foam 2 in", "Foam 50 mm"},              STOCK_FOAM,    false, BOTH(2, 50),      {0},            {0},             0,  NATURE_PLAIN},
    [KIT_THICK_FOAM]   = {{"Foam 3 in", "Foam 75 mm"},              STOCK_FOAM,    false, BOTH(3, 75),      {0},            {0},             0,  NATURE_PLAIN},
    [KIT_CUSHION_FOAM] = {{"Foam 4 in", "Foam 100 mm"},             STOCK_FOAM,    false, BOTH(4, 100),     {0},            {0},             0,  NATURE_PLAIN},
    [KIT_BATTING]      = {{"Batting 1/2 in", "Batting 12 mm"},      STOCK_BATTING, true,  BOTH(0.5, 12),    BOTH(48, 1500), {0},             0,  NATURE_PLAIN},
    [KIT_COVER]        = {{"Cover cloth", "Cover cloth"},           STOCK_CLOTH,   true,  BOTH(0.05, 1.2),  BOTH(54, 1400), {0},             0,  NATURE_PLAIN},
    [KIT_LINING]       = {{"Lining cloth", "Lining cloth"},         STOCK_CLOTH,   false, BOTH(0.015, 0.4), BOTH(60, 1500), {0},             0,  NATURE_PLAIN},
    [KIT_LONG_SCREW]   = {{"Screws #8 x 3", "Screws 4 x 80"},       STOCK_SCREW,   false, {0},              {0},            BOTH(3, 80),     8,  NATURE_PLAIN},
    [KIT_PANEL_SCREW]  = {{"Screws #8 x 1-1/4", "Screws 4 x 30"},   STOCK_SCREW,   false, {0},              {0},            BOTH(1.25, 30),  8,  NATURE_PLAIN},
    [KIT_DECK_SCREW]   = {{"Screws #8 x 1-1/2", "Screws 4 x 40"},   STOCK_SCREW,   false, {0},              {0},            BOTH(1.5, 40),   8,  NATURE_PLAIN},
    [KIT_JOIN_SCREW]   = {{"Screws #10 x 3", "Screws 5 x 80"},      STOCK_SCREW,   false, {0},              {0},            BOTH(3, 80),     10, NATURE_PLAIN},
    [KIT_DEEP_SCREW]   = {{"Screws #10 x 4", "Screws 5 x 100"},     STOCK_SCREW,   false, {0},              {0},            BOTH(4, 100),    10, NATURE_PLAIN},
    [KIT_STAPLE]       = {{"Staples 3/8 in", "Staples 10 mm"},      STOCK_STAPLE,  true,  {0},              {0},            BOTH(0.375, 10), 0,  NATURE_PLAIN},
    [KIT_SPRAY]        = {{"Spray glue", "Spray glue"},             STOCK_SPRAY,   true,  {0},              {0},            {0},             0,  NATURE_PLAIN},
    [KIT_GLUE]         = {{"Wood glue", "Wood glue"},               STOCK_GLUE,    true,  {0},              {0},            {0},             0,  NATURE_PLAIN},
    [KIT_THREAD]       = {{"Thread", "Thread"},                     STOCK_CORD,    false, {0},              {0},            {0},             0,  NATURE_THREAD},
    [KIT_STITCHING]    = {{"Stitching thread", "Stitching thread"}, STOCK_CORD,    false, {0},              {0},            {0},             0,  NATURE_STITCHING},
    [KIT_CARD]         = {{"Card strip", "Card strip"},             STOCK_STRIP,   false, {0},              BOTH(0.5, 12),  {0},             0,  NATURE_CARD},
    [KIT_TACK_STRIP]   = {{"Tack strip", "Tack strip"},             STOCK_STRIP,   false, {0},              {0},            {0},             0,  NATURE_TACK_STRIP},
};
/* clang-format on */

#define SPRAY_COVERAGE INT64_C(1858061) /* 20 ft2 in mm2 */

static bool entry_fits(const struct kit_entry *entry, enum units units, const struct stock *stock)
{
    if (stock->kind != (int64_t)entry->kind)
        return false;
    if (strcmp(stock->name, entry->name[units]) == 0)
        return true;
    if (entry->any || entry->nature != NATURE_PLAIN)
        return stock->nature == (int64_t)entry->nature;
    return stock->kind != STOCK_CLOTH && stock->thickness == entry->thickness[units] &&
           stock->length == entry->length[units] && stock->gauge == entry->gauge &&
           (stock->kind != STOCK_STICK || stock->width == entry->width[units]);
}

static int64_t entry_find(const struct kit *kit, const struct kit_entry *entry)
{
    for (size_t i = 0; i < kit->draft->stocks.count; i++) {
        if (entry_fits(entry, kit->units, &kit->draft->stocks.at[i]))
            return kit->draft->stocks.at[i].key;
    }
    return 0;
}

static int64_t entry_add(struct kit *kit, const struct kit_entry *entry)
{
    struct stock *stock = MODEL_ADD(kit->draft, stock);
    stock->name = entry->name[kit->units];
    stock->kind = entry->kind;
    stock->thickness = entry->thickness[kit->units];
    stock->width = entry->width[kit->units];
    stock->length = entry->length[kit->units];
    stock->gauge = entry->gauge;
    stock->nature = entry->nature;
    if (entry->kind == STOCK_SPRAY)
        stock->coverage = SPRAY_COVERAGE;
    return stock->key;
}

void kit_open(struct kit *kit, struct model *draft)
{
    *kit = (struct kit){.draft = draft, .units = model_units(draft)};
}

int64_t kit_stock(struct kit *kit, enum kit_stock_name name)
{
    int64_t *key = &kit->stock[name];
    if (!*key)
        *key = entry_find(kit, &entries[name]);
    if (!*key)
        *key = entry_add(kit, &entries[name]);
    return *key;
}

int64_t kit_pick(const struct kit *kit, int64_t inch, int64_t mm)
{
    return kit->units == UNITS_INCH ? inch : mm;
}

void kit_trade(struct kit *kit, const char *name, const char *value)
{
    struct build_value *own = MODEL_ADD(kit->draft, build_value);
    own->name = name;
    own->value = value;
}

/* ---- items ---- */

struct box *kit_box(struct kit *kit, const char *name, enum frame_word frame, const int64_t size[3])
{
    struct box *box = MODEL_ADD(kit->draft, box);
    box->name = name;
    box->frame = frame;
    box->width = size[0];
    box->depth = size[1];
    box->height = size[2];
    if (frame == FRAME_CRATE)
        box->through = THROUGH_RAILS;
    return box;
}

struct box *kit_framed(struct kit *kit, const char *name, enum frame_word frame,
                       enum kit_stock_name stick, const int64_t size[3])
{
    struct box *box = kit_box(kit, name, frame, size);
    kit_stock(kit, KIT_LONG_SCREW);
    kit_stock(kit, KIT_GLUE);
    box->stick = kit_stock(kit, stick);
    return box;
}

struct facing *kit_facing(struct kit *kit, int64_t box, enum side_word side,
                          enum kit_stock_name stock, enum use_word use)
{
    struct facing *facing = MODEL_ADD(kit->draft, facing);
    facing->box = box;
    facing->side = side;
    facing->stock = kit_stock(kit, stock);
    kit_stock(kit, stock == KIT_THICK_PANEL ? KIT_DECK_SCREW : KIT_PANEL_SCREW);
    facing->use = use;
    return facing;
}

/* What a layer is sewn and closed with, beside the staples. */
static void layer_notions(struct kit *kit, enum layer_word kind)
{
    if (kind == LAYER_COVER)
        kit_stock(kit, KIT_THREAD);
    if (kind == LAYER_OUTSIDE_BACK) {
        kit_stock(kit, KIT_CARD);
        kit_stock(kit, KIT_TACK_STRIP);
        kit_stock(kit, KIT_STITCHING);
    }
}

struct layer *kit_layer(struct kit *kit, int64_t box, enum layer_word kind, enum shape_word shape,
                        enum side_word side)
{
    static const enum kit_stock_name stocks[LAYER_COUNT] = {
        [LAYER_BATTING] = KIT_BATTING,    [LAYER_LINING] = KIT_LINING,
        [LAYER_COVER] = KIT_COVER,        [LAYER_WELT] = KIT_COVER,
        [LAYER_OUTSIDE_BACK] = KIT_COVER, [LAYER_DUST_COVER] = KIT_LINING,
        [LAYER_TRIM] = KIT_COVER,
    };
    assert(kind != LAYER_FOAM);
    struct layer *layer = MODEL_ADD(kit->draft, layer);
    layer->box = box;
    layer->kind = kind;
    layer->shape = shape;
    layer->side = side;
    layer->stock = kit_stock(kit, stocks[kind]);
    kit_stock(kit, KIT_STAPLE);
    layer_notions(kit, kind);
    return layer;
}

struct layer *kit_foam(struct kit *kit, int64_t box, enum side_word side, enum kit_stock_name stock)
{
    struct layer *layer = MODEL_ADD(kit->draft, layer);
    layer->box = box;
    layer->side = side;
    layer->stock = kit_stock(kit, stock);
    kit_stock(kit, KIT_SPRAY);
    return layer;
}

void kit_endings(struct layer *layer, const enum ending_word endings[4])
{
    layer->left = endings[EDGE_LEFT];
    layer->right = endings[EDGE_RIGHT];
    layer->top = endings[EDGE_TOP];
    layer->bottom = endings[EDGE_BOTTOM];
}

struct join *kit_join(struct kit *kit, const char *name, int64_t box_a, enum side_word side_a,
                      int64_t box_b, enum side_word side_b)
{
    struct join *join = MODEL_ADD(kit->draft, join);
    join->name = name;
    join->box_a = box_a;
    join->side_a = side_a;
    join->box_b = box_b;
    join->side_b = side_b;
    return join;
}

void kit_upholster(struct kit *kit, int64_t box, enum side_word side, enum kit_stock_name foam)
{
    static const enum ending_word down[4] = {ENDING_SIDE, ENDING_SIDE, ENDING_SIDE, ENDING_SIDE};
    kit_foam(kit, box, side, foam);
    struct layer *batting = kit_layer(kit, box, LAYER_BATTING, SHAPE_WRAPPED, side);
    batting->rank = 2;
    kit_endings(batting, down);
    struct layer *cover = kit_layer(kit, box, LAYER_COVER, SHAPE_WRAPPED, side);
    cover->rank = 3;
    cover->direction = DIRECTION_ACROSS; /* long and low: no seam where the cloth may be turned */
}
