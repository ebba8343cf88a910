// Gyms with their bars, plates, dumbbells and stacks.
#pragma once

#include "core/domain/gym.h"
#include "core/storage/transaction.h"

namespace steelyard {

class GymRepository {
public:
    explicit GymRepository(Database& database) : m_database(database) {}

    [[nodiscard]] Result<std::vector<Row<Gym>>> all() const;  // by name
    [[nodiscard]] Result<Row<Gym>> find(Id<Gym>) const;
    [[nodiscard]] Result<Id<Gym>> insert(Transaction&, const Gym&, QUuid uuid = QUuid::createUuid()) const;
    [[nodiscard]] Result<void> replace(Transaction&, Id<Gym>, const Gym&) const;

private:
    Database& m_database;
};

}  // namespace steelyard
