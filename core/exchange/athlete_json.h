// One athlete's part of the book's JSON. See book_json.h for the format.
#pragma once

#include "core/exchange/book_json.h"
#include "core/exchange/library_json.h"

namespace steelyard {

// `library`: what the lines and plans of this athlete name; see libraryToJson.
[[nodiscard]] Result<QJsonObject> athleteToJson(Database&, const Row<Athlete>&, const Library&);

// In two steps, because a line may use a standard that stands with a later athlete.
[[nodiscard]] Result<Id<Athlete>> athleteFromJson(Transaction&, const QJsonObject&, QDate today, JsonNames&);
[[nodiscard]] Result<BookJsonRest::OfAthlete> recordFromJson(Transaction&, const QJsonObject&, Id<Athlete>,
                                                             const JsonNames&);

// Ratings with the names of the logbook CSV.
[[nodiscard]] QJsonObject ratingToJson(const ExerciseRating&);
[[nodiscard]] Result<ExerciseRating> ratingFromJson(const QJsonObject&, const QString& where);

}  // namespace steelyard
