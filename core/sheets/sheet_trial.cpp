#include "core/sheets/sheet_trial.h"

#include "core/trials/arm_differences.h"

#include <algorithm>

namespace steelyard {
namespace {

bool isLiftOf(const TrialArm& arm, const LiftLine& lift)
{
    return arm.variant == lift.variant && arm.grip == lift.grip && arm.standard == lift.standard;
}

SheetTrial sheetTrial(const TrialSession& session, std::size_t arm, const Library& library)
{
    const Trial& trial = session.trial->value;
    SheetTrial made;
    made.question = trial.question;
    made.arm = arm;
    const auto names = armNames(trial, library);
    made.armName = names[arm];
    if (arm != session.day->arm) {
        made.drawn = session.day->arm;
        made.drawnName = names[session.day->arm];
    }
    made.counts = session.day->block > 0;
    made.session = static_cast<int>(session.day - trial.days.data()) + 1;
    made.sessions = static_cast<int>(trial.days.size());
    made.loweringSeconds = trial.arms[arm].loweringSeconds;
    for (const TrialOutcome& outcome : trial.outcomes) made.asked.push_back(outcome.key);
    return made;
}

}  // namespace

std::vector<TrialSession> trialSessionsOn(const AthleteLog& log, QDate date)
{
    std::vector<TrialSession> sessions;
    for (const Row<Trial>& row : log.trials) {
        if (row.value.ending && row.value.ending->date <= date) continue;
        const TrialDay* day = dayOfTrial(row.value, date);
        if (day && !day->missed && day->arm < row.value.arms.size()) sessions.push_back({&row, day});
    }
    return sessions;
}

std::optional<SheetTrial> sheetTrialOf(const AthleteLog& log, const Library& library, const LiftLine& lift, QDate date)
{
    for (const TrialSession& session : trialSessionsOn(log, date)) {
        const auto& arms = session.trial->value.arms;
        if (isLiftOf(arms[session.day->arm], lift)) return sheetTrial(session, session.day->arm, library);
        const auto other = std::ranges::find_if(arms, [&](const TrialArm& arm) { return isLiftOf(arm, lift); });
        if (other != arms.end()) return sheetTrial(session, static_cast<std::size_t>(other - arms.begin()), library);
    }
    return std::nullopt;
}

}  // namespace steelyard
