// What a chart of several panels over one horizontal axis shows, as a value: small multiples of lines, points, bars, bands and
// words, side by side in columns that all repeat the axis. The widget (panels_chart.h) only draws it.
//
//   PanelsSpec spec;
//   setTimeAxis(spec, from, to, {.locale = locale});
//   spec.panels.push_back(panel);
//
// Units: those of the panels' titles. On a time axis x is chartDay(), so that days are equally wide; a chart of something
// else sets its own ticks. Invariants: series, bands and ticks lie within their panel's low and high; points are in order of
// x; a run has at least two points. What is drawn hollow is uncertain, unfinished or of lower rank: the view says which.
// A stop is a place on the axis that the cursor can stand on, with what there is to say of it.
#pragma once

#include "core/analysis/athlete_log.h"
#include "ui/charts/chart_axis.h"
#include "ui/charts/chart_table.h"

#include <QtCore/QPointF>

namespace steelyard {

struct PanelTick {
    double at = 0;
    QString label;
    friend bool operator==(const PanelTick&, const PanelTick&) = default;
};

// Told apart without colour.
enum class PanelShape { None, Disc, Square, Triangle, Diamond, Cross, Plus };
enum class PanelLine { None, Solid, Dash, Dot, DashDot };

struct PanelPoint {
    double x = 0;
    double y = 0;
    bool hollow = false;
    QString label = {};  // beside the mark
    friend bool operator==(const PanelPoint&, const PanelPoint&) = default;
};

struct PanelSeries {
    QString name = {};  // for the key or the direct label; empty: neither
    PanelShape shape = PanelShape::Disc;
    PanelLine line = PanelLine::None;
    int ink = 0;          // of the theme's data colours
    double thick = 1;     // of the line, in pixels
    bool direct = false;  // its name stands at its right end instead of in the key
    double barWidth = 0;  // in units of x; above 0: bars from 0 instead of marks
    std::vector<PanelPoint> points = {};
    std::vector<std::vector<QPointF>> runs = {};  // what the line joins
    std::vector<QPointF> bandLow = {};            // edges of a band around it, at the same x
    std::vector<QPointF> bandHigh = {};
    friend bool operator==(const PanelSeries&, const PanelSeries&) = default;
};

// A stretch of the panel's values that has a name.
struct PanelZone {
    double low = 0;
    double high = 0;
    QString label;
    bool filled = true;  // false: only the upper edge, as a line
    friend bool operator==(const PanelZone&, const PanelZone&) = default;
};

struct PlotPanel {
    QString title;  // with the unit: "capacity, kg"
    int column = 0;
    double weight = 1;  // its share of the column's height
    double low = 0;
    double high = 1;
    std::vector<PanelTick> ticks;
    bool ticksInside = false;  // words of rows, above their lines
    std::vector<PanelZone> zones = {};
    std::vector<PanelSeries> series = {};
    friend bool operator==(const PlotPanel&, const PlotPanel&) = default;
};

struct PanelShade {
    double from = 0;
    double to = 0;
    friend bool operator==(const PanelShade&, const PanelShade&) = default;
};

struct PanelStop {
    double x = 0;
    int exposure = -1;  // of the line that is looked at; -1: none
    QString words;
    friend bool operator==(const PanelStop&, const PanelStop&) = default;
};

struct PanelsSpec {
    double low = 0;
    double high = 1;
    std::vector<PanelTick> ticks;
    QString axisTitle;  // empty: dates say it themselves
    std::vector<PanelShade> shades;
    std::vector<PlotPanel> panels;
    std::vector<PanelStop> stops;  // in order of x
    QString summary;
    ChartTable table;
    [[nodiscard]] bool empty() const { return stops.empty(); }
    [[nodiscard]] int columns() const;
    friend bool operator==(const PanelsSpec&, const PanelsSpec&) = default;
};

struct PanelsOptions {
    QLocale locale = {};
    MassUnit unit = MassUnit::kg;
    std::optional<QDate> from = {};  // leave out what came before
    QDate asOf = {};                 // the time axis reaches to here; invalid: to the last session
    int ticks = 6;
};

// With a margin at both ends, so that nothing sits on the frame.
void setTimeAxis(PanelsSpec&, QDate from, QDate to, const PanelsOptions&);
// Nice numbers that take in both values.
void setValueAxis(PlotPanel&, double low, double high, int most, const QLocale&, double smallestStep = 0);
// One row for each word, the first on top, at values words.size() - 1 to 0.
void setWordAxis(PlotPanel&, const QStringList& words);
// Points joined in order, broken where x leaps by more than `gap`; a point by itself is no run.
[[nodiscard]] std::vector<std::vector<QPointF>> runsOf(const std::vector<PanelPoint>&, double gap);
// The planned deload weeks within the axis.
void addDeloads(PanelsSpec&, const std::vector<Row<Block>>&);

}  // namespace steelyard
