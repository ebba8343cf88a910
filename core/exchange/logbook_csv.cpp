#include "core/exchange/logbook_csv.h"

#include "core/exchange/logbook_reader.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <iterator>

namespace steelyard {
namespace {

struct LogbookCsvText {
    Q_DECLARE_TR_FUNCTIONS(LogbookCsvText)
};

// Lines that are not empty: room for a row is made for nothing else.
std::size_t mostRows(const QString& text)
{
    std::size_t rows = 0;
    bool lineEnded = true;
    for (const QChar c : text) {
        const bool lineEnds = c == u'\n' || c == u'\r';
        if (lineEnded && !lineEnds) ++rows;
        lineEnded = lineEnds;
    }
    return rows;
}

}  // namespace

Result<ParsedLogbook> parseLogbook(const QByteArray& bytes, const LogbookMapping& mapping, QDate today,
                                   const Progress& progress)
{
    STEELYARD_TRY(const auto reader, LogbookReader::open(bytes, mapping, today));
    ParsedLogbook parsed;
    STEELYARD_TRY(parsed.text, decodeText(bytes, mapping.encoding));
    parsed.separator = mapping.separator;
    parsed.encoding = mapping.encoding;
    parsed.hasHeader = mapping.hasHeader;
    parsed.header = reader->header();
    parsed.unknownColumns = reader->unknownColumns();
    // Growing row by row would move every row several times.
    parsed.rows.reserve(mostRows(parsed.text));
    while (true) {
        STEELYARD_TRY(const bool more, reader->next());
        if (!more) return parsed;
        std::ranges::copy(reader->sets(), std::back_inserter(parsed.rows));
        std::ranges::copy(reader->problems(), std::back_inserter(parsed.problems));
        if (!reader->problems().empty()) parsed.badRecords.push_back(reader->record());
        if (!reader->passedOver().isEmpty())
            parsed.passedOver.push_back({reader->record().line, {}, {}, reader->passedOver(), -1, {}});
        if (reader->rowsRead() % 500 == 0) {
            progress.report(0.4 * reader->share());
            if (progress.cancelled())
                return fail(ErrorCode::Cancelled, LogbookCsvText::tr("Stopped; nothing was changed."));
        }
    }
}

CsvRecord recordOf(const ParsedLogbook& parsed, const LogbookRow& row)
{
    if (parsed.text.isEmpty()) return {row.line, {}, row.at};
    auto record = CsvReader(parsed.text, parsed.separator, row.line, row.at).next();
    Q_ASSERT(record && *record);  // it could be read before
    return std::move(**record);
}

QString toText(const RowProblem& problem)
{
    QString where = LogbookCsvText::tr("line %1").arg(problem.line);
    if (!problem.column.isEmpty()) where += LogbookCsvText::tr(", column %1").arg(problem.column);
    if (!problem.theirs.isEmpty()) where += QStringLiteral(" (%1)").arg(problem.theirs.left(60));
    if (!problem.value.isEmpty()) where += QStringLiteral(", “%1”").arg(problem.value.left(60));
    return where + QStringLiteral(": ") + problem.text;
}

}  // namespace steelyard
