// What the coach answered to flags, oldest first.
#pragma once

#include "core/domain/decision.h"
#include "core/storage/transaction.h"

namespace steelyard {

class DecisionRepository {
public:
    explicit DecisionRepository(Database& database) : m_database(database) {}
    [[nodiscard]] Result<std::vector<Row<Decision>>> of(Id<Athlete>) const;
    [[nodiscard]] Result<Id<Decision>> insert(Transaction&, const Decision&, QUuid uuid = QUuid::createUuid()) const;

private:
    Database& m_database;
};

}  // namespace steelyard
