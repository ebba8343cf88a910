"""Every figure of the table by name, such as "verdicts.novice.false_alarms" or "forecasts.all.cover80"."""

from __future__ import annotations

import math

import numpy as np

from judged import Forecasts, Judged
from measures import (
    ANSWERS, CANT_TELL, PROGRESSING, SLIPPING, STALLED, STATE_OF_ANSWER, answers_from, balanced, by_level, coverage,
    delays, false_alarms, flickering, meaning, random_pit, share, states_from,
)
from roster_settings import LEVELS
from roster_truth import (
    CANNOT_TELL, FLAT, Onset, below_standard_weeks, clean_weeks, drifting_weeks, onsets_of, true_progress,
)

# Of not rising, by level: tuned on the roster of seed 22 to one false alarm a year of progress.
THRESHOLDS = (0.625, 0.64, 0.525)
PLAIN = (1.0, 1.0, 1.0)
# Of rising, flat, falling: tuned on the same roster for balanced accuracy.
CLASS_WEIGHTS = (1.0, 2.0, 12.0)
FOUND_BY = (4, 6, 8, 12)
STATES = ("progress", "flat", "regress", "cannot_tell")
REP_BANDS = ((0, 8), (8, 12), (12, 18), (18, math.inf))
LEVELS_OF_COVER = (50, 80, 95)
PIT_SEED = 3
DATED_AFTER = 9  # weeks into a stall, at which its estimated start is compared with the true one

Values = dict[str, float]


def all_scores(judged: Judged) -> Values:
    """All figures, in the order in which they are printed."""
    return {
        **_named("roster", _roster_scores(judged)),
        **_named("probabilities", _probability_scores(judged)),
        **_named("verdicts", _verdict_scores(judged)),
        **_named("forecasts", _forecast_scores(judged)),
    }


def _named(prefix: str, values: Values) -> Values:
    return {f"{prefix}.{name}": value for name, value in values.items()}


def _roster_scores(judged: Judged) -> Values:
    progress = true_progress(judged.truth, judged.gates.few)
    onsets = onsets_of(judged.truth)
    values: Values = {
        "lines": len(judged.truth.level),
        "scored_weeks": int(((judged.truth.state >= 0) & ~judged.truth.few).sum()),
        "progress_years": progress.sum() / 52,
        "onsets": len(onsets),
    }
    for number, level in enumerate(LEVELS):
        values[f"{level}.onsets"] = sum(1 for onset in onsets if onset.level == number)
    return values


def _of_level(judged: Judged, level: int) -> np.ndarray:
    """By line and week."""
    return np.broadcast_to((judged.truth.level == level)[:, None], judged.truth.state.shape)


def _alarm_scores(judged: Judged, alarm: np.ndarray) -> Values:
    progress = true_progress(judged.truth, judged.gates.few)
    onsets = onsets_of(judged.truth)

    def of_level(level: int) -> Values:
        false = false_alarms(alarm, progress & _of_level(judged, level))
        found = delays(alarm, [onset for onset in onsets if onset.level == level])
        return {
            "false_alarms": false.a_year,
            "false_share": false.share,
            "median_delay": found.median(),
            **{f"found_by_{week}": found.found_by(week) for week in FOUND_BY},
            "already_at_onset": found.already,
        }

    return by_level(of_level, LEVELS)


def _balance_scores(judged: Judged, state: np.ndarray, suffix: str = "") -> Values:
    everything = np.ones(state.shape, bool)
    pooled = balanced(state, judged.truth, everything)
    values = {f"bal3{suffix}": pooled[0], f"bal4{suffix}": pooled[1]}
    for number, level in enumerate(LEVELS):
        three, four = balanced(state, judged.truth, _of_level(judged, number))
        values.update({f"{level}.bal3{suffix}": three, f"{level}.bal4{suffix}": four})
    return values


def _answer_scores(judged: Judged, answers: np.ndarray) -> Values:
    """What the answers mean, and what becomes of weeks below the standard."""
    values: Values = {}
    low = below_standard_weeks(judged.truth)
    marked = judged.truth.marked > 0.5
    hardly = judged.truth.marked <= 0.5
    for name, lines in (("marked", marked), ("hardly_marked", hardly)):
        weeks = low & lines[:, None]
        values[f"{name}.weeks"] = int(weeks.sum())
        values[f"{name}.cant_tell"] = share(answers == CANT_TELL, weeks)
        values[f"{name}.progressing"] = share(answers == PROGRESSING, weeks)
    drifting = drifting_weeks(judged.truth)
    values["effort_drifting.cant_tell"] = share(answers == CANT_TELL, drifting)
    values["effort_drifting.progressing"] = share(answers == PROGRESSING, drifting)
    values["flicker"] = share(flickering(answers), answers >= 0)
    values.update(by_level(lambda level: _meanings(judged, answers, level), LEVELS))
    return values


def _meanings(judged: Judged, answers: np.ndarray, level: int) -> Values:
    chosen = _of_level(judged, level)
    values = {"flicker": share(flickering(answers), chosen & (answers >= 0))}
    for number, name in enumerate(ANSWERS):
        what = meaning(answers, number, judged.truth, chosen)
        values[f"{name}.share"] = what.share
        values.update({f"{name}.if_{state}": true for state, true in zip(STATES, what.truth)})
    return values


def _probability_scores(judged: Judged) -> Values:
    gates, probabilities = judged.gates, judged.answers.probabilities
    threshold = np.array(THRESHOLDS)[judged.truth.level][:, None]
    alarm = (probabilities[..., 1] + probabilities[..., 2] > threshold) & ~gates.few
    state = states_from(probabilities, PLAIN, gates.few | gates.technique)
    state[gates.effort & (state == FLAT)] = CANNOT_TELL
    weighted = states_from(probabilities, CLASS_WEIGHTS, gates.few | gates.technique)
    answers = answers_from(probabilities, threshold, gates.few, gates.technique, gates.effort)
    begun = judged.answers.verdict >= 0
    return {
        **_alarm_scores(judged, alarm),
        **_balance_scores(judged, state),
        **_balance_scores(judged, weighted, "_weighted"),
        "clean_gated": share(gates.technique, clean_weeks(judged.truth)),
        **_answer_scores(judged, np.where(begun, answers, -1)),
        **_dating_scores(judged, alarm),
    }


def _verdict_scores(judged: Judged) -> Values:
    verdict = judged.answers.verdict
    alarm = (verdict == STALLED) | (verdict == SLIPPING)
    state = np.where(verdict >= 0, STATE_OF_ANSWER[verdict], CANNOT_TELL)
    told = clean_weeks(judged.truth) & ~judged.gates.few
    return {
        **_alarm_scores(judged, alarm),
        **_balance_scores(judged, state),
        "clean_gated": share(verdict == CANT_TELL, told),
        **_answer_scores(judged, verdict),
        **{f"cant_tell_because.{reason or 'unnamed'}": count for reason, count in sorted(judged.reasons.items())},
    }


def _dating_scores(judged: Judged, alarm: np.ndarray) -> Values:
    """How many weeks too old, or too young (negative), a stall is thought that is found after DATED_AFTER weeks."""
    errors = by_level(lambda level: _dating_errors(judged, alarm, level), LEVELS)
    return {f"dating.{name}": value for name, value in errors.items()}


def _dating_errors(judged: Judged, alarm: np.ndarray, level: int) -> Values:
    def counted(onset: Onset) -> bool:
        return (onset.level == level and onset.end - onset.start > DATED_AFTER
                and bool(alarm[onset.line, onset.start + DATED_AFTER]))

    ages = [judged.answers.stall_weeks[onset.line, onset.start + DATED_AFTER]
            for onset in onsets_of(judged.truth) if counted(onset)]
    errors = np.array([age - DATED_AFTER for age in ages if not math.isnan(age)])
    quartiles = np.quantile(errors, [0.25, 0.5, 0.75]) if len(errors) else [math.nan] * 3
    return {"count": len(errors), **dict(zip(("low", "median", "high"), map(float, quartiles)))}


def judged_forecasts(judged: Judged) -> Forecasts:
    """The forecasts that count: four weeks and more into a line, the standard kept, sessions enough."""
    forecasts, truth = judged.forecasts, judged.truth
    at = forecasts.line, forecasts.week
    return forecasts.only((truth.since[at] >= 4) & ~truth.below_standard[at] & ~judged.gates.few[at])


def _forecast_scores(judged: Judged) -> Values:
    forecasts = judged_forecasts(judged)
    pit = random_pit(forecasts["lower_pit"], forecasts["upper_pit"], np.random.default_rng(PIT_SEED))
    level = judged.truth.level[forecasts.line]
    groups = {"all": np.ones(len(pit), bool)}
    groups.update({name: level == number for number, name in enumerate(LEVELS)})
    for low, high in REP_BANDS:
        name = f"{low}-{high:g}" if math.isfinite(high) else f"{low}+"
        groups[name] = (forecasts["predicted_reps"] >= low) & (forecasts["predicted_reps"] < high)
    values: Values = {}
    for name, rows in groups.items():
        values.update(_named(name, _forecast_group(forecasts.only(rows), pit[rows])))
    return values


def _forecast_group(forecasts: Forecasts, pit: np.ndarray) -> Values:
    if not len(pit):
        return {"count": 0}
    error = np.abs(forecasts["actual_reps"] - forecasts["predicted_reps"])
    return {
        "count": len(pit),
        **{f"cover{level}": coverage(pit, level / 100) for level in LEVELS_OF_COVER},
        "pit_mean": float(pit.mean()),
        "mean_error": float(error.mean()),
        "half_width80": float(np.median(forecasts["q90"] - forecasts["q10"]) / 2),
    }
