#include "ui/pages/import/import_preview_model.h"

#include "ui/format/format.h"
#include "ui/shell/theme.h"

#include <QtGui/QBrush>
#include <QtGui/QGuiApplication>

namespace steelyard {

void ImportPreviewModel::setPreview(ImportPreview preview, const LogbookMapping& mapping)
{
    beginResetModel();
    m_preview = std::move(preview);
    m_ours = QStringList(m_preview.header.size());
    const auto name = [this](const ColumnName& column, const QString& ours) {
        if (const int* number = std::get_if<int>(&column); number && *number >= 1 && *number <= m_ours.size())
            m_ours[*number - 1] = ours;
    };
    for (const auto& [ours, theirs] : mapping.columns) name(theirs, ours);
    for (std::size_t set = 0; set < mapping.sets.size(); ++set)
        for (const auto& [ours, theirs] : mapping.sets[set])
            name(theirs, tr("set %1: %2").arg(QString::number(set + 1), ours));
    endResetModel();
}

int ImportPreviewModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_preview.rows.size());
}

int ImportPreviewModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_preview.header.size());
}

const ImportTrouble* ImportPreviewModel::troubleAt(int row, int column) const
{
    // A trouble of the row as a whole is shown at its first cell.
    for (const ImportTrouble& trouble : m_preview.troubles)
        if (trouble.row == row && std::max(trouble.source, 0) == column) return &trouble;
    return nullptr;
}

QVariant ImportPreviewModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid()) return {};
    const ImportTrouble* trouble = troubleAt(index.row(), index.column());
    const QString text = m_preview.rows[static_cast<std::size_t>(index.row())].value(index.column());
    switch (role) {
    case Qt::DisplayRole:
        return trouble ? QStringLiteral("⚠ ") + text : text;
    case Qt::ToolTipRole:
        if (!trouble) return {};
        return format::plainToolTip(trouble->what.isEmpty() ? trouble->mend
                                                            : trouble->what + QStringLiteral(": ") + trouble->mend);
    case Qt::ForegroundRole:
        return trouble ? QVariant(QBrush(themeColours(QGuiApplication::palette()).alarm)) : QVariant();
    default:
        return {};
    }
}

QVariant ImportPreviewModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (role == Qt::TextAlignmentRole && orientation == Qt::Horizontal)
        return QVariant::fromValue(Qt::Alignment(Qt::AlignVCenter | Qt::AlignLeft));
    if (role != Qt::DisplayRole) return {};
    if (orientation == Qt::Horizontal)
        return m_preview.header.value(section) + u'\n'
               + (m_ours.value(section).isEmpty() ? format::absent() : m_ours.value(section));
    // As an editor counts the lines of the file.
    return static_cast<std::size_t>(section) < m_preview.lines.size()
               ? QVariant(m_preview.lines[static_cast<std::size_t>(section)])
               : QVariant();
}

}  // namespace steelyard
