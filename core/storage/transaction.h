// A write to the book: all or nothing. Writers of every repository demand a Transaction&, so that nothing is written
// outside one. It rolls back when it dies uncommitted.
//
// What changed is collected here (touched athletes, library) and announced by the owner of the book after the commit,
// never before.
#pragma once

#include "core/domain/decision.h"
#include "core/storage/database.h"

#include <set>

namespace steelyard {

// What a commit changed, coarse enough to be cheap: who must be read again, and whether the library did change.
struct Changes {
    std::set<Id<Athlete>> athletes;
    bool roster = false;   // athletes came, went, or changed their profile
    bool library = false;  // exercises, variants, grips, standards, gyms
    bool settings = false;
    [[nodiscard]] bool none() const { return athletes.empty() && !roster && !library && !settings; }
    void merge(const Changes& other);
};

class Transaction {
public:
    [[nodiscard]] static Result<Transaction> begin(Database&);
    Transaction(Transaction&& other) noexcept;
    Transaction& operator=(Transaction&&) = delete;
    Transaction(const Transaction&) = delete;
    ~Transaction();

    [[nodiscard]] Database& database() const { return *m_database; }
    [[nodiscard]] Changes& changes() { return m_changes; }
    [[nodiscard]] Result<void> commit();

private:
    explicit Transaction(Database& database) : m_database(&database) {}
    Database* m_database;  // null once finished or moved from
    Changes m_changes;
};

}  // namespace steelyard
