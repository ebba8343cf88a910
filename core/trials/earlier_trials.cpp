#include "core/trials/earlier_trials.h"

#include "core/numerics/distribution.h"
#include "core/numerics/student.h"

#include <boost/math/distributions/chi_squared.hpp>

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>
#include <map>

namespace steelyard {
namespace {

struct EarlierTrialText {
    Q_DECLARE_TR_FUNCTIONS(EarlierTrialText)
};

constexpr double kContradicts = 0.10;  // p of Cochran's Q; usual, for it finds little with few trials
constexpr double k90 = 0.95;           // upper end of an interval of 90 %

bool sameArm(const TrialArm& one, const TrialArm& other)
{
    const auto seconds = [](const TrialArm& arm) {
        return arm.loweringSeconds ? arm.loweringSeconds->toDouble() : -1.0;
    };
    return one.variant == other.variant && one.grip == other.grip && one.standard == other.standard
           && one.band == other.band && seconds(one) == seconds(other);
}

// Shares of the weights, by outcome.
bool sameWeights(const Trial& one, const Trial& other)
{
    const auto shares = [](const Trial& trial) {
        std::map<QString, double> weights;
        double sum = 0;
        for (const TrialOutcome& outcome : trial.outcomes) sum += outcome.weight;
        for (const TrialOutcome& outcome : trial.outcomes)
            if (outcome.weight > 0) weights[outcome.key] = outcome.weight / sum;
        return weights;
    };
    const auto first = shares(one);
    const auto second = shares(other);
    constexpr double kRounding = 1e-9;
    return std::ranges::equal(first, second, [](const auto& a, const auto& b) {
        return a.first == b.first && std::abs(a.second - b.second) < kRounding;
    });
}

std::optional<std::size_t> placeOf(const TrialArm& arm, const Trial& trial)
{
    const auto found = std::ranges::find_if(trial.arms, [&](const TrialArm& other) { return sameArm(arm, other); });
    if (found == trial.arms.end()) return std::nullopt;
    return static_cast<std::size_t>(found - trial.arms.begin());
}

// A difference as its values alone say it: the prior is part of every trial's posterior, and counting it once for each would
// pull the whole towards nothing.
struct PlainDifference {
    double mean = 0;
    double variance = 1;
};

std::optional<PlainDifference> plainDifference(const TrialVerdict& verdict, std::size_t arm, std::size_t over)
{
    const auto& answer = verdict.done.answer;
    if (!answer || !answer->posterior || answer->arms[arm].sessions == 0 || answer->arms[over].sessions == 0)
        return std::nullopt;
    const PosteriorT now = answer->posterior->difference(arm, over);
    const double prior = 1 / std::pow(answer->posterior->priorDifferenceSd(), 2);
    const double all = 1 / (now.scale * now.scale);
    if (all <= prior * 1.01) return std::nullopt;
    return PlainDifference{now.mean * all / (all - prior), 1 / (all - prior)};
}

EarlierDifference shown(const Trial& trial, const PlainDifference& difference)
{
    const double half = normalQuantile(k90) * std::sqrt(difference.variance);
    return {trial.designedOn, trial.question, difference.mean, difference.mean - half, difference.mean + half};
}

void pool(const std::vector<PlainDifference>& trials, EarlierPair& pair)
{
    double weights = 0;
    double sum = 0;
    for (const PlainDifference& one : trials) {
        weights += 1 / one.variance;
        sum += one.mean / one.variance;
    }
    const double mean = sum / weights;
    double q = 0;
    for (const PlainDifference& one : trials) q += std::pow(one.mean - mean, 2) / one.variance;
    const auto freedom = static_cast<double>(trials.size() - 1);
    pair.heterogeneityP = boost::math::cdf(boost::math::complement(boost::math::chi_squared(freedom), q));
    pair.alike = *pair.heterogeneityP >= kContradicts;
    if (!pair.alike) return;
    const double sd = 1 / std::sqrt(weights);
    const double half = normalQuantile(k90) * sd;
    pair.together = EstimatedDifference{pair.arm, pair.over, mean, mean - half, mean + half, normalCdf(mean / sd)};
}

std::optional<EarlierPair> pairOf(const Trial& trial, const TrialVerdict& verdict,
                                  const std::vector<JudgedTrial>& earlier, std::size_t arm, std::size_t over)
{
    EarlierPair pair{arm, over, {}, true, {}, {}};
    std::vector<PlainDifference> plain;
    for (const JudgedTrial& other : earlier) {
        const bool isItself = other.trial.days == trial.days && other.trial.designedOn == trial.designedOn;
        const auto first = placeOf(trial.arms[arm], other.trial);
        const auto second = placeOf(trial.arms[over], other.trial);
        if (isItself || other.trial.factor != trial.factor || !first || !second || !sameWeights(trial, other.trial))
            continue;
        const auto difference = plainDifference(other.verdict, *first, *second);
        if (!difference) continue;
        pair.trials.push_back(shown(other.trial, *difference));
        plain.push_back(*difference);
    }
    if (plain.empty()) return std::nullopt;
    std::ranges::sort(pair.trials, {}, &EarlierDifference::designedOn);
    if (const auto own = plainDifference(verdict, arm, over)) {
        pair.trials.push_back(shown(trial, *own));
        plain.push_back(*own);
    }
    if (plain.size() > 1) pool(plain, pair);
    return pair;
}

QString pairSentence(const EarlierPair& pair, const std::vector<QString>& names, const Wording& wording)
{
    const auto named = [&](std::size_t arm) { return arm < names.size() ? names[arm] : armLetter(arm); };
    const auto count = static_cast<int>(pair.trials.size());
    if (!pair.alike)
        return EarlierTrialText::tr("%n trial(s) of %1 against %2 contradict each other; they are not put together.",
                                    nullptr, count)
            .arg(named(pair.arm), named(pair.over));
    if (!pair.together)
        return EarlierTrialText::tr("An earlier trial of %1 against %2 is shown beside this one.")
            .arg(named(pair.arm), named(pair.over));
    return EarlierTrialText::tr("%n trial(s) of %1 against %2 together: %3 points of 10 (90 % interval %4 to %5).",
                                nullptr, count)
        .arg(named(pair.arm), named(pair.over), wording.number(pair.together->mean),
             wording.number(pair.together->low90), wording.number(pair.together->high90));
}

}  // namespace

EarlierTrials earlierTrials(const Trial& trial, const TrialVerdict& verdict, const std::vector<JudgedTrial>& earlier,
                            const std::vector<QString>& armNames, const Wording& wording)
{
    EarlierTrials found;
    for (std::size_t arm = 1; arm < trial.arms.size(); ++arm)
        for (std::size_t over = 0; over < arm; ++over)
            if (auto pair = pairOf(trial, verdict, earlier, arm, over)) {
                if (!found.sentence.isEmpty()) found.sentence += u' ';
                found.sentence += pairSentence(*pair, armNames, wording);
                found.pairs.push_back(std::move(*pair));
            }
    return found;
}

}  // namespace steelyard
