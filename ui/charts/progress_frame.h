// What stands around and over the lines of a progress chart: grid, ticks, words and the ruler's rows (ProgressFrame, below
// the lines), and the marks of sets and sessions with the one that is looked at (ProgressMarks, above them).
#pragma once

#include "ui/charts/chart_panel.h"
#include "ui/charts/chart_view.h"
#include "ui/charts/progress_axes.h"
#include "ui/charts/time_window.h"

#include <QtGui/QFont>
#include <QtWidgets/QGraphicsItem>

#include <algorithm>

namespace steelyard {

// Shared by the items; owned by the view.
struct ProgressScene : ChartSelection {  // of exposures
    ProgressSpec spec;
    ChartColours colours;
    QFont font;
    QFont small;
    QLocale locale;
    QRectF bounds;
    double stripTop = 0;     // of the blocks
    double datesTop = 0;     // of the date labels
    double trialTop = 0;     // of the letters of trials
    double decisionTop = 0;  // of the decisions
    double notesTop = 0;     // of the notes
    double keyTop = 0;       // of the key's lines
    TimeWindow window;
    std::vector<DateTick> dates;  // within the window
    ProgressAxes axes;            // of what is in the window
    const ChartPanel* capacity = nullptr;
    const ChartPanel* reps = nullptr;

    // From session to session of a line that is trained twice a week, in pixels.
    [[nodiscard]] double sessionRoom() const
    {
        constexpr double kDaysBetweenSessions = 3.5;
        return reps->plot().width() / std::max(1.0, window.width()) * kDaysBetweenSessions;
    }
    [[nodiscard]] bool inSight(QDate day) const { return window.holds(chartDay(day)); }
    // Along the time axis, in pixels.
    [[nodiscard]] double x(QDate day) const { return reps->at(chartDay(day), 0).x(); }
};

class ProgressFrame final : public QGraphicsItem {
public:
    explicit ProgressFrame(const ProgressScene& scene) : m_scene(scene) { setZValue(-10); }
    void boundsChange() { prepareGeometryChange(); }
    [[nodiscard]] QRectF boundingRect() const override { return m_scene.bounds; }
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

private:
    void paintPanel(QPainter& painter, const ChartPanel& panel, const QString& title, const ChartAxis& axis) const;
    void paintDates(QPainter& painter) const;
    const ProgressScene& m_scene;
};

class ProgressMarks final : public QGraphicsItem {
public:
    explicit ProgressMarks(const ProgressScene& scene) : m_scene(scene) { setZValue(10); }
    void boundsChange() { prepareGeometryChange(); }
    [[nodiscard]] QRectF boundingRect() const override { return m_scene.bounds; }
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

private:
    void paintPointed(QPainter& painter, int exposure, bool selected) const;
    void paintBeyond(QPainter& painter, const ChartPanel& panel, const ChartPoint& point) const;
    void paintLoads(QPainter& painter) const;
    void paintSets(QPainter& painter) const;
    [[nodiscard]] bool onScale(int reps) const;
    void paintLoadNames(QPainter& painter) const;
    void paintNext(QPainter& painter) const;
    const ProgressScene& m_scene;
};

}  // namespace steelyard
