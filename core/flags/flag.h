// A flag: one reason to look at a lifter, with its evidence and what could be done.
#pragma once

#include "core/analysis/line_reading.h"
#include "core/domain/decision.h"

#include <QtCore/QStringList>

namespace steelyard {

struct Evidence {
    QDate date;
    QString what;  // for people: "counted repetitions at 40 kg"
    double value = 0;
    friend bool operator==(const Evidence&, const Evidence&) = default;
};

// How bad a matter is, in the measure of its own rule: more is worse. What was dismissed comes back when it is worse by `step`.
struct FlagMeasure {
    double value = 0;
    double step = 0;
    friend bool operator==(const FlagMeasure&, const FlagMeasure&) = default;
};

struct Flag {
    QString rule;                      // rule id, for example "stalled"
    std::optional<Id<LiftLine>> line;  // absent: about the lifter
    Severity severity = Severity::Low;
    QString sentence;                // that a lifter would understand
    std::vector<Evidence> evidence;  // oldest first
    QStringList actions;             // machine words, best first
    // Absent for rules about single events: something new brings those back.
    std::optional<FlagMeasure> measure = {};
    friend bool operator==(const Flag&, const Flag&) = default;
};

}  // namespace steelyard
