#include "core/planning/trial_days.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <ranges>

namespace steelyard {
namespace {

struct TrialDaysText {
    Q_DECLARE_TR_FUNCTIONS(TrialDaysText)
};

constexpr int kFurthestDays = 366;  // that a session looks ahead for a day

tl::unexpected<Error> refuseTrialDay(const QString& why)
{
    return fail(ErrorCode::Invalid, why);
}

Result<void> needRunning(const Trial& trial, std::size_t session)
{
    if (session >= trial.days.size()) return refuseTrialDay(TrialDaysText::tr("The trial has no such session."));
    if (trial.ending) return refuseTrialDay(TrialDaysText::tr("The trial has ended: its sessions stay as they are."));
    return {};
}

QDate nextTrialDay(const TrainingCalendar& calendar, QDate from)
{
    for (int days = 0; days < kFurthestDays; ++days)
        if (isTrialDay(calendar, from.addDays(days))) return from.addDays(days);
    return {};
}

}  // namespace

bool isTrialDay(const TrainingCalendar& calendar, QDate date)
{
    const auto isWeekday =
        calendar.weekdays.empty() || std::ranges::find(calendar.weekdays, date.dayOfWeek()) != calendar.weekdays.end();
    for (const Row<Block>& row : std::views::reverse(calendar.blocks)) {
        const auto at = weekOfBlock(row.value, date);
        if (!at) continue;
        const PlannedWeek& week = row.value.weeks[*at];
        if (isDayOff(row.value, date) || week.kind != WeekKind::Normal) return false;
        return isWeekday || std::ranges::find(week.days, date, &PlannedDay::date) != week.days.end();
    }
    return isWeekday;
}

Result<Trial> moveTrialSession(Trial trial, std::size_t session, QDate to, const TrainingCalendar& calendar)
{
    STEELYARD_CHECK(needRunning(trial, session));
    if (!to.isValid()) return refuseTrialDay(TrialDaysText::tr("That is no day."));
    if (session > 0 && trial.days[session - 1].date.daysTo(to) < trial.daysBetween)
        return refuseTrialDay(
            TrialDaysText::tr("At least %n day(s) lie between two sessions of this trial; the order "
                              "they were drawn in stays.",
                              nullptr, trial.daysBetween));
    trial.days[session].date = to;
    for (std::size_t i = session + 1; i < trial.days.size(); ++i) {
        const QDate earliest = trial.days[i - 1].date.addDays(trial.daysBetween);
        if (trial.days[i].date >= earliest) break;
        trial.days[i].date = nextTrialDay(calendar, earliest);
        if (!trial.days[i].date.isValid())
            return refuseTrialDay(TrialDaysText::tr("There is no training day for the sessions that remain."));
    }
    return trial;
}

Result<Trial> markTrialSessionMissed(Trial trial, std::size_t session, bool missed)
{
    STEELYARD_CHECK(needRunning(trial, session));
    trial.days[session].missed = missed;
    if (missed) trial.days[session].armDone.reset();
    return trial;
}

Result<Trial> markTrialSessionDone(Trial trial, std::size_t session, std::optional<std::size_t> arm)
{
    STEELYARD_CHECK(needRunning(trial, session));
    if (arm && *arm >= trial.arms.size()) return refuseTrialDay(TrialDaysText::tr("The trial has no such arm."));
    trial.days[session].armDone = arm;
    if (arm) trial.days[session].missed = false;
    return trial;
}

Result<Trial> noteTrialSession(Trial trial, std::size_t session, const QString& note)
{
    STEELYARD_CHECK(needRunning(trial, session));
    trial.days[session].note = note.trimmed();
    return trial;
}

}  // namespace steelyard
