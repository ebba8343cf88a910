#include "core/analysis/line_curve.h"

#include "core/analysis/line_numbers.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace steelyard {
namespace {

// Mean and variance of a mixture, summed up part by part.
struct Mixed {
    double mean = 0;
    double second = 0;

    void add(double weight, double value, double sd)
    {
        mean += weight * value;
        second += weight * (value * value + sd * sd);
    }
    [[nodiscard]] double sd() const { return std::sqrt(std::max(0.0, second - mean * mean)); }
};

Mixed levelOf(const LineTracker& tracker)
{
    Mixed level;
    const auto weights = tracker.caseWeights();
    for (std::size_t i = 0; i < weights.size(); ++i) {
        const RegimeSummary state = tracker.cases()[i].filter.summary(0);
        level.add(weights[i], state.level, state.levelSd);
    }
    return level;
}

void takeState(LineCurve& found, const LineTracker& tracker)
{
    const Mixed level = levelOf(tracker);
    Mixed endurance;
    const auto weights = tracker.caseWeights();
    for (std::size_t i = 0; i < weights.size(); ++i) {
        const RegimeSummary state = tracker.cases()[i].filter.summary(0);
        endurance.add(weights[i], state.elasticity, state.elasticitySd);
    }
    found.curve = {kEpleyScale, endurance.mean, tracker.lnReference() + level.mean / endurance.mean};
    found.levelSd = level.sd();
    found.enduranceSd = endurance.sd();
    const double left = found.enduranceSd / tracker.parameters().filter.elasticitySd;
    found.ownShare = std::clamp(1 - left * left, 0.0, 1.0);
}

// `since`: by how much z has changed. Absent: nothing that bounds the set from below.
std::optional<CurveSet> curveSet(const SetEntry& set, int number, const SetContext& context, double fatigue,
                                 double since)
{
    const HeardSet heard = hearSet(set, number, context);
    for (const RegimeObservation& said : heard.observations()) {
        if (said.kind == ObservationKind::AtMost) continue;
        CurveSet one;
        one.load = set.load;
        one.loadKg = set.load.kilograms();
        one.exact = said.kind == ObservationKind::Exact && reserveOf(set).has_value();
        // A set without effort tells that its repetitions were there, no more.
        const double z = said.kind == ObservationKind::Exact && !one.exact ? zOfReps(set.countedReps() + 0.5) : said.z;
        one.repsToFailure = repsOfZ(z);
        one.today = std::max(0.0, repsOfZ(z + fatigue * said.fatigue + since));
        return one;
    }
    return std::nullopt;
}

// What was known of the level (z at the reference load) the moment before a session, by exposure.
using LevelsBefore = std::map<std::size_t, double>;

void collectSets(LineCurve& found, const LineTracker& tracker, const LineRecord& record, const AthleteLog& log,
                 const LevelsBefore& levels)
{
    const double fatigue = fatigueOf(tracker);
    const double now = levelOf(tracker).mean;
    for (const auto& [at, level] : levels) {
        const Exposure& exposure = record.exposures[at];
        const SetContext context = tracker.contextAt(record, log, exposure.date);
        int number = 0;
        for (const LoggedSet& logged : exposure.sets) {
            if (logged.set.kind == SetKind::WarmUp) continue;
            auto one = curveSet(logged.set, ++number, context, fatigue, now - level);
            if (!one || !isWorkingSet(logged.set)) continue;
            one->exposure = at;
            one->date = exposure.date;
            found.sets.push_back(*one);
        }
    }
}

// False: there is no curve to see.
bool spread(LineCurve& found)
{
    std::vector<double> loads;
    for (const CurveSet& set : found.sets)
        if (set.exact) loads.push_back(set.loadKg);
    if (loads.size() < kLeastCurveSets) return false;
    std::ranges::sort(loads);
    found.lightestKg = loads.front();
    found.heaviestKg = loads.back();
    found.anchorKg = loads[loads.size() / 2];
    const double a = found.movedKg(loads.front());
    const double b = found.movedKg(loads.back());
    return std::min(a, b) > 0 && std::max(a, b) >= kLeastLoadRatio * std::min(a, b);
}

}  // namespace

std::optional<LineCurve> curveOfLine(const RegimeEngine& engine, const LineRecord& record, const AthleteLog& log,
                                     QDate asOf, int weeks)
{
    const QDate from = asOf.addDays(1 - 7 * weeks);
    LevelsBefore levels;
    const LineTracker tracker =
        engine.track(record, log, asOf, [&](const LineTracker& before, const HeardSession& heard) {
            if (before.started() && record.exposures[heard.exposure].date >= from)
                levels[heard.exposure] = levelOf(before).mean;
        });
    if (!tracker.started()) return std::nullopt;
    LineCurve found;
    found.loading = record.variant.value.loading;
    found.bodyKg = tracker.contextAt(record, log, asOf).bodyKg;
    takeState(found, tracker);
    collectSets(found, tracker, record, log, levels);
    if (!spread(found)) return std::nullopt;
    const double anchor = found.movedKg(found.anchorKg);
    const double reps = found.curve.repsAt(anchor);
    if (!(reps > -kEpleyScale)) return std::nullopt;
    found.published = {kEpleyScale, 1, std::log(anchor) + std::log1p(reps / kEpleyScale)};
    return found;
}

}  // namespace steelyard
