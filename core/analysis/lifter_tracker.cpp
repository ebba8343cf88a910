#include "core/analysis/lifter_tracker.h"

#include <algorithm>

namespace steelyard {

LifterTracker::LifterTracker(const ReadingParameters& parameters, const VerdictThresholds& thresholds,
                             const AthleteLog& log, QDate until)
    : m_parameters(&parameters), m_log(&log)
{
    m_lines.reserve(log.lines.size());
    for (const LineRecord& record : log.lines)
        m_lines.push_back({&record, countExposures(record, log.bodyMass, until),
                           LineTracker(parameters, thresholds, log.athlete.value.experience)});
}

void LifterTracker::advance(QDate until)
{
    std::optional<QDate> first;
    for (const Followed& one : m_lines)
        if (!one.counted.empty() && (!first || one.counted.front().point.date < *first))
            first = one.counted.front().point.date;
    if (!first) return;
    for (qint64 week = weekOf(*first); week <= weekOf(until); ++week) {
        const QDate day = std::min(lastDayOfWeek(week), until);
        const auto hasBegun = [day](const Followed& one) {
            return !one.counted.empty() && one.counted.front().point.date <= day;
        };
        // Newcomers hear of the others as they were last week, so that the order of lines doesn't matter.
        for (Followed& one : m_lines)
            if (hasBegun(one) && !one.expected) expectNoise(one);
        for (Followed& one : m_lines)
            if (hasBegun(one)) one.tracker.advance(*one.record, one.counted, *m_log, day);
        if (!m_log->athlete.value.experience) shareExperience();
    }
}

void LifterTracker::expectNoise(Followed& newcomer) const
{
    std::vector<double> sum;
    double lines = 0;
    for (const Followed& other : m_lines) {
        if (&other == &newcomer || !other.tracker.started()) continue;
        const auto weights = other.tracker.noiseWeights();
        sum.resize(weights.size(), 0.0);
        for (std::size_t i = 0; i < weights.size(); ++i) sum[i] += weights[i];
        ++lines;
    }
    newcomer.expected = true;
    if (lines == 0) return;
    const auto usual = newcomer.tracker.noiseWeights();
    for (std::size_t i = 0; i < sum.size(); ++i) sum[i] = 0.5 * (sum[i] / lines + usual[i]);
    newcomer.tracker.expectNoise(sum);
}

void LifterTracker::shareExperience()
{
    std::array<double, 3> all{};
    for (const Followed& one : m_lines) {
        if (!one.tracker.started()) continue;
        const auto evidence = one.tracker.experienceEvidence();
        for (std::size_t i = 0; i < all.size(); ++i) all[i] += evidence[i];
    }
    for (Followed& one : m_lines) {
        std::array<double, 3> others = all;
        const auto own = one.tracker.started() ? one.tracker.experienceEvidence() : std::array<double, 3>{};
        for (std::size_t i = 0; i < others.size(); ++i)
            others[i] = m_parameters->experienceShare * (others[i] - own[i]);
        one.tracker.hearOfExperience(others);
    }
}

}  // namespace steelyard
