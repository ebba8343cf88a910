#include "core/storage/transaction.h"

namespace steelyard {

void Changes::merge(const Changes& other)
{
    athletes.insert(other.athletes.begin(), other.athletes.end());
    roster = roster || other.roster;
    library = library || other.library;
    settings = settings || other.settings;
}

Result<Transaction> Transaction::begin(Database& database)
{
    STEELYARD_CHECK(database.checkPlace());
    // IMMEDIATE: a deferred transaction that reads first and writes later fails at once when another writer came between.
    STEELYARD_CHECK(database.execute("BEGIN IMMEDIATE"));
    return Transaction(database);
}

Transaction::Transaction(Transaction&& other) noexcept
    : m_database(std::exchange(other.m_database, nullptr)), m_changes(std::move(other.m_changes))
{}

Transaction::~Transaction()
{
    if (m_database) static_cast<void>(m_database->execute("ROLLBACK"));
}

Result<void> Transaction::commit()
{
    STEELYARD_CHECK(m_database->checkPlace());
    STEELYARD_CHECK(m_database->execute("COMMIT"));
    m_database = nullptr;
    return {};
}

}  // namespace steelyard
