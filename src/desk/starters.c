#include "desk/starters.h"

#include "desk/pieces.h"

#include <string.h>

#define NO_QUESTION                    \
    {                                  \
        NULL, NULL, NULL, {0, 0}, 0, 0 \
    }
#define ASK(key, text, why, inch, mm, least, most)                              \
    {                                                                           \
        key, text, why, {KIT_IN(inch), KIT_MM(mm)}, KIT_MM(least), KIT_MM(most) \
    }

/* The standard sizes are common practice, no source; mattresses are measured, not looked up. */
const struct starter starters[] = {
    {"corner-banquette",
     "Corner banquette",
     "two seat boxes in a corner, drop-on seats, two backs",
     {ASK("first", "Along the first wall",
          "From the corner along the longer wall. It sets the width of the first seat box, and its "
          "cloth.",
          84, 2100, 900, 5000),
      ASK("second", "Along the second wall, corner included",
          "From the same corner along the other wall. The second box ends at the front of the "
          "first.",
          60, 1500, 900, 5000),
      ASK("depth", "Depth of the seat",
          "From the wall to the front edge. 18 in or 450 mm is usual where the back has little "
          "padding.",
          18, 450, 300, 900),
      ASK("seat", "Height of the seat",
          "From the floor to the top of the drop-on seat. Measure a chair at the same table.", 18,
          450, 300, 700),
      ASK("back", "Height of the back above the seat",
          "From the seat to the top edge. A higher back wants fixing to the wall.", 18, 450, 200,
          900)},
     piece_corner_banquette},
    {"storage-bench",
     "Storage bench",
     "a chest with a padded lid",
     {ASK("width", "Width",
          "From side to side, without cloth. A long lid is heavy: its stay is reckoned from it.",
          48, 1200, 400, 2400),
      ASK("depth", "Depth",
          "From the wall to the front edge. The lid opens against the wall, and needs room to "
          "stand.",
          18, 450, 300, 900),
      ASK("height", "Height with the lid",
          "From the floor to the top of the padding. What the box holds is this less lid and "
          "bottom.",
          18, 450, 300, 700),
      NO_QUESTION, NO_QUESTION},
     piece_storage_bench},
    {"wing-headboard",
     "Wing headboard",
     "a padded head for a bed with a wing on each side, joined in the room",
     {ASK("mattress", "Width of the mattress",
          "Measure the bed: mattresses differ from their names. The wings leave room for the "
          "bedding.",
          60, 1600, 600, 2200),
      ASK("height", "Height from the floor",
          "From the floor to the top edge. Below the mattress nobody sees it, and plain cloth will "
          "do.",
          56, 1400, 600, 2400),
      ASK("wing", "Depth of the wings",
          "How far each wing comes forward from the head. It has to go through the door by itself.",
          11.875, 300, 150, 600),
      NO_QUESTION, NO_QUESTION},
     piece_wing_headboard},
    {"bed-base",
     "Bed base",
     "two covered boxes under a mattress, joined in the room",
     {ASK("width", "Width of the mattress",
          "Measure the mattress, not its name. The base is made as wide, cloth besides.", 60, 1600,
          600, 2200),
      ASK("length", "Length of the mattress",
          "Each of the two boxes takes half of it: that is what has to go up the stairs.", 80, 2000,
          1200, 2400),
      ASK("height", "Height without legs",
          "Without legs and mattress. With those it makes the height you sit on.", 10, 250, 120,
          600),
      NO_QUESTION, NO_QUESTION},
     piece_bed_base},
    {"seat-cushion",
     "Seat cushion",
     "foam in a sewn cover with a zip, loose on a seat",
     {ASK("width", "Width",
          "Of the place it lies in, from side to side. Foam and cover are cut by it.", 22, 560, 200,
          2400),
      ASK("depth", "Depth",
          "From the back to the front edge. The zip runs along the back, where nobody sees it.", 20,
          500, 200, 1200),
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

/* The limits are whole millimetres: inches are said, and kept to, at the half inch inside them. */
enum fault starter_check_size(const struct starter_question *question, enum units units,
                              int64_t size, struct fault_note *note)
{
    int64_t grain = units == UNITS_INCH ? LENGTH_INCH / 2 : LENGTH_MM;
    int64_t least = grain * whole_divide_up(question->least, grain);
    int64_t most = question->most / grain * grain;
    char least_words[QUANTITY_TEXT];
    char most_words[QUANTITY_TEXT];
    if (size >= least && size <= most)
        return FAULT_NONE;
    quantity_print_unit(least_words, QUANTITY_LENGTH, units, least);
    quantity_print_unit(most_words, QUANTITY_LENGTH, units, most);
    fault_say(note, FAULT_RANGE, "it has to lie between %s and %s", least_words, most_words);
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
        enum fault fault = starter_check_size(question, units, chosen[i], note);
        if (fault)
            return fault;
    }
    struct kit kit;
    kit_open(&kit, draft);
    draft->build.name = arena_text(draft->arena, name);
    draft->build.state = STATE_READY;
    starter->make(&kit, chosen);
    return FAULT_NONE;
}
