#include "ui/charts/curve_spec.h"

#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>
#include <map>

namespace steelyard {
namespace {

struct CurveText {
    Q_DECLARE_TR_FUNCTIONS(CurveText)
};

constexpr double kNormal90 = 1.645;
constexpr double kBeyondSets = 0.1;  // of the sets' span in load, on either side
constexpr int kSteps = 40;
constexpr int kSetsSaid = 10;     // at a load, the newest; all stand in the table
constexpr double kMostReps = 60;  // what lies above is no set anybody plans

class CurveBuilder {
public:
    CurveBuilder(const LineCurve& curve, const PanelsOptions& options) : m_curve(curve), m_options(options) {}

    [[nodiscard]] PanelsSpec build();

private:
    void setAxes();
    void addCurves();
    void addSets();
    void addStops();
    void addTable();
    [[nodiscard]] QString loadWords(double kg) const { return number(shown(kg), 2) + u' ' + toText(m_options.unit); }
    [[nodiscard]] double shown(double kg) const { return format::massIn(kg, m_options.unit); }
    [[nodiscard]] QString number(double value, int decimals) const
    {
        QString text = m_options.locale.toString(value, 'f', decimals);
        if (decimals < 2) return text;
        while (text.endsWith(u'0')) text.chop(1);
        if (!text.isEmpty() && !text.back().isDigit()) text.chop(1);
        return text;
    }
    // Half the 90 % band of z at a load: from the level and from the endurance, which turns about the reference load.
    [[nodiscard]] double reachAt(double loadKg) const;
    [[nodiscard]] double ownReps(double loadKg) const { return m_curve.curve.repsAt(m_curve.movedKg(loadKg)); }
    [[nodiscard]] double publishedReps(double loadKg) const
    {
        return m_curve.published.repsAt(m_curve.movedKg(loadKg));
    }

    const LineCurve& m_curve;
    const PanelsOptions& m_options;
    PanelsSpec m_spec;
    PlotPanel m_panel;
    double m_lowKg = 0;
    double m_highKg = 0;
};

PanelsSpec CurveBuilder::build()
{
    setAxes();
    addCurves();
    addSets();
    m_spec.panels.push_back(std::move(m_panel));
    addStops();
    addTable();
    const QString word = m_curve.ownShare > 0.5
                             ? CurveText::tr("The record itself says most of how steep it is.")
                             : CurveText::tr(
                                 "The loads lie so close together that how steep it is rests mostly on what "
                                 "is usual.");
    m_spec.summary = CurveText::tr(
                         "Own curve: repetitions = 30 × ((capacity / load)^%1 − 1); in the published one the "
                         "exponent is 1.")
                         .arg(number(m_curve.curve.endurance, 1))
                     + u' ' + word;
    return std::move(m_spec);
}

void CurveBuilder::setAxes()
{
    const auto [lightest, heaviest] = std::ranges::minmax(m_curve.sets, {}, &CurveSet::loadKg);
    const double beyond = std::max(kBeyondSets * (heaviest.loadKg - lightest.loadKg), 0.5);
    m_lowKg = std::max(0.0, lightest.loadKg - beyond);
    m_highKg = heaviest.loadKg + beyond;
    const ChartAxis loads = niceAxis(shown(m_lowKg), shown(m_highKg), 8);
    m_spec.low = shown(m_lowKg);
    m_spec.high = shown(m_highKg);
    for (const double tick : loads.ticks)
        if (tick >= m_spec.low && tick <= m_spec.high)
            m_spec.ticks.push_back({tick, m_options.locale.toString(tick, 'f', loads.decimals)});
    m_spec.axisTitle = CurveText::tr("load, %1").arg(toText(m_options.unit));
    double most = 1;
    for (const CurveSet& set : m_curve.sets) most = std::max(most, set.today);
    for (const double kg : {m_lowKg, m_highKg}) most = std::max({most, ownReps(kg), publishedReps(kg)});
    setValueAxis(m_panel, 0, std::min(most * 1.05, kMostReps), 6, m_options.locale, 1);
    m_panel.title = CurveText::tr("repetitions to failure");
}

double CurveBuilder::reachAt(double loadKg) const
{
    const double away = std::log(m_curve.movedKg(loadKg)) - std::log(m_curve.movedKg(m_curve.anchorKg));
    return kNormal90 * std::hypot(m_curve.levelSd, m_curve.enduranceSd * away);
}

void CurveBuilder::addCurves()
{
    PanelSeries own{.name = CurveText::tr("this lifter today, 90 % band"),
                    .shape = PanelShape::None,
                    .line = PanelLine::Solid,
                    .thick = 2};
    PanelSeries published{.name = CurveText::tr("published: Epley 1985"),
                          .shape = PanelShape::None,
                          .line = PanelLine::Dash,
                          .ink = 1,
                          .thick = 1.4};
    std::vector<QPointF> ownRun;
    std::vector<QPointF> publishedRun;
    const auto within = [&](double reps) { return std::clamp(reps, m_panel.low, m_panel.high); };
    for (int i = 0; i <= kSteps; ++i) {
        const double kg = m_lowKg + (m_highKg - m_lowKg) * i / kSteps;
        if (!(m_curve.movedKg(kg) > 0)) continue;
        const double reps = ownReps(kg);
        const double z = std::log1p(std::max(reps, -29.0) / 30);
        const double reach = reachAt(kg);
        if (reps >= m_panel.low && reps <= m_panel.high) ownRun.emplace_back(shown(kg), reps);
        own.bandLow.emplace_back(shown(kg), within(30 * std::expm1(z - reach)));
        own.bandHigh.emplace_back(shown(kg), within(30 * std::expm1(z + reach)));
        if (const double other = publishedReps(kg); other >= m_panel.low && other <= m_panel.high)
            publishedRun.emplace_back(shown(kg), other);
    }
    if (ownRun.size() > 1) own.runs.push_back(std::move(ownRun));
    if (publishedRun.size() > 1) published.runs.push_back(std::move(publishedRun));
    m_panel.series.push_back(std::move(published));
    m_panel.series.push_back(std::move(own));
}

void CurveBuilder::addSets()
{
    PanelSeries bounds{.name = CurveText::tr("at least")};
    PanelSeries exact{.name = CurveText::tr("set near failure")};
    for (const CurveSet& set : m_curve.sets)
        (set.exact ? exact : bounds)
            .points.push_back({shown(set.loadKg), std::min(set.today, m_panel.high), !set.exact});
    for (PanelSeries* series : {&bounds, &exact}) {
        std::ranges::stable_sort(series->points, {}, &PanelPoint::x);
        if (!series->points.empty()) m_panel.series.push_back(std::move(*series));
    }
}

void CurveBuilder::addStops()
{
    std::map<double, std::vector<const CurveSet*>> byLoad;
    for (const CurveSet& set : m_curve.sets) byLoad[set.loadKg].push_back(&set);
    for (const auto& [kg, sets] : byLoad) {
        QStringList lines{CurveText::tr("with %1").arg(loadWords(kg)),
                          CurveText::tr("own curve: %1 to failure").arg(number(std::max(0.0, ownReps(kg)), 1)),
                          CurveText::tr("published: %1").arg(number(std::max(0.0, publishedReps(kg)), 1))};
        int said = 0;
        for (auto set = sets.rbegin(); set != sets.rend() && said < kSetsSaid; ++set, ++said) {
            const QString day = m_options.locale.toString((*set)->date, QLocale::ShortFormat);
            const QString reps = number((*set)->today, 1);
            lines += (*set)->exact ? CurveText::tr("%1: %2").arg(day, reps)
                                   : CurveText::tr("%1: at least %2").arg(day, reps);
        }
        const auto newest = std::ranges::max_element(sets, {}, [](const CurveSet* set) { return set->exposure; });
        m_spec.stops.push_back({shown(kg), static_cast<int>((*newest)->exposure), lines.join(QStringLiteral(" · "))});
    }
}

void CurveBuilder::addTable()
{
    m_spec.table.header = {CurveText::tr("date"),
                           CurveText::tr("load, %1").arg(toText(m_options.unit)),
                           CurveText::tr("repetitions to failure"),
                           CurveText::tr("today"),
                           CurveText::tr("heard as"),
                           CurveText::tr("own curve"),
                           CurveText::tr("published (Epley 1985)")};
    for (const CurveSet& set : m_curve.sets)
        m_spec.table.rows.push_back({set.date.toString(Qt::ISODate), number(shown(set.loadKg), 2),
                                     number(set.repsToFailure, 1), number(set.today, 1),
                                     set.exact ? CurveText::tr("exactly") : CurveText::tr("at least"),
                                     number(ownReps(set.loadKg), 1), number(publishedReps(set.loadKg), 1)});
}

}  // namespace

PanelsSpec buildCurveSpec(const LineCurve& curve, const PanelsOptions& options)
{
    return CurveBuilder(curve, options).build();
}

}  // namespace steelyard
