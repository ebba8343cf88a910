// Strict reading of our own JSON files. A reader knows where it is, so that a refusal names the place.
//
//   JsonPlace variant(json, u"variant “straight bar”"_qs);
//   const QString name = variant.text(u"name"_qs);
//   ...
//   if (!variant.ok()) return fail(variant.error());       // the first thing that was wrong
//
// Reading goes on after a fault with empty values; the first fault is kept. finish() also refuses keys nobody asked for.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/result.h"

#include <QtCore/QJsonArray>
#include <QtCore/QJsonObject>

#include <set>

namespace steelyard {

class JsonPlace {
public:
    JsonPlace(QJsonObject object, QString place) : m_object(std::move(object)), m_place(std::move(place)) {}

    [[nodiscard]] QString text(const QString& name);          // needed, may be empty
    [[nodiscard]] QString optionalText(const QString& name);  // empty when absent
    [[nodiscard]] int integer(const QString& name);
    [[nodiscard]] std::optional<int> optionalInteger(const QString& name);
    [[nodiscard]] bool flag(const QString& name);  // false when absent
    [[nodiscard]] Load load(const QString& name);
    [[nodiscard]] std::optional<Load> optionalLoad(const QString& name);
    [[nodiscard]] std::optional<Decimal> optionalDecimal(const QString& name);  // written as text
    [[nodiscard]] QJsonArray array(const QString& name);                        // empty when absent
    [[nodiscard]] QJsonObject object(const QString& name);                      // empty when absent
    [[nodiscard]] bool has(const QString& name) const { return m_object.contains(name); }
    template <class Enum>
    [[nodiscard]] Enum choice(const QString& name, Enum fallback)
    {
        const QString word = text(name);
        const auto value = fromKey<Enum>(QStringView(word));
        if (!value) fault(name, unknownChoice(word, keyList<Enum>()));
        return value.value_or(fallback);
    }
    template <class Enum>
    [[nodiscard]] std::optional<Enum> optionalChoice(const QString& name)
    {
        return has(name) ? std::optional(choice(name, EnumText<Enum>::table.front().value)) : std::nullopt;
    }
    void fault(const QString& name, const QString& what);  // keeps the first
    // Ok, or the first fault, or the first key that was not read.
    [[nodiscard]] Result<void> finish();

private:
    [[nodiscard]] static QString unknownChoice(const QString& word, const QString& choices);
    QJsonObject m_object;
    QString m_place;
    std::set<QString> m_read;
    std::optional<Error> m_fault;
};

}  // namespace steelyard
