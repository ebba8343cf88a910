#include "core/numerics/regime_filter.h"

#include "tests/support/reference_table.h"

#include <gtest/gtest.h>

#include <cmath>
#include <optional>
#include <map>
#include <tuple>

namespace steelyard {
namespace {

using testing_support::readReference;
using testing_support::ReferenceTable;

constexpr std::array<RegimePace, 3> kPaces{{{0.0153, 0.0067}, {0.0056, 0.0019}, {0.0012, 0.0005}}};
constexpr std::array<double, 3> kWorthwhile{0.003, 0.0015, 0.0005};

struct GoldenSession {
    int week = 0;
    int day = 0;
    std::vector<RegimeObservation> sets;
};

struct GoldenLine {
    std::size_t level = 0;
    std::vector<GoldenSession> sessions;
};

std::vector<GoldenLine> goldenLines()
{
    std::vector<GoldenLine> lines(3);
    const auto table = readReference("regime_filter_inputs.csv");
    for (std::size_t row = 0; row < table.rows.size(); ++row) {
        GoldenLine& line = lines.at(static_cast<std::size_t>(table.number(row, "series")));
        line.level = static_cast<std::size_t>(table.number(row, "level"));
        const int day = static_cast<int>(table.number(row, "day"));
        if (line.sessions.empty() || line.sessions.back().day != day)
            line.sessions.push_back({static_cast<int>(table.number(row, "week")), day, {}});
        line.sessions.back().sets.push_back(
            {table.number(row, "log_load_minus_ref"), table.number(row, "z"), table.number(row, "rep_sd_z"),
             static_cast<ObservationKind>(table.number(row, "type")), table.number(row, "fatigue_index")});
    }
    return lines;
}

// Rows of a recorded table by line, noise scale and week or day.
class GoldenRows {
public:
    GoldenRows(const char* file, const char* last) : m_table(readReference(file))
    {
        for (std::size_t row = 0; row < m_table.rows.size(); ++row)
            m_places.emplace(std::tuple(static_cast<std::size_t>(m_table.number(row, "series")),
                                        m_table.number(row, "noise"), static_cast<int>(m_table.number(row, last))),
                             row);
    }
    [[nodiscard]] std::optional<std::size_t> find(std::size_t line, double noise, int last) const
    {
        const auto found = m_places.find({line, noise, last});
        return found == m_places.end() ? std::nullopt : std::optional(found->second);
    }
    [[nodiscard]] double number(std::size_t row, const char* column) const { return m_table.number(row, column); }
    [[nodiscard]] std::size_t size() const { return m_places.size(); }

private:
    ReferenceTable m_table;
    std::map<std::tuple<std::size_t, double, int>, std::size_t> m_places;
};

void expectWeek(const PreciseRegimeFilter& filter, double delta, const GoldenRows& golden, std::size_t row)
{
    constexpr double kSame = 1e-9;
    const RegimeSummary now = filter.summary(delta);
    EXPECT_NEAR(now.probability[0], golden.number(row, "p_progress"), kSame);
    EXPECT_NEAR(now.probability[1], golden.number(row, "p_flat"), kSame);
    EXPECT_NEAR(now.probability[2], golden.number(row, "p_regress"), kSame);
    EXPECT_NEAR(now.probabilitySlopeOver, golden.number(row, "p_slope_gt_delta"), kSame);
    EXPECT_NEAR(now.level, golden.number(row, "level"), kSame);
    EXPECT_NEAR(now.levelSd, golden.number(row, "level_sd"), kSame);
    EXPECT_NEAR(now.slope, golden.number(row, "slope"), kSame);
    EXPECT_NEAR(now.elasticity, golden.number(row, "lambda"), kSame);
    EXPECT_NEAR(now.elasticitySd, golden.number(row, "lambda_sd"), kSame);
    EXPECT_NEAR(now.fatigue, golden.number(row, "phi"), kSame);
    EXPECT_NEAR(now.weeksNotRising, golden.number(row, "mean_age_nonprogress"), kSame);
    EXPECT_NEAR(filter.logLikelihood(), golden.number(row, "cum_loglik"), kSame * 100);
}

// z expected of a set: mean and standard deviation of the mixture.
std::pair<double, double> expected(const PreciseRegimeFilter& filter, const GoldenSession& session)
{
    double mean = 0;
    double second = 0;
    for (const auto& part : filter.predict(session.day, session.sets.front())) {
        mean += part.weight * part.mean;
        second += part.weight * (part.mean * part.mean + part.sd * part.sd);
    }
    return {mean, std::sqrt(second - mean * mean)};
}

// Source of the recorded answers: the first lines of the files in tests/data/reference.
TEST(RegimeFilter, ReproducesTheReferenceInEveryWeekAndForecast)
{
    const RegimeParameters parameters;
    const GoldenRows weekly("regime_filter_weekly.csv", "week");
    const GoldenRows forecasts("regime_filter_forecast.csv", "day");
    const auto lines = goldenLines();
    std::size_t weeks = 0;
    std::size_t predicted = 0;
    for (std::size_t at = 0; at < lines.size(); ++at)
        for (const double noise : {0.7, 1.0, 1.4}) {
            PreciseRegimeFilter filter(parameters, kPaces[lines[at].level], noise);
            auto session = lines[at].sessions.begin();
            for (int week = 0; week < 52; ++week) {
                filter.startWeek();
                for (; session != lines[at].sessions.end() && session->week == week; ++session) {
                    if (const auto row = forecasts.find(at, noise, session->day)) {
                        const auto [mean, sd] = expected(filter, *session);
                        EXPECT_NEAR(mean, forecasts.number(*row, "pred_mean_z"), 1e-9);
                        EXPECT_NEAR(sd, forecasts.number(*row, "pred_sd_z"), 1e-9);
                        ++predicted;
                    }
                    filter.session(session->day, session->sets);
                }
                if (!filter.started()) continue;
                const auto row = weekly.find(at, noise, week);
                ASSERT_TRUE(row);
                expectWeek(filter, kWorthwhile[lines[at].level], weekly, *row);
                ++weeks;
            }
        }
    EXPECT_EQ(weeks, weekly.size());
    EXPECT_EQ(predicted, forecasts.size());
}

// On a day that isn't off, which the parts of the forecast that are off show by their width.
TEST(RegimeFilter, ExpectsTheMeanAndSpreadOfItsForecastWithoutTheOffDays)
{
    const RegimeParameters parameters;
    int compared = 0;
    for (const GoldenLine& line : goldenLines()) {
        PreciseRegimeFilter filter(parameters, kPaces[line.level], 1.0);
        for (const GoldenSession& session : line.sessions) {
            if (filter.started()) {
                const RegimeObservation& set = session.sets.front();
                double sum = 0;
                double mean = 0;
                double second = 0;
                for (const auto& part : filter.predict(session.day, set)) {
                    if (part.sd >= parameters.offSd) continue;
                    sum += part.weight;
                    mean += part.weight * part.mean;
                    second += part.weight * (part.mean * part.mean + part.sd * part.sd);
                }
                mean /= sum;
                const PredictedComponent expected = filter.expect(session.day, set);
                EXPECT_NEAR(expected.mean, mean, 1e-6);
                EXPECT_NEAR(expected.sd, std::sqrt(second / sum - mean * mean), 1e-6);
                ++compared;
            }
            filter.session(session.day, session.sets);
        }
    }
    EXPECT_GT(compared, 100);
}

// By second moments of all hypotheses, which is another way to the same numbers.
TEST(RegimeFilter, KnowsLevelAndElasticityOfEachRegimeAsItsHypothesesDo)
{
    const RegimeParameters parameters;
    for (const GoldenLine& line : goldenLines()) {
        PreciseRegimeFilter filter(parameters, kPaces[line.level], 1.0);
        std::optional<double> week;
        for (const GoldenSession& session : line.sessions) {
            // Weeks give each regime hypotheses of several ages, which differ.
            for (; week && *week < std::floor(session.day / 7); ++*week) filter.startWeek();
            week = std::floor(session.day / 7);
            filter.session(session.day, session.sets);
        }
        const auto levels = filter.levels();
        for (std::size_t mode = 0; mode < kRegimes; ++mode) {
            double weight = 0;
            double a = 0;
            double lambda = 0;
            double aa = 0;
            double al = 0;
            double ll = 0;
            for (const RegimeHypothesis& one : filter.hypotheses()) {
                if (one.regime != static_cast<Regime>(mode)) continue;
                weight += one.weight;
                a += one.weight * one.mean[0];
                lambda += one.weight * one.mean[4];
                aa += one.weight * (one.covariance[0][0] + one.mean[0] * one.mean[0]);
                al += one.weight * (one.covariance[0][4] + one.mean[0] * one.mean[4]);
                ll += one.weight * (one.covariance[4][4] + one.mean[4] * one.mean[4]);
            }
            ASSERT_GT(weight, 0);
            a /= weight;
            lambda /= weight;
            EXPECT_NEAR(levels[mode].weight, weight, 1e-12);
            EXPECT_NEAR(levels[mode].level, a, 1e-12);
            EXPECT_NEAR(levels[mode].elasticity, lambda, 1e-12);
            EXPECT_NEAR(levels[mode].levelVariance, aa / weight - a * a, 1e-11);
            EXPECT_NEAR(levels[mode].covariance, al / weight - a * lambda, 1e-11);
            EXPECT_NEAR(levels[mode].elasticityVariance, ll / weight - lambda * lambda, 1e-11);
        }
    }
}

}  // namespace
}  // namespace steelyard
