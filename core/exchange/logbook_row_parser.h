// Reads one record of a logbook file into a row, and says what is wrong with it.
//
//   LogbookRowParser parser(mapping, places, header, today);
//   LogbookRow row;
//   if (!parser.parse(record, row, problems)) ...   // its problems were appended
//
// Mapping and header must outlive the parser.
#pragma once

#include "core/exchange/logbook_columns.h"
#include "core/exchange/logbook_csv.h"

#include <QtCore/QHash>

namespace steelyard {

class LogbookRowParser {
public:
    // Where each of our columns stands in the file, in the order of kLogbookColumns; -1: nowhere.
    using Places = std::array<qsizetype, kLogbookColumns.size()>;

    LogbookRowParser(const LogbookMapping& mapping, const Places& places, const QStringList& header, QDate today);

    [[nodiscard]] QStringList unknownColumns() const;
    [[nodiscard]] bool parse(const CsvRecord& record, LogbookRow& row, std::vector<RowProblem>& problems);

private:
    [[nodiscard]] QStringView fieldAt(qsizetype place) const;
    [[nodiscard]] QStringView field(ColumnPlace column) const;
    void complain(ColumnPlace column, QStringView value, const QString& text);
    void complain(const Problem& problem);
    [[nodiscard]] QString name(ColumnPlace column, bool needed);
    void readNames(LogbookRow& row);
    [[nodiscard]] QString note() const;
    [[nodiscard]] QDate date();
    [[nodiscard]] std::optional<Decimal> decimal(ColumnPlace column);
    [[nodiscard]] std::optional<int> whole(ColumnPlace column);
    void readLoad(LogbookRow& row);
    void readNumbers(LogbookRow& row);
    void readEffort(SetEntry& set);
    void readMarksAndKind(SetEntry& set);
    void readRating(ExerciseRating& rating);

    const LogbookMapping& m_mapping;
    const QStringList& m_header;
    QDate m_latest;
    Places m_places;
    std::array<QString, kLogbookColumns.size()> m_fixed;  // what a blank field means
    std::vector<qsizetype> m_unknown;
    QHash<QString, QString> m_cleanNames;  // a file has few names, each in many rows
    const CsvRecord* m_record = nullptr;
    std::vector<RowProblem>* m_problems = nullptr;
};

}  // namespace steelyard
