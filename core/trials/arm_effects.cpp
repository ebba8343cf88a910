#include "core/trials/arm_effects.h"

#include "core/trials/arm_shares.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace steelyard {
namespace {

constexpr double kLow90 = 0.05;
constexpr double kHigh90 = 0.95;
// A weighed outcome that is rated in fewer sessions than this share of them is left out of the answer.
constexpr double kLeastRatedShare = 0.5;

bool counts(const TrialObservation& seen, std::optional<int> lastBlock)
{
    return seen.block > 0 && (!lastBlock || seen.block <= *lastBlock);
}

bool wasTrained(const TrialObservation& seen)
{
    return seen.done && seen.doneOn;
}

// One outcome's values, turned such that more is better.
struct TurnedValues {
    ArmValues values;
    double sign = 1;
    std::vector<DrawnSession> drawn;  // every counting session, also without a value
};

template <class ValueOf>
TurnedValues turnedValues(const Trial& trial, const TrialRecord& record, ArmTaken taken, std::optional<int> lastBlock,
                          double sign, const ValueOf& valueOf)
{
    TurnedValues turned;
    turned.sign = sign;
    turned.values.arms = trial.arms.size();
    for (std::size_t i = 0; i < record.observations.size(); ++i) {
        const TrialObservation& seen = record.observations[i];
        if (!counts(seen, lastBlock)) continue;
        const std::optional<double> value = wasTrained(seen) ? valueOf(i) : std::nullopt;
        turned.drawn.push_back({seen.block, seen.drawn, value});
        if (!value) continue;
        turned.values.arm.push_back(taken == ArmTaken::Done ? *seen.done : seen.drawn);
        turned.values.value.push_back(sign * *value);
        turned.values.time.push_back(static_cast<double>(i));
    }
    return turned;
}

std::vector<ArmLevel> plainLevels(const TurnedValues& turned)
{
    std::vector<ArmLevel> levels(turned.values.arms);
    for (std::size_t i = 0; i < turned.values.arm.size(); ++i) {
        ArmLevel& level = levels[turned.values.arm[i]];
        ++level.sessions;
        level.mean = level.mean.value_or(0) + turned.sign * turned.values.value[i];
    }
    for (ArmLevel& level : levels)
        if (level.mean) *level.mean /= level.sessions;
    return levels;
}

std::vector<std::size_t> armsWithValues(const std::vector<ArmLevel>& levels)
{
    std::vector<std::size_t> arms;
    for (std::size_t arm = 0; arm < levels.size(); ++arm)
        if (levels[arm].sessions > 0) arms.push_back(arm);
    return arms;
}

// An interval of turned values, in the outcome's own direction.
void setInterval(double sign, double low, double high, double& outLow, double& outHigh)
{
    outLow = sign > 0 ? low : -high;
    outHigh = sign > 0 ? high : -low;
}

void addRegression(const TurnedValues& turned, const RegressionPriors& priors, OutcomeEffects& effects)
{
    effects.posterior = regressArms(turned.values, priors);
    if (!effects.posterior) return;
    const ArmPosterior& posterior = *effects.posterior;
    effects.spread = posterior.spread();
    effects.trend = turned.sign * posterior.trend();
    const auto arms = armsWithValues(effects.arms);
    for (const std::size_t arm : arms) {
        const PosteriorT level = posterior.level(arm);
        ArmLevel& shown = effects.arms[arm];
        double low = 0;
        double high = 0;
        setInterval(turned.sign, level.quantile(kLow90), level.quantile(kHigh90), low, high);
        shown.level = turned.sign * level.mean;
        shown.low90 = low;
        shown.high90 = high;
        for (const std::size_t over : arms) {
            if (over >= arm) break;
            const PosteriorT difference = posterior.difference(arm, over);
            EstimatedDifference one{arm, over, turned.sign * difference.mean};
            setInterval(turned.sign, difference.quantile(kLow90), difference.quantile(kHigh90), one.low90, one.high90);
            one.chanceBetter = difference.chanceAbove(0);
            effects.differences.push_back(one);
        }
    }
    if (arms.size() < 2) return;
    const auto chances = posterior.chanceBest(arms);
    effects.chanceBest.assign(effects.arms.size(), 0.0);
    for (std::size_t i = 0; i < arms.size(); ++i) effects.chanceBest[arms[i]] = chances[i];
}

void addShares(const TurnedValues& turned, OutcomeEffects& effects)
{
    std::vector<Tally> tallies(turned.values.arms);
    for (std::size_t i = 0; i < turned.values.arm.size(); ++i) {
        Tally& tally = tallies[turned.values.arm[i]];
        tally.yes += turned.values.value[i] > 0.5 ? 1 : 0;
        ++tally.of;
    }
    const auto arms = armsWithValues(effects.arms);
    std::vector<Tally> known;
    known.reserve(arms.size());
    for (const std::size_t arm : arms) known.push_back(tallies[arm]);
    const ArmShares shares(known);
    for (std::size_t i = 0; i < arms.size(); ++i) {
        const ShareInterval share = shares.share(i);
        effects.arms[arms[i]].level = share.mean;
        effects.arms[arms[i]].low90 = share.low;
        effects.arms[arms[i]].high90 = share.high;
        for (std::size_t j = 0; j < i; ++j) {
            const ShareInterval difference = shares.difference(i, j);
            effects.differences.push_back(
                {arms[i], arms[j], difference.mean, difference.low, difference.high, shares.chanceAbove(i, j)});
        }
    }
    if (arms.size() < 2) return;
    const auto chances = shares.chanceBest();
    effects.chanceBest.assign(effects.arms.size(), 0.0);
    for (std::size_t i = 0; i < arms.size(); ++i) effects.chanceBest[arms[i]] = chances[i];
}

void addByLot(const Trial& trial, const TurnedValues& turned, bool ordinal, OutcomeEffects& effects)
{
    RandomisationQuestion question{trial.arms.size(), turned.drawn};
    question.seed = trial.seed;
    effects.byLot = randomisationTest(question);
    question.ranks = true;
    if (ordinal) effects.byLotRanks = randomisationTest(question);
}

OutcomeEffects effectsOf(const Trial& trial, const TrialRecord& record, const OutcomeKind& kind, ArmTaken taken,
                         std::optional<int> lastBlock)
{
    OutcomeEffects effects;
    effects.key = kind.key;
    const auto turned = turnedValues(trial, record, taken, lastBlock, kind.moreIsBetter ? 1 : -1,
                                     [&](std::size_t at) { return record.observations[at].value(kind.key); });
    effects.arms = plainLevels(turned);
    if (kind.scale == OutcomeScale::YesNo)
        addShares(turned, effects);
    else
        addRegression(turned, RegressionPriors::forSpread(kind.usualSpread, 0), effects);
    if (taken == ArmTaken::Drawn) addByLot(trial, turned, kind.ordinal(), effects);
    return effects;
}

// What the answer is made of.
struct WeighedOutcome {
    const OutcomeKind* kind = nullptr;
    double weight = 0;
};

std::vector<WeighedOutcome> weighedOutcomes(const Trial& trial)
{
    std::vector<WeighedOutcome> weighed;
    for (const TrialOutcome& outcome : trial.outcomes) {
        const OutcomeKind* kind = findOutcome(outcome.key);
        if (kind && kind->outOfTen(0) && outcome.weight > 0) weighed.push_back({kind, outcome.weight});
    }
    return weighed;
}

bool isRatedOften(const TrialRecord& record, std::optional<int> lastBlock, const QString& key)
{
    int trained = 0;
    int rated = 0;
    for (const TrialObservation& seen : record.observations) {
        if (!counts(seen, lastBlock) || !wasTrained(seen)) continue;
        ++trained;
        rated += seen.value(key) ? 1 : 0;
    }
    return rated > 0 && rated >= kLeastRatedShare * trained;
}

std::optional<double> answerOf(const TrialObservation& seen, const std::vector<WeighedOutcome>& weighed)
{
    double sum = 0;
    double weights = 0;
    for (const WeighedOutcome& one : weighed) {
        const auto value = seen.value(one.kind->key);
        if (!value) return std::nullopt;
        sum += one.weight * *one.kind->outOfTen(*value);
        weights += one.weight;
    }
    if (weights <= 0) return std::nullopt;
    return sum / weights;
}

// Outcomes of one session stray together: a good day is good in all of them. By half, our convention.
double answerSpread(const std::vector<WeighedOutcome>& weighed)
{
    constexpr double kTogether = 0.5;
    double squares = 0;
    double sum = 0;
    double weights = 0;
    for (const WeighedOutcome& one : weighed) {
        const double points = one.kind->usualSpread * (one.kind->scale == OutcomeScale::YesNo ? 10.0 : 1.0);
        squares += one.weight * one.weight * points * points;
        sum += one.weight * points;
        weights += one.weight;
    }
    return std::sqrt((1 - kTogether) * squares + kTogether * sum * sum) / weights;
}

std::vector<WeighedOutcome> ratedOutcomes(const Trial& trial, const TrialRecord& record, std::optional<int> lastBlock,
                                          std::vector<QString>* leftOut)
{
    auto weighed = weighedOutcomes(trial);
    std::erase_if(weighed, [&](const WeighedOutcome& one) {
        const bool out = !isRatedOften(record, lastBlock, one.kind->key);
        if (out && leftOut) leftOut->push_back(one.kind->key);
        return out;
    });
    return weighed;
}

struct AnswerFound {
    TurnedValues turned;
    OutcomeEffects effects;
};

// Absent when fewer than two arms have one.
std::optional<AnswerFound> answerFound(const Trial& trial, const TrialRecord& record, ArmTaken taken,
                                       std::optional<int> lastBlock, const std::vector<WeighedOutcome>& weighed)
{
    if (weighed.empty()) return std::nullopt;
    AnswerFound found{turnedValues(trial, record, taken, lastBlock, 1,
                                   [&](std::size_t at) { return answerOf(record.observations[at], weighed); }),
                      {}};
    found.effects.arms = plainLevels(found.turned);
    if (armsWithValues(found.effects.arms).size() < 2) return std::nullopt;
    addRegression(found.turned, RegressionPriors::forSpread(answerSpread(weighed), 0), found.effects);
    return found;
}

void addAnswer(const Trial& trial, const TrialRecord& record, std::optional<int> lastBlock, TrialEffects& effects)
{
    const auto weighed = ratedOutcomes(trial, record, lastBlock, &effects.leftOut);
    effects.sessionsWithoutAnswer =
        static_cast<int>(std::ranges::count_if(record.observations, [&](const TrialObservation& seen) {
            return counts(seen, lastBlock) && wasTrained(seen) && !weighed.empty() && !answerOf(seen, weighed);
        }));
    auto found = answerFound(trial, record, effects.taken, lastBlock, weighed);
    if (!found) return;
    if (effects.taken == ArmTaken::Drawn) addByLot(trial, found->turned, true, found->effects);
    effects.answer = std::move(found->effects);
}

}  // namespace

const EstimatedDifference* OutcomeEffects::difference(std::size_t arm, std::size_t over) const
{
    const auto found = std::ranges::find_if(
        differences, [&](const EstimatedDifference& one) { return one.arm == arm && one.over == over; });
    return found == differences.end() ? nullptr : &*found;
}

const OutcomeEffects* TrialEffects::outcome(QStringView key) const
{
    const auto found = std::ranges::find_if(outcomes, [&](const OutcomeEffects& one) { return one.key == key; });
    return found == outcomes.end() ? nullptr : &*found;
}

TrialEffects trialEffects(const Trial& trial, const TrialRecord& record, ArmTaken taken, std::optional<int> lastBlock)
{
    TrialEffects effects;
    effects.taken = taken;
    addAnswer(trial, record, lastBlock, effects);
    for (const TrialOutcome& outcome : trial.outcomes)
        if (const OutcomeKind* kind = findOutcome(outcome.key))
            effects.outcomes.push_back(effectsOf(trial, record, *kind, taken, lastBlock));
    return effects;
}

std::optional<OutcomeEffects> weighedAnswer(const Trial& trial, const TrialRecord& record, ArmTaken taken,
                                            std::optional<int> lastBlock)
{
    auto found = answerFound(trial, record, taken, lastBlock, ratedOutcomes(trial, record, lastBlock, nullptr));
    if (!found) return std::nullopt;
    return std::move(found->effects);
}

std::vector<std::optional<double>> sessionAnswers(const Trial& trial, const TrialRecord& record)
{
    const auto weighed = ratedOutcomes(trial, record, std::nullopt, nullptr);
    std::vector<std::optional<double>> answers;
    answers.reserve(record.observations.size());
    for (const TrialObservation& seen : record.observations)
        answers.push_back(wasTrained(seen) && !weighed.empty() ? answerOf(seen, weighed) : std::nullopt);
    return answers;
}

}  // namespace steelyard
