// A row of small cells for ratings: a digit fills a cell and goes on to the next.
//
//   auto* row = new RatingRow(afterExercise(), parent);
//   row->setMuscles(muscleChoices(library, exercise));
//   row->setRating(rating);
//   connect(row, &RatingRow::rated, this, [this](const ExerciseRating& rating) { store(rating); });
//
// Keys: 0 to 9 and x for ten fill and go on; Enter and Right go on, Left goes back; Backspace and Del empty the cell; the
// letter of a joint goes to its cell; where a muscle is asked for, letters find it (t: the target) and a digit, Enter or full stop
// takes it. Full stop (or a comma, which stands in its place on some keypads) skips all that is left; Up and Down leave the row.
// Every filled cell is told at once.
#pragma once

#include "core/keying/rating_cells.h"

#include <QtWidgets/QWidget>

namespace steelyard {

class RatingRow final : public QWidget {
    Q_OBJECT

public:
    RatingRow(std::span<const RatingCell> cells, QString title, QWidget* parent = nullptr);
    void setMuscles(std::vector<MuscleChoice> muscles);
    void setRating(const ExerciseRating& rating);
    void setReadOnly(bool readOnly) { m_readOnly = readOnly; }
    [[nodiscard]] const ExerciseRating& rating() const { return m_rating; }
    // The first cell without a value, else the first.
    void begin();
    [[nodiscard]] RatingCell currentCell() const { return m_cells[m_current]; }
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
    void rated(const steelyard::ExerciseRating& rating);
    // Past the last cell (+1) or back (-1).
    void left(int step);
    // All that is left of this, and of what is asked together with it.
    void restSkipped();
    void focused();

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] QFont titleFont() const;
    [[nodiscard]] QString cellHead(std::size_t cell) const;
    [[nodiscard]] int wantedWidth(std::size_t cell) const;
    [[nodiscard]] QRect cellRect(std::size_t cell) const;
    [[nodiscard]] QString valueText(RatingCell cell) const;
    void paintCell(QPainter& painter, std::size_t cell) const;
    void go(std::size_t cell);
    void goOn();
    void put(std::optional<int> score);
    void takeLetter(const QString& letter);
    void takeMuscle();
    void tell();

    std::span<const RatingCell> m_cells;
    QString m_title;
    std::vector<MuscleChoice> m_muscles;
    ExerciseRating m_rating;
    std::size_t m_current = 0;
    QString m_typed;  // letters of a muscle that is being found
    bool m_readOnly = false;
};

}  // namespace steelyard
