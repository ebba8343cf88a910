// One view of a lifter's record: what stands in the main part of the Lifter page while its tab is chosen. The page makes every
// view once, keeps the choice of lifter, line and session, and shows the view that is in sight only.
//
//   class CurveView final : public LifterView { ... };          // and one line in lifter_views.cpp
//
// Views know neither the page nor each other. The action that opens a view stands in the table of actions (ui/shell/actions.cpp)
// under action(); an empty state is the view's own business. Numbers in the lifter's unit, read from what is shown.
#pragma once

#include "ui/charts/chart_table.h"
#include "ui/pages/lifter/lifter_reading.h"

#include <QtWidgets/QWidget>

class QPainter;

namespace steelyard {

// What a view looks at. `line` is an index into the log's lines and valid.
struct ShownLine {
    std::shared_ptr<const LifterReading> lifter;
    std::size_t line = 0;
    QDate session;   // the one that is looked at, else the line's last
    int months = 0;  // back from the line's last session; 0: all
    QDate today;

    [[nodiscard]] const LineRecord& record() const { return lifter->log.lines[line]; }
    [[nodiscard]] const LineReading& reading() const { return lifter->readings[line]; }
    [[nodiscard]] MassUnit unit() const { return lifter->log.athlete.value.unit; }
    // Of `session`; -1: the line has no session.
    [[nodiscard]] int exposure() const;
    // The first day that is shown; absent: everything.
    [[nodiscard]] std::optional<QDate> from() const;
};

class LifterView : public QWidget {
    Q_OBJECT

public:
    using QWidget::QWidget;

    [[nodiscard]] virtual QString action() const = 0;  // "lifter.progress"
    [[nodiscard]] virtual QString title() const = 0;   // as the tab says it
    // Called when the view comes into sight and on every change while it is.
    virtual void show(const ShownLine& shown) = 0;
    // Out of sight, or nothing to show: stop what runs.
    virtual void leave() {}
    virtual void takeFocus() { setFocus(); }
    // False: no matter of one session, or in need of the room in which its sets stand.
    [[nodiscard]] virtual bool showsSession() const { return true; }
    // Another session of the same line is looked at.
    virtual void lookAt(int exposure) { Q_UNUSED(exposure) }
    // Go to everything that was done on a day.
    virtual void lookAtDay(QDate day) { Q_UNUSED(day) }

    // Actions of the table that are this view's alone, beside the one that opens it.
    [[nodiscard]] virtual bool can(const QString& action) const
    {
        Q_UNUSED(action)
        return false;
    }
    // True: another view in sight makes way for this one when the action is asked for.
    [[nodiscard]] virtual bool isAskedFor(const QString& action) const
    {
        Q_UNUSED(action)
        return false;
    }
    virtual void perform(const QString& action) { Q_UNUSED(action) }
    // The flag's rule for which the next action is asked; empty: none.
    virtual void setReason(const QString& rule) { Q_UNUSED(rule) }

    // The numbers behind what is drawn; no rows: there is nothing to show or copy.
    [[nodiscard]] virtual ChartTable table() const { return {}; }
    // What is drawn, as a widget that can be rendered to any painter; nullptr: a view of words.
    [[nodiscard]] virtual QWidget* drawing() const { return nullptr; }

Q_SIGNALS:
    void sessionLookedAt(int exposure);  // show its sets below
    void setsWanted(int exposure);       // go to its day in the logbook, to read and correct it
    void sessionWanted(int exposure);    // go to it on the chart of the progress
    void keyingWanted(QDate day);        // key that day's session of this lifter
    void lineStepped(int by);            // +1 next, -1 previous line
    void lineWanted(steelyard::Id<steelyard::LiftLine> line);
    void changed();     // table() and drawing() may be others now
    void canChanged();  // what can() answers may have changed
    void said(const QString& text);
};

}  // namespace steelyard
