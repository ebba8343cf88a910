// All lines of one lifter, followed together: what one line says of the lifter helps to read the others.
//
//   LifterTracker lifter(parameters, thresholds, log.athlete.value.experience);
//   lifter.advance(log, counted, asOf);                       // counted: by line, as in log.lines
//   lifter.line(log.lines[0].id).finding(counted[0], log.blocks, asOf);
//
// Shared: how noisy the lifter is (a new line starts half from what the older ones say, half from what lifters are like), what
// load costs in repetitions (from the lifter's other ways of doing the same exercise), and, when nobody wrote it down, the
// experience. Weeks pass for all lines at once, so that a word of any week rests on nothing
// after it, in any line. The state is a value and holds no part of the log: it may be kept and go on with a longer log that
// is the same up to where it stood.
#pragma once

#include "core/analysis/line_tracker.h"

#include <map>

namespace steelyard {

using CountedLines = std::vector<std::vector<CountedExposure>>;

// Of every line, as in log.lines.
[[nodiscard]] CountedLines countLines(const AthleteLog&, QDate until);

class LifterTracker {
public:
    // Parameters and thresholds must outlive it.
    LifterTracker(const ReadingParameters&, const VerdictThresholds&, std::optional<Experience>);

    void advance(const AthleteLog&, const CountedLines&, QDate until);
    // A line without an exposure so far is one that hasn't started.
    [[nodiscard]] const LineTracker& line(Id<LiftLine>) const;
    // For LineTracker::listen: to hear of everything, before the first advance().
    [[nodiscard]] LineTracker& lineToListenTo(Id<LiftLine>);

private:
    struct Followed {
        LineTracker tracker;
        bool toldOfOthers = false;
    };

    Followed& follow(Id<LiftLine>);
    void shareExperience(const AthleteLog&);
    void hearOthers(const AthleteLog&);
    void tellOfOthers(Followed&, const LineRecord&) const;

    const ReadingParameters* m_parameters;
    const VerdictThresholds* m_thresholds;
    std::optional<Experience> m_experience;
    std::map<Id<LiftLine>, Followed> m_lines;
    LineTracker m_unstarted;
    std::optional<qint64> m_week;  // the last one that was gone through, perhaps in part
    // Of the lines that had started before this week: mean noise, and elasticity by exercise (sum, lines).
    std::optional<qint64> m_heardWeek;
    std::vector<double> m_noise;
    std::map<Id<Exercise>, std::pair<double, int>> m_elasticity;
};

}  // namespace steelyard
