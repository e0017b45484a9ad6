#!/usr/bin/env python3
"""Turns numbered SQL files into one C file: a NUL-ended array of characters each, and their list.

usage: embed.py OUTPUT SQL...
"""
import sys


def array(name, data):
    rows = [", ".join(str(byte) for byte in data[at:at + 20]) for at in range(0, len(data), 20)]
    return "static const char {}[] = {{\n    {}, 0}};\n".format(name, ",\n    ".join(rows))


def main():
    output, *paths = sys.argv[1:]
    parts = ['#include "store/internal.h"\n']
    names = []
    for number, path in enumerate(sorted(paths), 1):
        with open(path, "rb") as file:
            data = file.read()
        if max(data) > 126 or 0 in data:
            sys.exit(path + ": only ASCII can be embedded")
        names.append("step_{:03}".format(number))
        parts.append(array(names[-1], data))
    parts.append("const char *const store_steps[] = {{{}}};\n".format(", ".join(names)))
    parts.append("const int store_step_count = {};\n".format(len(names)))
    with open(output, "w", encoding="ascii") as file:
        file.write("\n".join(parts))


main()
