#include "ui/pages/lifter/line_numbers.h"

#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct NumberText {
    Q_DECLARE_TR_FUNCTIONS(NumberText)
};

LineNumber unsaid(const QString& title)
{
    return {title, format::absent(), NumberText::tr("the record can’t say yet"), {}};
}

// The likeliest first, as the value; the others behind it.
LineNumber likelyNumber(const LineReading& reading)
{
    LineNumber number = unsaid(NumberText::tr("Likely now"));
    if (!reading.rate) return number;
    const TrendRate& rate = *reading.rate;
    std::array<std::pair<double, QString>, 3> chances{
        std::pair{rate.pRising, NumberText::tr("rising")},
        {std::max(0.0, 1 - rate.pRising - rate.pFalling), NumberText::tr("flat")},
        {rate.pFalling, NumberText::tr("falling")}};
    std::ranges::stable_sort(chances, std::greater{}, &std::pair<double, QString>::first);
    const auto words = [&](std::size_t i) {
        return NumberText::tr("%1: %2").arg(chances[i].second, chanceWords(chances[i].first));
    };
    number.value = words(0);
    number.detail = words(1);
    number.note = words(2);
    return number;
}

LineNumber rateNumber(const LineReading& reading)
{
    LineNumber number = unsaid(NumberText::tr("Change a week"));
    if (reading.rate) {
        number.value = format::signedPercent(reading.rate->perWeek, 2);
        number.detail = NumberText::tr("90 %: %1 to %2")
                            .arg(format::signedNumber(100 * reading.rate->low90, 2),
                                 format::signedPercent(reading.rate->high90, 2));
    }
    if (reading.plain)
        number.note = NumberText::tr("straight line: %1").arg(format::signedPercent(reading.plain->perWeek, 2));
    return number;
}

LineNumber sinceNumber(const LineReading& reading)
{
    const bool down = reading.verdict == Verdict::Stalled || reading.verdict == Verdict::Slipping;
    LineNumber number{down ? NumberText::tr("Not rising since about") : NumberText::tr("Rising since about"),
                      format::absent(),
                      NumberText::tr("no turn to date"),
                      {}};
    if (!down && reading.verdict != Verdict::Progressing) number.title = NumberText::tr("Since about");
    if (!reading.since) return number;
    number.value = format::date(*reading.since);
    number.detail.clear();
    if (!down) {
        number.detail = NumberText::tr("said every week since");
    } else if (!reading.sinceEarliest) {
        number.detail = NumberText::tr("or before");
    } else if (reading.sinceLatest) {
        number.detail = NumberText::tr("80 %: %1 to %2")
                            .arg(format::dayMonth(*reading.sinceEarliest), format::dayMonth(*reading.sinceLatest));
    }
    return number;
}

LineNumber capacityNumber(const LineReading& reading, MassUnit unit)
{
    LineNumber number = unsaid(NumberText::tr("Capacity, one repetition"));
    if (!reading.capacity) return number;
    number.value = format::mass(reading.capacity->kg, unit);
    number.detail =
        NumberText::tr("90 %: %1 to %2")
            .arg(format::mass(reading.capacity->low90Kg, unit), format::mass(reading.capacity->high90Kg, unit));
    number.note = NumberText::tr("an index; a maximum only up to about 12 reps");
    return number;
}

LineNumber nextNumber(const LineReading& reading)
{
    LineNumber number = unsaid(NumberText::tr("Next first set"));
    if (!reading.next) return number;
    const Forecast& next = *reading.next;
    number.value = NumberText::tr("%1 × %2").arg(format::load(next.load), format::number(next.repsMedian, 0));
    number.detail = NumberText::tr("80 %: %1 to %2 reps")
                        .arg(format::number(next.repsLow80, 0), format::number(next.repsHigh80, 0));
    number.note = NumberText::tr("with %1 in reserve").arg(next.repsInReserve);
    return number;
}

}  // namespace

QString chanceWords(double chance)
{
    const int tenths = static_cast<int>(std::lround(10 * chance));
    if (tenths <= 0) return NumberText::tr("under 1 in 10");
    if (tenths >= 10) return NumberText::tr("over 9 in 10");
    return NumberText::tr("about %1 in 10").arg(tenths);
}

std::array<LineNumber, kLineNumbers> lineNumbers(const LineReading& reading, MassUnit unit)
{
    return {likelyNumber(reading), rateNumber(reading), sinceNumber(reading), capacityNumber(reading, unit),
            nextNumber(reading)};
}

}  // namespace steelyard
