// One table a kind of choice: its values and their stable keys, the same in the database, in CSV and in JSON.
//
//   template <> struct EnumText<SetKind> { static constexpr auto table = std::to_array<EnumKey<SetKind>>({...}); };
//   key(SetKind::work) == "work";   fromKey<SetKind>(u"work") == SetKind::work;
//
// Keys are part of the file formats: add to them, never change them. Words for people are ui/format's job.
#pragma once

#include "core/base/load.h"

#include <QtCore/QString>

#include <array>
#include <optional>
#include <string_view>

namespace steelyard {

template <class Enum>
struct EnumKey {
    Enum value;
    std::string_view key;
};

template <class Enum>
struct EnumText;  // specialise with a static constexpr array `table`

template <class Enum>
[[nodiscard]] constexpr std::string_view key(Enum value)
{
    for (const auto& row : EnumText<Enum>::table)
        if (row.value == value) return row.key;
    return {};
}

template <class Enum>
[[nodiscard]] constexpr std::optional<Enum> fromKey(std::string_view text)
{
    for (const auto& row : EnumText<Enum>::table)
        if (row.key == text) return row.value;
    return std::nullopt;
}

template <class Enum>
[[nodiscard]] std::optional<Enum> fromKey(QStringView text)
{
    for (const auto& row : EnumText<Enum>::table)
        if (text == QLatin1StringView(row.key.data(), static_cast<qsizetype>(row.key.size()))) return row.value;
    return std::nullopt;
}

template <class Enum>
[[nodiscard]] QString toText(Enum value)
{
    const auto text = key(value);
    return QString::fromLatin1(text.data(), static_cast<qsizetype>(text.size()));
}

// "kg, lb": for messages that say what would have been accepted.
template <class Enum>
[[nodiscard]] QString keyList()
{
    QString list;
    for (const auto& row : EnumText<Enum>::table) {
        if (!list.isEmpty()) list += QStringLiteral(", ");
        list += QLatin1StringView(row.key.data(), static_cast<qsizetype>(row.key.size()));
    }
    return list;
}

template <>
struct EnumText<MassUnit> {
    static constexpr auto table = std::to_array<EnumKey<MassUnit>>({{MassUnit::kg, "kg"}, {MassUnit::lb, "lb"}});
};

}  // namespace steelyard
