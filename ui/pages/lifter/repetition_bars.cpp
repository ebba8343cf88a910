#include "ui/pages/lifter/repetition_bars.h"

#include "core/keying/set_notation.h"
#include "ui/format/format.h"
#include "ui/format/repetition_words.h"
#include "ui/shell/theme.h"

#include <QtGui/QHelpEvent>
#include <QtGui/QPainter>
#include <QtWidgets/QToolTip>

#include <algorithm>

namespace steelyard {
namespace {

constexpr double kWidestSlot = 46;
constexpr double kHeadRoom = 1.08;
constexpr int kTallest = 280;
constexpr int kLinesBelow = 3;  // marks, number, lowering

}  // namespace

RepetitionBars::RepetitionBars(QWidget* parent) : QWidget(parent)
{
    setMinimumHeight(120);
    setMaximumHeight(kTallest);  // taller bars would say no more
}

void RepetitionBars::setRepetitions(std::vector<Repetition> repetitions, std::optional<FullTravel> full,
                                    std::optional<int> leastPercent)
{
    m_repetitions = std::move(repetitions);
    m_full = full;
    m_leastPercent = leastPercent;
    QStringList words;
    for (const Repetition& one : m_repetitions) words += repetitionWords(one);
    setAccessibleName(tr("Repetitions of the set"));
    setAccessibleDescription(words.join(QStringLiteral("; ")));
    update();
}

double RepetitionBars::top() const
{
    double most = m_full ? m_full->mm : 0;
    for (const Repetition& one : m_repetitions) most = std::max(most, one.travel().value_or(0));
    return most > 0 ? most * kHeadRoom : 1;
}

double RepetitionBars::step() const
{
    if (m_repetitions.empty()) return kWidestSlot;
    return std::min(kWidestSlot, width() / static_cast<double>(m_repetitions.size()));
}

void RepetitionBars::paintBar(QPainter& painter, const QRectF& slot, const Repetition& one) const
{
    const ThemeColours& colours = themeColours(palette());
    const auto travel = one.travel();
    const double line = fontMetrics().height();
    const QRectF plot = slot.adjusted(0, 0, 0, -kLinesBelow * line);
    const double height = plot.height() * (travel ? *travel / top() : 0.5);
    const QRectF bar(plot.left() + plot.width() * 0.18, plot.bottom() - height, plot.width() * 0.64, height);
    const bool off = !one.marks.none();
    QPen pen(off ? colours.data[1] : colours.data[0], off ? 2 : 1);
    if (one.partWay || !travel) pen.setStyle(Qt::DashLine);
    painter.setPen(pen);
    painter.setBrush(off || one.partWay || !travel ? QBrush(Qt::NoBrush) : QBrush(colours.data[0]));
    painter.drawRect(bar);
    QString letters = one.partWay ? QStringLiteral("+") : QString();
    for (const auto& row : EnumText<Mark>::table)
        if (one.marks.has(row.value)) letters += letterOf(row.value);
    painter.setPen(colours.text);
    if (!travel) painter.drawText(bar, Qt::AlignCenter, QStringLiteral("?"));
    const auto below = [&](int place) { return QRectF(slot.left(), plot.bottom() + place * line, slot.width(), line); };
    painter.drawText(below(0), Qt::AlignCenter, letters);
    painter.setPen(colours.quiet);
    painter.drawText(below(1), Qt::AlignCenter, QString::number(one.number));
    if (one.loweringSeconds)
        painter.drawText(below(2), Qt::AlignCenter, format::number(one.loweringSeconds->toDouble(), 1));
}

void RepetitionBars::paintLeast(QPainter& painter, const QRectF& plot) const
{
    if (!m_full || !m_leastPercent) return;
    const ThemeColours& colours = themeColours(palette());
    const double y = plot.bottom() - plot.height() * (m_full->mm * *m_leastPercent / 100) / top();
    painter.setPen(QPen(colours.text, 1, Qt::DashLine));
    painter.drawLine(QPointF(plot.left(), y), QPointF(plot.right(), y));
    const double used = step() * static_cast<double>(m_repetitions.size());
    painter.drawText(
        QRectF(plot.left() + used, y - fontMetrics().height(), plot.width() - used, fontMetrics().height()),
        Qt::AlignRight, tr("counts from here"));
}

void RepetitionBars::paintEvent(QPaintEvent* event)
{
    Q_UNUSED(event)
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    for (std::size_t i = 0; i < m_repetitions.size(); ++i)
        paintBar(painter, QRectF(step() * static_cast<double>(i), 4, step(), height() - 4), m_repetitions[i]);
    if (!m_repetitions.empty())
        paintLeast(painter, QRectF(0, 4, width(), height() - 4 - kLinesBelow * fontMetrics().height()));
}

bool RepetitionBars::event(QEvent* event)
{
    if (event->type() != QEvent::ToolTip) return QWidget::event(event);
    const auto* help = static_cast<QHelpEvent*>(event);
    const auto at = static_cast<std::size_t>(std::max(0.0, help->pos().x() / step()));
    if (at < m_repetitions.size())
        QToolTip::showText(help->globalPos(), format::plainToolTip(repetitionWords(m_repetitions[at])), this);
    else
        QToolTip::hideText();
    return true;
}

}  // namespace steelyard
