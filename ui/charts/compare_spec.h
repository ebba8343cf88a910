// Several lines on one relative scale, as a chart of one panel: each one's capacity in percent of what it was on the day from
// which they are compared, with its 90 % band, its name and where it stands now at its right end.
//
//   std::vector<ComparedLine> lines{{name, reading.trend}, ...};
//   const PanelsSpec spec = buildCompareSpec(lines, commonStart(lines), options);
//
// Lines may be one lifter's (grips, variants) or one line's of several lifters. A line's reference is what was known of its
// capacity on the last session up to the start, when that is at most kReferenceDays back, else on the first one after it. A
// line without a session from there on, or whose capacity then was not above zero (help on an assisted line), can't be put
// in percent: it is left out and named in `summary`. The band is that of the capacity; that of the reference isn't added, so
// two bands apart don't prove a difference. Marks stand on some sessions only, to tell lines apart; lines go through all.
// Stops are all days with a session of one of the lines.
#pragma once

#include "core/analysis/line_reading.h"
#include "ui/charts/panels_spec.h"

namespace steelyard {

inline constexpr int kReferenceDays = 28;

struct ComparedLine {
    QString name;
    std::vector<TrendPoint> trend;  // oldest first
    friend bool operator==(const ComparedLine&, const ComparedLine&) = default;
};

// The first day, not before `from`, on which all of those with a trend since then have begun; absent when none has.
[[nodiscard]] std::optional<QDate> commonStart(const std::vector<ComparedLine>& lines, std::optional<QDate> from = {});
[[nodiscard]] PanelsSpec buildCompareSpec(const std::vector<ComparedLine>& lines, std::optional<QDate> start,
                                          const PanelsOptions& options);

}  // namespace steelyard
