#include "ui/pages/block/block_page.h"

#include "core/book/book.h"
#include "core/edits/edits.h"
#include "core/planning/usual_weekdays.h"
#include "ui/format/format.h"
#include "ui/format/people.h"
#include "ui/format/plan_words.h"
#include "ui/pages/block/block_day_list.h"
#include "ui/pages/block/block_for_many.h"
#include "ui/pages/block/block_grid.h"
#include "ui/pages/block/block_loads.h"
#include "ui/pages/block/block_proposed.h"
#include "ui/pages/block/block_side.h"
#include "ui/pages/block/block_start.h"
#include "ui/pages/block/block_words.h"
#include "ui/pages/block/loads_ahead.h"
#include "ui/pages/block/week_strip.h"
#include "ui/shell/theme.h"
#include "ui/widgets/asked_line.h"
#include "ui/widgets/elided_label.h"
#include "ui/widgets/lift_chooser.h"

#include <QtWidgets/QComboBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QStackedWidget>

#include <algorithm>
#include <set>

namespace steelyard {
namespace {

constexpr int kChoiceWidth = 290;
constexpr int kChoiceFrame = 36;

}  // namespace

BlockPage::~BlockPage()
{
    m_job.cancel();
}

BlockPlacesView* BlockPage::places() const
{
    return static_cast<BlockPlacesView*>(m_views->currentWidget());
}

void BlockPage::showAthlete(std::optional<Id<Athlete>> athlete)
{
    if (athlete == m_athlete) return;
    m_athlete = athlete;
    m_job.cancel();
    m_stale = true;
    m_record.reset();
    m_shown.reset();
    m_blocks.clear();
    m_wanted.reset();
    m_ahead->forget();
    if (BesideWeek* panel = beside()) {
        panel->dropAnswer();
        m_states->setCurrentIndex(0);
    }
    m_asked->hide();
    m_chooser->hide();
    if (!athlete)
        hint(tr("Choose a lifter in the roster to plan their coming weeks."));
    else if (isVisible())
        read();
}

void BlockPage::showEvent(QShowEvent* event)
{
    Page::showEvent(event);
    if (m_stale && m_athlete) read();
    lookAhead();
}

// A block that nobody sees needs no forecast: while a session is keyed elsewhere every set would ask for one.
void BlockPage::lookAhead()
{
    if (m_shown && isVisible()) m_ahead->look(*m_athlete, m_shown);
}

void BlockPage::bookChanged(const Changes& changes)
{
    if (!m_athlete) return;
    const bool mine = changes.athletes.contains(*m_athlete) || changes.roster || changes.library;
    if (changes.settings) lookAhead();
    if (!mine) return;
    if (places()->isTyping()) {
        m_later = true;
        return;
    }
    if (m_record) readBlocks();
    if (m_storing) return;  // a block is no part of what the record says of training
    m_stale = true;
    if (isVisible()) read();
}

void BlockPage::takeFocus()
{
    if (m_states->currentWidget() == m_start)
        m_start->takeFocus();
    else if (BesideWeek* panel = beside())
        panel->takeFocus();
    else if (m_shown)
        places()->setFocus(Qt::ShortcutFocusReason);
    else
        setFocus();
}

void BlockPage::read()
{
    m_job.cancel();
    m_stale = true;
    if (!m_record) hint(tr("Reading the record…"));
    m_job = m_context.jobs.run(
        this, tr("Reading a lifter’s record"),
        [path = m_context.book.path(), athlete = *m_athlete, today = m_context.clock.today()](const Progress&) {
            return readPlanRecord(path, athlete, today);
        },
        [this, athlete = *m_athlete](Result<PlanRecord> record) {
            if (m_athlete == athlete) take(std::move(record));
        });
}

void BlockPage::take(Result<PlanRecord> record)
{
    if (!record && record.error().code == ErrorCode::Cancelled) return;
    m_stale = false;
    if (!record) return hint(tr("The record could not be read. %1").arg(record.error().what));
    const bool first = !m_record;
    m_record = std::make_shared<const PlanRecord>(std::move(*record));
    readBlocks();
    if (first && isVisible() && window()->focusWidget() == this) takeFocus();
    if (const auto action = std::exchange(m_wanted, std::nullopt); action && canPerform(*action)) perform(*action);
}

void BlockPage::readBlocks()
{
    auto blocks = m_context.book.blocks().of(*m_athlete);
    if (!blocks) return hint(tr("The blocks could not be read. %1").arg(blocks.error().what));
    m_blocks = std::move(*blocks);
    chooseBlock(m_shown ? std::optional(m_shown->row.id) : std::nullopt);
}

void BlockPage::chooseBlock(std::optional<Id<Block>> wanted)
{
    if (m_blocks.empty()) {
        m_shown.reset();
        m_ahead->forget();
        if (!isBeside()) offerStart(false);
        return;
    }
    const QDate today = m_context.clock.today();
    auto row = std::ranges::find_if(m_blocks, [&](const Row<Block>& one) { return wanted && one.id == *wanted; });
    const bool same = row != m_blocks.end();
    // The one that runs, else the next, else the last.
    if (!same) row = std::ranges::find_if(m_blocks, [&](const Row<Block>& one) { return endOf(one.value) > today; });
    if (row == m_blocks.end()) row = std::prev(m_blocks.end());
    const std::size_t last = row->value.weeks.empty() ? 0 : row->value.weeks.size() - 1;
    const std::size_t now = weekOfBlock(row->value, today).value_or(row->value.start > today ? 0 : last);
    showBlock(*row, same && m_shown ? std::min(m_shown->weekIndex, last) : now);
}

QDate BlockPage::firstOpen() const
{
    const QDate today = m_context.clock.today();
    return std::ranges::binary_search(m_record->log.sessionDates, today) ? today.addDays(1) : today;
}

void BlockPage::showBlock(const Row<Block>& row, std::size_t week)
{
    const QDate today = m_context.clock.today();
    const PlanCursor before = m_shown && m_shown->row.id == row.id ? places()->cursor() : PlanCursor();
    auto shown = std::make_shared<BlockShown>(
        BlockShown{.record = m_record,
                   .row = row,
                   .totals = blockTotals({row.value, m_record->log, m_record->library, today, format::wording()}),
                   .done = plannedBesideDone(m_record->log, row.value, today),
                   .pins = m_pins[*m_athlete],
                   .weekIndex = week,
                   .today = today,
                   .firstOpen = firstOpen(),
                   .editable = !m_context.book.isReadOnly()});
    m_shown = std::move(shown);
    lookAhead();
    const bool isElsewhere = isBeside() || (m_states->currentWidget() == m_start && m_start->isVisible());
    if (!isElsewhere) m_states->setCurrentIndex(1);
    fillChoice();
    showViews();
    const QDate date = before.date.isValid()                                 ? before.date
                       : m_shown->hasWeek() && !m_shown->week().days.empty() ? m_shown->week().days.front().date
                                                                             : QDate();
    goTo(date, before.slot ? std::optional(before.slot->slot) : std::nullopt);
}

void BlockPage::showViews()
{
    m_strip->show(m_shown);
    m_grid->show(m_shown);
    m_list->show(m_shown);
    m_side->show(m_shown);
    showHeading();
    sayCursor();
    Q_EMIT actionsChanged();
}

void BlockPage::showHeading()
{
    if (!m_shown->hasWeek()) return m_heading->setText(tr("This block has no weeks yet."));
    const QString words = weekWords(m_shown->block(), m_shown->weekIndex);
    const QDate date = places()->cursor().date;
    const bool isDay = places() == m_list && date.isValid();
    m_heading->setText(isDay ? format::shortDay(date) + QStringLiteral(" · ") + words : words);
}

void BlockPage::showWeek(std::size_t week)
{
    if (!m_shown || week >= m_shown->block().weeks.size()) return;
    const PlanCursor at = places()->cursor();
    const std::size_t slot = at.slot ? at.slot->slot : 0;
    const qint64 days = kDaysOfPlanWeek * (static_cast<qint64>(week) - static_cast<qint64>(m_shown->weekIndex));
    auto shown = std::make_shared<BlockShown>(*m_shown);
    shown->weekIndex = week;
    m_shown = std::move(shown);
    showViews();
    QDate date = at.date.isValid() ? at.date.addDays(days) : QDate();
    if (!dayOn(m_shown->block(), date) && !m_shown->week().days.empty()) date = m_shown->week().days.front().date;
    goTo(date, slot);
}

void BlockPage::fillChoice()
{
    const QSignalBlocker quiet(m_blockChoice);
    m_blockChoice->clear();
    for (const Row<Block>& row : m_blocks) {
        const QString words = blockWords(row.value);
        m_blockChoice->addItem(fontMetrics().elidedText(words, Qt::ElideRight, kChoiceWidth - kChoiceFrame));
        m_blockChoice->setItemData(m_blockChoice->count() - 1, format::plainToolTip(words), Qt::ToolTipRole);
        if (row.id == m_shown->row.id) m_blockChoice->setCurrentIndex(m_blockChoice->count() - 1);
    }
    m_blockChoice->setFixedWidth(kChoiceWidth);
    m_blockChoice->setToolTip(m_blockChoice->currentData(Qt::ToolTipRole).toString());
}

void BlockPage::hint(const QString& text)
{
    m_hint->setText(text);
    m_states->setCurrentIndex(0);
    Q_EMIT actionsChanged();
}

void BlockPage::offerStart(bool canLeave)
{
    if (m_context.book.isReadOnly())
        return hint(tr("No block is planned for %1. This book can only be read.")
                        .arg(format::person(m_record->log.athlete.value.name)));
    const auto templates = m_context.book.blocks().templates();
    std::vector<int> usual = usualWeekdays(m_record->log, m_context.clock.today());
    if (usual.empty()) usual = {1, 3, 5};
    const QString intro = canLeave ? QString()
                                   : tr("No block is planned for %1 yet. A block is some weeks of sessions with an "
                                        "aim: what is planned here stands on "
                                        "the sheets, and what the review decides lands here.")
                                         .arg(format::person(m_record->log.athlete.value.name));
    m_start->offer({*m_athlete, blockSources(m_blocks, templates.value_or(std::vector<Row<BlockTemplate>>()), usual),
                    usualStart(m_blocks, firstOpen()), tr("Block %1").arg(m_blocks.size() + 1), intro, canLeave});
    m_states->setCurrentWidget(m_start);
    Q_EMIT actionsChanged();
    if (canLeave) m_start->takeFocus();
}

void BlockPage::leaveStart()
{
    if (!m_shown) return;
    m_states->setCurrentIndex(1);
    takeFocus();
    Q_EMIT actionsChanged();
}

BesideWeek* BlockPage::beside() const
{
    return qobject_cast<BesideWeek*>(m_states->currentWidget());
}

void BlockPage::openBeside(BesideWeek* panel)
{
    m_blocksBefore = m_blocks.size();
    m_states->setCurrentWidget(panel);
    Q_EMIT actionsChanged();
    panel->takeFocus();
}

void BlockPage::openForMany()
{
    m_many->open(usualStart({}, m_context.clock.today()));
    openBeside(m_many);
}

void BlockPage::openLoads()
{
    m_loads->open(*m_athlete, m_shown->row, m_shown->library());
    openBeside(m_loads);
}

void BlockPage::openProposal()
{
    ProposalQuestion question{*m_athlete, usualStart(m_blocks, firstOpen()), tr("Block %1").arg(m_blocks.size() + 1),
                              m_record};
    if (m_shown) question.pinned = m_shown->pins.slotsOf(m_shown->block(), m_shown->weekIndex);
    if (m_shown && m_shown->block().start >= m_shown->firstOpen) question.instead = m_shown->row;
    m_proposed->open(std::move(question));
    openBeside(m_proposed);
}

void BlockPage::leaveBeside(const QString& done)
{
    m_states->setCurrentIndex(1);
    const bool hasNew = m_blocks.size() > m_blocksBefore;
    if (hasNew)
        chooseBlock(std::ranges::max_element(m_blocks, {}, [](const auto& row) { return row.id.value(); })->id);
    else if (!m_shown)
        chooseBlock({});
    takeFocus();
    Q_EMIT actionsChanged();
    if (!done.isEmpty()) Q_EMIT said(done);
}

void BlockPage::start(const Block& block)
{
    std::set<Id<Block>> before;
    for (const Row<Block>& row : m_blocks) before.insert(row.id);
    m_states->setCurrentIndex(1);
    if (!store(addBlock(block))) {
        m_states->setCurrentWidget(m_start);
        m_start->say(line());
        return;
    }
    const auto made = std::ranges::find_if(m_blocks, [&](const Row<Block>& row) { return !before.contains(row.id); });
    if (made != m_blocks.end()) showBlock(*made, 0);
    takeFocus();
}

void BlockPage::goTo(QDate date, std::optional<std::size_t> slot)
{
    if (!m_shown || !date.isValid()) return;
    const auto week = weekOfBlock(m_shown->block(), date);
    if (week && *week != m_shown->weekIndex) showWeek(*week);
    places()->goTo(date, slot);
}

void BlockPage::say(const QString& text, bool isProblem)
{
    QPalette colours = m_line->palette();
    colours.setColor(QPalette::WindowText, isProblem ? themeColours(palette()).alarm : themeColours(palette()).quiet);
    m_line->setPalette(colours);
    m_line->setText(text);
}

QString BlockPage::line() const
{
    return m_line->text();
}

}  // namespace steelyard
