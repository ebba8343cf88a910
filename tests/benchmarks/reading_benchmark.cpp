// What the regime filter costs beside the arithmetic it can't do without, and what a kept state saves.
//
//   reading_benchmark
//
// The limit: a bare loop that does the filter's multiplications and additions of one set on the same number of hypotheses,
// with the same registers, and nothing else (no divisions, no logarithms, no decisions). One multiply-add counts as one.
#include "core/analysis/regime_engine.h"
#include "core/numerics/lanes.h"
#include "core/numerics/regime_kernel.h"
#include "tests/benchmarks/benchmark_support.h"
#include "tests/support/rule_probe.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <random>

namespace steelyard {
namespace {

using benchmark::Stopwatch;
using testing_support::LogBuilder;
using testing_support::MadeSet;

using Number = float;  // as in readings

constexpr int kYears = 5;
constexpr int kSetsASession = 4;

std::vector<std::vector<RegimeObservation>> madeSessions(int count)
{
    std::mt19937 random(7);
    std::normal_distribution<double> bell;
    std::vector<std::vector<RegimeObservation>> sessions;
    for (int i = 0; i < count; ++i) {
        std::vector<RegimeObservation> sets;
        const double day = 0.027 * bell(random);
        for (int n = 1; n <= kSetsASession; ++n) {
            const double load = 0.02 * bell(random);
            sets.push_back({load,
                            0.35 + 0.0005 * i + day - 1.18 * load - 0.023 * fatigueOfSet(n) + 0.018 * bell(random),
                            0.02, ObservationKind::Exact, fatigueOfSet(n)});
        }
        sessions.push_back(std::move(sets));
    }
    return sessions;
}

// Seconds a set, best of five.
template <class Work>
double bestOf(std::size_t sets, Work&& work)
{
    double best = 1e9;
    for (int round = 0; round < 5; ++round) {
        const Stopwatch watch;
        work();
        best = std::min(best, watch.processorSeconds());
    }
    return best / static_cast<double>(sets);
}

double filterSeconds(const RegimeParameters& parameters, const std::vector<std::vector<RegimeObservation>>& sessions)
{
    return bestOf(sessions.size() * kSetsASession, [&] {
        RegimeFilter filter(parameters, RegimePace{}, 1);
        double day = 0;
        for (const auto& session : sessions) filter.session(day += 1.0 / 16, session);
        if (!(filter.probabilities()[0] >= 0)) std::abort();
    });
}

// Multiply-adds of one exact set on one hypothesis: P h 30, its variance 6, the error 7, the correction of the mean 6 and of
// the covariance 6 + 21, the weights' products and the inflation 9.
constexpr std::size_t kMultiplyAdds = 85;

#ifdef __x86_64__
__attribute__((target("avx2,fma")))
#endif
double
bareLoop(std::vector<Number>& values, std::size_t lanes, std::size_t sets)
{
    double sum = 0;
    for (std::size_t at = 0; at < lanes; at += kLaneWidth<Number>) {
        Lanes<Number> rows[kRegimeRows];
        for (std::size_t c = 0; c < kRegimeRows; ++c) rows[c] = loadLanes(values.data() + c * lanes + at);
        for (std::size_t set = 0; set < sets; ++set)
#pragma GCC unroll 85
            for (std::size_t step = 0; step < kMultiplyAdds; ++step) {
                const std::size_t to = step % kRegimeRows;
                rows[to] = rows[to] * rows[(to + 9) % kRegimeRows] + rows[(to + 18) % kRegimeRows];
            }
        for (std::size_t c = 0; c < kRegimeRows; ++c) storeLanes(values.data() + c * lanes + at, rows[c]);
        sum += static_cast<double>(values[at]);
    }
    return sum;
}

double bareSeconds(const RegimeParameters& parameters, std::size_t sets)
{
    const std::size_t lanes = kRegimes * static_cast<std::size_t>(parameters.ages);
    return bestOf(sets, [&] {
        std::vector<Number> values(kRegimeRows * lanes, Number(1e-3));
        for (std::size_t done = 0; done < sets; done += kSetsASession)
            if (!(bareLoop(values, lanes, kSetsASession) > 0)) std::abort();
    });
}

void compareWithArithmetic()
{
    const auto sessions = madeSessions(20000);
    const std::size_t sets = sessions.size() * kSetsASession;
    std::printf("%-46s %10s %10s %8s\n", "one filter, ns a set", "filter", "bare", "ratio");
    for (const int ages : {8, 16})
        for (const double offFrom : {4.0, 0.0}) {
            RegimeParameters parameters;
            parameters.ages = ages;
            parameters.offFrom = offFrom;
            const double filter = filterSeconds(parameters, sessions);
            // Every set is heard twice where an off day is asked for in each session.
            const double bare = (offFrom > 0 ? 1 : 2) * bareSeconds(parameters, sets);
            std::printf("%2d hypotheses, off days %-21s %10.0f %10.0f %8.2f\n", 3 * ages,
                        offFrom > 0 ? "when a set is odd" : "in every session", 1e9 * filter, 1e9 * bare,
                        filter / bare);
        }
}

// How densely a line is trained.
struct Density {
    const char* name;
    int daysBetween = 7;
    int sets = 3;
};

AthleteLog fiveYears(int lines, const Density& density)
{
    std::mt19937 random(11);
    std::normal_distribution<double> bell;
    LogBuilder builder;
    const QDate last(2026, 6, 1);
    for (int line = 0; line < lines; ++line) {
        builder.line(QStringLiteral("Lift %1").arg(line));
        for (QDate day = last.addDays(-365 * kYears); day < last; day = day.addDays(density.daysBetween)) {
            std::vector<MadeSet> sets;
            for (int n = 0; n < density.sets; ++n)
                sets.push_back({.load = 40 + 0.5 * std::round(bell(random)),
                                .reps = 10 + static_cast<int>(std::lround(bell(random))),
                                .off = 0,
                                .rir = 1});
            builder.exposure(day, sets);
        }
    }
    return builder.build();
}

void compareKept(const Density& density)
{
    constexpr int kLines = 12;
    const RegimeEngine engine;
    AthleteLog log = fiveYears(kLines, density);
    const QDate today(2026, 6, 1);
    std::printf("\n%d years of one lifter, %d lines, %zu sessions of %d each, %s\n%50s %10s %10s\n", kYears, kLines,
                log.lines.front().exposures.size(), density.sets, density.name, "", "ms", "ms a line");
    const auto print = [](const char* what, double seconds) {
        std::printf("%-50s %10.3f %10.3f\n", what, 1e3 * seconds, 1e3 * seconds / kLines);
    };
    ReadingMemory memory;
    const auto timed = [&](const char* what, auto&& change) {
        double best = 1e9;
        for (int round = 0; round < 5; ++round) {
            (void)engine.readAll(log, today, memory);
            change();
            const Stopwatch watch;  // of the processor: other programs may run
            const CountedLines counted = countLines(log, today);
            (void)memory.recall(log, counted, today, engine.parameters(), engine.thresholds());
            best = std::min(best, watch.processorSeconds());
        }
        print(what, best);
    };
    {
        const Stopwatch watch;
        (void)engine.readAll(log, today);
        print("nothing kept", watch.processorSeconds());
    }
    timed("nothing new", [] {});
    timed("a new set in every line", [&] {
        for (LineRecord& line : log.lines) {
            if (line.exposures.back().date != today) line.exposures.push_back({today, {}, {}});
            LoggedSet set = line.exposures.front().sets.front();
            set.set.number = static_cast<int>(line.exposures.back().sets.size()) + 1;
            line.exposures.back().sets.push_back(set);
        }
    });
    const auto editBefore = [&](int days) {
        return [&log, before = today.addDays(-days)] {
            auto& exposures = log.lines.front().exposures;
            const auto at = std::ranges::upper_bound(exposures, before, {}, &Exposure::date);
            std::prev(at)->sets.front().set.reps += 1;
        };
    };
    timed("a set of last week was changed", editBefore(7));
    timed("a set of three months ago was changed", editBefore(91));
    timed("a set of a year ago was changed", editBefore(365));
    timed("a set of three years ago was changed", editBefore(3 * 365));
}

}  // namespace
}  // namespace steelyard

int main()
{
    steelyard::compareWithArithmetic();
    steelyard::compareKept({"as dense as the review's club", 7, 3});
    steelyard::compareKept({"every third day", 3, 4});
}
