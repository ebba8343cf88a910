#include "core/analysis/weekday_habits.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr double kKept = 0.985;         // of a session's say, at the next one
constexpr double kEffectSd = 0.03;      // of a weekday where they differ: two and a half percent of load
constexpr double kPrior = 0.2;          // that they differ
constexpr double kUsualSd = 0.045;      // of a session about what is expected, before the record says
constexpr double kUsualSdSessions = 8;  // what that is worth
constexpr double kMostAway = 3;         // in standard deviations; a bad day is no habit
constexpr double kLeastSessions = 2.5;  // of each of two days

double square(double x)
{
    return x * x;
}

}  // namespace

void WeekdayHabits::take(QDate date, double away)
{
    double sessions = 0;
    for (std::size_t day = 0; day < kDays; ++day) sessions += m_sessions[day];
    const double sd = std::sqrt((m_squares + kUsualSdSessions * square(kUsualSd)) / (sessions + kUsualSdSessions));
    const std::size_t today = dayOf(date);
    const double held = std::clamp(away, -kMostAway * sd, kMostAway * sd);
    for (std::size_t day = 0; day < kDays; ++day) {
        m_sessions[day] *= kKept;
        m_away[day] *= kKept;
    }
    m_squares = kKept * m_squares + square(held - m_effect[today]);
    m_sessions[today] += 1;
    m_away[today] += held;
    weigh();
}

void WeekdayHabits::weigh()
{
    double sessions = 0;
    double sum = 0;
    int often = 0;
    for (std::size_t day = 0; day < kDays; ++day) {
        sessions += m_sessions[day];
        sum += m_away[day];
        often += m_sessions[day] >= kLeastSessions ? 1 : 0;
    }
    m_effect.fill(0);
    m_chance = kPrior;
    if (often < 2) return;
    const double variance = (m_squares + kUsualSdSessions * square(kUsualSd)) / (sessions + kUsualSdSessions);
    const double mean = sum / sessions;
    double logOdds = std::log(kPrior / (1 - kPrior));
    double effectMean = 0;
    for (std::size_t day = 0; day < kDays; ++day) {
        const double n = m_sessions[day];
        const double about = m_away[day] - n * mean;
        const double total = variance + n * square(kEffectSd);
        logOdds += 0.5 * (std::log(variance / total) + square(about) * square(kEffectSd) / (variance * total));
        m_effect[day] = about * square(kEffectSd) / total;
        effectMean += n / sessions * m_effect[day];
    }
    m_chance = 1 / (1 + std::exp(-logOdds));
    for (std::size_t day = 0; day < kDays; ++day)
        m_effect[day] = m_sessions[day] > 0 ? m_chance * (m_effect[day] - effectMean) : 0;
}

}  // namespace steelyard
