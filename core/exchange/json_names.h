// Reading of UUIDs, dates and lengths from a JsonPlace, for the readers of the book's JSON.
#pragma once

#include "core/base/id.h"
#include "core/base/quantity.h"
#include "core/domain/problem.h"
#include "core/exchange/json_reading.h"

#include <QtCore/QDate>
#include <QtCore/QUuid>

#include <map>

namespace steelyard {

// A null UUID, and a fault at the place, when there is none.
[[nodiscard]] QUuid readUuid(JsonPlace&, const QString& name);
void faultTwice(JsonPlace&, const QString& name);
void faultUnknownName(JsonPlace&, const QString& name);
// An invalid date, and a fault, when there is none.
[[nodiscard]] QDate readDate(JsonPlace&, const QString& name);
[[nodiscard]] std::optional<QDate> readOptionalDate(JsonPlace&, const QString& name);
[[nodiscard]] std::optional<Length> readOptionalLength(JsonPlace&, const QString& name);
// Invalid with the first problem.
[[nodiscard]] Result<void> refuseProblems(const Problems&, const QString& where);

// The row's own UUID, which no other row may have.
template <class Entity>
[[nodiscard]] QUuid readNewUuid(JsonPlace& place, const std::map<QUuid, Id<Entity>>& known)
{
    const QUuid uuid = readUuid(place, QStringLiteral("uuid"));
    if (known.contains(uuid)) faultTwice(place, QStringLiteral("uuid"));
    return uuid;
}

// The row that a UUID names. Absent, and a fault at the place, when the document has no such row.
template <class Entity>
[[nodiscard]] std::optional<Id<Entity>> readName(JsonPlace& place, const QString& name,
                                                 const std::map<QUuid, Id<Entity>>& known)
{
    const auto found = known.find(readUuid(place, name));
    if (found != known.end()) return found->second;
    faultUnknownName(place, name);
    return std::nullopt;
}

}  // namespace steelyard
