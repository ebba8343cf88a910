// A made-up reading of one lift line for tests of charts: a slow rise with everything a chart must tell apart.
#pragma once

#include "core/analysis/line_reading.h"

#include <cmath>

namespace steelyard {

// `sessions` sessions, two or three days apart. Every 5th is off standard, every 7th unwatched, every 18th a deload;
// in the middle three weeks are missing.
inline LineReading madeUpReading(int sessions, QDate first = QDate(2026, 1, 5))
{
    LineReading reading;
    QDate day = first;
    for (int i = 0; i < sessions; ++i) {
        ReadingPoint point;
        point.date = day;
        const double kg = 48 + 0.06 * i + 0.8 * std::sin(i * 1.7);
        point.topLoad = *Load::make(Decimal::fromScaled(325 + 25 * (i / 16), 1), MassUnit::kg);
        point.countedReps = 8 + (i % 16) / 4;
        point.workSets = 3;
        point.reps = point.countedReps * 3 - 2;
        point.watched = i % 7 != 6;
        point.offStandard = i % 5 == 4;
        point.offReps = point.offStandard ? 6 : 0;
        point.deload = i % 18 == 17;
        point.capacityKg = point.deload ? std::optional<double>() : (point.offStandard ? kg - 3 : kg);
        reading.points.push_back(point);
        day = day.addDays(i == sessions / 2 ? 21 : (i % 3 == 2 ? 3 : 2));
    }
    reading.exposures = sessions;
    const int fitted = std::min(sessions, 24);
    for (int i = sessions - fitted; i < sessions && sessions >= 6; ++i) {
        const double kg = 48 + 0.06 * i;
        const double width = 0.5 + 0.04 * std::abs(i - (sessions - fitted / 2));
        reading.trend.push_back({reading.points[static_cast<std::size_t>(i)].date, kg, kg - width, kg + width});
    }
    if (!reading.trend.empty()) {
        reading.verdict = Verdict::Progressing;
        reading.reason = QStringLiteral("rising");
        reading.why = QStringLiteral("Capacity rose in the last eight weeks; chance cannot easily explain it.");
        reading.rate = TrendRate{0.0031, 0.0012, 0.0049, 0.98, 0.02};
        const double kg = reading.trend.back().kg;
        reading.capacity = CapacityEstimate{kg, kg - 1.4, kg + 1.4};
        reading.next = Forecast{reading.points.back().topLoad, 2, 9.4, 7.8, 11.2};
    }
    return reading;
}

}  // namespace steelyard
