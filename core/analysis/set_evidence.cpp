#include "core/analysis/set_evidence.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr double kZReps = 30;
constexpr double kLargeReserve = 4.5;
constexpr double kNearFailure = 0.5;
constexpr double kHalfRep = 0.45;

struct Reached {
    double reps = 0;
    double sd = 0;
    ObservationKind kind = ObservationKind::Exact;
};

// For `done` repetitions, whatever their quality.
Reached reachedBy(const SetEntry& set, int done, const SetContext& context)
{
    const auto reserve = reserveOf(set);
    if (set.kind == SetKind::Deload) return {done + 1.5, 1.0, ObservationKind::AtLeast};
    if (reserve && *reserve < kNearFailure) return {done + 0.5, 0.45, ObservationKind::Exact};
    if (reserve && *reserve > kLargeReserve) return {done + 3.0, 1.0, ObservationKind::AtLeast};
    if (reserve) return {done + kHalfRep + 1.1 * *reserve, 0.45 + 0.25 * *reserve, ObservationKind::Exact};
    if (done >= context.bandHigh) return {done + 0.5, 0.8, ObservationKind::AtLeast};
    return {done + kHalfRep + 1.1 * context.usualReserve, 1.6, ObservationKind::Exact};
}

RegimeObservation observation(const Reached& reached, double lnLoad, int number)
{
    return {lnLoad, zOfReps(reached.reps), zError(reached.reps, reached.sd), reached.kind, fatigueOfSet(number)};
}

}  // namespace

double zOfReps(double repsToFailure)
{
    return std::log1p(repsToFailure / kZReps);
}

double repsOfZ(double z)
{
    return kZReps * std::expm1(z);
}

double zError(double repsToFailure, double repsSd)
{
    return repsSd / (kZReps + repsToFailure);
}

int offReps(const SetEntry& set)
{
    int off = set.off.value_or(0);
    for (const auto& row : EnumText<Mark>::table) off = std::max(off, set.marks.of(row.value));
    return std::min(off, set.reps);
}

bool mostlyHelped(const SetEntry& set)
{
    return 3 * offReps(set) > set.reps;
}

std::optional<double> lnMoved(const SetEntry& set, const SetContext& context)
{
    const double moved = systemKg(context.loading, set.load.kilograms(), context.bodyKg);
    if (!(moved > 0)) return std::nullopt;
    return std::log(moved);
}

HeardSet hearSet(const SetEntry& set, int number, const SetContext& context)
{
    HeardSet heard;
    const auto ln = lnMoved(set, context);
    if (set.kind == SetKind::WarmUp || !ln) return heard;
    const double lnLoad = *ln - context.lnReference;
    const int off = offReps(set);
    Reached all = reachedBy(set, set.reps, context);
    heard.repsToFailure = all.reps;
    if (off == 0 || set.kind == SetKind::Deload) {
        heard.said[heard.count++] = observation(all, lnLoad, number);
        return heard;
    }
    all.kind = ObservationKind::AtMost;
    heard.said[heard.count++] = observation(all, lnLoad, number);
    const int counted = set.reps - off;
    if (counted > 0 && !mostlyHelped(set))
        heard.said[heard.count++] = observation({counted + 0.5, 0.8, ObservationKind::AtLeast}, lnLoad, number);
    return heard;
}

}  // namespace steelyard
