// Reads a lifter's lines by the regime filter: what is going on, since when, how sure that is, and what comes next.
//
//   const RegimeEngine engine(parameters, thresholds, wording);
//   const std::vector<LineReading> readings = engine.readAll(log, asOf);
//
// Reasons, by verdict, in the order in which they are asked:
//   can't tell   too_few, mixed_record, effort_unknown, no_estimate (no set that says anything)
//   holding      after_layoff, deload, planned_hold, slow_pace (a stop of this lifter's pace would not show within a block), within_noise
//   slipping     falling, whole_lifter (and most of the lifter's other lines with it: common_fall.h)
//   stalled      no_rise
//   progressing  rising
// Not being watched never makes a line unreadable by itself: it lowers trust, and `why` says so.
// Thresholds: verdict_thresholds.h. Sets: set_evidence.h. Filter: regime_filter.h. Order: verdict_rules.h.
#pragma once

#include "core/analysis/capacity_ahead.h"
#include "core/analysis/reading_memory.h"
#include "core/base/wording.h"

namespace steelyard {

// A roster wants the numbers of today; who looks at one line wants its course as well (LineReading::trend).
enum class ReadingDepth { Numbers, Course };

class RegimeEngine final : public ReadingEngine {
public:
    // `wording` is for the sentence that says why.
    explicit RegimeEngine(ReadingParameters parameters = {}, VerdictThresholds thresholds = {}, Wording wording = {},
                          ReadingDepth depth = ReadingDepth::Numbers);
    [[nodiscard]] std::vector<LineReading> readAll(const AthleteLog& log, QDate asOf) const override;
    // The same; `state`, new and of this engine's numbers, is left as it is on that day, for those who ask further.
    [[nodiscard]] std::vector<LineReading> readAll(const AthleteLog& log, QDate asOf, LifterTracker& state) const;
    // The same, going on from what is kept, and therefore without the course. The memory must not outlive the engine.
    [[nodiscard]] std::vector<LineReading> readAll(const AthleteLog& log, QDate asOf, ReadingMemory& memory) const;
    // The weeks to come, by the state that readAll() left: dear, so only of the line that is looked at. Empty where too
    // little is known to say it, or the line rests.
    [[nodiscard]] std::vector<CapacityAhead> ahead(const LineRecord& record, const AthleteLog& log, const LineReading&,
                                                   const LifterTracker& state, QDate asOf) const;
    // The state behind a reading, for forecasts and explanations; `before` hears of every session on the way. Must not
    // outlive the engine.
    [[nodiscard]] LineTracker track(const LineRecord& record, const AthleteLog& log, QDate asOf,
                                    LineTracker::SessionListener before = {}) const;

    [[nodiscard]] const ReadingParameters& parameters() const { return m_parameters; }
    [[nodiscard]] const VerdictThresholds& thresholds() const { return m_thresholds; }

private:
    [[nodiscard]] std::vector<LineReading> readLifter(const AthleteLog&, QDate asOf, const LifterTracker&,
                                                      const CountedLines&) const;
    [[nodiscard]] LineReading readTracked(const LineRecord&, const AthleteLog&, QDate asOf, const LineTracker&,
                                          std::span<const CountedExposure> counted) const;

    ReadingParameters m_parameters;
    VerdictThresholds m_thresholds;
    Wording m_wording;
    ReadingDepth m_depth;
};

}  // namespace steelyard
