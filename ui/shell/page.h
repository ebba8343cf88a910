// One place of the window, by job: Week, Lifter, Block, Floor. The shell makes every page once for an opened book and takes it
// down with the book, so a page may keep references to what UiContext holds.
//
//   class LifterPage final : public Page { ... explicit LifterPage(const UiContext&, QWidget* parent = nullptr); };
//
// A page never includes another page: it asks the shell through the signals below. Actions of a page stand in the one
// table of actions (ui/shell/actions.cpp) with the page's key in `where`; the shell makes menu entries and shortcuts and
// calls perform().
#pragma once

#include "core/storage/transaction.h"

#include <QtWidgets/QWidget>

namespace steelyard {

class Page : public QWidget {
    Q_OBJECT

public:
    using QWidget::QWidget;

    // Stable word: `--page`, settings, the action table. "week", "lifter", "block", "floor".
    [[nodiscard]] virtual QString key() const = 0;
    // As the tab says it.
    [[nodiscard]] virtual QString title() const = 0;
    // The roster's selection. Called on every change and when the page is made, whether or not the page is in sight.
    virtual void showAthlete(std::optional<Id<Athlete>> athlete) = 0;
    // A line of the athlete shown last. Pages without lines ignore it.
    virtual void showLine(Id<LiftLine> line) { Q_UNUSED(line) }
    // Design a trial of a line of the athlete shown last, because of a flag of that rule (empty: none). Only one page can.
    virtual void startTrial(Id<LiftLine> line, const QString& rule)
    {
        Q_UNUSED(line)
        Q_UNUSED(rule)
    }
    // Key a session of the athlete shown last. Only one page can.
    virtual void keySession(QDate day) { Q_UNUSED(day) }
    // After a commit, undo and redo included.
    virtual void bookChanged(const Changes& changes) = 0;
    // The page was brought to the front: put the keyboard where the work is.
    virtual void takeFocus() { setFocus(); }

    [[nodiscard]] virtual bool canPerform(const QString& action) const
    {
        Q_UNUSED(action)
        return false;
    }
    virtual void perform(const QString& action) { Q_UNUSED(action) }

Q_SIGNALS:
    // Select this lifter in the roster; every page follows.
    void athleteRequested(steelyard::Id<steelyard::Athlete> athlete);
    // Next (+1) or previous (-1) lifter of the roster as it is sorted and filtered now.
    void neighbourRequested(int step);
    // Open this line on the Lifter page.
    void lineRequested(steelyard::Id<steelyard::Athlete> athlete, steelyard::Id<steelyard::LiftLine> line);
    // Design a trial of this line on the Lifter page, because of a flag of that rule.
    void trialRequested(steelyard::Id<steelyard::Athlete> athlete, steelyard::Id<steelyard::LiftLine> line,
                        const QString& rule);
    // Key that day's session on the Floor page.
    void keyingRequested(steelyard::Id<steelyard::Athlete> athlete, QDate day);
    // An action of the table, by id: "file.import".
    void actionRequested(const QString& action);
    // What canPerform() answers may have changed.
    void actionsChanged();
    // A quiet word for the status line.
    void said(const QString& text);
};

}  // namespace steelyard
