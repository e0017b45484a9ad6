/* What is wrong or worth knowing, how it comes about, and the ways out. */
#include "paper/sheets.h"

#include "paper/lines.h"

#define STORY_INDENT 9 /* under the sentence of a finding */

static void add_story(struct text *out, const struct finding *finding)
{
    for (size_t i = 0; i < finding->story_count; i++)
        lines_add(out, "", STORY_INDENT, finding->story[i]);
}

/* "3.1  Put the heads into box C" */
static void add_cures(struct text *out, const struct finding *finding, size_t number)
{
    for (size_t i = 0; i < finding->cure_count; i++) {
        struct text words;
        text_init(&words);
        text_format(&words, "%zu.%zu  %s", number, i + 1, finding->cures[i].text);
        lines_add(out, i ? "" : "cure", STORY_INDENT, text_string(&words));
        text_release(&words);
    }
}

void sheet_findings(struct text *out, const struct plan *plan)
{
    text_add(out, "\nFINDINGS\n");
    for (size_t i = 0; i < plan->findings.count; i++) {
        const struct finding *finding = &plan->findings.at[i];
        text_format(out, "  %s: ", plan_finding_word(finding));
        plan_finding_text(plan, finding, out);
        text_add_char(out, '\n');
        add_story(out, finding);
        add_cures(out, finding, i + 1);
    }
    if (plan->findings.count == 0)
        text_add(out, "  none\n");
}
