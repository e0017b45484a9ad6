#include "plan/homeward.h"

#include "plan/passage.h"

#include <assert.h>
#include <stdio.h>

bool homeward_goes_in(const struct passage *vehicle, int64_t length, int64_t width,
                      int64_t thickness)
{
    return passage_vehicle((struct vector){length, width, thickness}, vehicle->width,
                           vehicle->height, vehicle->length, 0);
}

const struct passage *homeward_too_small(const struct model *model, int64_t length, int64_t width,
                                         int64_t thickness)
{
    for (size_t i = 0; i < model->passages.count; i++) {
        const struct passage *vehicle = &model->passages.at[i];

        if (vehicle->kind == PASSAGE_VEHICLE &&
            !homeward_goes_in(vehicle, length, width, thickness))
            return vehicle;
    }
    return NULL;
}

static const struct cut_stroke *first_stroke(const struct cut_layout *layout, size_t blank)
{
    for (size_t i = 0; i < layout->strokes.count; i++)
        if (layout->strokes.at[i].blank == blank)
            return &layout->strokes.at[i];
    return NULL;
}

bool homeward_first_cut(const struct model *model, const struct cut_job *job,
                        const struct cut_layout *layout, size_t blank, int64_t thickness,
                        struct homeward *ret_home)
{
    assert(blank < layout->blanks.count);

    const struct cut_size *size = &job->sizes[layout->blanks.at[blank].size];
    struct homeward home = {
        .vehicle = homeward_too_small(model, size->length, size->width, thickness),
        .stroke = first_stroke(layout, blank),
    };

    if (!home.vehicle || size->limit != CUT_ANY)
        return false;
    if (home.stroke) {
        int64_t whole = home.stroke->across ? size->length : size->width;
        int64_t other = home.stroke->across ? size->width : size->length;
        int64_t beyond = whole - home.stroke->at - job->kerf;

        home.goes = !homeward_too_small(model, home.stroke->at, other, thickness) &&
                    (beyond <= 0 || !homeward_too_small(model, beyond, other, thickness));
    }
    *ret_home = home;
    return true;
}

char *homeward_words(char buffer[HOMEWARD_TEXT], const struct model *model,
                     const struct homeward *home)
{
    char at[QUANTITY_TEXT];

    if (!home->stroke) {
        snprintf(buffer, HOMEWARD_TEXT, "let the shop cut it first");
        return buffer;
    }
    quantity_print_unit(at, QUANTITY_LENGTH, model_units(model), home->stroke->at);
    snprintf(buffer, HOMEWARD_TEXT,
             home->goes
                 ? "let the shop cut it %s at %s first"
                 : "let the shop cut it %s at %s first, and then on: its parts do not either",
             home->stroke->across ? "across" : "along", at);
    return buffer;
}
