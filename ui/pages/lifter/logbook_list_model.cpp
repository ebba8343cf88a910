#include "ui/pages/lifter/logbook_list_model.h"

#include "ui/format/format.h"
#include "ui/pages/lifter/set_words.h"

#include <algorithm>

namespace steelyard {
namespace {

const SetEntry& bestSetOf(const Exposure& exposure)
{
    return std::ranges::max_element(
               exposure.sets, {},
               [](const LoggedSet& logged) { return std::pair(logged.set.load.mass(), logged.set.countedReps()); })
        ->set;
}

QString exercisesOf(const LogbookDay& day, const AthleteLog& log)
{
    QStringList names;
    for (const LogbookPart& part : day.parts)
        if (const QString& name = log.lines[part.line].exercise.value.name; !names.contains(name)) names += name;
    return names.join(QStringLiteral(" · "));
}

QString bestSetsOf(const LogbookDay& day)
{
    QStringList words;
    for (const LogbookPart& part : day.parts) {
        const SetEntry& best = bestSetOf(*part.exposure);
        words += LogbookListModel::tr("%1 × %2").arg(format::load(best.load)).arg(best.reps);
    }
    return words.join(QStringLiteral(" · "));
}

}  // namespace

QString dayHints(const LogbookDay& day)
{
    QStringList hints{LogbookListModel::tr("%n set(s)", nullptr, day.sets)};
    if (day.deload) hints += format::setKindWord(SetKind::Deload);
    if (day.discomfort) hints += LogbookListModel::tr("discomfort %1").arg(*day.discomfort);
    return hints.join(QStringLiteral(", "));
}

void LogbookListModel::setDays(const AthleteLog* log, const std::vector<LogbookDay>* days,
                               std::vector<std::size_t> shown)
{
    beginResetModel();
    m_log = log;
    m_days = days;
    m_shown = std::move(shown);
    endResetModel();
}

const LogbookDay* LogbookListModel::at(int row) const
{
    return row >= 0 && row < rowCount() ? &(*m_days)[m_shown[static_cast<std::size_t>(row)]] : nullptr;
}

QDate LogbookListModel::dateAt(int row) const
{
    const LogbookDay* day = at(row);
    return day ? day->date : QDate();
}

int LogbookListModel::rowOf(QDate date) const
{
    for (int row = 0; row < rowCount(); ++row)
        if (at(row)->date == date) return row;
    return -1;
}

int LogbookListModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_shown.size());
}

int LogbookListModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : ColumnCount;
}

QVariant LogbookListModel::data(const QModelIndex& index, int role) const
{
    const LogbookDay* day = at(index.row());
    if (!day) return {};
    const bool isDay = index.column() == Day;
    const QString first = isDay ? format::date(day->date) : exercisesOf(*day, *m_log);
    const QString second = isDay ? dayHints(*day) : bestSetsOf(*day);
    switch (role) {
    case Qt::DisplayRole:
        return first;
    case DetailRole:
        return second;
    case Qt::ToolTipRole:
        return format::plainToolTip(first + u'\n' + second);
    case Qt::AccessibleTextRole:
        return isDay ? QString(format::weekday(day->date) + u' ' + first + QStringLiteral(", ") + second) : first;
    default:
        return {};
    }
}

QVariant LogbookListModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::DisplayRole) return section == Day ? tr("Session") : tr("What was done");
    if (role == Qt::TextAlignmentRole) return QVariant::fromValue(Qt::Alignment(Qt::AlignLeft | Qt::AlignVCenter));
    return {};
}

}  // namespace steelyard
