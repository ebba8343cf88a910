// Writes sets as the logbook CSV, one athlete after the other, so that any number of sets takes little memory.
//
//   LogbookExport log(database, file);
//   STEELYARD_CHECK(log.writeHeader());
//   for (const auto& athlete : athletes) STEELYARD_CHECK(log.write(athlete, progress));
//   STEELYARD_CHECK(log.finish());
//
// Rows stand in order of date, then place in the session. Numbers are written as they were typed. Ratings stand on the
// first row that their exercise has in the session. Failures: Storage, Cancelled.
#pragma once

#include "core/base/progress.h"
#include "core/domain/logbook.h"
#include "core/exchange/csv_writer.h"
#include "core/storage/database.h"

namespace steelyard {

class LogbookExport {
public:
    LogbookExport(Database& database, QIODevice& device) : m_database(database), m_csv(device) {}

    [[nodiscard]] Result<void> writeHeader();
    [[nodiscard]] Result<void> write(const Row<Athlete>&, const Progress&);
    [[nodiscard]] Result<void> finish() { return m_csv.finish(); }
    [[nodiscard]] std::int64_t sets() const { return m_sets; }

private:
    Database& m_database;
    CsvWriter m_csv;
    std::int64_t m_sets = 0;
};

}  // namespace steelyard
