#include "core/analysis/line_explanation.h"

#include "core/analysis/line_numbers.h"
#include "core/analysis/set_forecast.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

// A bound bites when what it rules out had this chance. Convention.
constexpr double kBites = 0.1;

// What has a load and still wasn't heard was a slip.
void findSlips(ExplainedSession& session, const LineTracker& tracker, const LineRecord& record, const AthleteLog& log)
{
    const SetContext context = tracker.contextAt(record, log, session.date);
    for (ExplainedSet& set : session.sets)
        if (set.heard == HeardAs::NoLoad && lnMoved(set.logged.set, context)) set.heard = HeardAs::Slip;
}

// Starts an explanation of a session with every set as it was logged.
ExplainedSession unheardSession(const LineRecord& record, std::size_t at)
{
    ExplainedSession session{at, record.exposures[at].date, 0, 0, {}};
    int number = 0;
    for (const LoggedSet& logged : record.exposures[at].sets) {
        ExplainedSet set{logged};
        set.heard = logged.set.kind == SetKind::WarmUp ? HeardAs::WarmUp : HeardAs::NoLoad;
        if (set.heard != HeardAs::WarmUp) set.number = ++number;
        session.sets.push_back(std::move(set));
    }
    return session;
}

// A set gives one observation, or two that bound it from both sides.
void takeHeard(ExplainedSet& set, const RegimeObservation& seen)
{
    const double reps = repsOfZ(seen.z);
    if (seen.kind != ObservationKind::AtMost) set.atLeast = reps;
    if (seen.kind != ObservationKind::AtLeast) set.atMost = reps;
    if (seen.kind == ObservationKind::Exact)
        set.heard = HeardAs::Exactly;
    else if (set.atLeast && set.atMost)
        set.heard = HeardAs::Between;
    else
        set.heard = set.atLeast ? HeardAs::AtLeast : HeardAs::AtMost;
}

double exactWeight(const LineTracker& before, QDate date, const RegimeObservation& seen)
{
    const auto day = static_cast<double>(date.toJulianDay());
    const double weekday = before.weekdays().effectOn(date);
    const double nu = before.parameters().filter.tail;
    const auto weights = before.caseWeights();
    double sum = 0;
    for (std::size_t i = 0; i < weights.size(); ++i)
        for (const PredictedComponent& one : before.cases()[i].filter.predictByRegime(day, seen)) {
            const double away = (seen.z - weekday - one.mean) / one.sd;
            sum += weights[i] * one.weight * std::min(1.0, (nu + 1) / (nu - 2 + away * away));
        }
    return sum;
}

void addExpectation(ExplainedSet& set, const LineTracker& before, QDate date, const RegimeObservation& seen)
{
    if (!before.started()) {
        set.weight = 1;  // nothing was expected yet
        return;
    }
    const SetForecast forecast = forecastSet(before, date, seen.lnLoad, set.number, seen.repError);
    set.expected = ExpectedReps{forecast.reps(0.5), forecast.reps(0.1), forecast.reps(0.9)};
    if (seen.kind == ObservationKind::Exact) {
        set.weight = exactWeight(before, date, seen);
        return;
    }
    const double below = forecast.cdf(seen.z);
    const double ruledOut = seen.kind == ObservationKind::AtLeast ? below : 1 - below;
    if (ruledOut >= kBites) set.weight = 1;
}

// The odds before anything was seen.
double priorLogOdds(const RegimeParameters& p)
{
    return std::log((p.start[1] + p.start[2]) / p.start[0]);
}

class SessionExplainer {
public:
    SessionExplainer(const LineTracker& before, const HeardSession& heard, ExplainedSession& session)
        : m_before(before), m_heard(heard), m_session(session)
    {}

    void explain()
    {
        m_session.before =
            m_before.started() ? notRisingLogOdds(*m_before.chances()) : priorLogOdds(m_before.parameters().filter);
        double odds = m_session.before;
        for (std::size_t i = 0; i < m_heard.observations.size(); ++i) {
            ExplainedSet& set = m_session.sets[m_heard.sets[i]];
            takeHeard(set, m_heard.observations[i]);
            addExpectation(set, m_before, m_session.date, m_heard.observations[i]);
            const bool more = i + 1 < m_heard.sets.size() && m_heard.sets[i + 1] == m_heard.sets[i];
            if (more) continue;
            const double after = oddsAfter(i + 1);
            set.pull = after - odds;
            odds = after;
        }
        m_session.after = odds;
    }

private:
    // With the first `count` observations of the session and no more.
    [[nodiscard]] double oddsAfter(std::size_t count) const
    {
        auto cases = m_before.cases();
        const auto observations = m_heard.ofUsualDay();
        for (TrackedCase& one : cases)
            one.filter.session(static_cast<double>(m_session.date.toJulianDay()), std::span(observations).first(count));
        return notRisingLogOdds(m_before.chancesOf(cases));
    }

    const LineTracker& m_before;
    const HeardSession& m_heard;
    ExplainedSession& m_session;
};

}  // namespace

LineExplanation explainLine(const RegimeEngine& engine, const LineRecord& record, const AthleteLog& log, QDate asOf,
                            int weeks)
{
    LineExplanation all;
    const QDate from = asOf.addDays(1 - 7 * weeks);
    for (std::size_t i = 0; i < record.exposures.size(); ++i)
        if (record.exposures[i].date >= from && record.exposures[i].date <= asOf)
            all.sessions.push_back(unheardSession(record, i));
    const LineTracker tracker =
        engine.track(record, log, asOf, [&](const LineTracker& before, const HeardSession& heard) {
            const auto session = std::ranges::find(all.sessions, heard.exposure, &ExplainedSession::exposure);
            if (session != all.sessions.end()) SessionExplainer(before, heard, *session).explain();
        });
    for (ExplainedSession& session : all.sessions) findSlips(session, tracker, record, log);
    all.chances = tracker.chances();
    all.notRisingLimit = tracker.notRisingLimit();
    if (tracker.started()) {
        const double elasticity = elasticityOf(tracker);
        for (int day = 0; day < 7; ++day)
            all.weekdayShares[static_cast<std::size_t>(day)] =
                std::expm1(tracker.weekdays().effectOn(QDate::fromJulianDay(day)) / elasticity);
    }
    return all;
}

double notRisingLogOdds(const RegimeChances& chances)
{
    return std::log(chances.notRising() / chances.rising);
}

PullStrength pullStrength(double pull)
{
    const double size = std::abs(pull);
    if (size >= std::log(2.0)) return PullStrength::Strongly;
    if (size >= std::log(1.25)) return PullStrength::Somewhat;
    return size >= std::log(1.05) ? PullStrength::Hardly : PullStrength::Neither;
}

bool isHeard(const ExplainedSet& set)
{
    return set.heard != HeardAs::WarmUp && set.heard != HeardAs::NoLoad && set.heard != HeardAs::Slip;
}

WeightWord weightWord(const ExplainedSet& set)
{
    if (!isHeard(set)) return WeightWord::Not;
    if (set.weight >= 0.75) return WeightWord::Fully;
    if (set.weight >= 1.0 / 3.0) return WeightWord::Partly;
    return set.weight >= 0.1 ? WeightWord::Little : WeightWord::Hardly;
}

}  // namespace steelyard
