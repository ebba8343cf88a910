// How far the repetitions of each session went: a point for each repetition (hollow: marked short), the session's median as a
// line, and the least travel that the standard counts as an edge.
//
//   if (auto panel = travelPanel(source, sessions, locale)) spec.panels.push_back(*std::move(panel));
//   spec.summary += travelSummary(source);
//
// Of the sets that are no warm-ups. Unit: millimetres. Absent, and an empty summary, when no travel was recorded in these sessions.
#pragma once

#include "ui/charts/rated_sessions.h"

namespace steelyard {

[[nodiscard]] std::optional<PlotPanel> travelPanel(const RatingsSource& source,
                                                   const std::vector<RatedSession>& sessions, const QLocale& locale);
// How alike they are, against the sets like the newest that was measured.
[[nodiscard]] QString travelSummary(const RatingsSource& source);

}  // namespace steelyard
