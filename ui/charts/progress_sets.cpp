#include "core/analysis/counting.h"
#include "ui/charts/progress_parts.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <map>

namespace steelyard {
namespace {

struct SetsText {
    Q_DECLARE_TR_FUNCTIONS(SetsText)
};

constexpr int kLeastSessionsAtLoad = 3;
// A load that comes back after longer than this begins anew: two breaks' worth, because loads alternate.
constexpr int kLoadGapDays = 2 * kGapDays;

SetEffort effortOf(const SetEntry& set)
{
    const auto reserve = reserveOf(set);
    if (!reserve) return SetEffort::Unknown;
    if (*reserve <= kNearFailure) return SetEffort::Near;
    return *reserve <= kSomeReserve ? SetEffort::Some : SetEffort::Far;
}

// Exposures and points are both oldest first; a session without working sets has no point.
template <class Visit>
void visitSessions(const ProgressSource& source, const ProgressSpec& spec, Visit&& visit)
{
    if (!source.record) return;
    auto exposure = source.record->exposures.begin();
    for (const ChartPoint& point : spec.reps.points) {
        while (exposure != source.record->exposures.end() && exposure->date < point.date) ++exposure;
        if (exposure == source.record->exposures.end()) return;
        if (exposure->date == point.date) visit(point, *exposure);
    }
}

struct UsedLoad {
    Load load;
    int sets = 0;
    std::vector<QPointF> best;  // a session each
};

}  // namespace

void addSetMarks(const ProgressSource& source, ProgressSpec& spec)
{
    visitSessions(source, spec, [&](const ChartPoint& point, const Exposure& exposure) {
        const std::size_t first = spec.sets.size();
        for (const LoggedSet& logged : exposure.sets) {
            const SetEntry& set = logged.set;
            if (!isWorkingSet(set)) continue;
            const int number = static_cast<int>(spec.sets.size() - first) + 1;
            spec.sets.push_back(
                {point.exposure, point.date, number, 1, set.countedReps(), set.reps, effortOf(set), set.watched()});
        }
        const int of = static_cast<int>(spec.sets.size() - first);
        for (std::size_t i = first; i < spec.sets.size(); ++i) spec.sets[i].of = of;
    });
}

void addLoadSeries(const ProgressSource& source, const ProgressWords& words, ProgressSpec& spec)
{
    std::map<std::int64_t, UsedLoad> used;
    visitSessions(source, spec, [&](const ChartPoint& point, const Exposure& exposure) {
        if (point.kind == PointKind::OffStandard || point.kind == PointKind::Deload || point.beyond != Beyond::No)
            return;
        const double day = chartDay(point.date);
        for (const LoggedSet& logged : exposure.sets) {
            if (!isWorkingSet(logged.set)) continue;
            const Load& load = logged.set.load;
            UsedLoad& at = used.try_emplace(load.mass().steps(), UsedLoad{load, 0, {}}).first->second;
            ++at.sets;
            const double counted = logged.set.countedReps();
            if (at.best.empty() || at.best.back().x() < day) at.best.emplace_back(day, counted);
            at.best.back().setY(std::max(at.best.back().y(), counted));
        }
    });
    std::vector<const UsedLoad*> most;
    for (const auto& [mass, load] : used)
        if (load.best.size() >= kLeastSessionsAtLoad) most.push_back(&load);
    // Equals: the heavier one, which the map gives last.
    std::ranges::reverse(most);
    std::ranges::stable_sort(most, std::greater(), &UsedLoad::sets);
    if (most.size() > kMostLoadSeries) most.resize(kMostLoadSeries);
    for (const UsedLoad* load : most) {
        LoadSeries series{words.load(load->load), load->sets, {}};
        double last = 0;
        for (const QPointF& point : load->best) {
            if (series.runs.empty() || point.x() - last > kLoadGapDays) series.runs.emplace_back();
            series.runs.back().push_back(point);
            last = point.x();
        }
        spec.loadSeries.push_back(std::move(series));
    }
}

void addNotes(const ProgressSource& source, const ProgressWords& words, ProgressSpec& spec)
{
    visitSessions(source, spec, [&](const ChartPoint& point, const Exposure& exposure) {
        QStringList said;
        for (const LoggedSet& logged : exposure.sets)
            if (const QString& note = logged.set.note; !note.isEmpty() && !said.contains(note)) said << note;
        if (said.isEmpty()) return;
        spec.notes.push_back({point.date, said.join(QStringLiteral("; ")),
                              SetsText::tr("%1: %2").arg(words.date(point.date), said.join(u'\n'))});
    });
}

QString setEffortWord(SetEffort effort)
{
    switch (effort) {
    case SetEffort::Near:
        return SetsText::tr("near failure");
    case SetEffort::Some:
        return SetsText::tr("some in reserve");
    case SetEffort::Far:
        return SetsText::tr("far from failure");
    case SetEffort::Unknown:
        return SetsText::tr("reserve unknown");
    }
    return {};
}

}  // namespace steelyard
