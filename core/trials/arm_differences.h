// In what the arms of a trial differ, and whether that makes a fair comparison.
//
//   const auto found = armDifferences(trial, library);       // {ArmDifference::Grip}
//   refusalOf(trial, library)                                // empty: fine; else a sentence for the coach
//   armNames(trial, library)                                 // {"supinated", "neutral"}
//
// When two things differ at once, a difference in the outcome can't be put down to either: such a trial needs a reason
// (Trial::whyMoreThanOne), and a reason doesn't make it answer which of the two it was. Positions, paths and texts are compared
// as written, without case. A variant that differs by name alone is another variant; by implement, position or path it differs
// in that.
//
// Pure; no failures. Ids that the library doesn't have count as different, each from each.
#pragma once

#include "core/domain/trial.h"

namespace steelyard {

enum class ArmDifference { Exercise, Variant, Implement, Position, Path, Grip, Standard, RepBand, Lowering };

// Each once, in the order above.
[[nodiscard]] std::vector<ArmDifference> armDifferences(const Trial&, const Library&);
// The same of two arms.
[[nodiscard]] std::vector<ArmDifference> armDifferences(const TrialArm&, const TrialArm&, const Library&);
// For people: "grip", "rep band".
[[nodiscard]] QString differenceName(ArmDifference);
[[nodiscard]] QString factorName(TrialFactor);
[[nodiscard]] ArmDifference differenceOf(TrialFactor);

// Empty when the arms make a fair comparison: every two differ, all in the factor alone (or in more, with a reason), never in
// the exercise. The first sentence that stands in the way otherwise.
[[nodiscard]] QString refusalOf(const Trial&, const Library&);

// What each arm is called: by what the trial is about ("supinated", "8 to 12 repetitions", "lowered in 4 s"), by everything that
// differs where that isn't enough, by a letter where nothing does. By place in Trial::arms, each different.
[[nodiscard]] std::vector<QString> armNames(const Trial&, const Library&);

template <>
struct EnumText<ArmDifference> {
    static constexpr auto table = std::to_array<EnumKey<ArmDifference>>({{ArmDifference::Exercise, "exercise"},
                                                                         {ArmDifference::Variant, "variant"},
                                                                         {ArmDifference::Implement, "implement"},
                                                                         {ArmDifference::Position, "position"},
                                                                         {ArmDifference::Path, "path"},
                                                                         {ArmDifference::Grip, "grip"},
                                                                         {ArmDifference::Standard, "standard"},
                                                                         {ArmDifference::RepBand, "rep_band"},
                                                                         {ArmDifference::Lowering, "lowering"}});
};

}  // namespace steelyard
