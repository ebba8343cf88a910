#include "ui/pages/import/book_importer.h"

#include "core/book/book.h"
#include "core/exchange/logbook_import.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFile>
#include <QtCore/QSaveFile>

namespace steelyard {
namespace {

struct BookImporterText {
    Q_DECLARE_TR_FUNCTIONS(BookImporterText)
};

Result<QByteArray> readLogbookFile(const QString& path)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        return fail(ErrorCode::Invalid, BookImporterText::tr("“%1” can't be read: %2.").arg(path, file.errorString()));
    if (file.size() > kMostImportBytes)
        return fail(ErrorCode::Invalid,
                    BookImporterText::tr("“%1” is larger than %2 MB. Split it and import the parts.")
                        .arg(path, QString::number(kMostImportBytes / 1024 / 1024)));
    return file.readAll();
}

LogbookMapping mappingOf(const ImportChoices& choices)
{
    LogbookMapping mapping;
    mapping.encoding = fromKey<TextEncoding>(QStringView(choices.encoding)).value_or(TextEncoding::Utf8);
    mapping.separator = choices.separator;
    mapping.decimalMark = choices.decimalComma ? u',' : u'.';
    mapping.dateOrder = choices.dates;
    mapping.unit = choices.unit;
    for (const ColumnChoice& choice : choices.columns)
        if (choice.source >= 0) mapping.columns[choice.column] = choice.source + 1;
    return mapping;
}

int sourceOf(const ImportChoices& choices, const QString& column)
{
    for (const ColumnChoice& choice : choices.columns)
        if (choice.column == column) return choice.source;
    return -1;
}

// The first rows as they stand in the file, and where each data row of the file begins.
Result<std::vector<int>> readRawRows(const QByteArray& bytes, const LogbookMapping& mapping, ImportPreview& preview)
{
    STEELYARD_TRY(QString text, decodeText(bytes, mapping.encoding));
    CsvReader reader(std::move(text), mapping.separator);
    std::vector<int> lines;
    bool header = true;
    while (true) {
        STEELYARD_TRY(auto record, reader.next());
        if (!record) return lines;
        if (header) {
            preview.header = record->fields;
            header = false;
            continue;
        }
        lines.push_back(record->line);
        if (static_cast<int>(lines.size()) <= LogbookImporter::kPreviewRows) preview.rows.push_back(record->fields);
    }
}

Result<void> writeAside(const QString& path, const QByteArray& csv)
{
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(csv) != csv.size() || !file.commit())
        return fail(
            ErrorCode::Storage,
            BookImporterText::tr("“%1” can't be written: %2. Nothing was imported.").arg(path, file.errorString()));
    return {};
}

Result<ImportOutcome> importFile(const QString& book, const QString& path, const ImportChoices& choices, QDate today,
                                 const QDateTime& now, const Progress& progress)
{
    STEELYARD_TRY(const QByteArray bytes, readLogbookFile(path));
    STEELYARD_TRY(const ParsedLogbook parsed, parseLogbook(bytes, mappingOf(choices), today, progress));
    STEELYARD_TRY(auto database, Database::openWriter(book));
    if (choices.setBadRowsAside) {
        STEELYARD_TRY(const ImportOutcome trial, importLogbook(*database, parsed, {true, true}, progress));
        if (!trial.report.problemRecords.empty())
            STEELYARD_CHECK(writeAside(LogbookImporter::setAsidePath(path), problemRowsCsv(parsed, trial.report)));
    }
    STEELYARD_TRY(auto outcome, importLogbook(*database, parsed, {false, choices.setBadRowsAside, now}, progress));
    if (!outcome.report.written)
        return fail(ErrorCode::Invalid,
                    BookImporterText::tr("Nothing was imported: %1").arg(toText(outcome.report.problems.front())));
    return outcome;
}

}  // namespace

QStringList BookImporter::encodings() const
{
    return keyList<TextEncoding>().split(QStringLiteral(", "));
}

ImportChoices BookImporter::guess(const QByteArray& head) const
{
    const LogbookMapping mapping = guessMapping(head);
    ImportChoices choices;
    choices.encoding = toText(mapping.encoding);
    choices.separator = mapping.separator;
    choices.decimalComma = mapping.decimalMark == u',';
    choices.dates = mapping.dateOrder;
    choices.unit = mapping.unit.value_or(MassUnit::kg);
    ImportPreview raw;
    // A head that can't be read as guessed has no header to choose from; the preview then says what is wrong.
    static_cast<void>(readRawRows(head, mapping, raw));
    static const QStringList needed{QStringLiteral("date"), QStringLiteral("athlete"), QStringLiteral("exercise"),
                                    QStringLiteral("reps")};
    for (const QString& column : logbookColumns()) {
        ColumnChoice choice{column, -1, needed.contains(column)};
        if (const auto named = mapping.columns.find(column); named != mapping.columns.end())
            if (const auto* name = std::get_if<QString>(&named->second))
                choice.source = static_cast<int>(raw.header.indexOf(*name));
        choices.columns.push_back(choice);
    }
    return choices;
}

Result<ImportPreview> BookImporter::preview(const QString& path, const ImportChoices& choices,
                                            const Progress& progress) const
{
    STEELYARD_TRY(const QByteArray bytes, readLogbookFile(path));
    const LogbookMapping mapping = mappingOf(choices);
    ImportPreview preview;
    STEELYARD_TRY(const std::vector<int> lines, readRawRows(bytes, mapping, preview));
    const auto parsed = parseLogbook(bytes, mapping, m_book.clock().today(), progress);
    if (!parsed && parsed.error().code == ErrorCode::Cancelled) return fail(parsed.error());
    if (!parsed) {
        preview.refusal = parsed.error().what;
        return preview;
    }
    STEELYARD_TRY(auto database, Database::openWriter(m_book.path()));
    STEELYARD_TRY(const ImportOutcome trial, importLogbook(*database, *parsed, {true, true}, progress));
    const ImportReport& report = trial.report;
    preview.badRows = report.rowsSetAside;
    preview.newAthletes = static_cast<int>(report.newAthletes.size());
    preview.newSets = report.setsAdded;
    preview.alreadyThere = report.setsAlreadyThere;
    for (const RowProblem& problem : report.problems) {
        const auto row = std::ranges::lower_bound(lines, problem.line);
        preview.troubles.push_back({static_cast<int>(row - lines.begin()), sourceOf(choices, problem.column),
                                    BookImporterText::tr("“%1”").arg(problem.value), problem.text});
    }
    return preview;
}

JobHandle BookImporter::start(QObject* owner, const QString& path, const ImportChoices& choices,
                              std::function<void(Result<int>)> done)
{
    const auto work = [book = m_book.path(), path, choices, today = m_book.clock().today(),
                       now = m_book.clock().nowUtc()](const Progress& progress) {
        return importFile(book, path, choices, today, now, progress);
    };
    return m_jobs.run(owner, BookImporterText::tr("Importing"), work,
                      [this, done = std::move(done)](const Result<ImportOutcome>& outcome) {
                          if (!outcome) return done(fail(outcome.error()));
                          m_book.history().adopt(outcome->changes);
                          done(outcome->report.setsAdded);
                      });
}

}  // namespace steelyard
