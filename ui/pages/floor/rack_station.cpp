#include "ui/pages/floor/rack_station.h"

#include <algorithm>

namespace steelyard {

std::optional<Load> RackStation::load() const
{
    if (loads[at]) return loads[at];
    const auto& target = exercises[at].target.load;
    if (!target) return std::nullopt;
    return target->load;
}

std::optional<SetEntry> RackStation::set() const
{
    if (isEmpty() || counter.repetitions().empty() || !load()) return std::nullopt;
    SetEntry set;
    set.load = *load();
    set.kind = kind;
    return withRepetitions(std::move(set), counter.repetitions());
}

bool RackStation::step(int by)
{
    if (isEmpty() || !counter.empty()) return false;
    const auto last = static_cast<int>(exercises.size()) - 1;
    const auto next = static_cast<std::size_t>(std::clamp(static_cast<int>(at) + by, 0, last));
    if (next == at) return false;
    at = next;
    typed.clear();
    return true;
}

bool RackStation::takeTyped()
{
    QString text = QString(typed).replace(u',', u'.');
    if (text.endsWith(u'.')) text.chop(1);
    const auto amount = Load::parse(QStringView(text), exercise().unit);
    if (!amount) return false;
    loads[at] = amount;
    typed.clear();
    return true;
}

QString RackStation::clockWords(RepCounter::Time passed)
{
    const auto seconds = std::max<std::int64_t>(passed.count(), 0) / 1000;
    return QStringLiteral("%1:%2").arg(seconds / 60).arg(seconds % 60, 2, 10, QLatin1Char('0'));
}

RackStation stationOf(const DaySheet& day)
{
    RackStation station;
    station.athlete = day.athlete;
    station.lifter = day.sheet.athlete;
    if (day.sheet.week == WeekKind::Deload) station.kind = SetKind::Deload;
    for (const SheetExercise& exercise : day.sheet.exercises)
        if (exercise.lift) station.exercises.push_back(exercise);
    station.loads.resize(station.exercises.size());
    return station;
}

}  // namespace steelyard
