#include "ui/charts/ratings_spec.h"

#include "core/analysis/discomfort_zones.h"
#include "ui/charts/rated_sessions.h"
#include "ui/charts/travel_panel.h"
#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <map>

namespace steelyard {
namespace {

struct RatingsText {
    Q_DECLARE_TR_FUNCTIONS(RatingsText)
};

constexpr double kMostRating = 10;
constexpr double kJoinDays = 35;  // a rating missed now and then breaks no line
constexpr std::array kShapes{PanelShape::Disc,  PanelShape::Square, PanelShape::Triangle, PanelShape::Diamond,
                             PanelShape::Cross, PanelShape::Plus,   PanelShape::Disc,     PanelShape::Square};
constexpr std::array kLines{PanelLine::Solid, PanelLine::Dash, PanelLine::Dot, PanelLine::DashDot};

using RatingOf = std::optional<int> (*)(const ExerciseRating&);

class RatingsBuilder {
public:
    RatingsBuilder(const RatingsSource& source, const PanelsOptions& options) : m_source(source), m_options(options) {}

    [[nodiscard]] PanelsSpec build();

private:
    void addCapacity(int column);
    void addFelt();
    void addGaveOut();
    void addDiscomfort();
    void addNextDay();
    void addCountedShare();
    void addMarks();
    void addLowering();
    void addStops();
    void addTable();
    void add(PlotPanel panel, const QString& what);
    [[nodiscard]] PanelSeries ratings(const QString& name, std::size_t place, RatingOf of) const;
    // A number of every session that has one, times `scale`, as a line.
    [[nodiscard]] PanelSeries joined(std::optional<double> RatedSession::*number, double scale = 1) const;
    [[nodiscard]] std::vector<PanelPoint> discomfortOf(std::size_t joint) const;
    [[nodiscard]] QString gaveOutWord(const ExerciseRating& rating) const;
    [[nodiscard]] QString sessionWords(const RatedSession& session) const;
    [[nodiscard]] QString number(double value, int decimals) const
    {
        return m_options.locale.toString(value, 'f', decimals);
    }

    const RatingsSource& m_source;
    const PanelsOptions& m_options;
    PanelsSpec m_spec;
    std::vector<RatedSession> m_sessions;
    std::vector<std::size_t> m_joints;  // ever above 0
    QStringList m_missing;
};

PanelsSpec RatingsBuilder::build()
{
    m_sessions = ratedSessions(m_source, m_options);
    if (m_sessions.empty()) {
        m_spec.summary = RatingsText::tr("No sessions in this stretch of time.");
        return std::move(m_spec);
    }
    setTimeAxis(m_spec, m_sessions.front().logged->date, std::max(m_sessions.back().logged->date, m_options.asOf),
                m_options);
    addDeloads(m_spec, m_source.log.blocks);
    addCapacity(0);
    addFelt();
    addGaveOut();
    addDiscomfort();
    addNextDay();
    addCapacity(1);
    addCountedShare();
    addMarks();
    if (auto travel = travelPanel(m_source, m_sessions, m_options.locale)) m_spec.panels.push_back(*std::move(travel));
    addLowering();
    addStops();
    addTable();
    m_spec.summary = RatingsText::tr("%n session(s).", nullptr, static_cast<int>(m_sessions.size()));
    if (const QString alike = travelSummary(m_source); !alike.isEmpty()) m_spec.summary += u' ' + alike;
    if (!m_missing.empty())
        m_spec.summary +=
            u' ' + RatingsText::tr("Nothing written down so far: %1.").arg(m_missing.join(QStringLiteral(", ")));
    return std::move(m_spec);
}

void RatingsBuilder::add(PlotPanel panel, const QString& what)
{
    const bool any = std::ranges::any_of(panel.series, [](const PanelSeries& one) { return !one.points.empty(); });
    if (any)
        m_spec.panels.push_back(std::move(panel));
    else
        m_missing += what;
}

void RatingsBuilder::addCapacity(int column)
{
    PlotPanel panel;
    panel.title = RatingsText::tr("capacity, %1").arg(toText(m_options.unit));
    panel.column = column;
    panel.weight = 0.8;
    PanelSeries line{.line = PanelLine::Solid};
    PanelSeries off{.name = RatingsText::tr("off standard"), .shape = PanelShape::Cross, .ink = 1};
    for (const RatedSession& session : m_sessions) {
        if (!session.capacityKg) continue;
        const double shown = format::massIn(*session.capacityKg, m_options.unit);
        (session.offStandard ? off : line).points.push_back({session.x(), shown, !session.watched});
    }
    line.runs = runsOf(line.points, kJoinDays);
    std::vector<double> values;
    for (const PanelSeries* series : {&line, &off})
        for (const PanelPoint& point : series->points) values.push_back(point.y);
    if (values.empty()) return;
    const auto [low, high] = std::ranges::minmax(values);
    setValueAxis(panel, low, high, 2, m_options.locale);
    if (off.points.empty()) off.name.clear();
    panel.series = {std::move(line), std::move(off)};
    m_spec.panels.push_back(std::move(panel));
}

PanelSeries RatingsBuilder::ratings(const QString& name, std::size_t place, RatingOf of) const
{
    PanelSeries series{
        .name = name, .shape = kShapes[place], .line = kLines[place % kLines.size()], .ink = static_cast<int>(place)};
    for (const RatedSession& session : m_sessions)
        if (const auto rating = of(session.logged->rating))
            series.points.push_back({session.x(), static_cast<double>(*rating)});
    series.runs = runsOf(series.points, kJoinDays);
    if (series.points.empty()) series.name.clear();
    return series;
}

void RatingsBuilder::addFelt()
{
    PlotPanel panel;
    panel.title = RatingsText::tr("felt, of 10");
    setValueAxis(panel, 0, kMostRating, 2, m_options.locale);
    panel.series = {ratings(RatingsText::tr("tension"), 0, [](const ExerciseRating& rating) { return rating.tension; }),
                    ratings(RatingsText::tr("burn"), 1, [](const ExerciseRating& rating) { return rating.burn; }),
                    ratings(RatingsText::tr("pump"), 2, [](const ExerciseRating& rating) { return rating.pump; })};
    add(std::move(panel), RatingsText::tr("tension, burn and pump"));
}

QString RatingsBuilder::gaveOutWord(const ExerciseRating& rating) const
{
    if (rating.gaveOut.isEmpty()) return {};
    if (rating.gaveOut == u"target") return RatingsText::tr("the target");
    const QString name = m_source.log.muscleName(QStringView(rating.gaveOut));
    return name.isEmpty() ? rating.gaveOut : name;
}

void RatingsBuilder::addGaveOut()
{
    QStringList words;
    for (const RatedSession& session : m_sessions)
        if (const QString word = gaveOutWord(session.logged->rating); !word.isEmpty() && !words.contains(word))
            words += word;
    words.sort();
    // The target first: it is what should give out.
    if (const auto target = words.indexOf(RatingsText::tr("the target")); target > 0) words.move(target, 0);
    PlotPanel panel;
    panel.title = RatingsText::tr("gave out first");
    panel.weight = 0.2 + 0.45 * static_cast<double>(words.size());
    setWordAxis(panel, words);
    PanelSeries series;
    for (const RatedSession& session : m_sessions)
        if (const QString word = gaveOutWord(session.logged->rating); !word.isEmpty()) {
            const auto row = words.indexOf(word);
            series.points.push_back(
                {session.x(), static_cast<double>(words.size() - 1 - row), word != RatingsText::tr("the target")});
        }
    panel.series.push_back(std::move(series));
    add(std::move(panel), RatingsText::tr("what gave out first"));
}

std::vector<PanelPoint> RatingsBuilder::discomfortOf(std::size_t joint) const
{
    struct DayRating {
        int value = 0;
        bool own = false;
    };
    std::map<QDate, DayRating> days;
    for (const LineRecord& line : m_source.log.lines)
        for (const Exposure& exposure : line.exposures) {
            const auto rating = exposure.rating.discomfort[joint];
            const double x = chartDay(exposure.date);
            if (!rating || x < m_sessions.front().x() || x > m_spec.high) continue;
            const bool own = line.id == m_source.record.id;
            DayRating& day = days[exposure.date];
            if (own)
                day = {*rating, true};
            else if (!day.own)
                day.value = std::max(day.value, *rating);
        }
    std::vector<PanelPoint> points;
    points.reserve(days.size());
    for (const auto& [date, day] : days) points.push_back({chartDay(date), static_cast<double>(day.value), !day.own});
    return points;
}

void RatingsBuilder::addDiscomfort()
{
    PlotPanel panel;
    panel.title = RatingsText::tr("discomfort, of 10");
    panel.weight = 1.9;
    setValueAxis(panel, 0, kMostRating, 2, m_options.locale);
    const double safe = kSafeDiscomfort + 0.5;
    const double acceptable = kAcceptableDiscomfort + 0.5;
    panel.zones = {{0, safe, RatingsText::tr("up to %1: safe").arg(kSafeDiscomfort), false},
                   {safe, acceptable, RatingsText::tr("up to %1: acceptable").arg(kAcceptableDiscomfort), false},
                   {acceptable, kMostRating, RatingsText::tr("above: high risk"), false}};
    for (std::size_t joint = 0; joint < kJointCount; ++joint) {
        auto points = discomfortOf(joint);
        if (std::ranges::none_of(points, [](const PanelPoint& point) { return point.y > 0; })) continue;
        const std::size_t place = m_joints.size();
        PanelSeries series{.name = format::jointWord(static_cast<Joint>(joint)),
                           .shape = kShapes[place],
                           .line = kLines[place % kLines.size()],
                           .ink = static_cast<int>(place)};
        series.points = std::move(points);
        series.runs = runsOf(series.points, kJoinDays);
        m_joints.push_back(joint);
        panel.series.push_back(std::move(series));
    }
    add(std::move(panel), RatingsText::tr("discomfort above 0"));
}

void RatingsBuilder::addNextDay()
{
    PlotPanel panel;
    panel.title = RatingsText::tr("the day after, of 10");
    setValueAxis(panel, 0, kMostRating, 2, m_options.locale);
    panel.series = {
        ratings(RatingsText::tr("soreness"), 0, [](const ExerciseRating& rating) { return rating.nextSoreness; }),
        ratings(RatingsText::tr("weakness"), 2, [](const ExerciseRating& rating) { return rating.nextWeakness; })};
    add(std::move(panel), RatingsText::tr("the day after"));
}

PanelSeries RatingsBuilder::joined(std::optional<double> RatedSession::*number, double scale) const
{
    PanelSeries series{.line = PanelLine::Solid};
    for (const RatedSession& session : m_sessions)
        if (session.*number) series.points.push_back({session.x(), scale * *(session.*number)});
    series.runs = runsOf(series.points, kJoinDays);
    return series;
}

void RatingsBuilder::addCountedShare()
{
    PlotPanel panel;
    panel.title = RatingsText::tr("counted of the watched reps, %");
    panel.column = 1;
    panel.series.push_back(joined(&RatedSession::countedShare, 100));
    setValueAxis(panel, 0, 100, 2, m_options.locale);
    add(std::move(panel), RatingsText::tr("watched repetitions"));
}

void RatingsBuilder::addMarks()
{
    std::vector<Mark> seen;
    QStringList words;
    for (const auto& row : EnumText<Mark>::table)
        if (std::ranges::any_of(m_sessions, [&](const RatedSession& one) { return one.marks.of(row.value) > 0; })) {
            seen.push_back(row.value);
            words += format::markWord(row.value);
        }
    PlotPanel panel;
    panel.title = RatingsText::tr("reps off standard, by mark");
    panel.column = 1;
    panel.weight = 0.2 + 0.5 * static_cast<double>(words.size());
    setWordAxis(panel, words);
    PanelSeries series{.shape = PanelShape::Cross, .ink = 1};
    for (const RatedSession& session : m_sessions)
        for (std::size_t i = 0; i < seen.size(); ++i)
            if (const int count = session.marks.of(seen[i]))
                series.points.push_back({session.x(), static_cast<double>(seen.size() - 1 - i), false,
                                         count > 1 ? number(count, 0) : QString()});
    panel.series.push_back(std::move(series));
    add(std::move(panel), RatingsText::tr("marks"));
}

void RatingsBuilder::addLowering()
{
    PlotPanel panel;
    panel.title = RatingsText::tr("lowering, seconds");
    panel.column = 1;
    panel.series.push_back(joined(&RatedSession::loweringSeconds));
    double most = 1;
    for (const PanelPoint& point : panel.series.front().points) most = std::max(most, point.y);
    setValueAxis(panel, 0, most, 2, m_options.locale);
    add(std::move(panel), RatingsText::tr("seconds of lowering"));
}

QString RatingsBuilder::sessionWords(const RatedSession& session) const
{
    QStringList lines{m_options.locale.toString(session.logged->date, QLocale::ShortFormat)};
    const ExerciseRating& rating = session.logged->rating;
    const auto say = [&](const QString& what, const std::optional<int>& value) {
        if (value) lines += RatingsText::tr("%1: %2 of 10").arg(what).arg(*value);
    };
    if (session.capacityKg)
        lines += RatingsText::tr("capacity %1 %2")
                     .arg(number(format::massIn(*session.capacityKg, m_options.unit), 1), toText(m_options.unit));
    say(RatingsText::tr("tension"), rating.tension);
    say(RatingsText::tr("burn"), rating.burn);
    say(RatingsText::tr("pump"), rating.pump);
    if (const QString word = gaveOutWord(rating); !word.isEmpty())
        lines += RatingsText::tr("gave out first: %1").arg(word);
    for (std::size_t joint = 0; joint < kJointCount; ++joint)
        say(RatingsText::tr("discomfort, %1").arg(format::jointWord(static_cast<Joint>(joint))),
            rating.discomfort[joint]);
    say(RatingsText::tr("soreness the day after"), rating.nextSoreness);
    say(RatingsText::tr("weakness the day after"), rating.nextWeakness);
    if (rating.none()) lines += RatingsText::tr("not rated");
    lines +=
        session.countedShare
            ? RatingsText::tr("counted %1 % of the watched repetitions").arg(number(100 * *session.countedShare, 0))
            : RatingsText::tr("not watched");
    for (const auto& row : EnumText<Mark>::table)
        if (const int count = session.marks.of(row.value))
            lines += RatingsText::tr("%1: %2").arg(format::markWord(row.value)).arg(count);
    if (session.loweringSeconds) lines += RatingsText::tr("lowered in %1 s").arg(number(*session.loweringSeconds, 1));
    return lines.join(QStringLiteral(" · "));
}

void RatingsBuilder::addStops()
{
    for (const RatedSession& session : m_sessions)
        m_spec.stops.push_back({session.x(), session.exposure, sessionWords(session)});
}

void RatingsBuilder::addTable()
{
    QStringList& header = m_spec.table.header;
    header = {RatingsText::tr("date"),       RatingsText::tr("capacity, %1").arg(toText(m_options.unit)),
              RatingsText::tr("tension"),    RatingsText::tr("burn"),
              RatingsText::tr("pump"),       RatingsText::tr("gave out first"),
              RatingsText::tr("soreness"),   RatingsText::tr("weakness"),
              RatingsText::tr("counted, %"), RatingsText::tr("lowering, s")};
    for (const std::size_t joint : m_joints)
        header += RatingsText::tr("discomfort, %1").arg(format::jointWord(static_cast<Joint>(joint)));
    for (const auto& row : EnumText<Mark>::table) header += format::markWord(row.value);
    const auto whole = [&](const std::optional<int>& value) { return value ? number(*value, 0) : QString(); };
    for (const RatedSession& session : m_sessions) {
        const ExerciseRating& rating = session.logged->rating;
        QStringList row{session.logged->date.toString(Qt::ISODate),
                        session.capacityKg ? number(format::massIn(*session.capacityKg, m_options.unit), 1) : QString(),
                        whole(rating.tension),
                        whole(rating.burn),
                        whole(rating.pump),
                        gaveOutWord(rating),
                        whole(rating.nextSoreness),
                        whole(rating.nextWeakness),
                        session.countedShare ? number(100 * *session.countedShare, 0) : QString(),
                        session.loweringSeconds ? number(*session.loweringSeconds, 1) : QString()};
        for (const std::size_t joint : m_joints) row += whole(rating.discomfort[joint]);
        for (const auto& mark : EnumText<Mark>::table) row += number(session.marks.of(mark.value), 0);
        m_spec.table.rows.push_back(row);
    }
}

}  // namespace

PanelsSpec buildRatingsSpec(const RatingsSource& source, const PanelsOptions& options)
{
    return RatingsBuilder(source, options).build();
}

}  // namespace steelyard
