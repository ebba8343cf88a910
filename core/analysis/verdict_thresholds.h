// When the robust trend says what. One place for every number, each with where it comes from.
#pragma once

#include "core/domain/athlete.h"

namespace steelyard {

// "Convention" marks what no publication settles. A stall in particular has no published universal rule. What can be
// defended is to speak of one only when the interval of the slope leaves out the smallest rise worth waiting for (Sen 1968,
// JASA 63:1379-1389, for the interval; Hopkins 2000, Sports Med 30:1-15, for judging a change by the smallest worthwhile one
// and by the noise), and to say "holding" while a slow rise and no rise look alike.
struct VerdictThresholds {
    // Can't tell: too few. Convention; five points are the fewest for which Sen's 90 % interval exists.
    int leastWeeks = 4;
    int leastExposures = 5;
    int leastRecentExposures = 2;  // in the last recentWeeks
    int recentWeeks = 4;
    // Can't tell: not to the agreed standard. Mean share of off-standard repetitions over watched exposures. Convention.
    int mixedExposures = 4;
    double mostOffShare = 1.0 / 3.0;
    int mixedLastExposures = 2;
    double mostOffShareLast = 0.5;
    // Effort unknown: share of working sets with neither effort nor a failed repetition. Convention.
    int effortExposures = 4;
    double mostEffortless = 0.6;
    // Strength and habit come back for some weeks after a break; no trend is read in them. Convention.
    int layoffDays = 16;
    int afterLayoffWeeks = 3;
    int afterLayoffLongestWeeks = 6;  // until there are leastExposures again, but no longer than this
    // One-sided level of the Mann-Kendall test at which a rise or fall is said aloud. Convention.
    double sure = 0.90;
    // A stall (stall.h): so many exposures over so many weeks, within the last stallWindowWeeks. With one session a week and
    // sessions that differ by 2.5 %, one standard error of the slope is 0.2 % a week over twelve weeks and 0.5 % over six,
    // which is as much as many lifters gain. Convention.
    int stallExposures = 8;
    int stallWeeks = 8;
    int stallWindowWeeks = 12;
    // One-sided level of the slope's upper bound; the same certainty as for a rise or a fall. Convention.
    double stallSure = 0.90;
    // A stall that was clear stays one until over its weeks a rise is this likely, or until the rise of the last sessions is
    // this sure; and no longer than the window without being clear again: none of the sessions it was clear from is left
    // then. Convention.
    double stallOver = 0.80;
    double sureAfterStall = 0.975;
    int stallMemoryWeeks = 12;
    // Window: the last exposures, stretched where training is dense, bounded where it is rare. Convention.
    std::size_t windowExposures = 14;
    int windowLeastWeeks = 6;
    int windowMostWeeks = 12;

    // Smallest worthwhile rise of capacity a week. Convention, of the size of long-run gains in competing lifters: 7.5 to
    // 12.5 % in the first year, a tenth of that later (Latella et al., preprint).
    [[nodiscard]] static constexpr double smallestWorthwhile(Experience experience)
    {
        switch (experience) {
        case Experience::Novice:
            return 0.003;
        case Experience::Intermediate:
            return 0.0015;
        case Experience::Advanced:
            return 0.0005;
        }
        return 0.0015;
    }
    friend bool operator==(const VerdictThresholds&, const VerdictThresholds&) = default;
};

}  // namespace steelyard
