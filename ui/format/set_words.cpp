#include "ui/format/set_words.h"

#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct SetText {
    Q_DECLARE_TR_FUNCTIONS(SetText)
};

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

QString setWords(const SetEntry& set, SetWords how)
{
    QStringList parts{SetText::tr("%1 × %2").arg(format::load(set.load)).arg(set.reps)};
    if (!set.off)
        parts += SetText::tr("not watched");
    else if (*set.off == 0 && how == SetWords::Whole)
        parts += SetText::tr("watched, all to the standard");
    else if (*set.off > 0)
        parts += SetText::tr("%n off standard", nullptr, *set.off);
    if (!set.marks.none()) parts.back() += QStringLiteral(" (%1)").arg(marksWords(set.marks));
    if (set.failed) parts += SetText::tr("one failed part-way");
    if (set.effort)
        parts += set.effort->scale == Effort::Scale::Rir ? SetText::tr("RIR %1").arg(effortWords(set.effort))
                                                         : effortWords(set.effort);
    if (set.loweringSeconds && how == SetWords::Whole)
        parts += SetText::tr("lowered in %1 s").arg(format::decimal(*set.loweringSeconds));
    if (set.leanDegrees) parts += SetText::tr("lean %1°").arg(format::decimal(*set.leanDegrees));
    if (set.kind != SetKind::Work) parts += format::setKindWord(set.kind);
    if (!set.note.isEmpty()) parts += set.note;
    return parts.join(QStringLiteral(", "));
}

}  // namespace steelyard
