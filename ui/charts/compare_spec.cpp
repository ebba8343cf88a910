#include "ui/charts/compare_spec.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <array>
#include <set>

namespace steelyard {
namespace {

struct CompareText {
    Q_DECLARE_TR_FUNCTIONS(CompareText)
};

constexpr double kBreakDays = 60;      // a longer rest breaks the line
constexpr std::size_t kMostMarks = 9;  // on a line
constexpr std::array kMarkShapes{PanelShape::Disc,    PanelShape::Square, PanelShape::Triangle,
                                 PanelShape::Diamond, PanelShape::Cross,  PanelShape::Plus};
constexpr std::array kMarkLines{PanelLine::Solid, PanelLine::Dash, PanelLine::DashDot, PanelLine::Dot};

// A line that can be put in percent.
struct RelativeLine {
    const ComparedLine* line = nullptr;
    double referenceKg = 0;
    std::vector<TrendPoint> shown;  // within the stretch

    [[nodiscard]] double percent(double kg) const { return 100 * kg / referenceKg; }
    // What was known of it last on that day.
    [[nodiscard]] const TrendPoint* at(QDate day) const
    {
        const TrendPoint* found = nullptr;
        for (const TrendPoint& point : shown)
            if (point.date <= day) found = &point;
        return found;
    }
};

std::optional<double> referenceOf(const ComparedLine& line, QDate start)
{
    std::optional<double> reference;
    for (const TrendPoint& point : line.trend) {
        if (point.date > start) {
            if (!reference) reference = point.kg;
            break;
        }
        reference = point.date.daysTo(start) <= kReferenceDays ? std::optional(point.kg) : std::nullopt;
    }
    return reference && *reference > 0 ? reference : std::nullopt;
}

class CompareBuilder {
public:
    CompareBuilder(QDate start, const PanelsOptions& options) : m_start(start), m_options(options) {}

    void take(const std::vector<ComparedLine>& lines);
    [[nodiscard]] PanelsSpec build();

private:
    void addPanel();
    [[nodiscard]] PanelSeries seriesOf(std::size_t index) const;
    void addStops();
    [[nodiscard]] QString number(double value) const { return m_options.locale.toString(value, 'f', 1); }
    [[nodiscard]] QString day(QDate date) const { return m_options.locale.toString(date, QLocale::ShortFormat); }

    QDate m_start;
    const PanelsOptions& m_options;
    PanelsSpec m_spec;
    std::vector<RelativeLine> m_lines;
    std::set<QDate> m_days;
    QStringList m_leftOut;
};

void CompareBuilder::take(const std::vector<ComparedLine>& lines)
{
    for (const ComparedLine& line : lines) {
        RelativeLine relative{&line};
        for (const TrendPoint& point : line.trend)
            if (!m_options.from || point.date >= *m_options.from) relative.shown.push_back(point);
        const auto reference = referenceOf(line, m_start);
        if (!reference || relative.shown.empty()) {
            m_leftOut += line.name;
            continue;
        }
        relative.referenceKg = *reference;
        for (const TrendPoint& point : relative.shown) m_days.insert(point.date);
        m_lines.push_back(std::move(relative));
    }
}

PanelsSpec CompareBuilder::build()
{
    if (!m_lines.empty()) {
        setTimeAxis(m_spec, *m_days.begin(), *m_days.rbegin(), m_options);
        addPanel();
        addStops();
        m_spec.summary = CompareText::tr("%n line(s), each 100 % on %1.", nullptr, static_cast<int>(m_lines.size()))
                             .arg(day(m_start));
    }
    if (!m_leftOut.empty())
        m_spec.summary += u' '
                          + CompareText::tr("Without a capacity to start from, left out: %1.")
                                .arg(m_leftOut.join(QStringLiteral("; ")));
    return std::move(m_spec);
}

PanelSeries CompareBuilder::seriesOf(std::size_t index) const
{
    const RelativeLine& line = m_lines[index];
    PanelSeries series{
        .name = CompareText::tr("%1 %  %2").arg(number(line.percent(line.shown.back().kg)), line.line->name),
        .shape = kMarkShapes[index % kMarkShapes.size()],
        .line = kMarkLines[index % kMarkLines.size()],
        .ink = static_cast<int>(index),
        .thick = 1.5,
        .direct = true};
    std::vector<PanelPoint> all;
    for (const TrendPoint& point : line.shown) {
        const double x = chartDay(point.date);
        all.push_back({x, line.percent(point.kg)});
        series.bandLow.emplace_back(x, line.percent(point.low90Kg));
        series.bandHigh.emplace_back(x, line.percent(point.high90Kg));
    }
    series.runs = runsOf(all, kBreakDays);
    const std::size_t every = all.size() / kMostMarks + 1;
    for (std::size_t i = all.size(); i-- > 0;)
        if ((all.size() - 1 - i) % every == 0) series.points.push_back(all[i]);
    std::ranges::reverse(series.points);
    return series;
}

void CompareBuilder::addPanel()
{
    PlotPanel panel;
    panel.title = CompareText::tr("capacity, % of what it was on %1").arg(day(m_start));
    double low = 100;
    double high = 100;
    for (std::size_t i = 0; i < m_lines.size(); ++i) {
        panel.series.push_back(seriesOf(i));
        for (const QPointF& point : panel.series.back().bandLow) low = std::min(low, point.y());
        for (const QPointF& point : panel.series.back().bandHigh) high = std::max(high, point.y());
    }
    setValueAxis(panel, low, high, 7, m_options.locale);
    panel.zones.push_back({panel.low, 100, {}, false});
    m_spec.panels.push_back(std::move(panel));
}

void CompareBuilder::addStops()
{
    m_spec.table.header = {CompareText::tr("date")};
    for (const RelativeLine& line : m_lines) m_spec.table.header += CompareText::tr("%1, %").arg(line.line->name);
    for (const QDate date : m_days) {
        QStringList words;
        QStringList row{date.toString(Qt::ISODate)};
        for (const RelativeLine& line : m_lines) {
            const TrendPoint* point = line.at(date);
            row += point && point->date == date ? number(line.percent(point->kg)) : QString();
            if (point)
                words += CompareText::tr("%1: %2 % (%3 to %4)")
                             .arg(line.line->name, number(line.percent(point->kg)),
                                  number(line.percent(point->low90Kg)), number(line.percent(point->high90Kg)));
        }
        m_spec.stops.push_back({chartDay(date), -1, CompareText::tr("%1: %2").arg(day(date), words.join(u'\n'))});
        m_spec.table.rows.push_back(row);
    }
}

}  // namespace

std::optional<QDate> commonStart(const std::vector<ComparedLine>& lines, std::optional<QDate> from)
{
    std::optional<QDate> start;
    for (const ComparedLine& line : lines) {
        const auto first =
            std::ranges::find_if(line.trend, [&](const TrendPoint& at) { return !from || at.date >= *from; });
        if (first != line.trend.end()) start = std::max(start.value_or(first->date), first->date);
    }
    return start;
}

PanelsSpec buildCompareSpec(const std::vector<ComparedLine>& lines, std::optional<QDate> start,
                            const PanelsOptions& options)
{
    if (!start) return {};
    CompareBuilder builder(*start, options);
    builder.take(lines);
    return builder.build();
}

}  // namespace steelyard
