#include "ui/charts/trial_wins_spec.h"

#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct TrialWinsText {
    Q_DECLARE_TR_FUNCTIONS(TrialWinsText)
};

constexpr double kWinsPercent = 100;

QString winsWords(const ArmWins& wins)
{
    QString words =
        TrialWinsText::tr("%1: preferred in %2 of %n trial(s)", nullptr, wins.trials).arg(wins.name).arg(wins.won);
    if (wins.out > 0) words += TrialWinsText::tr(", out for discomfort in %1").arg(wins.out);
    return words;
}

}  // namespace

PanelsSpec buildTrialWins(const std::vector<ArmWins>& all, const QLocale& locale)
{
    PanelsSpec spec;
    if (all.empty()) return spec;
    spec.low = -2;
    spec.high = kWinsPercent + 2;
    for (const int tick : {0, 25, 50, 75, 100})
        spec.ticks.push_back({static_cast<double>(tick), locale.toString(tick)});
    spec.axisTitle = TrialWinsText::tr("preferred, % of the trials that had it");
    spec.table.header = {TrialWinsText::tr("kind of arm"),        TrialWinsText::tr("trials"),
                         TrialWinsText::tr("preferred"),          TrialWinsText::tr("another preferred"),
                         TrialWinsText::tr("out for discomfort"), TrialWinsText::tr("share, 5 %"),
                         TrialWinsText::tr("share, 95 %"),        TrialWinsText::tr("by chance alone")};
    PlotPanel panel;
    panel.title = TrialWinsText::tr("preferred, 90 %");
    QStringList rows;
    for (const ArmWins& wins : all) rows += winsWords(wins);
    setWordAxis(panel, rows);
    PanelSeries chance{.name = TrialWinsText::tr("by chance alone"), .shape = PanelShape::Diamond, .ink = 7};
    for (std::size_t i = 0; i < all.size(); ++i) {
        const double y = static_cast<double>(all.size() - 1 - i);
        const ArmWins& wins = all[i];
        const double share = wins.trials > 0 ? static_cast<double>(wins.won) / wins.trials : 0;
        PanelSeries series{.shape = PanelShape::Disc, .line = PanelLine::Solid, .thick = 1.6};
        series.points.push_back({kWinsPercent * share, y});
        series.runs.push_back({{kWinsPercent * wins.share.low, y}, {kWinsPercent * wins.share.high, y}});
        panel.series.push_back(std::move(series));
        if (wins.trials > 0)
            chance.points.push_back({kWinsPercent * std::clamp(wins.byChance / wins.trials, 0.0, 1.0), y, true});
        spec.table.rows.push_back({wins.name, locale.toString(wins.trials), locale.toString(wins.won),
                                   locale.toString(wins.lost), locale.toString(wins.out),
                                   format::percent(wins.share.low), format::percent(wins.share.high),
                                   format::number(wins.byChance, 1)});
    }
    panel.series.push_back(std::move(chance));
    spec.panels.push_back(std::move(panel));
    spec.summary = rows.join(QStringLiteral("; "));
    spec.stops.push_back({0, -1, rows.join(u'\n')});
    return spec;
}

}  // namespace steelyard
