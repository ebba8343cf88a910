#include "core/exchange/strict_object.h"

#include "core/base/text.h"

#include <QtCore/QJsonDocument>

#include <algorithm>
#include <cmath>

namespace steelyard {

Result<StrictObject> StrictObject::read(const QJsonValue& value, QString place,
                                        std::initializer_list<const char*> known)
{
    StrictObject object(value.toObject(), std::move(place));
    if (!value.isObject()) return object.refuse(tr("An object in braces is needed here."));
    for (const QString& name : object.m_object.keys())
        if (std::ranges::none_of(known, [&](const char* k) { return name == QLatin1StringView(k); }))
            return object.refuse(tr("“%1” is no known key here; remove it or mend its spelling.").arg(name));
    return object;
}

Result<StrictObject> StrictObject::readDocument(const QByteArray& json, QString place,
                                                std::initializer_list<const char*> known)
{
    QJsonParseError problem;
    const QJsonDocument document = QJsonDocument::fromJson(json, &problem);
    if (problem.error != QJsonParseError::NoError)
        return fail(ErrorCode::Invalid,
                    tr("%1: The text is no sound JSON at byte %2.").arg(place, QString::number(problem.offset)),
                    problem.errorString());
    return read(document.isObject() ? QJsonValue(document.object()) : QJsonValue(), std::move(place), known);
}

tl::unexpected<Error> StrictObject::refuse(const QString& what) const
{
    return fail(ErrorCode::Invalid, tr("%1: %2", "place in a data file, what is wrong").arg(m_place, what));
}

Result<QJsonValue> StrictObject::value(const char* name) const
{
    QJsonValue found = m_object.value(QLatin1StringView(name));
    if (found.isUndefined()) return refuse(tr("“%1” is missing.").arg(QLatin1StringView(name)));
    return found;
}

Result<QString> StrictObject::text(const char* name) const
{
    STEELYARD_TRY(const QJsonValue found, value(name));
    QString written = found.toString();
    if (!found.isString() || written.isEmpty() || written != cleanName(written) || written.size() > kMaxNameLength)
        return refuse(
            tr("“%1” needs a short text in quotes, without spaces at its ends.").arg(QLatin1StringView(name)));
    return written;
}

Result<double> StrictObject::number(const char* name) const
{
    STEELYARD_TRY(const QJsonValue found, value(name));
    if (!found.isDouble()) return refuse(tr("“%1” needs a number.").arg(QLatin1StringView(name)));
    return found.toDouble();
}

Result<int> StrictObject::whole(const char* name) const
{
    STEELYARD_TRY(const double found, number(name));
    if (found != std::floor(found) || std::abs(found) > 1e6)
        return refuse(tr("“%1” needs a whole number.").arg(QLatin1StringView(name)));
    return static_cast<int>(found);
}

Result<bool> StrictObject::flag(const char* name) const
{
    if (!has(name)) return false;
    STEELYARD_TRY(const QJsonValue found, value(name));
    if (!found.isBool()) return refuse(tr("“%1” needs true or false.").arg(QLatin1StringView(name)));
    return found.toBool();
}

Result<Load> StrictObject::load(const char* name) const
{
    STEELYARD_TRY(const QString written, text(name));
    if (const auto load = Load::parseWithUnit(written)) return *load;
    return refuse(tr("“%1” of “%2” is no load; write an amount and its unit, as in “2.5 kg”.")
                      .arg(written, QLatin1StringView(name)));
}

Result<std::optional<Load>> StrictObject::optionalLoad(const char* name) const
{
    if (!has(name)) return std::optional<Load>();
    STEELYARD_TRY(const Load found, load(name));
    return std::optional<Load>(found);
}

Result<std::optional<int>> StrictObject::optionalWhole(const char* name) const
{
    if (!has(name)) return std::optional<int>();
    STEELYARD_TRY(const int found, whole(name));
    return std::optional<int>(found);
}

Result<QJsonArray> StrictObject::array(const char* name) const
{
    STEELYARD_TRY(const QJsonValue found, value(name));
    if (!found.isArray()) return refuse(tr("“%1” needs a list in square brackets.").arg(QLatin1StringView(name)));
    return found.toArray();
}

Result<QJsonObject> StrictObject::object(const char* name) const
{
    STEELYARD_TRY(const QJsonValue found, value(name));
    if (!found.isObject()) return refuse(tr("“%1” needs an object in braces.").arg(QLatin1StringView(name)));
    return found.toObject();
}

}  // namespace steelyard
