#include "core/analysis/repetition_travel.h"

#include "core/numerics/robust_trend.h"

#include <algorithm>

namespace steelyard {
namespace {

bool showsFullTravel(const Repetition& one)
{
    if (one.partWay || !one.travel() || *one.travel() <= 0) return false;
    RepetitionMarks marks = one.marks;
    marks.set(Mark::ShortBottom, false);
    marks.set(Mark::ShortTop, false);
    return marks.none();
}

std::vector<const Repetition*> longestOf(const std::vector<Repetition>& set)
{
    std::vector<const Repetition*> found;
    for (const Repetition& one : set)
        if (showsFullTravel(one)) found.push_back(&one);
    std::ranges::stable_sort(found, std::greater{}, [](const Repetition* one) { return *one->travel(); });
    if (found.size() > kLongestOfASet) found.resize(kLongestOfASet);
    return found;
}

void markEnds(Repetition& one, const FullTravel& full, double allowedMm, Mark whereUnknown)
{
    if (!one.lowMm || !one.highMm || !full.lowMm || !full.highMm) {
        one.marks.set(whereUnknown);
        return;
    }
    const double below = one.lowMm->toDouble() - *full.lowMm;
    const double above = *full.highMm - one.highMm->toDouble();
    if (below >= above || below > allowedMm) one.marks.set(Mark::ShortBottom);
    if (above > below || above > allowedMm) one.marks.set(Mark::ShortTop);
}

}  // namespace

std::optional<FullTravel> fullTravel(std::span<const std::vector<Repetition>> sets)
{
    std::vector<double> travels;
    std::vector<double> lows;
    std::vector<double> highs;
    std::size_t used = 0;
    for (std::size_t back = sets.size(); back > 0 && used < kTravelSets; --back) {
        const auto longest = longestOf(sets[back - 1]);
        if (!longest.empty()) ++used;
        for (const Repetition* one : longest) {
            travels.push_back(*one->travel());
            if (!one->lowMm || !one->highMm) continue;
            lows.push_back(one->lowMm->toDouble());
            highs.push_back(one->highMm->toDouble());
        }
    }
    if (travels.size() < kLongestOfASet) return std::nullopt;
    return FullTravel{*median(travels), median(lows), median(highs), static_cast<int>(travels.size())};
}

std::vector<Repetition> markShort(std::vector<Repetition> repetitions, const FullTravel& full, int leastPercent,
                                  Mark whereUnknown)
{
    const double least = full.mm * leastPercent / 100;
    for (Repetition& one : repetitions) {
        const auto travel = one.travel();
        if (!travel || one.partWay) continue;
        one.marks.set(Mark::ShortBottom, false);
        one.marks.set(Mark::ShortTop, false);
        if (*travel < least) markEnds(one, full, full.mm - least, whereUnknown);
    }
    return repetitions;
}

}  // namespace steelyard
