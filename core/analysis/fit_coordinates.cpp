#include "core/analysis/fit_coordinates.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

using NumberOf = std::function<double&(ReadingParameters&)>;

double numberIn(const NumberOf& of, const ReadingParameters& parameters)
{
    ReadingParameters copy = parameters;
    return of(copy);
}

double logOdds(double share)
{
    return std::log(share / (1 - share));
}

double shareOf(double odds)
{
    return 1 / (1 + std::exp(-odds));
}

FitCoordinate logCoordinate(std::string name, const NumberOf& of)
{
    return {std::move(name), [of](const ReadingParameters& p) { return std::log(numberIn(of, p)); },
            [of](ReadingParameters& p, double step) { of(p) *= std::exp(step); }};
}

FitCoordinate oddsCoordinate(std::string name, const NumberOf& of)
{
    return {std::move(name), [of](const ReadingParameters& p) { return logOdds(numberIn(of, p)); },
            [of](ReadingParameters& p, double step) {
                double& share = of(p);
                share = shareOf(logOdds(share) + step);
            }};
}

// The odds that a segment of these regimes ends in a week; where it leads to keeps its shares.
FitCoordinate endingCoordinate(std::string name, std::vector<std::size_t> regimes)
{
    const std::size_t first = regimes.front();
    return {std::move(name), [first](const ReadingParameters& p) { return logOdds(1 - p.filter.change[first][first]); },
            [regimes](ReadingParameters& p, double step) {
                for (const std::size_t from : regimes) {
                    auto& row = p.filter.change[from];
                    const double before = 1 - row[from];
                    const double after = shareOf(logOdds(before) + step);
                    for (std::size_t to = 0; to < row.size(); ++to)
                        if (to != from) row[to] *= after / before;
                    row[from] = 1 - after;
                }
            }};
}

}  // namespace

std::vector<FitCoordinate> fitCoordinates(std::span<const FitLine> lines)
{
    using P = ReadingParameters;
    std::vector<FitCoordinate> all{
        logCoordinate("day_noise", [](P& p) -> double& { return p.filter.dayNoise; }),
        logCoordinate("set_noise", [](P& p) -> double& { return p.filter.setNoise; }),
        logCoordinate("week_noise", [](P& p) -> double& { return p.filter.weekNoise; }),
        logCoordinate("elasticity_mean", [](P& p) -> double& { return p.filter.elasticityMean; }),
        logCoordinate("elasticity_sd", [](P& p) -> double& { return p.filter.elasticitySd; }),
        logCoordinate("fatigue_mean", [](P& p) -> double& { return p.filter.fatigueMean; }),
        logCoordinate("fatigue_sd", [](P& p) -> double& { return p.filter.fatigueSd; })};
    for (const auto& row : EnumText<Experience>::table) {
        const auto ofIt = std::ranges::count(lines, std::optional(row.value), &FitLine::experience);
        if (ofIt < kLeastLinesOfAPace) continue;
        const auto at = static_cast<std::size_t>(row.value);
        const std::string word(row.key);
        all.push_back(logCoordinate("pace_mean_" + word, [at](P& p) -> double& { return p.paces[at].mean; }));
        all.push_back(logCoordinate("pace_sd_" + word, [at](P& p) -> double& { return p.paces[at].sd; }));
    }
    all.push_back(endingCoordinate("ends_of_rising", {0}));
    all.push_back(endingCoordinate("ends_of_not_rising", {1, 2}));
    all.push_back(oddsCoordinate("week_memory", [](P& p) -> double& { return p.filter.weekMemory; }));
    all.push_back(oddsCoordinate("off_share", [](P& p) -> double& { return p.filter.offShare; }));
    all.push_back(logCoordinate("level_noise", [](P& p) -> double& { return p.filter.levelNoise; }));
    return all;
}

}  // namespace steelyard
