// Reads a lift line by a robust trend: Theil-Sen slope and Mann-Kendall test on the logarithm of capacity.
//
//   const RobustTrendEngine engine;
//   const LineReading reading = engine.read(log.lines.front(), log, asOf);
//
// Reasons, by verdict, in the order in which they are asked:
//   can't tell   too_few, mixed_record, effort_unknown, no_estimate (no set that an equation can read)
//   holding      after_layoff, deload, within_noise
//   slipping     falling
//   stalled      no_rise
//   progressing  rising
// Not being watched never makes a line unreadable by itself: it lowers trust, and `why` says so.
// Thresholds: verdict_thresholds.h. Sets: counting.h. Fit: trend_fit.h.
#pragma once

#include "core/analysis/verdict_thresholds.h"
#include "core/analysis/line_reading.h"
#include "core/base/wording.h"

namespace steelyard {

class RobustTrendEngine final : public ReadingEngine {
public:
    // `wording` is for the sentence that says why.
    explicit RobustTrendEngine(VerdictThresholds thresholds = {}, Wording wording = {})
        : m_thresholds(thresholds), m_wording(std::move(wording))
    {}
    [[nodiscard]] LineReading read(const LineRecord& record, const AthleteLog& log, QDate asOf) const override;

private:
    VerdictThresholds m_thresholds;
    Wording m_wording;
};

}  // namespace steelyard
