#!/usr/bin/python3
"""Draws what the engine said of one simulated line whose truth is known: the picture of the guide's page on the method.

usage: picture.py ROSTER_DIR ANSWERS_DIR ATHLETE EXERCISE OUT.svg
"""

from __future__ import annotations

import csv
import datetime
import math
import sys
from pathlib import Path

WIDTH, LEFT, RIGHT = 860, 64, 16
TOP, POINTS_HIGH, GAP, CHANCES_HIGH = 46, 210, 40, 120
INK, FAINT = "#222222", "#bbbbbb"
# Okabe and Ito's colours, which most kinds of colour blindness tell apart.
COLOURS = {"rising": "#0072B2", "flat": "#E69F00", "falling": "#D55E00"}
WEEKS = 52


def rows_of(path: Path, athlete: str, exercise: str) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return [row for row in csv.DictReader(file) if row["athlete"] == athlete and row["exercise"] == exercise]


def week_of(date: str) -> float:
    return (datetime.date.fromisoformat(date) - datetime.date(2024, 1, 1)).days / 7


def strength(row: dict[str, str]) -> float | None:
    """Load of a single repetition, for sets with a known reserve near failure and to the standard."""
    if row["rir"] == "" or float(row["rir"]) > 4 or row["marks"] or row["set_no"] != "1":
        return None
    reps = float(row["reps"]) + float(row["rir"])
    return float(row["load_kg"]) * ((1 + reps / 30) / (1 + 1 / 30)) ** (1 / 1.18)


def x_of(week: float) -> float:
    return LEFT + (WIDTH - LEFT - RIGHT) * week / WEEKS


def text(x: float, y: float, words: str, anchor: str = "start", colour: str = INK, size: int = 13) -> str:
    return (f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}" fill="{colour}" '
            f'font-family="DejaVu Sans" font-size="{size}">{words}</text>')


def line(x1: float, y1: float, x2: float, y2: float, colour: str = FAINT, width: float = 1, dash: str = "") -> str:
    return (f'<line x1="{x1:.1f}" y1="{y1:.1f}" x2="{x2:.1f}" y2="{y2:.1f}" stroke="{colour}" '
            f'stroke-width="{width}" stroke-dasharray="{dash}"/>')


def points_panel(log: list[dict[str, str]]) -> list[str]:
    points = [(week_of(row["date"]), kg) for row in log if (kg := strength(row)) is not None]
    low, high = min(kg for _, kg in points), max(kg for _, kg in points)
    low, high = low - 0.05 * (high - low), high + 0.05 * (high - low)
    step = 10 ** math.floor(math.log10((high - low) / 2))
    step *= 5 if (high - low) / step > 12 else 2 if (high - low) / step > 5 else 1

    def y_of(kg: float) -> float:
        return TOP + POINTS_HIGH * (high - kg) / (high - low)

    out = []
    mark = math.ceil(low / step) * step
    while mark <= high:
        out += [line(LEFT, y_of(mark), WIDTH - RIGHT, y_of(mark)), text(LEFT - 8, y_of(mark) + 4, f"{mark:g}", "end")]
        mark += step
    out.append(text(LEFT, TOP - 10, "What each session's first set stands for: load of one repetition, kg"))
    out += [f'<circle cx="{x_of(week):.1f}" cy="{y_of(kg):.1f}" r="3.5" fill="{INK}"/>' for week, kg in points]
    return out


def chances_panel(weeks: list[dict[str, str]]) -> list[str]:
    top = TOP + POINTS_HIGH + GAP
    out = []
    known = [row for row in weeks if row["p_rising"]]
    for row in known:
        x, width, y = x_of(int(row["week"])), x_of(1) - x_of(0) - 1.5, float(top)
        for key, name in (("p_rising", "rising"), ("p_flat", "flat"), ("p_falling", "falling")):
            high = CHANCES_HIGH * float(row[key])
            out.append(f'<rect x="{x:.1f}" y="{y:.1f}" width="{width:.1f}" height="{high:.1f}" fill="{COLOURS[name]}"/>')
            y += high
    out.append(text(LEFT, top - 10, "How likely each is, week by week:"))
    x = LEFT + 250
    for name, colour in COLOURS.items():
        out += [f'<rect x="{x}" y="{top - 20}" width="12" height="12" fill="{colour}"/>', text(x + 18, top - 10, name)]
        x += 90
    for share in (0, 0.5, 1):
        out.append(text(LEFT - 8, top + CHANCES_HIGH * (1 - share) + 4, f"{share:g}", "end"))
    return out


def words_row(weeks: list[dict[str, str]]) -> list[str]:
    """The word that was said, written where it changes for at least three weeks."""
    y = TOP + POINTS_HIGH + GAP + CHANCES_HIGH + 20
    spoken: list[list[int | str]] = []
    for row in weeks:
        word = row["verdict"].replace("cant_tell", "can't tell")
        if spoken and spoken[-1][0] == word:
            spoken[-1][2] = int(row["week"]) + 1
        else:
            spoken.append([word, int(row["week"]), int(row["week"]) + 1])
    out = []
    for word, first, after in spoken:
        out.append(line(x_of(int(first)), y - 14, x_of(int(first)), y + 4, INK))
        if int(after) - int(first) >= 4:
            out.append(text(x_of(int(first)) + 3, y, str(word), size=12))
    for week in range(0, WEEKS + 1, 4):
        out.append(text(x_of(week), y + 24, str(week), "middle"))
    out.append(text(LEFT - 8, y, "said", "end"))
    out.append(text(LEFT - 8, y + 24, "week", "end"))
    return out


def turns(truth: list[dict[str, str]]) -> list[str]:
    out = []
    for before, after in zip(truth, truth[1:]):
        if before["segment"] != after["segment"]:
            x = x_of(int(after["week"]))
            out += [line(x, TOP, x, TOP + POINTS_HIGH + GAP + CHANCES_HIGH, INK, 1.5, "5 4"),
                    text(x + 4, TOP + 14, f"in truth: {after['segment']}", size=12)]
    return out


def main() -> None:
    roster, answers, athlete, exercise, out = Path(sys.argv[1]), Path(sys.argv[2]), *sys.argv[3:6]
    weeks = rows_of(answers / "weeks.csv", athlete, exercise)
    body = points_panel(rows_of(roster / "log.csv", athlete, exercise)) + chances_panel(weeks) + words_row(weeks)
    body += turns(rows_of(roster / "truth.csv", athlete, exercise))
    high = TOP + POINTS_HIGH + GAP + CHANCES_HIGH + 56
    Path(out).write_text(
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{WIDTH}" height="{high}" viewBox="0 0 {WIDTH} {high}">'
        f'<rect width="{WIDTH}" height="{high}" fill="white"/>' + "".join(body) + "</svg>\n", encoding="utf-8")


if __name__ == "__main__":
    main()
