#include "ui/charts/training_spec.h"

#include "core/analysis/weekly_sets.h"
#include "core/analysis/workload.h"
#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct TrainingText {
    Q_DECLARE_TR_FUNCTIONS(TrainingText)
};

constexpr double kWeek = 7;
constexpr double kMiddleOfWeek = 3.5;

class TrainingBuilder {
public:
    TrainingBuilder(const AthleteLog& log, const PanelsOptions& options) : m_log(log), m_options(options) {}

    [[nodiscard]] PanelsSpec build();

private:
    [[nodiscard]] bool setTime();
    void orderMuscles();
    void addLoads();
    void addMuscles();
    void addStops();
    void addTable();
    void addSummary();
    [[nodiscard]] const MuscleAim* aimOf(Id<Muscle> muscle) const;
    [[nodiscard]] QString aimWords(const MuscleAim& aim) const
    {
        return TrainingText::tr("aim %1 to %2").arg(aim.weeklySetsLow).arg(aim.weeklySetsHigh);
    }
    [[nodiscard]] QString number(double value, int decimals) const
    {
        return m_options.locale.toString(value, 'f', decimals);
    }
    [[nodiscard]] QString number(const std::optional<double>& value, int decimals) const
    {
        return value ? number(*value, decimals) : QString();
    }
    [[nodiscard]] double volume(const WeekLoad& week) const { return format::massIn(week.volumeKg, m_options.unit); }
    [[nodiscard]] double middle(const WeekLoad& week) const { return chartDay(week.monday) + kMiddleOfWeek; }
    template <class ValueOf>
    void addLoadPanel(const QString& title, ValueOf valueOf, bool bars);
    [[nodiscard]] QString weekWords(std::size_t week) const;

    const AthleteLog& m_log;
    const PanelsOptions& m_options;
    PanelsSpec m_spec;
    std::vector<WeekLoad> m_weeks;
    std::vector<std::map<Id<Muscle>, double>> m_sets;  // by week
    std::vector<Id<Muscle>> m_muscles;                 // in the order of their panels
};

PanelsSpec TrainingBuilder::build()
{
    if (!setTime()) {
        m_spec.summary = TrainingText::tr("No training in this stretch of time.");
        return std::move(m_spec);
    }
    orderMuscles();
    addLoads();
    addMuscles();
    addStops();
    addTable();
    addSummary();
    return std::move(m_spec);
}

bool TrainingBuilder::setTime()
{
    QDate first;
    for (const QDate day : m_log.sessionDates)
        if (!m_options.from || day >= *m_options.from) {
            first = day;
            break;
        }
    if (!first.isValid()) return false;
    const QDate last = std::max(m_log.sessionDates.back(), m_options.asOf);
    m_weeks = weekLoads(m_log, first, last);
    m_sets = muscleSetsByWeek(m_log, m_weeks.front().monday, last);
    setTimeAxis(m_spec, m_weeks.front().monday, m_weeks.back().monday.addDays(6), m_options);
    for (const WeekLoad& week : m_weeks)
        if (week.deload) m_spec.shades.push_back({chartDay(week.monday), chartDay(week.monday) + kWeek});
    return true;
}

const MuscleAim* TrainingBuilder::aimOf(Id<Muscle> muscle) const
{
    const auto& aims = m_log.athlete.value.aims;
    const auto found = std::ranges::find(aims, muscle, &MuscleAim::muscle);
    return found == aims.end() ? nullptr : &*found;
}

void TrainingBuilder::orderMuscles()
{
    std::map<Id<Muscle>, double> sums;
    for (const MuscleAim& aim : m_log.athlete.value.aims) sums[aim.muscle];
    for (const auto& week : m_sets)
        for (const auto& [muscle, sets] : week) sums[muscle] += sets;
    for (const auto& [muscle, sets] : sums)
        if (!m_log.muscleName(muscle).isEmpty()) m_muscles.push_back(muscle);
    std::ranges::stable_sort(m_muscles, [&](Id<Muscle> a, Id<Muscle> b) {
        return std::pair(aimOf(a) == nullptr, -sums[a]) < std::pair(aimOf(b) == nullptr, -sums[b]);
    });
}

template <class ValueOf>
void TrainingBuilder::addLoadPanel(const QString& title, ValueOf valueOf, bool bars)
{
    PlotPanel panel;
    panel.title = title;
    PanelSeries series;
    series.barWidth = bars ? kWeek : 0;
    series.line = bars ? PanelLine::None : PanelLine::Solid;
    double most = 0;
    for (const WeekLoad& week : m_weeks) {
        const std::optional<double> value = valueOf(week);
        if (!value) continue;
        series.points.push_back({middle(week), *value, !week.closed});
        most = std::max(most, *value);
    }
    series.runs = runsOf(series.points, kWeek + 1);
    setValueAxis(panel, 0, most > 0 ? most : 1, 2, m_options.locale);
    panel.series.push_back(std::move(series));
    m_spec.panels.push_back(std::move(panel));
}

void TrainingBuilder::addLoads()
{
    addLoadPanel(
        TrainingText::tr("session effort"), [](const WeekLoad& week) { return week.effort; }, true);
    addLoadPanel(
        TrainingText::tr("monotony"), [](const WeekLoad& week) { return week.monotony; }, false);
    addLoadPanel(
        TrainingText::tr("strain"), [](const WeekLoad& week) { return week.strain; }, false);
    addLoadPanel(
        TrainingText::tr("volume load, 1000 %1").arg(toText(m_options.unit)),
        [this](const WeekLoad& week) { return std::optional(volume(week) / 1000); }, true);
}

void TrainingBuilder::addMuscles()
{
    double most = 1;
    for (const MuscleAim& aim : m_log.athlete.value.aims) most = std::max(most, aim.weeklySetsHigh * 1.1);
    for (const auto& week : m_sets)
        for (const auto& [muscle, sets] : week) most = std::max(most, sets);
    const std::size_t shown = std::min<std::size_t>(m_muscles.size(), kMusclePanels);
    for (std::size_t i = 0; i < shown; ++i) {
        PlotPanel panel;
        const Id<Muscle> muscle = m_muscles[i];
        panel.title = m_log.muscleName(muscle);
        panel.column = 1 + static_cast<int>(i % 2);
        setValueAxis(panel, 0, most, 2, m_options.locale, 1);
        if (const MuscleAim* aim = aimOf(muscle)) {
            panel.title = TrainingText::tr("%1, %2").arg(panel.title, aimWords(*aim));
            panel.zones.push_back(
                {static_cast<double>(aim->weeklySetsLow), static_cast<double>(aim->weeklySetsHigh), {}});
        }
        if (i == 0) panel.title = TrainingText::tr("%1, sets a week").arg(panel.title);
        PanelSeries series;
        series.barWidth = kWeek;
        for (std::size_t week = 0; week < m_sets.size(); ++week)
            if (const auto sets = m_sets[week].find(muscle); sets != m_sets[week].end())
                series.points.push_back({middle(m_weeks[week]), sets->second, !m_weeks[week].closed});
        panel.series.push_back(std::move(series));
        m_spec.panels.push_back(std::move(panel));
    }
}

QString TrainingBuilder::weekWords(std::size_t index) const
{
    const WeekLoad& week = m_weeks[index];
    QStringList lines{TrainingText::tr("Week of %1").arg(m_options.locale.toString(week.monday, QLocale::ShortFormat))};
    if (!week.closed) lines += TrainingText::tr("not over yet");
    if (week.deload) lines += TrainingText::tr("deload");
    lines += TrainingText::tr("%n session(s)", nullptr, week.sessions);
    lines += TrainingText::tr("%n set(s)", nullptr, week.sets);
    if (week.effort) lines += TrainingText::tr("session effort %1").arg(number(*week.effort, 0));
    if (!week.effort)
        lines += TrainingText::tr("session effort not known: effort written down for %1 of %2")
                     .arg(week.effortSets)
                     .arg(week.sets);
    if (week.monotony) lines += TrainingText::tr("monotony %1").arg(number(*week.monotony, 2));
    if (week.strain) lines += TrainingText::tr("strain %1").arg(number(*week.strain, 0));
    lines += TrainingText::tr("volume load %1 %2").arg(number(volume(week), 0), toText(m_options.unit));
    for (const Id<Muscle> muscle : m_muscles)
        if (const auto sets = m_sets[index].find(muscle); sets != m_sets[index].end())
            lines += TrainingText::tr("%1: %2").arg(m_log.muscleName(muscle), number(sets->second, 1));
    return lines.join(QStringLiteral(" · "));
}

void TrainingBuilder::addStops()
{
    for (std::size_t i = 0; i < m_weeks.size(); ++i) m_spec.stops.push_back({middle(m_weeks[i]), -1, weekWords(i)});
}

void TrainingBuilder::addTable()
{
    m_spec.table.header = {
        TrainingText::tr("week of"),        TrainingText::tr("sessions"),
        TrainingText::tr("sets"),           TrainingText::tr("sets with effort"),
        TrainingText::tr("session effort"), TrainingText::tr("monotony"),
        TrainingText::tr("strain"),         TrainingText::tr("volume load, %1").arg(toText(m_options.unit)),
        TrainingText::tr("deload")};
    for (const Id<Muscle> muscle : m_muscles) m_spec.table.header += m_log.muscleName(muscle);
    for (std::size_t i = 0; i < m_weeks.size(); ++i) {
        const WeekLoad& week = m_weeks[i];
        QStringList row{week.monday.toString(Qt::ISODate),
                        number(week.sessions, 0),
                        number(week.sets, 0),
                        number(week.effortSets, 0),
                        number(week.effort, 1),
                        number(week.monotony, 2),
                        number(week.strain, 0),
                        number(volume(week), 0),
                        week.deload ? TrainingText::tr("deload") : QString()};
        for (const Id<Muscle> muscle : m_muscles) {
            const auto sets = m_sets[i].find(muscle);
            row += number(sets == m_sets[i].end() ? 0 : sets->second, 1);
        }
        m_spec.table.rows.push_back(row);
    }
}

void TrainingBuilder::addSummary()
{
    QStringList parts{TrainingText::tr("%n week(s) of training.", nullptr, static_cast<int>(m_weeks.size()))};
    const auto known = std::ranges::count_if(m_weeks, [](const WeekLoad& week) { return week.effort.has_value(); });
    if (known < static_cast<std::ptrdiff_t>(m_weeks.size()))
        parts += TrainingText::tr("In %n of them the effort of too many sets is not known.", nullptr,
                                  static_cast<int>(m_weeks.size()) - static_cast<int>(known));
    if (m_muscles.size() > kMusclePanels)
        parts += TrainingText::tr("%n more muscle(s) in the table.", nullptr,
                                  static_cast<int>(m_muscles.size()) - kMusclePanels);
    m_spec.summary = parts.join(u' ');
}

}  // namespace

PanelsSpec buildTrainingSpec(const AthleteLog& log, const PanelsOptions& options)
{
    return TrainingBuilder(log, options).build();
}

}  // namespace steelyard
