#include "ui/pages/import/name_match_model.h"

#include "ui/format/format.h"
#include "ui/shell/theme.h"

#include <QtGui/QBrush>
#include <QtGui/QGuiApplication>

#include <algorithm>

namespace steelyard {

QString NameMatchModel::fullName(const ExerciseName& name)
{
    return name.variant.isEmpty() ? name.exercise : name.exercise + QStringLiteral(", ") + name.variant;
}

void NameMatchModel::clear()
{
    m_byHand.clear();
    setNames({}, {}, {});
}

NameMatchModel::Match NameMatchModel::matchOf(const NameInFile& name, bool isAthlete,
                                              const LogbookMapping& mapping) const
{
    Match match{name, isAthlete, name.name, m_byHand.contains({isAthlete, name.name})};
    const auto exercise = mapping.exercises.find(name.name);
    const auto athlete = mapping.athletes.find(name.name.exercise);
    if (!isAthlete && exercise != mapping.exercises.end())
        match.becomes = exercise->second;
    else if (isAthlete && athlete != mapping.athletes.end())
        match.becomes = {athlete->second, {}};
    else if (name.clear && !match.byHand)
        match.becomes = name.suggestions.front().name;
    return match;
}

void NameMatchModel::setNames(const std::vector<NameInFile>& exercises, const std::vector<NameInFile>& athletes,
                              const LogbookMapping& mapping)
{
    std::vector<Match> matches;
    for (const NameInFile& name : athletes)
        if (!name.known) matches.push_back(matchOf(name, true, mapping));
    for (const NameInFile& name : exercises)
        if (!name.known) matches.push_back(matchOf(name, false, mapping));
    const auto sameName = [](const Match& a, const Match& b) {
        return a.isAthlete == b.isAthlete && a.name.name == b.name.name;
    };
    // The same names again: the coach is in the middle of them, and keeps the row.
    if (std::ranges::equal(matches, m_matches, sameName)) {
        m_matches = std::move(matches);
        if (!m_matches.empty()) Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
        return;
    }
    beginResetModel();
    m_matches = std::move(matches);
    endResetModel();
}

bool NameMatchModel::apply(LogbookMapping& mapping) const
{
    const LogbookMapping before = mapping;
    for (const Match& match : m_matches) {
        // A new name that nobody asked for is left to the next guess.
        const bool say = match.byHand || !match.isNew();
        if (match.isAthlete) {
            mapping.athletes.erase(match.name.name.exercise);
            if (say) mapping.athletes[match.name.name.exercise] = match.becomes.exercise;
        } else {
            mapping.exercises.erase(match.name.name);
            if (say) mapping.exercises[match.name.name] = match.becomes;
        }
    }
    return !(mapping == before);
}

int NameMatchModel::suggested() const
{
    return static_cast<int>(std::ranges::count_if(m_matches, [](const Match& m) { return !m.byHand && !m.isNew(); }));
}

int NameMatchModel::made() const
{
    return static_cast<int>(std::ranges::count_if(m_matches, &Match::isNew));
}

void NameMatchModel::takeSuggestion(int row, int which)
{
    const auto& suggestions = at(row).name.suggestions;
    if (which >= 0 && which < static_cast<int>(suggestions.size()))
        choose(row, ExerciseName(suggestions[static_cast<std::size_t>(which)].name));
}

void NameMatchModel::makeNew(int row)
{
    choose(row, ExerciseName(at(row).name.name));
}

void NameMatchModel::choose(int row, const ExerciseName& name)
{
    Match& match = m_matches[static_cast<std::size_t>(row)];
    match.becomes = name;
    match.byHand = true;
    m_byHand.insert({match.isAthlete, match.name.name});
    Q_EMIT dataChanged(index(row, 0), index(row, ColumnCount - 1));
    Q_EMIT matchChosen();
}

int NameMatchModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_matches.size());
}

int NameMatchModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(ColumnCount);
}

QString NameMatchModel::text(const Match& match, int column) const
{
    switch (column) {
    case InFile:
        return match.isAthlete ? tr("Lifter: %1").arg(match.name.name.exercise) : fullName(match.name.name);
    case RowCount:
        return QString::number(match.name.rows);
    case Becomes:
        if (match.isNew()) return match.isAthlete ? tr("a new lifter") : tr("a new exercise");
        return fullName(match.becomes);
    case How:
        if (match.byHand) return tr("chosen");
        return match.isNew() ? tr("nothing like it") : tr("suggested");
    default:
        return {};
    }
}

QVariant NameMatchModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid()) return {};
    const Match& match = at(index.row());
    switch (role) {
    case Qt::DisplayRole:
        if (index.column() == How && !match.byHand && match.isNew() && !match.name.suggestions.empty())
            return tr("unsure");
        return text(match, index.column());
    case Qt::ToolTipRole:
        return format::plainToolTip(text(match, index.column()));
    case Qt::TextAlignmentRole:
        return QVariant::fromValue(Qt::Alignment(Qt::AlignVCenter)
                                   | (index.column() == RowCount ? Qt::AlignRight : Qt::AlignLeft));
    case Qt::ForegroundRole:
        if (index.column() == How && !match.byHand) return QBrush(themeColours(QGuiApplication::palette()).warm);
        return {};
    default:
        return {};
    }
}

QVariant NameMatchModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation == Qt::Horizontal && role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::Alignment(Qt::AlignVCenter)
                                   | (section == RowCount ? Qt::AlignRight : Qt::AlignLeft));
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    switch (section) {
    case InFile:
        return tr("In the file");
    case RowCount:
        return tr("Rows");
    case Becomes:
        return tr("Comes in as");
    case How:
        return tr("How");
    default:
        return {};
    }
}

Qt::ItemFlags NameMatchModel::flags(const QModelIndex& index) const
{
    const Qt::ItemFlags flags = QAbstractTableModel::flags(index);
    return index.column() == Becomes ? flags | Qt::ItemIsEditable : flags;
}

}  // namespace steelyard
