// The whole roster as one picture: a row a lifter with their main lines as small multiples, sets a week against the aims,
// discomfort, sessions and how soon to look. Sorted by any column, filtered by what the coach asks, all of it by keys.
//
// Its rows follow the roster's selection, and moving in it moves the selection: who is chosen here is chosen everywhere.
// Actions: those of the table that begin with "week.picture.".
#pragma once

#include "ui/pages/week/kept_filters.h"
#include "ui/shell/context.h"

#include <QtWidgets/QWidget>

class QLabel;
class QTableView;

namespace steelyard {

class AskedLine;
class RosterCourses;
class RosterPictureBar;
class RosterPictureModel;
class RosterPictureOrder;

class RosterPicture final : public QWidget {
    Q_OBJECT

public:
    explicit RosterPicture(const UiContext& context, QWidget* parent = nullptr);

    void showAthlete(std::optional<Id<Athlete>> athlete);
    void takeFocus();
    // The rows in sight, in their order.
    [[nodiscard]] std::vector<const AthleteReview*> shownReviews() const;
    [[nodiscard]] static bool owns(const QString& action);
    [[nodiscard]] bool canPerform(const QString& action) const;
    void perform(const QString& action);

Q_SIGNALS:
    void athleteChosen(steelyard::Id<steelyard::Athlete> athlete);
    // Enter on a row.
    void athleteOpened(steelyard::Id<steelyard::Athlete> athlete);
    void actionsChanged();
    void said(const QString& text);

protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void build();
    void setUpTable();
    void shareWidth();
    void readReviews();
    void applyFilter();
    void wantCourses();
    void restoreRow();
    void sayState();
    void sortBy(int column, bool turned);
    void sortNext();
    void copyRows();
    void readKept();
    void keepFilter();
    void renameFilter();
    void deleteFilter();
    void changeTags();
    [[nodiscard]] QString storeTags(Id<Athlete> athlete, const QString& typed);
    [[nodiscard]] const AthleteReview* chosenReview() const;

    UiContext m_context;
    KeptFilters m_kept;
    std::optional<Id<Athlete>> m_athlete;
    bool m_restoring = false;
    bool m_stale = true;

    RosterCourses* m_courses;
    RosterPictureModel* m_model;
    RosterPictureOrder* m_order;
    RosterPictureBar* m_bar;
    AskedLine* m_question;
    QTableView* m_table;
    QLabel* m_empty;
};

}  // namespace steelyard
