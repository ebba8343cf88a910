#include "core/analysis/counting.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr double kEpleyReps = 30;

// What a set's load means on this line at this day.
struct LoadMeaning {
    Loading loading = Loading::BarTotal;
    std::optional<double> bodyKg;      // absent: should be known and isn't
    std::optional<Mass> comparedLoad;  // then: the one load whose repetitions are compared
};

std::optional<SetEstimate> estimateOf(const SetEntry& set, double reserve, const LoadMeaning& meaning,
                                      const CountingRules& rules)
{
    const double reps = set.countedReps() + reserve;
    if (set.countedReps() < 1 || reserve > rules.mostReserve || reps > rules.mostRepsToFailure) return std::nullopt;
    const double lnReps = std::log1p(reps / kEpleyReps);
    if (!meaning.bodyKg) {
        if (set.load.mass() != meaning.comparedLoad) return std::nullopt;
        return SetEstimate{lnReps, 0, false};
    }
    const double moved = systemKg(meaning.loading, set.load.kilograms(), *meaning.bodyKg);
    if (!(moved > 0)) return std::nullopt;
    return SetEstimate{std::log(moved) + lnReps, *meaning.bodyKg, true};
}

void keepBetter(std::optional<SetEstimate>& best, const std::optional<SetEstimate>& other)
{
    if (other && (!best || other->lnSystem > best->lnSystem)) best = other;
}

// Without effort the best set is the one that would carry the most with an equal reserve.
double rankOf(const SetEntry& set, const LoadMeaning& meaning)
{
    const double moved = systemKg(meaning.loading, set.load.kilograms(), meaning.bodyKg.value_or(0));
    const double ease = meaning.loading == Loading::Assisted && !meaning.bodyKg ? -set.load.kilograms() : moved;
    return ease + std::abs(ease) * set.countedReps() / kEpleyReps + 1e-6 * set.countedReps();
}

void takeWorkingSet(CountedExposure& counted, const SetEntry& set, const LoadMeaning& meaning,
                    const CountingRules& rules)
{
    ReadingPoint& point = counted.point;
    ++point.workSets;
    point.reps += set.reps;
    point.offReps += set.off.value_or(0);
    point.watched = point.watched || set.watched();
    if (set.watched()) {
        ++counted.watchedSets;
        counted.watchedReps += set.reps;
        counted.helpedSets += 3 * set.off.value_or(0) > set.reps ? 1 : 0;
    }
    const auto reserve = reserveOf(set);
    if (reserve) {
        ++counted.effortSets;
        if (!counted.reserve) counted.reserve = reserve;
        keepBetter(counted.estimate, estimateOf(set, *reserve, meaning, rules));
    }
    keepBetter(counted.effortless, estimateOf(set, reserve.value_or(rules.assumedReserve), meaning, rules));
}

// The best set: that of the estimate is the strongest, but a session always has one.
void takeTopSet(ReadingPoint& point, const Exposure& exposure, const LoadMeaning& meaning)
{
    const SetEntry* top = nullptr;
    for (const LoggedSet& logged : exposure.sets) {
        if (point.deload ? logged.set.kind != SetKind::Deload : !isWorkingSet(logged.set)) continue;
        if (!top || rankOf(logged.set, meaning) > rankOf(*top, meaning)) top = &logged.set;
    }
    if (!top) return;
    point.topLoad = top->load;
    point.countedReps = top->countedReps();
}

CountedExposure countExposure(const Exposure& exposure, const LoadMeaning& meaning, const CountingRules& rules)
{
    CountedExposure counted;
    counted.point.date = exposure.date;
    for (const LoggedSet& logged : exposure.sets)
        if (isWorkingSet(logged.set)) takeWorkingSet(counted, logged.set, meaning, rules);
    counted.point.deload = counted.point.workSets == 0;
    takeTopSet(counted.point, exposure, meaning);
    const auto share = counted.offShare();
    counted.point.offStandard = share && *share > rules.mostOffShare;
    if (counted.estimate && counted.estimate->inKilograms) counted.point.capacityKg = counted.estimate->externalKg();
    return counted;
}

bool hasTrainingSet(const Exposure& exposure)
{
    return std::ranges::any_of(exposure.sets,
                               [](const LoggedSet& logged) { return logged.set.kind != SetKind::WarmUp; });
}

// The load of the latest session's first working set: what reps are compared at when body mass is unknown.
std::optional<Mass> latestWorkingLoad(const LineRecord& record, QDate asOf)
{
    for (auto exposure = record.exposures.rbegin(); exposure != record.exposures.rend(); ++exposure)
        if (exposure->date <= asOf)
            for (const LoggedSet& logged : exposure->sets)
                if (isWorkingSet(logged.set)) return logged.set.load.mass();
    return std::nullopt;
}

}  // namespace

double SetEstimate::externalKg() const
{
    return std::exp(lnSystem) - bodyPartKg;
}

std::optional<double> CountedExposure::offShare() const
{
    if (watchedReps == 0) return std::nullopt;
    return static_cast<double>(point.offReps) / watchedReps;
}

std::optional<double> CountedExposure::helpedShare() const
{
    if (watchedSets == 0) return std::nullopt;
    return std::max(offShare().value_or(0), static_cast<double>(helpedSets) / watchedSets);
}

bool isWorkingSet(const SetEntry& set)
{
    return set.kind == SetKind::Work || set.kind == SetKind::Test;
}

std::optional<double> reserveOf(const SetEntry& set)
{
    if (set.failed) return 0.0;
    if (!set.effort) return std::nullopt;
    return set.effort->repsInReserve();
}

std::optional<double> bodyMassKgOn(const std::vector<BodyMassEntry>& masses, QDate date)
{
    if (masses.empty()) return std::nullopt;
    const auto after = std::ranges::upper_bound(masses, date, {}, &BodyMassEntry::date);
    return (after == masses.begin() ? *after : *std::prev(after)).mass.kilograms();
}

std::optional<double> bodyPartKg(Loading loading, const std::vector<BodyMassEntry>& masses, QDate date)
{
    if (loading != Loading::Added && loading != Loading::Assisted) return 0.0;
    return bodyMassKgOn(masses, date);
}

double systemKg(Loading loading, double loadKg, double bodyKg)
{
    return loading == Loading::Assisted ? std::max(0.0, bodyKg - loadKg) : bodyKg + loadKg;
}

std::vector<CountedExposure> countExposures(const LineRecord& record, const std::vector<BodyMassEntry>& masses,
                                            QDate asOf, const CountingRules& rules)
{
    const Loading loading = record.variant.value.loading;
    const auto comparedLoad = latestWorkingLoad(record, asOf);
    std::vector<CountedExposure> counted;
    counted.reserve(record.exposures.size());
    for (const Exposure& exposure : record.exposures)
        if (exposure.date <= asOf && hasTrainingSet(exposure))
            counted.push_back(
                countExposure(exposure, {loading, bodyPartKg(loading, masses, exposure.date), comparedLoad}, rules));
    return counted;
}

}  // namespace steelyard
