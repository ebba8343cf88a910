// A logbook file row by row: of whatever size, a few megabytes of its text and one of its rows are held at a time.
//
//   STEELYARD_TRY(const auto reader, LogbookReader::open(bytes, mapping, today));
//   while (true) {
//       STEELYARD_TRY(const bool more, reader->next());
//       if (!more) break;
//       for (const LogbookRow& set : reader->sets()) ...      // one, or several in a wide sheet
//   }
//
// A row has sets, or problems, or was passed over. `today` bounds the dates.
// Bytes that are handed over, and held by nobody else, are freed when the last of them was read.
// Fails with Invalid when the file as a whole can't be read: size, encoding, quoting, a needed column missing, a column twice, more
// names than kMostNames in a column.
#pragma once

#include "core/exchange/logbook_row_parser.h"

#include <memory>

namespace steelyard {

// Different lifters, or exercises, of one file. More are no names: another column was taken for theirs. (Our convention.)
inline constexpr std::size_t kMostNames = 5000;

class LogbookReader {
public:
    [[nodiscard]] static Result<std::unique_ptr<LogbookReader>> open(QByteArray bytes, const LogbookMapping& mapping,
                                                                     QDate today);
    // On to the next row; false at the end.
    [[nodiscard]] Result<bool> next();

    [[nodiscard]] const LogbookMapping& mapping() const { return m_mapping; }
    [[nodiscard]] const QStringList& header() const { return m_header; }  // numbers from 1 when the file has none
    [[nodiscard]] QStringList unknownColumns() const { return m_parser->unknownColumns(); }
    [[nodiscard]] const std::map<ExerciseName, int>& exercises() const { return m_parser->exercises(); }
    [[nodiscard]] const std::map<QString, int>& athletes() const { return m_parser->athletes(); }
    [[nodiscard]] int rowsRead() const { return m_rowsRead; }
    [[nodiscard]] double share() const { return m_csv.share(); }

    // Of the row that was read last:
    [[nodiscard]] const std::vector<LogbookRow>& sets() const { return m_sets; }
    [[nodiscard]] const std::vector<RowProblem>& problems() const { return m_problems; }
    [[nodiscard]] const QString& passedOver() const { return m_parser->passedOver(); }  // why
    [[nodiscard]] const CsvRecord& record() const { return m_record; }

private:
    LogbookReader(QByteArray bytes, const LogbookMapping& mapping);
    [[nodiscard]] Result<void> readHeader();
    [[nodiscard]] Result<void> checkNames() const;

    LogbookMapping m_mapping;
    CsvReader m_csv;
    QStringList m_header;
    bool m_recordWaits = false;  // the first record of a file without a header was looked at
    SheetColumns m_columns;
    std::optional<LogbookRowParser> m_parser;
    CsvRecord m_record;
    int m_rowsRead = 0;
    std::vector<LogbookRow> m_sets;
    std::vector<RowProblem> m_problems;
};

}  // namespace steelyard
