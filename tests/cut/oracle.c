#include "oracle.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#define MOST_KINDS 40
#define MOST_FILLINGS 20000

struct model {
    const struct cut_job *job;
    int64_t lengths[MOST_KINDS];
    int64_t counts[MOST_KINDS];
    size_t kinds;
    FILE *rows[MOST_KINDS + 1]; /* terms of each kind's row; of the cost */
    char *texts[MOST_KINDS + 1];
    size_t sizes[MOST_KINDS + 1];
    size_t fillings;
    int64_t now[MOST_KINDS];
};

/* Solves a program into an answer; without one, only asks the solver who it is. */
static bool run_solver(const char *program, const char *answer)
{
    pid_t child = fork();
    int status;

    if (child == 0) {
        if (!freopen("/dev/null", "w", stdout) || !freopen("/dev/null", "w", stderr))
            _exit(127);
        if (program)
            execlp("glpsol", "glpsol", "--lp", program, "--tmlim", "10", "-w", answer,
                   (char *)NULL);
        else
            execlp("glpsol", "glpsol", "--version", (char *)NULL);
        _exit(127);
    }
    return child > 0 && waitpid(child, &status, 0) == child && WIFEXITED(status) &&
           WEXITSTATUS(status) == 0;
}

bool oracle_is_there(void)
{
    return run_solver(NULL, NULL);
}

/* ---- the program ---- */

static void find_kinds(struct model *model)
{
    for (size_t i = 0; i < model->job->part_count; i++) {
        size_t k = 0;

        while (k < model->kinds && model->lengths[k] != model->job->parts[i].length)
            k++;
        if (k == model->kinds)
            model->lengths[model->kinds++] = model->job->parts[i].length;
        model->counts[k]++;
    }
}

static void write_filling(struct model *model, size_t size)
{
    bool any = false;

    for (size_t k = 0; k < model->kinds; k++)
        any |= model->now[k] > 0;
    if (!any)
        return;
    for (size_t k = 0; k < model->kinds; k++)
        if (model->now[k] > 0)
            fprintf(model->rows[k], " + %" PRId64 " f%zu", model->now[k], model->fillings);
    fprintf(model->rows[model->kinds], " + %" PRId64 " f%zu\n", model->job->sizes[size].price,
            model->fillings);
    model->fillings++;
}

/* Every filling of a size, full or not. */
static void fill(struct model *model, size_t size, size_t kind, int64_t room)
{
    int64_t kerf = model->job->kerf;

    if (model->fillings > MOST_FILLINGS)
        return;
    if (kind == model->kinds) {
        write_filling(model, size);
        return;
    }
    for (int64_t n = 0; n <= model->counts[kind] && n * (model->lengths[kind] + kerf) <= room;
         n++) {
        model->now[kind] = n;
        fill(model, size, kind + 1, room - n * (model->lengths[kind] + kerf));
    }
    model->now[kind] = 0;
}

static void write_program(struct model *model, FILE *file)
{
    fprintf(file, "Minimize\n cost: %s\nSubject To\n", model->texts[model->kinds]);
    for (size_t k = 0; k < model->kinds; k++)
        fprintf(file, " k%zu:%s >= %" PRId64 "\n", k, model->texts[k], model->counts[k]);
    fprintf(file, "General\n");
    for (size_t i = 0; i < model->fillings; i++)
        fprintf(file, " f%zu\n", i);
    fprintf(file, "End\n");
}

static bool make_program(struct model *model, const char *path)
{
    FILE *file;

    find_kinds(model);
    for (size_t k = 0; k <= model->kinds; k++)
        model->rows[k] = open_memstream(&model->texts[k], &model->sizes[k]);
    for (size_t s = 0; s < model->job->size_count; s++)
        fill(model, s, 0, model->job->sizes[s].length - model->job->trim + model->job->kerf);
    for (size_t k = 0; k <= model->kinds; k++)
        fclose(model->rows[k]);
    file = fopen(path, "w");
    if (file) {
        write_program(model, file);
        fclose(file);
    }
    for (size_t k = 0; k <= model->kinds; k++)
        free(model->texts[k]);
    return file && model->fillings <= MOST_FILLINGS;
}

/* ---- the answer ---- */

/* "s mip ROWS COLUMNS STATUS COST" stands in it; STATUS is o when it is proven. */
static bool read_answer(const char *path, int64_t *ret_cost)
{
    FILE *file = fopen(path, "r");
    char line[256], status = '?';
    double cost;
    bool found = false;

    while (file && !found && fgets(line, sizeof line, file))
        found = sscanf(line, "s mip %*d %*d %c %lf", &status, &cost) == 2;
    if (file)
        fclose(file);
    if (!found || status != 'o')
        return false;
    *ret_cost = (int64_t)(cost + 0.5);
    return true;
}

bool oracle_cost(const struct cut_job *job, const char *folder, int64_t *ret_cost)
{
    struct model model = {.job = job};
    char program[512], answer[512];
    bool done;

    snprintf(program, sizeof program, "%s/job.lp", folder);
    snprintf(answer, sizeof answer, "%s/answer", folder);
    done = make_program(&model, program) && run_solver(program, answer) &&
           read_answer(answer, ret_cost);
    unlink(program);
    unlink(answer);
    return done;
}
