// What the coach answered to a flag. Kept for good: a later decision on the same flag supersedes it, never replaces it.
#pragma once

#include "core/domain/logbook.h"

namespace steelyard {

enum class DecisionKind { Act, Watch, Dismiss };
// How urgent a flag is.
enum class Severity { Low, Medium, High };

// Stands as the rule of a decision about no flag: the whole lifter was looked at and left as they are.
inline constexpr QStringView kLookedAtRule = u"looked_at";

struct Decision {
    Id<Athlete> athlete;
    std::optional<Id<LiftLine>> line;  // absent: the flag is about the lifter
    QString rule;                      // rule id; unknown ids are kept, they may be a newer program's
    DecisionKind kind = DecisionKind::Act;
    QDate madeOn;
    std::optional<QDate> until;  // Watch: the flag comes back on this day
    QString action;              // Act: the action's machine word, may be empty
    QString reason;              // Dismiss needs one; else optional
    // Of the flag when it was answered; absent and empty in books of earlier versions.
    std::optional<Severity> severity = {};
    QString said = {};                   // its sentence
    std::optional<double> measure = {};  // how bad it was, in its rule's own measure; more is worse
    friend bool operator==(const Decision&, const Decision&) = default;
};

[[nodiscard]] Problems validate(const Decision&);

template <>
struct EnumText<Severity> {
    static constexpr auto table = std::to_array<EnumKey<Severity>>(
        {{Severity::Low, "low"}, {Severity::Medium, "medium"}, {Severity::High, "high"}});
};
template <>
struct EnumText<DecisionKind> {
    static constexpr auto table = std::to_array<EnumKey<DecisionKind>>(
        {{DecisionKind::Act, "act"}, {DecisionKind::Watch, "watch"}, {DecisionKind::Dismiss, "dismiss"}});
};

}  // namespace steelyard
