#include "ui/pages/care/backups_model.h"

#include "ui/format/format.h"
#include "ui/shell/theme.h"

#include <QtWidgets/QApplication>

#include <algorithm>

namespace steelyard {

QString backupReasonWords(BackupReason reason)
{
    switch (reason) {
    case BackupReason::Daily:
        return BackupsModel::tr("first of the day");
    case BackupReason::Asked:
        return BackupsModel::tr("asked for");
    case BackupReason::Update:
        return BackupsModel::tr("before the book got a newer form");
    case BackupReason::Import:
        return BackupsModel::tr("before an import");
    case BackupReason::Restore:
        return BackupsModel::tr("before a backup was restored");
    case BackupReason::Bulk:
        return BackupsModel::tr("before many sets were changed");
    case BackupReason::Erase:
        return BackupsModel::tr("before somebody was erased");
    }
    return {};
}

void BackupsModel::setBackups(std::vector<Backup> newestFirst)
{
    beginResetModel();
    m_backups = std::move(newestFirst);
    std::erase_if(m_states, [this](const auto& known) {
        return std::ranges::find(m_backups, known.first, &Backup::number) == m_backups.end();
    });
    endResetModel();
}

void BackupsModel::setState(qint64 number, BackupState state)
{
    m_states[number] = state;
    const auto at = std::ranges::find(m_backups, number, &Backup::number);
    if (at == m_backups.end()) return;
    const QModelIndex cell = index(static_cast<int>(at - m_backups.begin()), State);
    Q_EMIT dataChanged(cell, cell);
}

BackupState BackupsModel::stateOf(qint64 number) const
{
    const auto known = m_states.find(number);
    return known == m_states.end() ? BackupState::Unknown : known->second;
}

const Backup* BackupsModel::at(int row) const
{
    return row >= 0 && row < rowCount() ? &m_backups[static_cast<std::size_t>(row)] : nullptr;
}

int BackupsModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_backups.size());
}

int BackupsModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : ColumnCount;
}

QString BackupsModel::stateWords(BackupState state)
{
    switch (state) {
    case BackupState::Unknown:
        return tr("being checked");
    case BackupState::Sound:
        return tr("as it was made");
    case BackupState::Changed:
        return tr("changed: not used");
    }
    return {};
}

int BackupsModel::widestState(const QFontMetrics& metrics)
{
    int widest = 0;
    for (const BackupState state : {BackupState::Unknown, BackupState::Sound, BackupState::Changed})
        widest = std::max(widest, metrics.horizontalAdvance(stateWords(state)));
    return widest;
}

QString BackupsModel::textOf(const Backup& backup, int column) const
{
    switch (column) {
    case Made:
        return format::moment(backup.madeAt);
    case Why:
        return backupReasonWords(backup.reason);
    case Size:
        return format::fileSize(backup.bytes);
    default:
        return stateWords(stateOf(backup.number));
    }
}

QVariant BackupsModel::data(const QModelIndex& index, int role) const
{
    const Backup* backup = at(index.row());
    if (!backup) return {};
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::Alignment(Qt::AlignVCenter)
                                   | (index.column() >= Size ? Qt::AlignRight : Qt::AlignLeft));
    if (role == Qt::DisplayRole) return textOf(*backup, index.column());
    if (role == Qt::ToolTipRole) return format::plainToolTip(backup->path);
    if (role == Qt::ForegroundRole && index.column() == State && stateOf(backup->number) == BackupState::Changed)
        return themeColours(QApplication::palette()).alarm;
    return {};
}

QVariant BackupsModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::Alignment(Qt::AlignVCenter)
                                   | (section >= Size ? Qt::AlignRight : Qt::AlignLeft));
    if (role != Qt::DisplayRole) return {};
    const QStringList titles{tr("Made"), tr("Why"), tr("Size"), tr("State")};
    return titles.value(section);
}

}  // namespace steelyard
