// What the arms of a trial did to each outcome, with the uncertainty.
//
//   const TrialEffects effects = trialEffects(trial, record, ArmTaken::Done);
//   effects.answer->differences[0].mean            // of the weighed answer, arm 1 less arm 0, points of 10
//   effects.outcome(u"pump")->chanceBest[1]
//
// The weighed answer puts every session's outcomes on 0-10 (yes counts 10, discomfort counts against), takes their weighted
// mean, and asks the same regression of it. Outcomes rated in fewer than half of the sessions are left out of it for every
// session alike, and a session that lacks one of the others has no answer; both are listed.
//
// Ratings and performance: arm_regression.h, priors by the outcome's usual spread; target_first: arm_shares.h. Intervals hold
// the truth with 90 %. The randomisation test goes by the draw, whatever was done, so it stands with ArmTaken::Drawn alone.
//
// Units: those of the outcomes. Pure. Failures: what can't be said for want of values is absent or empty; no NaN.
#pragma once

#include "core/trials/arm_regression.h"
#include "core/trials/randomisation_test.h"
#include "core/trials/trial_record.h"

namespace steelyard {

enum class ArmTaken {
    Done,   // sessions count for the arm that was trained
    Drawn,  // for the arm that was drawn: kept free of the reasons for which another was trained
};

struct ArmLevel {
    int sessions = 0;            // with a value
    std::optional<double> mean;  // plain, of the values; absent without any
    // Of the model, in the middle of the trial; absent without any value of this arm.
    std::optional<double> level;
    std::optional<double> low90;
    std::optional<double> high90;
    friend bool operator==(const ArmLevel&, const ArmLevel&) = default;
};

// arm less over, in the outcome's unit.
struct EstimatedDifference {
    std::size_t arm = 1;
    std::size_t over = 0;
    double mean = 0;
    double low90 = 0;
    double high90 = 0;
    double chanceBetter = 0.5;  // that `arm` is the better one, by the outcome's direction
    friend bool operator==(const EstimatedDifference&, const EstimatedDifference&) = default;
};

struct OutcomeEffects {
    QString key;                                    // empty: the weighed answer
    std::vector<ArmLevel> arms;                     // by place in Trial::arms
    std::vector<EstimatedDifference> differences;   // of every two arms with values, arm > over
    std::vector<double> chanceBest;                 // by arm, 0 without values; empty unless two arms have some
    std::optional<double> spread;                   // SD of sessions within an arm; absent for yes and no
    std::optional<double> trend;                    // from the first to the last session; absent for yes and no
    std::optional<RandomisationAnswer> byLot;       // with ArmTaken::Drawn
    std::optional<RandomisationAnswer> byLotRanks;  // the same on ranks, for ordinal outcomes
    std::optional<ArmPosterior>
        posterior;  // of the regression on values turned such that more is better; absent for yes and no

    [[nodiscard]] const EstimatedDifference* difference(std::size_t arm, std::size_t over) const;
};

struct TrialEffects {
    ArmTaken taken = ArmTaken::Done;
    std::optional<OutcomeEffects> answer;  // absent: no outcome with a weight has values for two arms
    std::vector<OutcomeEffects> outcomes;  // those of the trial that this program knows, in its order
    std::vector<QString> leftOut;          // keys with a weight, rated too seldom to be part of the answer
    int sessionsWithoutAnswer = 0;         // done, but a weighed outcome is missing

    [[nodiscard]] const OutcomeEffects* outcome(QStringView key) const;
};

// Only sessions in blocks above 0 count, up to and including `lastBlock` (absent: all).
[[nodiscard]] TrialEffects trialEffects(const Trial&, const TrialRecord&, ArmTaken,
                                        std::optional<int> lastBlock = std::nullopt);
// Its answer alone, without the test by lot.
[[nodiscard]] std::optional<OutcomeEffects> weighedAnswer(const Trial&, const TrialRecord&, ArmTaken,
                                                          std::optional<int> lastBlock = std::nullopt);
// The weighed answer of each session, by place in the record; absent where an outcome that weighs is missing.
[[nodiscard]] std::vector<std::optional<double>> sessionAnswers(const Trial&, const TrialRecord&);

}  // namespace steelyard
