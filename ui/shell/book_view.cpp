#include "ui/shell/book_view.h"

#include "core/book/book.h"
#include "ui/format/people.h"
#include "ui/pages/first_run/empty_book_page.h"
#include "ui/shell/actions.h"
#include "ui/shell/pages.h"
#include "ui/shell/place_tabs.h"
#include "ui/shell/roster_pane.h"
#include "ui/shell/theme.h"

#include <QtWidgets/QLabel>
#include <QtWidgets/QSplitter>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

QFrame* makeHairline(QWidget* parent)
{
    auto* line = new QFrame(parent);
    line->setFixedHeight(1);
    line->setAutoFillBackground(true);
    QPalette palette = line->palette();
    palette.setColor(QPalette::Window, themeColours(palette).hairline);
    line->setPalette(palette);
    return line;
}

}  // namespace

BookView::BookView(const UiContext& context, QWidget* parent)
    : QWidget(parent),
      m_context(context),
      m_model(context.book, context.reviews),
      m_layers(new QStackedWidget(this)),
      m_empty(new EmptyBookPage(context.book.isReadOnly(), this)),
      m_splitter(new QSplitter(this)),
      m_roster(new RosterPane(m_model, this)),
      m_tabs(new PlaceTabs(this)),
      m_stack(new QStackedWidget(this)),
      m_pages(makePages(context, m_stack))
{
    readPeople(format::arePeopleInitials());
    auto* right = new QWidget(this);
    auto* column = new QVBoxLayout(right);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_tabs);
    column->addWidget(makeHairline(right));
    column->addWidget(m_stack, 1);
    m_splitter->addWidget(m_roster);
    m_splitter->addWidget(right);
    m_splitter->setStretchFactor(1, 1);
    m_splitter->setChildrenCollapsible(false);
    m_splitter->setHandleWidth(7);
    m_layers->addWidget(m_splitter);
    m_layers->addWidget(m_empty);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    if (m_context.book.isReadOnly()) layout->addWidget(makeBanner());
    layout->addWidget(m_layers, 1);

    for (Page* page : m_pages) connectPage(page);
    connect(m_tabs, &PlaceTabs::placeChosen, this, &BookView::showPage);
    connect(m_roster, &RosterPane::athleteChosen, this, [this](std::optional<Id<Athlete>> athlete) {
        for (Page* page : m_pages) page->showAthlete(athlete);
        Q_EMIT actionsChanged();
    });
    connect(m_roster, &RosterPane::leftSearch, this, [this] { currentPage()->takeFocus(); });
    connect(m_empty, &EmptyBookPage::actionRequested, this, &BookView::actionRequested);
    connect(&m_model, &QAbstractItemModel::modelReset, this, &BookView::switchEmpty);
    m_subscription = m_context.book.hub().subscribe([this](const Changes& changes) { bookChanged(changes); });
    for (Page* page : m_pages) page->showAthlete(m_roster->chosen());
    showPage(0);
    switchEmpty();
}

void BookView::connectPage(Page* page)
{
    m_stack->addWidget(page);
    const ActionRow* row = findAction(QStringLiteral("view.") + page->key());
    m_tabs->addPlace(page->title(), row ? row->shortcut : QString());
    connect(page, &Page::athleteRequested, m_roster, &RosterPane::choose);
    connect(page, &Page::neighbourRequested, m_roster, &RosterPane::step);
    connect(page, &Page::actionsChanged, this, &BookView::actionsChanged);
    connect(page, &Page::actionRequested, this, &BookView::actionRequested);
    connect(page, &Page::said, this, &BookView::said);
    connect(page, &Page::lineRequested, this, [this](Id<Athlete> athlete, Id<LiftLine> line) {
        m_roster->choose(athlete);
        for (Page* each : m_pages) each->showLine(line);
        showPlace(QStringLiteral("lifter"));
    });
    connect(page, &Page::trialRequested, this, [this](Id<Athlete> athlete, Id<LiftLine> line, const QString& rule) {
        m_roster->choose(athlete);
        showPlace(QStringLiteral("lifter"));
        for (Page* each : m_pages) each->startTrial(line, rule);
    });
    connect(page, &Page::keyingRequested, this, [this](Id<Athlete> athlete, QDate day) {
        m_roster->choose(athlete);
        showPlace(QStringLiteral("floor"));
        for (Page* each : m_pages) each->keySession(day);
    });
}

QWidget* BookView::makeBanner()
{
    const QString holder = m_context.book.holder();
    auto* banner = new QLabel(
        holder.isEmpty()
            ? tr("This book can only be read: its file or folder is protected. Nothing you do here is stored.")
            : tr("This book can only be read: %1 has it open. Close it there, then open it here again.").arg(holder),
        this);
    banner->setObjectName(QStringLiteral("readOnlyBanner"));
    banner->setTextFormat(Qt::PlainText);
    banner->setWordWrap(true);
    banner->setContentsMargins(14, 6, 14, 6);
    banner->setAutoFillBackground(true);
    QPalette colours = banner->palette();
    colours.setColor(QPalette::Window, colours.color(QPalette::Button));
    colours.setColor(QPalette::WindowText, themeColours(colours).warm);
    banner->setPalette(colours);
    return banner;
}

void BookView::readPeople(bool initials)
{
    QStringList names;
    if (const auto athletes = m_context.book.athletes().all())
        for (const Row<Athlete>& athlete : *athletes) names << athlete.value.name;
    format::callPeople(initials, names);
}

void BookView::showInitials(bool initials)
{
    readPeople(initials);
    bookChanged({.roster = true});
    for (QWidget* each : findChildren<QWidget*>()) each->update();
}

void BookView::switchEmpty()
{
    m_layers->setCurrentIndex(m_model.rowCount() == 0 ? 1 : 0);
    Q_EMIT actionsChanged();
}

void BookView::bookChanged(const Changes& changes)
{
    if (changes.roster) readPeople(format::arePeopleInitials());
    if (changes.roster || !changes.athletes.empty()) m_model.readRoster();
    for (Page* page : m_pages) page->bookChanged(changes);
    Q_EMIT actionsChanged();
}

Page* BookView::currentPage() const
{
    return m_pages.at(static_cast<std::size_t>(std::max(0, m_stack->currentIndex())));
}

bool BookView::hasLifter() const
{
    return m_roster->chosen().has_value();
}

bool BookView::hasPlace(const QString& key) const
{
    return std::ranges::any_of(m_pages, [&](const Page* page) { return page->key() == key; });
}

void BookView::showPlace(const QString& key)
{
    for (std::size_t i = 0; i < m_pages.size(); ++i)
        if (m_pages[i]->key() == key) showPage(static_cast<int>(i));
}

void BookView::showPage(int index)
{
    m_stack->setCurrentIndex(index);
    m_tabs->setCurrent(index);
    currentPage()->takeFocus();
    Q_EMIT actionsChanged();
}

bool BookView::chooseLifter(const QString& name)
{
    const auto athlete = m_context.book.athletes().findByName(name);
    if (!athlete) return false;
    m_roster->choose(athlete->id);
    return m_roster->chosen() == athlete->id;
}

bool BookView::perform(const QString& action)
{
    const ActionRow* row = findAction(action);
    if (!row) return false;
    if (row->where == currentPage()->key() && !row->where.isEmpty()) {
        currentPage()->perform(action);
        return true;
    }
    if (action == QLatin1StringView("roster.search")) return m_roster->startSearch(), true;
    if (action == QLatin1StringView("roster.sort")) return m_roster->switchOrder(), true;
    if (action == QLatin1StringView("roster.next")) return m_roster->stepToUnfinished(), true;
    if (action == QLatin1StringView("roster.previous")) return m_roster->step(-1), true;
    const QString place = action.startsWith(QStringLiteral("view.")) ? action.mid(5) : QString();
    if (!hasPlace(place)) return false;
    showPlace(place);
    return true;
}

QByteArray BookView::layoutState() const
{
    return m_splitter->saveState();
}

void BookView::restoreLayout(const QByteArray& state)
{
    if (state.isEmpty() || !m_splitter->restoreState(state)) m_splitter->setSizes({380, 900});
}

}  // namespace steelyard
