/*
 * Prints how long the program takes from its start to its first screen, in a terminal of this
 * process, with a workshop of 1,000 builds. Argument: the program.
 */
#include "stopwatch.h"

#include <pty.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#define ROUNDS 15
#define BUILDS 1000

static void run_quietly(char *const argv[])
{
    pid_t child = fork();
    int status = 0;
    if (child == 0) {
        if (!freopen("/dev/null", "w", stdout))
            _exit(127);
        execv(argv[0], argv);
        _exit(127);
    }
    waitpid(child, &status, 0);
    if (status)
        exit(1);
}

/* One file with many builds, imported in one go. */
static void make_store(char *program, char *store, const char *folder)
{
    static char names[BUILDS][600];
    static char *argv[BUILDS + 5];
    static char option[] = "--store";
    static char command[] = "import";
    argv[0] = program;
    argv[1] = option;
    argv[2] = store;
    argv[3] = command;
    for (int i = 0; i < BUILDS; i++) {
        snprintf(names[i], sizeof names[i], "%s/build-%d.json", folder, i);
        FILE *file = fopen(names[i], "w");
        if (!file)
            exit(1);
        fprintf(
            file,
            "{\"format\": 1, \"kind\": \"build\", \"build\": {\"name\": \"Build %d\"},\n"
            "\"boxes\": [{\"key\": 1, \"name\": \"A\", \"width\": \"40 in\", \"depth\": \"3 in\","
            " \"height\": \"40 in\"}]}\n",
            i);
        fclose(file);
        argv[4 + i] = names[i];
    }
    run_quietly(argv);
    for (int i = 0; i < BUILDS; i++)
        unlink(names[i]);
}

/* Milliseconds until the first screen stands: until its last line, the hints, has come. */
static double time_start(char *program, char *store)
{
    struct winsize size = {.ws_row = 24, .ws_col = 80};
    char seen[65536];
    size_t length = 0;
    int master;
    double begin = 1e3 * stopwatch_wall();
    pid_t child = forkpty(&master, NULL, NULL, &size);
    if (child == 0) {
        setenv("TERM", "xterm-256color", 1);
        execl(program, program, "--store", store, (char *)NULL);
        _exit(127);
    }
    seen[0] = '\0';
    while (!strstr(seen, "leave") && length + 1 < sizeof seen) {
        ssize_t got = read(master, seen + length, sizeof seen - 1 - length);
        if (got <= 0)
            break;
        length += (size_t)got;
        seen[length] = '\0';
    }
    double took = 1e3 * stopwatch_wall() - begin;
    kill(child, SIGTERM);
    waitpid(child, NULL, 0);
    close(master);
    return took;
}

int main(int argc, char **argv)
{
    char folder[512];
    char store[600];
    double times[ROUNDS];
    const char *root = getenv("TMPDIR");
    if (argc != 2)
        return 2;
    snprintf(folder, sizeof folder, "%s/stuffover-start-XXXXXX", root && *root ? root : P_tmpdir);
    if (!mkdtemp(folder))
        return 1;
    snprintf(store, sizeof store, "%s/workshop", folder);
    make_store(argv[1], store, folder);
    for (int i = 0; i < ROUNDS; i++)
        times[i] = time_start(argv[1], store);
    qsort(times, ROUNDS, sizeof *times, stopwatch_compare);
    printf("cold start to the first screen, %d builds: median %.1f ms, worst of %d %.1f ms\n",
           BUILDS, times[ROUNDS / 2], ROUNDS, times[ROUNDS - 1]);
    struct rusage usage;
    getrusage(RUSAGE_CHILDREN, &usage);
    printf("largest child: %ld KiB\n", usage.ru_maxrss);
    unlink(store);
    return rmdir(folder) != 0;
}
