#include "ui/pages/block/week_strip.h"

#include "ui/format/format.h"
#include "ui/pages/block/block_words.h"
#include "ui/pages/block/done_words.h"
#include "ui/shell/theme.h"

#include <QtGui/QHelpEvent>
#include <QtGui/QPainter>
#include <QtWidgets/QToolTip>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kWidest = 150;
constexpr int kPadX = 8;
constexpr int kUnderline = 3;

}  // namespace

WeekStrip::WeekStrip(QWidget* parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Weeks of the block"));
}

void WeekStrip::show(BlockShownPtr shown)
{
    m_shown = std::move(shown);
    if (m_shown && m_shown->hasWeek()) setAccessibleDescription(weekWords(m_shown->block(), m_shown->weekIndex));
    update();
}

QSize WeekStrip::sizeHint() const
{
    return {200, 3 * fontMetrics().height() + kUnderline + 4};
}

QRect WeekStrip::rectOf(std::size_t week) const
{
    if (!m_shown || m_shown->block().weeks.empty()) return {};
    const int count = static_cast<int>(m_shown->block().weeks.size());
    const int cell = std::min(kWidest, width() / count);
    return {cell * static_cast<int>(week), 0, cell, height()};
}

std::optional<std::size_t> WeekStrip::weekAt(QPoint position) const
{
    for (std::size_t week = 0; m_shown && week < m_shown->block().weeks.size(); ++week)
        if (rectOf(week).contains(position)) return week;
    return std::nullopt;
}

int WeekStrip::brokenIn(std::size_t week) const
{
    return static_cast<int>(std::ranges::count(m_shown->totals.broken, week, &BrokenLimit::week));
}

void WeekStrip::paintWeek(QPainter& painter, std::size_t week) const
{
    const ThemeColours& colours = themeColours(palette());
    const QRect cell = rectOf(week);
    const Block& block = m_shown->block();
    const bool passed = firstDayOf(block, week).addDays(kDaysOfPlanWeek - 1) < m_shown->firstOpen;
    const bool inSight = week == m_shown->weekIndex;
    const int broken = brokenIn(week);
    QRect line = cell.adjusted(kPadX, 2, -2, 0);
    line.setHeight(fontMetrics().height());
    const auto say = [&](const QString& text, const QColor& colour) {
        painter.setPen(colour);
        painter.drawText(line, Qt::AlignLeft | Qt::AlignVCenter,
                         fontMetrics().elidedText(text, Qt::ElideRight, line.width()));
        line.translate(0, line.height());
    };
    painter.setFont(font());
    if (inSight) {
        QFont bold = font();
        bold.setBold(true);
        painter.setFont(bold);
    }
    const QColor words = passed ? colours.quiet : colours.text;
    say(tr("%1 · %2", "number of the week, its first day")
            .arg(QString::number(week + 1), format::dayMonth(firstDayOf(block, week))),
        words);
    painter.setFont(font());
    const QString sums = tr("%n set(s)", nullptr, m_shown->totals.weeks[week].sets);
    const Adherence done = m_shown->done.ofWeek(week);
    const bool isCounted = passed && done.expectedSets > 0;
    say(isCounted ? setsDoneWords(done) : passed ? tr("%1, past").arg(sums) : sums, colours.quiet);
    QStringList last{isCounted ? sessionsDoneWords(done) : QString(), weekKindWord(block.weeks[week].kind)};
    if (broken > 0) last << kLimitShape + QStringLiteral(" %1").arg(broken);
    last.removeAll(QString());
    say(last.join(u' '), broken > 0 ? colours.warm : colours.quiet);
    if (inSight)
        painter.fillRect(cell.left() + kPadX, height() - kUnderline, cell.width() - kPadX, kUnderline, colours.accent);
    painter.setPen(colours.hairline);
    painter.drawLine(cell.topRight(), cell.bottomRight());
}

void WeekStrip::paintEvent(QPaintEvent* event)
{
    Q_UNUSED(event)
    QPainter painter(this);
    for (std::size_t week = 0; m_shown && week < m_shown->block().weeks.size(); ++week) paintWeek(painter, week);
}

void WeekStrip::mousePressEvent(QMouseEvent* event)
{
    if (const auto week = weekAt(event->position().toPoint())) Q_EMIT weekChosen(*week);
}

bool WeekStrip::event(QEvent* event)
{
    if (event->type() != QEvent::ToolTip) return QWidget::event(event);
    const auto* help = static_cast<QHelpEvent*>(event);
    if (const auto week = weekAt(help->pos())) {
        QStringList lines{weekWords(m_shown->block(), *week)};
        if (const QString did = besideWords(m_shown->done.ofWeek(*week), {}); !did.isEmpty()) lines << did;
        for (const BrokenLimit& one : m_shown->totals.broken)
            if (one.week == *week)
                lines << kLimitShape + QStringLiteral(" ") + limitWords(one, m_shown->block(), m_shown->library());
        QToolTip::showText(help->globalPos(), format::plainToolTip(lines.join(u'\n')), this, rectOf(*week));
    }
    return true;
}

}  // namespace steelyard
