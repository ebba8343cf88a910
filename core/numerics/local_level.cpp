#include "core/numerics/local_level.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace steelyard {
namespace {

const double kLogTwoPi = std::log(2.0 * std::numbers::pi);

bool isVariance(double value)
{
    return std::isfinite(value) && value >= 0.0;
}

// With these every variance of an innovation is above zero.
bool isSound(const LocalLevel& model)
{
    return isVariance(model.levelVariance) && isVariance(model.noiseVariance) && isVariance(model.startVariance)
           && model.levelVariance + model.noiseVariance > 0.0 && model.startVariance + model.noiseVariance > 0.0
           && std::isfinite(model.startMean);
}

bool isSound(const LocalTrend& model)
{
    return isVariance(model.levelVariance) && isVariance(model.slopeVariance) && isVariance(model.startLevelVariance)
           && isVariance(model.startSlopeVariance) && std::isfinite(model.startLevel) && std::isfinite(model.startSlope)
           && isVariance(model.noiseVariance) && model.noiseVariance > 0.0;
}

// What an innovation adds to the likelihood, summed.
struct InnovationSums {
    double logVariances = 0;
    double squares = 0;  // each divided by its variance
    std::size_t count = 0;

    [[nodiscard]] double logLikelihood() const
    {
        return -0.5 * (static_cast<double>(count) * kLogTwoPi + logVariances + squares);
    }
};

// The variances don't depend on the observations and come to rest after some steps. So the gain, its logarithm and its
// division are worked out only when the variance isn't the one before, to the last bit; the sums are the same either way.
InnovationSums innovationSums(const LocalLevel& model, TimeSeries y)
{
    InnovationSums sums;
    double mean = model.startMean;
    double variance = model.startVariance;
    double known = -1.0;  // the variance that the next four belong to
    double gain = 0;
    double precision = 0;
    double logVariance = 0;
    double next = 0;
    for (const std::optional<double>& value : y) {
        if (!value) {
            variance += model.levelVariance;
            continue;
        }
        if (variance != known) {
            known = variance;
            const double innovationVariance = variance + model.noiseVariance;
            precision = 1.0 / innovationVariance;
            gain = variance * precision;
            logVariance = std::log(innovationVariance);
            next = gain * model.noiseVariance + model.levelVariance;
        }
        const double innovation = *value - mean;
        mean += gain * innovation;
        sums.logVariances += logVariance;
        sums.squares += innovation * innovation * precision;
        ++sums.count;
        variance = next;
    }
    return sums;
}

// One observation of the local linear trend: takes the prediction to the filtered state and adds the innovation's terms.
void update(TrendState& state, double noiseVariance, double value, InnovationSums& sums)
{
    const double innovationVariance = state.levelVariance + noiseVariance;
    const double innovation = value - state.level;
    const double levelGain = state.levelVariance / innovationVariance;
    const double slopeGain = state.covariance / innovationVariance;
    const double kept = noiseVariance / innovationVariance;
    state.level += levelGain * innovation;
    state.slope += slopeGain * innovation;
    // A variance can't fall below zero; rounding could take it there.
    state.slopeVariance = std::max(0.0, state.slopeVariance - slopeGain * state.covariance);
    state.levelVariance *= kept;
    state.covariance *= kept;
    sums.logVariances += std::log(innovationVariance);
    sums.squares += innovation * innovation / innovationVariance;
    ++sums.count;
}

void predict(TrendState& state, const LocalTrend& model)
{
    state.level += state.slope;
    state.levelVariance += 2.0 * state.covariance + state.slopeVariance + model.levelVariance;
    state.covariance += state.slopeVariance;
    state.slopeVariance += model.slopeVariance;
}

template <class Visit>
InnovationSums runTrend(const LocalTrend& model, TimeSeries y, const Visit& visit)
{
    InnovationSums sums;
    TrendState state{.level = model.startLevel,
                     .slope = model.startSlope,
                     .levelVariance = model.startLevelVariance,
                     .slopeVariance = model.startSlopeVariance};
    for (const std::optional<double>& value : y) {
        if (value) update(state, model.noiseVariance, *value, sums);
        visit(state);
        predict(state, model);
    }
    return sums;
}

// The likelihood of a local level whose variances are `share` and 1 - share of a total; the total that suits best is put in.
// The state starts at the first observation, with that observation's noise: what a start without knowledge leads to.
class ConcentratedLikelihood {
public:
    // y begins with an observation.
    explicit ConcentratedLikelihood(TimeSeries y) : m_first(*y.front()), m_rest(y.subspan(1)) {}

    struct Value {
        double total = 0;
        double logLikelihood = 0;
    };
    // sin^2 brings the ends, where a variance vanishes, within reach of a search between them.
    [[nodiscard]] static double share(double angle) { return std::pow(std::sin(angle), 2); }

    [[nodiscard]] Value at(double share) const
    {
        const LocalLevel scaled{
            .levelVariance = share, .noiseVariance = 1.0 - share, .startMean = m_first, .startVariance = 1.0};
        const InnovationSums sums = innovationSums(scaled, m_rest);
        const auto count = static_cast<double>(sums.count);
        const double total = sums.squares / count;
        return {total, -0.5 * (count * (kLogTwoPi + 1.0 + std::log(total)) + sums.logVariances)};
    }

private:
    double m_first;
    TimeSeries m_rest;
};

constexpr double kRightAngle = 0.5 * std::numbers::pi;
constexpr int kGrid = 128;
// Golden sections shrink a cell of the grid below the square root of the rounding error, where the likelihood is flat.
constexpr int kSections = 60;
constexpr double kSameLikelihood = 1e-9;

double likeliestShare(const ConcentratedLikelihood& likelihood)
{
    const auto valueAt = [&](double angle) {
        return likelihood.at(ConcentratedLikelihood::share(angle)).logLikelihood;
    };
    constexpr double cell = kRightAngle / kGrid;
    int best = 0;
    double bestValue = valueAt(0.0);
    for (int i = 1; i <= kGrid; ++i) {
        const double value = valueAt(i * cell);
        if (value > bestValue) {
            best = i;
            bestValue = value;
        }
    }
    double low = std::max(best - 1, 0) * cell;
    double high = std::min(best + 1, kGrid) * cell;
    const double golden = 1.0 / std::numbers::phi;
    double left = high - golden * (high - low);
    double right = low + golden * (high - low);
    double leftValue = valueAt(left);
    double rightValue = valueAt(right);
    for (int i = 0; i < kSections; ++i) {
        if (leftValue > rightValue) {
            high = std::exchange(right, left);
            rightValue = leftValue;
            left = high - golden * (high - low);
            leftValue = valueAt(left);
        } else {
            low = std::exchange(left, right);
            leftValue = rightValue;
            right = low + golden * (high - low);
            rightValue = valueAt(right);
        }
    }
    const double between = 0.5 * (low + high);
    // The search comes close to an end but never takes it; what tells them apart there is rounding.
    const double enough = valueAt(between) - kSameLikelihood;
    if (best == 0 && valueAt(0.0) >= enough) return 0.0;
    if (best == kGrid && likelihood.at(1.0).logLikelihood >= enough) return 1.0;
    return ConcentratedLikelihood::share(between);
}

}  // namespace

std::optional<double> logLikelihood(const LocalLevel& model, TimeSeries y)
{
    if (!isSound(model)) return std::nullopt;
    const InnovationSums sums = innovationSums(model, y);
    const double value = sums.logLikelihood();
    // A value that isn't finite has made the sums the same.
    if (sums.count == 0 || !std::isfinite(value)) return std::nullopt;
    return value;
}

std::optional<double> logLikelihood(const LocalTrend& model, TimeSeries y)
{
    if (!isSound(model)) return std::nullopt;
    const InnovationSums sums = runTrend(model, y, [](const TrendState&) {});
    const double value = sums.logLikelihood();
    if (sums.count == 0 || !std::isfinite(value)) return std::nullopt;
    return value;
}

std::optional<std::vector<LevelState>> filtered(const LocalLevel& model, TimeSeries y)
{
    if (!logLikelihood(model, y)) return std::nullopt;
    std::vector<LevelState> states;
    states.reserve(y.size());
    double mean = model.startMean;
    double variance = model.startVariance;
    for (const std::optional<double>& value : y) {
        if (value) {
            const double gain = variance / (variance + model.noiseVariance);
            mean += gain * (*value - mean);
            variance = gain * model.noiseVariance;
        }
        states.push_back({mean, variance});
        variance += model.levelVariance;
    }
    // Through a gap variances only grow, so the last one tells whether any left the range of numbers.
    if (!std::isfinite(states.back().variance)) return std::nullopt;
    return states;
}

std::optional<std::vector<TrendState>> filtered(const LocalTrend& model, TimeSeries y)
{
    if (!isSound(model)) return std::nullopt;
    std::vector<TrendState> states;
    states.reserve(y.size());
    const InnovationSums sums = runTrend(model, y, [&](const TrendState& state) { states.push_back(state); });
    if (sums.count == 0 || !std::isfinite(sums.logLikelihood())) return std::nullopt;
    if (!std::isfinite(states.back().levelVariance) || !std::isfinite(states.back().level)) return std::nullopt;
    return states;
}

std::optional<LocalLevelFit> fitLocalLevel(TimeSeries y)
{
    const auto isSeen = [](const std::optional<double>& value) { return value.has_value(); };
    const auto first = std::ranges::find_if(y, isSeen);
    const auto seen = static_cast<std::size_t>(std::ranges::count_if(y, isSeen));
    if (seen < 3) return std::nullopt;
    const double start = **first;
    const auto isOdd = [](const std::optional<double>& value) { return value && !std::isfinite(*value); };
    const auto isOther = [&](const std::optional<double>& value) { return value && *value != start; };
    if (std::ranges::any_of(y, isOdd) || std::ranges::none_of(y, isOther)) return std::nullopt;
    const ConcentratedLikelihood likelihood(y.subspan(static_cast<std::size_t>(first - y.begin())));
    const double share = likeliestShare(likelihood);
    const auto [total, value] = likelihood.at(share);
    if (!std::isfinite(total) || !std::isfinite(value)) return std::nullopt;
    return LocalLevelFit{share * total, (1.0 - share) * total, value, seen};
}

}  // namespace steelyard
