#include "plan/tool.h"

struct tool_size tool_size(const struct planning *planning, int64_t kind)
{
    const int64_t *value = planning->value;
    struct tool_size size = {value[TRADE_DRIVER_INLINE], value[TRADE_DRIVER_RADIUS]};

    if (kind == TOOL_LONG_BIT)
        size = (struct tool_size){value[TRADE_DRIVER_BODY] + value[TRADE_DRIVER_BIT_LONG] +
                                      value[TRADE_DRIVER_SLACK],
                                  value[TRADE_DRIVER_RADIUS_LONG_BIT]};
    else if (kind == TOOL_RIGHT_ANGLE)
        size = (struct tool_size){value[TRADE_DRIVER_RIGHT_ANGLE],
                                  value[TRADE_DRIVER_RADIUS_LONG_BIT]};
    else if (kind == TOOL_STUBBY)
        size = (struct tool_size){value[TRADE_DRIVER_STUBBY], value[TRADE_DRIVER_RADIUS_LONG_BIT]};
    for (size_t i = 0; i < planning->model->tools.count; i++) {
        const struct tool *tool = &planning->model->tools.at[i];

        if (tool->kind != kind || tool->length == 0)
            continue;
        size.length = tool->length;
        size.radius = tool->radius > 0 ? tool->radius : size.radius;
        break;
    }
    return size;
}
