// The line in which a set is typed. It shows where a line can't be read, lets the window's keys pass that a text field would
// take, and says which way it was left.
//
//   connect(edit, &KeyingEdit::entered, this, [this](Watched watched) { store(edit->text(), watched); });
//
// Keys: Enter and Ctrl+Enter accept, Up and Down leave, Right in an empty line takes the plan over to change it, Tab takes what
// was suggested.
#pragma once

#include "core/keying/keyed_line.h"

#include <QtWidgets/QLineEdit>

namespace steelyard {

class KeyingEdit final : public QLineEdit {
    Q_OBJECT

public:
    explicit KeyingEdit(QWidget* parent = nullptr);
    // Underlines the place; absent: nothing is wrong.
    void setProblem(const std::optional<NotationProblem>& problem);

Q_SIGNALS:
    void entered(steelyard::Watched watched);
    void moved(int step);
    void suggestionTaken();
    void focused();
    // The keyboard went elsewhere inside the window: by mouse or by another page's key.
    void leftByFocus();

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] bool isOwnShortcut(const QKeyEvent& key) const;

    std::optional<NotationProblem> m_problem;
};

}  // namespace steelyard
