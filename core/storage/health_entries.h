// What the book keeps of one athlete's health: discomfort by joint, the joint history, and the sentences that were made of them.
//
//   STEELYARD_TRY(const HealthEntries kept, countHealthEntries(db, athlete));
//   STEELYARD_CHECK(removeHealthEntries(transaction, athlete));               // after a consent was withdrawn
//
// Tension, burn, pump, soreness and weakness of the target are about training and stay. Free notes are the coach's own words:
// whether they speak of health only a reader can say. Failure: Storage.
#pragma once

#include "core/domain/athlete.h"
#include "core/storage/transaction.h"

namespace steelyard {

struct HealthEntries {
    std::int64_t ratings = 0;    // of exercises, with discomfort in a joint
    std::int64_t sentences = 0;  // of decisions and trials about discomfort
    bool jointHistory = false;
    [[nodiscard]] bool none() const { return ratings == 0 && sentences == 0 && !jointHistory; }
    friend bool operator==(const HealthEntries&, const HealthEntries&) = default;
};

[[nodiscard]] Result<HealthEntries> countHealthEntries(Database&, Id<Athlete>);
[[nodiscard]] Result<void> removeHealthEntries(Transaction&, Id<Athlete>);

}  // namespace steelyard
