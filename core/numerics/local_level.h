// A level that wanders, seen through noise: the Gaussian local level and local linear trend with known variances, and the
// variances of the local level by maximum likelihood.
//
//   const std::vector<std::optional<double>> y{1120, 1160, std::nullopt, 1210};
//   const LocalLevel model{.levelVariance = 1469.1, .noiseVariance = 15099};
//   logLikelihood(model, y)            : of the observations that are there
//   filtered(model, y)->back().mean    : the level now, knowing all of y
//   fitLocalLevel(y)                   : the variances under which y is likeliest
//
// Model: y(t) = level(t) + noise; level(t + 1) = level(t) + slope(t) + change of level; slope(t + 1) = slope(t) + change of
// slope (a local level has no slope). All disturbances are normal and independent.
// Units: y in any unit, variances in its square, slopes in y per step. The times are equidistant; a time without an
// observation is nullopt: the state is carried on through it.
// The start values are the mean and variance of the state at the first time, before its observation (R's a and Pn). The
// default, a variance of 1e7 around zero, knows nothing of a series whose values are well below a thousand.
// Failures: variances that are negative, not finite or leave nothing random, a value that isn't finite, and series without
// an observation give nullopt. Never NaN.
// Source: Durbin & Koopman 2012, Time Series Analysis by State Space Methods, 2nd ed., chapter 2 (from memory).
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace steelyard {

using TimeSeries = std::span<const std::optional<double>>;

inline constexpr double kVagueVariance = 1e7;

struct LocalLevel {
    double levelVariance = 0;  // of the change from one time to the next
    double noiseVariance = 1;  // of an observation around the level
    double startMean = 0;
    double startVariance = kVagueVariance;
};

struct LocalTrend {
    double levelVariance = 0;
    double slopeVariance = 0;
    double noiseVariance = 1;
    double startLevel = 0;
    double startSlope = 0;
    double startLevelVariance = kVagueVariance;  // the start's level and slope are independent
    double startSlopeVariance = kVagueVariance;
};

// What is known of the level at one time, from the observations up to and including it.
struct LevelState {
    double mean = 0;
    double variance = 0;
};

struct TrendState {
    double level = 0;
    double slope = 0;
    double levelVariance = 0;
    double covariance = 0;
    double slopeVariance = 0;
};

// Natural logarithm of the density of all observations, with every constant.
[[nodiscard]] std::optional<double> logLikelihood(const LocalLevel& model, TimeSeries y);
[[nodiscard]] std::optional<double> logLikelihood(const LocalTrend& model, TimeSeries y);

// One state a time, also for the times without an observation.
[[nodiscard]] std::optional<std::vector<LevelState>> filtered(const LocalLevel& model, TimeSeries y);
[[nodiscard]] std::optional<std::vector<TrendState>> filtered(const LocalTrend& model, TimeSeries y);

struct LocalLevelFit {
    double levelVariance = 0;
    double noiseVariance = 0;
    double logLikelihood = 0;  // of the observations after the first, given the first: nothing is assumed of the start
    std::size_t observations = 0;
};

// Either variance may come out as 0. Needs three observations, not all equal. The search is over the share of the level in
// both variances, from 0 to 1: a grid, then golden sections around its best point; no start values, always the same answer.
[[nodiscard]] std::optional<LocalLevelFit> fitLocalLevel(TimeSeries y);

}  // namespace steelyard
