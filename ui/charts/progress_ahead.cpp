#include "core/analysis/typical_error.h"
#include "ui/charts/progress_parts.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct AheadText {
    Q_DECLARE_TR_FUNCTIONS(AheadText)
};

// Of ln capacity between successive comparable sessions; nothing when one is 0 or less, as with help that is still needed.
std::vector<double> stepsBetweenSessions(const PanelSpec& capacity)
{
    std::vector<double> steps;
    for (const auto& run : capacity.runs)
        for (std::size_t i = 0; i < run.size(); ++i) {
            if (!(run[i].y() > 0)) return {};
            if (i > 0) steps.push_back(std::log(run[i].y() / run[i - 1].y()));
        }
    return steps;
}

constexpr double kLeastDaysOfChange = 28;  // a younger block has no change to show yet; convention

// The last block that began within the stretch, some weeks ago, else where the stretch begins.
double startOfChange(const ProgressSpec& spec)
{
    double start = chartDay(spec.from);
    const double last = chartDay(spec.reps.points.back().date);
    for (const BlockSpan& span : spec.blocks) {
        const double day = chartDay(span.from);
        if (!span.deload && span.from > spec.from && day <= last - kLeastDaysOfChange) start = std::max(start, day);
    }
    return start;
}

QString realChangeWords(const RealChange& change, const ProgressWords& words)
{
    return AheadText::tr(
               "The typical error of a session is %1 % (from %n pair(s) of sessions); since %2 only a capacity "
               "below %3 or above %4 %5 is a change that means something.",
               nullptr, change.pairs)
        .arg(words.number(100 * change.typicalError, 1), words.date(change.from), words.number(change.low, 1),
             words.number(change.high, 1), words.unit());
}

}  // namespace

void addFan(const ProgressSource& source, const ProgressWords& words, ProgressSpec& spec)
{
    for (const CapacityAhead& one : source.ahead)
        spec.fan.push_back({chartDay(one.date),
                            words.shown(one.medianKg),
                            {words.shown(one.low95Kg), words.shown(one.low80Kg), words.shown(one.low50Kg)},
                            {words.shown(one.high95Kg), words.shown(one.high80Kg), words.shown(one.high50Kg)}});
}

void addRealChange(const ProgressWords& words, ProgressSpec& spec)
{
    if (spec.empty() || spec.trend.empty()) return;
    const auto steps = stepsBetweenSessions(spec.capacity);
    if (steps.size() < kLeastPairs) return;
    const double start = startOfChange(spec);
    const auto known = std::ranges::find_if(spec.trend, [&](const QPointF& point) { return point.x() >= start; });
    if (known == spec.trend.end() || !(known->y() > 0)) return;
    const double error = *typicalError(steps);
    const double change = smallestRealChange(error, kRealChangeConfidence);
    spec.realChange = RealChange{QDate::fromJulianDay(static_cast<qint64>(known->x())),
                                 known->y(),
                                 known->y() * std::exp(-change),
                                 known->y() * std::exp(change),
                                 error,
                                 static_cast<int>(steps.size()),
                                 {}};
    spec.realChange->words = realChangeWords(*spec.realChange, words);
}

}  // namespace steelyard
