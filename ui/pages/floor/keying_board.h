// The rows of a session on screen, and the stops at which the cursor rests: how the day after the last session was, each
// exercise's rows and its ratings, the end.
//
//   board->build(desk.get(), readOnly);                  // null: nobody
//   connect(board, &KeyingBoard::stopReached, this, [this](const KeyingStop& stop) { … });
//   board->focusStop(stop);
//
// It shows what the desk has and says what is typed; what becomes of that is decided by whoever owns it (keying_view.h).
#pragma once

#include "core/book/keying_desk.h"

#include <QtWidgets/QScrollArea>

class QPushButton;
class QVBoxLayout;

namespace steelyard {

class KeyingBlock;
class KeyingRowWidget;
class RatingRow;

struct KeyingStop {
    enum class Kind { DayAfter, Row, Rating, End };
    Kind kind = Kind::End;
    std::size_t exercise = 0;  // DayAfter: which question
    std::size_t row = 0;
    friend bool operator==(const KeyingStop&, const KeyingStop&) = default;

    // Absent: not in a row.
    [[nodiscard]] std::optional<KeyingPlace> place() const;
    [[nodiscard]] bool isAtExercise() const { return kind == Kind::Row || kind == Kind::Rating; }
};

class KeyingBoard final : public QScrollArea {
    Q_OBJECT

public:
    explicit KeyingBoard(QWidget* parent = nullptr);

    void build(const KeyingDesk* desk, bool readOnly);
    // What the desk has now. Where there are rows more or less everything is built anew; what is half typed stays in its row.
    void showDesk();
    void setEnd(const QString& text);

    [[nodiscard]] std::vector<KeyingStop> stops() const;
    [[nodiscard]] bool has(const KeyingStop& stop) const { return widgetAt(stop) != nullptr; }
    [[nodiscard]] KeyingRowWidget* row(KeyingPlace at) const;
    // Typed, and not in the book.
    [[nodiscard]] std::vector<KeyingPlace> drafts() const;
    // A stop that isn't there is the end.
    void focusStop(const KeyingStop& stop);
    void markCurrent(const KeyingStop& stop);

Q_SIGNALS:
    void stopReached(const steelyard::KeyingStop& stop);
    void edited(steelyard::KeyingPlace at);
    void entered(steelyard::KeyingPlace at, steelyard::Watched watched);
    // Up and Down in a row.
    void leaving(steelyard::KeyingPlace at, int step);
    // The keyboard went elsewhere.
    void abandoned(steelyard::KeyingPlace at);
    void suggestionTaken(steelyard::KeyingPlace at);
    void rated(const steelyard::KeyingStop& stop, const steelyard::ExerciseRating& rating);
    void stepped(int step);
    void restSkipped(const steelyard::KeyingStop& stop);
    void ended();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void dropContent();
    void addDayAfter(QVBoxLayout* column);
    void addBlock(QVBoxLayout* column, std::size_t exercise);
    void addEnd(QVBoxLayout* column);
    void connectRow(KeyingPlace at);
    void connectRatings(RatingRow* ratings, const KeyingStop& stop);
    [[nodiscard]] bool isAsTheDesk() const;
    void buildAnew();
    [[nodiscard]] QWidget* widgetAt(const KeyingStop& stop) const;

    const KeyingDesk* m_desk = nullptr;
    bool m_readOnly = false;
    KeyingStop m_marked;
    QString m_endText;
    std::vector<RatingRow*> m_dayAfter;
    std::vector<KeyingBlock*> m_blocks;
    QPushButton* m_end = nullptr;
};

}  // namespace steelyard
