#include "ui/charts/trial_power_spec.h"

#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct TrialPowerText {
    Q_DECLARE_TR_FUNCTIONS(TrialPowerText)
};

constexpr double kSmallestDifference = 0.5;
constexpr double kLargestDifference = 2;
constexpr double kDifferenceStep = 0.125;
constexpr double kUsualDifference = 1;
constexpr double kPointsPerSd = 1.2;  // of a 0-10 rating: see trial_power.h
constexpr double kOfTrials = 10;

PanelSeries powerCurve(const TrialDesign& design, PanelLine line, double thick, int ink)
{
    PanelSeries series{.name = TrialPowerText::tr("%n block(s)", nullptr, design.blocks),
                       .shape = PanelShape::None,
                       .line = line,
                       .ink = ink,
                       .thick = thick,
                       .direct = true};
    for (double sds = kSmallestDifference; sds <= kLargestDifference; sds += kDifferenceStep)
        series.points.push_back({sds, kOfTrials * trialPower(design, sds).prefersRight});
    series.runs = runsOf(series.points, kLargestDifference);
    return series;
}

int inTen(double share)
{
    return static_cast<int>(std::lround(kOfTrials * share));
}

}  // namespace

QString powerSentence(const TrialDesign& design)
{
    const TrialPower usual = trialPower(design, kUsualDifference);
    QString words = TrialPowerText::tr("Finds a difference of 1 SD (about %1 points of 10) in %2 of 10 such trials")
                        .arg(format::number(kPointsPerSd, 1))
                        .arg(inTen(usual.prefersRight));
    words += TrialPowerText::tr(", and calls the wrong arm in %1 of 100.").arg(std::lround(100 * usual.prefersWrong));
    if (const auto found = smallestFound(design))
        words += u' ' + TrialPowerText::tr("8 of 10 need a difference of %1 SD.").arg(format::number(*found, 1));
    else
        words += u' ' + TrialPowerText::tr("No difference up to 2 SD is found in 8 of 10: more blocks find more.");
    return words;
}

PanelsSpec buildTrialPower(const TrialDesign& design, const QLocale& locale)
{
    PanelsSpec spec;
    spec.low = kSmallestDifference - 0.06;
    spec.high = kLargestDifference + 0.06;
    for (const double tick : {0.5, 1.0, 1.5, 2.0}) spec.ticks.push_back({tick, locale.toString(tick, 'f', 1)});
    spec.axisTitle = TrialPowerText::tr("true difference, SD of sessions");
    PlotPanel panel;
    panel.title = TrialPowerText::tr("found, of 10 trials");
    setValueAxis(panel, 0, kOfTrials, 2, locale);
    const auto table = powerBlocks();
    const int fewer = std::max(table.front(), design.blocks / 2);
    const int more = std::min(table.back(), design.blocks * 2);
    if (fewer < design.blocks) panel.series.push_back(powerCurve({design.arms, fewer}, PanelLine::Dot, 1, 7));
    if (more > design.blocks) panel.series.push_back(powerCurve({design.arms, more}, PanelLine::Dash, 1, 7));
    panel.series.push_back(powerCurve(design, PanelLine::Solid, 2, 0));
    const double planned = kOfTrials * trialPower(design, kUsualDifference).prefersRight;
    panel.series.push_back({.shape = PanelShape::Disc, .ink = 0, .points = {{kUsualDifference, planned}}});
    spec.panels.push_back(std::move(panel));
    spec.table.header = {TrialPowerText::tr("difference, SD"), TrialPowerText::tr("found, of 10 trials")};
    for (double sds = kSmallestDifference; sds <= kLargestDifference; sds += 0.25) {
        const double share = trialPower(design, sds).prefersRight;
        spec.stops.push_back({sds, -1,
                              TrialPowerText::tr("%1 SD: found in %2 of 10 trials")
                                  .arg(format::shortNumber(sds), format::number(kOfTrials * share, 1))});
        spec.table.rows.push_back({locale.toString(sds, 'f', 2), locale.toString(kOfTrials * share, 'f', 1)});
    }
    spec.summary = powerSentence(design);
    return spec;
}

}  // namespace steelyard
