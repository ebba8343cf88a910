#include "ui/charts/trial_course_spec.h"

#include "ui/format/format.h"
#include "ui/format/trial_words.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <array>
#include <functional>

namespace steelyard {
namespace {

struct TrialCourseText {
    Q_DECLARE_TR_FUNCTIONS(TrialCourseText)
};

constexpr double kMostTrialRating = 10;
constexpr int kAnswerDecimals = 1;

class CourseBuilder {
public:
    CourseBuilder(const TrialCourseSource& source, const QLocale& locale) : m_source(source), m_locale(locale) {}

    [[nodiscard]] PanelsSpec build(bool onlyDiscomfort);

private:
    using ValueOf = std::function<std::optional<double>(const TrialObservation&)>;

    void setSessionAxis(bool withLevels);
    void addAnswer();
    void addOutcomes();
    void addJoints();
    void addStops();
    void addTable();
    [[nodiscard]] PlotPanel panelOf(const QString& title, const OutcomeEffects* effects, const ValueOf& value,
                                    OutcomeScale scale);
    void setScale(PlotPanel& panel, OutcomeScale scale) const;
    void addTrend(PlotPanel& panel, const OutcomeEffects& effects) const;
    void addLevels(PlotPanel& panel, const OutcomeEffects& effects) const;
    void add(PlotPanel panel);
    [[nodiscard]] bool counts(const TrialObservation& seen) const { return seen.block > 0 && seen.done == seen.drawn; }
    [[nodiscard]] double xOf(const TrialObservation& seen) const { return static_cast<double>(seen.day) + 1; }
    [[nodiscard]] double levelX(std::size_t arm) const
    {
        return m_sessions + 1.6 + static_cast<double>(arm) * m_armStep;
    }
    [[nodiscard]] QString sessionWords(const TrialObservation& seen, const std::optional<double>& answer) const;

    const TrialCourseSource& m_source;
    const QLocale& m_locale;
    PanelsSpec m_spec;
    double m_sessions = 0;
    double m_armStep = 1;
    std::vector<std::size_t> m_joints;  // rated above 0
};

PanelsSpec CourseBuilder::build(bool onlyDiscomfort)
{
    const auto& seen = m_source.record.observations;
    if (std::ranges::none_of(seen, [](const TrialObservation& one) { return one.done.has_value(); })) return {};
    for (std::size_t joint = 0; joint < kJointCount; ++joint)
        if (std::ranges::any_of(seen,
                                [&](const TrialObservation& one) { return one.discomfort[joint].value_or(0) > 0; }))
            m_joints.push_back(joint);
    setSessionAxis(!onlyDiscomfort);
    if (!onlyDiscomfort) {
        addAnswer();
        addOutcomes();
    }
    addJoints();
    if (m_spec.panels.empty()) return {};
    addStops();
    addTable();
    return std::move(m_spec);
}

void CourseBuilder::setSessionAxis(bool withLevels)
{
    m_sessions = static_cast<double>(m_source.trial.days.size());
    m_armStep = std::max(1.0, m_sessions / 8);
    m_spec.low = 0.3;
    m_spec.high = withLevels ? levelX(m_source.trial.arms.size()) : m_sessions + 0.7;
    m_spec.axisTitle = TrialCourseText::tr("session");
    const int step = m_sessions > 20 ? 8 : m_sessions > 10 ? 4 : 2;
    for (int tick = step; tick <= static_cast<int>(m_sessions); tick += step)
        m_spec.ticks.push_back({static_cast<double>(tick), m_locale.toString(tick)});
    for (std::size_t arm = 0; withLevels && arm < m_source.trial.arms.size(); ++arm)
        m_spec.ticks.push_back({levelX(arm), armLetter(arm)});
    double runIn = 0;
    for (const TrialDay& day : m_source.trial.days) runIn += day.block == 0 ? 1 : 0;
    if (runIn > 0) m_spec.shades.push_back({m_spec.low, runIn + 0.5});
}

void CourseBuilder::setScale(PlotPanel& panel, OutcomeScale scale) const
{
    if (scale == OutcomeScale::Rating) return setValueAxis(panel, 0, kMostTrialRating, 2, m_locale);
    if (scale == OutcomeScale::YesNo) {
        panel.low = -0.15;
        panel.high = 1.15;
        panel.ticks = {{0, TrialCourseText::tr("no")}, {1, TrialCourseText::tr("yes")}};
        return;
    }
    double low = -1;
    double high = 1;
    for (const PanelSeries& series : panel.series)
        for (const PanelPoint& point : series.points) {
            low = std::min(low, point.y);
            high = std::max(high, point.y);
        }
    setValueAxis(panel, low, high, 2, m_locale);
}

PlotPanel CourseBuilder::panelOf(const QString& title, const OutcomeEffects* effects, const ValueOf& value,
                                 OutcomeScale scale)
{
    PlotPanel panel;
    panel.title = title;
    for (std::size_t arm = 0; arm < m_source.trial.arms.size(); ++arm) {
        PanelSeries series{.shape = armShape(arm), .ink = static_cast<int>(arm)};
        for (const TrialObservation& seen : m_source.record.observations)
            if (const auto at = value(seen); at && seen.done == arm)
                series.points.push_back({xOf(seen), *at, !counts(seen)});
        panel.series.push_back(std::move(series));
    }
    setScale(panel, scale);
    if (!effects) return panel;
    addTrend(panel, *effects);
    addLevels(panel, *effects);
    return panel;
}

void CourseBuilder::addTrend(PlotPanel& panel, const OutcomeEffects& effects) const
{
    double sum = 0;
    int arms = 0;
    for (const ArmLevel& level : effects.arms)
        if (level.level) {
            sum += *level.level;
            ++arms;
        }
    if (!effects.trend || arms == 0) return;
    std::vector<double> counting;
    for (const TrialObservation& seen : m_source.record.observations)
        if (seen.block > 0 && seen.done) counting.push_back(xOf(seen));
    if (counting.size() < 2) return;
    const auto within = [&](double y) { return std::clamp(y, panel.low, panel.high); };
    const double middle = sum / arms;
    panel.series.push_back({.shape = PanelShape::None,
                            .line = PanelLine::Dot,
                            .ink = static_cast<int>(m_source.trial.arms.size()),
                            .runs = {{{counting.front(), within(middle - *effects.trend / 2)},
                                      {counting.back(), within(middle + *effects.trend / 2)}}}});
}

void CourseBuilder::addLevels(PlotPanel& panel, const OutcomeEffects& effects) const
{
    const auto within = [&](double y) { return std::clamp(y, panel.low, panel.high); };
    for (std::size_t arm = 0; arm < effects.arms.size(); ++arm) {
        const ArmLevel& level = effects.arms[arm];
        if (!level.level) continue;
        PanelSeries series{
            .shape = armShape(arm), .line = PanelLine::Solid, .ink = static_cast<int>(arm), .thick = 1.6};
        series.points.push_back({levelX(arm), within(*level.level)});
        if (level.low90 && level.high90)
            series.runs.push_back({{levelX(arm), within(*level.low90)}, {levelX(arm), within(*level.high90)}});
        panel.series.push_back(std::move(series));
    }
}

// Two columns of about the same height, filled row by row.
void CourseBuilder::add(PlotPanel panel)
{
    const bool any = std::ranges::any_of(panel.series, [](const PanelSeries& one) { return !one.points.empty(); });
    if (!any) return;
    panel.column = static_cast<int>(m_spec.panels.size() % 2);
    // The key stands once.
    if (m_spec.panels.empty())
        for (std::size_t arm = 0; arm < m_source.trial.arms.size(); ++arm) panel.series[arm].name = armLetter(arm);
    m_spec.panels.push_back(std::move(panel));
}

void CourseBuilder::addAnswer()
{
    if (!m_source.effects || !m_source.effects->answer) return;
    const auto answers = sessionAnswers(m_source.trial, m_source.record);
    const ValueOf value = [&](const TrialObservation& seen) {
        return answers[static_cast<std::size_t>(&seen - m_source.record.observations.data())];
    };
    add(panelOf(TrialCourseText::tr("all weighed, of 10"), &*m_source.effects->answer, value, OutcomeScale::Rating));
}

void CourseBuilder::addOutcomes()
{
    std::vector<TrialOutcome> order = m_source.trial.outcomes;
    std::ranges::stable_sort(order, std::ranges::greater(), &TrialOutcome::weight);
    for (const TrialOutcome& outcome : order) {
        const OutcomeKind* kind = findOutcome(outcome.key);
        // Discomfort is told apart by joint below, where somebody had any.
        if (!kind || (outcome.key == u"discomfort" && !m_joints.empty())) continue;
        const QString unit = kind->scale == OutcomeScale::YesNo ? QString() : QStringLiteral(", ") + kind->unit();
        add(panelOf(
            kind->title().toLower() + unit, m_source.effects ? m_source.effects->outcome(outcome.key) : nullptr,
            [&](const TrialObservation& seen) { return seen.value(outcome.key); }, kind->scale));
    }
}

void CourseBuilder::addJoints()
{
    for (const std::size_t joint : m_joints) {
        PlotPanel panel = panelOf(
            TrialCourseText::tr("discomfort, %1, of 10").arg(format::jointWord(static_cast<Joint>(joint))), nullptr,
            [&](const TrialObservation& seen) -> std::optional<double> {
                if (!seen.discomfort[joint]) return std::nullopt;
                return static_cast<double>(*seen.discomfort[joint]);
            },
            OutcomeScale::Rating);
        const double limit = m_source.trial.limit.rating - 0.5;
        panel.zones = {{0, limit, TrialCourseText::tr("limit: %1").arg(m_source.trial.limit.rating), false},
                       {limit, kMostTrialRating, {}, false}};
        add(std::move(panel));
    }
}

QString CourseBuilder::sessionWords(const TrialObservation& seen, const std::optional<double>& answer) const
{
    QStringList parts{TrialCourseText::tr("Session %1, %2").arg(seen.day + 1).arg(format::date(seen.date))};
    parts += seen.done ? format::armTitle(m_source.armNames, *seen.done) : TrialCourseText::tr("not done");
    if (seen.done && *seen.done != seen.drawn)
        parts += TrialCourseText::tr("drawn was %1: not counted for either where only what was drawn counts")
                     .arg(armLetter(seen.drawn));
    if (seen.block == 0) parts += TrialCourseText::tr("getting used to it, doesn’t count");
    if (answer) parts += TrialCourseText::tr("all weighed: %1 of 10").arg(format::number(*answer, kAnswerDecimals));
    for (const OutcomeValue& value : seen.values) {
        const OutcomeKind* kind = findOutcome(value.key);
        if (!kind) continue;
        parts += kind->scale == OutcomeScale::YesNo
                     ? TrialCourseText::tr("%1: %2").arg(
                         kind->title(), value.value > 0 ? TrialCourseText::tr("yes") : TrialCourseText::tr("no"))
                     : TrialCourseText::tr("%1: %2").arg(kind->title(), format::shortNumber(value.value));
    }
    for (const std::size_t joint : m_joints)
        if (seen.discomfort[joint])
            parts += TrialCourseText::tr("discomfort, %1: %2")
                         .arg(format::jointWord(static_cast<Joint>(joint)))
                         .arg(*seen.discomfort[joint]);
    return parts.join(QStringLiteral(" · "));
}

void CourseBuilder::addStops()
{
    const auto answers = m_source.effects ? sessionAnswers(m_source.trial, m_source.record)
                                          : std::vector<std::optional<double>>(m_source.record.observations.size());
    for (std::size_t i = 0; i < m_source.record.observations.size(); ++i) {
        const TrialObservation& seen = m_source.record.observations[i];
        m_spec.stops.push_back({xOf(seen), static_cast<int>(seen.day), sessionWords(seen, answers[i])});
    }
    m_spec.summary = TrialCourseText::tr("%n session(s) so far.", nullptr, static_cast<int>(m_spec.stops.size()));
}

void CourseBuilder::addTable()
{
    QStringList& header = m_spec.table.header;
    header = {TrialCourseText::tr("session"), TrialCourseText::tr("date"), TrialCourseText::tr("block"),
              TrialCourseText::tr("drawn"), TrialCourseText::tr("done")};
    std::vector<QString> keys;
    for (const TrialOutcome& outcome : m_source.trial.outcomes)
        if (m_source.effects && findOutcome(outcome.key)) {
            keys.push_back(outcome.key);
            header += outcomeTitle(outcome.key);
        }
    for (const std::size_t joint : m_joints)
        header += TrialCourseText::tr("discomfort, %1").arg(format::jointWord(static_cast<Joint>(joint)));
    for (const TrialObservation& seen : m_source.record.observations) {
        QStringList row{m_locale.toString(static_cast<int>(seen.day) + 1), seen.date.toString(Qt::ISODate),
                        m_locale.toString(seen.block), armLetter(seen.drawn),
                        seen.done ? armLetter(*seen.done) : QString()};
        for (const QString& key : keys) {
            const auto value = seen.value(key);
            row += value ? format::shortNumber(*value) : QString();
        }
        for (const std::size_t joint : m_joints)
            row += seen.discomfort[joint] ? m_locale.toString(*seen.discomfort[joint]) : QString();
        m_spec.table.rows.push_back(row);
    }
}

}  // namespace

PanelShape armShape(std::size_t arm)
{
    constexpr std::array shapes{PanelShape::Disc, PanelShape::Square, PanelShape::Triangle, PanelShape::Diamond};
    return shapes.at(arm % shapes.size());
}

PanelsSpec buildTrialCourse(const TrialCourseSource& source, const QLocale& locale)
{
    return CourseBuilder(source, locale).build(false);
}

PanelsSpec buildTrialDiscomfort(const TrialCourseSource& source, const QLocale& locale)
{
    return CourseBuilder(source, locale).build(true);
}

}  // namespace steelyard
