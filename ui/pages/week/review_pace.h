// How long the rest of a review will take, at the pace of the lifters finished so far.
//
//   ReviewPace pace;
//   pace.finished(seconds);          // of any clock, when another lifter is finished
//   pace.minutesLeft(37)             // absent until three have been
//
// The median of the last lifters, so that one long conversation counts little; a pause longer than a quarter of an hour isn't
// work and counts not at all.
#pragma once

#include <deque>
#include <optional>

namespace steelyard {

class ReviewPace {
public:
    void finished(double seconds);
    [[nodiscard]] std::optional<int> minutesLeft(int lifters) const;

private:
    std::optional<double> m_last;
    std::deque<double> m_took;  // seconds a lifter
};

}  // namespace steelyard
