#include "ui/charts/rated_sessions.h"

#include "core/analysis/counting.h"

#include <map>

namespace steelyard {
namespace {

std::optional<double> meanLowering(const Exposure& exposure)
{
    double sum = 0;
    int count = 0;
    for (const LoggedSet& logged : exposure.sets)
        if (logged.set.kind != SetKind::WarmUp && logged.set.loweringSeconds) {
            sum += logged.set.loweringSeconds->toDouble();
            ++count;
        }
    return count > 0 ? std::optional(sum / count) : std::nullopt;
}

MarkCounts marksOf(const Exposure& exposure)
{
    MarkCounts sum;
    for (const LoggedSet& logged : exposure.sets)
        for (const auto& row : EnumText<Mark>::table)
            if (logged.set.kind != SetKind::WarmUp)
                sum.set(row.value, sum.of(row.value) + logged.set.marks.of(row.value));
    return sum;
}

}  // namespace

std::vector<RatedSession> ratedSessions(const RatingsSource& source, const PanelsOptions& options)
{
    const auto& exposures = source.record.exposures;
    if (exposures.empty()) return {};
    const QDate last = options.asOf.isValid() ? options.asOf : exposures.back().date;
    std::map<QDate, CountedExposure> counted;
    for (const CountedExposure& one : countExposures(source.record, source.log.bodyMass, last))
        counted.emplace(one.point.date, one);
    std::map<QDate, const ReadingPoint*> points;
    for (const ReadingPoint& point : source.reading.points) points.emplace(point.date, &point);
    std::vector<RatedSession> sessions;
    for (std::size_t i = 0; i < exposures.size(); ++i) {
        const Exposure& exposure = exposures[i];
        if (exposure.date > last || (options.from && exposure.date < *options.from)) continue;
        RatedSession session{static_cast<int>(i), &exposure};
        if (const auto point = points.find(exposure.date); point != points.end()) {
            session.capacityKg = point->second->capacityKg;
            session.offStandard = point->second->offStandard;
            session.watched = point->second->watched;
        }
        if (const auto one = counted.find(exposure.date); one != counted.end())
            if (const auto off = one->second.offShare()) session.countedShare = 1 - *off;
        session.marks = marksOf(exposure);
        session.loweringSeconds = meanLowering(exposure);
        sessions.push_back(session);
    }
    return sessions;
}

}  // namespace steelyard
