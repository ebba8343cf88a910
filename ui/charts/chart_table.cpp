#include "ui/charts/chart_table.h"

namespace steelyard {

QString toTabSeparated(const ChartTable& table)
{
    const auto line = [](const QStringList& cells) {
        QStringList clean;
        for (QString cell : cells) clean += cell.replace(u'\t', u' ').replace(u'\n', u' ').replace(u'\r', u' ');
        return clean.join(u'\t') + u'\n';
    };
    QString text = line(table.header);
    for (const QStringList& row : table.rows) text += line(row);
    return text;
}

}  // namespace steelyard
