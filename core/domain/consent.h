// What a lifter agreed to be kept of their health: discomfort by joint, and joint history. Without it these fields stay empty
// and are not shown.
//
//   athlete.consents = {HealthConsent::given(today)};
//   if (mayKeep(athlete.consents, HealthField::Discomfort)) ...
//   standingOf(athlete.consents)                               // what to say of it, and whether to ask
//
// A record is never changed but by its withdrawal; who agrees again gets another one. Who had such entries before anybody was
// asked (an older book, an imported log) has a record without day and wording: it counts, and is to be confirmed.
// No legal advice: which ground a coach needs is a matter of local law.
#pragma once

#include "core/base/enum_text.h"
#include "core/domain/problem.h"

#include <QtCore/QDate>

#include <optional>

namespace steelyard {

enum class HealthField { Discomfort, JointHistory };

struct HealthScope {
    bool discomfort = true;
    bool jointHistory = true;

    [[nodiscard]] bool has(HealthField field) const
    {
        return field == HealthField::Discomfort ? discomfort : jointHistory;
    }
    [[nodiscard]] bool none() const { return !discomfort && !jointHistory; }
    // "discomfort joint_history"; words that aren't known are passed over when it is read.
    [[nodiscard]] QString toString() const;
    [[nodiscard]] static HealthScope parse(QStringView text);
    friend bool operator==(const HealthScope&, const HealthScope&) = default;
};

// The newest text that is agreed to; 0 is none.
inline constexpr int kConsentWording = 1;

struct HealthConsent {
    std::optional<QDate> givenOn;  // absent: kept before anybody was asked
    int wording = 0;               // 0 if and only if there is no day
    HealthScope scope;
    std::optional<QDate> withdrawnOn;
    QString note;  // how: "signed on paper", "with her mother"

    [[nodiscard]] static HealthConsent given(QDate day, HealthScope scope = {});
    [[nodiscard]] static HealthConsent toConfirm() { return {}; }
    friend bool operator==(const HealthConsent&, const HealthConsent&) = default;
};

using HealthConsents = std::vector<HealthConsent>;  // oldest first

enum class ConsentStanding { NotAsked, ToConfirm, Given, Withdrawn };

[[nodiscard]] bool mayKeep(const HealthConsents&, HealthField);
// By the record that counts, else by the newest.
[[nodiscard]] ConsentStanding standingOf(const HealthConsents&);
// All that counts ends on this day.
void withdraw(HealthConsents&, QDate day);
[[nodiscard]] Problems validate(const HealthConsents&, QDate today);

// The text that a lifter agrees to; empty for a number that never was.
[[nodiscard]] QString consentWording(int number);

template <>
struct EnumText<HealthField> {
    static constexpr auto table = std::to_array<EnumKey<HealthField>>(
        {{HealthField::Discomfort, "discomfort"}, {HealthField::JointHistory, "joint_history"}});
};

}  // namespace steelyard
