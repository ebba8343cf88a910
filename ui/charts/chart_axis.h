// Axes with ticks a person would have chosen: steps of 1, 2 or 5 times a power of ten, dates at month starts.
//
//   niceAxis(41.3, 52.8, 5)  -> 40 to 54 by 2... ticks 40, 42, ..., 54
//   dateTicks(2026-03-05, 2027-02-10, 8, locale) -> "Apr 2026", "Jun", ..., "Feb"
//
// Values carry the unit of the caller. A day is a Julian day number as a double, so that days are equally wide.
#pragma once

#include <QtCore/QDate>
#include <QtCore/QLocale>
#include <QtCore/QString>

#include <vector>

namespace steelyard {

struct ChartAxis {
    double low = 0;
    double high = 1;
    double step = 1;
    int decimals = 0;           // that the step needs
    std::vector<double> ticks;  // low and high included
    friend bool operator==(const ChartAxis&, const ChartAxis&) = default;
};

struct DateTick {
    QDate date;
    QString label;
    friend bool operator==(const DateTick&, const DateTick&) = default;
};

// low <= high, both finite (asserted); `most` is the largest number of steps wanted. smallestStep 1 keeps counts whole.
[[nodiscard]] ChartAxis niceAxis(double low, double high, int most, double smallestStep = 0);

// Month starts between the two days, at most `most` of them, every 1, 2, 3, 6 or 12 months and then by years. A stretch of
// less than ten weeks is ticked on Mondays instead. The first tick and every January name the year.
[[nodiscard]] std::vector<DateTick> dateTicks(QDate from, QDate to, int most, const QLocale& locale);

[[nodiscard]] inline double chartDay(QDate date)
{
    return static_cast<double>(date.toJulianDay());
}

}  // namespace steelyard
