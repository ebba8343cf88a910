#include "core/care/erasure.h"

#include "core/storage/statement.h"

#include <QtCore/QByteArrayMatcher>
#include <QtCore/QCoreApplication>
#include <QtCore/QDir>
#include <QtCore/QFileInfo>

#include <algorithm>
#include <array>

namespace steelyard {
namespace {

struct ErasureText {
    Q_DECLARE_TR_FUNCTIONS(ErasureText)
};

void cleanAfter(Database& db, ErasureReport& report)
{
    const auto cleaned = cleanFile(db);
    report.fileCleaned = cleaned.value_or(false);
    if (report.fileCleaned) return;
    report.why = cleaned ? ErasureText::tr(
                     "Another window or program still reads the book. Close it everywhere: what "
                     "the erased rows left in the journal goes with the last one.")
                         : ErasureText::tr(
                               "The file could not be written anew without what the erased rows left in "
                               "it: %1 Free some space, save a copy of the book, and work with that: a "
                               "copy has nothing of it.")
                               .arg(cleaned.error().what);
}

// Removal, mark and the end of the history in one transaction.
Result<void> removeMarked(Book& book, Id<Athlete> athlete, const ErasedAthlete& mark, Changes& changes)
{
    STEELYARD_TRY(auto transaction, Transaction::begin(book.database()));
    STEELYARD_CHECK(removeRowsOf(transaction, athlete));
    STEELYARD_CHECK(ErasedAthleteRepository(book.database()).put(transaction, mark));
    STEELYARD_CHECK(book.history().clear(transaction));
    changes.merge(transaction.changes());
    return transaction.commit();
}

Result<void> needWritable(const Book& book)
{
    if (!book.isReadOnly()) return {};
    return fail(ErrorCode::Storage, ErasureText::tr("The book is open for reading only, so nobody can be erased from "
                                                    "it. Close it where else it is open."));
}

Result<CopyState> stateOfCopy(const QString& path, const QUuid& mark)
{
    STEELYARD_CHECK(Database::isOlder(path));  // looks at what it is, whatever its version
    STEELYARD_TRY(const auto db, Database::openReader(path));
    STEELYARD_TRY(auto st, db->prepare("SELECT uuid FROM athlete"));
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return CopyState::Free;
        if (erasureMark(st.uuid(0)) == mark) return CopyState::Holds;
    }
}

std::vector<QByteArrayMatcher> matchersOf(const PersonTraces& traces)
{
    const auto utf16 = [&](bool swapped) {
        QByteArray bytes;
        for (const QChar c : traces.name) {
            const char low = static_cast<char>(c.unicode() & 0xff);
            const char high = static_cast<char>(c.unicode() >> 8);
            bytes.append(swapped ? high : low).append(swapped ? low : high);
        }
        return bytes;
    };
    std::vector<QByteArrayMatcher> matchers;
    for (const QByteArray& bytes :
         {traces.name.toUtf8(), utf16(false), utf16(true), traces.uuid.toByteArray(QUuid::WithoutBraces),
          traces.uuid.toByteArray(QUuid::Id128), traces.uuid.toRfc4122()})
        if (!bytes.isEmpty()) matchers.emplace_back(bytes);
    return matchers;
}

Result<bool> isNamedIn(QFile& file, const std::vector<QByteArrayMatcher>& matchers)
{
    constexpr qint64 kPart = 1 << 20;
    qsizetype longest = 0;
    for (const QByteArrayMatcher& matcher : matchers) longest = std::max(longest, matcher.pattern().size());
    QByteArray held;
    while (true) {
        const QByteArray part = file.read(kPart);
        if (file.error() != QFileDevice::NoError)
            return fail(ErrorCode::Storage, ErasureText::tr("“%1” can't be read.").arg(file.fileName()),
                        file.errorString());
        if (part.isEmpty()) return false;
        held = held.right(longest - 1) + part;
        for (const QByteArrayMatcher& matcher : matchers)
            if (matcher.indexIn(held) >= 0) return true;
    }
}

}  // namespace

std::int64_t ErasurePlan::rows() const
{
    std::int64_t sum = 0;
    for (const RowCount& count : counts) sum += count.rows;
    return sum;
}

Result<ErasurePlan> planErasure(Database& db, Id<Athlete> athlete)
{
    STEELYARD_TRY(const auto row, AthleteRepository(db).find(athlete));
    ErasurePlan plan{{row.value.name, row.uuid}, erasureMark(row.uuid), {}, 0, {}};
    STEELYARD_TRY(plan.counts, countRowsOf(db, athlete));
    STEELYARD_TRY(const auto steps, db.integer("SELECT count(*) FROM edit_step"));
    plan.stepsForgotten = static_cast<int>(steps);
    STEELYARD_TRY(plan.mentions, mentionsElsewhere(db, athlete, row.value.name));
    return plan;
}

Result<ErasureReport> eraseAthlete(Book& book, Id<Athlete> athlete)
{
    STEELYARD_CHECK(needWritable(book));
    STEELYARD_TRY(const auto row, book.athletes().find(athlete));
    ErasureReport report{{erasureMark(row.uuid), book.clock().nowUtc()}, {}, true, {}};
    STEELYARD_TRY(report.counts, countRowsOf(book.database(), athlete));
    Changes changes;
    STEELYARD_CHECK(removeMarked(book, athlete, report.erased, changes));
    cleanAfter(book.database(),
               report);  // before anybody is told, who would read the book while its journal is emptied
    book.history().adopt(changes);
    return report;
}

Result<std::vector<ErasedAthlete>> erasedAthletes(Database& db)
{
    return ErasedAthleteRepository(db).all();
}

Result<int> eraseAgain(Book& book, const std::vector<ErasedAthlete>& erased)
{
    STEELYARD_CHECK(needWritable(book));
    STEELYARD_TRY(const auto athletes, book.athletes().all());
    Changes changes;
    int gone = 0;
    for (const Row<Athlete>& row : athletes) {
        const auto mark = std::ranges::find(erased, erasureMark(row.uuid), &ErasedAthlete::mark);
        if (mark == erased.end()) continue;
        STEELYARD_CHECK(removeMarked(book, row.id, *mark, changes));
        ++gone;
    }
    {
        STEELYARD_TRY(auto transaction, Transaction::begin(book.database()));
        for (const ErasedAthlete& mark : erased)
            STEELYARD_CHECK(ErasedAthleteRepository(book.database()).put(transaction, mark));
        STEELYARD_CHECK(transaction.commit());
    }
    if (gone == 0) return 0;
    ErasureReport report;
    cleanAfter(book.database(), report);
    book.history().adopt(changes);
    if (!report.fileCleaned) return fail(ErrorCode::Storage, report.why);
    return gone;
}

std::vector<CopyFinding> copiesHolding(const QStringList& paths, const QUuid& mark)
{
    std::vector<CopyFinding> findings;
    for (const QString& path : paths) findings.push_back({path, stateOfCopy(path, mark).value_or(CopyState::CantTell)});
    return findings;
}

QStringList copiesBeside(const QString& bookPath)
{
    const QFileInfo book(bookPath);
    QStringList paths;
    for (const QFileInfo& file :
         book.dir().entryInfoList({book.fileName() + QStringLiteral(".before-*")}, QDir::Files, QDir::Name))
        if (!file.fileName().endsWith(QStringLiteral("-wal")) && !file.fileName().endsWith(QStringLiteral("-shm")))
            paths.append(file.filePath());
    return paths;
}

Result<QStringList> filesNaming(const QString& bookPath, const PersonTraces& traces)
{
    const auto matchers = matchersOf(traces);
    QStringList naming;
    for (const char* suffix : {"", "-wal", "-shm", "-journal", ".lock"}) {
        QFile file(bookPath + QLatin1StringView(suffix));
        if (!file.exists()) continue;
        if (!file.open(QIODevice::ReadOnly))
            return fail(ErrorCode::Storage, ErasureText::tr("“%1” can't be read.").arg(file.fileName()),
                        file.errorString());
        STEELYARD_TRY(const bool named, isNamedIn(file, matchers));
        if (named) naming.append(file.fileName());
    }
    return naming;
}

}  // namespace steelyard
