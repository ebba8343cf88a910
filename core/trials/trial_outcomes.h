// What a trial looks at, as objects that describe themselves: one entry each in trial_outcomes.cpp.
//
//   for (const OutcomeKind& kind : outcomeKinds()) add(kind.title(), kind.defaultWeight);
//   const OutcomeKind* tension = findOutcome(u"tension");
//   tension->value(source)                       // 7, or absent when nobody asked
//
// Keys, the same for ever: performance, tension, burn, pump, target_first, next_soreness, next_weakness, discomfort.
// The default weights (0.4 tension, 0.3 target first, 0.1 pump, 0.1 burn, 0.1 against discomfort) are arbitrary, and the coach
// changes them before the trial: nobody has shown how much each of these feelings is worth, and pump and burn are weak proxies
// of it. Soreness, weakness and performance are shown and weigh nothing by default; why() says the reason.
//
// Units: ratings 0-10; target_first 1 (the target gave out first) or 0; performance in repetitions above what was expected.
// Invariants: a value is finite and in the scale's range. Failures: none; what nobody noted is absent.
#pragma once

#include "core/analysis/athlete_log.h"
#include "core/analysis/line_reading.h"
#include "core/domain/trial.h"

#include <span>

namespace steelyard {

enum class OutcomeScale {
    Rating,       // 0-10, ordered
    YesNo,        // 0 or 1
    Repetitions,  // any number
};

// What one session of a trial holds.
struct OutcomeSource {
    const Exposure& exposure;
    // How far the first set was from what this line's own record led to expect of it before the session; see trial_record.h.
    std::optional<SessionSurprise> surprise = {};
    // Another session trained the same muscle before the next day's rating, which therefore says nothing of this one.
    bool nextDayClouded = false;
};

struct OutcomeKind {
    QString key;
    OutcomeScale scale = OutcomeScale::Rating;
    bool moreIsBetter = true;
    double defaultWeight = 0;
    // SD of one lifter's sessions around their own level, in the outcome's unit: where the estimate of the noise starts.
    double usualSpread = 1.2;
    std::optional<double> (*value)(const OutcomeSource&) = nullptr;

    [[nodiscard]] QString title() const;     // for people: "Tension in the target"
    [[nodiscard]] QString question() const;  // as the lifter is asked
    [[nodiscard]] QString unit() const;      // for people: "of 10", "share of sessions", "repetitions"
    [[nodiscard]] QString why() const;       // what it is worth, and why it weighs what it does
    // Ratings are ordered, no more: a test that only takes their order stands beside the estimate.
    [[nodiscard]] bool ordinal() const { return scale == OutcomeScale::Rating; }
    // On the 0-10 scale of the weighed answer: yes counts 10; absent for repetitions, which never weigh.
    [[nodiscard]] std::optional<double> outOfTen(double raw) const;
};

[[nodiscard]] std::span<const OutcomeKind> outcomeKinds();
// Null for a key of a newer program.
[[nodiscard]] const OutcomeKind* findOutcome(QStringView key);
// For people; the key itself where it is not known.
[[nodiscard]] QString outcomeTitle(QStringView key);
// Every outcome with its default weight: what a new trial begins with.
[[nodiscard]] std::vector<TrialOutcome> defaultOutcomes();
// Highest rating over the joints; absent when no joint was rated (which is not the same as 0).
[[nodiscard]] std::optional<int> worstDiscomfort(const ExerciseRating&);

}  // namespace steelyard
