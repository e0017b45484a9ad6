/* What is wrong or worth knowing; Enter goes to the thing it is about. */
#include "tui/list.h"
#include "tui/screen.h"

struct findings_state {
    struct list_view list;
};

static void paint_finding(struct tui *tui, const struct finding *finding, int row, bool chosen)
{
    static const char *const words[] = {"stop", "warn", "note"};
    enum severity severity = plan_finding_severity(finding);
    int style = chosen ? VIEW_CHOSEN : severity == SEVERITY_STOP ? VIEW_WARNING : VIEW_PLAIN;
    struct text sentence;
    text_init(&sentence);
    plan_finding_text(tui_plan(tui), finding, &sentence);
    view_row(&tui->view, row, 0, tui->view.columns, style, "");
    view_text(&tui->view, row, 1, 5, style | VIEW_STRONG, words[severity]);
    view_text(&tui->view, row, 7, tui->view.columns - 8, style, text_string(&sentence));
    if (chosen)
        view_cursor(&tui->view, row, 1);
    text_release(&sentence);
}

/* The chosen one in full: a line may be longer than the screen is wide. */
static void paint_whole(struct tui *tui, const struct finding *finding, int row, int height)
{
    struct text sentence;
    text_init(&sentence);
    plan_finding_text(tui_plan(tui), finding, &sentence);
    view_wrapped(&tui->view, row, 1, tui->view.columns - 2, height, VIEW_PLAIN,
                 text_string(&sentence));
    text_release(&sentence);
}

static void findings_paint(struct tui *tui, void *opaque, int top, int height)
{
    struct findings_state *state = opaque;
    const struct plan *plan = tui_plan(tui);
    list_view_resize(&state->list, (int)plan->findings.count);
    list_view_fit(&state->list, height - 3);
    for (int i = 0; i < state->list.height && state->list.top + i < state->list.count; i++) {
        int index = state->list.top + i;
        paint_finding(tui, &plan->findings.at[index], top + i, index == state->list.chosen);
    }
    view_level(&tui->view, top + height - 3, 0, tui->view.columns);
    if (state->list.chosen >= 0)
        paint_whole(tui, &plan->findings.at[state->list.chosen], top + height - 2, 2);
    else
        view_text(&tui->view, top, 1, tui->view.columns - 2, VIEW_PLAIN,
                  "Nothing is wrong that the program can see.");
}

static enum reaction findings_act(struct tui *tui, void *opaque, enum action action)
{
    struct findings_state *state = opaque;
    const struct plan *plan = tui_plan(tui);
    if (list_view_act(&state->list, action))
        return REACT_TAKEN;
    if (action != ACTION_ENTER || state->list.chosen < 0)
        return REACT_PASS;
    const struct finding *finding = &plan->findings.at[state->list.chosen];
    if (finding->entity == ENTITY_build || finding->entity == ENTITY_workshop ||
        (finding->entity < ENTITY_COUNT &&
         model_find_const(tui_model(tui), finding->entity, finding->key)))
        tui_open(tui, &screen_form, &(struct target){finding->entity, finding->key, NULL, NULL});
    return REACT_TAKEN;
}

const struct screen screen_findings = {
    .name = "findings",
    .size = sizeof(struct findings_state),
    .paint = findings_paint,
    .act = findings_act,
    .shown = SHOWS(ENTER) | SHOWS(LEAVE),
};
