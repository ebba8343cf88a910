// A lifter with several lines whose truth is known: each goes its own way, or from some week on they fall together. For tests
// of what is shared between lines; no measured data.
//
//   const AthleteLog log = madeUpLifter({.lines = 6, .fallsFromWeek = 20, .fall = 0.007, .weeks = 25, .seed = 3}, lastDay);
//
// On its own a line rises by 0.4 % a week, and each week may turn: to level, to falling by 0.6 % a week, and back. The noise
// (shares of load) is that of made_up_progress.h, of which the week's readiness, the bad days and half of the variance between
// days are the lifter's and so are the same for every line. That split is our assumption.
#pragma once

#include "tests/support/log_builder.h"

#include <array>
#include <cmath>
#include <random>

namespace steelyard::testing_support {

struct LifterCase {
    int lines = 6;
    int fallingLines = 6;  // the first so many fall from that week on
    int fallsFromWeek = 1000;
    double fall = 0.007;
    bool turns = true;  // lines may change their way before
    int weeks = 40;
    int perWeek = 2;
    unsigned seed = 1;
};

class LifterChance {
public:
    explicit LifterChance(unsigned seed) : m_engine(seed) {}
    double uniform() { return (static_cast<double>(m_engine() >> 11) + 0.5) / 9007199254740992.0; }
    // Box and Muller, because std::normal_distribution may differ between libraries.
    double normal()
    {
        const double radius = std::sqrt(-2 * std::log(uniform()));
        return radius * std::cos(6.283185307179586 * uniform());
    }

private:
    std::mt19937_64 m_engine;
};

// Rates of a line by week.
inline std::vector<double> madeUpWay(const LifterCase& c, int line, LifterChance& chance)
{
    constexpr std::array<double, 3> kRates{0.004, 0, -0.006};
    constexpr std::array<std::array<double, 3>, 3> kTurns{
        {{0.96, 0.034, 0.006}, {0.08, 0.91, 0.01}, {0.22, 0.04, 0.74}}};
    std::vector<double> rates;
    std::size_t way = 0;
    for (int week = 0; week < c.weeks; ++week) {
        const double u = chance.uniform();
        if (c.turns) way = u < kTurns[way][0] ? 0 : u < kTurns[way][0] + kTurns[way][1] ? 1 : 2;
        rates.push_back(week >= c.fallsFromWeek && line < c.fallingLines ? -c.fall : kRates[way]);
    }
    return rates;
}

inline AthleteLog madeUpLifter(const LifterCase& c, QDate lastDay)
{
    LifterChance chance(c.seed);
    const auto sessions = static_cast<std::size_t>(c.weeks * c.perWeek);
    std::vector<double> shared(sessions);
    double readiness = 0;
    for (std::size_t i = 0; i < sessions; ++i) {
        if (i % static_cast<std::size_t>(c.perWeek) == 0) readiness = 0.6 * readiness + 0.8 * 0.008 * chance.normal();
        shared[i] = readiness + 0.0127 * chance.normal() - (chance.uniform() < 1.0 / 30 ? 0.05 : 0);
    }
    LogBuilder builder;
    const QDate first = lastDay.addDays(1 - 7 * c.weeks);
    for (int line = 0; line < c.lines; ++line) {
        builder.line(QStringLiteral("Lift %1").arg(line + 1));
        const auto rates = madeUpWay(c, line, chance);
        double strength = 0;
        for (std::size_t i = 0; i < sessions; ++i) {
            const int week = static_cast<int>(i) / c.perWeek;
            const int session = static_cast<int>(i) % c.perWeek;
            if (session == 0) strength += rates[static_cast<std::size_t>(week)];
            const double ln = strength + shared[i] + 0.0127 * chance.normal() + 0.011 * chance.normal();
            builder.exposure(first.addDays(7 * week + session * 7 / c.perWeek),
                             {{.load = 40 * std::exp(ln), .reps = 9, .off = 0, .rir = 1}});
        }
    }
    return builder.build();
}

}  // namespace steelyard::testing_support
