#include "ui/charts/trial_difference_spec.h"

#include "core/trials/trial_outcomes.h"
#include "ui/charts/trial_course_spec.h"
#include "ui/format/format.h"
#include "ui/format/trial_words.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct TrialDifferenceText {
    Q_DECLARE_TR_FUNCTIONS(TrialDifferenceText)
};

constexpr double kYesCounts = 10;
constexpr double kLeastReach = 2;  // points at both sides of 0
constexpr double kMostReach = 10;

struct DifferenceRow {
    QString title;
    EstimatedDifference difference;  // in what the row shows
    std::optional<RandomisationAnswer> test;
};

QString rowTitle(const OutcomeEffects& effects, const EstimatedDifference& difference)
{
    const QString pair =
        TrialDifferenceText::tr("%1 less %2").arg(armLetter(difference.arm), armLetter(difference.over));
    if (effects.key.isEmpty()) return TrialDifferenceText::tr("all weighed: %1").arg(pair);
    const OutcomeKind* kind = findOutcome(effects.key);
    QString title = outcomeTitle(effects.key);
    if (kind && kind->scale == OutcomeScale::YesNo) return TrialDifferenceText::tr("%1, ×10").arg(title);
    if (kind && kind->scale == OutcomeScale::Repetitions) return TrialDifferenceText::tr("%1, repetitions").arg(title);
    return title;
}

DifferenceRow rowOf(const OutcomeEffects& effects, const EstimatedDifference& difference, const OutcomeEffects* drawn)
{
    const OutcomeKind* kind = findOutcome(effects.key);
    const bool isShare = kind && kind->scale == OutcomeScale::YesNo;
    const double scale = isShare ? kYesCounts : 1;
    DifferenceRow row{rowTitle(effects, difference), difference, {}};
    row.difference.mean *= scale;
    row.difference.low90 *= scale;
    row.difference.high90 *= scale;
    // The test is of all arms together: with more than two it stands at no single pair.
    if (drawn && effects.arms.size() == 2) row.test = drawn->byLotRanks && kind ? drawn->byLotRanks : drawn->byLot;
    return row;
}

std::vector<DifferenceRow> rowsOf(const TrialEffects& done, const TrialEffects* byDraw, std::size_t arms)
{
    std::vector<DifferenceRow> rows;
    if (done.answer)
        for (const EstimatedDifference& pair : done.answer->differences)
            rows.push_back(rowOf(*done.answer, pair, byDraw && byDraw->answer ? &*byDraw->answer : nullptr));
    if (arms > 2) return rows;
    for (const OutcomeEffects& effects : done.outcomes)
        for (const EstimatedDifference& pair : effects.differences)
            rows.push_back(rowOf(effects, pair, byDraw ? byDraw->outcome(effects.key) : nullptr));
    return rows;
}

QString wordsOf(const DifferenceRow& row)
{
    return TrialDifferenceText::tr("%1: %2 (%3 to %4), better with a chance of %5")
        .arg(row.title, format::signedNumber(row.difference.mean, 1), format::signedNumber(row.difference.low90, 1),
             format::signedNumber(row.difference.high90, 1), chanceWords(row.difference.chanceBetter, row.test));
}

}  // namespace

QString chanceWords(double chance, const std::optional<RandomisationAnswer>& test)
{
    const QString words = format::chanceText(chance);
    return test ? words + TrialDifferenceText::tr(", p %1").arg(format::number(test->p, test->p < 0.01 ? 3 : 2))
                : words;
}

PanelsSpec buildTrialDifferences(const TrialEffects& done, const TrialEffects* byDraw, std::size_t arms,
                                 const QLocale& locale)
{
    PanelsSpec spec;
    const auto rows = rowsOf(done, byDraw, arms);
    if (rows.empty()) return spec;
    double reach = kLeastReach;
    for (const DifferenceRow& row : rows)
        reach = std::max({reach, std::abs(row.difference.low90), std::abs(row.difference.high90)});
    reach = std::min(std::ceil(reach), kMostReach);
    const auto within = [&](double x) { return std::clamp(x, -reach, reach); };
    spec.low = -reach - 0.3;
    spec.high = reach + 0.3;
    spec.axisTitle = TrialDifferenceText::tr("difference, points of 10");
    for (const double tick : {-reach, -reach / 2, 0.0, reach / 2, reach})
        spec.ticks.push_back({tick, locale.toString(tick, 'f', std::fmod(reach, 2) == 0 ? 0 : 1)});
    PlotPanel panel;
    panel.title = TrialDifferenceText::tr("difference, 90 %; chance that it is better");
    QStringList words;
    for (const DifferenceRow& row : rows)
        words += chanceWords(row.difference.chanceBetter, row.test) + QStringLiteral("  ") + row.title;
    setWordAxis(panel, words);
    panel.series.push_back(
        {.shape = PanelShape::None, .line = PanelLine::Dash, .ink = 3, .runs = {{{0, panel.low}, {0, panel.high}}}});
    spec.table.header = {TrialDifferenceText::tr("difference"),    TrialDifferenceText::tr("mean"),
                         TrialDifferenceText::tr("5 %"),           TrialDifferenceText::tr("95 %"),
                         TrialDifferenceText::tr("chance better"), TrialDifferenceText::tr("p by the draw")};
    QStringList all;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const EstimatedDifference& shown = rows[i].difference;
        const double y = static_cast<double>(rows.size() - 1 - i);
        PanelSeries series{.shape = PanelShape::Disc, .line = PanelLine::Solid, .ink = 0, .thick = i == 0 ? 2.4 : 1.6};
        series.points.push_back({within(shown.mean), y, shown.low90 <= 0 && shown.high90 >= 0});
        series.runs.push_back({{within(shown.low90), y}, {within(shown.high90), y}});
        panel.series.push_back(std::move(series));
        all += wordsOf(rows[i]);
        spec.table.rows.push_back({rows[i].title, format::signedNumber(shown.mean, 2),
                                   format::signedNumber(shown.low90, 2), format::signedNumber(shown.high90, 2),
                                   format::chanceText(shown.chanceBetter),
                                   rows[i].test ? format::number(rows[i].test->p, 3) : QString()});
    }
    spec.panels.push_back(std::move(panel));
    spec.summary = all.join(QStringLiteral("; "));
    spec.stops.push_back({0, -1, all.join(u'\n')});
    return spec;
}

}  // namespace steelyard
