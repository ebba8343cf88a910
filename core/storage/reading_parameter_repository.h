// Every fit of the readings' numbers to this book, never changed and never removed: a reading says by which version it was
// made.
//
//   STEELYARD_TRY(const auto fit, ReadingParameterRepository(db).latest(asOf));   // absent: the shipped numbers
//   STEELYARD_TRY(const int version, repository.insert(transaction, fit));
//
// A fit is pooled over at least twenty lift lines and holds nothing of one athlete; it stays when an athlete's record is
// erased. Failures: Storage, also when a body can't be read.
#pragma once

#include "core/domain/reading_fit.h"
#include "core/storage/transaction.h"

namespace steelyard {

class ReadingParameterRepository {
public:
    explicit ReadingParameterRepository(Database& database) : m_database(database) {}
    // The newest one made up to the day, so that a day is read today as it was then.
    [[nodiscard]] Result<std::optional<ReadingFit>> latest(QDate asOf) const;
    // Oldest first.
    [[nodiscard]] Result<std::vector<ReadingFit>> all() const;
    // Gives the version: the fit's own when it has one (an import), else the next.
    [[nodiscard]] Result<int> insert(Transaction&, const ReadingFit&) const;

private:
    Database& m_database;
};

// The body as it is stored, and back; absent when it isn't a JSON object of numbers.
[[nodiscard]] QString numbersToJson(const std::map<QString, double>&);
[[nodiscard]] std::optional<std::map<QString, double>> numbersFromJson(const QString&);

}  // namespace steelyard
