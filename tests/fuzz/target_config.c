/* The settings of the terminal: every line holds or is complained of. */
#include "target.h"

#include "tui/settings.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static struct settings settings;
    char *bytes = target_string(data, size);

    settings_standard(&settings);
    settings_parse(&settings, bytes, size);
    HOLDS(settings.complaint_count >= 0 && (size_t)settings.complaint_count <= size + 1);
    for (int i = 0; i < settings.complaint_count && i < SETTINGS_COMPLAINTS; i++)
        HOLDS(settings.complaints[i].why[0]);
    free(bytes);
    return 0;
}
