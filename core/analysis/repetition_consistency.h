// How alike the repetitions of a lifter are: in travel, in lowering time and in rhythm (lifting and lowering together).
//
//   const auto like = likeSets(record, all, set);                   // same line, same kind of set, load within a tenth
//   const auto travel = repetitionConsistency(like, RepetitionQuantity::Travel);
//   travel->typicalError                                            // mm: how far two repetitions lie apart by chance
//   travel->variation                                               // 0.03: the same as a share
//
// Every repetition is held against the next one of its set, so that what differs between days, or slides through a set, is no
// error. The typical error is that of the differences (typical_error.h); the coefficient of variation is the typical error of
// the logarithms, exp(e) - 1, which is the same at every size (Hopkins 2000, Sports Med 30:1-15). Repetitions that failed
// part-way, and those without the value, pair with nothing.
// Units: millimetres or seconds, shares. Absent when there are fewer than kFewestPairs pairs: of fewer the error itself is known
// to hardly better than a half (its own error is 1 / sqrt(2 (n - 1)); Taylor 1997, An Introduction to Error Analysis, app. E).
#pragma once

#include "core/analysis/athlete_log.h"
#include "core/domain/repetition.h"

namespace steelyard {

enum class RepetitionQuantity { Travel, Lowering, Rhythm };

inline constexpr int kFewestPairs = 4;
inline constexpr double kLikeLoadShare = 0.1;

struct RepetitionConsistency {
    double median = 0;
    double typicalError = 0;
    double variation = 0;
    double realChange = 0;  // beyond it in one of ten pairs of repetitions by chance alone
    int pairs = 0;
    int sets = 0;  // that have a pair
    friend bool operator==(const RepetitionConsistency&, const RepetitionConsistency&) = default;
};

// Absent when this repetition doesn't tell, or tells nothing above zero.
[[nodiscard]] std::optional<double> valueOf(const Repetition&, RepetitionQuantity);
[[nodiscard]] std::optional<RepetitionConsistency> repetitionConsistency(std::span<const std::vector<Repetition>> sets,
                                                                         RepetitionQuantity quantity);

// The sets of the line that can be held against this one, itself among them, oldest first. `all` is by set id.
[[nodiscard]] std::vector<std::vector<Repetition>> likeSets(const LineRecord& record,
                                                            std::span<const SetRepetitions> all, Id<SetEntry> set);
// Of one set; nullptr: none were recorded.
[[nodiscard]] const std::vector<Repetition>* repetitionsOf(std::span<const SetRepetitions> all, Id<SetEntry> set);
// Of a whole line, oldest set first.
[[nodiscard]] std::vector<std::vector<Repetition>> lineRepetitions(const LineRecord& record,
                                                                   std::span<const SetRepetitions> all);

}  // namespace steelyard
