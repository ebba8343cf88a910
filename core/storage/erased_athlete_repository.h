// Who was erased from the book, so that a backup that still has them loses them again.
//
//   STEELYARD_CHECK(ErasedAthleteRepository(db).put(transaction, {erasureMark(athlete.uuid), clock.nowUtc()}));
//
// The mark is made from the athlete's own random UUID by a one-way function (RFC 4122, version 5: SHA-1): an athlete in a backup
// can be compared with it, but neither the UUID nor anything else of the person can be read from it.
#pragma once

#include "core/storage/transaction.h"

#include <QtCore/QDateTime>
#include <QtCore/QUuid>

#include <vector>

namespace steelyard {

struct ErasedAthlete {
    QUuid mark;
    QDateTime at;  // UTC
    friend bool operator==(const ErasedAthlete&, const ErasedAthlete&) = default;
};

[[nodiscard]] QUuid erasureMark(const QUuid& athlete);

class ErasedAthleteRepository {
public:
    explicit ErasedAthleteRepository(Database& database) : m_database(database) {}
    [[nodiscard]] Result<std::vector<ErasedAthlete>> all() const;  // oldest first
    // Once each: the time of the first erasure stays.
    [[nodiscard]] Result<void> put(Transaction&, const ErasedAthlete&) const;

private:
    Database& m_database;
};

}  // namespace steelyard
