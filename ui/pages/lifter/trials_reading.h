// Everything the Trials view shows of a lifter: the work of its background job.
//
//   jobs.run(this, title, [=](const Progress& p) { return readShownTrials(path, athlete, today, p); }, show);
//
// Running trials come first, then those that ended, the newest on top. Earlier trials of the same question are those that have ended:
// what still runs stays hidden. Reads through a connection of its own. Fails with Cancelled, NotFound, Storage.
#pragma once

#include "core/base/progress.h"
#include "core/book/trial_reading.h"
#include "core/trials/earlier_trials.h"
#include "core/trials/roster_wins.h"

namespace steelyard {

struct ShownTrial {
    Row<Trial> row;
    TrialAnalysis analysis;
    EarlierTrials earlier;

    [[nodiscard]] const Trial& trial() const { return row.value; }
};

struct TrialsReading {
    LifterTrials record;
    std::vector<ShownTrial> trials;
};

[[nodiscard]] Result<TrialsReading> readShownTrials(const QString& bookPath, Id<Athlete> athlete, QDate today,
                                                    const Progress& progress);

// Of one factor, over every lifter's ended trials.
struct FactorWins {
    TrialFactor factor = TrialFactor::Grip;
    std::vector<ArmWins> wins;
};
[[nodiscard]] Result<std::vector<FactorWins>> readRosterWins(const QString& bookPath, QDate today,
                                                             const Progress& progress);

}  // namespace steelyard
