// Blocks with their weeks, days and slots, read and written whole.
#pragma once

#include "core/domain/block.h"
#include "core/storage/transaction.h"

namespace steelyard {

class BlockRepository {
public:
    explicit BlockRepository(Database& database) : m_database(database) {}
    [[nodiscard]] Result<std::vector<Row<Block>>> of(Id<Athlete>) const;  // by start
    [[nodiscard]] Result<Id<Block>> insert(Transaction&, const Block&, QUuid uuid = QUuid::createUuid()) const;
    [[nodiscard]] Result<void> replace(Transaction&, Id<Block>, const Block&) const;
    [[nodiscard]] Result<void> remove(Transaction&, Id<Block>, Id<Athlete> owner) const;

private:
    [[nodiscard]] Result<void> writeWeeks(Id<Block>, const Block&) const;
    Database& m_database;
};

}  // namespace steelyard
