// Where a trial stands, without a word about its results: what the page shows while it runs.
//
//   const TrialStanding standing = trialStanding(trial, record, today);
//   standing.next->arm            // of the next session; absent when all are over
//
// Discomfort is the exception and is always shown. Pure; no failures.
#pragma once

#include "core/trials/discomfort_veto.h"

namespace steelyard {

struct ArmStanding {
    int done = 0;     // counting sessions
    int missed = 0;   // drawn for it, past, and not done
    int toCome = 0;   // drawn for it, not yet due
    int gotUsed = 0;  // sessions of block 0 done
    friend bool operator==(const ArmStanding&, const ArmStanding&) = default;
};

// A session that was done but lacks an outcome that the trial asks for.
struct MissingRating {
    std::size_t day = 0;  // place in Trial::days
    QDate date;
    QString key;
    friend bool operator==(const MissingRating&, const MissingRating&) = default;
};

struct TrialStanding {
    std::vector<ArmStanding> arms;       // by place
    std::vector<MissingRating> missing;  // with a weight above 0, and can still be asked for; by date
    std::optional<TrialDay> next;  // the first that is neither done nor missed; a late one may lie a few days back
    int wholeBlocks = 0;
    int sessionsToCome = 0;
    std::vector<VetoedArm> out;
    bool finished = false;  // ended, or its last day is past
};

[[nodiscard]] TrialStanding trialStanding(const Trial&, const TrialRecord&, QDate today);

}  // namespace steelyard
