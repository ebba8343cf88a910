#include "core/trials/arm_shares.h"

#include "core/numerics/beta.h"

#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cassert>

namespace steelyard {
namespace {

// Beta densities of so few sessions are polynomials of a modest degree.
constexpr int kPanels = 4;

template <class Integrand>
double overShares(const Integrand& integrand, double from = 0, double to = 1)
{
    double sum = 0;
    for (int panel = 0; panel < kPanels; ++panel)
        sum += boost::math::quadrature::gauss<double, 30>::integrate(integrand, from + (to - from) * panel / kPanels,
                                                                     from + (to - from) * (panel + 1) / kPanels);
    return sum;
}

double posteriorDensity(const Tally& tally, double share)
{
    return betaDensity(share, 1.0 + tally.yes, 1.0 + tally.of - tally.yes);
}

double posteriorBelow(const Tally& tally, double share)
{
    return betaCdf(share, 1.0 + tally.yes, 1.0 + tally.of - tally.yes);
}

// That arm less over is at most `limit`. Where share + limit is beyond 1 the arm is always below it, under 0 never: taken out of
// the integral, which would have a kink there.
double chanceDifferenceBelow(const Tally& arm, const Tally& over, double limit)
{
    const double from = std::clamp(-limit, 0.0, 1.0);
    const double to = std::clamp(1 - limit, 0.0, 1.0);
    const auto inside = [&](double share) {
        return posteriorDensity(over, share) * posteriorBelow(arm, share + limit);
    };
    return overShares(inside, from, to) + 1 - posteriorBelow(over, to);
}

double differenceQuantile(const Tally& arm, const Tally& over, double probability)
{
    constexpr int kDigits = 30;  // binary: 1e-9
    std::uintmax_t steps = 60;
    const auto [low, high] = boost::math::tools::toms748_solve(
        [&](double limit) { return chanceDifferenceBelow(arm, over, limit) - probability; }, -1.0, 1.0, -probability,
        1 - probability, boost::math::tools::eps_tolerance<double>(kDigits), steps);
    return (low + high) / 2;
}

double meanShare(const Tally& tally)
{
    return (1.0 + tally.yes) / (2.0 + tally.of);
}

}  // namespace

ArmShares::ArmShares(std::vector<Tally> tallies) : m_tallies(std::move(tallies))
{
    for ([[maybe_unused]] const Tally& tally : m_tallies) assert(tally.yes >= 0 && tally.yes <= tally.of);
}

ShareInterval ArmShares::share(std::size_t arm, double level) const
{
    const Tally& tally = m_tallies[arm];
    const double a = 1.0 + tally.yes;
    const double b = 1.0 + tally.of - tally.yes;
    return {meanShare(tally), betaQuantile((1 - level) / 2, a, b), betaQuantile((1 + level) / 2, a, b)};
}

ShareInterval ArmShares::difference(std::size_t arm, std::size_t over, double level) const
{
    const Tally& one = m_tallies[arm];
    const Tally& other = m_tallies[over];
    return {meanShare(one) - meanShare(other), differenceQuantile(one, other, (1 - level) / 2),
            differenceQuantile(one, other, (1 + level) / 2)};
}

double ArmShares::chanceAbove(std::size_t arm, std::size_t over) const
{
    return 1 - chanceDifferenceBelow(m_tallies[arm], m_tallies[over], 0);
}

std::vector<double> ArmShares::chanceBest() const
{
    std::vector<double> best(arms(), 0.0);
    for (std::size_t arm = 0; arm < arms(); ++arm)
        best[arm] = overShares([&](double share) {
            double all = posteriorDensity(m_tallies[arm], share);
            for (std::size_t other = 0; other < arms(); ++other)
                if (other != arm) all *= posteriorBelow(m_tallies[other], share);
            return all;
        });
    return best;
}

}  // namespace steelyard
