#include "ui/charts/everyday_spec.h"

#include "core/trials/trial_outcomes.h"
#include "ui/charts/trial_course_spec.h"
#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct EverydayChartText {
    Q_DECLARE_TR_FUNCTIONS(EverydayChartText)
};

constexpr double kEverydayScale = 10;

// Yes counts ten, so that shares and ratings stand on one axis; repetitions have none there.
std::optional<double> everydayScaleOf(const QString& key)
{
    const OutcomeKind* kind = findOutcome(key);
    if (!kind || kind->scale == OutcomeScale::Repetitions) return std::nullopt;
    return kind->scale == OutcomeScale::YesNo ? kEverydayScale : 1.0;
}

PlotPanel outcomePanel(const OutcomeEffects& effects, double scale, const std::vector<QString>& names)
{
    PlotPanel panel;
    panel.title = outcomeTitle(effects.key).toLower() + EverydayChartText::tr(", of 10");
    QStringList rows(names.begin(), names.end());
    setWordAxis(panel, rows);
    for (std::size_t line = 0; line < effects.arms.size() && line < names.size(); ++line) {
        const ArmLevel& level = effects.arms[line];
        if (!level.level || !level.low90 || !level.high90) continue;
        const double y = static_cast<double>(names.size() - 1 - line);
        const auto at = [&](double value) { return std::clamp(value * scale, 0.0, kEverydayScale); };
        PanelSeries series{
            .shape = armShape(line), .line = PanelLine::Solid, .ink = static_cast<int>(line), .thick = 1.6};
        series.points.push_back({at(*level.level), y, true});
        series.runs.push_back({{at(*level.low90), y}, {at(*level.high90), y}});
        panel.series.push_back(std::move(series));
    }
    return panel;
}

}  // namespace

QString everydayWords(const EverydayComparison& found)
{
    QStringList words{
        EverydayChartText::tr("An everyday comparison, not a trial: nobody drew lots, so what differs may come from "
                              "anything else that differed.")};
    words += found.sentence;
    for (const CircumstanceFound& circumstance : found.circumstances) words += circumstance.sentence;
    words += EverydayChartText::tr("T sets up a trial.");
    words.removeAll(QString());
    return words.join(u' ');
}

PanelsSpec buildEveryday(const EverydayComparison& found, const std::vector<QString>& names, const QLocale& locale)
{
    PanelsSpec spec;
    spec.low = -0.2;
    spec.high = kEverydayScale + 0.2;
    spec.axisTitle = EverydayChartText::tr("level, 90 %; hollow: not by lot");
    for (const int tick : {0, 5, 10}) spec.ticks.push_back({static_cast<double>(tick), locale.toString(tick)});
    spec.table.header = {EverydayChartText::tr("outcome"),  EverydayChartText::tr("line"),
                         EverydayChartText::tr("sessions"), EverydayChartText::tr("level"),
                         EverydayChartText::tr("5 %"),      EverydayChartText::tr("95 %")};
    for (const OutcomeEffects& effects : found.outcomes) {
        const auto scale = everydayScaleOf(effects.key);
        if (!scale) continue;
        PlotPanel panel = outcomePanel(effects, *scale, names);
        panel.column = static_cast<int>(spec.panels.size() % 2);
        spec.panels.push_back(std::move(panel));
        for (std::size_t line = 0; line < effects.arms.size() && line < names.size(); ++line) {
            const ArmLevel& level = effects.arms[line];
            const auto number = [](const std::optional<double>& value) {
                return value ? format::number(*value, 2) : QString();
            };
            spec.table.rows.push_back({outcomeTitle(effects.key), names[line], locale.toString(level.sessions),
                                       number(level.level), number(level.low90), number(level.high90)});
        }
    }
    spec.summary = everydayWords(found);
    if (!spec.panels.empty()) spec.stops.push_back({0, -1, found.sentence});
    return spec;
}

}  // namespace steelyard
