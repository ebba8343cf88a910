// The book as one JSON document (format 1): everything but the sets and their ratings, which stand in the logbook CSV.
//
//   STEELYARD_TRY(const QJsonObject json, bookToJson(database, std::nullopt));         // everything
//   STEELYARD_TRY(const QJsonObject json, bookToJson(database, athleteId));            // one athlete and nobody else
//   STEELYARD_TRY(const BookJsonRest rest, bookFromJson(transaction, json, today));    // into an empty book
//   ... put the sets in ...
//   STEELYARD_CHECK(replacedSetsFromJson(transaction, rest));
//
// {"format": 1,
//  "library": {"muscles": [], "grips": [], "exercises": [], "variants": [], "standards": []},
//  "gyms": [], "rule_settings": {rule: {name: number}},
//  "block_templates": [],         (block_json.h; left out when there is none)
//  "reading_parameters": [],      (reading_fit_json.h; left out when nothing was learned)
//  "erased_athletes": [{"mark": UUID, "erased_at": time}],   (who was erased, without a name; left out when nobody was)
//  "athletes": [{..., "aims": [], "health_consents": [], "body_mass": [], "standards": [], "lines": [], "blocks": [], "decisions": [],
//                "trials": [],    (trial_json.h; left out when there is none)
//                "empty_sessions": [], "lone_ratings": [], "replaced_sets": [], "repetitions": []}]}
//
// Rows are named by their UUID, muscles by their key. Loads are texts like "42.5 kg", lengths millimetres, dates ISO 8601,
// decimals texts as they were typed; what is unknown is left out.
// One athlete's document holds that athlete's gym and only the part of the library that their record uses, and no settings.
// Failures: Invalid with the place in the document; Storage.
#pragma once

#include "core/domain/logbook.h"
#include "core/storage/transaction.h"

#include <QtCore/QJsonObject>

#include <map>

namespace steelyard {

inline constexpr int kBookJsonFormat = 1;

[[nodiscard]] Result<QJsonObject> bookToJson(Database&, std::optional<Id<Athlete>> only);

// What can be stored only when the sets are there: the values that edits replaced, and repetitions.
struct BookJsonRest {
    struct OfAthlete {
        Id<Athlete> athlete;
        QString name;
        std::map<QUuid, Id<LiftLine>> lines;
        std::vector<QJsonObject> replacedSets;
        std::vector<QJsonObject> repetitions;  // see repetition_json.h
    };
    std::vector<OfAthlete> athletes;
};

// Replaces the whole library, the gyms, the settings and the learned numbers. The book must have no athletes. `today`
// bounds dates of birth.
[[nodiscard]] Result<BookJsonRest> bookFromJson(Transaction&, const QJsonObject&, QDate today);
[[nodiscard]] Result<void> replacedSetsFromJson(Transaction&, const BookJsonRest&);

}  // namespace steelyard
