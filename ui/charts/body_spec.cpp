#include "ui/charts/body_spec.h"

#include "ui/format/body_words.h"
#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <map>

namespace steelyard {
namespace {

struct BodyText {
    Q_DECLARE_TR_FUNCTIONS(BodyText)
};

constexpr std::size_t kMostInColumn = 4;  // panels; more stand in a second column
constexpr int kBodyTicks = 3;
constexpr double kSmallestBodyStep = 0.5;
constexpr double kLeastSpanShare = 0.06;
constexpr double kAnyGap = 1e9;  // days

class BodyBuilder {
public:
    BodyBuilder(const BodyRecord& record, const PanelsOptions& options) : m_record(record), m_options(options) {}

    [[nodiscard]] PanelsSpec build()
    {
        collect();
        if (m_days.empty()) return {};
        const QDate first = m_days.begin()->first;
        setTimeAxis(m_spec, first, std::max(m_days.rbegin()->first, m_options.asOf), m_options);
        for (auto& [title, points] : m_panels) addPanel(title, points);
        for (std::size_t i = 0; i < m_spec.panels.size(); ++i)
            if (m_spec.panels.size() > kMostInColumn)
                m_spec.panels[i].column = i < (m_spec.panels.size() + 1) / 2 ? 0 : 1;
        for (const auto& [date, words] : m_days) {
            m_spec.stops.push_back({chartDay(date), -1, format::date(date) + QStringLiteral(": ") + words.join(u", ")});
        }
        m_spec.table.header = {BodyText::tr("date"), BodyText::tr("what"), BodyText::tr("value")};
        m_spec.summary =
            BodyText::tr("Body mass and measurements on %n day(s).", nullptr, static_cast<int>(m_days.size()));
        return std::move(m_spec);
    }

private:
    using Points = std::vector<PanelPoint>;

    void add(QDate date, const QString& what, const QString& value)
    {
        m_days[date] += what + u' ' + value;
        m_spec.table.rows.push_back({date.toString(Qt::ISODate), what, value});
    }

    void collect()
    {
        Points mass;
        for (const BodyMassEntry& entry : m_record.mass) {
            if (!isShown(entry.date)) continue;
            add(entry.date, BodyText::tr("body mass"), format::load(entry.mass));
            mass.push_back({chartDay(entry.date), format::massIn(entry.mass.kilograms(), m_options.unit)});
        }
        if (!mass.empty())
            m_panels.emplace_back(BodyText::tr("body mass, %1").arg(format::unit(m_options.unit)), std::move(mass));
        for (const auto& [place, key] : EnumText<BodyPlace>::table) collect(place);
    }

    void collect(BodyPlace place)
    {
        std::vector<Measurement> ofPlace;
        for (const Measurement& one : m_record.measurements)
            if (one.place == place && isShown(one.date)) ofPlace.push_back(one);
        if (ofPlace.empty()) return;
        const TapeUnit unit = ofPlace.back().unit;
        Points points;
        for (const Measurement& one : ofPlace) {
            add(one.date, format::bodyPlaceWord(place), format::tape(one));
            points.push_back(
                {chartDay(one.date), one.centimetres() / (unit == TapeUnit::in ? kCentimetresPerInch : 1.0)});
        }
        m_panels.emplace_back(format::bodyPlaceWord(place) + QStringLiteral(", ") + toText(unit), std::move(points));
    }

    [[nodiscard]] bool isShown(QDate date) const { return !m_options.from || date >= *m_options.from; }

    void addPanel(const QString& title, Points& points)
    {
        const auto [low, high] = std::ranges::minmax(points, {}, &PanelPoint::y);
        PlotPanel panel{.title = title};
        const double least = kLeastSpanShare * high.y;  // what changes by chance shouldn't fill the panel
        const double room = std::max(0.0, least - (high.y - low.y)) / 2;
        setValueAxis(panel, low.y - room, high.y + room, kBodyTicks, m_options.locale, kSmallestBodyStep);
        PanelSeries series;
        series.line = PanelLine::Solid;
        series.runs = runsOf(points, kAnyGap);
        series.points = std::move(points);
        panel.series.push_back(std::move(series));
        m_spec.panels.push_back(std::move(panel));
    }

    const BodyRecord& m_record;
    const PanelsOptions& m_options;
    PanelsSpec m_spec;
    std::vector<std::pair<QString, Points>> m_panels;
    std::map<QDate, QStringList> m_days;
};

}  // namespace

PanelsSpec buildBodySpec(const BodyRecord& record, const PanelsOptions& options)
{
    return BodyBuilder(record, options).build();
}

}  // namespace steelyard
