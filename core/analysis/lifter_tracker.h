// All lines of one lifter, followed together: what one line says of the lifter helps to read the others.
//
//   LifterTracker lifter(parameters, thresholds, log);
//   lifter.advance(asOf);
//   lifter.line(0).finding(lifter.counted(0), log.blocks, asOf);
//
// Shared: how noisy the lifter is (a new line starts half from what the older ones say, half from what lifters are like), and,
// when nobody wrote it down, the experience. Weeks pass for all lines at once, so that a word of any week rests on nothing
// after it, in any line.
#pragma once

#include "core/analysis/line_tracker.h"

namespace steelyard {

class LifterTracker {
public:
    // All must outlive it.
    LifterTracker(const ReadingParameters&, const VerdictThresholds&, const AthleteLog&, QDate until);

    void advance(QDate until);
    [[nodiscard]] const LineTracker& line(std::size_t at) const { return m_lines[at].tracker; }
    [[nodiscard]] LineTracker& line(std::size_t at) { return m_lines[at].tracker; }
    [[nodiscard]] const std::vector<CountedExposure>& counted(std::size_t at) const { return m_lines[at].counted; }

private:
    struct Followed {
        const LineRecord* record;
        std::vector<CountedExposure> counted;
        LineTracker tracker;
        bool expected = false;  // has taken over what the others say
    };

    void shareExperience();
    void expectNoise(Followed&) const;

    const ReadingParameters* m_parameters;
    const AthleteLog* m_log;
    std::vector<Followed> m_lines;
};

}  // namespace steelyard
