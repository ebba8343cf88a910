// What earlier trials of the same question said of this athlete, and all of them together.
//
//   const EarlierTrials earlier = earlierTrials(trial, verdict, {{firstTrial, firstVerdict}});
//   earlier.pairs[0].together->mean
//
// The same question: the same factor, and the arms of a pair are those of the other trial in variant, grip, standard, band and
// lowering; and the same weights, or the differences are of different things. Trials are pooled by inverse variance when they
// don't contradict each other (Cochran's Q at 0.10); otherwise both are shown and nothing is pooled.
//
// Units: points of the weighed answer, 0-10. Pure; no failures. Source: Cochran 1954, Biometrics 10:101-129 (from memory).
#pragma once

#include "core/trials/trial_verdict.h"

namespace steelyard {

struct JudgedTrial {
    Trial trial;
    TrialVerdict verdict;
};

struct EarlierDifference {
    QDate designedOn;
    QString question;
    double mean = 0;  // arm less over
    double low90 = 0;
    double high90 = 0;
};

struct EarlierPair {
    std::size_t arm = 1;  // places in this trial
    std::size_t over = 0;
    std::vector<EarlierDifference> trials;        // oldest first, this one last
    bool alike = true;                            // they don't contradict each other
    std::optional<double> heterogeneityP;         // of Cochran's Q
    std::optional<EstimatedDifference> together;  // when alike
};

struct EarlierTrials {
    std::vector<EarlierPair> pairs;  // only those with an earlier trial
    QString sentence;                // for the coach; empty without any
};

// `earlier` may hold trials of any kind of this athlete; those that don't fit are passed over, as is this one itself.
[[nodiscard]] EarlierTrials earlierTrials(const Trial&, const TrialVerdict&, const std::vector<JudgedTrial>& earlier,
                                          const std::vector<QString>& armNames, const Wording& = {});

}  // namespace steelyard
