/*
 * Included before every file of src by the build: functions that write without a limit, or keep
 * hidden state, do not compile.
 */
#ifndef BANNED_H
#define BANNED_H

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#pragma GCC poison strcpy strcat sprintf vsprintf strtok gets alloca atoi atol atof

#endif
