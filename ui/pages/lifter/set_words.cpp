#include "ui/pages/lifter/set_words.h"

#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct SetText {
    Q_DECLARE_TR_FUNCTIONS(SetText)
};

QString decimalCell(const QString& text)
{
    return text.trimmed().replace(u',', u'.').replace(QChar(0x2212), u'-');
}

}  // namespace

QString sessionWords(const Exposure& exposure)
{
    QStringList lines{format::weekday(exposure.date) + u' ' + format::date(exposure.date)};
    for (const LoggedSet& logged : exposure.sets) lines += setWords(logged.set);
    for (std::size_t joint = 0; joint < kJointCount; ++joint)
        if (const auto& rating = exposure.rating.discomfort[joint]; rating && *rating > 0)
            lines +=
                SetText::tr("%1: discomfort %2 of 10").arg(format::jointWord(static_cast<Joint>(joint))).arg(*rating);
    return lines.join(QStringLiteral("\n"));
}

std::optional<Load> parseLoadCell(QString text, MassUnit unit)
{
    text = decimalCell(text);
    for (const auto& row : EnumText<MassUnit>::table)
        if (const QString word = toText(row.value); text.endsWith(word, Qt::CaseInsensitive)) {
            unit = row.value;
            text.chop(word.size());
        }
    return Load::parse(QStringView(text).trimmed(), unit);
}

std::optional<Effort> parseEffortCell(QString text)
{
    text = decimalCell(text);
    auto scale = Effort::Scale::Rir;
    if (text.startsWith(QStringLiteral("rpe"), Qt::CaseInsensitive)) {
        scale = Effort::Scale::Rpe;
        text = text.mid(3).trimmed();
    }
    const auto value = Decimal::parse(QStringView(text));
    if (!value) return std::nullopt;
    return Effort{scale, *value};
}

std::optional<Decimal> parseDecimalCell(const QString& text)
{
    return Decimal::parse(QStringView(decimalCell(text)));
}

}  // namespace steelyard
