/*
 * Pieces lie on the saw until nothing of them is left to cut. A stroke cuts one child off a piece;
 * which piece and which child comes next is chosen so that the fence stands: a setting is used up
 * before the next one is set, and a setting that nothing hidden will need again comes first. The
 * order in which children are cut off is the order in which they lie.
 *
 *  1  a gap is never cut off; it is what is left of its node at last, at the far edge
 *  2  a node without a gap keeps one child, which needs no stroke of its own
 *  3  all pieces are rectangles in job lengths, the kerf beyond them not included
 */
#include "cut/strokes.h"

#include "cut/fences.h"
#include "cut/recount.h"

#include <assert.h>
#include <string.h>

void strokes_init(struct strokes *strokes, const struct sheet_job *job, struct arena *arena,
                  const struct trees *trees)
{
    size_t most = 2 * (size_t)trees->node_most + 2; /* recount.h makes some anew */

    *strokes = (struct strokes){.job = job,
                                .arena = arena,
                                .branches = ARENA_MANY(arena, struct branch, most),
                                .branch_most = (int32_t)most,
                                .done = ARENA_MANY(arena, bool, most),
                                .pieces = ARENA_MANY(arena, struct saw_piece, most),
                                .recount = recount_make(arena),
                                .children = ARENA_MANY(arena, int32_t, most),
                                .widths = ARENA_MANY(arena, int32_t, most),
                                .marks = ARENA_MANY(arena, bool, most),
                                .needs = ARENA_MANY(arena, int64_t, most),
                                .times = ARENA_MANY(arena, int32_t, most)};
}

/* ---- branches ---- */

int32_t strokes_branch(struct strokes *strokes, const int32_t size[2])
{
    int32_t index = strokes->branch_count++;

    assert(index < strokes->branch_most);
    strokes->done[index] = false;
    strokes->branches[index] = (struct branch){.size = {size[0], size[1]},
                                               .first = TREE_NONE,
                                               .next = TREE_NONE,
                                               .part = TREE_NONE,
                                               .way = TREE_NONE};
    return index;
}

static int32_t branch_of(struct strokes *strokes, const struct trees *trees, int32_t node)
{
    const struct tree_node *at = &trees->nodes[node];
    int32_t index = strokes_branch(strokes, at->size);

    strokes->branches[index].part = at->part;
    strokes->branches[index].turned = at->turned;
    strokes->branches[index].way = at->way;
    for (int32_t child = at->way == TREE_NONE ? TREE_NONE : at->first; child != TREE_NONE;
         child = trees->nodes[child].next) {
        int32_t branch = branch_of(strokes, trees, child);

        strokes->branches[branch].next = strokes->branches[index].first;
        strokes->branches[index].first = branch;
    }
    return index;
}

/* Whether a child of a piece has to be cut off: not a gap, and not the last that is left. */
static bool is_due(const struct strokes *strokes, const struct saw_piece *piece, int32_t child)
{
    return !strokes->done[child] && piece->left > 1 && !branch_is_gap(&strokes->branches[child]);
}

/* ---- fence settings ---- */

static int64_t setting_of(const struct strokes *strokes, int32_t child, int way)
{
    assert(way == 0 || way == 1);
    return strokes->branches[child].size[way] * strokes->job->unit - strokes->job->job->kerf;
}

static int32_t *times_of(struct strokes *strokes, int64_t setting)
{
    for (int32_t i = 0; i < strokes->need_count; i++)
        if (strokes->needs[i] == setting)
            return &strokes->times[i];
    strokes->needs[strokes->need_count] = setting;
    strokes->times[strokes->need_count] = 0;
    return &strokes->times[strokes->need_count++];
}

/* Counts the settings that children of a branch and of those below it, hidden ones included, may
 * need. */
static void count_needs(struct strokes *strokes, int32_t index)
{
    const struct branch *branch = &strokes->branches[index];

    for (int32_t child = branch->first; child != TREE_NONE; child = strokes->branches[child].next) {
        if (branch->way != TREE_NONE && !branch_is_gap(&strokes->branches[child]))
            ++*times_of(strokes, setting_of(strokes, child, branch->way));
        count_needs(strokes, child);
    }
}

/* How many children on the saw are due with a setting. */
static int32_t due_now(const struct strokes *strokes, int64_t setting)
{
    int32_t due = 0;

    for (int32_t p = 0; p < strokes->piece_count; p++) {
        const struct saw_piece *piece = &strokes->pieces[p];
        const struct branch *branch = &strokes->branches[piece->branch];

        for (int32_t child = branch->first; child != TREE_NONE;
             child = strokes->branches[child].next)
            due +=
                is_due(strokes, piece, child) && setting_of(strokes, child, branch->way) == setting;
    }
    return due;
}

/* ---- the next stroke ---- */

struct next_stroke {
    int32_t piece, child;
};

static bool find_due(const struct strokes *strokes, int64_t setting, struct next_stroke *ret)
{
    for (int32_t p = 0; p < strokes->piece_count; p++) {
        const struct saw_piece *piece = &strokes->pieces[p];
        const struct branch *branch = &strokes->branches[piece->branch];

        for (int32_t child = branch->first; child != TREE_NONE;
             child = strokes->branches[child].next)
            if (is_due(strokes, piece, child) &&
                setting_of(strokes, child, branch->way) == setting) {
                *ret = (struct next_stroke){p, child};
                return true;
            }
    }
    return false;
}

/* The setting to go on with: one that is used up now if there is one, of those the one used most,
 * of equals the widest. */
static bool choose_setting(const struct strokes *strokes, int64_t *ret_setting)
{
    int64_t best = -1;
    int32_t best_rank = 0;

    for (int32_t i = 0; i < strokes->need_count; i++) {
        int32_t due = strokes->times[i] > 0 ? due_now(strokes, strokes->needs[i]) : 0;
        int32_t rank = due == strokes->times[i] ? due + strokes->branch_count : due;

        if (due > 0 && (rank > best_rank || (rank == best_rank && strokes->needs[i] > best))) {
            best_rank = rank;
            best = strokes->needs[i];
        }
    }
    *ret_setting = best;
    return best_rank > 0;
}

static bool choose_stroke(const struct strokes *strokes, struct next_stroke *ret)
{
    int64_t setting;

    if (strokes->fence >= 0 && find_due(strokes, strokes->fence, ret))
        return true;
    return choose_setting(strokes, &setting) && find_due(strokes, setting, ret);
}

/* ---- strokes ---- */

static void set_fence(struct strokes *strokes, int64_t setting)
{
    strokes->layout->fences += setting != strokes->fence;
    strokes->fence = setting;
}

/* A stroke over a piece whose kerf begins at `at`, the fence against the near or the far edge. */
static void add_stroke(struct strokes *strokes, const struct saw_piece *piece, int way, int64_t at,
                       bool far_fence)
{
    assert(way == 0 || way == 1);

    int64_t kerf = strokes->job->job->kerf;
    int64_t fence = far_fence ? piece->ends[way] - at - kerf : at - piece->at[way];

    assert(piece->at[!way] < piece->ends[!way]);
    *LIST_ADD(strokes->arena, &strokes->layout->strokes) =
        (struct cut_stroke){.blank = strokes->blank,
                            .across = way == WAY_ALONG,
                            .at = at,
                            .from = piece->at[!way],
                            .to = piece->ends[!way],
                            .fence = fence};
    set_fence(strokes, fence);
}

static void place_part(struct strokes *strokes, const struct branch *branch, const int64_t at[2])
{
    *LIST_ADD(strokes->arena, &strokes->layout->places) =
        (struct cut_place){.part = (size_t)branch->part,
                           .along = at[WAY_ALONG],
                           .across = at[WAY_ACROSS],
                           .turned = branch->turned};
}

/* A branch that has come free: a part is placed, a node goes onto the saw. */
static void free_branch(struct strokes *strokes, int32_t index, const int64_t at[2])
{
    const struct branch *branch = &strokes->branches[index];
    struct saw_piece *piece;

    strokes->done[index] = true;
    if (branch->part != TREE_NONE)
        place_part(strokes, branch, at);
    if (branch->way == TREE_NONE)
        return;
    assert(strokes->piece_count < strokes->branch_most);
    piece = &strokes->pieces[strokes->piece_count++];
    *piece = (struct saw_piece){.branch = index, .at = {at[0], at[1]}};
    for (int way = 0; way < 2; way++)
        piece->ends[way] = at[way] + setting_of(strokes, index, way);
    for (int32_t child = branch->first; child != TREE_NONE; child = strokes->branches[child].next)
        piece->left++;
}

/* Frees the child that is left of a piece, and takes the piece off the saw. */
static void finish_piece(struct strokes *strokes, int32_t index)
{
    struct saw_piece piece = strokes->pieces[index];
    int32_t child = strokes->branches[piece.branch].first;
    int way = strokes->branches[piece.branch].way;

    assert(piece.left == 1);
    while (strokes->done[child])
        child = strokes->branches[child].next;
    for (int32_t i = index + 1; i < strokes->piece_count; i++)
        strokes->pieces[i - 1] = strokes->pieces[i];
    strokes->piece_count--;
    if (!branch_is_gap(&strokes->branches[child]))
        --*times_of(strokes, setting_of(strokes, child, way));
    free_branch(strokes, child, piece.at);
}

static void make_stroke(struct strokes *strokes, struct next_stroke next)
{
    struct saw_piece *piece = &strokes->pieces[next.piece];
    int way = strokes->branches[piece->branch].way;
    int64_t setting = setting_of(strokes, next.child, way);
    int64_t at[2] = {piece->at[0], piece->at[1]};

    assert(piece->left > 1);
    add_stroke(strokes, piece, way, piece->at[way] + setting, false);
    --*times_of(strokes, setting);
    piece->at[way] += setting + strokes->job->job->kerf;
    piece->left--;
    free_branch(strokes, next.child, at);
    if (strokes->pieces[next.piece].left == 1)
        finish_piece(strokes, next.piece);
}

/* ---- the first cut, and the trim ---- */

/* Takes the trim off those edges of a raw piece that are the sheet's. */
static void trim_piece(struct strokes *strokes, struct saw_piece *raw, bool edges[2][2])
{
    int64_t trim = strokes->job->job->trim, kerf = strokes->job->job->kerf;

    for (int way = 0; way < 2 && trim > 0; way++) {
        if (edges[way][0]) {
            add_stroke(strokes, raw, way, raw->at[way] + trim - kerf, true);
            raw->at[way] += trim;
        }
        if (edges[way][1]) {
            add_stroke(strokes, raw, way, raw->ends[way] - trim, false);
            raw->ends[way] -= trim;
        }
    }
}

/* A branch of the children that are marked, or of those that are not; a single one stays itself. */
static int32_t group(struct strokes *strokes, int32_t root, size_t count, bool marked)
{
    int way = strokes->branches[root].way;
    int32_t index = strokes_branch(strokes, strokes->branches[root].size);
    int32_t width = 0, members = 0, last = TREE_NONE;

    for (size_t i = 0; i < count; i++) {
        if (strokes->marks[i] != marked)
            continue;
        last = strokes->children[i];
        width += strokes->branches[last].size[way];
        strokes->branches[last].next = strokes->branches[index].first;
        strokes->branches[index].first = last;
        members++;
    }
    assert(members > 0);
    if (members == 1) {
        strokes->branch_count--;
        return last;
    }
    strokes->branches[index].size[way] = width;
    strokes->branches[index].way = (int8_t)way;
    return index;
}

static size_t list_children(struct strokes *strokes, int32_t root, int way)
{
    size_t count = 0;

    for (int32_t child = strokes->branches[root].first; child != TREE_NONE;
         child = strokes->branches[child].next) {
        strokes->children[count] = child;
        strokes->widths[count++] = strokes->branches[child].size[way];
    }
    return count;
}

/* Parts the children of a root in two, so that the first cut leaves pieces that pass the opening.
 * False where nothing needs to be, or can be, done for it. */
static bool split_root(struct strokes *strokes, int32_t root)
{
    const struct branch *branch = &strokes->branches[root];
    int way = branch->way == TREE_NONE ? WAY_ALONG : branch->way;
    size_t count = list_children(strokes, root, way);
    bool any = false;
    int32_t near, far;

    if (!fences_pass(strokes->job, branch->size, way, strokes->widths, count, strokes->marks))
        return false;
    for (size_t i = 0; i < count; i++)
        any = any || strokes->marks[i];
    if (!any)
        return false;
    near = group(strokes, root, count, true);
    far = group(strokes, root, count, false);
    strokes->branches[root].first = near;
    strokes->branches[near].next = far;
    strokes->branches[far].next = TREE_NONE;
    return true;
}

/* The first cut through a raw sheet, and the trim off both pieces. */
static void cut_first(struct strokes *strokes, int32_t root, struct saw_piece raw)
{
    int way = strokes->branches[root].way;
    int32_t near = strokes->branches[root].first, far = strokes->branches[near].next;
    bool edges[2][2] = {{true, true}, {true, true}};
    struct saw_piece piece = raw;
    int64_t at;

    if (branch_is_gap(&strokes->branches[near])) {
        far = near;
        near = strokes->branches[near].next;
    }
    at = strokes->job->job->trim + setting_of(strokes, near, way);
    add_stroke(strokes, &raw, way, at, false);
    strokes->branches[root].way = TREE_NONE; /* done with: its children need no strokes more */
    piece.ends[way] = at;
    edges[way][1] = false;
    trim_piece(strokes, &piece, edges);
    free_branch(strokes, near, piece.at);
    piece = raw;
    piece.at[way] = at + strokes->job->job->kerf;
    edges[way][1] = true;
    edges[way][0] = false;
    trim_piece(strokes, &piece, edges);
    free_branch(strokes, far, piece.at);
}

static void begin_sheet(struct strokes *strokes, int32_t root, size_t size)
{
    assert(size < strokes->job->job->size_count);

    const struct cut_size *sheet = &strokes->job->job->sizes[size];
    struct saw_piece raw = {.at = {0, 0}, .ends = {sheet->length, sheet->width}};
    bool edges[2][2] = {{true, true}, {true, true}};

    if (split_root(strokes, root) && strokes->job->job->trim > 0) {
        cut_first(strokes, root, raw);
        return;
    }
    trim_piece(strokes, &raw, edges);
    free_branch(strokes, root, raw.at);
}

/* ---- sheets ---- */

/* The larger of what lies beyond all parts and what lies beside them, whole to the sheet's edge. */
static void find_rest(const struct strokes *strokes, struct cut_blank *blank)
{
    const struct cut_job *job = strokes->job->job;
    const struct cut_size *size = &job->sizes[blank->size];
    int64_t used[2] = {0, 0}, beyond, beside;

    for (size_t i = blank->first; i < blank->first + blank->count; i++) {
        const struct cut_place *place = &strokes->layout->places.at[i];
        const struct cut_piece *part = &job->parts[place->part];
        int64_t far = place->along + (place->turned ? part->width : part->length);
        int64_t side = place->across + (place->turned ? part->length : part->width);

        used[0] = far > used[0] ? far : used[0];
        used[1] = side > used[1] ? side : used[1];
    }
    blank->used = used[0];
    beyond = size->length - used[0] - job->kerf;
    beside = size->width - used[1] - job->kerf;
    if (beyond > 0 && beyond * size->width >= beside * size->length) {
        blank->rest = beyond;
        blank->rest_across = size->width;
    } else if (beside > 0) {
        blank->rest = size->length;
        blank->rest_across = beside;
    }
}

static bool opening_takes(const struct cut_job *job, int64_t length, int64_t width)
{
    return (length <= job->passage_length && width <= job->passage_width) ||
           (width <= job->passage_length && length <= job->passage_width) || length <= 0 ||
           width <= 0;
}

/* Whether what is carried after the first stroke, `first` of the layout's, does not pass. */
static bool is_stuck(const struct strokes *strokes, const struct cut_blank *blank, size_t first)
{
    const struct cut_job *job = strokes->job->job;
    const struct cut_size *size = &job->sizes[blank->size];
    const struct cut_stroke *stroke;
    int64_t beyond;

    assert(first <= strokes->layout->strokes.count);
    if (job->passage_length == 0 || opening_takes(job, size->length, size->width))
        return false;
    if (first == strokes->layout->strokes.count)
        return true;
    stroke = &strokes->layout->strokes.at[first];
    beyond = (stroke->across ? size->length : size->width) - stroke->at - job->kerf;
    return stroke->across ? !opening_takes(job, stroke->at, size->width) ||
                                !opening_takes(job, beyond, size->width)
                          : !opening_takes(job, size->length, stroke->at) ||
                                !opening_takes(job, size->length, beyond);
}

static void lay_sheet(struct strokes *strokes, const struct trees *trees, int32_t root)
{
    struct cut_layout *layout = strokes->layout;
    struct cut_blank blank = {.size = trees->roots[root].size, .first = layout->places.count};
    struct next_stroke next;
    size_t first = layout->strokes.count;
    int32_t branch;

    strokes->branch_count = strokes->piece_count = 0;
    strokes->blank = layout->blanks.count;
    branch = branch_of(strokes, trees, trees->roots[root].node);
    if (strokes->job->job->passage_length == 0) /* another first cut might not pass */
        branch = recount_cuts(strokes, branch);
    strokes->need_count = 0;
    begin_sheet(strokes, branch, blank.size);
    count_needs(strokes, branch);
    while (choose_stroke(strokes, &next))
        make_stroke(strokes, next);
    assert(strokes->piece_count == 0);
    blank.count = layout->places.count - blank.first;
    assert(blank.count > 0);
    find_rest(strokes, &blank);
    layout->stuck += is_stuck(strokes, &blank, first);
    layout->cost += strokes->job->job->sizes[blank.size].price;
    *LIST_ADD(strokes->arena, &layout->blanks) = blank;
}

static void empty_layout(struct cut_layout *layout)
{
    layout->blanks.count = layout->places.count = 0;
    layout->left_out.count = layout->strokes.count = 0;
    layout->cost = layout->bound = layout->fences = 0;
    layout->stuck = 0;
}

void strokes_lay_out(struct strokes *strokes, const struct trees *trees, struct cut_layout *layout)
{
    empty_layout(layout);
    strokes->layout = layout;
    strokes->fence = -1;
    for (int32_t i = 0; i < trees->root_count; i++)
        if (trees_used(trees, i))
            lay_sheet(strokes, trees, i);
    for (size_t i = 0; i < strokes->job->part_count; i++)
        if (trees->where[i] == TREE_NONE)
            *LIST_ADD(strokes->arena, &layout->left_out) = i;
    assert(layout->places.count + layout->left_out.count == strokes->job->part_count);
}
