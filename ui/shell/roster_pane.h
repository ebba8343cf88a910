// The roster at the left of every page: search, group, order, and one line a lifter.
#pragma once

#include "ui/models/roster_filter.h"
#include "ui/models/roster_model.h"

#include <QtWidgets/QWidget>

class QComboBox;
class QLabel;
class QLineEdit;
class QListView;

namespace steelyard {

class RosterPane : public QWidget {
    Q_OBJECT

public:
    explicit RosterPane(RosterModel& model, QWidget* parent = nullptr);

    [[nodiscard]] std::optional<Id<Athlete>> chosen() const { return m_chosen; }
    void choose(Id<Athlete> athlete);
    void step(int by);
    // To the next lifter below who isn't finished, from the top again after the last; when nobody else is left, as step(1).
    void stepToUnfinished();
    void startSearch();
    void switchOrder();
    void setOrder(RosterOrder order);
    [[nodiscard]] RosterOrder order() const { return m_filter.order(); }
    [[nodiscard]] int shownCount() const { return m_filter.rowCount(); }

Q_SIGNALS:
    void athleteChosen(std::optional<steelyard::Id<steelyard::Athlete>> athlete);
    // Enter in the search: on to the work.
    void leftSearch();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void followSelection(const QModelIndex& current);
    void restoreSelection();
    void chooseWorst();
    void readGroups();
    void sayCount();

    RosterModel& m_model;
    RosterFilter m_filter;
    QLineEdit* m_search;
    QComboBox* m_group;
    QComboBox* m_order;
    QListView* m_list;
    QLabel* m_count;
    std::optional<Id<Athlete>> m_chosen;
    bool m_restoring = false;
    bool m_chosenByCoach = false;  // else the worst lifter is chosen when the first review comes
};

}  // namespace steelyard
