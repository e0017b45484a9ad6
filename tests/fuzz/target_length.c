/* Lengths and the other quantities: what is read is written so that it is read the same. The first
 * byte says which quantity, in which units. */
#include "target.h"

#include "base/quantity.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    enum quantity quantity = size > 0 ? (enum quantity)(data[0] / 2 % QUANTITY_KINDS) : 0;
    enum units units = size > 0 && data[0] % 2 ? UNITS_MM : UNITS_INCH;
    char *text = target_string(size > 0 ? data + 1 : data, size > 0 ? size - 1 : 0);
    char shown[QUANTITY_TEXT];
    int64_t value, again;

    if (quantity_parse(quantity, units, text, &value, NULL) == FAULT_NONE) {
        quantity_print_exact(shown, quantity, units, value);
        HOLDS(quantity_parse(quantity, units, shown, &again, NULL) == FAULT_NONE);
        HOLDS(again == value);
        quantity_print_unit(shown, quantity, units, value);
        HOLDS(strlen(shown) < sizeof shown);
    }
    free(text);
    return 0;
}
