// How the Block place is put together, and which actions it takes when.
#include "ui/pages/block/block_page.h"

#include "core/book/book.h"
#include "ui/format/lift_words.h"
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
#include "ui/widgets/asked_line.h"
#include "ui/widgets/elided_label.h"
#include "ui/widgets/lift_chooser.h"

#include <QtGui/QShortcut>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QSplitter>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QToolButton>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

QToolButton* textButton(QWidget* parent, const QString& text, const QString& keys)
{
    auto* button = new QToolButton(parent);
    button->setText(text);
    button->setToolTip(keys);
    button->setAutoRaise(true);
    button->setFocusPolicy(Qt::NoFocus);
    return button;
}

}  // namespace

BlockPage::BlockPage(const UiContext& context, QWidget* parent) : Page(parent), m_context(context)
{
    setFocusPolicy(Qt::StrongFocus);
    m_states = new QStackedWidget(this);
    m_hint = new QLabel(this);
    m_hint->setTextFormat(Qt::PlainText);
    m_hint->setAlignment(Qt::AlignCenter);
    m_hint->setWordWrap(true);
    m_hint->setMargin(40);
    m_hint->setForegroundRole(QPalette::PlaceholderText);
    m_start = new BlockStart(this);
    m_states->addWidget(m_hint);
    m_states->addWidget(makeEditor());
    m_states->addWidget(m_start);
    m_loads = new BlockLoads(context, this);
    m_many = new BlockForMany(context, this);
    m_proposed = new BlockProposed(context, this);
    for (BesideWeek* panel : std::initializer_list<BesideWeek*>{m_loads, m_many, m_proposed}) {
        m_states->addWidget(panel);
        connect(panel, &BesideWeek::left, this, &BlockPage::leaveBeside);
    }
    connect(m_loads, &BlockLoads::canKeepChanged, this, &Page::actionsChanged);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->addWidget(m_states);
    connect(m_start, &BlockStart::made, this, &BlockPage::start);
    connect(m_start, &BlockStart::left, this, &BlockPage::leaveStart);
    m_back = new QShortcut(Qt::Key_Escape, this);
    m_back->setContext(Qt::WidgetWithChildrenShortcut);
    m_back->setEnabled(false);
    connect(m_back, &QShortcut::activated, this, [this] { m_chooser->goBack(); });
    connect(this, &Page::actionsChanged, this, [this] { m_back->setEnabled(!m_chooser->isHidden()); });
    hint(tr("Choose a lifter in the roster to plan their coming weeks."));
}

QLayout* BlockPage::makeTop()
{
    m_blockChoice = new QComboBox(this);
    m_blockChoice->setAccessibleName(tr("Block"));
    m_blockChoice->setFocusPolicy(Qt::ClickFocus);
    m_blockChoice->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_heading = new ElidedLabel(this);
    QFont bold = m_heading->font();
    bold.setBold(true);
    m_heading->setFont(bold);
    m_scopeButton = textButton(this, tr("Changes: this week"), tr("Key: W"));
    m_viewButton = textButton(this, tr("Day as a list"), tr("Key: D"));
    auto* top = new QHBoxLayout;
    top->setSpacing(10);
    top->addWidget(m_blockChoice);
    top->addWidget(m_heading, 1);
    top->addWidget(m_scopeButton);
    top->addWidget(m_viewButton);
    connect(m_blockChoice, &QComboBox::activated, this, [this](int row) {
        chooseBlock(m_blocks.at(static_cast<std::size_t>(row)).id);
        takeFocus();
    });
    connect(m_scopeButton, &QToolButton::clicked, this, &BlockPage::switchScope);
    connect(m_viewButton, &QToolButton::clicked, this, &BlockPage::switchView);
    return top;
}

QWidget* BlockPage::makeWeek()
{
    m_views = new QStackedWidget(this);
    m_grid = new BlockGrid(this);
    m_list = new BlockDayList(this);
    m_views->addWidget(m_grid);
    m_views->addWidget(m_list);
    connectView(m_grid);
    connectView(m_list);
    m_side = new BlockSide(this);
    connect(m_side, &BlockSide::placeWanted, this, [this](QDate date, std::optional<std::size_t> slot) {
        goTo(date, slot);
        takeFocus();
    });
    auto* split = new QSplitter(this);
    split->addWidget(m_views);
    split->addWidget(m_side);
    split->setStretchFactor(0, 1);
    split->setStretchFactor(1, 0);
    split->setSizes({760, 240});
    split->setChildrenCollapsible(false);
    return split;
}

QWidget* BlockPage::makeEditor()
{
    auto* editor = new QWidget(this);
    auto* column = new QVBoxLayout(editor);
    column->setContentsMargins(12, 8, 8, 4);
    column->setSpacing(6);
    column->addLayout(makeTop());
    m_strip = new WeekStrip(this);
    m_ahead = new LoadsAhead(m_context, this);
    connect(m_ahead, &LoadsAhead::reckoned, this, &BlockPage::sayHowItGoesOn);
    column->addWidget(m_strip);
    column->addWidget(m_ahead);
    column->addWidget(makeWeek(), 1);
    m_chooser = new LiftChooser(this);
    m_asked = new AskedLine(this);
    m_line = new QLabel(this);
    m_line->setTextFormat(Qt::PlainText);
    m_line->setWordWrap(true);
    m_line->setMinimumHeight(2 * fontMetrics().lineSpacing());
    m_line->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    column->addWidget(m_chooser);
    column->addWidget(m_asked);
    column->addWidget(m_line);
    connect(m_strip, &WeekStrip::weekChosen, this, [this](std::size_t week) {
        showWeek(week);
        takeFocus();
    });
    const auto back = [this] {
        takeFocus();
        sayCursor();
        Q_EMIT actionsChanged();
    };
    connect(m_chooser, &LiftChooser::left, this, back);
    connect(m_asked, &AskedLine::left, this, [this] {
        takeFocus();
        Q_EMIT actionsChanged();
    });
    return editor;
}

void BlockPage::connectView(BlockPlacesView* view)
{
    connect(view, &BlockPlacesView::cursorMoved, this, [this, view] {
        if (view != places() || !m_shown) return;
        showHeading();
        sayCursor();
        Q_EMIT actionsChanged();
    });
    connect(view, &BlockPlacesView::addWanted, this, [this] { perform(QStringLiteral("block.add")); });
    connect(view, &BlockPlacesView::doseTyped, this, &BlockPage::typed);
    connect(view, &BlockPlacesView::typingSaid, this,
            [this](const QString& problem) { problem.isEmpty() ? sayCursor() : say(problem, true); });
    connect(view, &BlockPlacesView::typingEnded, this, [this] {
        if (std::exchange(m_later, false)) {
            readBlocks();
            read();
        }
        Q_EMIT actionsChanged();
    });
    connect(view, &BlockPlacesView::carried, this, [this](int days, std::size_t before, bool copied) {
        if (m_shown && m_shown->editable) apply(carryDeed(days, before, copied, choice()));
    });
}

void BlockPage::sayCursor()
{
    if (!m_shown) return;
    sayHowItGoesOn();
    const PlanCursor at = places()->cursor();
    if (!at.date.isValid()) return say({});
    const Slot* slot = at.slot ? slotAt(m_shown->block(), *at.slot) : nullptr;
    if (!slot) {
        const bool open = m_shown->isOpen(at.date);
        return say(isDayOff(m_shown->block(), at.date) ? tr("A day off.")
                   : open                              ? tr("A or Enter puts a lift in here.")
                                                       : tr("This day has passed and stays as it was planned."));
    }
    QStringList words{wholeLiftName(liftOf(m_shown->block(), *slot), m_shown->library()), doseWords(*slot),
                      progressionTitle(*slot)};
    if (m_shown->isPinned(*at.slot)) words << kPinShape + tr(" fixed");
    if (!slot->note.isEmpty()) words << slot->note;
    bool broken = false;
    for (const BrokenLimit& one : m_shown->totals.broken)
        if (one.week == at.slot->week && one.day == at.slot->day && one.slot == at.slot->slot) {
            words << kLimitShape + QStringLiteral(" ") + one.sentence;
            broken = true;
        }
    if (!m_shown->isOpen(at.date)) words << tr("passed");
    say(words.join(QStringLiteral(" · ")), broken);
}

void BlockPage::sayHowItGoesOn()
{
    if (!m_shown) return;
    const PlanCursor at = places()->cursor();
    const SlotForecast* today = at.slot ? m_ahead->at(*at.slot) : nullptr;
    m_side->showSlot(at.slot ? slotAt(m_shown->block(), *at.slot) : nullptr, today ? &today->load : nullptr);
}

bool BlockPage::isAsking() const
{
    return !m_chooser->isHidden() || !m_asked->isHidden() || places()->isTyping();
}

bool BlockPage::canPerform(const QString& action) const
{
    if (!m_athlete) return false;
    if (m_job.isRunning() && !m_record) return !m_context.book.isReadOnly();
    if (!m_record) return false;
    if (isBeside()) return action == QLatin1StringView("block.lock") && beside() == m_loads && m_loads->canKeep();
    const bool starting = m_states->currentWidget() == m_start;
    if (action == QLatin1StringView("block.new")) return !starting && !m_context.book.isReadOnly();
    if (action == QLatin1StringView("block.many") || action == QLatin1StringView("block.propose"))
        return !m_context.book.isReadOnly() && (!m_shown || !isAsking());
    if (!m_shown || starting || isAsking()) return false;
    const bool looks =
        action == QLatin1StringView("block.day") || action == QLatin1StringView("block.scope")
        || action == QLatin1StringView("block.nextWeek") || action == QLatin1StringView("block.previousWeek")
        || action == QLatin1StringView("block.nextLimit") || action == QLatin1StringView("block.previousLimit")
        || action == QLatin1StringView("block.choose");
    if (looks) return true;
    if (action == QLatin1StringView("block.copy")) return !choice().chosen.empty();
    if (!m_shown->editable) return false;
    if (action == QLatin1StringView("block.pin")) return !choice().chosen.empty();
    if (isAboutSlots(action)) return !choice().places().empty();
    if (action == QLatin1StringView("block.add")) return m_shown->isOpen(choice().cursor.date);
    if (action == QLatin1StringView("block.paste")) return !m_copied.empty() && m_shown->isOpen(choice().cursor.date);
    return m_shown->hasWeek() || action == QLatin1StringView("block.delete");
}

void BlockPage::perform(const QString& action)
{
    if (!m_record) {
        m_wanted = action;
        return;
    }
    if (!canPerform(action)) return;
    if (action == QLatin1StringView("block.new")) return offerStart(m_shown != nullptr);
    if (action == QLatin1StringView("block.many")) return openForMany();
    if (action == QLatin1StringView("block.propose")) return openProposal();
    if (beside() == m_loads) return m_loads->keep();
    const PlanChoice now = choice();
    if (auto deed = deedOf(action, now)) return apply(std::move(*deed));
    if (const auto asking = askingOf(action, now)) return ask(*asking);
    performHere(action);
}

void BlockPage::performHere(const QString& action)
{
    const auto is = [&](const char* name) { return action == QLatin1StringView(name); };
    if (is("block.add")) chooseLift(false, false);
    if (is("block.replace")) chooseLift(true, false);
    if (is("block.replaceAll")) chooseLift(true, true);
    if (is("block.edit")) (void)places()->startTyping();
    if (is("block.copy")) copy(false);
    if (is("block.cut")) copy(true);
    if (is("block.paste")) paste();
    if (is("block.pin")) togglePin();
    if (is("block.scope")) switchScope();
    if (is("block.day")) switchView();
    if (is("block.nextWeek")) showWeek(m_shown->weekIndex + 1);
    if (is("block.previousWeek") && m_shown->weekIndex > 0) showWeek(m_shown->weekIndex - 1);
    if (is("block.nextLimit")) stepLimit(1);
    if (is("block.previousLimit")) stepLimit(-1);
    if (is("block.template")) askTemplate();
    if (is("block.forecast")) openLoads();
    if (is("block.delete")) removeWhole();
    if (is("block.choose")) m_blockChoice->setFocus(Qt::ShortcutFocusReason);
}

}  // namespace steelyard
