// Trials in the book's JSON. See book_json.h for the format.
//
//   {"uuid": …, "question": …, "designed_on": "2027-01-04", "factor": "grip", "why_more_than_one": …,
//    "arms": [{"variant": …, "grip": …, "standard": …, "band_low": 8, "band_high": 12, "lowering_s": "3", "run_in": 1}],
//    "outcomes": [{"key": "tension", "weight": 1}], "limit": {"rating": 4, "sessions_running": 2},
//    "sets": 3, "planned_rir": "2", "days_between": 2, "blocks": 6, "seed": "1",
//    "days": [{"date": …, "block": 1, "arm": "B", "arm_done": "A", "missed": true, "note": …}],
//    "looks": [{"date": …, "sessions_done": 5}],
//    "ending": {"date": …, "kind": "concluded", "reason": …, "choice": "B"}}
//
// Arms are named by their letter, the seed is a text because it needs all its 64 bits. Left out: what is as usual or unknown.
#pragma once

#include "core/domain/trial.h"
#include "core/exchange/block_json.h"

namespace steelyard {

[[nodiscard]] QJsonArray toJson(const std::vector<Row<Trial>>&, const Library&);
[[nodiscard]] Result<NamedByUuid<Trial>> trialFromJson(const QJsonObject&, Id<Athlete>, const JsonNames&,
                                                       const QString& where);

}  // namespace steelyard
