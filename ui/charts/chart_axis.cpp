#include "ui/charts/chart_axis.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard {
namespace {

// The smallest of 1, 2, 5 times a power of ten that is not below `raw`.
double oneTwoFive(double raw)
{
    const double power = std::pow(10.0, std::floor(std::log10(raw)));
    for (const double factor : {1.0, 2.0, 5.0})
        if (factor * power >= raw * (1 - 1e-9)) return factor * power;
    return 10 * power;
}

QString monthLabel(QDate date, bool withYear, const QLocale& locale)
{
    const QString month = locale.standaloneMonthName(date.month(), QLocale::ShortFormat);
    return withYear ? month + u' ' + QString::number(date.year()) : month;
}

std::vector<DateTick> mondayTicks(QDate from, QDate to, int most, const QLocale& locale)
{
    const QDate first = from.addDays((8 - from.dayOfWeek()) % 7);
    const qint64 mondays = first > to ? 0 : first.daysTo(to) / 7 + 1;
    const qint64 weeks = std::max<qint64>(1, (mondays + most - 1) / most);
    std::vector<DateTick> ticks;
    for (QDate day = first; day <= to; day = day.addDays(7 * weeks))
        ticks.push_back({day, QString::number(day.day()) + u' ' + monthLabel(day, ticks.empty(), locale)});
    return ticks;
}

}  // namespace

ChartAxis niceAxis(double low, double high, int most, double smallestStep)
{
    Q_ASSERT(std::isfinite(low) && std::isfinite(high) && low <= high && most > 0);
    if (high - low < 1e-9) {
        // One value: leave it room above and below.
        const double room = std::max(std::abs(low) * 0.05, smallestStep > 0 ? smallestStep : 0.5);
        low -= room;
        high += room;
    }
    ChartAxis axis;
    axis.step = std::max(oneTwoFive((high - low) / most), smallestStep);
    const auto first = std::llround(std::floor(low / axis.step + 1e-9));
    const auto last = std::llround(std::ceil(high / axis.step - 1e-9));
    axis.low = static_cast<double>(first) * axis.step;
    axis.high = static_cast<double>(last) * axis.step;
    axis.decimals = std::max(0, static_cast<int>(-std::floor(std::log10(axis.step) + 1e-9)));
    for (auto i = first; i <= last; ++i) axis.ticks.push_back(static_cast<double>(i) * axis.step);
    return axis;
}

std::vector<DateTick> dateTicks(QDate from, QDate to, int most, const QLocale& locale)
{
    if (!from.isValid() || !to.isValid() || from > to || most < 1) return {};
    if (from.daysTo(to) < 70) return mondayTicks(from, to, most, locale);
    const int months = (to.year() - from.year()) * 12 + to.month() - from.month() + 1;
    int every = 12;
    for (const int step : {1, 2, 3, 6, 12})
        if (months <= most * step) {
            every = step;
            break;
        }
    while (months > most * every) every += 12;
    std::vector<DateTick> ticks;
    for (QDate day(from.year(), 1, 1); day <= to; day = day.addMonths(every))
        if (day >= from) ticks.push_back({day, monthLabel(day, ticks.empty() || day.month() == 1, locale)});
    return ticks;
}

}  // namespace steelyard
