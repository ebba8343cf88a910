#include "core/planning/propose_trial.h"

#include "core/planning/usual_weekdays.h"
#include "core/trials/arm_differences.h"
#include "core/trials/trial_schedule.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <set>

namespace steelyard {
namespace {

struct ProposeTrialText {
    Q_DECLARE_TR_FUNCTIONS(ProposeTrialText)
};

tl::unexpected<Error> refuseTrialWish(const QString& why)
{
    return fail(ErrorCode::Invalid, why);
}

// Days on which no session could be compared.
std::vector<DaysOff> daysWithoutTrial(const AthleteLog& log)
{
    std::vector<DaysOff> days;
    for (const Row<Block>& row : log.blocks) {
        days.insert(days.end(), row.value.daysOff.begin(), row.value.daysOff.end());
        for (std::size_t week = 0; week < row.value.weeks.size(); ++week)
            if (row.value.weeks[week].kind != WeekKind::Normal)
                days.push_back({firstDayOf(row.value, week), firstDayOf(row.value, week + 1).addDays(-1), {}});
    }
    return days;
}

}  // namespace

std::vector<int> trialWeekdays(const AthleteLog& log, const Library& library, const Trial& trial, QDate from)
{
    std::set<int> weekdays;
    for (const Row<Block>& row : log.blocks)
        for (const PlannedWeek& week : row.value.weeks)
            for (const PlannedDay& day : week.days) {
                if (day.date < from || week.kind != WeekKind::Normal) continue;
                const auto isOfIt = [&](const Slot& slot) { return isOfTrial(trial, library, slot.variant); };
                if (std::ranges::any_of(day.slotList, isOfIt)) weekdays.insert(day.date.dayOfWeek());
            }
    if (weekdays.empty()) return usualWeekdays(log, from);
    return {weekdays.begin(), weekdays.end()};
}

const Row<Trial>* runningTrialOf(const AthleteLog& log, const Library& library, const Trial& trial, QDate today)
{
    const auto runs = std::ranges::find_if(log.trials, [&](const Row<Trial>& row) {
        const bool ended = row.value.ending && row.value.ending->date <= today;
        return !ended && std::ranges::any_of(row.value.arms, [&](const TrialArm& arm) {
            return isOfTrial(trial, library, arm.variant);
        });
    });
    return runs == log.trials.end() ? nullptr : &*runs;
}

Result<ProposedTrial> proposeTrial(const AthleteLog& log, const Library& library, const TrialWish& wish)
{
    ProposedTrial made{wish.trial, {}, wish.weekdays};
    if (const QString refusal = refusalOf(made.trial, library); !refusal.isEmpty()) return refuseTrialWish(refusal);
    if (const auto* runs = runningTrialOf(log, library, made.trial, wish.today))
        return refuseTrialWish(ProposeTrialText::tr("The trial “%1” runs on this exercise already. End it first.")
                                   .arg(runs->value.question));
    if (made.weekdays.empty()) made.weekdays = trialWeekdays(log, library, made.trial, wish.from);
    if (made.weekdays.empty())
        return refuseTrialWish(ProposeTrialText::tr(
            "Nothing says on which weekdays this lifter trains. Say them, or plan a block first."));
    STEELYARD_TRY(
        made.trial.days,
        drawDays(made.trial,
                 {.from = wish.from, .weekdays = made.weekdays, .daysOff = daysWithoutTrial(log), .last = {}}));
    if (const Problems problems = validate(made.trial); !problems.empty())
        return fail(ErrorCode::Invalid, problems.front().text, problems.front().field);
    made.laid = layTrial({log.blocks, library, made.weekdays, wish.today}, made.trial);
    return made;
}

}  // namespace steelyard
