#include "core/numerics/regime_filter.h"

#include "tests/support/csv_table.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

namespace steelyard {
namespace {

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
    for (const CsvRecord& row : readCsvTable("tests/golden/golden_inputs.csv")) {
        GoldenLine& line = lines.at(static_cast<std::size_t>(row.number("series")));
        line.level = static_cast<std::size_t>(row.number("level"));
        const int day = static_cast<int>(row.number("day"));
        if (line.sessions.empty() || line.sessions.back().day != day)
            line.sessions.push_back({static_cast<int>(row.number("week")), day, {}});
        line.sessions.back().sets.push_back({row.number("log_load_minus_ref"), row.number("z"), row.number("rep_sd_z"),
                                             static_cast<ObservationKind>(row.number("type")),
                                             row.number("fatigue_index")});
    }
    return lines;
}

using GoldenKey = std::tuple<std::size_t, double, int>;  // line, noise, week or day

std::map<GoldenKey, CsvRecord> goldenRows(const char* file, const char* last)
{
    std::map<GoldenKey, CsvRecord> rows;
    for (const CsvRecord& row : readCsvTable(file))
        rows.emplace(GoldenKey{static_cast<std::size_t>(row.number("series")), row.number("noise"),
                               static_cast<int>(row.number(last))},
                     row);
    return rows;
}

void expectWeek(const RegimeFilter& filter, double delta, const CsvRecord& golden)
{
    constexpr double kSame = 1e-9;
    const RegimeSummary now = filter.summary(delta);
    EXPECT_NEAR(now.probability[0], golden.number("p_progress"), kSame);
    EXPECT_NEAR(now.probability[1], golden.number("p_flat"), kSame);
    EXPECT_NEAR(now.probability[2], golden.number("p_regress"), kSame);
    EXPECT_NEAR(now.probabilitySlopeOver, golden.number("p_slope_gt_delta"), kSame);
    EXPECT_NEAR(now.level, golden.number("level"), kSame);
    EXPECT_NEAR(now.levelSd, golden.number("level_sd"), kSame);
    EXPECT_NEAR(now.slope, golden.number("slope"), kSame);
    EXPECT_NEAR(now.elasticity, golden.number("lambda"), kSame);
    EXPECT_NEAR(now.elasticitySd, golden.number("lambda_sd"), kSame);
    EXPECT_NEAR(now.fatigue, golden.number("phi"), kSame);
    EXPECT_NEAR(now.weeksNotRising, golden.number("mean_age_nonprogress"), kSame);
    EXPECT_NEAR(filter.logLikelihood(), golden.number("cum_loglik"), kSame * 100);
}

// The plain reference: tests/golden/README.md.
TEST(RegimeFilter, ReproducesTheReferenceInEveryWeekAndForecast)
{
    const RegimeParameters parameters;
    const auto weekly = goldenRows("tests/golden/golden_weekly.csv", "week");
    const auto forecasts = goldenRows("tests/golden/golden_forecast.csv", "day");
    const auto lines = goldenLines();
    std::size_t weeks = 0;
    std::size_t predicted = 0;
    for (std::size_t at = 0; at < lines.size(); ++at)
        for (const double noise : {0.7, 1.0, 1.4}) {
            RegimeFilter filter(parameters, kPaces[lines[at].level], noise);
            auto session = lines[at].sessions.begin();
            for (int week = 0; week < 52; ++week) {
                filter.startWeek();
                for (; session != lines[at].sessions.end() && session->week == week; ++session) {
                    if (const auto golden = forecasts.find({at, noise, session->day}); golden != forecasts.end()) {
                        double mean = 0;
                        double second = 0;
                        for (const auto& part : filter.predict(session->day, session->sets.front())) {
                            mean += part.weight * part.mean;
                            second += part.weight * (part.mean * part.mean + part.sd * part.sd);
                        }
                        EXPECT_NEAR(mean, golden->second.number("pred_mean_z"), 1e-9);
                        EXPECT_NEAR(std::sqrt(second - mean * mean), golden->second.number("pred_sd_z"), 1e-9);
                        ++predicted;
                    }
                    filter.session(session->day, session->sets);
                }
                if (!filter.started()) continue;
                expectWeek(filter, kWorthwhile[lines[at].level], weekly.at({at, noise, week}));
                ++weeks;
            }
        }
    EXPECT_EQ(weeks, weekly.size());
    EXPECT_EQ(predicted, forecasts.size());
}

}  // namespace
}  // namespace steelyard
