/* Writes the completion of one shell, when the program is built: complete SHELL > FILE. */
#include "cli/complete.h"

#include <stdio.h>

int main(int argc, char **argv)
{
    struct text script;
    bool known;

    text_init(&script);
    known = argc == 2 && complete_for(&script, argv[1]) && !text_failed(&script);
    if (known)
        fputs(text_string(&script), stdout);
    else
        fprintf(stderr, "usage: %s bash | zsh | fish\n", argv[0]);
    text_release(&script);
    return known && fflush(stdout) == 0 ? 0 : 2;
}
