#include "ui/charts/progress_parts.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct TableText {
    Q_DECLARE_TR_FUNCTIONS(TableText)
};

QStringList headerOf(const ProgressWords& words, const std::optional<RealChange>& change)
{
    QStringList header{TableText::tr("date"),
                       TableText::tr("record"),
                       TableText::tr("best set, load"),
                       TableText::tr("unit"),
                       TableText::tr("counted reps"),
                       TableText::tr("working sets"),
                       TableText::tr("reps in all"),
                       TableText::tr("off standard"),
                       TableText::tr("capacity, %1").arg(words.unit()),
                       TableText::tr("known then, %1").arg(words.unit()),
                       TableText::tr("90 %, low"),
                       TableText::tr("90 %, high")};
    if (change) header << TableText::tr("against %1").arg(words.date(change->from));
    return header;
}

// Of the band of chance around what was known at its first day.
QString sideOf(const RealChange& change, QDate date, std::optional<double> capacity)
{
    if (!capacity || date < change.from) return {};
    if (*capacity > change.high) return TableText::tr("more");
    if (*capacity < change.low) return TableText::tr("less");
    return TableText::tr("within chance");
}

}  // namespace

void addTable(const ProgressSource& source, const ProgressWords& words, ProgressSpec& spec)
{
    spec.table.header = headerOf(words, spec.realChange);
    for (const ChartPoint& at : spec.reps.points) {
        const ReadingPoint& point = source.reading.points[static_cast<std::size_t>(at.exposure)];
        const Decimal amount = point.topLoad.amount();
        const auto kilograms = [&](double kg) { return words.number(words.shown(kg), 1); };
        QStringList row{at.date.toString(Qt::ISODate),
                        pointKindWord(at.kind),
                        words.number(amount.toDouble(), amount.decimals()),
                        toText(point.topLoad.unit()),
                        words.number(point.countedReps, 0),
                        words.number(point.workSets, 0),
                        words.number(point.reps, 0),
                        point.watched ? words.number(point.offReps, 0) : QString(),
                        point.capacityKg ? kilograms(*point.capacityKg) : QString()};
        const auto known = std::ranges::find(source.reading.trend, at.date, &TrendPoint::date);
        if (known != source.reading.trend.end())
            row << kilograms(known->kg) << kilograms(known->low90Kg) << kilograms(known->high90Kg);
        else
            row << QString() << QString() << QString();
        if (spec.realChange) {
            std::optional<double> capacity;
            if (point.capacityKg) capacity = words.shown(*point.capacityKg);
            row << sideOf(*spec.realChange, at.date, capacity);
        }
        spec.table.rows.push_back(std::move(row));
    }
}

}  // namespace steelyard
