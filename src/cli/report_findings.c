/* Findings as JSON, with their stories and cures. */
#include "cli/report.h"

#include "cli/report_put.h"

#include <stdio.h>

static void put_edit(struct json *json, const struct cure_edit *edit)
{
    json_put_object(json, JSON_LINE);
    put_text(json, "entity", entity_of(edit->entity)->name);
    put_whole(json, "key", edit->key);
    put_text(json, "field", edit->field); /* null: the item is deleted */
    put_text(json, "value", edit->field ? edit->value : NULL);
    json_put_close(json);
}

/* `number` counts findings from 1: "3.1" is what `check --cure` takes. */
static void put_cures(struct json *json, const struct finding *finding, size_t number)
{
    put_array(json, "cures");
    for (size_t i = 0; i < finding->cure_count; i++) {
        const struct cure *cure = &finding->cures[i];
        char name[48];
        snprintf(name, sizeof name, "%zu.%zu", number, i + 1);
        json_put_object(json, JSON_LINES);
        put_text(json, "cure", name);
        put_text(json, "text", cure->text);
        put_array(json, "edits");
        for (size_t k = 0; k < cure->edit_count; k++)
            put_edit(json, &cure->edits[k]);
        json_put_close(json);
        json_put_close(json);
    }
    json_put_close(json);
}

static void put_story(struct json *json, const struct finding *finding)
{
    put_array(json, "story");
    for (size_t i = 0; i < finding->story_count; i++)
        json_put_string(json, finding->story[i]);
    json_put_close(json);
}

void report_findings(struct json *json, const struct plan *plan)
{
    put_array(json, "findings");
    for (size_t i = 0; i < plan->findings.count; i++) {
        const struct finding *finding = &plan->findings.at[i];
        struct text sentence;
        text_init(&sentence);
        plan_finding_text(plan, finding, &sentence);
        json_put_object(json, finding->story_count || finding->cure_count ? JSON_LINES : JSON_LINE);
        put_text(json, "severity", plan_finding_word(finding));
        put_text(json, "entity", entity_of(finding->entity)->name);
        put_whole(json, "key", finding->key);
        put_text(json, "text", text_string(&sentence));
        put_story(json, finding);
        put_cures(json, finding, i + 1);
        json_put_close(json);
        text_release(&sentence);
    }
    json_put_close(json);
}
