// The regression behind a trial's numbers: the level of a rating by arm, with a straight trend over the sessions.
//
//   const auto fit = regressArms({.arms = 2, .arm = {0, 1, 1, 0}, .value = {5, 6, 7, 5}}, RegressionPriors{});
//   fit->difference(1, 0).mean          // arm 1 less arm 0
//   fit->chanceBest()[1]
//
// value = level of arm 0 + (arm k less arm 0) + trend x t, t from -1/2 at the first session to 1/2 at the last. Differences of
// any two arms have the same normal prior; noise variance has an inverse-gamma one; the posterior is a multivariate Student t,
// in closed form. An arm that was never done keeps its prior. Drift is taken up by the trend as far as it is straight.
//
// Units: those of the values. Failures: no value, an arm out of range, or a number that isn't finite gives nullopt.
// Source: the conjugate linear model, e.g. Gelman et al. 2013, Bayesian Data Analysis, chapter 14 (from memory); checked
// against NumPy and SciPy (tests/data/reference/trial_regression.csv) and R's nlme (tests/reference/mixed_model_r_test.cpp).
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace steelyard {

struct ArmValues {
    std::size_t arms = 2;
    std::vector<std::size_t> arm;  // by session, oldest first
    std::vector<double> value;
    // Where the sessions stand in time, in any unit; empty: one after the other.
    std::vector<double> time = {};
};

// In the values' unit; the defaults are for ratings 0-10 (our convention: any two arms differ by about as much as sessions of one
// do). They hold where the sessions turn out to spread as expected; where these spread twice as much, the others are twice as wide.
struct RegressionPriors {
    double spread = 1.2;        // SD of sessions expected beforehand, above 0
    double spreadWorth = 6;     // as many sessions as that expectation is worth
    double differenceSd = 1.2;  // of any two arms
    double trendSd = 1.2;       // from the first to the last session; 0: no trend
    double levelMean = 6;
    double levelSd = 1000;  // nothing is known of a lifter's level
    bool gettingUsed =
        false;  // a column for what arms other than the first still gain, -exp(-sessions of it / 2), variance .5
    bool carryOver = false;  // a column for the arm of the session before, variance .09; two arms only
    // The same shape for values of another spread.
    [[nodiscard]] static RegressionPriors forSpread(double spread, double levelMean);
};

// A Student t: of a level or of a difference.
struct PosteriorT {
    double mean = 0;
    double scale = 0;  // above 0
    double freedom = 1;
    [[nodiscard]] double chanceAbove(double limit) const;
    [[nodiscard]] double chanceBetween(double low, double high) const;
    [[nodiscard]] double quantile(double probability) const;
};

class ArmPosterior {
public:
    [[nodiscard]] std::size_t arms() const { return m_means.size(); }
    [[nodiscard]] double freedom() const { return m_freedom; }
    // Level in the middle of the sessions.
    [[nodiscard]] PosteriorT level(std::size_t arm) const;
    // `arm` less `over`, which is another one.
    [[nodiscard]] PosteriorT difference(std::size_t arm, std::size_t over) const;
    // Of two arms, as expected beforehand, at the spread that was found.
    [[nodiscard]] double priorDifferenceSd() const { return m_priorDifferenceSd; }
    // SD of sessions, the mean of its posterior.
    [[nodiscard]] double spread() const { return m_spread; }
    // From the first to the last session.
    [[nodiscard]] double trend() const { return m_trend; }
    // By arm, sums to 1: how likely its level is the highest. Of two arms exact, of more to about 0.003, the same every time.
    [[nodiscard]] std::vector<double> chanceBest() const;
    // The same among these alone, in their order.
    [[nodiscard]] std::vector<double> chanceBest(std::span<const std::size_t> among) const;

private:
    // Of the scales of arm less over and other less over.
    [[nodiscard]] double product(std::size_t arm, std::size_t other, std::size_t over) const;
    friend std::optional<ArmPosterior> regressArms(const ArmValues&, const RegressionPriors&);
    std::vector<double> m_means;    // by arm
    std::vector<double> m_squares;  // scales: arms x arms
    double m_freedom = 1;
    double m_spread = 0;
    double m_trend = 0;
    double m_priorDifferenceSd = 1;
};

[[nodiscard]] std::optional<ArmPosterior> regressArms(const ArmValues&, const RegressionPriors&);

}  // namespace steelyard
