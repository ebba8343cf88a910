#include "ui/charts/panels_spec.h"

#include <algorithm>
#include <limits>

namespace steelyard {

int PanelsSpec::columns() const
{
    int columns = 1;
    for (const PlotPanel& panel : panels) columns = std::max(columns, panel.column + 1);
    return columns;
}

void setTimeAxis(PanelsSpec& spec, QDate from, QDate to, const PanelsOptions& options)
{
    const qint64 margin = std::max<qint64>(4, from.daysTo(to) / 40);
    const QDate first = from.addDays(-margin);
    const QDate last = to.addDays(margin);
    spec.low = chartDay(first);
    spec.high = chartDay(last);
    spec.ticks.clear();
    for (const DateTick& tick : dateTicks(first, last, options.ticks, options.locale))
        spec.ticks.push_back({chartDay(tick.date), tick.label});
}

void setValueAxis(PlotPanel& panel, double low, double high, int most, const QLocale& locale, double smallestStep)
{
    const ChartAxis axis = niceAxis(low, high, most, smallestStep);
    panel.low = axis.low;
    panel.high = axis.high;
    panel.ticks.clear();
    for (const double tick : axis.ticks) panel.ticks.push_back({tick, locale.toString(tick, 'f', axis.decimals)});
}

void setWordAxis(PlotPanel& panel, const QStringList& words)
{
    panel.low = -0.3;
    panel.high = static_cast<double>(words.size()) - 0.1;
    panel.ticksInside = true;
    panel.ticks.clear();
    for (qsizetype i = 0; i < words.size(); ++i)
        panel.ticks.push_back({static_cast<double>(words.size() - 1 - i), words[i]});
}

std::vector<std::vector<QPointF>> runsOf(const std::vector<PanelPoint>& points, double gap)
{
    std::vector<std::vector<QPointF>> runs;
    double last = -std::numeric_limits<double>::infinity();
    for (const PanelPoint& point : points) {
        if (point.x - last > gap) runs.emplace_back();
        runs.back().emplace_back(point.x, point.y);
        last = point.x;
    }
    std::erase_if(runs, [](const auto& run) { return run.size() < 2; });
    return runs;
}

void addDeloads(PanelsSpec& spec, const std::vector<Row<Block>>& blocks)
{
    for (const Row<Block>& row : blocks)
        for (std::size_t week = 0; week < row.value.weeks.size(); ++week) {
            if (row.value.weeks[week].kind != WeekKind::Deload) continue;
            const double from = chartDay(row.value.start.addDays(7 * static_cast<qint64>(week)));
            const PanelShade shade{std::max(from, spec.low), std::min(from + 7, spec.high)};
            if (shade.from < shade.to) spec.shades.push_back(shade);
        }
}

}  // namespace steelyard
