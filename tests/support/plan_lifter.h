// A lifter whose truth is known, who follows plans: what is planned is lifted, stopped where the lifter believes the planned
// reserve to be, and written down. For measuring plans; no measured data.
//
//   PlanLifter lifter(Experience::Novice, {8, 12}, seed);
//   lifter.train(day, {Load 42.5 kg, sets 3, reserve 2})      -> the sets as they stand in the log
//
// It is the simulator that the verdicts are judged by (tests/benchmarks/verdicts: training.py, capacity.py, rep_curves.py,
// roster_settings.py), reduced to one clean line: stretches of progress, stall and regress by experience; a repetition curve of its
// own, ln(1 + R/c) in proportion to ln(capacity/load) with c from 22 to 40, which is deliberately not the readings' 30; fatigue
// that depends on how hard the sets before were; noise of day, week and set, and off days; a reserve that is misjudged. Sizes are
// the ones there, with their sources (Mitter et al. 2022, Refalo et al. 2023, Halperin et al. 2022, Hackett et al. 2017).
#pragma once

#include "core/domain/athlete.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <random>
#include <vector>

namespace steelyard::testing_support {

struct PlannedWork {
    double kg = 0;
    int sets = 3;
    double reserve = 2;
    std::optional<int> stopsAt = {};  // a deload: no more than so many
};

struct LiftedSet {
    int reps = 0;
    double reported = 0;  // reserve as it is written down
    bool failed = false;
};

class PlanLifter {
public:
    PlanLifter(Experience experience, unsigned seed) : m_random(seed)
    {
        const auto level = static_cast<std::size_t>(experience);
        m_noise = std::exp(normal(0, 0.25));
        m_reserveBias = normal(0.4, 0.5);
        m_curve = between(22, 40);
        const double repsAt75 = std::max(5.0, normal(11.5, 2.8));
        m_elasticity = std::log(1 + repsAt75 / m_curve) / std::log(1 / 0.75);
        m_fatigue = std::max(0.005, normal(0.03, 0.01));
        m_level = std::log(kUsualMaxKg * kStrength[level]) + normal(0, 0.25);
        m_experience = level;
        m_pace = between(kSlopes[level].first, kSlopes[level].second);
        begin(happens(0.8) ? Way::Progress : Way::Stall);
    }

    // The load that brings so many repetitions to failure on a usual day: what a set to build up to finds.
    [[nodiscard]] double loadForReps(double repsToFailure) const
    {
        return std::exp(m_level - std::log(1 + repsToFailure / m_curve) / m_elasticity);
    }

    // Goes on to the day; it never goes back.
    void passTo(int day)
    {
        for (; m_day < day; ++m_day) {
            m_level += m_slope / 100 / 7;
            if (m_day % 7 != 6) continue;
            m_readiness = 0.6 * m_readiness + normal(0, 0.008 * m_noise * std::sqrt(1 - 0.36));
            if (--m_weeksLeft <= 0) turn();
        }
    }

    [[nodiscard]] std::vector<LiftedSet> train(const PlannedWork& work)
    {
        const double effect = normal(0, 0.016 * m_noise) + m_readiness + (happens(0.03) ? normal(-0.06, 0.02) : 0.0);
        double tired = 0;
        std::vector<LiftedSet> sets;
        for (int number = 0; number < work.sets; ++number) {
            const double capacity = m_level + effect - m_fatigue * tired + normal(0, 0.011 * m_noise);
            const double possible = std::max(0.3, m_curve * std::expm1(m_elasticity * (capacity - std::log(work.kg))));
            const double stop = stopAt(work.reserve);
            LiftedSet set;
            set.reps = static_cast<int>(std::floor(std::max(0.0, possible - stop)));
            if (work.stopsAt) set.reps = std::min(set.reps, *work.stopsAt);
            const double left = possible - set.reps;
            set.failed = left < 1 && happens(0.6);
            set.reported = left < 1 ? 0 : std::round(std::min(8.0, felt(left)));
            sets.push_back(set);
            tired = tired * 0.85 + std::exp(-0.25 * std::max(0.0, left - 0.5));
        }
        return sets;
    }

private:
    enum class Way { Progress, Stall, Regress };
    static constexpr double kUsualMaxKg = 80;
    static constexpr std::array kStrength{0.65, 1.0, 1.35};
    static constexpr std::array<std::pair<double, double>, 3> kSlopes{{{1.0, 2.0}, {0.3, 0.7}, {0.05, 0.2}}};
    static constexpr std::array kSlowing{0.85, 0.95, 1.0};

    void begin(Way way)
    {
        m_way = way;
        switch (way) {
        case Way::Progress:
            m_weeksLeft = weeks(16, 8);
            m_slope = m_pace * between(0.75, 1.25);
            m_pace *= kSlowing[m_experience];
            break;
        case Way::Stall:
            m_weeksLeft = weeks(7, 6);
            m_slope = normal(0, 0.02);
            break;
        case Way::Regress:
            m_weeksLeft = weeks(2, 4);
            m_slope = between(-1.0, -0.3);
            break;
        }
    }
    void turn()
    {
        if (m_way == Way::Progress)
            begin(happens(0.84) ? Way::Stall : Way::Regress);
        else if (m_way == Way::Stall)
            begin(happens(0.82) ? Way::Progress : Way::Regress);
        else
            begin(happens(0.6) ? Way::Progress : Way::Stall);
    }
    // True reserve at which the felt one reaches what is planned.
    double stopAt(double planned)
    {
        if (planned < 0.5) return 0;
        const double spread = 0.45 + 0.22 * planned;
        return std::max(0.0, (planned + m_reserveBias + normal(0, spread)) / 0.9);
    }
    double felt(double reserve)
    {
        return std::max(0.0, reserve * 0.9 - m_reserveBias + normal(0, 0.5 * (0.45 + 0.22 * reserve)));
    }
    int weeks(int mean, int fewest)
    {
        const double extra = std::log(share()) / std::log(1 - 1.0 / (mean + 1.0));
        return fewest + static_cast<int>(std::floor(extra));
    }
    double share() { return (static_cast<double>(m_random()) + 1) / (static_cast<double>(std::mt19937::max()) + 2); }
    double between(double low, double high) { return low + (high - low) * share(); }
    bool happens(double chance) { return share() < chance; }
    double normal(double mean, double sd)  // Box and Muller, so that every library draws the same
    {
        const double radius = std::sqrt(-2 * std::log(share()));
        return mean + sd * radius * std::cos(2 * std::numbers::pi * share());
    }

    std::mt19937 m_random;
    std::size_t m_experience = 0;
    double m_noise = 1;
    double m_reserveBias = 0;
    double m_curve = 30;
    double m_elasticity = 1.2;
    double m_fatigue = 0.03;
    double m_level = 0;
    double m_pace = 0;
    double m_slope = 0;
    double m_readiness = 0;
    Way m_way = Way::Progress;
    int m_weeksLeft = 8;
    int m_day = 0;
};

}  // namespace steelyard::testing_support
