// Trials for tests: arms that differ in grip, days drawn on Mondays and Thursdays, a record in which all was done as drawn.
//
//   const Trial trial = madeTrial({.blocks = 6});
//   const TrialRecord record = madeRecord(trial, [](const TrialDay& day, std::size_t) { return tension(day.arm == 1 ? 8 : 5); });
#pragma once

#include "core/trials/trial_record.h"
#include "core/trials/trial_schedule.h"

namespace steelyard::testing_support {

inline const QDate kTrialMonday(2027, 1, 4);

struct MadeTrialShape {
    std::size_t arms = 2;
    int blocks = 6;
    int runIn = 0;
    std::uint64_t seed = 5;
};

inline Trial madeTrial(const MadeTrialShape& shape = {})
{
    Trial trial{.athlete = Id<Athlete>(1)};
    trial.question = QStringLiteral("Which grip?");
    trial.designedOn = kTrialMonday;
    trial.blocks = shape.blocks;
    trial.seed = shape.seed;
    for (std::size_t arm = 0; arm < shape.arms; ++arm)
        trial.arms.push_back({Id<Variant>(1),
                              Id<Grip>(static_cast<std::int64_t>(arm) + 1),
                              Id<RepStandard>(1),
                              {8, 12},
                              {},
                              shape.runIn});
    trial.outcomes = {{QStringLiteral("tension"), 1}};
    trial.days = drawDays(trial, {.from = kTrialMonday, .weekdays = {1, 4}}).value();
    return trial;
}

inline std::vector<OutcomeValue> tension(double value)
{
    return {{QStringLiteral("tension"), value}};
}

// make(day, place): the values of a session.
template <class Make>
TrialRecord madeRecord(const Trial& trial, Make make)
{
    TrialRecord record;
    for (std::size_t i = 0; i < trial.days.size(); ++i) {
        const TrialDay& day = trial.days[i];
        TrialObservation seen;
        seen.day = i;
        seen.date = day.date;
        seen.block = day.block;
        seen.drawn = day.arm;
        seen.done = day.arm;
        seen.doneOn = day.date;
        seen.values = make(day, i);
        record.observations.push_back(seen);
    }
    record.asOf = trial.days.empty() ? kTrialMonday : trial.days.back().date.addDays(10);
    return record;
}

inline std::vector<QString> letterNames(const Trial& trial)
{
    std::vector<QString> names;
    for (std::size_t arm = 0; arm < trial.arms.size(); ++arm) names.push_back(armLetter(arm));
    return names;
}

}  // namespace steelyard::testing_support
