// The repetitions of one lifter's sets in the book's JSON: [{"date", "line", "set", "repetitions": [{"source", "travel_mm",
// "low_mm", "high_mm", "lifting_s", "lowering_s", "marks", "part_way"}]}]. `set` is the set's number in the logbook CSV; what is
// unknown is left out, the order gives the numbers.
//
//   STEELYARD_TRY(json[u"repetitions"_qs], repetitionsToJson(database, athlete, lineUuids));
//   STEELYARD_CHECK(repetitionsFromJson(transaction, rest));       // once the sets are in the book
//
// Failures: Invalid with the place in the document; Storage.
#pragma once

#include "core/exchange/book_json.h"

#include <QtCore/QJsonArray>

namespace steelyard {

[[nodiscard]] Result<QJsonArray> repetitionsToJson(Database&, Id<Athlete>, const std::map<Id<LiftLine>, QUuid>& lines);
[[nodiscard]] Result<void> repetitionsFromJson(Transaction&, const BookJsonRest&);

}  // namespace steelyard
