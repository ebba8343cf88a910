// Strict reading of our own JSON files: every key must be asked for, every value of the promised kind. A reader knows where
// it is, so that a refusal names the place.
//
//   JsonPlace variant(json, u"variant 3"_qs);
//   const QString name = variant.shortText(u"name"_qs);
//   variant.setPlace(u"variant “%1”"_qs.arg(name));         // later refusals name the row, not its number
//   const QJsonArray standards = variant.neededArray(u"standards"_qs);
//   STEELYARD_CHECK(variant.finish());                      // the first thing that was wrong
//
// Reading goes on after a fault with empty values; the first fault is kept. finish() also refuses keys nobody asked for, so
// it comes after the last key and before the values are used.
// Failures: ErrorCode::Invalid, `what` begins with the place and a colon. Masses are texts with their unit ("2.5 kg").
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

    // A value that should be an object; a fault when it is none.
    [[nodiscard]] static JsonPlace of(const QJsonValue& value, QString place);
    // A whole document. Fails at once when the text is no sound JSON.
    [[nodiscard]] static Result<JsonPlace> document(const QByteArray& json, QString place);

    [[nodiscard]] const QString& place() const { return m_place; }
    void setPlace(QString place) { m_place = std::move(place); }

    [[nodiscard]] QString text(const QString& name);          // needed, may be empty
    [[nodiscard]] QString shortText(const QString& name);     // needed: a name or cue as cleanName() leaves it
    [[nodiscard]] QString optionalText(const QString& name);  // empty when absent
    [[nodiscard]] int integer(const QString& name);
    [[nodiscard]] double real(const QString& name);
    [[nodiscard]] std::optional<int> optionalInteger(const QString& name);
    [[nodiscard]] bool flag(const QString& name);  // false when absent
    [[nodiscard]] Load load(const QString& name);
    [[nodiscard]] std::optional<Load> optionalLoad(const QString& name);
    [[nodiscard]] std::optional<Decimal> optionalDecimal(const QString& name);  // written as text
    [[nodiscard]] QJsonArray array(const QString& name);                        // empty when absent
    [[nodiscard]] QJsonArray neededArray(const QString& name);
    [[nodiscard]] QJsonObject object(const QString& name);  // empty when absent
    [[nodiscard]] QStringList names() const { return m_object.keys(); }
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
    // An Invalid error that begins with the place.
    [[nodiscard]] tl::unexpected<Error> refuse(const QString& what) const;

private:
    [[nodiscard]] static QString unknownChoice(const QString& word, const QString& choices);
    QJsonObject m_object;
    QString m_place;
    std::set<QString> m_read;
    std::optional<Error> m_fault;
};

}  // namespace steelyard
