/* Picks a command or the terminal. */
#include "cli/cli.h"
#include "tui/tui.h"

#include <locale.h>
#include <signal.h>

int main(int argc, char **argv)
{
    setlocale(LC_ALL, "");
    setlocale(LC_NUMERIC, "C"); /* decimals are written with a point everywhere */
    signal(SIGXFSZ, SIG_IGN);      /* past a limit on files a write fails, with a reason */
    return cli_main(argc, argv, tui_run);
}
