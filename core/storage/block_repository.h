// Blocks with their weeks, days and slots, read and written whole; and templates, which are kept as blocks of nobody.
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

    [[nodiscard]] Result<std::vector<Row<BlockTemplate>>> templates() const;  // by name
    [[nodiscard]] Result<Id<BlockTemplate>> insert(Transaction&, const BlockTemplate&,
                                                   QUuid uuid = QUuid::createUuid()) const;
    [[nodiscard]] Result<void> remove(Transaction&, Id<BlockTemplate>) const;

private:
    [[nodiscard]] Result<void> writeWeeks(Id<Block>, const std::vector<PlannedWeek>&) const;
    [[nodiscard]] Result<void> removeRow(Id<Block>) const;
    Database& m_database;
};

}  // namespace steelyard
