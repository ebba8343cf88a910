// How often trials end with the right word, the wrong one and none, by arms, blocks and difference.
//
//   trial_errors [--trials N] [--seed S]           the guide's table
//   trial_errors --weighed [--missed SHARE]        the same of the weighed answer, with sessions missed
//   trial_errors --likeness 0 --drift 2            neighbouring sessions no more alike than others, a strong drift
//   trial_errors --no-difference                   only the errors: trials of arms that are alike
//   trial_errors --table > core/trials/trial_power_table.h
//
// The rule in use is simulated, looks after every block included; see tests/support/simulated_trials.h.
#include "tests/support/simulated_trials.h"

#include <cstdio>
#include <cstdlib>
#include <cstring>

namespace steelyard {
namespace {

using testing_support::SimulatedTrial;
using testing_support::simulateTrials;
using testing_support::TrialTally;

constexpr int kTableBlocks[] = {4, 5, 6, 8, 10, 12, 16, 20, 24};
constexpr double kTableDifferences[] = {0, 0.3, 0.5, 0.8, 1, 1.25, 1.5, 2};

struct ErrorOptions {
    int trials = 4000;
    std::uint64_t seed = 7;
    bool weighed = false;
    double missed = 0;
    double likeness = 0.3;
    double drift = 0.5;
    bool noDifference = false;
    bool table = false;
};

ErrorOptions optionsOf(int count, char** words)
{
    ErrorOptions options;
    for (int i = 1; i < count; ++i) {
        const auto is = [&](const char* word) { return std::strcmp(words[i], word) == 0; };
        if (is("--weighed"))
            options.weighed = true;
        else if (is("--no-difference"))
            options.noDifference = true;
        else if (is("--table"))
            options.table = true;
        else if (is("--trials") && i + 1 < count)
            options.trials = std::atoi(words[++i]);
        else if (is("--seed") && i + 1 < count)
            options.seed = std::strtoull(words[++i], nullptr, 10);
        else if (is("--missed") && i + 1 < count)
            options.missed = std::atof(words[++i]);
        else if (is("--likeness") && i + 1 < count)
            options.likeness = std::atof(words[++i]);
        else if (is("--drift") && i + 1 < count)
            options.drift = std::atof(words[++i]);
    }
    return options;
}

void printRow(const SimulatedTrial& made, const TrialTally& tally, const char* note = "")
{
    std::printf("%4zu %6d %5.2f | %6.3f %6.3f %6.3f %6.3f | %8.1f | ", made.arms, made.blocks, made.differenceSds,
                tally.right, tally.wrong, tally.equal, tally.undecided, tally.meanSessions);
    if (made.weighed)
        std::printf("%9.2f  %s\n", tally.answerSds, note);
    else
        std::printf("%11.3f  %s\n", tally.coverage, note);
    std::fflush(stdout);
}

void printErrors(const ErrorOptions& options)
{
    // The weighed answer's difference has no closed form; how large it is beside its own sessions is counted instead.
    std::printf("arms blocks  SDs |  right  wrong  equal   none | sessions | %s\n",
                options.weighed ? "of answer" : "covers 90 %");
    for (std::size_t arms = 2; arms <= 4; ++arms)
        for (const int blocks : {4, 6, 8, 12, 16, 24}) {
            SimulatedTrial made{.arms = arms,
                                .blocks = blocks,
                                .driftSds = options.drift,
                                .likeness = options.likeness,
                                .weighed = options.weighed,
                                .missedShare = options.missed};
            for (const double difference : {0.0, 0.5, 1.0, 1.5, 2.0}) {
                if (options.noDifference && difference > 0) break;
                made.differenceSds = difference;
                printRow(made, simulateTrials(made, options.trials, options.seed));
            }
            if (arms == 2) continue;
            made.differenceSds = 0;
            made.firstArmSds = -2;
            printRow(made, simulateTrials(made, options.trials, options.seed), "one arm plainly worse");
        }
}

void printTable(const ErrorOptions& options)
{
    std::printf(
        "// Written by `trial_errors --table --trials %d --seed %llu`: don't edit. Rows: arms, blocks, difference; "
        "then the\n"
        "// shares of trials that end with the right and with a wrong \"prefer\", the mean number of sessions, and, "
        "for two\n"
        "// arms, the share that the exact randomisation test finds at 0.05.\n"
        "#pragma once\n\n#include <array>\n\nnamespace steelyard {\n\n"
        "struct PowerCell {\n    int arms;\n    int blocks;\n    double differenceSds;\n    double right;\n"
        "    double wrong;\n    double sessions;\n    double byLot;\n};\n\n"
        "inline constexpr auto kPowerTable = std::to_array<PowerCell>({\n",
        options.trials, static_cast<unsigned long long>(options.seed));
    for (int arms = 2; arms <= 4; ++arms)
        for (const int blocks : kTableBlocks)
            for (const double difference : kTableDifferences) {
                const SimulatedTrial made{
                    .arms = static_cast<std::size_t>(arms), .blocks = blocks, .differenceSds = difference};
                const TrialTally tally = simulateTrials(made, options.trials, options.seed);
                constexpr int kByLotTrials = 400;
                const double byLot = arms == 2 ? simulateTrials(made, kByLotTrials, options.seed, true).byLot : 0;
                std::printf("    {%d, %d, %g, %.3f, %.3f, %.1f, %.3f},\n", arms, blocks, difference, tally.right,
                            tally.wrong, tally.meanSessions, byLot);
            }
    std::puts("});\n\n}  // namespace steelyard");
}

}  // namespace
}  // namespace steelyard

int main(int count, char** words)
{
    const auto options = steelyard::optionsOf(count, words);
    if (options.table)
        steelyard::printTable(options);
    else
        steelyard::printErrors(options);
    return 0;
}
