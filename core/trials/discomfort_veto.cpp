#include "core/trials/discomfort_veto.h"

#include "core/trials/arm_regression.h"

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kLeastRated = 3;           // sessions an arm, before arms are compared
constexpr double kWorsePoints = 1;       // of ten
constexpr double kSureWorse = 0.8;       // that it is worse by more than that
constexpr double kDiscomfortSpread = 1;  // of one arm's sessions; our convention

// The first run that reaches the limit.
std::optional<VetoedArm> byRunning(const Trial& trial, const TrialRecord& record, std::size_t arm)
{
    VetoedArm out{.arm = arm, .sessionsRunning = true};
    int running = 0;
    for (const TrialObservation& seen : record.observations) {
        if (seen.done != arm) continue;
        const auto worst = seen.worstDiscomfort();
        if (!worst) continue;
        if (*worst < trial.limit.rating) {
            running = 0;
            out.rating = 0;
            continue;
        }
        if (*worst >= out.rating) {
            out.rating = *worst;
            out.joint = static_cast<Joint>(std::ranges::find(seen.discomfort, worst) - seen.discomfort.begin());
        }
        if (++running >= trial.limit.sessionsRunning) {
            out.since = seen.date;
            return out;
        }
    }
    return std::nullopt;
}

struct RatedArms {
    ArmValues values;
    std::vector<int> sessions;
    std::vector<QDate> last;
    std::vector<int> highest;
    std::vector<std::optional<Joint>> joint;
};

RatedArms ratedArms(const Trial& trial, const TrialRecord& record)
{
    const std::size_t arms = trial.arms.size();
    RatedArms rated{{arms, {}, {}},
                    std::vector<int>(arms),
                    std::vector<QDate>(arms),
                    std::vector<int>(arms),
                    std::vector<std::optional<Joint>>(arms)};
    for (const TrialObservation& seen : record.observations) {
        const auto worst = seen.worstDiscomfort();
        if (seen.block == 0 || !seen.done || !worst) continue;
        const std::size_t arm = *seen.done;
        rated.values.arm.push_back(arm);
        rated.values.value.push_back(*worst);
        ++rated.sessions[arm];
        rated.last[arm] = seen.date;
        if (*worst > rated.highest[arm]) {
            rated.highest[arm] = *worst;
            rated.joint[arm] = static_cast<Joint>(std::ranges::find(seen.discomfort, worst) - seen.discomfort.begin());
        }
    }
    return rated;
}

std::optional<VetoedArm> byComparison(const RatedArms& rated, const ArmPosterior& posterior, std::size_t arm)
{
    std::optional<std::size_t> best;
    for (std::size_t other = 0; other < rated.sessions.size(); ++other) {
        if (other == arm || rated.sessions[other] < kLeastRated) continue;
        if (!best || posterior.level(other).mean < posterior.level(*best).mean) best = other;
    }
    if (!best || rated.sessions[arm] < kLeastRated) return std::nullopt;
    const double worse = posterior.difference(arm, *best).chanceAbove(kWorsePoints);
    if (worse < kSureWorse) return std::nullopt;
    return VetoedArm{arm, rated.last[arm], false, rated.highest[arm], rated.joint[arm], worse};
}

}  // namespace

std::vector<VetoedArm> vetoedArms(const Trial& trial, const TrialRecord& record)
{
    const RatedArms rated = ratedArms(trial, record);
    auto priors = RegressionPriors::forSpread(kDiscomfortSpread, 1);
    priors.trendSd = 0;
    const auto posterior = regressArms(rated.values, priors);
    std::vector<VetoedArm> out;
    for (std::size_t arm = 0; arm < trial.arms.size(); ++arm) {
        if (const auto running = byRunning(trial, record, arm))
            out.push_back(*running);
        else if (const auto worse = posterior ? byComparison(rated, *posterior, arm) : std::nullopt)
            out.push_back(*worse);
    }
    return out;
}

}  // namespace steelyard
