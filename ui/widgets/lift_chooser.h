// Chooses a lift in place: type to find, see what it means for the history, and take it.
//
//   chooser->choose(tr("Another variant, grip or standard"), {{lift, name, consequence}, …},
//                   [this](const LiftLine& lift) { … });
//
// Up and Down choose, Enter asks with the consequence in words, Enter again takes it, Escape goes back one step. Nothing stops.
#pragma once

#include "core/domain/logbook.h"

#include <QtWidgets/QFrame>

#include <functional>

class QLabel;
class QLineEdit;
class QListWidget;

namespace steelyard {

struct LiftChoice {
    LiftLine lift;
    QString name;
    QString consequence;  // what taking it means
};

class LiftChooser final : public QFrame {
    Q_OBJECT

public:
    explicit LiftChooser(QWidget* parent = nullptr);
    // `question` false: the first Enter takes it, because nothing is cut off.
    void choose(const QString& title, std::vector<LiftChoice> choices, bool question,
                std::function<void(const LiftLine&)> taken);
    // One step back; false: it wasn't open.
    bool goBack();

Q_SIGNALS:
    void left();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void filter();
    void showConsequence();
    void enter();
    [[nodiscard]] const LiftChoice* current() const;

    QLabel* m_title;
    QLineEdit* m_find;
    QListWidget* m_list;
    QLabel* m_consequence;
    std::vector<LiftChoice> m_choices;
    bool m_question = true;
    bool m_asked = false;
    std::function<void(const LiftLine&)> m_taken;
};

}  // namespace steelyard
