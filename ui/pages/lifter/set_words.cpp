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

QString marksWords(const MarkCounts& marks)
{
    QStringList words;
    for (const auto& row : EnumText<Mark>::table)
        if (const int count = marks.of(row.value))
            words += SetText::tr("%1 %2").arg(format::markWord(row.value)).arg(count);
    return words.join(QStringLiteral(", "));
}

QString effortWords(const std::optional<Effort>& effort)
{
    if (!effort) return {};
    const QString value = format::decimal(effort->value);
    return effort->scale == Effort::Scale::Rir ? value : SetText::tr("RPE %1").arg(value);
}

QString setWords(const SetEntry& set)
{
    QStringList parts{SetText::tr("%1 × %2").arg(format::load(set.load)).arg(set.reps)};
    if (!set.off)
        parts += SetText::tr("not watched");
    else if (*set.off > 0)
        parts += SetText::tr("%n off standard", nullptr, *set.off);
    if (!set.marks.none()) parts.back() += QStringLiteral(" (%1)").arg(marksWords(set.marks));
    if (set.failed) parts += SetText::tr("one failed part-way");
    if (set.effort)
        parts += set.effort->scale == Effort::Scale::Rir ? SetText::tr("RIR %1").arg(effortWords(set.effort))
                                                         : effortWords(set.effort);
    if (set.leanDegrees) parts += SetText::tr("lean %1°").arg(format::decimal(*set.leanDegrees));
    if (set.kind != SetKind::Work) parts += format::setKindWord(set.kind);
    if (!set.note.isEmpty()) parts += set.note;
    return parts.join(QStringLiteral(", "));
}

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
