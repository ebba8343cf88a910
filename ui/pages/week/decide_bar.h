// The coach's answer to one flag, given in place: act (which action), watch (until which day) or dismiss (why).
//
//   bar.open(DecisionKind::Watch, flag.actions, today);   // Enter stores, Escape leaves
//   connect(&bar, &DecideBar::decided, ...);
#pragma once

#include "core/domain/decision.h"

#include <QtWidgets/QWidget>

class QComboBox;
class QDateEdit;
class QLabel;
class QLineEdit;
class QPushButton;
class QStackedWidget;

namespace steelyard {

// What the bar asks for; the page adds lifter, line, rule and day.
struct FlagAnswer {
    DecisionKind kind = DecisionKind::Act;
    QString action;
    std::optional<QDate> until;
    QString reason;
};

class DecideBar : public QWidget {
    Q_OBJECT

public:
    explicit DecideBar(QWidget* parent = nullptr);
    void open(DecisionKind kind, const QStringList& actions, QDate today);

Q_SIGNALS:
    void decided(const steelyard::FlagAnswer& answer);
    void left();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void store();

    DecisionKind m_kind = DecisionKind::Act;
    QLabel* m_lead;
    QStackedWidget* m_fields;
    QComboBox* m_action;
    QDateEdit* m_until;
    QLineEdit* m_reason;
    QPushButton* m_store;
    QLabel* m_problem;
};

}  // namespace steelyard
