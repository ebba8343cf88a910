#include "ui/models/roster_delegate.h"

#include "ui/format/format.h"
#include "ui/format/people.h"
#include "ui/models/roster_model.h"
#include "ui/shell/theme.h"

#include <QtGui/QPainter>
#include <QtWidgets/QApplication>

namespace steelyard {
namespace {

struct RosterInk {
    QColor name;
    QColor quiet;
    QColor severity;
};

RosterInk inkFor(const RosterRow& row, const QPalette& palette, bool selected)
{
    if (selected) {
        const QColor all = palette.color(QPalette::HighlightedText);
        return {all, all, all};
    }
    const ThemeColours& c = themeColours(palette);
    if (row.finished) return {c.quiet, c.quiet, c.quiet};
    if (!row.worst) return {c.text, c.quiet, c.quiet};
    return {c.text, c.quiet,
            *row.worst == Severity::High     ? c.alarm
            : *row.worst == Severity::Medium ? c.warm
                                             : c.quiet};
}

QString soonWord(const RosterRow& row)
{
    if (!row.reviewed) return QStringLiteral("…");
    if (row.finished) return RosterModel::tr("done");
    return row.worst ? format::severityWord(*row.worst) : RosterModel::tr("clear");
}

// Three fixed places at the right, so that the eye can run down a column.
void paintCounts(QPainter* painter, const RosterRow& row, QRect area, const QFontMetrics& metrics)
{
    const int place = area.width() / 3;
    const Verdict shown[] = {Verdict::Slipping, Verdict::Stalled, Verdict::CantTell};
    for (int i = 0; i < 3; ++i) {
        const int count = row.verdicts.at(static_cast<std::size_t>(shown[i]));
        if (count == 0) continue;
        const QRect at(area.left() + i * place, area.top(), place, area.height());
        painter->drawText(at.adjusted(0, 0, -metrics.horizontalAdvance(QLatin1Char('0')) / 2, 0),
                          Qt::AlignRight | Qt::AlignVCenter,
                          format::verdictShape(shown[i]) + QLocale().toString(count));
    }
}

}  // namespace

void RosterDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    QStyleOptionViewItem plain = option;
    initStyleOption(&plain, index);
    plain.text.clear();
    const QStyle* style = option.widget ? option.widget->style() : QApplication::style();
    style->drawControl(QStyle::CE_ItemViewItem, &plain, painter, option.widget);

    const RosterRow& row = *index.data(RosterModel::RowRole).value<const RosterRow*>();
    const RosterInk ink = inkFor(row, option.palette, option.state.testFlag(QStyle::State_Selected));
    const QFontMetrics metrics(option.font);
    const int gap = metrics.horizontalAdvance(QLatin1Char('0'));
    const int countsWidth = 3 * metrics.horizontalAdvance(QStringLiteral("○00  "));
    const int wordWidth = metrics.horizontalAdvance(format::severityWord(Severity::Medium)) + gap;
    const QRect line = option.rect.adjusted(gap, 0, -gap / 2, 0);
    const QRect mark(line.left(), line.top(), metrics.horizontalAdvance(QStringLiteral("●")) + gap, line.height());
    const QRect counts(line.right() - countsWidth, line.top(), countsWidth, line.height());
    const QRect word(counts.left() - wordWidth, line.top(), wordWidth, line.height());
    // In a narrow pane the name goes before the word: the mark says the same by its shape.
    const bool wordFits = word.left() - mark.right() > 14 * metrics.averageCharWidth();
    const int nameEnd = (wordFits ? word.left() : counts.left()) - gap;
    const QRect name(mark.right(), line.top(), nameEnd - mark.right(), line.height());

    painter->save();
    painter->setFont(option.font);
    painter->setPen(ink.severity);
    if (row.reviewed)
        painter->drawText(mark, Qt::AlignVCenter,
                          row.finished ? QStringLiteral("✓") : format::severityShape(row.worst));
    if (wordFits) painter->drawText(word, Qt::AlignLeft | Qt::AlignVCenter, soonWord(row));
    painter->setPen(ink.name);
    painter->drawText(name, Qt::AlignVCenter,
                      metrics.elidedText(format::person(row.name), Qt::ElideRight, name.width()));
    painter->setPen(ink.quiet);
    paintCounts(painter, row, counts, metrics);
    painter->restore();
}

QSize RosterDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    Q_UNUSED(index)
    const QFontMetrics metrics(option.font);
    return {metrics.averageCharWidth() * 30, metrics.height() * 8 / 5};
}

}  // namespace steelyard
