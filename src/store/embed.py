#!/usr/bin/env python3
"""Turns numbered SQL files into one C file: a NUL-ended array of characters each, and their list;
and the rows of sqlite_schema that they lead to, where this Python has SQLite.

usage: embed.py OUTPUT SQL...
"""
import sys

try:
    import sqlite3
except ImportError:
    sqlite3 = None

# As SCHEMA in check.c.
ROWS = """SELECT type || ' ' || name || ' ' || tbl_name || ' ', coalesce(sql, '')
          FROM sqlite_schema ORDER BY type, name"""


def array(name, data):
    rows = [", ".join(str(byte) for byte in data[at:at + 20]) for at in range(0, len(data), 20)]
    return "static const char {}[] = {{\n    {}, 0}};\n".format(name, ",\n    ".join(rows))


def schema(steps):
    """C for the rows, none of them where they cannot be found out."""
    parts, rows = [], []
    if sqlite3 is not None and sqlite3.sqlite_version_info >= (3, 38):
        database = sqlite3.connect(":memory:")
        for step in steps:
            database.executescript(step.decode("ascii"))
        for number, (lead, sql) in enumerate(database.execute(ROWS), 1):
            name = "row_{:03}".format(number)
            parts.append(array(name, (lead + sql).encode("ascii")))
            rows.append("{{{}, {} + {}}}".format(name, name, len(lead)))
        database.close()
    rows.append("{0, 0}")
    parts.append("const struct schema_row store_schema[] = {{\n    {}}};\n".format(
        ",\n    ".join(rows)))
    return parts


def main():
    output, *paths = sys.argv[1:]
    parts = ['#include "store/internal.h"\n']
    names, steps = [], []
    for number, path in enumerate(sorted(paths), 1):
        with open(path, "rb") as file:
            data = file.read()
        if max(data) > 126 or 0 in data:
            sys.exit(path + ": only ASCII can be embedded")
        names.append("step_{:03}".format(number))
        steps.append(data)
        parts.append(array(names[-1], data))
    parts.append("const char *const store_steps[] = {{{}}};\n".format(", ".join(names)))
    parts.append("const int store_step_count = {};\n".format(len(names)))
    parts += schema(steps)
    with open(output, "w", encoding="ascii") as file:
        file.write("\n".join(parts))


main()
