#include "tui/list.h"

void list_view_choose(struct list_view *list, int index)
{
    if (index >= list->count)
        index = list->count - 1;
    list->chosen = index < 0 && list->count > 0 ? 0 : index;
}

void list_view_resize(struct list_view *list, int count)
{
    list->count = count;
    list_view_choose(list, list->chosen);
}

void list_view_fit(struct list_view *list, int row, int height)
{
    list->row = row;
    list->height = height < 1 ? 1 : height;
    int kept = list->height > 2 ? 1 : 0; /* lines of the page that was left */
    if (list->chosen >= 0 && list->chosen < list->top)
        list->top = list->chosen - list->height + 1 + kept;
    if (list->chosen >= list->top + list->height)
        list->top = list->chosen - kept;
    if (list->top > list->count - list->height)
        list->top = list->count - list->height;
    if (list->top < 0)
        list->top = 0;
}

int list_view_shown(const struct list_view *list)
{
    int left = list->count - list->top;
    return left < list->height ? left : list->height;
}

bool list_view_act(struct list_view *list, enum action action)
{
    int page = list->height > 1 ? list->height - 1 : 1;

    switch (action) {
    case ACTION_UP:
        list_view_choose(list, list->chosen > 0 ? list->chosen - 1 : 0);
        return true;
    case ACTION_DOWN:
        list_view_choose(list, list->chosen + 1);
        return true;
    case ACTION_FIRST:
        list_view_choose(list, 0);
        return true;
    case ACTION_LAST:
        list_view_choose(list, list->count - 1);
        return true;
    case ACTION_LEAF_UP:
        list_view_choose(list, list->chosen > page ? list->chosen - page : 0);
        return true;
    case ACTION_LEAF_DOWN:
        list_view_choose(list, list->chosen + page);
        return true;
    default:
        return false;
    }
}
