#include "cli/report_rehearsal.h"

#include "cli/report_put.h"

static const char *step_name(const struct plan *plan, size_t step)
{
    return step == PLAN_NONE ? NULL : plan->steps.at[step].name;
}

static void put_verdict(struct json *json, const struct plan *plan, const struct verdict *verdict)
{
    struct text reason;

    json_put_object(json, JSON_LINE);
    put_bool(json, "proved", verdict->lapse == LAPSE_NONE);
    put_text(json, "step", step_name(plan, verdict->step));
    if (verdict->lapse != LAPSE_NONE) {
        text_init(&reason);
        rehearse_text(plan, verdict, &reason);
        put_text(json, "because", text_string(&reason));
        put_text(json, "since", step_name(plan, verdict->since));
        text_release(&reason);
    }
    json_put_close(json);
}

static void put_point(struct json *json, const struct plan *plan,
                      const struct rehearsed_point *point)
{
    json_put_object(json, JSON_LINES);
    put_whole(json, "join", point->join);
    put_whole(json, "hole", plan->points.at[point->point].rank);
    for (int proof = 0; proof < PROOFS; proof++) {
        json_put_key(json, proof_names[proof]);
        put_verdict(json, plan, &point->verdicts[proof]);
    }
    json_put_close(json);
}

static void put_thing(struct json *json, const struct plan *plan,
                      const struct rehearsed_thing *thing)
{
    static const char *const kinds[] = {
        [REHEARSED_JOIN] = "join",    [REHEARSED_FRAME] = "frame", [REHEARSED_PLACE] = "place",
        [REHEARSED_EDGE] = "edge",    [REHEARSED_LAYER] = "layer", [REHEARSED_FITTING] = "fitting",
        [REHEARSED_SUPPLY] = "supply"};

    json_put_object(json, JSON_LINE);
    put_text(json, "what", kinds[thing->kind]);
    put_whole(json, "key", thing->key);
    json_put_key(json, "verdict");
    put_verdict(json, plan, &thing->verdict);
    json_put_close(json);
}

void report_rehearsal(struct json *json, const struct plan *plan, const struct rehearsal *rehearsal)
{
    put_bool(json, "proved", rehearsal->proved);
    put_array(json, "points");
    for (size_t i = 0; i < rehearsal->points.count; i++)
        put_point(json, plan, &rehearsal->points.at[i]);
    json_put_close(json);
    put_array(json, "lost");
    for (size_t i = 0; i < rehearsal->things.count; i++)
        put_thing(json, plan, &rehearsal->things.at[i]);
    json_put_close(json);
}

void report_apart(struct json *json, const struct plan *plan, const struct rehearsed_steps *steps)
{
    put_array(json, "apart");
    for (size_t i = 0; i < steps->count; i++) {
        struct text words;

        text_init(&words);
        rehearse_apart_text(plan, steps->at[i], &words);
        json_put_object(json, JSON_LINE);
        put_text(json, "step", plan->steps.at[steps->at[i]].name);
        put_text(json, "do", text_string(&words));
        json_put_close(json);
        text_release(&words);
    }
    json_put_close(json);
}
