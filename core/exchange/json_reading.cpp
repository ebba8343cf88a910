#include "core/exchange/json_reading.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct JsonReadingText {
    Q_DECLARE_TR_FUNCTIONS(JsonReadingText)
};

}  // namespace

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
    if (number != static_cast<int>(number)) fault(name, JsonReadingText::tr("a whole number is needed"));
    return static_cast<int>(number);
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
        m_fault = Error{ErrorCode::Invalid, JsonReadingText::tr("%1, “%2”: %3.").arg(m_place, name, what), {}};
}

Result<void> JsonPlace::finish()
{
    if (m_fault) return fail(*m_fault);
    for (auto it = m_object.begin(); it != m_object.end(); ++it)
        if (!m_read.contains(it.key()))
            return fail(ErrorCode::Invalid, JsonReadingText::tr("%1: “%2” is not known here.").arg(m_place, it.key()));
    return {};
}

}  // namespace steelyard
