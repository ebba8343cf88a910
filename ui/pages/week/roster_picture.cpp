#include "ui/pages/week/roster_picture.h"

#include "core/edits/edits.h"
#include "ui/format/format.h"
#include "ui/format/people.h"
#include "ui/models/two_line_delegate.h"
#include "ui/pages/week/roster_courses.h"
#include "ui/pages/week/roster_picture_bar.h"
#include "ui/pages/week/roster_picture_delegate.h"
#include "ui/pages/week/roster_picture_model.h"
#include "ui/pages/week/roster_picture_order.h"
#include "ui/prompt/prompter.h"
#include "ui/widgets/asked_line.h"
#include "ui/widgets/list_completer.h"

#include <QtGui/QClipboard>
#include <QtGui/QGuiApplication>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QScrollBar>
#include <QtWidgets/QTableView>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>
#include <array>

namespace steelyard {
namespace {

constexpr QLatin1StringView kPictureActions("week.picture.");
// In average characters; the lines and the sets share what is left, in these parts.
constexpr std::array kColumnCharacters{22, 14, 0, 0, 16, 19};
constexpr double kLinesShare = 0.6;

// Letters are keys of actions, also those that are off just now; names are found with the filter.
class PictureTable final : public QTableView {
public:
    using QTableView::QTableView;
    void keyboardSearch(const QString& search) override { Q_UNUSED(search) }
};

constexpr int columnOf(PictureColumn column)
{
    return static_cast<int>(column);
}

}  // namespace

RosterPicture::RosterPicture(const UiContext& context, QWidget* parent)
    : QWidget(parent),
      m_context(context),
      m_kept(context.settings),
      m_courses(new RosterCourses(context, this)),
      m_model(new RosterPictureModel(context.reviews, this)),
      m_order(new RosterPictureOrder(this)),
      m_bar(new RosterPictureBar(m_kept, this)),
      m_question(new AskedLine(this)),
      m_table(new PictureTable(this)),
      m_empty(new QLabel(this))
{
    m_order->setSourceModel(m_model);
    build();
    setUpTable();
    connect(&m_context.reviews, &ReviewStore::reviewsChanged, this, &RosterPicture::readReviews);
    connect(m_bar, &RosterPictureBar::filterChanged, this, &RosterPicture::applyFilter);
    connect(m_bar, &RosterPictureBar::left, this, &RosterPicture::takeFocus);
    connect(m_question, &AskedLine::left, this, &RosterPicture::takeFocus);
}

void RosterPicture::build()
{
    m_empty->setTextFormat(Qt::PlainText);
    m_empty->setWordWrap(true);
    m_empty->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_empty->setContentsMargins(14, 10, 14, 10);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addWidget(m_bar);
    layout->addWidget(m_question);
    layout->addWidget(m_table, 1);
    layout->addWidget(m_empty, 1);
}

void RosterPicture::setUpTable()
{
    m_table->setModel(m_order);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setShowGrid(false);
    m_table->setTabKeyNavigation(false);
    m_table->setFrameShape(QFrame::NoFrame);
    m_table->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    m_table->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_table->setAccessibleName(tr("Picture of the roster"));
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(pictureRowHeight(m_table->font()));
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setSortIndicatorShown(true);
    m_table->horizontalHeader()->setSectionsClickable(true);
    m_table->setItemDelegate(new TwoLineDelegate(RosterPictureModel::DetailRole, m_table));
    const auto paintWith = [this](PictureColumn column, RosterPictureDelegate::CellPainter painter) {
        m_table->setItemDelegateForColumn(columnOf(column), new RosterPictureDelegate(std::move(painter), m_table));
    };
    paintWith(PictureColumn::Lines,
              [this](QPainter& painter, const QRect& cell, const AthleteReview& review, const CellInk& ink) {
                  paintMainLines(painter, cell, review, ink,
                                 [&](const LineReview& line) { return m_courses->of(review.athlete, line.id); });
              });
    connect(m_courses, &RosterCourses::arrived, m_table->viewport(), qOverload<>(&QWidget::update));
    paintWith(PictureColumn::Sets, paintWeeklySets);
    paintWith(PictureColumn::Sessions, paintSessions);
    sortBy(columnOf(PictureColumn::Attention), false);
    connect(m_table->horizontalHeader(), &QHeaderView::sectionClicked, this, [this](int column) {
        sortBy(column, column == m_order->sortColumn() && m_order->sortOrder() == Qt::AscendingOrder);
    });
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this, [this] {
        const AthleteReview* review = chosenReview();
        if (m_restoring || !review || review->athlete == m_athlete) return;
        m_athlete = review->athlete;
        Q_EMIT athleteChosen(*m_athlete);
    });
    connect(m_table, &QTableView::activated, this, [this] {
        if (const AthleteReview* review = chosenReview()) Q_EMIT athleteOpened(review->athlete);
    });
}

void RosterPicture::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    if (m_stale) readReviews();
    restoreRow();
}

void RosterPicture::hideEvent(QHideEvent* event)
{
    QWidget::hideEvent(event);
    m_courses->want({});
}

void RosterPicture::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    shareWidth();
}

void RosterPicture::shareWidth()
{
    const int character = m_table->fontMetrics().averageCharWidth();
    int left = width() - m_table->verticalScrollBar()->sizeHint().width();
    for (int column = 0; column < m_model->columnCount(); ++column) {
        const int wanted = kColumnCharacters.at(static_cast<std::size_t>(column)) * character;
        if (wanted > 0) m_table->setColumnWidth(column, wanted);
        left -= wanted;
    }
    const int lines = std::max(10 * character, static_cast<int>(left * kLinesShare));
    m_table->setColumnWidth(columnOf(PictureColumn::Lines), lines);
    m_table->setColumnWidth(columnOf(PictureColumn::Sets), std::max(10 * character, left - lines));
}

void RosterPicture::readReviews()
{
    m_stale = !isVisible();
    if (m_stale) return;
    m_restoring = true;  // the table empties for a moment
    const int at = m_table->verticalScrollBar()->value();
    m_model->readReviews();
    m_bar->readReviews(m_context.reviews.reviews());
    m_restoring = false;
    m_table->verticalScrollBar()->setValue(at);
    restoreRow();
    sayState();
}

// From the top of the list as it is sorted.
void RosterPicture::wantCourses()
{
    std::vector<Id<Athlete>> athletes;
    for (const AthleteReview* review : shownReviews()) athletes.push_back(review->athlete);
    m_courses->want(std::move(athletes));
}

void RosterPicture::applyFilter()
{
    m_restoring = true;
    m_order->setFilter(m_bar->filter());
    m_restoring = false;
    restoreRow();
    sayState();
}

void RosterPicture::showAthlete(std::optional<Id<Athlete>> athlete)
{
    m_athlete = athlete;
    if (isVisible()) restoreRow();
}

// The lifter who is chosen in the roster, when they are in sight; else no row, and nobody else becomes the chosen one.
void RosterPicture::restoreRow()
{
    const auto row = m_athlete ? m_model->rowOf(*m_athlete) : std::nullopt;
    const QModelIndex index = row ? m_order->mapFromSource(m_model->index(*row, 0)) : QModelIndex();
    m_restoring = true;
    m_table->setCurrentIndex(index);
    if (index.isValid()) m_table->scrollTo(index);
    m_restoring = false;
    Q_EMIT actionsChanged();
}

void RosterPicture::sayState()
{
    if (isVisible()) wantCourses();
    const int shown = m_order->rowCount();
    const bool ready = m_context.reviews.isReady();
    m_table->setVisible(shown > 0);
    m_empty->setVisible(shown == 0);
    m_empty->setText(ready ? tr("Here stands one row a lifter: how their lines go, sets a week, discomfort, sessions. "
                                "Nobody fits this filter; X shows everybody.")
                           : tr("Reading the records…"));
    const QString column = RosterPictureModel::columnTitle(m_order->sortColumn());
    m_bar->say(tr("%1 of %2 by %3   —   Enter opens, S sorts, T tags, R back")
                   .arg(QString::number(shown), QString::number(m_model->rowCount()), column.toLower()));
}

void RosterPicture::takeFocus()
{
    m_table->setFocus(Qt::OtherFocusReason);
    if (m_table->currentIndex().isValid() || m_order->rowCount() == 0) return;
    // Only now that the coach comes to the rows is somebody chosen.
    m_table->setCurrentIndex(m_order->index(0, 0));
}

const AthleteReview* RosterPicture::chosenReview() const
{
    const QModelIndex index = m_order->mapToSource(m_table->currentIndex());
    return index.isValid() ? m_model->review(index.row()) : nullptr;
}

std::vector<const AthleteReview*> RosterPicture::shownReviews() const
{
    std::vector<const AthleteReview*> shown;
    for (int row = 0; row < m_order->rowCount(); ++row)
        if (const AthleteReview* review = m_model->review(m_order->mapToSource(m_order->index(row, 0)).row()))
            shown.push_back(review);
    return shown;
}

void RosterPicture::sortBy(int column, bool turned)
{
    const Qt::SortOrder order = turned ? Qt::DescendingOrder : Qt::AscendingOrder;
    m_order->sort(column, order);
    m_table->horizontalHeader()->setSortIndicator(column, order);
    sayState();
}

void RosterPicture::sortNext()
{
    sortBy((m_order->sortColumn() + 1) % m_model->columnCount(), false);
    m_table->scrollTo(m_table->currentIndex());
}

bool RosterPicture::owns(const QString& action)
{
    return action.startsWith(kPictureActions);
}

bool RosterPicture::canPerform(const QString& action) const
{
    const QString deed = action.mid(kPictureActions.size());
    if (deed == QLatin1StringView("copy")) return m_order->rowCount() > 0;
    if (deed == QLatin1StringView("tags")) return chosenReview() != nullptr;
    if (deed == QLatin1StringView("keep") || deed == QLatin1StringView("everybody"))
        return m_bar->filter() != PictureFilter{};
    if (deed == QLatin1StringView("rename") || deed == QLatin1StringView("delete"))
        return m_kept.find(m_bar->filter()) != nullptr;
    if (deed == QLatin1StringView("kept")) return !m_kept.all().empty();
    return true;
}

void RosterPicture::perform(const QString& action)
{
    const QString deed = action.mid(kPictureActions.size());
    if (deed == QLatin1StringView("filter")) m_bar->startSearch();
    if (deed == QLatin1StringView("everybody")) m_bar->setFilter({});
    if (deed == QLatin1StringView("sort")) sortNext();
    if (deed == QLatin1StringView("turn")) sortBy(m_order->sortColumn(), m_order->sortOrder() == Qt::AscendingOrder);
    if (deed == QLatin1StringView("copy")) copyRows();
    if (deed == QLatin1StringView("tags")) changeTags();
    if (deed == QLatin1StringView("kept")) m_bar->openKept();
    if (deed == QLatin1StringView("keep")) keepFilter();
    if (deed == QLatin1StringView("rename")) renameFilter();
    if (deed == QLatin1StringView("delete")) deleteFilter();
}

void RosterPicture::copyRows()
{
    QGuiApplication::clipboard()->setText(toTabSeparated(pictureTable(*m_order)));
    Q_EMIT said(tr("%n row(s) are on the clipboard as a table.", nullptr, m_order->rowCount()));
}

void RosterPicture::readKept()
{
    m_bar->readKept();
    Q_EMIT actionsChanged();
}

void RosterPicture::keepFilter()
{
    const KeptFilter* known = m_kept.find(m_bar->filter());
    m_question->ask({tr("Keep this filter as"), known ? known->name : QString()}, [this](const QString& typed) {
        const QString name = typed.simplified();
        if (name.isEmpty()) return tr("A filter needs a name.");
        m_kept.keep(name, m_bar->filter());
        readKept();
        Q_EMIT said(tr("Kept: %1").arg(name));
        return QString();
    });
}

void RosterPicture::renameFilter()
{
    const QString before = m_kept.find(m_bar->filter())->name;
    m_question->ask({tr("New name of “%1”").arg(before), before}, [this, before](const QString& typed) {
        const QString name = typed.simplified();
        if (name.isEmpty()) return tr("A filter needs a name.");
        if (!m_kept.rename(before, name)) return tr("Another filter has this name.");
        readKept();
        return QString();
    });
}

// No question: what is shown stays as it is, and can be kept again.
void RosterPicture::deleteFilter()
{
    const QString name = m_kept.find(m_bar->filter())->name;
    m_kept.remove(name);
    readKept();
    Q_EMIT said(tr("The filter “%1” is deleted. Ctrl+S keeps it again.").arg(name));
}

void RosterPicture::changeTags()
{
    const AthleteReview* review = chosenReview();
    if (!review || m_context.book.isReadOnly()) return;
    QStringList known;
    for (const AthleteReview& each : m_context.reviews.reviews())
        for (const QString& tag : each.tags)
            if (!known.contains(tag)) known << tag;
    known.sort(Qt::CaseInsensitive);
    m_question->ask({tr("Tags of %1, separated by commas").arg(format::person(review->name)), tagText(review->tags),
                     new ListCompleter(known)},
                    [this, athlete = review->athlete](const QString& typed) { return storeTags(athlete, typed); });
}

QString RosterPicture::storeTags(Id<Athlete> athlete, const QString& typed)
{
    const auto tags = tagsFrom(typed);
    const Problems problems = validateTags(tags);
    if (!problems.empty()) return problems.front().text;
    auto known = m_context.book.athletes().find(athlete);
    if (!known) return known.error().what;
    if (known->value.tags == tags) return {};
    known->value.tags = tags;
    const auto stored = m_context.book.history().perform(changeAthlete(athlete, known->value));
    return stored ? QString() : stored.error().what;
}

}  // namespace steelyard
