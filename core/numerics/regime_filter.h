// How strong a lifter is on one lift line, how fast that changes, and since when: a mixture of Kalman filters, one for each
// pair of "what is going on" (rising, flat, falling) and "since how many weeks".
//
//   RegimeFilter filter(parameters, pace, noise);
//   filter.startWeek();                              // once a calendar week after the first, trained or not
//   filter.session(day, sets);                       // every session, in order
//   const RegimeSummary now = filter.summary(0.0015);
//   now.probability[Regime::Rising]
//
// Observation. A set of load w and R repetitions to failure becomes z = ln(1 + R/30) at x = ln(w / reference load):
//   z = a + u + d - lambda x - phi f(n) + error,   f(n) = (1 - 0.8^(n-1)) / 0.2 for the n-th set
//   a strength at the reference load; b its change a week; u readiness of the week; d of the day;
//   lambda how much z a unit of ln load costs this lifter; phi what each earlier set costs.
// Errors are Student-t. A set that stopped early says "at least", one that was helped along says "at most".
// In z the error of a set is nearly constant over loads and repetitions (0.020 at 90 % and 0.025 at 70 % of the maximum:
// Mitter et al. 2022, PLOS ONE e0268074), and the model is linear in everything that isn't known.
//
// What is going on. A segment of weeks is rising (b near the pace of the lifter's experience), flat (b near 0) or falling.
// Each week every segment may end; then a new b is drawn. Segments older than the oldest age are kept as one.
// Method: multi-process models (Harrison & Stevens 1976, JRSS B 38:205-247), run lengths (Adams & MacKay 2007,
// arXiv 0710.3742); bounds by moment matching as in Tobit Kalman filters (Allik et al. 2016). Bibliography from memory.
//
// Units: z and ln load (natural logarithms), weeks; days are counted from any fixed day. Values are finite and sums of
// probabilities 1 whatever the observations, as long as those are finite. Results don't depend on threads; between
// processors with and without fused multiply-add they may differ in the last digits.
//
// RegimeFilter keeps its hypotheses as floats: half the memory, twice as many at once. Its chances differ from those of
// PreciseRegimeFilter by less than 1e-4 and its capacity by less than 5e-5 of itself (regime_precision_test.cpp). What goes in
// and comes out is double either way, and the likelihood is summed in doubles.
#pragma once

#include "core/numerics/regime_parameters.h"

#include <cstddef>
#include <span>
#include <vector>

namespace steelyard {

enum class Regime : std::size_t { Rising, Flat, Falling };
inline constexpr std::size_t kRegimes = 3;
inline constexpr std::size_t kRegimeStates = 6;

enum class ObservationKind { Exact, AtLeast, AtMost };

struct RegimeObservation {
    double lnLoad = 0;    // ln(load / reference load)
    double z = 0;         // ln(1 + repetitions to failure / 30)
    double repError = 0;  // SD of z from counting and from the reported reserve
    ObservationKind kind = ObservationKind::Exact;
    double fatigue = 0;  // f(n)
    friend bool operator==(const RegimeObservation&, const RegimeObservation&) = default;
};

// f(n) of the n-th set of a session, from 1.
[[nodiscard]] double fatigueOfSet(int number);

// One Gaussian of the mixture, what it weighs, its regime and how many weeks that has lasted.
struct RegimeHypothesis {
    Regime regime = Regime::Rising;
    int age = 0;
    double weight = 0;
    std::array<double, kRegimeStates> mean{};  // a b u d lambda phi
    std::array<std::array<double, kRegimeStates>, kRegimeStates> covariance{};
};

// What is known of level and elasticity in one regime.
struct RegimeLevel {
    double weight = 0;
    double level = 0;       // a
    double elasticity = 0;  // lambda
    double levelVariance = 0;
    double covariance = 0;
    double elasticityVariance = 0;
};

struct RegimeSummary {
    std::array<double, kRegimes> probability{};  // by Regime
    double probabilitySlopeOver = 0;             // P(b > delta lambda): growth above delta of load a week
    double level = 0;                            // a
    double levelSd = 0;
    double slope = 0;  // b
    double slopeSd = 0;
    double elasticity = 0;  // lambda
    double elasticitySd = 0;
    double fatigue = 0;         // phi
    double weeksNotRising = 0;  // mean age over the flat and falling hypotheses
};

// The distribution of z of a set to come: a mixture of Student-t with these means and standard deviations.
struct PredictedComponent {
    double weight = 0;
    double mean = 0;
    double sd = 0;
};

// Logarithms that don't depend on the record.
struct RegimeLogs {
    double usualDay = 0;  // of the chance that a day isn't off
    double offDay = 0;
    double density = 0;  // what is constant in the density of an exact set
};

template <class Real>
class RegimeFilterOf {
public:
    // `noise` scales the day's, the week's and the set's noise.
    RegimeFilterOf(const RegimeParameters& parameters, RegimePace pace, double noise);

    [[nodiscard]] bool started() const { return !m_values.empty(); }
    // Before the first session: lambda is expected so instead of as the parameters say.
    void expectElasticity(double mean, double sd);
    // Nothing happens before the first session.
    void startWeek();
    // Sets of one session, in order, at least one. `day` never goes back.
    void session(double day, std::span<const RegimeObservation> sets);

    // The following need started().
    [[nodiscard]] RegimeSummary summary(double delta) const;
    [[nodiscard]] std::array<double, kRegimes> probabilities() const;
    // By weeks that it has lasted: the weight of the flat and falling hypotheses, which sum to less than 1.
    [[nodiscard]] std::vector<double> notRisingByAge() const;
    [[nodiscard]] double meanElasticity() const;  // lambda
    [[nodiscard]] double meanFatigue() const;     // phi
    [[nodiscard]] std::vector<PredictedComponent> predict(double day, const RegimeObservation& set) const;
    [[nodiscard]] std::vector<RegimeHypothesis> hypotheses() const;
    // The same with the hypotheses of each regime taken as one Gaussian: six parts instead of hundreds.
    [[nodiscard]] std::vector<PredictedComponent> predictByRegime(double day, const RegimeObservation& set) const;
    // Mean and standard deviation of z of a set to come on a day that isn't off as a whole; a tenth of the cost.
    [[nodiscard]] PredictedComponent expect(double day, const RegimeObservation& set) const;
    // Each regime's hypotheses as one Gaussian; `age` is the mean one, rounded.
    [[nodiscard]] std::vector<RegimeHypothesis> regimes() const;
    // Of these what a capacity needs, at a fraction of the cost.
    [[nodiscard]] std::array<RegimeLevel, kRegimes> levels() const;
    // ln of the likelihood of everything seen.
    [[nodiscard]] double logLikelihood() const { return m_logLikelihood; }

private:
    void start(const RegimeObservation& first);
    [[nodiscard]] std::vector<PredictedComponent> predictFrom(const std::vector<RegimeHypothesis>&, double day,
                                                              const RegimeObservation&) const;

    const RegimeParameters* m_parameters;
    RegimePace m_pace;
    double m_noise = 1;
    double m_elasticityMean = 0;
    double m_elasticitySd = 0;
    std::size_t m_lanes = 0;
    RegimeLogs m_logs;
    std::vector<Real> m_values;   // component-major: 6 means, 21 covariances, each by hypothesis
    std::vector<Real> m_weights;  // by hypothesis: regime-major, then age; they sum to 1
    std::vector<Real> m_logWeights;
    double m_lastDay = 0;
    double m_logLikelihood = 0;
};

extern template class RegimeFilterOf<float>;
extern template class RegimeFilterOf<double>;

// What readings use.
using RegimeFilter = RegimeFilterOf<float>;
// For those who compare likelihoods that differ by next to nothing, and to check the other.
using PreciseRegimeFilter = RegimeFilterOf<double>;

}  // namespace steelyard
