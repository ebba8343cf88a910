#include "ui/pages/block/block_side.h"

#include "core/planning/progression_registry.h"
#include "ui/format/format.h"
#include "ui/pages/block/block_words.h"
#include "ui/pages/block/done_words.h"
#include "ui/pages/block/muscle_rows.h"
#include "ui/shell/theme.h"
#include "ui/widgets/words.h"

#include <QtWidgets/QLabel>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QScrollArea>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
BlockSide::BlockSide(QWidget* parent)
    : QWidget(parent),
      m_done(plainWords(this)),
      m_goesOn(plainWords(this)),
      m_muscles(new MuscleRows(this)),
      m_scroll(new QScrollArea(this)),
      m_head(quietWords(this)),
      m_limitsHead(quietWords(this)),
      m_limits(new QListWidget(this))
{
    m_scroll->setWidget(m_muscles);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->viewport()->setAutoFillBackground(false);
    m_muscles->setAutoFillBackground(false);
    m_limits->setFrameShape(QFrame::NoFrame);
    m_limits->setWordWrap(true);
    m_limits->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_limits->setAccessibleName(tr("Limits that are broken"));
    m_limits->setObjectName(QStringLiteral("brokenLimits"));
    m_limits->viewport()->setAutoFillBackground(false);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(12, 6, 4, 4);
    column->setSpacing(4);
    m_done->setObjectName(QStringLiteral("doneOfThePlan"));
    m_done->setToolTip(format::plainToolTip(onTargetWords()));
    m_goesOn->setObjectName(QStringLiteral("howItGoesOn"));
    column->addWidget(m_done);
    column->addWidget(m_head);
    column->addWidget(m_scroll, 3);
    column->addWidget(m_limitsHead);
    column->addWidget(m_limits, 2);
    column->addWidget(m_goesOn);
    column->addStretch(1);
    setMinimumWidth(210);
    const auto go = [this](const QListWidgetItem* item) {
        if (!item || !m_shown) return;
        const auto at = static_cast<std::size_t>(item->data(Qt::UserRole).toULongLong());
        if (at >= m_shown->totals.broken.size()) return;
        const BrokenLimit& limit = m_shown->totals.broken[at];
        const PlanPlace place{limit.week, limit.day.value_or(0), 0};
        Q_EMIT placeWanted(dateOf(m_shown->block(), place), limit.slot);
    };
    connect(m_limits, &QListWidget::itemActivated, this, go);
    connect(m_limits, &QListWidget::itemClicked, this, go);
}

void BlockSide::show(BlockShownPtr shown)
{
    m_shown = std::move(shown);
    m_muscles->show(m_shown);
    m_scroll->setMaximumHeight(m_muscles->sizeHint().height() + 2);
    m_limits->clear();
    if (!m_shown || !m_shown->hasWeek()) return;
    const auto& rows = m_shown->totals.weeks[m_shown->weekIndex].muscles;
    const bool banded = std::ranges::any_of(rows, [](const MuscleTotal& row) { return row.low.has_value(); });
    QString head = tr("Sets of the week by muscle; helpers count by their share.");
    if (!banded) head += u' ' + tr("No bands are set: G sets them.");
    m_head->setText(head);
    fillDone();
    fillLimits();
}

void BlockSide::fillDone()
{
    const Adherence week = m_shown->done.ofWeek(m_shown->weekIndex);
    const QString words = week.expectedSessions > 0 ? besideWords(week, m_shown->done.ofBlock()) : QString();
    m_done->setText(words);
    m_done->setVisible(!words.isEmpty());
}

void BlockSide::showSlot(const Slot* slot, const SlotLoad* today)
{
    m_goesOn->setVisible(slot != nullptr);
    if (!slot) return;
    const ProgressionRule& rule = progressionFor(slot->progression);
    const bool isSaid = today && !today->why.isEmpty();
    m_goesOn->setText(
        tr("%1. %2", "how a lift goes on, and why").arg(rule.title(), isSaid ? today->why : rule.description()));
    m_goesOn->setToolTip(format::plainToolTip(rule.description()));
}

void BlockSide::fillLimits()
{
    for (std::size_t i = 0; i < m_shown->totals.broken.size(); ++i) {
        const BrokenLimit& limit = m_shown->totals.broken[i];
        if (limit.week != m_shown->weekIndex) continue;
        const QString words = limitWords(limit, m_shown->block(), m_shown->library());
        auto* item = new QListWidgetItem(kLimitShape + QStringLiteral(" ") + words, m_limits);
        item->setToolTip(format::plainToolTip(words));
        item->setForeground(themeColours(palette()).warm);
        item->setData(Qt::UserRole, static_cast<qulonglong>(i));
    }
    m_limits->setVisible(m_limits->count() > 0);
    m_limitsHead->setText(m_limits->count() == 0 ? tr("No limit is broken in this week.")
                                                 : tr("%n limit(s) broken in this week:", nullptr, m_limits->count()));
}

}  // namespace steelyard
