// The one answer of a trial, in a word, a sentence for the coach and one for the lifter.
//
//   const TrialVerdict verdict = trialVerdict(trial, record, armNames(trial, library), wording);
//   verdict.word == TrialWord::Prefer && verdict.arm == 1
//
// In this order: an arm that hurts is out (discomfort_veto.h); with fewer than four whole blocks, or values in too few of them,
// or more than a quarter of the sessions done with another arm than drawn, the trial says nothing; then the rule of
// trial_decision.h on the weighed answer, after the last whole block. "Prefer" also wants both ways of counting (as done, as
// drawn) to point to the same arm. Whatever was done differently, looked at early, or left out is said beside it.
//
// Whole blocks are those whose last day is past. Units: points of the weighed answer, 0-10. Pure; no failures.
#pragma once

#include "core/trials/arm_effects.h"
#include "core/trials/discomfort_veto.h"
#include "core/trials/trial_decision.h"

namespace steelyard {

enum class TrialWord {
    Prefer,
    NoClearDifference,
    NeedsMore,
    Discomfort,  // at most one arm is left
    NothingYet,  // too little, or not done as drawn
};

struct TrialVerdict {
    TrialWord word = TrialWord::NothingYet;
    // too_few_blocks, too_few_values, one_arm_only, all_equal, order_not_kept, ways_disagree, prefer, equal, futile, undecided,
    // go_on, discomfort, nothing_weighs
    QString reason;
    std::optional<std::size_t> arm;   // Prefer: that one
    std::vector<VetoedArm> out;       // by discomfort; also with other words, when arms are left
    std::optional<int> moreSessions;  // NeedsMore: about so many, of all arms together
    QString forCoach;                 // one or two sentences
    QString forLifter;                // one, without numbers of statistics
    std::vector<QString> restsOn;     // sentences: sessions, difference with interval, chance, order test, weights
    QString looks;                    // about peeks; empty when nobody looked
    std::vector<QString> deviations;  // trial_record.h; empty when all went as drawn
    QString weights;                  // "tension 4, target first 3, …", and that they are the coach's
    int wholeBlocks = 0;
    double threshold = 0;  // of "prefer"
    LookFinding look;      // meaningful from kFirstLook whole blocks on
    TrialEffects done;     // of the whole blocks
    TrialEffects drawn;
};

[[nodiscard]] TrialVerdict trialVerdict(const Trial&, const TrialRecord&, const std::vector<QString>& armNames,
                                        const Wording& = {});
// "prefer", in a word or two for people.
[[nodiscard]] QString trialWordText(TrialWord);
// Blocks all of whose days are past on the record's day; of an ended trial, before its end.
[[nodiscard]] int wholeBlocks(const Trial&, const TrialRecord&);

template <>
struct EnumText<TrialWord> {
    static constexpr auto table =
        std::to_array<EnumKey<TrialWord>>({{TrialWord::Prefer, "prefer"},
                                           {TrialWord::NoClearDifference, "no_clear_difference"},
                                           {TrialWord::NeedsMore, "needs_more"},
                                           {TrialWord::Discomfort, "discomfort"},
                                           {TrialWord::NothingYet, "nothing_yet"}});
};

}  // namespace steelyard
