#include "core/exchange/json_reading.h"

#include "core/base/text.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonDocument>

#include <cmath>

namespace steelyard {
namespace {

struct JsonReadingText {
    Q_DECLARE_TR_FUNCTIONS(JsonReadingText)
};

constexpr double kMostWhole = 1e9;  // fits an int

}  // namespace

JsonPlace JsonPlace::of(const QJsonValue& value, QString place)
{
    JsonPlace object(value.toObject(), std::move(place));
    if (!value.isObject())
        object.m_fault = object.refuse(JsonReadingText::tr("An object in braces is needed here.")).value();
    return object;
}

Result<JsonPlace> JsonPlace::document(const QByteArray& json, QString place)
{
    QJsonParseError problem;
    const QJsonDocument document = QJsonDocument::fromJson(json, &problem);
    if (problem.error != QJsonParseError::NoError)
        return fail(ErrorCode::Invalid,
                    JsonReadingText::tr("%1: The text is no sound JSON at byte %2.")
                        .arg(place, QString::number(problem.offset)),
                    problem.errorString());
    return of(document.isObject() ? QJsonValue(document.object()) : QJsonValue(), std::move(place));
}

QString JsonPlace::shortText(const QString& name)
{
    QString written = text(name);
    if (written.isEmpty() || written != cleanName(written) || written.size() > kMaxNameLength)
        fault(name, JsonReadingText::tr("a short text without spaces at its ends is needed"));
    return written;
}

QString JsonPlace::text(const QString& name)
{
    m_read.insert(name);
    if (!m_object[name].isString()) fault(name, JsonReadingText::tr("a text is needed"));
    return m_object[name].toString();
}

QString JsonPlace::optionalText(const QString& name)
{
    return has(name) ? text(name) : QString();
}

int JsonPlace::integer(const QString& name)
{
    m_read.insert(name);
    const double number = m_object[name].toDouble(0.5);
    if (number != std::floor(number) || std::abs(number) > kMostWhole) {
        fault(name, JsonReadingText::tr("a whole number is needed"));
        return 0;
    }
    return static_cast<int>(number);
}

double JsonPlace::real(const QString& name)
{
    m_read.insert(name);
    if (!m_object[name].isDouble()) fault(name, JsonReadingText::tr("a number is needed"));
    return m_object[name].toDouble();
}

std::optional<int> JsonPlace::optionalInteger(const QString& name)
{
    return has(name) ? std::optional(integer(name)) : std::nullopt;
}

bool JsonPlace::flag(const QString& name)
{
    m_read.insert(name);
    if (has(name) && !m_object[name].isBool()) fault(name, JsonReadingText::tr("true or false is needed"));
    return m_object[name].toBool();
}

Load JsonPlace::load(const QString& name)
{
    const QString word = text(name);
    const auto load = Load::parseWithUnit(word);
    if (!load) fault(name, JsonReadingText::tr("“%1” is no load like “42.5 kg”").arg(word));
    return load.value_or(Load{});
}

std::optional<Load> JsonPlace::optionalLoad(const QString& name)
{
    return has(name) ? std::optional(load(name)) : std::nullopt;
}

std::optional<Decimal> JsonPlace::optionalDecimal(const QString& name)
{
    if (!has(name)) return std::nullopt;
    const QString word = text(name);
    const auto number = Decimal::parse(QStringView(word));
    if (!number) fault(name, JsonReadingText::tr("“%1” is no number like “2.5”").arg(word));
    return number;
}

QJsonArray JsonPlace::array(const QString& name)
{
    m_read.insert(name);
    if (has(name) && !m_object[name].isArray()) fault(name, JsonReadingText::tr("a list is needed"));
    return m_object[name].toArray();
}

QJsonArray JsonPlace::neededArray(const QString& name)
{
    if (!has(name)) fault(name, JsonReadingText::tr("a list is needed"));
    return array(name);
}

QJsonObject JsonPlace::object(const QString& name)
{
    m_read.insert(name);
    if (has(name) && !m_object[name].isObject()) fault(name, JsonReadingText::tr("an object is needed"));
    return m_object[name].toObject();
}

QString JsonPlace::unknownChoice(const QString& word, const QString& choices)
{
    return JsonReadingText::tr("“%1” is none of %2").arg(word, choices);
}

void JsonPlace::fault(const QString& name, const QString& what)
{
    if (!m_fault)
        m_fault = Error{ErrorCode::Invalid, JsonReadingText::tr("%1: “%2” – %3.").arg(m_place, name, what), {}};
}

Result<void> JsonPlace::finish()
{
    if (m_fault) return fail(*m_fault);
    for (auto it = m_object.begin(); it != m_object.end(); ++it)
        if (!m_read.contains(it.key()))
            return refuse(JsonReadingText::tr("“%1” is not known here; remove it or mend its spelling.").arg(it.key()));
    return {};
}

tl::unexpected<Error> JsonPlace::refuse(const QString& what) const
{
    return fail(ErrorCode::Invalid,
                JsonReadingText::tr("%1: %2", "place in a data file, what is wrong").arg(m_place, what));
}

}  // namespace steelyard
