// Trials with their arms, outcomes, days and looks, read and written whole.
//
//   STEELYARD_TRY(const auto id, TrialRepository(db).insert(transaction, trial));
//   STEELYARD_CHECK(TrialRepository(db).replace(transaction, id, later));      // the same trial, with what became of it
//
// Failures: Invalid (core/domain/trial.h, validate), Storage.
#pragma once

#include "core/domain/trial.h"
#include "core/storage/transaction.h"

namespace steelyard {

class TrialRepository {
public:
    explicit TrialRepository(Database& database) : m_database(database) {}
    [[nodiscard]] Result<std::vector<Row<Trial>>> of(Id<Athlete>) const;  // by the day of design
    [[nodiscard]] Result<Id<Trial>> insert(Transaction&, const Trial&, QUuid uuid = QUuid::createUuid()) const;
    // The trial's athlete stays who it was.
    [[nodiscard]] Result<void> replace(Transaction&, Id<Trial>, const Trial&) const;
    [[nodiscard]] Result<void> remove(Transaction&, Id<Trial>, Id<Athlete> owner) const;

private:
    Database& m_database;
};

}  // namespace steelyard
