// The numbers of repetitions that are usual to be told apart, and one lift line seen as several by them: the sessions whose first
// working set was in a band, apart from those in another. No band is best for everyone, so each lifter's own are compared.
//
//   const BandSplit split = splitByBand(log, 3);            // of log.lines[3]
//   engine.readAll(split.log, asOf)[i]                      // as if usualBandText(split.bands[i]) were a line of its own
//
// The borders are our convention. Pure; repetitions count from 1.
#pragma once

#include "core/analysis/athlete_log.h"

#include <array>

namespace steelyard {

inline constexpr std::array<RepBand, 4> kUsualBands{{{1, 6}, {7, 12}, {13, 20}, {21, 99}}};

[[nodiscard]] std::size_t usualBandOf(int reps);
// "7–12", "more than 20".
[[nodiscard]] QString usualBandText(std::size_t band);
// Completed in the session's first working set, which says what band it was in; absent: no working set, or a first that failed.
[[nodiscard]] std::optional<int> leadingReps(const Exposure&);

// How the sessions of one band were rated.
struct BandRatings {
    std::vector<double> felt;  // the strongest of tension, burn and pump, 0 to 10
    int limiterRated = 0;
    int targetGaveOut = 0;

    void add(const ExerciseRating& rating);
    [[nodiscard]] bool knows(int least) const { return std::ssize(felt) >= least && limiterRated >= least; }
    [[nodiscard]] double strength() const;  // median of `felt`
    [[nodiscard]] double targetShare() const;
};
using RatingsByBand = std::array<BandRatings, kUsualBands.size()>;
// Of the sessions since `from`, that day included.
[[nodiscard]] RatingsByBand ratingsByBand(const LineRecord& line, QDate from);

struct BandSplit {
    AthleteLog log;                  // with these lines alone, under ids of their own
    std::vector<std::size_t> bands;  // of each of its lines
};
[[nodiscard]] BandSplit splitByBand(const AthleteLog&, std::size_t line);

}  // namespace steelyard
