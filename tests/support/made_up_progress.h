// Series of sessions whose truth is known: strength that rises, stays or falls at a set rate, seen through the noise that
// sessions have. For tests of readings; no measured data.
//
//   AthleteLog log = madeUpProgress({.risePerWeek = 0.005, .weeks = 40, .perWeek = 2, .seed = 7}, lastDay);
//
// The noise (shares of load): 1.8 % from day to day, 1.1 % from set to set, 0.8 % that carries over from week to week (60 %),
// and a bad day of 5 % in 30: about 2.5 % in all, as published for retests (Mitter et al. 2022, PLOS ONE e0268074; Grgic et al.
// 2020, Sports Med Open 6:31). How it is split is our assumption.
#pragma once

#include "tests/support/log_builder.h"

#include <cmath>
#include <random>

namespace steelyard::testing_support {

struct ProgressCase {
    Experience experience = Experience::Intermediate;
    double risePerWeek = 0;
    int turnsInWeek = 1000;  // from then on the rate is afterTurn
    double afterTurn = 0;
    int weeks = 40;
    int perWeek = 2;
    unsigned seed = 1;
};

inline AthleteLog madeUpProgress(const ProgressCase& c, QDate lastDay)
{
    std::mt19937_64 engine(c.seed);
    // Box and Muller, because std::normal_distribution may differ between libraries.
    const auto normal = [&] {
        const auto uniform = [&] { return (static_cast<double>(engine() >> 11) + 0.5) / 9007199254740992.0; };
        const double radius = std::sqrt(-2 * std::log(uniform()));
        return radius * std::cos(6.283185307179586 * uniform());
    };
    LogBuilder builder;
    builder.experience(c.experience).line(QStringLiteral("Arm curl"));
    double strength = 0;
    double readiness = 0;
    const QDate first = lastDay.addDays(1 - 7 * c.weeks);
    for (int week = 0; week < c.weeks; ++week) {
        strength += week < c.turnsInWeek ? c.risePerWeek : c.afterTurn;
        readiness = 0.6 * readiness + 0.8 * 0.008 * normal();
        for (int session = 0; session < c.perWeek; ++session) {
            const double badDay = engine() % 30 == 0 ? 0.05 : 0;
            const double ln = strength + readiness + 0.018 * normal() + 0.011 * normal() - badDay;
            builder.exposure(first.addDays(7 * week + session * 7 / c.perWeek),
                             {{.load = 40 * std::exp(ln), .reps = 9, .off = 0, .rir = 1}});
        }
    }
    return builder.build();
}

}  // namespace steelyard::testing_support
