/* Amounts of money: what is read is written so that it is read the same. The first byte says how
 * many digits the currency has. */
#include "target.h"

#include "base/money.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    struct currency currency = {.code = "XTS", .digits = size > 0 ? data[0] % 4 : 2};
    char *text = target_string(size > 0 ? data + 1 : data, size > 0 ? size - 1 : 0);
    char shown[MONEY_TEXT];
    int64_t value, again;

    if (money_parse(currency, text, &value, NULL) == FAULT_NONE) {
        money_print(shown, currency, value);
        HOLDS(money_parse(currency, shown, &again, NULL) == FAULT_NONE);
        HOLDS(again == value);
        money_print_code(shown, currency, value);
        HOLDS(strlen(shown) < sizeof shown);
    }
    free(text);
    return 0;
}
