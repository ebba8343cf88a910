// How often a lifter came, and how often they were to be expected.
//
//   const auto expected = expectedSessions(log, monday.addDays(-1), sunday);   // 3, if the block plans three days
//
// Expected is what the block plans where one covers the whole span; without a block the days a week agreed with the lifter;
// without either their own habit in the eight weeks before. Spans are (from, to]. Pure. Absent when there is nothing to
// expect by: no plan, nothing agreed and no session before. The weeks are our convention.
#pragma once

#include "core/analysis/athlete_log.h"

namespace steelyard {

[[nodiscard]] int sessionsBetween(const AthleteLog&, QDate from, QDate to);
[[nodiscard]] std::optional<double> expectedSessions(const AthleteLog&, QDate from, QDate to);

}  // namespace steelyard
