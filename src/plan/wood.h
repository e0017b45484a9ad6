/*
 * What the passes about wood, and those after them, ask of a box: its sections, the room for its
 * frame, where its facings lie and which members stand where.
 */
#ifndef PLAN_WOOD_H
#define PLAN_WOOD_H

#include "plan/geometry.h"
#include "plan/pass.h"

/* ---- sections.c ---- */

struct section {
    int64_t thin, wide; /* 0 when not known */
};

/*
 * The section of a stick: as measured where thickness and width are given; else, where its name
 * starts with a nominal size ("2x3 stud"), the dressed size of PS 20 softwood.
 */
struct section stick_section(const struct model *model, int64_t stock);

/*
 * Board feet of a length of stick, in thousandths, by the nominal size that its name starts with;
 * formula wood.board_feet: thickness x width x length / 144, all in inches. 0 for another name.
 */
int64_t stick_board_feet(const char *name, int64_t length);

/* How hard a stick or sheet is (enum wood_word): soft where nobody says. */
int64_t stock_wood(const struct model *model, int64_t stock);

/* Sheets measure up to 1/16 in less than they are sold as. */
#define SHEET_UNDERSIZE (LENGTH_INCH / 16)

/* Thickness of a sheet: as measured, else as sold. */
int64_t sheet_thickness(const struct model *model, int64_t stock);

/* The size of a member across each axis; along its own axis 0. */
struct vector section_across(const struct box *box, struct section section, int64_t setting,
                             int64_t axis);

/* The widest clear gap between supports that is good for a panel of this use and thickness. */
int64_t span_allowed(const int64_t *value, int64_t use, int64_t thickness);

/* ---- panel.c ---- */

/* The box without its fixed facings, where members stand; may be empty (a board). */
struct solid frame_space(const struct model *model, const struct box *box);

/* ---- frame.c ---- */

/* The axis that a frame's flat side looks along: of a ladder's or board's main side, y of a crate.
 */
int frame_normal(const struct box *box);

/* Does the member lie behind the panel with its side against it? */
bool member_bears(const struct plan_member *member, const struct panel *panel);

/* Was it set to back the curved edge of a panel between posts (frame_edge.c)? It takes a screw of
 * that panel, and carries nothing else. */
bool member_backs_edge(const struct plan_member *member);

/* The outline of a member on the panel's face, cut to the panel; may be empty. */
struct area member_under(const struct plan_member *member, const struct panel *panel);

#endif
