#include "ui/format/repetition_words.h"

#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct RepetitionWordsText {
    Q_DECLARE_TR_FUNCTIONS(RepetitionWordsText)
};

QString quantityWord(RepetitionQuantity quantity)
{
    switch (quantity) {
    case RepetitionQuantity::Travel:
        return RepetitionWordsText::tr("Travel");
    case RepetitionQuantity::Lowering:
        return RepetitionWordsText::tr("Lowering");
    case RepetitionQuantity::Rhythm:
        return RepetitionWordsText::tr("Rhythm");
    }
    return {};
}

QString amountWords(double value, RepetitionQuantity quantity, int decimals)
{
    return quantity == RepetitionQuantity::Travel
               ? RepetitionWordsText::tr("%1 mm").arg(format::number(value, 0))
               : RepetitionWordsText::tr("%1 s").arg(format::number(value, decimals));
}

}  // namespace

QString repetitionWords(const Repetition& one)
{
    QStringList parts;
    if (const auto travel = one.travel()) parts += amountWords(*travel, RepetitionQuantity::Travel, 0);
    if (one.liftingSeconds)
        parts += RepetitionWordsText::tr("lifted in %1 s").arg(format::number(one.liftingSeconds->toDouble(), 1));
    if (one.loweringSeconds)
        parts += RepetitionWordsText::tr("lowered in %1 s").arg(format::number(one.loweringSeconds->toDouble(), 1));
    for (const auto& row : EnumText<Mark>::table)
        if (one.marks.has(row.value)) parts += format::markWord(row.value);
    if (one.partWay) parts += RepetitionWordsText::tr("failed part-way");
    if (parts.isEmpty()) parts += RepetitionWordsText::tr("to the standard");
    return QStringLiteral("%1: %2").arg(one.number).arg(parts.join(QStringLiteral(", ")));
}

QString consistencyWords(const RepetitionConsistency& found, RepetitionQuantity quantity)
{
    return RepetitionWordsText::tr(
               "%1: %2, from one to the next typically %3 apart (%4 variation; %5 pairs in %6 sets).")
        .arg(quantityWord(quantity), amountWords(found.median, quantity, 1),
             amountWords(found.typicalError, quantity, 2), format::percent(found.variation, 1),
             QString::number(found.pairs), QString::number(found.sets));
}

QString consistencyWords(std::span<const std::vector<Repetition>> like)
{
    QStringList lines;
    for (const auto quantity : {RepetitionQuantity::Travel, RepetitionQuantity::Lowering, RepetitionQuantity::Rhythm})
        if (const auto found = repetitionConsistency(like, quantity)) lines += consistencyWords(*found, quantity);
    return lines.join(u'\n');
}

QString fullTravelWords(const FullTravel& full, std::optional<int> leastPercent)
{
    QString words = RepetitionWordsText::tr("Full travel %1 mm, the median of %2 of the longest repetitions.")
                        .arg(format::number(full.mm, 0))
                        .arg(full.repetitions);
    if (!leastPercent) return words;
    return words + u' '
           + RepetitionWordsText::tr("The standard counts from %1 mm on (%2).")
                 .arg(format::number(full.mm * *leastPercent / 100, 0), format::percent(*leastPercent / 100.0));
}

}  // namespace steelyard
