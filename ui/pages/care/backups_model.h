// The backups of a book as a table, newest first: when and why each was made, how large it is, and whether it still is as it was.
//
//   model->setBackups(shelf.list());
//   model->setState(backup.number, BackupState::Sound);
#pragma once

#include "core/care/backup.h"

#include <QtCore/QAbstractTableModel>
#include <QtGui/QFontMetrics>

#include <map>

namespace steelyard {

// What its checksum says.
enum class BackupState { Unknown, Sound, Changed };

class BackupsModel final : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Made, Why, Size, State, ColumnCount };

    using QAbstractTableModel::QAbstractTableModel;
    // What is known of those that stay is kept.
    void setBackups(std::vector<Backup> newestFirst);
    void setState(qint64 number, BackupState state);
    [[nodiscard]] BackupState stateOf(qint64 number) const;
    [[nodiscard]] const std::vector<Backup>& backups() const { return m_backups; }
    [[nodiscard]] const Backup* at(int row) const;  // null: no such row
    [[nodiscard]] static int widestState(const QFontMetrics& metrics);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    [[nodiscard]] static QString stateWords(BackupState state);
    [[nodiscard]] QString textOf(const Backup& backup, int column) const;

    std::vector<Backup> m_backups;
    std::map<qint64, BackupState> m_states;
};

[[nodiscard]] QString backupReasonWords(BackupReason reason);  // "before an import"

}  // namespace steelyard
