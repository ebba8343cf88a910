// The first rows of a file that is to be imported, with the cells that can't be read marked by a sign, a colour and the
// reason as tool tip.
#pragma once

#include "ui/pages/import/logbook_importer.h"

#include <QtCore/QAbstractTableModel>

namespace steelyard {

class ImportPreviewModel final : public QAbstractTableModel {
    Q_OBJECT

public:
    using QAbstractTableModel::QAbstractTableModel;
    // The mapping says what a column is for us; that stands below its heading.
    void setPreview(ImportPreview preview, const LogbookMapping& mapping);
    [[nodiscard]] const ImportPreview& preview() const { return m_preview; }
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    [[nodiscard]] const ImportTrouble* troubleAt(int row, int column) const;
    ImportPreview m_preview;
    QStringList m_ours;  // of each column; empty: a note, or nothing
};

}  // namespace steelyard
