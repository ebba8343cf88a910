#include "ui/pages/block/block_proposed.h"

#include "core/book/block_outlook.h"
#include "core/book/book.h"
#include "core/edits/edits.h"
#include "ui/format/format.h"
#include "ui/format/plan_words.h"

#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QTreeWidget>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

enum ProposedColumn { ProposedLift, ProposedSets, ProposedWhy, ProposedColumns };

QTreeWidgetItem* headItem(QTreeWidget* tree, const QString& text)
{
    auto* head = new QTreeWidgetItem(tree, {text});
    QFont bold = tree->font();
    bold.setBold(true);
    head->setFont(ProposedLift, bold);
    head->setExpanded(true);
    return head;
}

void addSentences(QTreeWidget* tree, const QString& title, const QStringList& sentences)
{
    if (sentences.isEmpty()) return;
    auto* head = headItem(tree, title);
    for (const QString& sentence : sentences) {
        auto* line = new QTreeWidgetItem(head, {sentence});
        line->setFirstColumnSpanned(true);
        line->setToolTip(ProposedLift, format::plainToolTip(sentence));
    }
}

Result<BlockProposal> proposeWithLoads(const QString& path, Id<Athlete> athlete, const ProposalWishes& wishes,
                                       const Progress& progress)
{
    STEELYARD_TRY(const auto database, Database::openReader(path));
    STEELYARD_TRY(BlockProposal proposal, readProposal(*database, athlete, wishes, progress));
    STEELYARD_TRY(const auto outlook,
                  readBlockOutlook(*database, {athlete, proposal.block, wishes.today, wishes.wording}));
    proposal.block = withLoads(std::move(proposal.block), outlook.changes);
    return proposal;
}

}  // namespace

BlockProposed::BlockProposed(const UiContext& context, QWidget* parent)
    : BesideWeek(context, parent), m_answer(new QTreeWidget(this)), m_take(new QPushButton(tr("&Take it over"), this))
{
    m_answer->setAccessibleName(tr("The proposed block"));
    m_answer->setColumnCount(ProposedColumns);
    m_answer->setHeaderLabels({tr("Lift"), tr("Sets"), tr("Why")});
    m_answer->headerItem()->setTextAlignment(ProposedSets, Qt::AlignRight | Qt::AlignVCenter);
    m_answer->header()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_answer->header()->setSectionResizeMode(ProposedWhy, QHeaderView::Stretch);
    m_answer->setRootIsDecorated(false);
    m_answer->setTextElideMode(Qt::ElideRight);
    m_answer->setFrameShape(QFrame::NoFrame);
    auto* leave = new QPushButton(tr("Leave it"), this);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_take);
    buttons->addWidget(leave);
    buttons->addStretch(1);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(24, 20, 24, 12);
    all->addWidget(wordsLabel());
    all->addWidget(m_answer, 1);
    all->addLayout(buttons);
    connect(m_take, &QPushButton::clicked, this, [this] { goOn(false); });
    connect(leave, &QPushButton::clicked, this, [this] { Q_EMIT left({}); });
}

void BlockProposed::takeFocus()
{
    m_answer->setFocus(Qt::ShortcutFocusReason);
}

void BlockProposed::open(Id<Athlete> athlete, QDate start, const QString& name, const Library& library)
{
    m_block.reset();
    m_name = name;
    m_answer->clear();
    m_take->setEnabled(false);
    say(tr("Looking for a block that fits the record, the aims, the days and the gym…"));
    ProposalWishes wishes{.today = context().clock.today(), .from = start};
    wishes.wording = format::wording();
    ask(
        tr("Proposing a block"),
        [wishes, athlete, path = context().book.path()](const Progress& progress) {
            return proposeWithLoads(path, athlete, wishes, progress);
        },
        [this, library](BlockProposal proposal) { show(std::move(proposal), library); });
}

void BlockProposed::show(BlockProposal proposal, const Library& library)
{
    QTreeWidgetItem* head = nullptr;
    int weekday = 0;
    for (const ProposedSlot& slot : proposal.week) {
        if (slot.weekday != weekday) {
            weekday = slot.weekday;
            head = headItem(m_answer, QLocale().dayName(weekday));
        }
        auto* row =
            new QTreeWidgetItem(head, {format::liftName(slot.lift, library), QString::number(slot.sets), slot.why});
        row->setTextAlignment(ProposedSets, Qt::AlignRight | Qt::AlignVCenter);
        row->setToolTip(ProposedWhy, format::plainToolTip(slot.why));
    }
    addSentences(m_answer, tr("What could not be met"), proposal.unmet);
    addSentences(m_answer, tr("Joints"), proposal.cautions);
    proposal.block.name = m_name;
    say(tr("%n week(s) from %1: the week that repeats. Enter takes it over; everything can be changed afterwards.",
           nullptr, static_cast<int>(proposal.block.weeks.size()))
            .arg(format::date(proposal.block.start)));
    m_block = std::move(proposal.block);
    m_take->setEnabled(true);
    if (m_answer->topLevelItemCount() > 0) m_answer->setCurrentItem(m_answer->topLevelItem(0));
    takeFocus();
}

void BlockProposed::goOn(bool withControl)
{
    Q_UNUSED(withControl)
    if (!m_block || !m_take->isEnabled()) return;
    const auto done = context().book.history().perform(addBlock(*m_block));
    if (!done) return say(done.error().what, true);
    Q_EMIT left(tr("The proposed block is planned. Ctrl+Z takes it back."));
}

}  // namespace steelyard
