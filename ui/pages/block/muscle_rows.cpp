#include "ui/pages/block/muscle_rows.h"

#include "ui/format/format.h"
#include "ui/pages/block/block_words.h"
#include "ui/shell/theme.h"

#include <QtGui/QPainter>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kRowPad = 3;
constexpr double kLeastScale = 12;  // sets; so that a light week looks light

bool isUnder(const MuscleTotal& row, WeekKind kind)
{
    return kind == WeekKind::Normal && row.low && row.sets < *row.low;
}

bool isOver(const MuscleTotal& row)
{
    return row.high && row.sets > *row.high;
}

}  // namespace

MuscleRows::MuscleRows(QWidget* parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Sets of the week by muscle"));
}

QString MuscleRows::name(const MuscleTotal& row) const
{
    const auto* muscle = m_shown->library().find(row.muscle);
    return muscle ? muscle->value.name : QString();
}

QString MuscleRows::words(const MuscleTotal& row) const
{
    const QString sets = format::shortNumber(row.sets);
    if (!row.low || !row.high) return tr("%1: %2 sets").arg(name(row), sets);
    return tr("%1: %2 sets, %3 to %4 are wanted")
        .arg(name(row), sets, QString::number(*row.low), QString::number(*row.high));
}

void MuscleRows::show(BlockShownPtr shown)
{
    m_shown = std::move(shown);
    m_rows.clear();
    if (m_shown && m_shown->hasWeek()) m_rows = m_shown->totals.weeks[m_shown->weekIndex].muscles;
    QStringList all;
    for (const MuscleTotal& row : m_rows) all << words(row);
    setAccessibleDescription(all.join(QStringLiteral("; ")));
    setToolTip(format::plainToolTip(all.join(u'\n')));
    updateGeometry();
    update();
}

QSize MuscleRows::sizeHint() const
{
    return {200, std::max(1, static_cast<int>(m_rows.size())) * (fontMetrics().height() + kRowPad)};
}

void MuscleRows::paintRow(QPainter& painter, const MuscleTotal& row, QRect line, double most) const
{
    const ThemeColours& colours = themeColours(palette());
    const bool under = isUnder(row, m_shown->week().kind);
    const bool out = under || isOver(row);
    const int nameWidth = line.width() * 2 / 5;
    const int numberWidth = fontMetrics().horizontalAdvance(QStringLiteral("88.88 ▲"));
    painter.setPen(colours.text);
    painter.drawText(QRect(line.left(), line.top(), nameWidth, line.height()), Qt::AlignLeft | Qt::AlignVCenter,
                     fontMetrics().elidedText(name(row), Qt::ElideRight, nameWidth - 4));
    painter.setPen(out ? colours.warm : colours.text);
    // Under the band points down, over it up.
    const QString mark = under ? QStringLiteral(" ▼") : out ? QStringLiteral(" ▲") : QString();
    painter.drawText(line, Qt::AlignRight | Qt::AlignVCenter, format::shortNumber(row.sets) + mark);
    const QRectF scale(line.left() + nameWidth, line.top(), line.width() - nameWidth - numberWidth, line.height());
    const auto x = [&](double sets) { return scale.left() + scale.width() * std::min(1.0, sets / most); };
    painter.setPen(colours.hairline);
    painter.drawLine(QPointF(scale.left(), scale.center().y()), QPointF(scale.right(), scale.center().y()));
    if (row.low && row.high) {
        painter.setPen(colours.quiet);
        painter.drawRect(QRectF(x(*row.low), scale.top() + 4, x(*row.high) - x(*row.low), scale.height() - 8));
    }
    painter.setPen(QPen(out ? colours.warm : colours.accent, 3));
    painter.drawLine(QPointF(x(row.sets), scale.top() + 1), QPointF(x(row.sets), scale.bottom() - 2));
}

void MuscleRows::paintEvent(QPaintEvent* event)
{
    Q_UNUSED(event)
    QPainter painter(this);
    double most = kLeastScale;
    for (const MuscleTotal& row : m_rows) most = std::max({most, row.sets, row.high ? *row.high * 1.1 : 0.0});
    QRect line(0, 0, width() - 2 * kRowPad, fontMetrics().height() + kRowPad);
    for (const MuscleTotal& row : m_rows) {
        paintRow(painter, row, line, most);
        line.translate(0, line.height());
    }
}

}  // namespace steelyard
