#include "tests/support/simulated_trials.h"

#include "core/trials/arm_effects.h"
#include "core/trials/trial_random.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace steelyard::testing_support {
namespace {

constexpr double kSpread = 1.2;
constexpr double kLevel = 6;

double rated(double points)
{
    return std::clamp(std::round(points), 0.0, 10.0);
}

// One noise that remembers the session before.
class AlikeNoise {
public:
    explicit AlikeNoise(double likeness) : m_likeness(likeness) {}
    double next(TrialRandom& random)
    {
        const double fresh = random.normal();
        m_last = m_begun ? m_likeness * m_last + std::sqrt(1 - m_likeness * m_likeness) * fresh : fresh;
        m_begun = true;
        return m_last;
    }

private:
    double m_likeness;
    double m_last = 0;
    bool m_begun = false;
};

struct MadeSession {
    int block = 1;
    std::size_t arm = 0;
    double away = 0;  // of its expected rating from the level, in SDs
    bool missed = false;
};

std::vector<MadeSession> madeSessions(const SimulatedTrial& made, TrialRandom& random)
{
    std::vector<MadeSession> sessions;
    std::vector<std::size_t> order(made.arms);
    const double last = static_cast<double>(made.arms) * made.blocks - 1;
    for (int block = 1; block <= made.blocks; ++block) {
        std::iota(order.begin(), order.end(), std::size_t{0});
        random.shuffle(std::span<std::size_t>(order));
        for (const std::size_t arm : order) {
            double away = made.driftSds * static_cast<double>(sessions.size()) / last;
            if (arm + 1 == made.arms) away += made.differenceSds;
            if (arm == 0) away += made.firstArmSds;
            sessions.push_back({block, arm, away, made.missedShare > 0 && random.uniform() < made.missedShare});
        }
    }
    return sessions;
}

// Five outcomes, half of whose variance is the day's own.
std::vector<OutcomeValue> fiveOutcomes(const MadeSession& session, double day, TrialRandom& random)
{
    const auto noise = [&] { return std::sqrt(0.5) * (day + random.normal()); };
    const auto rating = [&] { return rated(kLevel + kSpread * (session.away + noise())); };
    constexpr double kUsuallyFirst = 0.5;  // SDs of a hidden scale: seven sessions in ten
    constexpr double kUsualDiscomfort = 1;
    return {{QStringLiteral("tension"), rating()},
            {QStringLiteral("target_first"), kUsuallyFirst + session.away + noise() > 0 ? 1.0 : 0.0},
            {QStringLiteral("pump"), rating()},
            {QStringLiteral("burn"), rating()},
            {QStringLiteral("discomfort"), rated(kUsualDiscomfort + random.normal())}};
}

// What is known of a trial after each of its blocks.
class MadeTrial {
public:
    MadeTrial(const SimulatedTrial& made, TrialRandom& random)
        : m_made(made), m_trial{.athlete = Id<Athlete>(1)}, m_sessions(madeSessions(made, random))
    {
        AlikeNoise noise(made.likeness);
        m_trial.arms.assign(made.arms, {Id<Variant>(1), Id<Grip>(1), Id<RepStandard>(1), {}});
        if (made.weighed) m_trial.outcomes = defaultOutcomes();
        for (const MadeSession& session : m_sessions) {
            const double day = noise.next(random);
            if (!made.weighed) {
                m_ratings.push_back(rated(kLevel + kSpread * (session.away + day)));
                continue;
            }
            TrialObservation seen;
            seen.block = session.block;
            seen.drawn = session.arm;
            if (!session.missed) {
                seen.done = session.arm;
                seen.doneOn = QDate(2027, 1, 4);
                seen.values = fiveOutcomes(session, day, random);
            }
            m_record.observations.push_back(seen);
        }
    }

    [[nodiscard]] std::optional<ArmPosterior> after(int block) const
    {
        if (m_made.weighed) {
            const auto answer = weighedAnswer(m_trial, m_record, ArmTaken::Done, block);
            return answer ? answer->posterior : std::nullopt;
        }
        ArmValues values{m_made.arms, {}, {}, {}};
        for (std::size_t i = 0; i < m_sessions.size() && m_sessions[i].block <= block; ++i) {
            if (m_sessions[i].missed) continue;
            values.arm.push_back(m_sessions[i].arm);
            values.value.push_back(m_ratings[i]);
            values.time.push_back(static_cast<double>(i));
        }
        return regressArms(values, {});
    }

    // Mean of the arm's weighed answers, every block done.
    [[nodiscard]] double plainAnswer(std::size_t arm) const
    {
        const auto answer = weighedAnswer(m_trial, m_record, ArmTaken::Done);
        return answer ? answer->arms[arm].mean.value_or(0) : 0;
    }

    [[nodiscard]] bool foundByLot() const
    {
        RandomisationQuestion question{m_made.arms, {}};
        for (std::size_t i = 0; i < m_sessions.size(); ++i)
            question.sessions.push_back({m_sessions[i].block, m_sessions[i].arm, m_ratings[i]});
        const auto answer = randomisationTest(question);
        return answer && answer->p <= 0.05;
    }

private:
    SimulatedTrial m_made;
    Trial m_trial;
    TrialRecord m_record;
    std::vector<MadeSession> m_sessions;
    std::vector<double> m_ratings;
};

bool isBest(const SimulatedTrial& made, std::size_t arm)
{
    if (made.differenceSds > 0) return arm + 1 == made.arms;
    return !(made.firstArmSds < 0 && arm == 0);
}

void follow(const SimulatedTrial& made, const MadeTrial& trial, TrialTally& tally)
{
    const TrialRule rule = trialRule(made.arms, made.blocks);
    std::vector<std::size_t> all(made.arms);
    std::iota(all.begin(), all.end(), std::size_t{0});
    for (int block = kFirstLook; block <= made.blocks; ++block) {
        const auto posterior = trial.after(block);
        if (!posterior) continue;
        const LookFinding found = decideAt(*posterior, all, block, rule);
        if (found.says == LookSays::GoOn) continue;
        if (found.says == LookSays::Prefer)
            (isBest(made, found.best) ? tally.right : tally.wrong) += 1;
        else
            (found.says == LookSays::Undecided ? tally.undecided : tally.equal) += 1;
        tally.meanSessions += block * static_cast<double>(made.arms);
        return;
    }
    tally.undecided += 1;
    tally.meanSessions += made.blocks * static_cast<double>(made.arms);
}

}  // namespace

TrialTally simulateTrials(const SimulatedTrial& made, int trials, std::uint64_t seed, bool alsoByLot)
{
    TrialTally tally{.trials = trials};
    TrialRandom random(seed);
    double answers = 0;
    double spreads = 0;
    for (int i = 0; i < trials; ++i) {
        const MadeTrial trial(made, random);
        follow(made, trial, tally);
        if (alsoByLot) tally.byLot += trial.foundByLot() ? 1 : 0;
        const auto end = trial.after(made.blocks);
        if (end && made.weighed) {
            answers += trial.plainAnswer(made.arms - 1) - trial.plainAnswer(0);
            spreads += end->spread();
        } else if (end) {
            const PosteriorT difference = end->difference(made.arms - 1, 0);
            const double truth = kSpread * (made.differenceSds - made.firstArmSds);
            tally.coverage += difference.quantile(0.05) <= truth && truth <= difference.quantile(0.95) ? 1 : 0;
        }
    }
    if (spreads > 0) tally.answerSds = answers / spreads;
    for (double* share : {&tally.right, &tally.wrong, &tally.equal, &tally.undecided, &tally.meanSessions,
                          &tally.coverage, &tally.byLot})
        *share /= std::max(trials, 1);
    return tally;
}

}  // namespace steelyard::testing_support
