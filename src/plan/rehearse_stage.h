/*
 * The stage of the rehearsal: what stands where by now. Shared by the rehearse_* files only.
 */
#ifndef PLAN_REHEARSE_STAGE_H
#define PLAN_REHEARSE_STAGE_H

#include "plan/rehearse.h"
#include "plan/rehearse_body.h"
#include "plan/steps.h"

/* A block of wood, in the axes of its box. */
struct lump {
    struct solid solid;
    enum entity_kind entity; /* ENTITY_box: a member; ENTITY_facing: a panel */
    int64_t key;
    const char *label;
    int64_t side; /* of a panel; -1 of a member */
    bool laid_on; /* lies there by its own weight */
    size_t since; /* the step that put it there; PLAN_NONE: not yet */
};

/* What one layer covers of one side of one box. */
struct sheet {
    size_t layer; /* into the model's layers */
    int64_t side;
    struct area area;
    bool landing; /* takes the staples of an edge */
    bool own;     /* the layer's own face, or the one opposite */
};

struct staged_box {
    const struct box *box;
    const struct pose *pose;
    double sine, cosine; /* of its lean */
    LIST_OF(struct lump) lumps;
    LIST_OF(struct sheet) sheets;
    size_t framed;
    size_t group;   /* boxes that are joined by now bear one number */
    size_t in_room; /* the step that brought it to its place, with the walls round it */
    size_t legs, nuts, dust, hung;
};

/* The states of a stapled interval, in the order in which it goes through them. */
enum held { HELD_UNSET, HELD_BASTED, HELD_LEFT_OPEN, HELD_STAPLED, HELD_CLOSED };

struct staged_layer {
    const struct layer *layer;
    size_t laid;  /* the step that put it on; PLAN_NONE: not yet */
    size_t fixed; /* the step that placed its staples */
    size_t holed; /* button holes drilled */
    bool sewn, to_be_sewn, slit, buttoned;
};

struct staged_join {
    const struct join *join;
    const struct junction *junction;
    bool left_out;
    size_t dry, drilled, nuts, mapped, patched, located, found, offered, driven;
    size_t first_result; /* into the result's points */
};

struct stage {
    const struct plan *plan;
    const struct model *model;
    struct arena *arena;
    struct rehearsal *result;
    struct staged_box *boxes; /* one for each of the model's, as those that follow */
    struct staged_layer *layers;
    struct staged_join *joins;
    size_t *stocks; /* the step that cut from it */
    size_t *facings;
    enum held *held; /* of each of the plan's intervals */
    size_t *held_since;
    bool *flap_wanted;       /* of each interval: a step of its own closes it */
    struct vector low, high; /* of the whole piece, in the room */
    size_t bought, labelled, moved, set, marked, pushed;
    bool moves, marks; /* there are such steps */
    size_t now;        /* the step that is being done */
    size_t *done;      /* when each step was done: its place in the sequence */
    struct view *view; /* rehearse_look.h: the last look round */
};

/* ---- rehearse_empty.c ---- */

/* The stage of a plan before its first step. Borrows the plan, and lives in the arena. */
void stage_empty(struct stage *stage, const struct plan *plan, struct arena *arena);

/* ---- rehearse_stage.c: looking things up ---- */

size_t stage_box_index(const struct stage *stage, int64_t box);
struct staged_box *stage_box(const struct stage *stage, int64_t box); /* NULL: no such box */
struct staged_layer *stage_layer(const struct stage *stage, int64_t layer);
struct staged_join *stage_join(const struct stage *stage, int64_t join);

static inline int64_t stage_along(struct vector at, int axis)
{
    return axis == AXIS_X ? at.x : axis == AXIS_Y ? at.y : at.z;
}

static inline struct vector stage_moved(struct vector at, int axis, int64_t by)
{
    at.x += axis == AXIS_X ? by : 0;
    at.y += axis == AXIS_Y ? by : 0;
    at.z += axis == AXIS_Z ? by : 0;
    return at;
}

/* Axis and direction of a side's outward normal, the axes of u and v on it. */
struct facing_out {
    int axis, sign, u, v;
};
extern const struct facing_out stage_sides[SIDE_COUNT];

int64_t stage_opposite(int64_t side);
int64_t stage_size(const struct box *box, int axis);

/* Whether the axes of two boxes run along each other, as both stand in the room. */
bool stage_axes_agree(const struct staged_box *a, const struct staged_box *b);

/* A block of one box along the axes of another: as a block where they agree, as a body always. */
struct solid stage_solid_seen(const struct staged_box *from, const struct staged_box *to,
                              const struct solid *solid);
struct body stage_body_seen(const struct staged_box *from, const struct staged_box *to,
                            const struct solid *solid);

/* A layer over a place on a side of a box; NULL when it is bare. `kinds` has a bit for each kind of
 * layer that counts. The outermost is given. */
#define STAGE_PADDING (1u << LAYER_FOAM | 1u << LAYER_BATTING)
#define STAGE_CLOTH \
    (1u << LAYER_LINING | 1u << LAYER_COVER | 1u << LAYER_OUTSIDE_BACK | 1u << LAYER_DUST_COVER)
const struct sheet *stage_over(const struct stage *stage, int64_t box, int64_t side, int64_t u,
                               int64_t v, unsigned kinds);

/* Whether the first layer lies farther out than the second. */
bool stage_is_outer(const struct layer *outer, const struct layer *inner);
bool stage_areas_meet(const struct area *a, const struct area *b);

/* A join that has a box screwed over an area of a side by now; NULL when there is none. */
const struct staged_join *stage_joined_over(const struct stage *stage, int64_t box, int64_t side,
                                            const struct area *area);

/* Cloth over a place that shuts it: neither slit at the point nor, where `opens`, left open for the
 * join. NULL when there is none. `point` PLAN_NONE: no slit helps. */
struct place {
    int64_t box, side, u, v;
    int64_t join;
    size_t point;
    bool opens;
};
const struct sheet *stage_shut_by(const struct stage *stage, const struct place *place);

/* The wall that leaves no room to work on a side of a box by now; 0 for none. */
int64_t stage_wall_at(const struct stage *stage, const struct staged_box *box, int64_t side);

/* ---- places of a point ---- */

/* Where a point shows: on both mating faces, and where its head lies on the outside. */
struct spot {
    int64_t box, side, u, v;
    bool head;
};

#define STAGE_SPOTS 3
size_t stage_spots(const struct stage *stage, const struct staged_join *join, size_t point,
                   struct spot spots[STAGE_SPOTS]);

/* ---- verdicts ---- */

struct verdict stage_fine(const struct stage *stage);
struct verdict stage_lapse(const struct stage *stage, enum lapse lapse);
struct verdict stage_lapse_by(const struct stage *stage, enum lapse lapse, enum entity_kind entity,
                              int64_t key, size_t since);
struct verdict stage_lapse_layer(const struct stage *stage, enum lapse lapse, size_t layer);
void stage_lose(struct stage *stage, enum rehearsed_kind kind, enum entity_kind entity, int64_t key,
                size_t index, struct verdict verdict);

/* ---- rehearse_reach.c ---- */

/* Whether the tool of the junction stands behind the head of a point, and a hand comes to it. */
struct verdict reach_head(const struct stage *stage, const struct staged_join *join, size_t point);

/* The wood that a bolt passes behind a mating face: to the far side of the first member there, or
 * of a board. */
int64_t reach_wood_behind(const struct staged_box *box, int64_t side, struct vector at);

/* ---- rehearse_frame.c ---- */

/* Frame screws of a box, driven one after the other while its members go in: those that no order
 * of its members leaves room for are lost. */
void reach_frame(struct stage *stage, const struct staged_box *box);

/* ---- rehearse_sweep.c ---- */

/* Whether the boxes of a join come together in a straight line. Fine where they stand in each other
 * there: that is told elsewhere. */
struct verdict sweep_together(const struct stage *stage, const struct staged_join *join);

/* ---- what a step does ---- */

typedef void stage_fn(struct stage *stage, const struct step *step);

stage_fn do_cut, do_buy, do_label, do_frame, do_panel, do_record, do_move, do_mark, do_set,
    do_push;                                                               /* rehearse_wood.c */
stage_fn do_insert, do_nuts, do_cleat, do_hang, do_hinge, do_leg;          /* rehearse_wood.c */
stage_fn do_sew, do_tuft, do_lay, do_cover, do_staple, do_slit, do_button; /* rehearse_cloth.c */
stage_fn do_flap, do_dust;
stage_fn do_dry, do_drill, do_map, do_patch, do_locate, do_find, do_offer, do_drive,
    do_fix; /* rehearse_point.c */

/* rehearse_cloth.c: a join shuts over what lies between its faces. */
void cloth_shut_in(struct stage *stage, const struct staged_join *join);

/* rehearse_point.c: a proof that is lost for all points of a join. */
void point_lose(struct stage *stage, int64_t join, enum proof proof, struct verdict verdict);

/* What is left undone at the end. */
void cloth_end(struct stage *stage);
void point_end(struct stage *stage);

#endif
