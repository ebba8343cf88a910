// When a verdict says what. One place for every number, each with where it comes from.
#pragma once

#include "core/domain/athlete.h"

namespace steelyard {

// "Convention" marks what no publication settles. A stall in particular has no published universal rule: what is asked here
// is how likely it is that the lift isn't rising, and what it costs to say so too early.
// What a false alarm costs beside a week of waiting.
enum class Caution { Sooner, Usual, Surer };

struct VerdictThresholds {
    // Can't tell: too few. Convention.
    int leastWeeks = 4;
    int leastExposures = 5;
    int leastRecentExposures = 2;  // in the last recentWeeks
    int recentWeeks = 4;
    // Can't tell: not to the agreed standard. Mean over the last exposures. Convention.
    int mixedExposures = 4;
    double mostOffShare = 1.0 / 3.0;
    int mixedLastExposures = 2;
    double mostOffShareLast = 0.5;
    // Effort unknown: share of working sets with neither effort nor a failed repetition. Then only a rise is said, and only
    // when it is this sure. Convention.
    int effortExposures = 4;
    double mostEffortless = 0.6;
    double sureWithoutEffort = 0.9;
    // Strength and habit come back for some weeks after a break; no trend is read in them. Convention.
    int layoffDays = 16;
    int afterLayoffWeeks = 3;
    // Said when this likely. A word that was said stays until its chance has fallen by `stay`, so that it doesn't flicker.
    Caution caution = Caution::Usual;
    double rising = 0.60;
    double falling = 0.30;  // of falling, once "not rising" is likely enough
    double stay = 0.10;
    // That most lines fall for one reason: said when this likely (common_fall.h). Convention.
    double sureOfCommonFall = 0.80;
    // A block: longer than this nobody waits for an answer.
    int blockWeeks = 8;
    // The robust line that is shown beside it: the last exposures, stretched where training is dense, bounded where rare.
    std::size_t windowExposures = 14;
    int windowLeastWeeks = 6;
    int windowMostWeeks = 12;

    // How likely it must be that a lift doesn't rise before that is said: cost of a false alarm / (that + cost of waiting a
    // week). Set on simulated lifters of one seed to at most one false alarm a lift and year by the chances alone; what the
    // words reach, and "sooner" and "surer", is in the guide. Convention.
    [[nodiscard]] constexpr double notRising(Experience experience) const
    {
        constexpr double kLevels[3][3] = {{0.525, 0.55, 0.475}, {0.625, 0.64, 0.525}, {0.725, 0.70, 0.575}};
        return kLevels[static_cast<std::size_t>(caution)][static_cast<std::size_t>(experience)];
    }
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
