// A flag: one reason to look at a lifter, with its evidence and what could be done.
#pragma once

#include "core/analysis/line_reading.h"

#include <QtCore/QStringList>

namespace steelyard {

enum class Severity { Low, Medium, High };

struct Evidence {
    QDate date;
    QString what;  // for people: "counted repetitions at 40 kg"
    double value = 0;
    friend bool operator==(const Evidence&, const Evidence&) = default;
};

struct Flag {
    QString rule;                      // rule id, for example "stalled"
    std::optional<Id<LiftLine>> line;  // absent: about the lifter
    Severity severity = Severity::Low;
    QString sentence;                // that a lifter would understand
    std::vector<Evidence> evidence;  // oldest first
    QStringList actions;             // machine words, best first
    friend bool operator==(const Flag&, const Flag&) = default;
};

template <>
struct EnumText<Severity> {
    static constexpr auto table = std::to_array<EnumKey<Severity>>(
        {{Severity::Low, "low"}, {Severity::Medium, "medium"}, {Severity::High, "high"}});
};

}  // namespace steelyard
