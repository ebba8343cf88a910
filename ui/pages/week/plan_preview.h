// What an action would do to the weeks ahead, before it is stored: what there is to choose (which lift, which grip, band,
// variant or day, how long), and each slot before and after. Where no slot carries it, the note for the next sheet.
//
//   preview.setAction(word);                        // says that it is reading
//   preview.setRecord(record, flag.line, today);    // later, from a job
//   preview.plan().block;   preview.note();
//
// It changes nothing itself. Keys: the fields are reached by Tab; Enter and Escape are left to the bar around it.
#pragma once

#include "core/planning/replan.h"
#include "core/book/plan_record.h"

#include <QtWidgets/QWidget>

#include <memory>

class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;

namespace steelyard {

class PlanPreview : public QWidget {
    Q_OBJECT

public:
    explicit PlanPreview(QWidget* parent = nullptr);

    // Forgets what it knew: another flag is answered.
    void clear();
    void setRecord(std::shared_ptr<const PlanRecord> record, std::optional<Id<LiftLine>> line, QDate today);
    void setAction(const QString& action);
    [[nodiscard]] bool isReady() const { return m_record != nullptr; }
    [[nodiscard]] const Replan& plan() const { return m_plan; }
    // For the sheet, as the coach left it; empty where the plan carries the action or nothing was written.
    [[nodiscard]] QString note() const;
    // In the order in which Tab goes through them.
    [[nodiscard]] std::vector<QWidget*> fields() const;

private:
    [[nodiscard]] ReplanInput input() const;
    [[nodiscard]] ReplanChoice chosen() const;
    void fillLifts();
    void fillChoices();
    void refresh();
    void showChanges();
    void showNote();
    void clearTable();

    std::shared_ptr<const PlanRecord> m_record;
    std::optional<LiftLine> m_line;  // the flag's
    QDate m_today;
    QString m_action;
    std::vector<LiftLine> m_lifts;
    std::vector<ReplanChoice> m_choices;
    Replan m_plan;

    QLabel* m_key;
    QComboBox* m_lift;
    QComboBox* m_choice;
    QComboBox* m_scope;
    QLineEdit* m_note;
    QLabel* m_says;
    QLabel* m_caution;
    QWidget* m_table;
    QGridLayout* m_grid;
};

}  // namespace steelyard
