#include "core/trials/trial_schedule.h"

#include "core/trials/trial_random.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace steelyard {
namespace {

struct ScheduleText {
    Q_DECLARE_TR_FUNCTIONS(ScheduleText)
};

struct DrawnPlace {
    int block = 0;
    std::size_t arm = 0;
};

// In turns, those that need most sessions last the longest.
std::vector<DrawnPlace> runInPlaces(const Trial& trial)
{
    std::vector<DrawnPlace> places;
    const int most = std::ranges::max(trial.arms, {}, &TrialArm::runIn).runIn;
    for (int turn = 0; turn < most; ++turn)
        for (std::size_t arm = 0; arm < trial.arms.size(); ++arm)
            if (turn < trial.arms[arm].runIn) places.push_back({0, arm});
    return places;
}

std::vector<DrawnPlace> drawnPlaces(const Trial& trial)
{
    std::vector<DrawnPlace> places = runInPlaces(trial);
    TrialRandom random(trial.seed);
    std::vector<std::size_t> order(trial.arms.size());
    for (int block = 1; block <= trial.blocks; ++block) {
        std::iota(order.begin(), order.end(), std::size_t{0});
        random.shuffle(std::span<std::size_t>(order));
        for (const std::size_t arm : order) places.push_back({block, arm});
    }
    return places;
}

class TrialDates {
public:
    TrialDates(const TrialCalendar& calendar, int daysBetween) : m_calendar(&calendar), m_between(daysBetween)
    {
        m_last = calendar.from.addDays(kLongestTrialDays);
        if (calendar.last) m_last = std::min(m_last, *calendar.last);
    }
    // The next day after `before` (if any) that may be trained; invalid when there is none.
    [[nodiscard]] QDate after(QDate before) const
    {
        QDate day = m_calendar->from;
        if (before.isValid()) day = std::max(day, before.addDays(m_between));
        while (day <= m_last && !maybeTrained(day)) day = day.addDays(1);
        return day <= m_last ? day : QDate();
    }

private:
    [[nodiscard]] bool maybeTrained(QDate day) const
    {
        return std::ranges::find(m_calendar->weekdays, day.dayOfWeek()) != m_calendar->weekdays.end()
               && std::ranges::none_of(m_calendar->daysOff,
                                       [&](const DaysOff& off) { return off.first <= day && day <= off.last; });
    }

    const TrialCalendar* m_calendar;
    int m_between;
    QDate m_last;
};

Result<> checkCalendar(const Trial& trial, const TrialCalendar& calendar)
{
    if (trial.arms.size() < kFewestArms || trial.arms.size() > kMostArms || trial.blocks < 1 || trial.daysBetween < 1)
        return fail(ErrorCode::Invalid, ScheduleText::tr("A draw needs two to four arms and at least one block."));
    if (!calendar.from.isValid())
        return fail(ErrorCode::Invalid, ScheduleText::tr("A draw needs the day on which it begins."));
    const bool isWeek = std::ranges::all_of(calendar.weekdays, [](int day) { return day >= 1 && day <= 7; });
    if (calendar.weekdays.empty() || !isWeek)
        return fail(ErrorCode::Invalid, ScheduleText::tr("Choose the days of the week on which the lift is trained."));
    return {};
}

}  // namespace

Result<std::vector<TrialDay>> moveDays(const Trial& trial, std::size_t kept, const TrialCalendar& calendar)
{
    STEELYARD_CHECK(checkCalendar(trial, calendar));
    std::vector<TrialDay> days = trial.days;
    kept = std::min(kept, days.size());
    const TrialDates dates(calendar, trial.daysBetween);
    QDate before = kept > 0 ? days[kept - 1].date : QDate();
    for (std::size_t i = kept; i < days.size(); ++i) {
        before = days[i].date = dates.after(before);
        if (!before.isValid())
            return fail(ErrorCode::Invalid,
                        ScheduleText::tr("%1 of %2 sessions fit: there are too few training days before the last day "
                                         "allowed. Choose more days of the week, fewer blocks, or a later end.")
                            .arg(i)
                            .arg(days.size()));
    }
    return days;
}

Result<std::vector<TrialDay>> drawDays(const Trial& trial, const TrialCalendar& calendar)
{
    STEELYARD_CHECK(checkCalendar(trial, calendar));
    Trial drawn = trial;
    drawn.days.clear();
    for (const DrawnPlace& place : drawnPlaces(trial)) drawn.days.push_back({{}, place.block, place.arm});
    return moveDays(drawn, 0, calendar);
}

double ordersThatCouldBeDrawn(std::size_t arms, int blocks)
{
    return std::pow(std::round(std::tgamma(static_cast<double>(arms) + 1)), blocks);
}

double smallestPossibleP(std::size_t arms, int blocks)
{
    // Names may be exchanged all over without changing how far arms are apart.
    const double same = std::round(std::tgamma(static_cast<double>(arms) + 1));
    return std::min(1.0, same / ordersThatCouldBeDrawn(arms, blocks));
}

}  // namespace steelyard
