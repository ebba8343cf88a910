#include "ui/charts/progress_axes.h"
#include "ui/charts/progress_parts.h"
#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <set>

namespace steelyard {
namespace {

struct ProgressText {
    Q_DECLARE_TR_FUNCTIONS(ProgressText)
};

class ProgressBuilder {
public:
    ProgressBuilder(const ProgressSource& source, const ProgressOptions& options)
        : m_source(source), m_options(options), m_words(options)
    {}
    [[nodiscard]] ProgressSpec build();

private:
    [[nodiscard]] double shown(double kilograms) const { return m_words.shown(kilograms); }
    [[nodiscard]] QString number(double value, int decimals) const { return m_words.number(value, decimals); }
    [[nodiscard]] QString date(QDate day) const { return m_words.date(day); }
    [[nodiscard]] QString unit() const { return m_words.unit(); }
    [[nodiscard]] bool inside(QDate day) const { return day >= m_spec.from && day <= m_spec.to; }
    [[nodiscard]] bool hasNext() const { return m_options.nextSet && m_source.reading.next.has_value(); }
    [[nodiscard]] bool hasFan() const { return m_options.nextSet && !m_source.ahead.empty(); }
    [[nodiscard]] static PointKind kindOf(const ReadingPoint& point);
    void setTime();
    void addPoints();
    void addTrend();
    [[nodiscard]] bool leftOutBetween(QDate after, QDate before) const;
    void addNext();
    void markBeyond(PanelSpec& panel, double leastReach, int decimals) const;
    void addLoads();
    void addSummary();
    static void join(PanelSpec& panel);

    const ProgressSource& m_source;
    const ProgressOptions& m_options;
    ProgressWords m_words;
    ProgressSpec m_spec;
    QDate m_lastDay;      // before the margin
    qint64 m_margin = 0;  // days
};

PointKind ProgressBuilder::kindOf(const ReadingPoint& point)
{
    if (point.deload) return PointKind::Deload;
    if (point.offStandard) return PointKind::OffStandard;
    return point.watched ? PointKind::Standard : PointKind::Unwatched;
}

ProgressSpec ProgressBuilder::build()
{
    m_spec.capacity.title = ProgressText::tr("capacity, %1").arg(unit());
    m_spec.reps.title = ProgressText::tr("counted reps of the best set; its load above, %1").arg(unit());
    setTime();
    if (m_spec.from.isValid()) {
        addPoints();
        addTrend();
        addLoads();
        addNext();
        addSetMarks(m_source, m_spec);
        addLoadSeries(m_source, m_words, m_spec);
        if (hasFan()) addFan(m_source, m_words, m_spec);
        addBlockSpans(m_source, m_words, m_spec);
        addLayoffs(m_source, m_words, m_options.layoffDays, m_spec);
        addDecisionTicks(m_source, m_words, m_spec);
        addTrialTicks(m_source, m_words, m_spec);
        addNotes(m_source, m_words, m_spec);
        addRealChange(m_words, m_spec);
        addReadouts(m_source, m_words, m_spec);
        m_spec.dates = dateTicks(m_spec.from, m_spec.to, m_options.dateTicks, m_options.locale);
    }
    m_spec.valueTicks = m_options.valueTicks;
    const ProgressAxes axes = progressAxes(m_spec, m_spec.from.isValid() ? chartDay(m_spec.from) : 0,
                                           m_spec.to.isValid() ? chartDay(m_spec.to) : 0);
    m_spec.capacity.axis = axes.capacity;
    m_spec.reps.axis = axes.reps;
    addTable(m_source, m_words, m_spec);
    addSummary();
    return std::move(m_spec);
}

void ProgressBuilder::setTime()
{
    for (const ReadingPoint& point : m_source.reading.points) {
        if (m_options.from && point.date < *m_options.from) continue;
        if (!m_spec.from.isValid()) m_spec.from = point.date;
        m_spec.to = point.date;
    }
    if (!m_spec.from.isValid()) return;
    if (m_options.asOf.isValid()) m_spec.to = std::max(m_spec.to, m_options.asOf);
    // A margin, so that no point sits on the frame; a single session gets a week on either side.
    m_margin = std::max<qint64>(7, m_spec.from.daysTo(m_spec.to) / 40);
    m_lastDay = m_spec.to;
    m_spec.from = m_spec.from.addDays(-m_margin);
    m_spec.to = m_spec.to.addDays(hasNext() ? 3 * m_margin : m_margin);
    if (hasFan()) m_spec.to = std::max(m_spec.to, m_source.ahead.back().date.addDays(m_margin / 2 + 1));
}

void ProgressBuilder::addPoints()
{
    for (int i = 0; i < static_cast<int>(m_source.reading.points.size()); ++i) {
        const ReadingPoint& point = m_source.reading.points[static_cast<std::size_t>(i)];
        if (!inside(point.date) || (m_options.from && point.date < *m_options.from)) continue;
        const PointKind kind = kindOf(point);
        m_spec.reps.points.push_back({i, point.date, static_cast<double>(point.countedReps), kind});
        if (point.capacityKg) m_spec.capacity.points.push_back({i, point.date, shown(*point.capacityKg), kind});
    }
    markBeyond(m_spec.reps, kLeastRepReach, 0);
    markBeyond(m_spec.capacity, 0, 1);
    join(m_spec.reps);
    join(m_spec.capacity);
}

void ProgressBuilder::markBeyond(PanelSpec& panel, double leastReach, int decimals) const
{
    std::vector<double> values;
    values.reserve(panel.points.size());
    for (const ChartPoint& point : panel.points) values.push_back(point.value);
    const std::vector<Beyond> beyond = beyondScale(values, leastReach);
    for (std::size_t i = 0; i < beyond.size(); ++i) {
        if (beyond[i] == Beyond::No) continue;
        panel.points[i].beyond = beyond[i];
        panel.points[i].label = number(values[i], decimals);
    }
}

void ProgressBuilder::join(PanelSpec& panel)
{
    QDate last;
    for (const ChartPoint& point : panel.points) {
        if (point.kind == PointKind::OffStandard || point.kind == PointKind::Deload) continue;
        if (point.beyond != Beyond::No) continue;
        if (!last.isValid() || last.daysTo(point.date) > kGapDays) panel.runs.emplace_back();
        panel.runs.back().emplace_back(chartDay(point.date), point.value);
        last = point.date;
    }
}

bool ProgressBuilder::leftOutBetween(QDate after, QDate before) const
{
    return std::ranges::any_of(m_source.reading.points, [&](const ReadingPoint& point) {
        return point.date > after && point.date < before && !point.deload;
    });
}

void ProgressBuilder::addTrend()
{
    QDate last;
    for (const TrendPoint& point : m_source.reading.trend) {
        if (!inside(point.date)) continue;
        const double day = chartDay(point.date);
        if (!last.isValid() || leftOutBetween(last, point.date)) m_spec.trendStarts.push_back(m_spec.trend.size());
        last = point.date;
        m_spec.trend.emplace_back(day, shown(point.kg));
        m_spec.trendLow.emplace_back(day, shown(point.low90Kg));
        m_spec.trendHigh.emplace_back(day, shown(point.high90Kg));
    }
}

void ProgressBuilder::addNext()
{
    if (!hasNext()) return;
    const Forecast& next = *m_source.reading.next;
    NextSet set{m_lastDay.addDays(m_margin + m_margin / 2), next.repsMedian, next.repsLow80, next.repsHigh80, {}};
    const ReadingPoint& last = m_source.reading.points.back();
    if (last.topLoad.mass() != next.load.mass()) set.label = m_words.load(next.load);
    m_spec.next = std::move(set);
}

void ProgressBuilder::addLoads()
{
    std::optional<Load> load;
    for (const ChartPoint& at : m_spec.reps.points) {
        const ReadingPoint& point = m_source.reading.points[static_cast<std::size_t>(at.exposure)];
        if (at.kind == PointKind::Deload) continue;
        if (!load || load->mass() != point.topLoad.mass()) {
            load = point.topLoad;
            m_spec.loads.push_back({at.date, at.date, at.value, m_words.load(*load)});
        }
        m_spec.loads.back().to = at.date;
        m_spec.loads.back().topReps = std::max(m_spec.loads.back().topReps, at.value);
    }
}

void ProgressBuilder::addSummary()
{
    if (m_spec.empty()) {
        m_spec.summary = ProgressText::tr("%1: no sessions in this stretch of time.").arg(m_source.name);
        return;
    }
    const auto& points = m_spec.reps.points;
    const auto count = [&](PointKind kind) {
        return static_cast<int>(std::ranges::count(points, kind, &ChartPoint::kind));
    };
    QStringList parts{
        ProgressText::tr("%1, from %2 to %3.").arg(m_source.name, date(points.front().date), date(points.back().date)),
        ProgressText::tr("%n session(s).", nullptr, static_cast<int>(points.size()))};
    if (const int n = count(PointKind::Unwatched)) parts += ProgressText::tr("%n not watched.", nullptr, n);
    if (const int n = count(PointKind::OffStandard))
        parts += ProgressText::tr("%n off standard and left out of the trend.", nullptr, n);
    if (const int n = count(PointKind::Deload)) parts += ProgressText::tr("%n at a deload.", nullptr, n);
    std::set<int> beyond;
    for (const PanelSpec* panel : {&m_spec.capacity, &m_spec.reps})
        for (const ChartPoint& point : panel->points)
            if (point.beyond != Beyond::No) beyond.insert(point.exposure);
    if (!beyond.empty())
        parts += ProgressText::tr("%n far beyond the others, drawn at the edge with its value.", nullptr,
                                  static_cast<int>(beyond.size()));
    if (const auto& capacity = m_source.reading.capacity)
        parts += ProgressText::tr("Capacity about %1 %2 (90 % interval %3 to %4).")
                     .arg(number(shown(capacity->kg), 1), unit(), number(shown(capacity->low90Kg), 1),
                          number(shown(capacity->high90Kg), 1));
    if (m_spec.realChange) parts += m_spec.realChange->words;
    if (!m_spec.fan.empty()) {
        const FanDay& last = m_spec.fan.back();
        parts += ProgressText::tr("If training goes on, first sets of %1 likely show %2 %3 (80 % interval %4 to %5).")
                     .arg(date(QDate::fromJulianDay(static_cast<qint64>(last.day))), number(last.median, 1), unit(),
                          number(last.low[1], 1), number(last.high[1], 1));
    }
    if (const auto& next = m_spec.next)
        parts += ProgressText::tr("Next first set: about %1 reps at %2 %3 (80 % interval %4 to %5).")
                     .arg(number(next->reps, 0), m_source.reading.next->load.amount().trimmed().toString(),
                          toText(m_source.reading.next->load.unit()), number(next->low80, 0), number(next->high80, 0));
    if (!m_source.reading.why.isEmpty()) parts += m_source.reading.why;
    m_spec.summary = parts.join(u' ');
}

}  // namespace

ProgressSpec buildProgressSpec(const ProgressSource& source, const ProgressOptions& options)
{
    return ProgressBuilder(source, options).build();
}

double ProgressWords::shown(double kilograms) const
{
    return format::massIn(kilograms, m_options.unit);
}

QString ProgressWords::load(const Load& load) const
{
    const Decimal amount = load.amount().trimmed();
    const QString text = number(amount.toDouble(), amount.decimals());
    return load.unit() == m_options.unit ? text : text + u' ' + toText(load.unit());
}

QString pointKindWord(PointKind kind)
{
    switch (kind) {
    case PointKind::Standard:
        return ProgressText::tr("at standard");
    case PointKind::Unwatched:
        return ProgressText::tr("not watched");
    case PointKind::OffStandard:
        return ProgressText::tr("off standard");
    case PointKind::Deload:
        return ProgressText::tr("deload");
    }
    return {};
}

}  // namespace steelyard
