/* Each rule of the trade has its reason, and something that sees to it. */
#include "plan/card.h"
#include "plan/rules.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static bool is_linked(const char *id)
{
    for (size_t i = 0; i < link_count; i++)
        if (strcmp(links[i].rule, id) == 0)
            return true;
    return false;
}

static bool is_on_card(int kind, const char *words)
{
    const struct card_words *card = &card_words[kind];

    for (int i = 0; i < CARD_ACTIONS && card->actions[i]; i++)
        if (strstr(card->actions[i], words))
            return true;
    return false;
}

static void seventy_eight_rules_stand_in_order_each_with_its_reason(void **state)
{
    char id[24];

    (void)state;
    assert_int_equal(kept_rule_count, 78);
    for (size_t i = 0; i < kept_rule_count; i++) {
        snprintf(id, sizeof id, "P%02zu", i + 1);
        assert_string_equal(kept_rules[i].id, id);
        if (!rule_find(id))
            fail_msg("%s has no reason", id);
    }
}

static void each_rule_is_seen_to_where_the_table_says(void **state)
{
    (void)state;
    for (size_t i = 0; i < kept_rule_count; i++) {
        const struct kept_rule *kept = &kept_rules[i];

        if (kept->keeper == KEPT_BY_LINK && !is_linked(kept->id))
            fail_msg("%s has no link", kept->id);
        if (kept->keeper == KEPT_ON_CARD && !is_on_card(kept->kind, kept->words))
            fail_msg("%s is not on the card of %s", kept->id, step_kinds[kept->kind].word);
        if (kept->keeper == KEPT_BY_PASS)
            assert_non_null(kept->words);
    }
}

static void no_rule_has_a_link_that_the_table_does_not_name(void **state)
{
    (void)state;
    for (size_t i = 0; i < kept_rule_count; i++)
        if (kept_rules[i].keeper != KEPT_BY_LINK && is_linked(kept_rules[i].id))
            fail_msg("%s is linked", kept_rules[i].id);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(seventy_eight_rules_stand_in_order_each_with_its_reason),
        cmocka_unit_test(each_rule_is_seen_to_where_the_table_says),
        cmocka_unit_test(no_rule_has_a_link_that_the_table_does_not_name),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return failed ? 1 : 0;
}
