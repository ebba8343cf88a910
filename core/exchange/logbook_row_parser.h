// Reads one record of a logbook file into its sets, and says what is wrong with it.
//
//   LogbookRowParser parser(mapping, columns, header, today);
//   std::vector<LogbookRow> sets;
//   if (!parser.parse(record, sets, problems)) ...   // its problems were appended, and no set was
//
// A record is one set, or several where the mapping has columns for them; then what the row says of effort belongs to its last
// set, and its note to its first. Mapping, columns and header must outlive the parser.
#pragma once

#include "core/exchange/logbook_cells.h"
#include "core/exchange/logbook_csv.h"
#include "core/exchange/sheet_columns.h"

#include <QtCore/QHash>

namespace steelyard {

class LogbookRowParser {
public:
    LogbookRowParser(const LogbookMapping& mapping, const SheetColumns& columns, const QStringList& header,
                     QDate today);

    [[nodiscard]] QStringList unknownColumns() const;
    [[nodiscard]] bool parse(const CsvRecord& record, std::vector<LogbookRow>& sets, std::vector<RowProblem>& problems);
    // Why the last record has neither sets nor problems; empty when it holds nothing at all.
    [[nodiscard]] const QString& passedOver() const { return m_passedOver; }
    // Names of exercises and athletes as they stand in the file, and in how many rows.
    [[nodiscard]] const std::map<ExerciseName, int>& exercises() const { return m_exercises; }
    [[nodiscard]] const std::map<QString, int>& athletes() const { return m_athletes; }

private:
    [[nodiscard]] QStringView fieldAt(qsizetype place) const;
    [[nodiscard]] QStringView field(ColumnPlace column) const;
    [[nodiscard]] NumberStyle style() const { return {m_mapping.decimalMark, m_mapping.byHand}; }
    void complain(ColumnPlace column, QStringView value, const QString& text);
    void complain(const Problem& problem);
    void complainOfTheRow(const QString& text);
    void complainOfNumber(ColumnPlace column, QStringView value);
    [[nodiscard]] bool passOver();
    void checkLength();
    [[nodiscard]] LogbookRow readRow();
    void addEqualSets(LogbookRow row, std::vector<LogbookRow>& sets);
    void readSets(LogbookRow row, std::vector<LogbookRow>& sets);
    [[nodiscard]] bool isThere(const SheetColumns::Set& set) const;
    void readNotation(const SheetColumns::Set& set, LogbookRow row, std::vector<LogbookRow>& sets);
    void settleRow(LogbookRow& row);
    [[nodiscard]] QString name(ColumnPlace column, bool needed);
    void readNames(LogbookRow& row);
    void countNames(const LogbookRow& row);
    void rename(LogbookRow& row);
    [[nodiscard]] QString note() const;
    [[nodiscard]] QDate date();
    [[nodiscard]] std::optional<Decimal> decimal(ColumnPlace column);
    [[nodiscard]] std::optional<int> whole(ColumnPlace column);
    [[nodiscard]] MassUnit readUnit(LogbookRow& row);
    void readLoad(LogbookRow& row);
    void readNumbers(LogbookRow& row);
    [[nodiscard]] std::optional<Effort> effort();
    void readMarksAndKind(SetEntry& set);
    void readRating(ExerciseRating& rating);

    const LogbookMapping& m_mapping;
    const SheetColumns& m_columns;
    const QStringList& m_header;
    QDate m_latest;
    const SheetColumns::Places* m_places;                 // of the set that is being read
    std::array<QString, kLogbookColumns.size()> m_fixed;  // what a blank field means
    std::vector<qsizetype> m_unknown;
    QHash<QString, QString> m_cleanNames;  // a file has few names, each in many rows
    std::map<ExerciseName, int> m_exercises;
    std::map<QString, int> m_athletes;
    std::map<ExerciseName, int>::value_type* m_lastExercise = nullptr;
    std::map<QString, int>::value_type* m_lastAthlete = nullptr;
    QString m_passedOver;
    const CsvRecord* m_record = nullptr;
    std::vector<RowProblem>* m_problems = nullptr;
};

}  // namespace steelyard
