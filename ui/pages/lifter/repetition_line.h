// The line in which the repetitions of one set are typed one after the other, with what was understood below it.
//
//   line->open(repetitions, set, {full, 90});
//   connect(line, &RepetitionLine::entered, this, [&](const std::vector<Repetition>& typed) { ... });
//
// Keys: Enter takes over what is understood, else the place of the problem is selected; Escape leaves.
#pragma once

#include "core/keying/repetition_notation.h"

#include <QtWidgets/QWidget>

class QLabel;
class QLineEdit;

namespace steelyard {

class RepetitionLine final : public QWidget {
    Q_OBJECT

public:
    explicit RepetitionLine(QWidget* parent = nullptr);
    // Those that are known already, else as many as the set says.
    void open(std::span<const Repetition> known, const SetEntry& set, const RepetitionLineContext& context);
    [[nodiscard]] QLineEdit* edit() const { return m_edit; }
    [[nodiscard]] QString reading() const;

Q_SIGNALS:
    // Sound, and at least one.
    void entered(const std::vector<steelyard::Repetition>& repetitions);
    void left();

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void look();
    void take();

    RepetitionLineContext m_context;
    QLineEdit* m_edit = nullptr;
    QLabel* m_reading = nullptr;
};

}  // namespace steelyard
