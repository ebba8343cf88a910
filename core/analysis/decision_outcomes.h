// What happened in the four weeks after each of the coach's decisions, beside the four weeks before. It says what followed, not
// what the decision brought about: other reasons are as likely.
//
//   for (const DecisionOutcome& one : decisionOutcomes(log, readings, today)) one.after->kg - one.before->kg
//
// Capacity is what was known right after the last session up to the decision, and up to the end of the four weeks: nothing
// later went into either. Absent where nothing was known or nothing was trained. Days count from the day after the decision
// to `until`, which is included. The log outlives the answer. Pure; no failures.
#pragma once

#include "core/analysis/line_reading.h"

#include <span>

namespace steelyard {

inline constexpr int kOutcomeDays = 28;

// Of the line, or of all lines when the decision is about the lifter.
struct OutcomeSpell {
    int sessions = 0;
    std::optional<double> offShare;      // of the repetitions in watched sessions
    std::optional<int> worstDiscomfort;  // of ten, any joint; absent: never rated
    friend bool operator==(const OutcomeSpell&, const OutcomeSpell&) = default;
};

struct DecisionOutcome {
    const Row<Decision>* decision = nullptr;  // never null
    std::optional<std::size_t> line;          // index into the log's lines; absent: the lifter, or a line without sets
    QDate until;                              // last day that counts
    bool isOver = false;                      // the four weeks have passed
    OutcomeSpell before;
    OutcomeSpell after;
    std::optional<TrendPoint> capacityBefore;
    std::optional<TrendPoint> capacityAfter;
};

// Newest first; decisions about no flag (kLookedAtRule) are left out. `readings` belong to log.lines, in their order, with
// their course.
[[nodiscard]] std::vector<DecisionOutcome> decisionOutcomes(const AthleteLog& log,
                                                            std::span<const LineReading> readings, QDate asOf);

}  // namespace steelyard
