// One JSON object read strictly: every key must be known, every value of the promised kind, and a refusal says where.
//
//   STEELYARD_TRY(StrictObject object, StrictObject::read(value, u"variant 3"_qs, {"name", "loading"}));
//   STEELYARD_TRY(const QString name, object.text("name"));
//   object.setPlace(u"variant “%1”"_qs.arg(name));            // later refusals name the row, not its number
//   STEELYARD_TRY(const Loading loading, object.choice<Loading>("loading"));
//
// Failures: ErrorCode::Invalid, `what` begins with the place and a colon. Masses are strings with their unit ("2.5 kg").
#pragma once

#include "core/base/enum_text.h"
#include "core/base/load.h"
#include "core/base/result.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonArray>
#include <QtCore/QJsonObject>

#include <initializer_list>

namespace steelyard {

class StrictObject {
    Q_DECLARE_TR_FUNCTIONS(StrictObject)

public:
    // Fails when the value is no object or holds a key that is not among `known`.
    [[nodiscard]] static Result<StrictObject> read(const QJsonValue& value, QString place,
                                                   std::initializer_list<const char*> known);
    // The same for a whole document.
    [[nodiscard]] static Result<StrictObject> readDocument(const QByteArray& json, QString place,
                                                           std::initializer_list<const char*> known);

    [[nodiscard]] const QString& place() const { return m_place; }
    void setPlace(QString place) { m_place = std::move(place); }

    [[nodiscard]] bool has(const char* name) const { return m_object.contains(QLatin1StringView(name)); }
    // A name or cue: not empty, already in the form cleanName() gives, at most kMaxNameLength long.
    [[nodiscard]] Result<QString> text(const char* name) const;
    [[nodiscard]] Result<double> number(const char* name) const;
    [[nodiscard]] Result<int> whole(const char* name) const;
    // Absent means false.
    [[nodiscard]] Result<bool> flag(const char* name) const;
    [[nodiscard]] Result<Load> load(const char* name) const;
    // Absent means unknown.
    [[nodiscard]] Result<std::optional<Load>> optionalLoad(const char* name) const;
    [[nodiscard]] Result<std::optional<int>> optionalWhole(const char* name) const;
    [[nodiscard]] Result<QJsonArray> array(const char* name) const;
    [[nodiscard]] Result<QJsonObject> object(const char* name) const;

    template <class Enum>
    [[nodiscard]] Result<Enum> choice(const char* name) const
    {
        STEELYARD_TRY(const QString written, text(name));
        if (const auto value = fromKey<Enum>(QStringView(written))) return *value;
        return refuse(
            tr("“%1” is no known value of “%2”; known are %3.").arg(written, QLatin1StringView(name), keyList<Enum>()));
    }

    // An Invalid error that begins with the place.
    [[nodiscard]] tl::unexpected<Error> refuse(const QString& what) const;

private:
    StrictObject(QJsonObject object, QString place) : m_object(std::move(object)), m_place(std::move(place)) {}
    [[nodiscard]] Result<QJsonValue> value(const char* name) const;

    QJsonObject m_object;
    QString m_place;
};

}  // namespace steelyard
