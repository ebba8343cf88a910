#include "ui/pages/block/block_loads.h"

#include "core/book/book.h"
#include "core/edits/edits.h"
#include "ui/format/format.h"
#include "ui/format/plan_words.h"
#include "ui/pages/block/block_words.h"
#include "ui/widgets/roomy_rows.h"

#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QTreeWidget>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

enum LoadColumn { DayColumn, LiftColumn, WrittenColumn, NowColumn, WhyColumn, LoadColumns };

QString loadOrNone(const Slot& slot)
{
    return slot.load ? format::load(*slot.load) : QStringLiteral("–");
}

}  // namespace

BlockLoads::BlockLoads(const UiContext& context, QWidget* parent)
    : BesideWeek(context, parent),
      m_list(new QTreeWidget(this)),
      m_write(new QPushButton(tr("Wri&te what is ticked"), this))
{
    build();
}

void BlockLoads::build()
{
    m_list->setAccessibleName(tr("Loads that would change"));
    m_list->setColumnCount(LoadColumns);
    m_list->setHeaderLabels({tr("Day"), tr("Lift"), tr("Written"), tr("Now"), tr("Why")});
    for (const int column : {WrittenColumn, NowColumn})
        m_list->headerItem()->setTextAlignment(column, Qt::AlignRight | Qt::AlignVCenter);
    m_list->header()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_list->header()->setSectionResizeMode(WhyColumn, QHeaderView::Stretch);
    m_list->header()->setStretchLastSection(true);
    m_list->setRootIsDecorated(false);
    m_list->setUniformRowHeights(true);
    m_list->setTextElideMode(Qt::ElideRight);
    m_list->setFrameShape(QFrame::NoFrame);
    giveRowsRoom(m_list);
    auto* leave = new QPushButton(tr("Leave it"), this);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_write);
    buttons->addWidget(leave);
    buttons->addStretch(1);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(24, 20, 24, 12);
    all->addWidget(wordsLabel());
    all->addWidget(m_list, 1);
    all->addWidget(wholeText(m_list, WhyColumn));
    all->addLayout(buttons);
    connect(m_write, &QPushButton::clicked, this, [this] { goOn(false); });
    connect(leave, &QPushButton::clicked, this, [this] { Q_EMIT left({}); });
}

void BlockLoads::takeFocus()
{
    m_list->setFocus(Qt::ShortcutFocusReason);
}

void BlockLoads::open(Id<Athlete> athlete, const Row<Block>& row, const Library& library)
{
    m_block = row;
    m_found.clear();
    m_kept.clear();
    m_list->clear();
    m_write->setEnabled(false);
    say(tr("Reading what the record says of these loads…"));
    const BlockOutlookRequest request{athlete, row.value, context().clock.today(), format::wording()};
    ask(
        tr("Forecasting loads"),
        [request, path = context().book.path()](const Progress&) -> Result<BlockOutlook> {
            STEELYARD_TRY(const auto database, Database::openReader(path));
            return readBlockOutlook(*database, request);
        },
        [this, library](BlockOutlook outlook) { show(std::move(outlook), library); });
}

void BlockLoads::show(BlockOutlook outlook, const Library& library)
{
    m_found = std::move(outlook.changes);
    m_kept.assign(m_found.size(), false);
    m_write->setEnabled(!m_found.empty());
    if (m_found.empty())
        return say(
            tr("The loads that are written are those that the record gives today. What has none is built up to."));
    say(
        tr("%n load(s) would be written otherwise today. Space ticks, Shift+L keeps the written one for good, Enter "
           "writes "
           "that.",
           nullptr, static_cast<int>(m_found.size())));
    for (const LoadChangeAhead& change : m_found) {
        auto* row = new QTreeWidgetItem(m_list, {format::shortDay(change.date), exerciseWords(change.after, library),
                                                 loadOrNone(change.before), loadOrNone(change.after), change.why});
        row->setCheckState(DayColumn, Qt::Checked);
        row->setToolTip(LiftColumn, format::plainToolTip(wayWords(change.after, library)));
        row->setToolTip(WhyColumn, format::plainToolTip(change.why));
        for (const int column : {WrittenColumn, NowColumn})
            row->setTextAlignment(column, Qt::AlignRight | Qt::AlignVCenter);
    }
    m_list->setCurrentItem(m_list->topLevelItem(0));
    takeFocus();
    Q_EMIT canKeepChanged();
}

void BlockLoads::keep()
{
    QTreeWidgetItem* row = m_list->currentItem();
    if (!row) return;
    const auto at = static_cast<std::size_t>(m_list->indexOfTopLevelItem(row));
    if (!m_found[at].before.load) return say(tr("Nothing is written there that could be kept."), true);
    m_kept[at] = !m_kept[at];
    row->setText(NowColumn, m_kept[at] ? tr("kept") : loadOrNone(m_found[at].after));
    row->setCheckState(DayColumn, m_kept[at] ? Qt::Unchecked : Qt::Checked);
    row->setFlags(row->flags().setFlag(Qt::ItemIsUserCheckable, !m_kept[at]));  // one or the other
}

std::vector<LoadChangeAhead> BlockLoads::taken() const
{
    std::vector<LoadChangeAhead> taken;
    for (std::size_t i = 0; i < m_found.size(); ++i) {
        const bool ticked = m_list->topLevelItem(static_cast<int>(i))->checkState(DayColumn) == Qt::Checked;
        if (!m_kept[i] && !ticked) continue;
        taken.push_back(m_found[i]);
        if (!m_kept[i]) continue;
        taken.back().after = taken.back().before;
        taken.back().after.loadLocked = true;
    }
    return taken;
}

void BlockLoads::goOn(bool withControl)
{
    Q_UNUSED(withControl)
    if (!m_block || !m_write->isEnabled()) return;
    const std::vector<LoadChangeAhead> all = taken();
    if (all.empty()) return say(tr("Nothing is ticked."), true);
    if (!isAsInBook(m_block->value.athlete, *m_block)) return;
    const auto done = context().book.history().perform(changeBlock(m_block->id, withLoads(m_block->value, all)));
    if (!done) return say(done.error().what, true);
    const auto kept = static_cast<int>(std::ranges::count(m_kept, true));
    QString said = tr("%n load(s) written.", nullptr, static_cast<int>(all.size()) - kept);
    if (kept > 0) said += u' ' + tr("%n load(s) kept as written.", nullptr, kept);
    Q_EMIT left(said + u' ' + tr("Ctrl+Z takes that back."));
}

}  // namespace steelyard
