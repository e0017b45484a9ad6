#include "desk/starters.h"

#include "desk/pieces.h"

#include <string.h>

#define NO_QUESTION              \
    {                            \
        NULL, NULL, {0, 0}, 0, 0 \
    }
#define ASK(key, text, inch, mm, least, most)                              \
    {                                                                      \
        key, text, {KIT_IN(inch), KIT_MM(mm)}, KIT_MM(least), KIT_MM(most) \
    }

/* The standard sizes are common practice, no source; mattresses are measured, not looked up. */
const struct starter starters[] = {
    {"corner-banquette",
     "Corner banquette",
     "two seat boxes in a corner, drop-on seats, two backs",
     {ASK("first", "Along the first wall", 84, 2100, 900, 5000),
      ASK("second", "Along the second wall, corner included", 60, 1500, 900, 5000),
      ASK("depth", "Depth of the seat", 18, 450, 300, 900),
      ASK("seat", "Height of the seat", 18, 450, 300, 700),
      ASK("back", "Height of the back above the seat", 18, 450, 200, 900)},
     piece_corner_banquette},
    {"storage-bench",
     "Storage bench",
     "a chest with a padded lid",
     {ASK("width", "Width", 48, 1200, 400, 2400), ASK("depth", "Depth", 18, 450, 300, 900),
      ASK("height", "Height with the lid", 18, 450, 300, 700), NO_QUESTION, NO_QUESTION},
     piece_storage_bench},
    {"wing-headboard",
     "Wing headboard",
     "a padded head for a bed with a wing on each side, joined in the room",
     {ASK("mattress", "Width of the mattress", 60, 1600, 600, 2200),
      ASK("height", "Height from the floor", 56, 1400, 600, 2400),
      ASK("wing", "Depth of the wings", 11.875, 300, 150, 600), NO_QUESTION, NO_QUESTION},
     piece_wing_headboard},
    {"bed-base",
     "Bed base",
     "two covered boxes under a mattress, joined in the room",
     {ASK("width", "Width of the mattress", 60, 1600, 600, 2200),
      ASK("length", "Length of the mattress", 80, 2000, 1200, 2400),
      ASK("height", "Height without legs", 10, 250, 120, 600), NO_QUESTION, NO_QUESTION},
     piece_bed_base},
    {"seat-cushion",
     "Seat cushion",
     "foam in a sewn cover with a zip, loose on a seat",
     {ASK("width", "Width", 22, 560, 200, 2400), ASK("depth", "Depth", 20, 500, 200, 1200),
      NO_QUESTION, NO_QUESTION, NO_QUESTION},
     piece_seat_cushion},
    {"blank",
     "Blank build",
     "nothing yet: add boxes, panels, layers and joins yourself",
     {NO_QUESTION, NO_QUESTION, NO_QUESTION, NO_QUESTION, NO_QUESTION},
     piece_blank},
    {NULL, NULL, NULL, {NO_QUESTION}, NULL}};

const struct starter *starter_named(const char *name)
{
    for (const struct starter *starter = starters; starter->name; starter++) {
        if (strcmp(starter->name, name) == 0)
            return starter;
    }
    return NULL;
}

static enum fault refuse_size(const struct starter_question *question, enum units units,
                              struct fault_note *note)
{
    char least[QUANTITY_TEXT];
    char most[QUANTITY_TEXT];
    quantity_print_unit(least, QUANTITY_LENGTH, units, question->least);
    quantity_print_unit(most, QUANTITY_LENGTH, units, question->most);
    fault_say(note, FAULT_RANGE, 0, "it has to lie between %s and %s", least, most);
    fault_at(note, "%s", question->key);
    return FAULT_RANGE;
}

enum fault starter_make(const struct starter *starter, struct model *draft, const char *name,
                        const int64_t sizes[STARTER_QUESTIONS], struct fault_note *note)
{
    enum units units = model_units(draft);
    int64_t chosen[STARTER_QUESTIONS] = {0};
    for (int i = 0; i < STARTER_QUESTIONS && starter->questions[i].key; i++) {
        const struct starter_question *question = &starter->questions[i];
        chosen[i] = sizes[i] ? sizes[i] : question->standard[units];
        if (chosen[i] < question->least || chosen[i] > question->most)
            return refuse_size(question, units, note);
    }
    struct kit kit;
    kit_open(&kit, draft);
    draft->build.name = arena_text(draft->arena, name);
    draft->build.state = STATE_READY;
    starter->make(&kit, chosen);
    return FAULT_NONE;
}
