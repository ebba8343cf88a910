#include "core/analysis/common_fall.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard {
namespace {

constexpr int kWeeksUntilUsual = 300;
// A filter that is as good as certain is not believed beyond this.
constexpr double kLeastChance = 1e-4;

double likelihoodUnderCommon(const RegimeChances& p, const RegimeChances& usual, const RegimeChances& common)
{
    return common.rising * p.rising / usual.rising + common.flat * p.flat / usual.flat
           + common.falling * p.falling / usual.falling;
}

RegimeChances heldOff(const RegimeChances& stated)
{
    const auto held = [](double p) { return std::max(p, kLeastChance); };
    return {held(stated.rising), held(stated.flat), held(stated.falling)};
}

}  // namespace

bool CommonFall::isOfMost() const
{
    return 2 * std::ranges::count(falls, true) > static_cast<std::ptrdiff_t>(witnesses);
}

RegimeChances usualChances(const RegimeParameters& p)
{
    const auto ages = static_cast<std::size_t>(p.ages);
    std::array<std::vector<double>, 3> byAge;
    for (std::size_t mode = 0; mode < 3; ++mode) {
        byAge[mode].assign(ages, 0.0);
        byAge[mode][0] = p.start[mode];
    }
    for (int week = 0; week < kWeeksUntilUsual; ++week) {
        std::array<double, 3> arriving{};
        for (std::size_t mode = 0; mode < 3; ++mode) {
            std::vector<double> older(ages, 0.0);
            for (std::size_t age = 0; age < ages; ++age) {
                const double share = static_cast<int>(age) < p.youngWeeks ? p.youngShare : 1;
                double stays = byAge[mode][age];
                for (std::size_t to = 0; to < 3; ++to) {
                    if (to == mode) continue;
                    const double goes = byAge[mode][age] * p.change[mode][to] * share;
                    arriving[to] += goes;
                    stays -= goes;
                }
                older[std::min(age + 1, ages - 1)] += stays;
            }
            byAge[mode] = std::move(older);
        }
        for (std::size_t mode = 0; mode < 3; ++mode) byAge[mode][0] += arriving[mode];
    }
    const auto sum = [&](std::size_t mode) {
        double all = 0;
        for (const double one : byAge[mode]) all += one;
        return all;
    };
    return {sum(0), sum(1), sum(2)};
}

CommonFall commonFall(std::span<const FallWitness> lines, const RegimeChances& usual, const CommonFallPriors& priors)
{
    CommonFall fall;
    fall.falls.assign(lines.size(), false);
    double evidence = 0;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (lines[i].daysSinceTrained > priors.recentDays) continue;
        ++fall.witnesses;
        const RegimeChances p = heldOff(lines[i].stated);
        const double likelihood = likelihoodUnderCommon(p, usual, priors.lines);
        evidence += std::log(likelihood);
        const double takesPart = priors.lines.falling * p.falling / usual.falling / likelihood;
        fall.falls[i] = takesPart >= priors.takesPart && p.rising < p.notRising();
    }
    if (fall.witnesses < priors.leastLines) {
        fall.falls.assign(lines.size(), false);
        return fall;
    }
    const double worth = 1 + (static_cast<double>(fall.witnesses) - 1) * priors.likeness;
    const double odds = std::log(priors.atWork / (1 - priors.atWork)) + evidence / worth;
    fall.probability = 1 / (1 + std::exp(-odds));
    return fall;
}

}  // namespace steelyard
