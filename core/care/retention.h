// Whose record nobody has added to for long, so that the coach can decide whether it is still needed.
//
//   STEELYARD_TRY(const auto quiet, inactiveAthletes(db, clock.today(), kUsualRetentionMonths));
//   for (const InactiveAthlete& one : quiet) ...                    // longest ago first; nothing is erased by itself
//
// The last day is that of the latest session, body mass, measurement, decision, planned day or consent. Who has none of these
// can't be judged and isn't listed. Months are calendar months: 24 months from 2025-03-15 are over on 2027-03-15.
// Failure: Storage.
#pragma once

#include "core/domain/athlete.h"
#include "core/storage/database.h"

namespace steelyard {

inline constexpr int kUsualRetentionMonths = 24;  // our choice; local law or a contract may ask for another
inline constexpr int kFewestRetentionMonths = 1;
inline constexpr int kMostRetentionMonths = 240;

struct InactiveAthlete {
    Id<Athlete> athlete;
    QString name;
    QDate lastDay;
    bool archived = false;
    friend bool operator==(const InactiveAthlete&, const InactiveAthlete&) = default;
};

[[nodiscard]] Result<std::vector<InactiveAthlete>> inactiveAthletes(Database&, QDate today, int months);

}  // namespace steelyard
