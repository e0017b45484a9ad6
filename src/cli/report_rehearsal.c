#include "cli/report_rehearsal.h"

static const char *step_name(const struct plan *plan, size_t step)
{
    return step == PLAN_NONE ? NULL : plan->steps.at[step].name;
}

static void put_verdict(struct json *json, const struct plan *plan, const struct verdict *verdict)
{
    struct text reason;

    json_put_object(json, JSON_LINE);
    json_put_key(json, "proved");
    json_put_bool(json, verdict->lapse == LAPSE_NONE);
    json_put_key(json, "step");
    json_put_string(json, step_name(plan, verdict->step));
    if (verdict->lapse != LAPSE_NONE) {
        text_init(&reason);
        rehearse_text(plan, verdict, &reason);
        json_put_key(json, "because");
        json_put_string(json, text_string(&reason));
        json_put_key(json, "since");
        json_put_string(json, step_name(plan, verdict->since));
        text_release(&reason);
    }
    json_put_close(json);
}

static void put_point(struct json *json, const struct plan *plan,
                      const struct rehearsed_point *point)
{
    json_put_object(json, JSON_LINES);
    json_put_key(json, "join");
    json_put_whole(json, point->join);
    json_put_key(json, "hole");
    json_put_whole(json, plan->points.at[point->point].rank);
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
    json_put_key(json, "what");
    json_put_string(json, kinds[thing->kind]);
    json_put_key(json, "key");
    json_put_whole(json, thing->key);
    json_put_key(json, "verdict");
    put_verdict(json, plan, &thing->verdict);
    json_put_close(json);
}

void report_rehearsal(struct json *json, const struct plan *plan, const struct rehearsal *rehearsal)
{
    json_put_key(json, "proved");
    json_put_bool(json, rehearsal->proved);
    json_put_key(json, "points");
    json_put_array(json, JSON_LINES);
    for (size_t i = 0; i < rehearsal->points.count; i++)
        put_point(json, plan, &rehearsal->points.at[i]);
    json_put_close(json);
    json_put_key(json, "lost");
    json_put_array(json, JSON_LINES);
    for (size_t i = 0; i < rehearsal->things.count; i++)
        put_thing(json, plan, &rehearsal->things.at[i]);
    json_put_close(json);
}

void report_apart(struct json *json, const struct plan *plan, const struct rehearsed_steps *steps)
{
    json_put_key(json, "apart");
    json_put_array(json, JSON_LINES);
    for (size_t i = 0; i < steps->count; i++) {
        struct text words;

        text_init(&words);
        rehearse_apart_text(plan, steps->at[i], &words);
        json_put_object(json, JSON_LINE);
        json_put_key(json, "step");
        json_put_string(json, plan->steps.at[steps->at[i]].name);
        json_put_key(json, "do");
        json_put_string(json, text_string(&words));
        json_put_close(json);
        text_release(&words);
    }
    json_put_close(json);
}
