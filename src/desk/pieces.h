/* The starter pieces: each makes its boxes, panels, layers and joins; sizes in the order of its
 * questions in starters.c. */
#ifndef DESK_PIECES_H
#define DESK_PIECES_H

#include "desk/kit.h"

void piece_corner_banquette(struct kit *kit, const int64_t *sizes);
void piece_storage_bench(struct kit *kit, const int64_t *sizes);
void piece_wing_headboard(struct kit *kit, const int64_t *sizes);
void piece_seat_cushion(struct kit *kit, const int64_t *sizes);
void piece_blank(struct kit *kit, const int64_t *sizes);
void piece_bed_base(struct kit *kit, const int64_t *sizes);

#endif
