#include "core/samples/club_trials.h"

#include "core/trials/trial_outcomes.h"
#include "core/trials/trial_schedule.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard {
namespace {

struct ClubTrialText {
    Q_DECLARE_TR_FUNCTIONS(ClubTrialText)
};

// Which lifters, and how many weeks before the last day it began.
struct ClubStory {
    int index;
    ClubTrial::Story story;
    int weeksAgo;
};
constexpr std::array kStories{ClubStory{5, ClubTrial::Story::Concluded, 26}, ClubStory{8, ClubTrial::Story::Running, 8},
                              ClubStory{11, ClubTrial::Story::Hurting, 13}};
constexpr int kDaysOfWeek = 7;
constexpr std::size_t kSessionDoneOtherwise = 2;  // of the one that runs, from 0

int ratingAround(double level, ClubRandom& random)
{
    return std::clamp(static_cast<int>(std::lround(level + random.normal())), 0, 10);
}

}  // namespace

std::optional<ClubTrial> ClubTrial::of(int index, const SampleClubOptions& options)
{
    const auto story = std::ranges::find(kStories, index, &ClubStory::index);
    if (story == kStories.end()) return std::nullopt;
    const QDate from = options.lastDay.addDays(-kDaysOfWeek * story->weeksAgo);
    return ClubTrial(story->story, options.seed * 7919 + static_cast<std::uint64_t>(index), from, options.lastDay);
}

ClubTrial::ClubTrial(Story story, std::uint64_t seed, QDate from, QDate lastDay)
    : m_story(story),
      m_random(seed),
      m_from(from),
      m_lastDay(lastDay),
      m_usual{Id<Athlete>(0), Id<Variant>(0), Id<Grip>(0), Id<RepStandard>(0)},
      m_trial{.athlete = Id<Athlete>(0)}
{
    m_trial.seed = seed;
}

void ClubTrial::compare(const LiftLine& usual, const LiftLine& other, const RepBand& band, const QString& question)
{
    m_usual = usual;
    m_trial.athlete = usual.athlete;
    m_trial.question = question;
    m_trial.plannedRir = Decimal(2);
    m_trial.outcomes = defaultOutcomes();
    for (const LiftLine& line : {usual, other})
        m_trial.arms.push_back({.variant = line.variant, .grip = line.grip, .standard = line.standard, .band = band});
    m_trial.arms[1].runIn = 1;
    std::vector<int> everyDay(kDaysOfWeek);
    for (int day = 0; day < kDaysOfWeek; ++day) everyDay[static_cast<std::size_t>(day)] = day + 1;
    // The order alone is wanted; dates are those of the sessions that take place.
    m_order = drawDays(m_trial, {.from = m_from, .weekdays = everyDay, .daysOff = {}, .last = {}})
                  .value_or(std::vector<TrialDay>{});
}

LiftLine ClubTrial::lineOf(std::size_t arm) const
{
    const TrialArm& of = m_trial.arms[arm];
    return {m_trial.athlete, of.variant, of.grip, of.standard};
}

bool ClubTrial::takes(const LiftLine& lift, QDate date, bool deload) const
{
    if (!isSetUp() || lift != m_usual || date < m_from) return false;
    if (m_trial.ending) return date > m_trial.ending->date;
    const bool apart = m_trial.days.empty() || m_trial.days.back().date.daysTo(date) >= m_trial.daysBetween;
    return !deload && apart && m_trial.days.size() < m_order.size();
}

LiftLine ClubTrial::train(QDate date, WrittenExposure& written)
{
    if (m_trial.ending) return lineOf(m_trial.ending->choice.value_or(0));
    TrialDay day = m_order[m_trial.days.size()];
    day.date = date;
    std::size_t arm = day.arm;
    if (m_story == Story::Running && m_trial.days.size() == kSessionDoneOtherwise) {
        arm = 1 - arm;
        day.note = ClubTrialText::tr("the other bar was taken");
    }
    if (m_trial.days.empty()) m_trial.designedOn = date.addDays(-2);
    m_trial.days.push_back(day);
    rate(arm, written.rating);
    endWhenDue(date, arm);
    return lineOf(arm);
}

void ClubTrial::rate(std::size_t arm, ExerciseRating& rating)
{
    const double better = m_story == Story::Concluded && arm == 1 ? 3 : 0;
    rating = {};
    rating.tension = ratingAround(5 + better, m_random);
    rating.burn = ratingAround(5, m_random);
    rating.pump = ratingAround(6 + better / 2, m_random);
    rating.gaveOut =
        m_random.chance(better > 0 ? 0.95 : 0.4) ? QStringLiteral("target") : QStringLiteral("forearm_flexors");
    const bool hurts = m_story == Story::Hurting && arm == 1 && m_trial.days.size() > 2;
    rating.discomfort[static_cast<std::size_t>(Joint::Wrist)] = hurts ? m_random.integer(5, 6) : m_random.integer(0, 1);
    m_hurtRunning = hurts ? m_hurtRunning + 1 : m_hurtRunning;
}

void ClubTrial::endWhenDue(QDate date, std::size_t arm)
{
    if (m_story == Story::Concluded && m_trial.days.size() == m_order.size())
        m_trial.ending = TrialEnding{date, TrialEnd::Concluded, {}, 1};
    if (m_story == Story::Hurting && arm == 1 && m_hurtRunning >= m_trial.limit.sessionsRunning)
        m_trial.ending =
            TrialEnding{date, TrialEnd::Discomfort, ClubTrialText::tr("the wrist complained two sessions running"), 0};
}

std::optional<Trial> ClubTrial::finish(int weekday)
{
    if (m_trial.days.empty()) return std::nullopt;
    QDate date = (m_trial.ending ? m_trial.ending->date : m_lastDay).addDays(1);
    while (date.dayOfWeek() != weekday) date = date.addDays(1);
    while (m_trial.days.size() < m_order.size()) {
        TrialDay day = m_order[m_trial.days.size()];
        day.date = date;
        m_trial.days.push_back(day);
        date = date.addDays(kDaysOfWeek);
    }
    return m_trial;
}

}  // namespace steelyard
