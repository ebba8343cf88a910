#include "ui/pages/week/flag_list.h"

#include "ui/pages/week/flag_view.h"

#include <QtCore/QTimer>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {

FlagList::FlagList(QWidget* parent) : QScrollArea(parent), m_bar(new DecideBar(this))
{
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Flags"));
    m_bar->hide();
}

void FlagList::showReview(std::optional<AthleteReview> review, bool writable, const QString& note)
{
    const bool answers = isBarOpen() && chosen();
    const Flag answering = answers ? *chosen() : Flag();
    QWidget* keys = window()->focusWidget();  // taking the bar out takes the focus
    if (!keys || !m_bar->isAncestorOf(keys)) keys = nullptr;
    m_review = std::move(review);
    m_writable = writable;
    m_note = note;
    rebuild();
    if (answers) keepBarOpen(answering, keys);
    const int kept = m_chosen;
    m_chosen = -1;
    choose(kept);
}

// What is typed belongs to one flag: where that is gone, so is the answer to it.
void FlagList::keepBarOpen(const Flag& answering, QWidget* keys)
{
    const auto same = std::ranges::find_if(
        flags(), [&](const Flag& flag) { return flag.rule == answering.rule && flag.line == answering.line; });
    if (same == flags().end()) return closeBar();
    m_chosen = static_cast<int>(same - flags().begin());
    placeBar();
    m_bar->show();
    if (keys) keys->setFocus();
}

// The list is small (a handful of flags), so it is made anew; the bar is taken out first, because it stays.
void FlagList::rebuild()
{
    m_bar->setParent(this);
    m_bar->hide();
    m_views.clear();
    m_list = new QWidget;
    m_column = new QVBoxLayout(m_list);
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(0);
    if (m_review) {
        addFlags();
        addAnswered();
    }
    m_column->addStretch(1);
    setWidget(m_list);
}

std::span<const Flag> FlagList::flags() const
{
    return m_review ? std::span<const Flag>(m_review->flags) : std::span<const Flag>();
}

void FlagList::addNote(const QString& text)
{
    auto* label = new QLabel(text, m_list);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setContentsMargins(14, 10, 14, 10);
    m_column->addWidget(label);
}

void FlagList::addFlags()
{
    for (std::size_t i = 0; i < m_review->flags.size(); ++i) {
        const Flag& flag = m_review->flags[i];
        auto* view = new FlagView(flag, about(flag), m_list);
        view->setWritable(m_writable);
        for (const AnsweredFlag& earlier : m_review->returned)
            if (earlier.flag.rule == flag.rule && earlier.flag.line == flag.line) view->setEarlier(earlier.decision);
        connect(view, &FlagView::chosen, this, [this, i] { choose(static_cast<int>(i)); });
        connect(view, &FlagView::actionRequested, this, &FlagList::actionRequested);
        m_views.push_back(view);
        m_column->addWidget(view);
    }
    if (m_review->flags.empty() && !m_note.isEmpty()) addNote(m_note);
}

void FlagList::addAnswered()
{
    if (m_review->answered.empty()) return;
    const QString text = tr("%n flag(s) answered", nullptr, static_cast<int>(m_review->answered.size()));
    auto* fold = new QPushButton(
        QStringLiteral("%1 %2   E").arg(m_showAnswered ? QStringLiteral("▾") : QStringLiteral("▸"), text), m_list);
    fold->setFlat(true);
    fold->setStyleSheet(QStringLiteral("QPushButton { text-align: left; padding: 8px 14px; border: none; }"));
    connect(fold, &QPushButton::clicked, this, [this] { Q_EMIT actionRequested(QStringLiteral("week.answered")); });
    m_column->addWidget(fold);
    if (!m_showAnswered) return;
    for (const AnsweredFlag& answered : m_review->answered)
        m_column->addWidget(new FlagView(answered, about(answered.flag), m_list));
}

void FlagList::toggleAnswered()
{
    m_showAnswered = !m_showAnswered;
    showReview(std::optional(m_review), m_writable, QString(m_note));
}

void FlagList::forgetChoice()
{
    closeBar();
    m_chosen = 0;
}

void FlagList::choose(int index)
{
    const int wanted = m_views.empty() ? -1 : std::clamp(index, 0, static_cast<int>(m_views.size()) - 1);
    if (wanted != m_chosen && m_chosen >= 0) closeBar();
    m_chosen = wanted;
    for (std::size_t i = 0; i < m_views.size(); ++i) m_views[i]->setUnfolded(static_cast<int>(i) == m_chosen);
    if (m_chosen >= 0) bringIntoSight(m_views[static_cast<std::size_t>(m_chosen)]);
    Q_EMIT flagChosen();
}

const Flag* FlagList::chosen() const
{
    return m_chosen < 0 || m_chosen >= std::ssize(flags()) ? nullptr : &flags()[static_cast<std::size_t>(m_chosen)];
}

QString FlagList::about(const Flag& flag) const
{
    if (!flag.line) return tr("the whole of the training");
    const auto line = std::ranges::find(m_review->lines, *flag.line, &LineReview::id);
    if (line == m_review->lines.end()) return tr("a line that is no longer trained");
    return QStringLiteral("%1, %2, %3").arg(line->exercise, line->variant, line->grip);
}

void FlagList::placeBar()
{
    FlagView* view = m_views.at(static_cast<std::size_t>(m_chosen));
    view->setUnfolded(true);
    view->barPlace()->addWidget(m_bar);
    view->setAnswering(true);
}

void FlagList::openBar(DecisionKind kind, QDate today)
{
    if (!chosen() || !m_writable) return;
    placeBar();
    ++m_opening;
    m_bar->open(kind, chosen()->actions, today);
    bringIntoSight(m_views.at(static_cast<std::size_t>(m_chosen)));
}

void FlagList::closeBar()
{
    ++m_opening;
    m_bar->setParent(this);
    m_bar->hide();
    for (FlagView* view : m_views) view->setAnswering(false);
}

void FlagList::bringBarIntoSight()
{
    bringIntoSight(m_bar);
}

// Once the layout knows the new heights.
void FlagList::bringIntoSight(QWidget* widget)
{
    QTimer::singleShot(0, widget, [this, widget] { ensureWidgetVisible(widget, 0, 4); });
}

}  // namespace steelyard
