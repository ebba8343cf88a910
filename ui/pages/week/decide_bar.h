// The coach's answer to one flag, given in place: act (which action, and what it does to the plan), watch (until which day)
// or dismiss (why).
//
//   bar.open(DecisionKind::Act, flag.actions, today);   // Enter stores, Escape leaves
//   bar.setRecord(record, flag.line);                   // to act: when it was read; Enter before that waits for it
//   connect(&bar, &DecideBar::decided, ...);
#pragma once

#include "core/edits/edits.h"
#include "core/book/plan_record.h"

#include <QtWidgets/QWidget>

#include <memory>

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
    QString reason;                         // Act: the note for the sheet
    std::optional<BlockChange> block = {};  // Act: where it lands
    int changedSlots = 0;
};

class PlanPreview;

class DecideBar : public QWidget {
    Q_OBJECT

public:
    explicit DecideBar(QWidget* parent = nullptr);
    void open(DecisionKind kind, const QStringList& actions, QDate today);
    void setRecord(std::shared_ptr<const PlanRecord> record, std::optional<Id<LiftLine>> line);
    void sayProblem(const QString& text);

Q_SIGNALS:
    void decided(const steelyard::FlagAnswer& answer);
    void left();

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void store();
    void storeAction();
    void fillActions(const QStringList& actions);
    void orderTabs(QWidget* last);

    QDate m_today;
    bool m_storeOnceRead = false;
    DecisionKind m_kind = DecisionKind::Act;
    QLabel* m_lead;
    QStackedWidget* m_fields;
    QComboBox* m_action;
    QDateEdit* m_until;
    QLineEdit* m_reason;
    QPushButton* m_store;
    QLabel* m_problem;
    PlanPreview* m_preview;
};

}  // namespace steelyard
