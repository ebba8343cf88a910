#include "core/exchange/logbook_import.h"

#include "core/edits/edit_history.h"
#include "core/exchange/import_consent.h"
#include "core/exchange/lift_line_finder.h"
#include "core/storage/logbook_repository.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <functional>
#include <map>
#include <utility>

namespace steelyard {
namespace {

struct LogbookImportText {
    Q_DECLARE_TR_FUNCTIONS(LogbookImportText)
};

// A session while rows come in.
struct OpenSession {
    Id<Session> id;
    bool wasThere = false;
    int lastNumber = 0;    // of this file: the next set without a number gets the next one
    int lastPosition = 0;  // in the book
    std::map<Id<LiftLine>, ExerciseRating> ratings;
    std::vector<std::pair<Id<LiftLine>, int>> added;  // by this file: line and number
};

class LogbookImporter {
public:
    // A row as it stands in the file, for those that are refused.
    using RecordOf = std::function<CsvRecord(const LogbookRow&)>;

    LogbookImporter(Transaction& transaction, const ImportOptions& options, ImportReport& report, RecordOf recordOf)
        : m_transaction(transaction),
          m_options(options),
          m_report(report),
          m_recordOf(std::move(recordOf)),
          m_logbook(transaction.database()),
          m_consent(transaction, options, report),
          m_finder(transaction, report)
    {}

    Result<void> run(const ParsedLogbook& parsed, const Progress& progress)
    {
        STEELYARD_CHECK(m_finder.readBook());
        for (std::size_t i = 0; i < parsed.rows.size(); ++i) {
            STEELYARD_CHECK(importRow(parsed.rows[i]));
            if (i % kRowsBetweenLooks != 0) continue;
            progress.report(0.4 + 0.5 * static_cast<double>(i) / static_cast<double>(parsed.rows.size()));
            STEELYARD_CHECK(goOn(progress));
        }
        return writeRatings(progress);
    }

    Result<void> run(LogbookReader& reader, const Progress& progress)
    {
        STEELYARD_CHECK(m_finder.readBook());
        while (true) {
            STEELYARD_TRY(const bool more, reader.next());
            if (!more) break;
            for (const LogbookRow& row : reader.sets()) STEELYARD_CHECK(importRow(row));
            for (const RowProblem& problem : reader.problems()) complain(problem, [&] { return reader.record(); });
            if (!reader.passedOver().isEmpty() && m_report.passedOver.size() < kMostPassedOver)
                m_report.passedOver.push_back({reader.record().line, {}, {}, reader.passedOver(), -1, {}});
            if (static_cast<std::size_t>(reader.rowsRead()) % kRowsBetweenLooks != 0) continue;
            progress.report(0.9 * reader.share());
            STEELYARD_CHECK(goOn(progress));
        }
        m_report.rowsRead = reader.rowsRead();
        return writeRatings(progress);
    }

private:
    static constexpr std::size_t kRowsBetweenLooks = 500;
    static constexpr std::size_t kMostPassedOver = 1000;

    static Result<void> goOn(const Progress& progress)
    {
        if (!progress.cancelled()) return {};
        return fail(ErrorCode::Cancelled, LogbookImportText::tr("Stopped; nothing was changed."));
    }

    Result<void> importRow(const LogbookRow& row)
    {
        STEELYARD_TRY(const auto found, m_finder.find(row));
        const LiftLine& line = found.value;
        const auto lineId = found.id;
        STEELYARD_TRY(OpenSession * session, openSession(line.athlete, row.date));
        SetEntry set = row.set;
        if (!row.numberGiven) set.number = session->lastNumber + 1;
        session->lastNumber = std::max(session->lastNumber, set.number);
        if (!row.unitGiven && m_finder.unitOf(line.athlete) != set.load.unit())
            set.load = Load::make(set.load.amount(), m_finder.unitOf(line.athlete)).value_or(set.load);
        if (!row.numberGiven)
            for (const Problem& problem : validate(set))
                return complain(row, problem.field, QString::number(set.number), problem.text);
        STEELYARD_TRY(const auto there, existing(*session, lineId, set.number));
        if (there && *there != set) {
            return complain(
                row, QStringLiteral("set"), QString::number(set.number),
                LogbookImportText::tr("the book has another set with this number on this day and lift; correct the "
                                      "number, or change the set in the book"));
        }
        STEELYARD_TRY(const ExerciseRating rating, m_consent.allowed(line.athlete, row.rating));
        if (!takeRating(rating, *session, line.athlete, lineId)) {
            return complain(
                row, QStringLiteral("tension"), {},
                LogbookImportText::tr("this exercise has other ratings already on this day; leave them blank here, or "
                                      "make them equal"));
        }
        if (there) {
            ++m_report.setsAlreadyThere;
        } else {
            STEELYARD_CHECK(
                m_logbook.insert(m_transaction, line.athlete, {session->id, lineId, ++session->lastPosition, set}));
            ++m_report.setsAdded;
            session->added.emplace_back(lineId, set.number);
        }
        return {};
    }

    Result<void> complain(const LogbookRow& row, const QString& column, const QString& value, const QString& text)
    {
        complain({row.line, column, value, text, -1, {}}, [&] { return m_recordOf(row); });
        return {};
    }

    // Problems come in the order of lines, several of a row one after another.
    template <class Record>
    void complain(const RowProblem& problem, const Record& record)
    {
        if (m_lastBadLine != problem.line) ++m_report.rowsSetAside;
        const bool another = std::exchange(m_lastBadLine, problem.line) != problem.line;
        if (m_report.problems.size() >= m_options.mostProblems) return;
        m_report.problems.push_back(problem);
        if (another) m_report.problemRecords.push_back(record());
    }

    Result<OpenSession*> openSession(Id<Athlete> athlete, QDate date)
    {
        const auto key = std::pair(athlete, date);
        if (m_lastSession && m_lastSession->first == key) return &m_lastSession->second;
        if (const auto open = m_sessions.find(key); open != m_sessions.end()) {
            m_lastSession = &*open;
            return &open->second;
        }
        STEELYARD_TRY(auto find,
                      m_transaction.database().prepare("SELECT id FROM session WHERE athlete_id = ?1 AND date = ?2"));
        find.bindAll(athlete, date);
        STEELYARD_TRY(const bool wasThere, find.step());
        find.reset();
        STEELYARD_TRY(const auto id, m_logbook.session(m_transaction, athlete, date));
        OpenSession session{id, wasThere, 0, 0, {}, {}};
        if (wasThere) {
            STEELYARD_TRY(auto last, m_transaction.database().prepare(
                                         "SELECT coalesce(max(position), 0) FROM set_entry WHERE session_id = ?1"));
            last.bind(1, id);
            STEELYARD_CHECK(last.step());
            session.lastPosition = last.integer(0);
            STEELYARD_CHECK(readRatings(session));
        }
        m_lastSession = &*m_sessions.emplace(key, std::move(session)).first;
        return &m_lastSession->second;
    }

    Result<void> readRatings(OpenSession& session)
    {
        static const std::string sql = std::string("SELECT r.line_id, ")
                                           .append(kRatingColumns)
                                           .append(" FROM exercise_rating r WHERE r.session_id = ?1");
        STEELYARD_TRY(auto st, m_transaction.database().prepare(sql));
        st.bind(1, session.id);
        while (true) {
            STEELYARD_TRY(const bool more, st.step());
            if (!more) return {};
            session.ratings.emplace(st.id<LiftLine>(0), readRating(st, 1));
        }
    }

    // The set that stands at this place, from the book or from an earlier row of the file.
    Result<std::optional<SetEntry>> existing(const OpenSession& session, Id<LiftLine> line, int number)
    {
        if (!session.wasThere && std::ranges::find(session.added, std::pair(line, number)) == session.added.end())
            return std::nullopt;
        static const std::string sql =
            std::string("SELECT ")
                .append(kSetColumns)
                .append(" FROM set_entry e WHERE e.session_id = ?1 AND e.line_id = ?2 AND e.number = ?3");
        STEELYARD_TRY(auto st, m_transaction.database().prepare(sql));
        st.bindAll(session.id, line, number);
        STEELYARD_TRY(const bool found, st.step());
        return found ? std::optional(readSet(st, 0)) : std::nullopt;
    }

    // False: the exercise has other ratings on this day.
    bool takeRating(const ExerciseRating& rating, OpenSession& session, Id<Athlete> athlete, Id<LiftLine> line)
    {
        if (rating.none()) return true;
        const auto [place, isNew] = session.ratings.emplace(line, rating);
        if (isNew) m_newRatings.push_back({athlete, session.id, line, rating});
        return place->second == rating;
    }

    Result<void> writeRatings(const Progress& progress)
    {
        for (std::size_t i = 0; i < m_newRatings.size(); ++i) {
            const NewRating& rating = m_newRatings[i];
            STEELYARD_CHECK(
                m_logbook.putRating(m_transaction, rating.athlete, rating.session, rating.line, rating.value));
            if (i % kRowsBetweenLooks == 0) STEELYARD_CHECK(goOn(progress));
        }
        return {};
    }

    struct NewRating {
        Id<Athlete> athlete;
        Id<Session> session;
        Id<LiftLine> line;
        ExerciseRating value;
    };

    Transaction& m_transaction;
    const ImportOptions& m_options;
    ImportReport& m_report;
    RecordOf m_recordOf;
    int m_lastBadLine = 0;
    LogbookRepository m_logbook;
    ImportConsent m_consent;
    LiftLineFinder m_finder;
    using Sessions = std::map<std::pair<Id<Athlete>, QDate>, OpenSession>;
    Sessions m_sessions;
    Sessions::value_type* m_lastSession = nullptr;  // most rows go where the one before went
    std::vector<NewRating> m_newRatings;
};

}  // namespace

Result<void> fillLogbook(Transaction& transaction, LogbookReader& reader, ImportReport& report,
                         const Progress& progress)
{
    return LogbookImporter(transaction, {}, report, [&](const LogbookRow&) { return reader.record(); })
        .run(reader, progress);
}

namespace {

using FillReport = std::function<Result<void>(Transaction&, ImportReport&)>;

// All or nothing, and recorded, so that it can be undone.
Result<ImportOutcome> importWhole(Database& database, const ImportOptions& options, const FillReport& fill,
                                  const Progress& progress)
{
    ImportOutcome outcome;
    ImportReport& report = outcome.report;
    STEELYARD_TRY(auto transaction, Transaction::begin(database));
    std::shared_ptr<ChangesetRecorder> recorder;
    if (!options.previewOnly) {
        STEELYARD_TRY(auto started, ChangesetRecorder::start(database));
        recorder = std::make_shared<ChangesetRecorder>(std::move(started));
        if (options.leftovers) options.leftovers->push_back(recorder);
    }
    STEELYARD_CHECK(fill(transaction, report));
    outcome.label = LogbookImportText::tr("import of %n row(s)", nullptr, report.rowsRead);
    if (options.previewOnly || (!report.problems.empty() && !options.setAside)) {
        progress.report(1.0);
        return outcome;
    }

    outcome.changes = transaction.changes();
    STEELYARD_CHECK(rememberStep(transaction, *recorder, outcome.label, options.madeAt, progress));
    STEELYARD_CHECK(transaction.commit());
    report.written = true;
    progress.report(1.0);
    return outcome;
}

}  // namespace

Result<ImportOutcome> importLogbook(Database& database, LogbookReader& reader, const ImportOptions& options,
                                    const Progress& progress)
{
    return importWhole(
        database, options,
        [&](Transaction& transaction, ImportReport& report) {
            report.unknownColumns = reader.unknownColumns();
            const auto importer = std::make_shared<LogbookImporter>(transaction, options, report,
                                                                    [&](const LogbookRow&) { return reader.record(); });
            if (options.leftovers) options.leftovers->push_back(importer);
            return importer->run(reader, progress);
        },
        progress);
}

Result<ImportOutcome> importLogbook(Database& database, const ParsedLogbook& parsed, const ImportOptions& options,
                                    const Progress& progress)
{
    const auto fill = [&](Transaction& transaction, ImportReport& report) -> Result<void> {
        report.rowsRead = static_cast<int>(parsed.rows.size() + parsed.badRecords.size());
        report.unknownColumns = parsed.unknownColumns;
        report.passedOver = parsed.passedOver;
        STEELYARD_CHECK(LogbookImporter(transaction, options, report, [&](const LogbookRow& row) {
                            return recordOf(parsed, row);
                        }).run(parsed, progress));
        report.problems.insert(report.problems.end(), parsed.problems.begin(), parsed.problems.end());
        report.problemRecords.insert(report.problemRecords.end(), parsed.badRecords.begin(), parsed.badRecords.end());
        std::ranges::stable_sort(report.problems, {}, &RowProblem::line);
        std::ranges::stable_sort(report.problemRecords, {}, &CsvRecord::line);
        report.rowsSetAside = static_cast<int>(report.problemRecords.size());
        return {};
    };
    return importWhole(database, options, fill, progress);
}

namespace {

struct CsvForm {
    const QStringList& header;
    bool hasHeader;
    QChar separator;
    TextEncoding encoding;
};

QByteArray rowsWithProblems(const CsvForm& file, const ImportReport& report)
{
    const auto quoted = [](QString field) { return u'"' + field.replace(u'"', QStringLiteral("\"\"")) + u'"'; };
    const auto line = [&](const QStringList& fields, const QString& last) {
        QStringList cells;
        for (const QString& field : fields) cells.append(quoted(field));
        cells.append(quoted(last));
        return (cells.join(file.separator) + u'\n').toUtf8();
    };
    // UTF-8 whatever the file was; the mark tells the reader, who may come back with the same mapping.
    QByteArray csv = file.encoding == TextEncoding::Utf8 ? QByteArray() : QByteArray("\xEF\xBB\xBF");
    // A file that was mended before has the column already.
    const qsizetype old = file.hasHeader ? file.header.indexOf(kProblemColumn) : -1;
    const auto without = [old](QStringList fields) {
        if (old >= 0 && old < fields.size()) fields.removeAt(old);
        return fields;
    };
    const QStringList header = without(file.header);
    if (file.hasHeader) csv += line(header, kProblemColumn);
    auto problem = report.problems.begin();  // both are in order of lines
    for (const CsvRecord& record : report.problemRecords) {
        QStringList texts;
        while (problem != report.problems.end() && problem->line < record.line) ++problem;
        for (; problem != report.problems.end() && problem->line == record.line; ++problem)
            texts.append(toText(*problem));
        QStringList fields = without(record.fields);
        while (fields.size() < header.size()) fields.append(QString());
        csv += line(fields, texts.join(QStringLiteral(" | ")));
    }
    return csv;
}

}  // namespace

QByteArray problemRowsCsv(const ParsedLogbook& parsed, const ImportReport& report)
{
    return rowsWithProblems({parsed.header, parsed.hasHeader, parsed.separator, parsed.encoding}, report);
}

QByteArray problemRowsCsv(const LogbookReader& reader, const ImportReport& report)
{
    const LogbookMapping& mapping = reader.mapping();
    return rowsWithProblems({reader.header(), mapping.hasHeader, mapping.separator, mapping.encoding}, report);
}

}  // namespace steelyard
