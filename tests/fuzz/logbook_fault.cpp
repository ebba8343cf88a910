#include "core/base/text.h"
#include "core/exchange/logbook_csv.h"
#include "core/exchange/logbook_guess.h"
#include "core/exchange/logbook_reader.h"
#include "tests/fuzz/faults_of_input.h"

namespace steelyard::test {
namespace {

const QDate kToday(2026, 3, 2);

LogbookMapping mappingFor(unsigned char choice, const QByteArray& file)
{
    static const KnownNames known{{QStringLiteral("Ada Fulcrum")}, {QStringLiteral("Arm curl"), QStringLiteral("Row")}};
    if (choice & 1U) return guessLogbook(file, known, kToday).mapping;
    LogbookMapping mapping;
    mapping.decimalMark = choice & 2U ? u',' : u'.';
    mapping.separator = choice & 4U ? u';' : u',';
    mapping.encoding = static_cast<TextEncoding>((choice >> 3U) & 3U);
    mapping.dateOrder = static_cast<DateOrder>((choice >> 5U) % 3U);
    mapping.byHand = choice & 64U;
    if (choice & 128U) {
        mapping.hasHeader = false;
        mapping.columns = {{QStringLiteral("date"), 1}, {QStringLiteral("athlete"), 2}, {QStringLiteral("note"), 3}};
        mapping.fixed[QStringLiteral("exercise")] = QStringLiteral("Arm curl");
        mapping.sets = {{{kNotationColumn.toString(), 4}},
                        {{QStringLiteral("load"), 5}, {QStringLiteral("reps"), 6}},
                        {{QStringLiteral("load"), 7}, {QStringLiteral("reps"), 8}}};
    }
    return mapping;
}

std::string faultOfSet(const LogbookRow& row)
{
    if (!row.date.isValid() || row.date > kToday.addDays(1)) return "a day that can't be";
    for (const QString& name : {row.athlete, row.exercise})
        if (name.isEmpty() || name.size() > kMaxNameLength || name != cleanName(name)) return "a name that is none";
    const Problems problems = validate(row.set);
    return problems.empty() ? std::string() : "a set that is none: " + problems.front().text.toStdString();
}

std::string faultOfRow(const LogbookReader& reader, int& line)
{
    if (reader.record().line <= line) return "rows out of order";
    line = reader.record().line;
    if (!reader.sets().empty() && !reader.problems().empty()) return "sets of a row that has problems";
    for (const RowProblem& problem : reader.problems())
        if (problem.text.isEmpty() || problem.line != line) return "a problem without words, or of another row";
    for (const LogbookRow& set : reader.sets())
        if (std::string fault = faultOfSet(set); !fault.empty()) return fault;
    return {};
}

std::string faultOfRefusal(const Error& error)
{
    return error.code == ErrorCode::Invalid && !error.what.isEmpty() ? std::string() : "refused without words";
}

// Row by row, as files are imported.
std::string faultOfReading(const QByteArray& file, const LogbookMapping& mapping, std::size_t& sets)
{
    const auto reader = LogbookReader::open(file, mapping, kToday);
    if (!reader) return faultOfRefusal(reader.error());
    int line = 0;
    while (true) {
        const auto more = (*reader)->next();
        if (!more) return faultOfRefusal(more.error());
        if (!*more) return {};
        if (std::string fault = faultOfRow(**reader, line); !fault.empty())
            return "line " + std::to_string(line) + ": " + fault;
        sets += (*reader)->sets().size();
    }
}

}  // namespace

std::string logbookFault(const QByteArray& input)
{
    if (input.isEmpty()) return {};
    const QByteArray file = input.mid(1);
    const LogbookMapping mapping = mappingFor(static_cast<unsigned char>(input.front()), file);
    // A guess that found no column is no whole mapping yet.
    if (mapping.hasHeader || !mapping.columns.empty()) {
        const auto kept = readMapping(writeMapping(mapping));
        if (!kept) return "a mapping that can't be kept: " + kept.error().what.toStdString();
        if (*kept != mapping) return "a mapping that is kept as another";
    }
    std::size_t sets = 0;
    if (std::string fault = faultOfReading(file, mapping, sets); !fault.empty()) return fault;
    const auto parsed = parseLogbook(file, mapping, kToday, Progress());
    if (!parsed) return faultOfRefusal(parsed.error());
    if (parsed->rows.size() != sets) return "other sets when the file is read as a whole";
    for (const LogbookRow& row : parsed->rows)
        if (const CsvRecord record = recordOf(*parsed, row); record.line != row.line || record.fields.isEmpty())
            return "a row that can't be said again";
    return {};
}

}  // namespace steelyard::test
