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
    if (box.band) {
        painter.setBrush(inkOf(*box.band));
        painter.drawRect(inTypeUnits(box.rect));
        return;
    }
    painter.setBrush(box.grey > 0
                         ? QBrush(QColor::fromRgbF(static_cast<float>(1 - box.grey), static_cast<float>(1 - box.grey),
                                                   static_cast<float>(1 - box.grey)))
                         : QBrush(Qt::white));
    painter.drawRect(inTypeUnits(box.rect));
}

// Neighbours in a row are one rectangle, and edges are not smoothed: a scanner wants black and white.
void paintCodeItem(QPainter& painter, const CodeItem& item)
{
    const double module = item.rect.width() / item.code.size * kTypeUnitsPerMm;
    const QPointF corner = item.rect.topLeft() * kTypeUnitsPerMm;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, false);
    for (int row = 0; row < item.code.size; ++row)
        for (int from = 0; from < item.code.size;) {
            int to = from;
            while (to < item.code.size && item.code.isDark(row, to)) ++to;
            if (to > from)
                painter.fillRect(
                    QRectF(corner.x() + from * module, corner.y() + row * module, (to - from) * module, module),
                    Qt::black);
            from = to + 1;
        }
    painter.restore();
}

void paintTextItem(QPainter& painter, const TextItem& item)
{
    const QFont font = sheetFont(item.points, item.bold);
    const double advance = textWidthMm(item.text, item.points, item.bold) * kTypeUnitsPerMm;
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
    const double y = cell.center().y() + QFontMetricsF(font).capHeight() / 2;
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
    for (const CodeItem& code : page.codes) paintCodeItem(painter, code);
    for (const TextItem& text : page.texts) paintTextItem(painter, text);
    painter.restore();
}

}  // namespace steelyard
