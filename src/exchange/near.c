#include "exchange/near.h"

#include <assert.h>
#include <string.h>

#define LETTERS_MOST 32

static int least(int a, int b)
{
    return a < b ? a : b;
}

/* One row of the table of distances between beginnings of the two words (optimal string alignment:
 * Levenshtein with swapped neighbours); `one` and `two` are the rows above. */
static void fill_row(const char *typed, size_t i, const char *word, size_t length, const int *two,
                     const int *one, int *row)
{
    row[0] = (int)i;
    for (size_t j = 1; j <= length; j++) {
        int wrong = one[j - 1] + (typed[i - 1] != word[j - 1]);

        row[j] = least(wrong, least(one[j], row[j - 1]) + 1);
        if (i > 1 && j > 1 && typed[i - 1] == word[j - 2] && typed[i - 2] == word[j - 1])
            row[j] = least(row[j], two[j - 2] + 1);
    }
}

static int distance(const char *typed, size_t typed_length, const char *word, size_t length)
{
    int rows[3][LETTERS_MOST + 1] = {{0}};

    assert(typed_length <= LETTERS_MOST && length <= LETTERS_MOST);
    for (size_t j = 0; j <= length; j++)
        rows[0][j] = (int)j;
    for (size_t i = 1; i <= typed_length; i++)
        fill_row(typed, i, word, length, rows[(i + 1) % 3], rows[(i - 1) % 3], rows[i % 3]);
    return rows[typed_length % 3][length];
}

const char *near_word(const char *typed, const char *const *words, size_t count)
{
    size_t typed_length = strlen(typed);
    int nearest = typed_length > 4 ? 3 : 2; /* one more than may be wrong */
    const char *found = NULL;

    if (typed_length > LETTERS_MOST)
        return NULL;
    for (size_t i = 0; i < count; i++) {
        size_t length = strlen(words[i]);
        int apart;

        if (length > LETTERS_MOST)
            continue;
        apart = distance(typed, typed_length, words[i], length);
        if (apart < nearest) {
            nearest = apart;
            found = words[i];
        }
    }
    return found;
}
