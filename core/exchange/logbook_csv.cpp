#include "core/exchange/logbook_csv.h"

#include "core/exchange/logbook_row_parser.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct LogbookCsvText {
    Q_DECLARE_TR_FUNCTIONS(LogbookCsvText)
};

// Which of two columns of one name is meant can't be guessed.
Result<void> refuseTwice(const QStringList& header, const QString& name)
{
    if (header.count(name) < 2) return {};
    return fail(ErrorCode::Invalid,
                LogbookCsvText::tr(
                    "Line 1: the column “%1” stands twice. Rename one of them, or choose by number in a mapping.")
                    .arg(name));
}

Result<LogbookRowParser::Places> placeColumns(const LogbookMapping& mapping, const QStringList& header)
{
    LogbookRowParser::Places places{};
    for (std::size_t i = 0; i < places.size(); ++i) {
        const QString& column = logbookColumns()[static_cast<qsizetype>(i)];
        qsizetype place = -1;
        if (mapping.columns.empty()) {
            place = header.indexOf(column);
            if (place >= 0) STEELYARD_CHECK(refuseTwice(header, column));
        } else if (const auto named = mapping.columns.find(column); named != mapping.columns.end()) {
            const auto* name = std::get_if<QString>(&named->second);
            if (name) STEELYARD_CHECK(refuseTwice(header, *name));
            place = name ? header.indexOf(*name) : std::get<int>(named->second) - 1;
            if (place < 0 || place >= header.size())
                return fail(
                    ErrorCode::Invalid,
                    LogbookCsvText::tr("The mapping puts “%1” in a column that the file has not. Its columns are: %2.")
                        .arg(column, header.join(QStringLiteral(", "))));
        }
        places[i] = place;
    }
    for (const ColumnPlace needed : {"date"_column, "athlete"_column, "exercise"_column, "reps"_column}) {
        const auto i = static_cast<std::size_t>(needed);
        const QString& column = logbookColumns()[static_cast<qsizetype>(i)];
        if (places[i] < 0 && !mapping.fixed.contains(column))
            return fail(ErrorCode::Invalid,
                        LogbookCsvText::tr(
                            "Line 1: the column “%1” is missing. Add it, or say in a mapping which column it is. "
                            "The file's columns are: %2.")
                            .arg(column, header.join(QStringLiteral(", "))));
    }
    return places;
}

Result<QStringList> readHeader(CsvReader& reader, const LogbookMapping& mapping, std::optional<CsvRecord>& first)
{
    STEELYARD_TRY(first, reader.next());
    if (!first)
        return fail(ErrorCode::Invalid,
                    LogbookCsvText::tr("The file is empty. A logbook has a header line and a row for each set."));
    if (mapping.hasHeader) {
        QStringList header;
        for (const QString& name : first->fields) header.append(name.trimmed());
        first.reset();
        return header;
    }
    QStringList numbers;
    for (qsizetype i = 1; i <= first->fields.size(); ++i) numbers.append(QString::number(i));
    return numbers;
}

}  // namespace

Result<ParsedLogbook> parseLogbook(const QByteArray& bytes, const LogbookMapping& mapping, QDate today,
                                   const Progress& progress)
{
    if (bytes.size() > kMostImportBytes)
        return fail(ErrorCode::Invalid,
                    LogbookCsvText::tr("The file is larger than %1 MB. Split it and import the parts.")
                        .arg(kMostImportBytes / 1024 / 1024));
    ParsedLogbook parsed;
    STEELYARD_TRY(parsed.text, decodeText(bytes, mapping.encoding));
    CsvReader reader(parsed.text, mapping.separator);
    parsed.separator = mapping.separator;
    parsed.encoding = mapping.encoding;
    parsed.hasHeader = mapping.hasHeader;
    std::optional<CsvRecord> record;
    STEELYARD_TRY(parsed.header, readHeader(reader, mapping, record));
    STEELYARD_TRY(const LogbookRowParser::Places places, placeColumns(mapping, parsed.header));
    LogbookRowParser parser(mapping, places, parsed.header, today);
    parsed.unknownColumns = parser.unknownColumns();
    // Growing row by row would move every row several times.
    parsed.rows.reserve(static_cast<std::size_t>(parsed.text.count(u'\n')) + 1);
    while (true) {
        if (!record) {
            STEELYARD_TRY(record, reader.next());
            if (!record) break;
        }
        if (!parser.parse(*record, parsed.rows.emplace_back(), parsed.problems)) {
            parsed.rows.pop_back();
            parsed.badRecords.push_back(std::move(*record));
        }
        record.reset();
        if ((parsed.rows.size() + parsed.badRecords.size()) % 1000 == 0) {
            progress.report(0.4 * reader.share());
            if (progress.cancelled())
                return fail(ErrorCode::Cancelled, LogbookCsvText::tr("Stopped; nothing was changed."));
        }
    }
    return parsed;
}

CsvRecord recordOf(const ParsedLogbook& parsed, const LogbookRow& row)
{
    auto record = CsvReader(parsed.text, parsed.separator, row.line, row.at).next();
    Q_ASSERT(record && *record);  // it could be read before
    return std::move(**record);
}

QString toText(const RowProblem& problem)
{
    QString where = LogbookCsvText::tr("line %1").arg(problem.line);
    if (!problem.column.isEmpty()) where += LogbookCsvText::tr(", column %1").arg(problem.column);
    if (!problem.value.isEmpty()) where += QStringLiteral(", “%1”").arg(problem.value.left(60));
    return where + QStringLiteral(": ") + problem.text;
}

}  // namespace steelyard
