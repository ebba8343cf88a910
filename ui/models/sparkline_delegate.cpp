#include "ui/models/sparkline_delegate.h"

#include "ui/models/lines_model.h"
#include "ui/models/spark_painter.h"
#include "ui/shell/theme.h"

#include <QtGui/QPainter>

namespace steelyard {
void SparklineDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    QStyledItemDelegate::paint(painter, option, index);
    const auto* all = index.data(LinesModel::PointsRole).value<const std::vector<ReadingPoint>*>();
    if (!all) return;
    const bool selected = option.state.testFlag(QStyle::State_Selected);
    const QPalette& palette = option.palette;
    paintSpark(*painter, QRectF(option.rect).adjusted(8, 6, -8, -6), {*all},
               {selected ? palette.color(QPalette::HighlightedText) : themeColours(palette).data[0],
                palette.color(selected ? QPalette::Highlight : QPalette::Base)});
}

QSize SparklineDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    Q_UNUSED(index)
    return {option.fontMetrics.averageCharWidth() * 18, option.fontMetrics.height() * 8 / 5};
}

}  // namespace steelyard
