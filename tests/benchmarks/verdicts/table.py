#!/usr/bin/env python3
"""Judges answers to simulated rosters against the truth, and prints what they are worth.

    table.py ROSTER_DIR ANSWERS_DIR [ROSTER_DIR ANSWERS_DIR ...] [--limits FILE] [--values FILE]

All pairs are pooled. "probabilities" are p_flat + p_falling against fixed thresholds with gates from the log alone;
"verdicts" are the printed ones. --values writes every figure by name as JSON; --limits reads a JSON object
{"verdicts.novice.false_alarms": {"max": 1.2}, ...} and ends with status 1 and a list if any is missed.
"""

from __future__ import annotations

import argparse
import json
import math
import sys
from pathlib import Path

from judged import Judged
from limits import missed_limits
from report import lines_of
from scores import all_scores


def pairs_of(folders: list[Path]) -> list[tuple[Path, Path]]:
    """Rosters with their answers."""
    if len(folders) % 2:
        raise ValueError("every roster needs a folder of answers after it")
    return list(zip(folders[::2], folders[1::2]))


def for_json(values: dict[str, float]) -> dict[str, float | None]:
    """The values, with null for what JSON has no number for."""
    return {name: value if math.isfinite(value) else None for name, value in values.items()}


def main() -> int:
    parser = argparse.ArgumentParser(description="Judges answers to simulated rosters against the truth.")
    parser.add_argument("folders", type=Path, nargs="+", metavar="ROSTER_DIR ANSWERS_DIR")
    parser.add_argument("--limits", type=Path)
    parser.add_argument("--values", type=Path)
    arguments = parser.parse_args()
    try:
        pairs = pairs_of(arguments.folders)
    except ValueError as error:
        parser.error(str(error))
    judged = Judged.read(pairs)
    values = all_scores(judged)
    print("\n".join(lines_of(values)))
    if arguments.values:
        arguments.values.write_text(json.dumps(for_json(values), indent=1) + "\n", encoding="utf-8")
    if not arguments.limits:
        return 0
    missed = missed_limits(values, json.loads(arguments.limits.read_text(encoding="utf-8")))
    print("\n".join(missed) if missed else "All limits are kept.")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
