#include "core/analysis/lifter_tracker.h"

#include "core/analysis/line_numbers.h"

#include <algorithm>

namespace steelyard {
namespace {

// Ways of doing one exercise differ less in what load costs a lifter than lifters do. Convention.
constexpr double kRelatedShare = 0.8;
// So long after the last session of all, nothing changes any more: every line has been "can't tell" for months.
constexpr int kSilentDays = 53 * 7;

// Of the last exposure up to that day; the day itself when there is none.
QDate lastDayOf(const CountedLines& counted, QDate until)
{
    std::optional<QDate> last;
    for (const auto& line : counted)
        for (auto exposure = line.rbegin(); exposure != line.rend(); ++exposure)
            if (exposure->point.date <= until) {
                last = std::max(last.value_or(exposure->point.date), exposure->point.date);
                break;
            }
    return last.value_or(until);
}

}  // namespace

CountedLines countLines(const AthleteLog& log, QDate until)
{
    CountedLines counted;
    counted.reserve(log.lines.size());
    for (const LineRecord& record : log.lines) counted.push_back(countExposures(record, log.bodyMass, until));
    return counted;
}

LifterTracker::LifterTracker(const ReadingParameters& parameters, const VerdictThresholds& thresholds,
                             std::optional<Experience> experience)
    : m_parameters(&parameters),
      m_thresholds(&thresholds),
      m_experience(experience),
      m_unstarted(parameters, thresholds, experience)
{}

const LineTracker& LifterTracker::line(Id<LiftLine> id) const
{
    const auto found = m_lines.find(id);
    return found == m_lines.end() ? m_unstarted : found->second.tracker;
}

LineTracker& LifterTracker::lineToListenTo(Id<LiftLine> id)
{
    return follow(id).tracker;
}

LifterTracker::Followed& LifterTracker::follow(Id<LiftLine> id)
{
    const auto found = m_lines.find(id);
    if (found != m_lines.end()) return found->second;
    return m_lines.emplace(id, Followed{LineTracker(*m_parameters, *m_thresholds, m_experience)}).first->second;
}

void LifterTracker::advance(const AthleteLog& log, const CountedLines& counted, QDate asked)
{
    const QDate until = std::min(asked, lastDayOf(counted, asked).addDays(kSilentDays));
    std::optional<qint64> week = m_week;
    if (!week)
        for (const auto& line : counted)
            if (!line.empty()) week = std::min(week.value_or(weekOf(until)), weekOf(line.front().point.date));
    if (!week) return;
    for (qint64 now = *week; now <= weekOf(until); ++now) {
        const QDate day = std::min(lastDayOfWeek(now), until);
        const auto hasBegun = [&](std::size_t line) {
            return !counted[line].empty() && counted[line].front().point.date <= day;
        };
        // Newcomers hear of the others as they were last week: neither the order of lines matters nor the day at which a
        // kept state goes on.
        if (m_lines.size() < log.lines.size() && m_heardWeek != now) {
            hearOthers(log);
            m_heardWeek = now;
        }
        for (std::size_t i = 0; i < log.lines.size(); ++i)
            if (hasBegun(i))
                if (Followed& one = follow(log.lines[i].id); !one.toldOfOthers) tellOfOthers(one, log.lines[i]);
        for (std::size_t i = 0; i < log.lines.size(); ++i) {
            if (!hasBegun(i)) continue;
            LineTracker& tracker = follow(log.lines[i].id).tracker;
            // Of the last weeks before the day that the state is for, wherever it was taken up: so it doesn't show that it was.
            tracker.keepSurprisesFrom(until.addDays(-7 * kSurpriseWeeks));
            tracker.advance(log.lines[i], counted[i], log, day);
        }
        if (!m_experience) shareExperience(log);
    }
    m_week = std::max(*week, weekOf(until));
}

// Sums go by the log's order of lines, which doesn't depend on how the book came about, so that their last digits don't.
void LifterTracker::hearOthers(const AthleteLog& log)
{
    m_noise.clear();
    m_elasticity.clear();
    double lines = 0;
    for (const LineRecord& record : log.lines) {
        const LineTracker& other = line(record.id);
        if (!other.started()) continue;
        const auto weights = other.noiseWeights();
        m_noise.resize(weights.size(), 0.0);
        for (std::size_t i = 0; i < weights.size(); ++i) m_noise[i] += weights[i];
        ++lines;
        auto& [sum, count] = m_elasticity[record.exercise.id];
        sum += elasticityOf(other);
        ++count;
    }
    for (double& weight : m_noise) weight /= lines;
}

void LifterTracker::tellOfOthers(Followed& newcomer, const LineRecord& record) const
{
    newcomer.toldOfOthers = true;
    if (const auto related = m_elasticity.find(record.exercise.id); related != m_elasticity.end())
        newcomer.tracker.expectElasticity(related->second.first / related->second.second,
                                          kRelatedShare * m_parameters->filter.elasticitySd);
    if (m_noise.empty()) return;
    auto expected = newcomer.tracker.noiseWeights();
    for (std::size_t i = 0; i < expected.size(); ++i) expected[i] = 0.5 * (m_noise[i] + expected[i]);
    newcomer.tracker.expectNoise(expected);
}

void LifterTracker::shareExperience(const AthleteLog& log)
{
    std::array<double, 3> all{};
    for (const LineRecord& record : log.lines) {
        const LineTracker& one = line(record.id);
        if (!one.started()) continue;
        const auto evidence = one.experienceEvidence();
        for (std::size_t i = 0; i < all.size(); ++i) all[i] += evidence[i];
    }
    for (auto& [id, one] : m_lines) {
        std::array<double, 3> others = all;
        const auto own = one.tracker.started() ? one.tracker.experienceEvidence() : std::array<double, 3>{};
        for (std::size_t i = 0; i < others.size(); ++i)
            others[i] = m_parameters->experienceShare * (others[i] - own[i]);
        one.tracker.hearOfExperience(others);
    }
}

}  // namespace steelyard
