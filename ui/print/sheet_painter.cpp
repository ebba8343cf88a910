#include "ui/print/sheet_painter.h"

#include "ui/print/text_measure.h"

#include <QtGui/QFontMetricsF>
#include <QtGui/QPainter>

namespace steelyard {
namespace {

QRectF inTypeUnits(const QRectF& mm)
{
    return {mm.topLeft() * kTypeUnitsPerMm, mm.size() * kTypeUnitsPerMm};
}

QPen inkPen(double mm)
{
    QPen pen(Qt::black, mm * kTypeUnitsPerMm);
    pen.setCapStyle(Qt::FlatCap);
    pen.setJoinStyle(Qt::MiterJoin);
    return pen;
}

void paintBoxItem(QPainter& painter, const BoxItem& box)
{
    painter.setPen(inkPen(box.line));
    painter.setBrush(box.grey > 0
                         ? QBrush(QColor::fromRgbF(static_cast<float>(1 - box.grey), static_cast<float>(1 - box.grey),
                                                   static_cast<float>(1 - box.grey)))
                         : QBrush(Qt::white));
    painter.drawRect(inTypeUnits(box.rect));
}

void paintTextItem(QPainter& painter, const TextItem& item)
{
    const QFont font = sheetFont(item.points, item.bold);
    const QFontMetricsF metrics(font);
    const double advance = metrics.horizontalAdvance(item.text);
    QRectF cell = inTypeUnits(item.cell);
    painter.save();
    if (item.upright) {
        painter.translate(cell.center());
        painter.rotate(-90);
        cell = QRectF(-cell.height() / 2, -cell.width() / 2, cell.height(), cell.width());
    }
    double x = cell.left();
    if (item.side == TextSide::Right) x = cell.right() - advance;
    if (item.side == TextSide::Centre) x = cell.center().x() - advance / 2;
    // Centred by capitals, which is where the eye sees the middle of digits.
    const double y = cell.center().y() + metrics.capHeight() / 2;
    painter.setFont(font);
    painter.setPen(Qt::black);
    painter.drawText(QPointF(x, y), item.text);
    painter.restore();
}

}  // namespace

void paintSheetPage(QPainter& painter, const SheetPage& page, double deviceUnitsPerMm)
{
    painter.save();
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    const double scale = deviceUnitsPerMm / kTypeUnitsPerMm;
    painter.scale(scale, scale);
    for (const BoxItem& box : page.boxes) paintBoxItem(painter, box);
    for (const LineItem& line : page.lines) {
        painter.setPen(inkPen(line.width));
        painter.drawLine(QLineF(line.line.p1() * kTypeUnitsPerMm, line.line.p2() * kTypeUnitsPerMm));
    }
    for (const TextItem& text : page.texts) paintTextItem(painter, text);
    painter.restore();
}

}  // namespace steelyard
