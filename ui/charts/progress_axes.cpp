#include "ui/charts/progress_axes.h"

#include "ui/charts/progress_parts.h"

#include <algorithm>

namespace steelyard {
namespace {

constexpr double kRoomForLoads = 0.12;  // of the range of the repetitions

class AxisFinder {
public:
    AxisFinder(const ProgressSpec& spec, double low, double high) : m_spec(spec), m_low(low), m_high(high) {}
    [[nodiscard]] ChartAxis capacity() const;
    [[nodiscard]] ChartAxis reps() const;

private:
    [[nodiscard]] bool holds(double day) const { return day >= m_low && day <= m_high; }
    [[nodiscard]] bool holds(QDate day) const { return holds(chartDay(day)); }
    [[nodiscard]] std::vector<double> valuesOf(const PanelSpec& panel) const;
    void addSets(std::vector<double>& counts) const;

    const ProgressSpec& m_spec;
    double m_low;
    double m_high;
};

std::vector<double> AxisFinder::valuesOf(const PanelSpec& panel) const
{
    std::vector<double> values;
    values.reserve(panel.points.size());
    for (const ChartPoint& point : panel.points)
        if (point.beyond == Beyond::No && holds(point.date)) values.push_back(point.value);
    return values;
}

ChartAxis AxisFinder::capacity() const
{
    std::vector<double> values = valuesOf(m_spec.capacity);
    for (const auto* edge : {&m_spec.trendLow, &m_spec.trendHigh})
        for (const QPointF& point : *edge)
            if (holds(point.x())) values.push_back(point.y());
    for (const FanDay& day : m_spec.fan)
        if (holds(day.day)) values.insert(values.end(), {day.low.front(), day.high.front()});
    if (const auto& change = m_spec.realChange; change && holds(change->from))
        values.insert(values.end(), {change->low, change->high});
    if (values.empty()) values = {0, 1};
    const auto [low, high] = std::ranges::minmax(values);
    return niceAxis(low, high, m_spec.valueTicks);
}

// Sets stand on the scale too, but for those of a session that is beyond it, and those that would stretch it as far.
void AxisFinder::addSets(std::vector<double>& counts) const
{
    if (counts.empty()) return;
    const auto [least, most] = std::ranges::minmax(counts);
    for (const SetMark& set : m_spec.sets)
        for (const double value : {set.counted, set.reps})
            if (holds(set.date) && value >= least - kLeastRepReach && value <= most + kLeastRepReach)
                counts.push_back(value);
}

ChartAxis AxisFinder::reps() const
{
    std::vector<double> counts = valuesOf(m_spec.reps);
    if (const auto& next = m_spec.next; next && holds(next->date))
        counts.insert(counts.end(), {next->low80, next->high80});
    addSets(counts);
    if (counts.empty()) counts = {0, 1};
    const auto [least, most] = std::ranges::minmax(counts);
    // Room above keeps the points clear of the loads that are written there.
    const double room = std::max(0.5, kRoomForLoads * (most - least));
    return niceAxis(std::max(0.0, least - 1), most + room, m_spec.valueTicks + 1, 1);
}

}  // namespace

ProgressAxes progressAxes(const ProgressSpec& spec, double low, double high)
{
    const AxisFinder finder(spec, low, high);
    return {finder.capacity(), finder.reps()};
}

}  // namespace steelyard
