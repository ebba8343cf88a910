#include "core/analysis/line_outlook.h"

#include "core/analysis/line_numbers.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr qint64 kDaysOfWeek = 7;
constexpr double kCountedWhole = 0.5;  // half way to the number below counts as this one
constexpr int kMostReps = 150;

double squared(double x)
{
    return x * x;
}

}  // namespace

void passQuietWeek(RegimeFilter& filter, QDate day)
{
    const RegimeObservation nothing{0, -100, 0, ObservationKind::AtLeast, 0};
    filter.startWeek();
    filter.session(static_cast<double>(day.toJulianDay()), {&nothing, 1});
}

SetLikelihood::SetLikelihood(SetForecast forecast, double keptReps, double middleReps)
    : m_forecast(std::move(forecast)), m_keptReps(keptReps), m_middleReps(middleReps)
{}

double SetLikelihood::chanceOf(int reps) const
{
    return reps < 1 ? 1 : m_forecast.probabilityOver(reps - kCountedWhole + m_keptReps);
}

RepChance SetLikelihood::target(double wanted) const
{
    int reps = std::clamp(static_cast<int>(std::floor(m_middleReps)), 0, kMostReps);
    double chance = chanceOf(reps);
    double more = chanceOf(reps + 1);
    while (chance < wanted && reps > 0) {
        more = chance;
        chance = chanceOf(--reps);
    }
    while (more >= wanted && reps < kMostReps) {
        ++reps;
        chance = more;
        more = chanceOf(reps + 1);
    }
    // No repetition at all is no target while one is nearer to what is wanted.
    return wanted - more < chance - wanted ? RepChance{reps + 1, more} : RepChance{reps, chance};
}

RepInterval SetLikelihood::within(double share) const
{
    const auto counted = [&](double probability) { return std::max(0.0, m_forecast.reps(probability) - m_keptReps); };
    return {counted(0.5 - share / 2), counted(0.5 + share / 2)};
}

LineOutlook::LineOutlook(const LineTracker& tracker, const SetContext& context, QDate asOf, double doubt)
    : m_tracker(&tracker),
      m_context(context),
      m_asOf(asOf),
      m_doubt(doubt),
      m_elasticity(elasticityOf(tracker)),
      m_weights(tracker.caseWeights())
{}

const std::vector<TrackedCase>& LineOutlook::casesOn(QDate day) const
{
    const auto weeks = static_cast<std::size_t>(std::max<qint64>(0, m_asOf.daysTo(day) / kDaysOfWeek));
    while (m_weeks.size() < weeks) {
        m_weeks.push_back(m_weeks.empty() ? m_tracker->cases() : m_weeks.back());
        const QDate passed = m_asOf.addDays(kDaysOfWeek * static_cast<qint64>(m_weeks.size()));
        for (TrackedCase& one : m_weeks.back()) passQuietWeek(one.filter, passed);
    }
    return weeks == 0 ? m_tracker->cases() : m_weeks[weeks - 1];
}

std::optional<SetLikelihood> LineOutlook::at(const PlannedSet& planned, double loadKg) const
{
    const double moved = systemKg(m_context.loading, loadKg, m_context.bodyKg);
    if (!(moved > 0)) return std::nullopt;
    const RegimeParameters& parameters = m_tracker->parameters().filter;
    const RegimeObservation set{std::log(moved) - m_context.lnReference, 0, 0, ObservationKind::Exact,
                                fatigueOfSet(planned.number)};
    const double shift = m_tracker->weekdays().effectOn(planned.day);
    const auto& cases = casesOn(planned.day);
    std::vector<PredictedComponent> parts;
    parts.reserve(2 * kRegimes * cases.size());
    double middle = 0;
    for (std::size_t i = 0; i < cases.size(); ++i)
        for (PredictedComponent one :
             cases[i].filter.predictByRegime(static_cast<double>(planned.day.toJulianDay()), set)) {
            one.weight *= m_weights[i];
            one.mean += shift;
            middle += one.weight * one.mean;
            parts.push_back(one);
        }
    // An error in repetitions is a smaller one of z the more of them there are: as many as to expect.
    const double toFailure = std::max(0.0, repsOfZ(middle));
    const double extra =
        squared(parameters.repErrorShare * zError(toFailure, reserveSd(planned.rir))) + squared(m_doubt * m_elasticity);
    for (PredictedComponent& one : parts) one.sd = std::sqrt(squared(one.sd) + extra);
    const double kept = reserveReps(planned.rir);
    return SetLikelihood(SetForecast(parts, parameters.tail), kept, toFailure - kept);
}

}  // namespace steelyard
