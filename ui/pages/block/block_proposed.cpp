#include "ui/pages/block/block_proposed.h"

#include "core/book/block_outlook.h"
#include "core/book/book.h"
#include "core/edits/edits.h"
#include "core/edits/keying_edits.h"
#include "core/planning/proposal/proposal_problem.h"
#include "ui/format/format.h"
#include "ui/format/plan_words.h"
#include "ui/pages/block/block_words.h"
#include "ui/widgets/words.h"
#include "ui/widgets/roomy_rows.h"

#include <QtWidgets/QCheckBox>
#include <QtWidgets/QDateEdit>
#include <QtWidgets/QFormLayout>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QSpinBox>
#include <QtWidgets/QTreeWidget>
#include <QtWidgets/QTreeWidgetItemIterator>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kQuestionWidth = 290;
constexpr int kUsualWeeks = 5;
constexpr int kMinutesStep = 5;
constexpr int kSentenceRole = Qt::UserRole;
constexpr int kSentenceMargin = 12;
constexpr int kMostMinutes = 600;

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
        line->setData(ProposedLift, kSentenceRole, true);
        line->setToolTip(ProposedLift, format::plainToolTip(sentence));
    }
}

// Training days of the first normal week.
int daysOfBlock(const Block& block)
{
    const auto normal = std::ranges::find(block.weeks, WeekKind::Normal, &PlannedWeek::kind);
    return normal == block.weeks.end() ? 0 : static_cast<int>(normal->days.size());
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
    : BesideWeek(context, parent),
      m_from(new QDateEdit(this)),
      m_weeks(new QSpinBox(this)),
      m_days(new QSpinBox(this)),
      m_minutes(new QSpinBox(this)),
      m_instead(new QCheckBox(this)),
      m_usual(quietWords(this)),
      m_pins(quietWords(this)),
      m_answer(new QTreeWidget(this)),
      m_look(new QPushButton(tr("L&ook again"), this)),
      m_take(new QPushButton(tr("&Take it over"), this))
{
    build();
    connect(m_from, &QDateEdit::dateChanged, this, &BlockProposed::forget);
    for (const QSpinBox* field : {m_weeks, m_days, m_minutes})
        connect(field, &QSpinBox::valueChanged, this, &BlockProposed::forget);
    connect(m_instead, &QCheckBox::toggled, this, [this] {
        fillUsual();
        forget();
    });
    connect(m_look, &QPushButton::clicked, this, &BlockProposed::look);
    connect(m_take, &QPushButton::clicked, this, &BlockProposed::take);
}

QLayout* BlockProposed::makeQuestion()
{
    m_from->setCalendarPopup(true);
    m_from->setDisplayFormat(format::datePattern());
    m_weeks->setRange(1, kMostProposalWeeks);
    m_days->setRange(1, kDaysOfPlanWeek);
    m_minutes->setRange(kMinutesStep, kMostMinutes);
    m_minutes->setSingleStep(kMinutesStep);
    // One question for a number typed, not one for each digit.
    for (QSpinBox* field : {m_weeks, m_days, m_minutes}) field->setKeyboardTracking(false);
    m_from->setKeyboardTracking(false);
    auto* form = new QFormLayout;
    form->addRow(tr("First &day"), m_from);
    form->addRow(tr("Week&s"), m_weeks);
    form->addRow(tr("Da&ys a week"), m_days);
    form->addRow(tr("&Minutes a day"), m_minutes);
    auto* leave = new QPushButton(tr("Leave it"), this);
    connect(leave, &QPushButton::clicked, this, [this] { Q_EMIT left({}); });
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_look);
    buttons->addWidget(leave);
    buttons->addStretch(1);
    auto* column = new QVBoxLayout;
    column->setContentsMargins({});
    column->setSpacing(10);
    column->addLayout(form);
    column->addWidget(m_instead);
    column->addWidget(m_usual);
    column->addWidget(m_pins);
    column->addLayout(buttons);
    column->addStretch(1);
    return column;
}

void BlockProposed::build()
{
    m_answer->setAccessibleName(tr("The proposed block"));
    m_answer->setColumnCount(ProposedColumns);
    m_answer->setHeaderLabels({tr("Lift"), tr("Sets"), tr("Why")});
    m_answer->headerItem()->setTextAlignment(ProposedSets, Qt::AlignRight | Qt::AlignVCenter);
    m_answer->header()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_answer->header()->setSectionResizeMode(ProposedWhy, QHeaderView::Stretch);
    m_answer->setRootIsDecorated(false);
    m_answer->setTextElideMode(Qt::ElideRight);
    m_answer->setWordWrap(true);
    m_answer->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_answer->setFrameShape(QFrame::NoFrame);
    giveRowsRoom(m_answer);
    auto* question = new QWidget(this);
    question->setFixedWidth(kQuestionWidth);
    question->setLayout(makeQuestion());
    auto* right = new QVBoxLayout;
    right->addWidget(wordsLabel());
    right->addWidget(m_answer, 1);
    right->addWidget(wholeText(m_answer, ProposedWhy));
    right->addWidget(m_take, 0, Qt::AlignLeft);
    auto* whole = new QHBoxLayout(this);
    whole->setContentsMargins(24, 20, 24, 12);
    whole->setSpacing(24);
    whole->addWidget(question);
    whole->addLayout(right, 1);
}

void BlockProposed::takeFocus()
{
    m_answer->setFocus(Qt::ShortcutFocusReason);
}

bool BlockProposed::replaces() const
{
    return m_question->instead && m_instead->isChecked();
}

int BlockProposed::usualMinutes() const
{
    return m_question->record->log.athlete.value.minutesPerDay.value_or(kUsualTrainingMinutes);
}

void BlockProposed::open(ProposalQuestion question)
{
    m_question = std::move(question);
    const QSignalBlocker quiet(m_instead);
    m_instead->setVisible(m_question->instead.has_value());
    m_instead->setChecked(m_question->instead && !m_question->pinned.empty());
    m_instead->setText(tr("In &place of the block in sight"));
    if (m_question->instead) m_instead->setToolTip(format::plainToolTip(blockWords(m_question->instead->value)));
    QStringList pins;
    for (const PinnedSlot& pin : m_question->pinned)
        pins << QStringLiteral("%1, %2").arg(exerciseWords(pin.slot, m_question->record->library),
                                             QLocale().dayName(pin.weekday));
    m_pins->setText(pins.isEmpty() ? tr("Nothing is fixed. I on a lift of the week fixes it for the next proposal.")
                                   : tr("Fixed: %1").arg(pins.join(QStringLiteral("; "))));
    fillUsual();
    look();
}

// Of the block whose place it takes, else of the lifter.
void BlockProposed::fillUsual()
{
    const QSignalBlocker quiet[] = {QSignalBlocker(m_from), QSignalBlocker(m_weeks), QSignalBlocker(m_days),
                                    QSignalBlocker(m_minutes)};
    Q_UNUSED(quiet)
    const Block* block = replaces() ? &m_question->instead->value : nullptr;
    m_from->setDate(block ? block->start : m_question->start);
    m_weeks->setValue(block ? static_cast<int>(block->weeks.size()) : kUsualWeeks);
    const int own = block ? daysOfBlock(*block) : 0;
    const auto weekdays = trainingWeekdays(m_question->record->log, {.today = context().clock.today()});
    m_days->setValue(own > 0 ? own : static_cast<int>(weekdays.size()));
    m_minutes->setValue(block ? block->minutesPerDay.value_or(usualMinutes()) : usualMinutes());
    sayUsual();
}

void BlockProposed::sayUsual()
{
    const auto weekdays = trainingWeekdays(m_question->record->log, wishes());
    m_usual->setText(tr("On %1, as this lifter trains; usually %2 min a day.")
                         .arg(weekdaysText(weekdays), QString::number(usualMinutes())));
}

ProposalWishes BlockProposed::wishes() const
{
    ProposalWishes wishes{.today = context().clock.today(), .from = m_from->date(), .weeks = m_weeks->value()};
    wishes.daysPerWeek = m_days->value();
    if (m_minutes->value() != usualMinutes()) wishes.minutesPerDay = m_minutes->value();
    wishes.pinned = m_question->pinned;
    if (replaces()) {
        const Block& block = m_question->instead->value;
        wishes.aims = block.aims;
        wishes.daysOff = block.daysOff;
        wishes.easing = block.easing;
    }
    wishes.wording = format::wording();
    return wishes;
}

void BlockProposed::forget()
{
    if (!m_question) return;
    dropAnswer();
    m_looking = false;
    m_block.reset();
    m_answer->clear();
    m_take->setEnabled(false);
    sayUsual();
    say(tr("Enter looks for a block by this."));
}

void BlockProposed::look()
{
    forget();
    m_looking = true;
    say(tr("Looking for a block that fits the record, the aims, the days and the gym…"));
    ask(
        tr("Proposing a block"),
        [wishes = wishes(), athlete = m_question->athlete, path = context().book.path()](const Progress& progress) {
            return proposeWithLoads(path, athlete, wishes, progress);
        },
        [this](BlockProposal proposal) { show(std::move(proposal)); });
}

void BlockProposed::show(BlockProposal proposal)
{
    const Library& library = m_question->record->library;
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
    proposal.block.name = m_question->name;
    if (replaces()) {
        proposal.block.name = m_question->instead->value.name;
        proposal.block.aim = m_question->instead->value.aim;
    }
    say(tr("%n week(s) from %1: the week that repeats. Enter takes it over; everything can be changed afterwards.",
           nullptr, static_cast<int>(proposal.block.weeks.size()))
            .arg(format::date(proposal.block.start)));
    m_block = std::move(proposal.block);
    m_take->setEnabled(true);
    shareWidth(m_answer);
    fitSentences();
    if (m_answer->topLevelItemCount() > 0) m_answer->setCurrentItem(m_answer->topLevelItem(0)->child(0));
    takeFocus();
}

// Sentences are read whole: as many lines as each needs in the width there is.
void BlockProposed::fitSentences()
{
    const int width = m_answer->viewport()->width() - m_answer->indentation() - kSentenceMargin;
    for (QTreeWidgetItemIterator at(m_answer); *at; ++at) {
        if (!(*at)->data(ProposedLift, kSentenceRole).toBool()) continue;
        const QRect room(0, 0, width, 10000);
        const int height =
            m_answer->fontMetrics().boundingRect(room, Qt::TextWordWrap, (*at)->text(ProposedLift)).height();
        (*at)->setSizeHint(ProposedLift, QSize(width, height + 2));
    }
}

void BlockProposed::resizeEvent(QResizeEvent* event)
{
    BesideWeek::resizeEvent(event);
    shareWidth(m_answer);
    fitSentences();
}

void BlockProposed::goOn(bool withControl)
{
    Q_UNUSED(withControl)
    if (m_block) return take();
    if (m_question && (!m_looking || isSettled())) look();
}

void BlockProposed::take()
{
    if (!m_block) return;
    if (!replaces()) {
        const auto done = context().book.history().perform(addBlock(*m_block));
        if (!done) return say(done.error().what, true);
        return Q_EMIT left(tr("The proposed block is planned. Ctrl+Z takes it back."));
    }
    const Row<Block>& before = *m_question->instead;
    if (!isAsInBook(m_question->athlete, before)) return;
    const auto done = context().book.history().perform(
        named(changeBlock(before.id, *m_block), tr("propose %1 anew").arg(before.value.name)));
    if (!done) return say(done.error().what, true);
    Q_EMIT left(tr("The proposed block has taken the place of the one before. Ctrl+Z brings that back."));
}

}  // namespace steelyard
