"""Prints the table of care with the tests behind each row; ends with 1 when one of them doesn't exist.

The names of the built tests come in on standard input, one a line: suite:Group.Name. A row of the table is
`| row | what | how |`; `how` holds tests as `suite:filter` in backquotes (with * as in --gtest_filter), programs as
`run:path` and reasons as plain words.
"""
import fnmatch
import os
import re
import sys


def read_rows(path):
    with open(path, encoding="utf-8") as table:
        for line in table:
            cells = [cell.strip() for cell in line.strip().strip("|").split("|")]
            if line.startswith("|") and len(cells) == 3 and cells[0] not in ("row", "") and not set(cells[0]) <= set("-:"):
                yield cells


def judge(how, tests):
    """The tests found, and what is wrong."""
    found, faults = [], []
    for name in re.findall(r"`([^`]+)`", how):
        if name.startswith("run:"):
            program = name[4:].split()[0]
            if not os.access(program, os.X_OK):
                faults.append(f"{program} can't be run")
            continue
        matching = [test for test in tests if fnmatch.fnmatchcase(test, name)]
        if not matching:
            faults.append(f"no such test: {name}")
        found += matching
    reason = re.sub(r"`[^`]+`", "", how).strip(" ,;.")
    if "`" not in how and not reason:
        faults.append("neither a test nor a reason")
    return found, faults


def main():
    tests = [line.strip() for line in sys.stdin if line.strip()]
    if not tests:
        sys.exit("No test was listed: build the suites first.")
    rows = list(read_rows(sys.argv[1]))
    if not rows:
        sys.exit(f"{sys.argv[1]} has no row.")
    wrong = without = 0
    for row, what, how in rows:
        found, faults = judge(how, tests)
        without += not re.search(r"`", how)
        wrong += len(faults)
        print(f"{row:>8}  {what}")
        print(f"          {how}" + (f"  [{len(found)} tests]" if found else ""))
        for fault in faults:
            print(f"          MISSING: {fault}")
    print(f"{len(rows)} rows, {without} with a reason in place of a test, {wrong} faults in the table")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
