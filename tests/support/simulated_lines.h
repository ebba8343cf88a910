// Lift lines drawn from the readings' own model (the equations in core/numerics/regime_filter.h and its weekly change of
// segments), so that a fit can be asked for numbers that are known.
//
//   const auto lines = simulatedLines(planted, {.lines = 30, .seed = 1});
//
// Two sessions a week of three exact sets, at loads around what the level of the week allows.
#pragma once

#include "core/analysis/fit_line.h"

#include <cmath>
#include <random>

namespace steelyard::testing_support {

struct SimulatedRoster {
    int lines = 30;
    int weeks = 40;
    unsigned seed = 1;
};

class SimulatedLine {
public:
    SimulatedLine(const ReadingParameters& parameters, Experience experience, unsigned seed)
        : m_p(parameters.filter), m_pace(parameters.paces[static_cast<std::size_t>(experience)]), m_random(seed)
    {
        m_elasticity = normal(m_p.elasticityMean, m_p.elasticitySd);
        m_fatigue = normal(m_p.fatigueMean, m_p.fatigueSd);
        m_readiness = normal(0, m_p.weekNoise);
        begin(drawn(m_p.start));
        m_line.experience = experience;
    }

    FitLine run(int weeks)
    {
        for (int week = 0; week < weeks; ++week) {
            if (week > 0) passWeek();
            for (const int day : {1, 4}) train(kFirstMonday + 7 * week + day, week);
        }
        return m_line;
    }

private:
    static constexpr int kFirstMonday = 7 * 350'000;  // Julian days

    double normal(double mean, double sd) { return std::normal_distribution<>(mean, sd)(m_random); }
    bool happens(double chance) { return std::bernoulli_distribution(chance)(m_random); }
    std::size_t drawn(const std::array<double, 3>& weights)
    {
        return std::discrete_distribution<std::size_t>(weights.begin(), weights.end())(m_random);
    }

    void begin(std::size_t regime)
    {
        m_regime = regime;
        m_age = 0;
        const std::array<RegimePace, 3> paces{m_pace, {0, m_p.flatSd}, {m_p.fallMean, m_p.fallSd}};
        m_slope = normal(paces[regime].mean, paces[regime].sd);
    }

    void passWeek()
    {
        m_readiness =
            m_p.weekMemory * m_readiness + normal(0, m_p.weekNoise * std::sqrt(1 - m_p.weekMemory * m_p.weekMemory));
        auto row = m_p.change[m_regime];
        if (happens((1 - row[m_regime]) * (m_age < m_p.youngWeeks ? m_p.youngShare : 1))) {
            row[m_regime] = 0;
            begin(drawn(row));
            m_level += normal(0, m_p.changeJump);
        } else {
            ++m_age;
        }
    }

    void train(int day, int week)
    {
        const double gone = m_day > 0 ? (day - m_day) / 7.0 : 0;
        m_day = day;
        m_level += m_slope * gone + normal(0, m_p.levelNoise * std::sqrt(gone));
        double form = m_readiness + normal(0, m_p.dayNoise);
        if (happens(m_p.offShare)) form += normal(m_p.offMean, m_p.offSd);
        FitSession session{static_cast<double>(day), weekOf(QDate::fromJulianDay(day)), {}};
        for (int number = 1; number <= 3; ++number) {
            // Eight to failure or so, with heavier and lighter weeks.
            RegimeObservation set;
            set.lnLoad = (m_level - 0.25) / m_elasticity + 0.05 * (week % 3 - 1);
            set.fatigue = fatigueOfSet(number);
            set.repError = 0.02;
            const double counting = m_p.repErrorShare * set.repError;
            const double sd = std::sqrt(m_p.setNoise * m_p.setNoise + counting * counting);
            const double t = std::student_t_distribution<>(m_p.tail)(m_random);
            set.z = m_level + form - m_elasticity * set.lnLoad - m_fatigue * set.fatigue
                    + sd * std::sqrt((m_p.tail - 2) / m_p.tail) * t;
            session.sets.push_back(set);
        }
        m_line.sessions.push_back(session);
    }

    RegimeParameters m_p;
    RegimePace m_pace;
    std::mt19937_64 m_random;
    FitLine m_line;
    std::size_t m_regime = 0;
    int m_age = 0;
    int m_day = 0;
    double m_level = 0.25;
    double m_slope = 0;
    double m_readiness = 0;
    double m_elasticity = 1;
    double m_fatigue = 0;
};

// Novices, intermediates and advanced lifters by turns.
inline std::vector<FitLine> simulatedLines(const ReadingParameters& parameters, SimulatedRoster roster)
{
    std::vector<FitLine> lines;
    for (int i = 0; i < roster.lines; ++i) {
        const auto experience = static_cast<Experience>(i % 3);
        lines.push_back(
            SimulatedLine(parameters, experience, 1000 * roster.seed + static_cast<unsigned>(i)).run(roster.weeks));
    }
    return lines;
}

}  // namespace steelyard::testing_support
