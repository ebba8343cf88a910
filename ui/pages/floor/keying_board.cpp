#include "ui/pages/floor/keying_board.h"

#include "ui/format/format.h"
#include "ui/pages/floor/keying_block.h"
#include "ui/pages/floor/keying_edit.h"
#include "ui/pages/floor/keying_row.h"
#include "ui/pages/floor/rating_row.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kRoomAround = 90;  // so that what follows is in sight before it is reached

}  // namespace

std::optional<KeyingPlace> KeyingStop::place() const
{
    return kind == Kind::Row ? std::optional(KeyingPlace{exercise, row}) : std::nullopt;
}

KeyingBoard::KeyingBoard(QWidget* parent) : QScrollArea(parent)
{
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFocusPolicy(Qt::NoFocus);
    setAccessibleName(tr("The session's rows"));
}

void KeyingBoard::dropContent()
{
    m_blocks.clear();
    m_dayAfter.clear();
    m_end = nullptr;
    m_marked = {};
    QWidget* old = takeWidget();
    if (!old) return;
    // It may be one of these that is just being worked on; and what leaves says nothing more.
    for (QWidget* widget : old->findChildren<QWidget*>()) widget->blockSignals(true);
    old->hide();
    old->deleteLater();
}

void KeyingBoard::build(const KeyingDesk* desk, bool readOnly)
{
    dropContent();
    m_desk = desk;
    m_readOnly = readOnly;
    auto* content = new QWidget;
    auto* column = new QVBoxLayout(content);
    column->setContentsMargins(0, 0, 4, 8);
    column->setSpacing(0);
    if (m_desk) {
        addDayAfter(column);
        for (std::size_t i = 0; i < m_desk->sheet().exercises.size(); ++i) addBlock(column, i);
        addEnd(column);
    }
    column->addStretch(1);
    setWidget(content);
}

void KeyingBoard::addDayAfter(QVBoxLayout* column)
{
    if (!m_desk->dayAfter()) return;
    const QDate session = m_desk->dayAfter()->session;
    auto* head =
        new QLabel(tr("The day after %1 %2: how sore, how weak?").arg(format::weekday(session), format::date(session)));
    head->setTextFormat(Qt::PlainText);
    head->setContentsMargins(10, 6, 8, 2);
    column->addWidget(head);
    for (const NextDayQuestion& question : m_desk->dayAfter()->questions) {
        auto* row = new RatingRow(dayAfter(), question.exercise);
        row->setRating(question.rating);
        connectRatings(row, {KeyingStop::Kind::DayAfter, m_dayAfter.size(), 0});
        m_dayAfter.push_back(row);
        column->addWidget(row);
    }
}

void KeyingBoard::addBlock(QVBoxLayout* column, std::size_t exercise)
{
    auto* block = new KeyingBlock(*m_desk, exercise);
    m_blocks.push_back(block);
    column->addWidget(block);
    for (std::size_t row = 0; row < block->rowCount(); ++row) connectRow({exercise, row});
    if (block->ratings()) connectRatings(block->ratings(), {KeyingStop::Kind::Rating, exercise, 0});
}

void KeyingBoard::addEnd(QVBoxLayout* column)
{
    m_end = new QPushButton(m_endText);
    m_end->setToolTip(tr("Key: Enter"));
    m_end->setAutoDefault(true);
    m_end->installEventFilter(this);
    connect(m_end, &QPushButton::clicked, this, &KeyingBoard::ended);
    auto* end = new QHBoxLayout;
    end->setContentsMargins(10, 12, 8, 4);
    end->addWidget(m_end);
    end->addStretch(1);
    column->addLayout(end);
}

void KeyingBoard::connectRow(KeyingPlace at)
{
    row(at)->setReadOnly(m_readOnly);
    KeyingEdit* edit = row(at)->edit();
    connect(edit, &KeyingEdit::focused, this, [this, at] {
        Q_EMIT stopReached({KeyingStop::Kind::Row, at.exercise, at.row});
    });
    connect(edit, &QLineEdit::textEdited, this, [this, at] { Q_EMIT edited(at); });
    connect(edit, &KeyingEdit::entered, this, [this, at](Watched watched) { Q_EMIT entered(at, watched); });
    connect(edit, &KeyingEdit::moved, this, [this, at](int step) { Q_EMIT leaving(at, step); });
    connect(edit, &KeyingEdit::leftByFocus, this, [this, at] { Q_EMIT abandoned(at); });
    connect(edit, &KeyingEdit::suggestionTaken, this, [this, at] { Q_EMIT suggestionTaken(at); });
}

void KeyingBoard::connectRatings(RatingRow* ratings, const KeyingStop& stop)
{
    ratings->setReadOnly(m_readOnly);
    connect(ratings, &RatingRow::focused, this, [this, stop] { Q_EMIT stopReached(stop); });
    connect(ratings, &RatingRow::left, this, &KeyingBoard::stepped);
    connect(ratings, &RatingRow::restSkipped, this, [this, stop] { Q_EMIT restSkipped(stop); });
    connect(ratings, &RatingRow::rated, this,
            [this, stop](const ExerciseRating& rating) { Q_EMIT rated(stop, rating); });
}

bool KeyingBoard::isAsTheDesk() const
{
    const auto& exercises = m_desk->sheet().exercises;
    return std::ranges::equal(m_blocks, exercises, [](const KeyingBlock* block, const KeyingExercise& exercise) {
        return block->lift() == exercise.lift && block->rowCount() == exercise.rows.size();
    });
}

void KeyingBoard::buildAnew()
{
    struct Draft {
        LiftLine lift;
        int number;
        QString text;
    };
    std::vector<Draft> kept;
    for (const KeyingPlace& at : drafts())
        kept.push_back({m_blocks[at.exercise]->lift(), row(at)->number(), row(at)->edit()->text()});
    build(m_desk, m_readOnly);
    for (const Draft& draft : kept)
        for (KeyingBlock* block : m_blocks)
            for (std::size_t i = 0; i < block->rowCount(); ++i)
                if (block->lift() == draft.lift && block->row(i)->number() == draft.number)
                    block->row(i)->edit()->setText(draft.text);
}

void KeyingBoard::showDesk()
{
    if (!isAsTheDesk()) return buildAnew();
    for (KeyingBlock* block : m_blocks) block->showDesk();
    for (std::size_t i = 0; i < m_dayAfter.size(); ++i)
        m_dayAfter[i]->setRating(m_desk->dayAfter()->questions[i].rating);
}

void KeyingBoard::setEnd(const QString& text)
{
    m_endText = text;
    if (m_end) m_end->setText(text);
}

std::vector<KeyingStop> KeyingBoard::stops() const
{
    using enum KeyingStop::Kind;
    std::vector<KeyingStop> all;
    all.reserve(m_dayAfter.size());
    for (std::size_t i = 0; i < m_dayAfter.size(); ++i) all.push_back({DayAfter, i, 0});
    for (std::size_t i = 0; i < m_blocks.size(); ++i) {
        for (std::size_t row = 0; row < m_blocks[i]->rowCount(); ++row) all.push_back({Row, i, row});
        // Nobody is asked how an exercise was that wasn't done.
        if (m_blocks[i]->ratings() && m_desk->exercise(i).anyStored()) all.push_back({Rating, i, 0});
    }
    all.push_back({End, 0, 0});
    return all;
}

KeyingRowWidget* KeyingBoard::row(KeyingPlace at) const
{
    return m_blocks[at.exercise]->row(at.row);
}

std::vector<KeyingPlace> KeyingBoard::drafts() const
{
    std::vector<KeyingPlace> places;
    for (const KeyingBlock* block : m_blocks)
        for (std::size_t row = 0; row < block->rowCount(); ++row)
            if (block->row(row)->hasDraft()) places.push_back({block->exercise(), row});
    return places;
}

QWidget* KeyingBoard::widgetAt(const KeyingStop& stop) const
{
    const bool hasBlock = stop.exercise < m_blocks.size();
    switch (stop.kind) {
    case KeyingStop::Kind::DayAfter:
        return stop.exercise < m_dayAfter.size() ? m_dayAfter[stop.exercise] : nullptr;
    case KeyingStop::Kind::Row:
        return hasBlock && stop.row < m_blocks[stop.exercise]->rowCount()
                   ? m_blocks[stop.exercise]->row(stop.row)->edit()
                   : nullptr;
    case KeyingStop::Kind::Rating:
        return hasBlock ? m_blocks[stop.exercise]->ratings() : nullptr;
    case KeyingStop::Kind::End:
        return m_end;
    }
    return nullptr;
}

void KeyingBoard::focusStop(const KeyingStop& stop)
{
    QWidget* widget = widgetAt(stop);
    if (!widget) widget = m_end;
    if (!widget) return;
    widget->setFocus(Qt::OtherFocusReason);
    if (isVisible()) ensureWidgetVisible(widget, 0, kRoomAround);
}

void KeyingBoard::markCurrent(const KeyingStop& stop)
{
    if (const auto before = m_marked.place(); before && widgetAt(m_marked)) row(*before)->setCurrent(false);
    m_marked = stop;
    if (const auto place = stop.place(); place && widgetAt(stop)) row(*place)->setCurrent(true);
}

bool KeyingBoard::eventFilter(QObject* watched, QEvent* event)
{
    if (watched != m_end) return QScrollArea::eventFilter(watched, event);
    if (event->type() == QEvent::FocusIn) Q_EMIT stopReached({});
    const bool isKey = event->type() == QEvent::KeyPress || event->type() == QEvent::ShortcutOverride;
    if (!isKey) return false;
    const auto* key = static_cast<QKeyEvent*>(event);
    if (event->type() == QEvent::KeyPress) {
        if (key->key() == Qt::Key_Up) Q_EMIT stepped(-1);
        return key->key() == Qt::Key_Up || key->key() == Qt::Key_Down;
    }
    // A letter typed too much is no key of the page: N would walk away.
    event->setAccepted(key->modifiers() == Qt::NoModifier && !key->text().isEmpty() && key->key() != Qt::Key_Escape);
    return event->isAccepted();
}

}  // namespace steelyard
