#include "ui/pages/lifter/line_list_model.h"

#include "ui/charts/chart_colours.h"
#include "ui/format/format.h"

#include <QtGui/QPainter>
#include <QtGui/QPainterPath>

#include <algorithm>

namespace steelyard {
namespace {

constexpr std::size_t kSparkSessions = 24;

QList<QPointF> sparkOf(const LineReading& reading)
{
    QList<QPointF> spark;
    for (const ReadingPoint& point : reading.points)
        if (point.capacityKg && !point.offStandard && !point.deload)
            spark.append({static_cast<double>(point.date.toJulianDay()), *point.capacityKg});
    const auto most = static_cast<qsizetype>(kSparkSessions);
    return spark.size() > most ? spark.last(most) : spark;
}

void paintSpark(QPainter& painter, const QRectF& box, const QList<QPointF>& spark, const QColor& line,
                const QColor& end)
{
    if (spark.size() < 2) return;
    const auto [low, high] = std::ranges::minmax(spark, {}, &QPointF::y);
    const double height = std::max(high.y() - low.y(), 1e-6);
    const double width = std::max(spark.back().x() - spark.front().x(), 1e-6);
    QPolygonF polygon;
    for (const QPointF& point : spark)
        polygon << QPointF(box.left() + (point.x() - spark.front().x()) / width * box.width(),
                           box.bottom() - (point.y() - low.y()) / height * box.height());
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(line, 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(polygon);
    painter.setPen(Qt::NoPen);
    painter.setBrush(end);
    painter.drawEllipse(polygon.back(), 2.2, 2.2);
}

}  // namespace

QString lineDetail(const LineRecord& line)
{
    QStringList parts;
    for (const QString& name : {line.grip.value.name, line.standard.value.name})
        if (name != asUsualName()) parts += name;
    return parts.join(QStringLiteral(" · "));
}

QString lineTitle(const LineRecord& line)
{
    const QString variant = line.variant.value.name;
    return variant == asUsualName() ? line.exercise.value.name
                                    : line.exercise.value.name + QStringLiteral(", ") + variant;
}

void LineListModel::setReading(const LifterReading* reading)
{
    beginResetModel();
    m_reading = reading;
    m_rows.clear();
    for (std::size_t i = 0; reading && i < reading->log.lines.size(); ++i) {
        const LineRecord& line = reading->log.lines[i];
        if (line.exposures.empty()) continue;
        if (m_rows.empty()
            || reading->log.lines[static_cast<std::size_t>(m_rows.back().line)].exercise.id != line.exercise.id)
            m_rows.push_back({line.exercise.value.name, static_cast<int>(i), {}});
        m_rows.push_back({{}, static_cast<int>(i), sparkOf(reading->readings[i])});
    }
    endResetModel();
}

int LineListModel::rowOf(Id<LiftLine> line) const
{
    for (int row = 0; row < rowCount(); ++row) {
        const int at = lineAt(index(row));
        if (at >= 0 && m_reading->log.lines[static_cast<std::size_t>(at)].id == line) return row;
    }
    return -1;
}

int LineListModel::lineAt(const QModelIndex& index) const
{
    if (!index.isValid() || index.row() >= rowCount()) return -1;
    const ListRow& row = m_rows[static_cast<std::size_t>(index.row())];
    return row.heading.isEmpty() ? row.line : -1;
}

int LineListModel::step(int row, int by) const
{
    for (int next = row + by; next >= 0 && next < rowCount(); next += by)
        if (lineAt(index(next)) >= 0) return next;
    return row;
}

int LineListModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

Qt::ItemFlags LineListModel::flags(const QModelIndex& index) const
{
    return lineAt(index) < 0 ? Qt::ItemFlags(Qt::NoItemFlags) : Qt::ItemIsEnabled | Qt::ItemIsSelectable;
}

QVariant LineListModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid() || index.row() >= rowCount()) return {};
    const ListRow& row = m_rows[static_cast<std::size_t>(index.row())];
    if (role == IsHeading) return !row.heading.isEmpty();
    if (!row.heading.isEmpty()) return role == Qt::DisplayRole ? QVariant(row.heading) : QVariant();
    const LineRecord& line = m_reading->log.lines[static_cast<std::size_t>(row.line)];
    const LineReading& reading = m_reading->readings[static_cast<std::size_t>(row.line)];
    const QString verdict = format::verdictShape(reading.verdict) + u' ' + format::verdictWord(reading.verdict);
    switch (role) {
    case Qt::DisplayRole:
        return line.variant.value.name;
    case Detail:
        return lineDetail(line);
    case VerdictText:
        return verdict;
    case VerdictValue:
        return static_cast<int>(reading.verdict);
    case Spark:
        return QVariant::fromValue(row.spark);
    case LineIndex:
        return row.line;
    case Qt::AccessibleTextRole:
        return lineTitle(line) + QStringLiteral(", ") + lineDetail(line) + QStringLiteral(": ") + verdict;
    default:
        return {};
    }
}

QSize LineDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const int line = option.fontMetrics.height();
    if (index.data(LineListModel::IsHeading).toBool()) return {120, line + 14};
    const bool detail = !index.data(LineListModel::Detail).toString().isEmpty();
    return {120, line * (detail ? 3 : 2) + 10};
}

void LineDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    painter->save();
    const ChartColours colours = chartColours(option.palette);
    const QRect box = option.rect.adjusted(10, 4, -8, -4);
    const int line = option.fontMetrics.height();
    if (index.data(LineListModel::IsHeading).toBool()) {
        QFont bold = option.font;
        bold.setBold(true);
        painter->setFont(bold);
        painter->setPen(colours.ink);
        painter->drawText(box.adjusted(-2, 0, 0, 0), Qt::AlignLeft | Qt::AlignBottom,
                          QFontMetrics(bold).elidedText(index.data().toString(), Qt::ElideRight, box.width()));
        painter->restore();
        return;
    }
    const bool selected = option.state & QStyle::State_Selected;
    if (selected) painter->fillRect(option.rect, option.palette.highlight());
    const QColor ink = selected ? option.palette.highlightedText().color() : colours.ink;
    const QColor quiet = selected ? ink : colours.quietInk;
    int y = box.top();
    const auto write = [&](const QString& text, const QColor& colour, int width) {
        painter->setPen(colour);
        painter->drawText(QRect(box.left(), y, width, line), Qt::AlignLeft | Qt::AlignVCenter,
                          option.fontMetrics.elidedText(text, Qt::ElideRight, width));
        y += line;
    };
    write(index.data().toString(), ink, box.width());
    if (const QString detail = index.data(LineListModel::Detail).toString(); !detail.isEmpty())
        write(detail, quiet, box.width());
    const QRectF sparkBox(box.right() - 62, y + 3, 58, line - 5);
    write(index.data(LineListModel::VerdictText).toString(), ink, box.width() - 70);
    paintSpark(*painter, sparkBox, index.data(LineListModel::Spark).value<QList<QPointF>>(), quiet,
               selected ? ink : colours.data);
    painter->restore();
}

}  // namespace steelyard
