#include "ui/pages/import/column_table.h"

#include "ui/format/format.h"

#include <QtWidgets/QComboBox>
#include <QtWidgets/QHeaderView>

#include <algorithm>

namespace steelyard {
namespace {

const QStringList& neededColumns()
{
    static const QStringList needed{QStringLiteral("date"), QStringLiteral("athlete"), QStringLiteral("exercise"),
                                    QStringLiteral("reps")};
    return needed;
}

bool isInSets(const LogbookMapping& mapping, const QString& column)
{
    return std::ranges::any_of(mapping.sets, [&](const ColumnNames& set) {
        return set.contains(column) || (column == QStringLiteral("reps") && set.contains(kNotationColumn));
    });
}

}  // namespace

ColumnTable::ColumnTable(QWidget* parent) : QTableWidget(0, 3, parent)
{
    setHorizontalHeaderLabels({tr("Logbook"), tr("Column of the file"), tr("Known by")});
    setAccessibleName(tr("Which column of the file is which"));
    horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    horizontalHeader()->setSectionResizeMode(1, QHeaderView::Stretch);
    horizontalHeader()->setHighlightSections(false);
    verticalHeader()->hide();
    verticalHeader()->setDefaultSectionSize(fontMetrics().height() * 8 / 5);
    setShowGrid(false);
    setFrameShape(QFrame::NoFrame);
    setSelectionMode(QAbstractItemView::NoSelection);
    setTabKeyNavigation(false);
}

void ColumnTable::fill(const LogbookMapping& mapping, const QStringList& header,
                       const std::map<QString, ColumnHint>& hints)
{
    m_filling = true;
    m_ours = neededColumns();
    QStringList rest;
    for (const QString& column : logbookColumns() + QStringList(QString(kCountColumn)))
        if (!m_ours.contains(column)) rest.append(column);
    // Those that the file has, before those that it may have.
    std::ranges::stable_partition(rest, [&](const QString& column) { return mapping.columns.contains(column); });
    m_ours += rest;
    setRowCount(0);
    for (const QString& column : m_ours) addRow(column, mapping, header, hints);
    resizeColumnToContents(0);
    resizeColumnToContents(2);
    m_filling = false;
}

void ColumnTable::addRow(const QString& column, const LogbookMapping& mapping, const QStringList& header,
                         const std::map<QString, ColumnHint>& hints)
{
    const int row = rowCount();
    insertRow(row);
    const auto put = [&](int place, const QString& text) {
        auto* item = new QTableWidgetItem(text);
        item->setFlags(Qt::ItemIsEnabled);
        setItem(row, place, item);
    };
    put(0, neededColumns().contains(column) ? tr("%1 (needed)").arg(column) : column);
    auto* box = new QComboBox(this);
    box->setAccessibleName(tr("Column of the file for %1").arg(column));
    box->addItem(isInSets(mapping, column) ? tr("with each set") : format::absent());
    box->addItems(header);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    const auto chosen = mapping.columns.find(column);
    box->setCurrentIndex(chosen == mapping.columns.end() ? 0 : std::get<int>(chosen->second));
    setCellWidget(row, 1, box);
    connect(box, &QComboBox::currentIndexChanged, this, [this] {
        if (!m_filling) Q_EMIT changed();
    });
    const auto hint = hints.find(column);
    if (chosen == mapping.columns.end() || hint == hints.end()) return put(2, {});
    put(2, hint->second == ColumnHint::Heading    ? tr("heading")
           : hint->second == ColumnHint::Likeness ? tr("likeness")
                                                  : tr("content"));
}

void ColumnTable::apply(LogbookMapping& mapping) const
{
    mapping.columns.clear();
    for (int row = 0; row < rowCount(); ++row)
        if (const auto* box = qobject_cast<QComboBox*>(cellWidget(row, 1)); box && box->currentIndex() > 0)
            mapping.columns[m_ours[row]] = box->currentIndex();
}

QStringList ColumnTable::missing(const LogbookMapping& mapping)
{
    QStringList names;
    for (const QString& column : neededColumns())
        if (!mapping.columns.contains(column) && !mapping.fixed.contains(column) && !isInSets(mapping, column))
            names.append(column);
    return names;
}

}  // namespace steelyard
