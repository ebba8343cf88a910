// Small pieces that the writers of the book's JSON share: what is unknown or empty is left out.
#pragma once

#include <QtCore/QDate>
#include <QtCore/QJsonObject>

#include <optional>

namespace steelyard {

inline void putText(QJsonObject& json, const QString& name, const QString& text)
{
    if (!text.isEmpty()) json[name] = text;
}

template <class T>
void putInteger(QJsonObject& json, const QString& name, const std::optional<T>& value)
{
    if (value) json[name] = static_cast<int>(*value);
}

[[nodiscard]] inline QString dateText(QDate date)
{
    return date.toString(Qt::ISODate);
}

}  // namespace steelyard
