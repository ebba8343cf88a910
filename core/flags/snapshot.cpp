#include "core/flags/snapshot.h"

#include <algorithm>

namespace steelyard {

std::vector<const CountedExposure*> SnapshotLine::lastWorking(std::size_t most) const
{
    std::vector<const CountedExposure*> last;
    for (auto it = counted.rbegin(); it != counted.rend() && last.size() < most; ++it)
        if (it->point.workSets > 0) last.push_back(&*it);
    std::ranges::reverse(last);
    return last;
}

QString ReviewSnapshot::unitText() const
{
    return toText(wording.unitFor(log.athlete.value.unit));
}

double ReviewSnapshot::massIn(double kilograms) const
{
    return wording.massIn(kilograms, log.athlete.value.unit);
}

ReviewSnapshot takeSnapshot(const AthleteLog& log, const ReadingEngine& engine, QDate asOf, Wording wording)
{
    ReviewSnapshot snapshot{log, asOf, {}, std::move(wording)};
    snapshot.lines.reserve(log.lines.size());
    auto readings = engine.readAll(log, asOf);
    for (std::size_t i = 0; i < log.lines.size(); ++i) {
        const LineRecord& record = log.lines[i];
        SnapshotLine line{&record, std::move(readings[i]), countExposures(record, log.bodyMass, asOf), {}, false};
        if (!line.counted.empty()) {
            line.lastTrained = line.counted.back().point.date;
            line.recent = *line.lastTrained >= asOf.addDays(-7 * kRecentWeeks);
        }
        snapshot.lines.push_back(std::move(line));
    }
    return snapshot;
}

QString lineName(const LineRecord& record)
{
    QString name = record.exercise.value.name;
    for (const QString& part : {record.variant.value.name, record.grip.value.name})
        if (!part.isEmpty() && part != asUsualName()) name += QStringLiteral(", ") + part;
    return name;
}

}  // namespace steelyard
