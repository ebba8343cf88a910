#include "ui/models/two_line_delegate.h"

#include "ui/shell/theme.h"

#include <QtGui/QPainter>
#include <QtWidgets/QApplication>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kTwoLineMargin = 4;

}  // namespace

TwoLineDelegate::TwoLineDelegate(int detailRole, QObject* parent)
    : QStyledItemDelegate(parent), m_detailRole(detailRole)
{}

void TwoLineDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    QStyleOptionViewItem empty = option;
    initStyleOption(&empty, index);
    const QString text = std::exchange(empty.text, QString());
    const QString detail = index.data(m_detailRole).toString();
    empty.features.setFlag(QStyleOptionViewItem::HasDisplay, false);
    const QStyle* style = option.widget ? option.widget->style() : QApplication::style();
    style->drawControl(QStyle::CE_ItemViewItem, &empty, painter, option.widget);  // ground, selection and focus
    const bool selected = option.state.testFlag(QStyle::State_Selected);
    const QColor ink = option.palette.color(selected ? QPalette::HighlightedText : QPalette::Text);
    const int height = option.fontMetrics.height();
    const QRect box = option.rect.adjusted(kTwoLineMargin, 0, -kTwoLineMargin, 0);
    const int top = box.center().y() + 1 - (detail.isEmpty() ? height / 2 : height);
    const auto write = [&](const QString& line, const QColor& colour, int y) {
        painter->setPen(colour);
        painter->drawText(QRect(box.left(), y, box.width(), height),
                          static_cast<int>(empty.displayAlignment & Qt::AlignHorizontal_Mask) | Qt::AlignVCenter,
                          option.fontMetrics.elidedText(line, Qt::ElideRight, box.width()));
    };
    painter->save();
    painter->setFont(option.font);
    write(text, ink, top);
    if (!detail.isEmpty()) write(detail, selected ? ink : themeColours(option.palette).quiet, top + height);
    painter->restore();
}

QSize TwoLineDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const auto width = [&](const QString& text) { return option.fontMetrics.horizontalAdvance(text); };
    return {std::max(width(index.data().toString()), width(index.data(m_detailRole).toString())) + 3 * kTwoLineMargin,
            2 * option.fontMetrics.height() + kTwoLineMargin};
}

}  // namespace steelyard
