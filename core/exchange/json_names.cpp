#include "core/exchange/json_names.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct JsonNamesText {
    Q_DECLARE_TR_FUNCTIONS(JsonNamesText)
};

}  // namespace

QUuid readUuid(JsonPlace& place, const QString& name)
{
    const QUuid uuid = QUuid::fromString(place.text(name));
    if (uuid.isNull()) place.fault(name, JsonNamesText::tr("a UUID is needed"));
    return uuid;
}

void faultTwice(JsonPlace& place, const QString& name)
{
    place.fault(name, JsonNamesText::tr("it stands twice"));
}

void faultUnknownName(JsonPlace& place, const QString& name)
{
    place.fault(name, JsonNamesText::tr("there is nothing with this UUID in the file"));
}

QDate readDate(JsonPlace& place, const QString& name)
{
    const QString text = place.text(name);
    const QDate date = QDate::fromString(text, QStringLiteral("yyyy-MM-dd"));
    if (!date.isValid()) place.fault(name, JsonNamesText::tr("“%1” is no date like 2027-03-01").arg(text));
    return date;
}

std::optional<QDate> readOptionalDate(JsonPlace& place, const QString& name)
{
    return place.has(name) ? std::optional(readDate(place, name)) : std::nullopt;
}

std::optional<Length> readOptionalLength(JsonPlace& place, const QString& name)
{
    return place.has(name) ? std::optional(lengthFromMillimetres(place.integer(name))) : std::nullopt;
}

Result<void> refuseProblems(const Problems& problems, const QString& where)
{
    if (problems.empty()) return {};
    return fail(ErrorCode::Invalid, where + QStringLiteral(": ") + problems.front().text);
}

}  // namespace steelyard
