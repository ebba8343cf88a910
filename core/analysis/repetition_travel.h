// How far the load travels when a lifter moves it all the way, and which repetitions stayed under the share of it that the rep
// standard asks for.
//
//   const auto full = fullTravel(sets);                             // of one lift line
//   const auto judged = markShort(repetitions, *full, 90, Mark::ShortBottom);
//   judged[4].marks.has(Mark::ShortTop)                             // it ended 60 mm under where the others end
//
// The full travel is the median over the three longest repetitions of every set, of the newest kTravelSets sets that were
// measured. A single wild value (a device that lost the bar) can't turn it, a set that was tired at its end doesn't shorten it,
// and habitual short work does not pass for full as long as a set has three whole repetitions. Repetitions with a mark other than
// short are left out, because a swing or a helping hand moves the load farther; so are those that failed part-way. At least
// three repetitions are needed. The rule is our convention; the median is there for its breakdown point of one half (Huber 1981,
// Robust Statistics).
//
// At which end a repetition was short: where its lowest or highest point lies farther from where the full ones have theirs; at
// both when either gap alone is more than the standard lets pass. Without heights the caller says which end is meant.
// Units: millimetres, per cent. Failures: none; what isn't known is absent.
#pragma once

#include "core/domain/repetition.h"

namespace steelyard {

inline constexpr std::size_t kTravelSets = 20;
inline constexpr std::size_t kLongestOfASet = 3;

struct FullTravel {
    double mm = 0;
    std::optional<double> lowMm;  // of the same repetitions, where heights are known
    std::optional<double> highMm;
    int repetitions = 0;  // behind it
    friend bool operator==(const FullTravel&, const FullTravel&) = default;
};

// Oldest set first.
[[nodiscard]] std::optional<FullTravel> fullTravel(std::span<const std::vector<Repetition>> sets);
// Marks for short repetitions are set anew on those whose travel is known; other marks stay.
[[nodiscard]] std::vector<Repetition> markShort(std::vector<Repetition> repetitions, const FullTravel& full,
                                                int leastPercent, Mark whereUnknown);

}  // namespace steelyard
