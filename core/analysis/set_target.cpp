#include "core/analysis/set_target.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace steelyard {
namespace {

constexpr double kLeastChanceListed = 0.01;
constexpr int kMostRepsListed = 150;
constexpr double kWholeRep = 0.5;  // half way to the number below counts as this one
constexpr double kHeaviestKg = Load::kMaxAmount;
constexpr double kLightestShare = 1e-6;  // of the heaviest: "no load at all" has no logarithm
constexpr int kHalvings = 60;

double countedReps(const SetForecast& forecast, double probability, double kept)
{
    return std::max(0.0, forecast.reps(probability) - kept);
}

RepInterval intervalOf(const SetForecast& forecast, double share, double kept)
{
    return {countedReps(forecast, 0.5 - share / 2, kept), countedReps(forecast, 0.5 + share / 2, kept)};
}

double chanceOfWhole(const SetForecast& forecast, int reps, double kept)
{
    return reps < 1 ? 1 : forecast.probabilityOver(reps - kWholeRep + kept);
}

double externalOf(const SetContext& context, double movedKg)
{
    if (context.loading == Loading::Assisted) return context.bodyKg - movedKg;
    return context.loading == Loading::Added ? movedKg - context.bodyKg : movedKg;
}

// The kilograms that can be moved on such a line, from no load (or all the help there is) to the heaviest.
RepInterval movableOf(const SetContext& context)
{
    const bool assisted = context.loading == Loading::Assisted;
    const double most = assisted ? context.bodyKg : systemKg(context.loading, kHeaviestKg, context.bodyKg);
    const double least = context.loading == Loading::Added ? context.bodyKg : 0;
    return {std::max(least, most * kLightestShare), most};
}

}  // namespace

double reserveSd(double rir)
{
    return rir < 0.5 ? 0.45 : 0.45 + 0.25 * rir;
}

SetForecast forecastStopped(const LineTracker& tracker, QDate day, double lnLoad, int number, double rir)
{
    // An error in repetitions is a smaller one of z the more of them there are: as many as to expect.
    const double expected = forecastSet(tracker, day, lnLoad, number).reps(0.5);
    return forecastSet(tracker, day, lnLoad, number, zError(expected, reserveSd(rir)));
}

double SetTarget::chanceOf(int reps) const
{
    if (reps < 1) return 1;
    const auto place = static_cast<std::size_t>(reps) - 1;
    return place < chances.size() ? chances[place].probability : 0;
}

SetTargets::SetTargets(const LineTracker& tracker, const SetContext& context, PlannedSet planned)
    : m_tracker(&tracker), m_context(context), m_planned(planned)
{}

SetForecast SetTargets::forecastOf(double movedKg) const
{
    const double lnLoad = std::log(movedKg) - m_context.lnReference;
    return forecastStopped(*m_tracker, m_planned.day, lnLoad, m_planned.number, m_planned.rir);
}

double SetTargets::chanceAt(double movedKg, int reps) const
{
    return chanceOfWhole(forecastOf(movedKg), reps, reserveReps(m_planned.rir));
}

std::optional<SetTarget> SetTargets::at(double loadKg) const
{
    const double moved = systemKg(m_context.loading, loadKg, m_context.bodyKg);
    if (!(moved > 0)) return std::nullopt;
    const SetForecast forecast = forecastOf(moved);
    const double kept = reserveReps(m_planned.rir);
    SetTarget target;
    target.loadKg = loadKg;
    target.repsMedian = countedReps(forecast, 0.5, kept);
    target.within50 = intervalOf(forecast, 0.50, kept);
    target.within80 = intervalOf(forecast, 0.80, kept);
    target.within95 = intervalOf(forecast, 0.95, kept);
    for (int reps = 1; reps <= kMostRepsListed; ++reps) {
        const double chance = chanceOfWhole(forecast, reps, kept);
        if (chance < kLeastChanceListed) break;
        target.chances.push_back({reps, chance});
        if (std::abs(chance - kTargetChance) >= std::abs(target.targetProbability - kTargetChance)) continue;
        target.targetReps = reps;
        target.targetProbability = chance;
    }
    return target;
}

double SetTargets::loadFor(int reps) const
{
    const RepInterval movable = movableOf(m_context);
    // The heavier, the fewer: halving on the logarithm.
    double low = std::log(movable.low);
    double high = std::log(movable.high);
    if (chanceAt(movable.low, reps) <= kTargetChance) return std::max(0.0, externalOf(m_context, movable.low));
    if (chanceAt(movable.high, reps) >= kTargetChance) return std::max(0.0, externalOf(m_context, movable.high));
    for (int step = 0; step < kHalvings && high - low > 1e-9; ++step) {
        const double middle = 0.5 * (low + high);
        (chanceAt(std::exp(middle), reps) > kTargetChance ? low : high) = middle;
    }
    return std::max(0.0, externalOf(m_context, std::exp(0.5 * (low + high))));
}

std::optional<SetTarget> SetTargets::nearest(std::span<const double> loadsKg, int reps) const
{
    const auto farness = [reps](const SetTarget& target) {
        return std::tuple(std::abs(target.targetReps - reps), std::abs(target.chanceOf(reps) - kTargetChance));
    };
    std::optional<SetTarget> best;
    for (const double load : loadsKg) {
        auto target = at(load);
        if (target && (!best || farness(*target) < farness(*best))) best = std::move(target);
    }
    return best;
}

}  // namespace steelyard
