#include "core/trials/arm_regression.h"

#include "core/numerics/distribution.h"
#include "core/numerics/student.h"

#include <Eigen/Dense>

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace steelyard {
namespace {

// Levels and differences of at most this many arms, a trend, and the two columns that may be asked for. No memory is taken
// while a trial is simulated a million times.
constexpr int kMostColumns = 12;
using SmallMatrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, kMostColumns, kMostColumns>;
using SmallVector = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, kMostColumns, 1>;
constexpr std::size_t kMostRegressed = kMostColumns - 3;

// Shares of differenceSd squared.
constexpr double kGettingUsedVariance = 0.5;
constexpr double kCarryOverVariance = 0.09;
constexpr double kGettingUsedFade = 2;  // sessions

struct RegressionColumns {
    int trend = -1;
    int gettingUsed = -1;
    int carryOver = -1;
    int count = 0;
};

RegressionColumns columnsOf(const ArmValues& values, const RegressionPriors& priors)
{
    RegressionColumns columns;
    columns.count = static_cast<int>(values.arms);
    if (priors.trendSd > 0) columns.trend = columns.count++;
    if (priors.gettingUsed) columns.gettingUsed = columns.count++;
    if (priors.carryOver) columns.carryOver = columns.count++;
    return columns;
}

// In terms of the noise: a prior of this model is as wide as the noise turns out to be, so what it says in points is said beside
// the spread that is expected.
SmallMatrix priorPrecision(const ArmValues& values, const RegressionPriors& priors, const RegressionColumns& columns)
{
    SmallMatrix precision = SmallMatrix::Zero(columns.count, columns.count);
    precision(0, 0) = 1 / (priors.levelSd * priors.levelSd);
    // Arms' levels scatter independently, so that two differences from the first share half of their variance; this is the
    // inverse of that.
    const auto differences = static_cast<int>(values.arms) - 1;
    const double half = priors.differenceSd * priors.differenceSd / 2;
    for (int i = 1; i <= differences; ++i)
        for (int j = 1; j <= differences; ++j)
            precision(i, j) = ((i == j ? 1.0 : 0.0) - 1.0 / (1 + differences)) / half;
    const double squared = priors.differenceSd * priors.differenceSd;
    if (columns.trend >= 0) precision(columns.trend, columns.trend) = 1 / (priors.trendSd * priors.trendSd);
    if (columns.gettingUsed >= 0)
        precision(columns.gettingUsed, columns.gettingUsed) = 1 / (kGettingUsedVariance * squared);
    if (columns.carryOver >= 0) precision(columns.carryOver, columns.carryOver) = 1 / (kCarryOverVariance * squared);
    return precision * (priors.spread * priors.spread);
}

bool isRegressable(const ArmValues& values, const RegressionPriors& priors)
{
    const auto finite = [](double value) { return std::isfinite(value); };
    return values.arms >= 2 && values.arms <= kMostRegressed && !values.value.empty()
           && values.arm.size() == values.value.size()
           && (values.time.empty() || values.time.size() == values.value.size())
           && std::ranges::all_of(values.arm, [&](std::size_t arm) { return arm < values.arms; })
           && std::ranges::all_of(values.value, finite) && std::ranges::all_of(values.time, finite)
           && !(priors.carryOver && values.arms != 2);
}

// From -1/2 to 1/2; all 0 where everything is at one time.
double timeOf(const ArmValues& values, std::size_t at)
{
    if (values.time.empty()) {
        const auto last = static_cast<double>(values.value.size()) - 1;
        return last > 0 ? static_cast<double>(at) / last - 0.5 : 0;
    }
    const auto [first, last] = std::ranges::minmax(values.time);
    return last > first ? (values.time[at] - first) / (last - first) - 0.5 : 0;
}

// What the sessions add to the prior.
struct RegressionSums {
    SmallMatrix precision;
    SmallVector moment;
    double squares = 0;
};

RegressionSums summed(const ArmValues& values, const RegressionPriors& priors, const RegressionColumns& columns)
{
    RegressionSums sums{priorPrecision(values, priors, columns), SmallVector::Zero(columns.count), 0};
    std::array<int, kMostRegressed> doneOf{};
    for (std::size_t i = 0; i < values.value.size(); ++i) {
        const std::size_t arm = values.arm[i];
        SmallVector row = SmallVector::Zero(columns.count);
        row(0) = 1;
        if (arm > 0) row(static_cast<int>(arm)) = 1;
        if (columns.trend >= 0) row(columns.trend) = timeOf(values, i);
        if (columns.gettingUsed >= 0 && arm > 0)
            row(columns.gettingUsed) = -std::exp(-static_cast<double>(doneOf[arm]) / kGettingUsedFade);
        if (columns.carryOver >= 0) row(columns.carryOver) = (i > 0 && values.arm[i - 1] == 1 ? 1.0 : 0.0) - 0.5;
        ++doneOf[arm];
        const double value = values.value[i] - priors.levelMean;
        sums.precision += row * row.transpose();
        sums.moment += value * row;
        sums.squares += value * value;
    }
    return sums;
}

// Points of a standard normal in four dimensions that leave no gaps: an additive recurrence (Roberts 2018, "The unreasonable
// effectiveness of quasirandom sequences", from memory). The first three are for arms, the last for the noise.
constexpr std::size_t kPoints = 4096;
constexpr std::size_t kPointArms = 3;
using NormalPoint = std::array<double, kPointArms + 1>;

const std::vector<NormalPoint>& normalPoints()
{
    static const std::vector<NormalPoint> points = [] {
        constexpr double kRoot = 1.1673039782614187;  // of x^5 = x + 1
        std::vector<NormalPoint> made(kPoints);
        for (std::size_t i = 0; i < kPoints; ++i)
            for (std::size_t axis = 0; axis < made[i].size(); ++axis) {
                const double step = std::pow(kRoot, -static_cast<double>(axis + 1));
                const double place = 0.5 + step * static_cast<double>(i + 1);
                made[i][axis] = normalQuantile(place - std::floor(place));
            }
        return made;
    }();
    return points;
}

}  // namespace

RegressionPriors RegressionPriors::forSpread(double spread, double levelMean)
{
    RegressionPriors priors;
    const double scale = spread / priors.spread;
    priors.spread = spread;
    priors.differenceSd *= scale;
    priors.trendSd *= scale;
    priors.levelSd *= scale;
    priors.levelMean = levelMean;
    return priors;
}

double PosteriorT::chanceAbove(double limit) const
{
    return studentCdf((mean - limit) / scale, freedom);
}

double PosteriorT::chanceBetween(double low, double high) const
{
    return studentCdf((high - mean) / scale, freedom) - studentCdf((low - mean) / scale, freedom);
}

double PosteriorT::quantile(double probability) const
{
    return mean + scale * studentQuantile(probability, freedom);
}

std::optional<ArmPosterior> regressArms(const ArmValues& values, const RegressionPriors& priors)
{
    if (!isRegressable(values, priors)) return std::nullopt;
    const RegressionColumns columns = columnsOf(values, priors);
    const RegressionSums sums = summed(values, priors, columns);
    const SmallMatrix covariance = sums.precision.inverse();
    const SmallVector mean = covariance * sums.moment;
    const double freedom = priors.spreadWorth + static_cast<double>(values.value.size());
    const double known = priors.spreadWorth * priors.spread * priors.spread;
    const double rest = std::max(known + sums.squares - sums.moment.dot(mean), 1e-12) / freedom;

    ArmPosterior posterior;
    posterior.m_freedom = freedom;
    posterior.m_priorDifferenceSd = priors.differenceSd * std::sqrt(rest) / priors.spread;
    posterior.m_spread =
        std::sqrt(rest * freedom / 2) * std::exp(std::lgamma((freedom - 1) / 2) - std::lgamma(freedom / 2));
    posterior.m_trend = columns.trend >= 0 ? mean(columns.trend) : 0;
    posterior.m_means.resize(values.arms);
    posterior.m_squares.resize(values.arms * values.arms);
    const auto share = [&](std::size_t arm, std::size_t other) {
        const auto a = static_cast<int>(arm);
        const auto b = static_cast<int>(other);
        return covariance(0, 0) + (a > 0 ? covariance(a, 0) : 0) + (b > 0 ? covariance(0, b) : 0)
               + (a > 0 && b > 0 ? covariance(a, b) : 0);
    };
    for (std::size_t arm = 0; arm < values.arms; ++arm) {
        posterior.m_means[arm] = priors.levelMean + mean(0) + (arm > 0 ? mean(static_cast<int>(arm)) : 0);
        for (std::size_t other = 0; other < values.arms; ++other)
            posterior.m_squares[arm * values.arms + other] = rest * share(arm, other);
    }
    return posterior;
}

PosteriorT ArmPosterior::level(std::size_t arm) const
{
    return {m_means[arm], std::sqrt(m_squares[arm * arms() + arm]), m_freedom};
}

double ArmPosterior::product(std::size_t arm, std::size_t other, std::size_t over) const
{
    const auto at = [&](std::size_t i, std::size_t j) { return m_squares[i * arms() + j]; };
    return at(arm, other) - at(arm, over) - at(over, other) + at(over, over);
}

PosteriorT ArmPosterior::difference(std::size_t arm, std::size_t over) const
{
    return {m_means[arm] - m_means[over], std::sqrt(product(arm, arm, over)), m_freedom};
}

std::vector<double> ArmPosterior::chanceBest() const
{
    std::vector<std::size_t> all(arms());
    std::iota(all.begin(), all.end(), std::size_t{0});
    return chanceBest(all);
}

std::vector<double> ArmPosterior::chanceBest(std::span<const std::size_t> among) const
{
    if (among.size() == 1) return {1.0};
    if (among.size() == 2) {
        const double second = difference(among[1], among[0]).chanceAbove(0);
        return {1 - second, second};
    }
    const auto others = static_cast<int>(among.size()) - 1;
    SmallMatrix scale(others, others);
    for (int i = 0; i < others; ++i)
        for (int j = 0; j < others; ++j)
            scale(i, j) =
                product(among[static_cast<std::size_t>(i) + 1], among[static_cast<std::size_t>(j) + 1], among[0]);
    const SmallMatrix root = scale.llt().matrixL();
    // Wilson and Hilferty's cube root of a chi-squared variable, good to a thousandth from ten degrees of freedom on.
    const double tilt = 2 / (9 * m_freedom);
    std::vector<double> best(among.size(), 0.0);
    for (const NormalPoint& point : normalPoints()) {
        const double cube = 1 - tilt + std::sqrt(tilt) * point[kPointArms];
        const double stretch = 1 / std::sqrt(std::max(cube * cube * cube, 1e-6));
        std::size_t winner = 0;
        double most = 0;
        for (int i = 0; i < others; ++i) {
            double away = 0;
            for (int j = 0; j <= i; ++j) away += root(i, j) * point[static_cast<std::size_t>(j)];
            const std::size_t place = static_cast<std::size_t>(i) + 1;
            const double value = m_means[among[place]] - m_means[among[0]] + stretch * away;
            if (value > most) {
                most = value;
                winner = place;
            }
        }
        best[winner] += 1.0 / static_cast<double>(kPoints);
    }
    return best;
}

}  // namespace steelyard
