// The parts of the book's JSON that do not belong to an athlete: library and gyms. See book_json.h for the format.
#pragma once

#include "core/domain/gym.h"
#include "core/storage/transaction.h"

#include <QtCore/QJsonObject>

#include <map>

namespace steelyard {

// The names that a document gives to rows, when it is read. A name that is not here is a fault of the document.
struct JsonNames {
    std::map<QString, Id<Muscle>> muscles;
    std::map<QUuid, Id<Exercise>> exercises;
    std::map<QUuid, Id<Variant>> variants;
    std::map<QUuid, Id<Grip>> grips;
    std::map<QUuid, Id<RepStandard>> standards;
    std::map<QUuid, Id<Gym>> gyms;
};

[[nodiscard]] QString uuidText(const QUuid& uuid);  // without braces

// `library` holds what is to be written; standards of an athlete are left to the athlete.
[[nodiscard]] QJsonObject libraryToJson(const Library&);
[[nodiscard]] QJsonObject toJson(const Row<RepStandard>&, const Library&);
[[nodiscard]] QJsonObject toJson(const Row<Gym>&);

[[nodiscard]] Result<void> libraryFromJson(Transaction&, const QJsonObject&, JsonNames&);
[[nodiscard]] Result<void> standardFromJson(Transaction&, const QJsonObject&, std::optional<Id<Athlete>>, JsonNames&,
                                            const QString& place);
[[nodiscard]] Result<void> gymFromJson(Transaction&, const QJsonObject&, JsonNames&);

}  // namespace steelyard
