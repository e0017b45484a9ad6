#include "tree.h"

#include <assert.h>
#include <dirent.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "law.h"

/* A folder on the way down: where it is, and how the checks call it. */
struct place {
    char full[PATH_MAX];
    char shown[PATH_MAX];
};

static bool place_in(const struct place *folder, const char *name, struct place *ret_place)
{
    const char *slash = folder->shown[0] != '\0' ? "/" : "";
    int full = snprintf(ret_place->full, PATH_MAX, "%s/%s", folder->full, name);
    int shown = snprintf(ret_place->shown, PATH_MAX, "%s%s%s", folder->shown, slash, name);
    return full < PATH_MAX && shown < PATH_MAX;
}

char *tree_text(const char *path)
{
    FILE *file = fopen(path, "rb");
    if (file == NULL)
        return NULL;
    struct stat about;
    char *text = NULL;
    if (fstat(fileno(file), &about) == 0)
        text = malloc((size_t)about.st_size + 1);
    if (text != NULL)
        text[fread(text, 1, (size_t)about.st_size, file)] = '\0';
    fclose(file);
    return text;
}

static bool is_looked_at(const char *name, const char *wanted)
{
    const char *ending = strrchr(name, '.');
    if (ending == NULL)
        return false;
    return wanted ? strcmp(ending, wanted) == 0
                  : strcmp(ending, ".c") == 0 || strcmp(ending, ".h") == 0;
}

static void check_file(const struct place *file, struct tree_check *check)
{
    char *text = tree_text(file->full);
    if (text == NULL) {
        law_complain(check->found, file->shown, 0, "cannot be read");
        return;
    }
    check->check(check->found, file->shown, text);
    check->files++;
    free(text);
}

static bool walk(const struct place *folder, struct tree_check *check);

static void visit(const struct place *folder, const char *name, struct tree_check *check)
{
    struct place place;
    struct stat about;
    if (!place_in(folder, name, &place) || lstat(place.full, &about) != 0)
        law_complain(check->found, name, 0, "cannot be reached");
    else if (S_ISDIR(about.st_mode))
        walk(&place, check);
    else if (is_looked_at(name, check->ending))
        check_file(&place, check);
}

static bool walk(const struct place *folder, struct tree_check *check)
{
    DIR *names = opendir(folder->full);
    if (names == NULL)
        return false;
    for (const struct dirent *entry; (entry = readdir(names)) != NULL;)
        if (entry->d_name[0] != '.')
            visit(folder, entry->d_name, check);
    closedir(names);
    return true;
}

bool tree_each_source(const char *root, const char *folder, struct tree_check *check)
{
    assert(check->check != NULL && check->found != NULL);
    struct place top = {.shown = ""};
    int length = snprintf(top.full, PATH_MAX, "%s/%s", root, folder);
    return length < PATH_MAX && walk(&top, check);
}

bool tree_check_top(const char *root, struct complaints *found)
{
    DIR *names = opendir(root);
    if (names == NULL)
        return false;
    for (const struct dirent *entry; (entry = readdir(names)) != NULL;)
        law_check_top(found, entry->d_name);
    closedir(names);
    return true;
}
