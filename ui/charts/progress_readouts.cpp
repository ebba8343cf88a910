#include "ui/charts/progress_parts.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct ReadoutText {
    Q_DECLARE_TR_FUNCTIONS(ReadoutText)
};

QString bestSetWords(const ReadingPoint& point, const ProgressWords& words)
{
    const Load& load = point.topLoad;
    const Decimal amount = load.amount();
    return ReadoutText::tr("best set %1 %2 × %3")
        .arg(words.number(amount.toDouble(), amount.decimals()), toText(load.unit()))
        .arg(point.countedReps);
}

template <class Dated>
const Dated* onDay(const std::vector<Dated>& all, QDate day)
{
    const auto at = std::ranges::find(all, day, &Dated::date);
    return at == all.end() ? nullptr : &*at;
}

}  // namespace

void addReadouts(const ProgressSource& source, const ProgressWords& words, ProgressSpec& spec)
{
    for (const ChartPoint& at : spec.reps.points) {
        const ReadingPoint& point = source.reading.points[static_cast<std::size_t>(at.exposure)];
        QStringList lines{ReadoutText::tr("%1, %2").arg(bestSetWords(point, words), pointKindWord(at.kind))};
        if (point.capacityKg) lines << ReadoutText::tr("capacity %1").arg(words.mass(*point.capacityKg));
        if (const TrendPoint* known = onDay(source.reading.trend, at.date))
            lines << ReadoutText::tr("known then %1 (90 %: %2 to %3)")
                         .arg(words.mass(known->kg), words.number(words.shown(known->low90Kg), 1),
                              words.number(words.shown(known->high90Kg), 1));
        if (const SessionSurprise* came = onDay(source.reading.surprises, at.date))
            lines << ReadoutText::tr("first set: %1 × %2, expected %3")
                         .arg(words.load(came->load))
                         .arg(came->reps)
                         .arg(words.number(std::max(0.0, came->reps - came->extraReps), 1));
        spec.readouts.push_back(std::move(lines));
    }
}

}  // namespace steelyard
