#include "core/care/salvage.h"

#include "core/book/verify.h"
#include "core/care/salvage_links.h"
#include "core/storage/book_schema.h"
#include "core/storage/left_journal.h"
#include "core/storage/migrations.h"
#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>
#include <QtCore/QTemporaryDir>

#include <algorithm>

namespace steelyard {
namespace {

struct SalvageText {
    Q_DECLARE_TR_FUNCTIONS(SalvageText)
};

// Steps that could be undone once; see the header.
constexpr const char* kNotKept = "edit_step";

Result<void> rescueTables(DamagedFile& damaged, Database& into, SalvageReport& report, const Progress& progress)
{
    STEELYARD_TRY(const Schema schema, schemaOfVersion(damaged.version()));
    std::vector<QString> tables;
    for (const auto& [name, sql] : schema)
        if (name.startsWith(u"table ") && name.mid(6) != QLatin1StringView(kNotKept)) tables.push_back(name.mid(6));
    // Rows come table by table; that they hang together is seen to at the end.
    STEELYARD_CHECK(into.execute("PRAGMA foreign_keys = OFF"));
    STEELYARD_TRY(auto transaction, Transaction::begin(into));
    for (std::size_t i = 0; i < tables.size(); ++i) {
        progress.report(static_cast<double>(i) / static_cast<double>(tables.size()));
        STEELYARD_TRY(auto rescued, damaged.rescue(tables[i], into, progress));
        report.tables.push_back(std::move(rescued));
    }
    STEELYARD_TRY(const MendedLinks mended, mendLinks(transaction));
    report.standIns = mended.standIns;
    for (RescuedTable& table : report.tables) {
        if (const auto it = mended.leftOut.find(table.table); it != mended.leftOut.end()) table.refused += it->second;
        STEELYARD_TRY(table.rows, into.integer("SELECT count(*) FROM \"" + table.table.toStdString() + '"'));
    }
    STEELYARD_CHECK(transaction.commit());
    return into.execute("PRAGMA foreign_keys = ON");
}

// Into a file whose place nobody knows yet.
Result<void> fillNewBook(DamagedFile& damaged, const QString& path, SalvageReport& report, const Progress& progress)
{
    auto steps = builtInMigrations();
    std::erase_if(steps, [&](const Migration& step) { return step.version > damaged.version(); });
    {
        STEELYARD_TRY(const auto made, Database::create(path, steps));
        STEELYARD_CHECK(rescueTables(damaged, *made, report, progress.part(0, 0.8)));
        STEELYARD_CHECK(migrate(*made, builtInMigrations(), {}));
        STEELYARD_TRY(const VerifyReport verified, verifyBook(*made, progress.part(0.8, 1)));
        report.findings = verified.findings;
        STEELYARD_CHECK(made->execute("PRAGMA wal_checkpoint(TRUNCATE)"));
    }
    const auto anything = std::any_of(report.tables.begin(), report.tables.end(),
                                      [](const RescuedTable& table) { return table.rows > 0; });
    if (!anything)
        return fail(ErrorCode::Storage,
                    SalvageText::tr("Nothing in this file can be read as a book. Restore a backup."));
    return {};
}

void removeWithJournal(const QString& path)
{
    for (const char* end : {"", "-wal", "-shm"}) QFile::remove(path + QLatin1StringView(end));
}

// "up to 48" or nothing.
QString lostOf(const RescuedTable& table)
{
    const std::int64_t most = table.refused + table.unreadable;
    if (!table.wasThere) return SalvageText::tr("could not be found in the file");
    if (most > 0 && table.endUnknown) return SalvageText::tr("at least %1 lost").arg(most);
    if (most > 0) return SalvageText::tr("up to %1 lost").arg(most);
    if (table.endUnknown) return SalvageText::tr("perhaps some lost");
    return {};
}

QString kindOf(const QString& table)
{
    const std::pair<const char*, QString> kinds[] = {
        {"athlete", SalvageText::tr("Lifters")},      {"session", SalvageText::tr("Sessions")},
        {"set_entry", SalvageText::tr("Sets")},       {"exercise_rating", SalvageText::tr("Ratings")},
        {"decision", SalvageText::tr("Decisions")},   {"block", SalvageText::tr("Blocks")},
        {"slot", SalvageText::tr("Planned lifts")},   {"trial", SalvageText::tr("Trials")},
        {"lift_line", SalvageText::tr("Lift lines")}, {"repetition", SalvageText::tr("Repetitions")},
        {"exercise", SalvageText::tr("Exercises")},   {"variant", SalvageText::tr("Variants")},
    };
    for (const auto& [name, words] : kinds)
        if (table == QLatin1StringView(name)) return words;
    return {};
}

}  // namespace

std::int64_t SalvageReport::saved(const QString& table) const
{
    for (const RescuedTable& each : tables)
        if (each.table == table) return each.rows;
    return 0;
}

bool SalvageReport::anythingLost() const
{
    return standIns > 0 || unreadBytes > 0 || std::any_of(tables.begin(), tables.end(), [](const RescuedTable& table) {
               return table.refused + table.unreadable > 0 || table.endUnknown || !table.wasThere;
           });
}

Result<SalvageReport> salvageBook(const QString& damaged, const QString& to, const Progress& progress)
{
    if (QFileInfo::exists(to))
        return fail(ErrorCode::Invalid,
                    SalvageText::tr("“%1” is there already and was not touched. Choose another name.").arg(to));
    const QTemporaryDir folder(QFileInfo(to).absoluteDir().filePath(QStringLiteral(".salvage-XXXXXX")));
    if (!folder.isValid())
        return fail(ErrorCode::Storage,
                    SalvageText::tr("“%1” can't be made. Check that the folder exists and can be written.").arg(to));
    SalvageReport report;
    const QString unfinished = folder.filePath(QStringLiteral("saved.steelyard"));
    {
        STEELYARD_TRY(const auto source, DamagedFile::open(damaged, folder.path()));
        report.unreadBytes = source->unreadBytes();
        report.journalLeftOut = source->isJournalLeftOut();
        if (auto filled = fillNewBook(*source, unfinished, report, progress); !filled) {
            removeWithJournal(unfinished);
            return fail(filled.error());
        }
    }
    if (!QFile::rename(unfinished, to)) return fail(ErrorCode::Storage, SalvageText::tr("“%1” can't be made.").arg(to));
    return report;
}

Result<void> copyAsItIs(const QString& book, const QString& to)
{
    if (QFileInfo::exists(to) || QFileInfo::exists(journalOf(to)))
        return fail(ErrorCode::Invalid,
                    SalvageText::tr("“%1” is there already and was not touched. Choose another name.").arg(to));
    const auto copy = [](const QString& from, const QString& target) {
        return QFile::copy(from, target) && QFileInfo(from).size() == QFileInfo(target).size()
               && QFile::setPermissions(target, QFileDevice::ReadOwner | QFileDevice::WriteOwner);
    };
    if (copy(book, to) && (!hasJournal(book) || copy(journalOf(book), journalOf(to)))) return {};
    removeWithJournal(to);
    return fail(ErrorCode::Storage,
                SalvageText::tr(
                    "“%1” could not be copied to “%2”. Check that the one can be read, and that there is room for the "
                    "other.")
                    .arg(book, to));
}

QStringList salvageLines(const SalvageReport& report)
{
    QStringList lines;
    QStringList others;
    for (const RescuedTable& table : report.tables) {
        const QString kind = kindOf(table.table);
        const QString lost = lostOf(table);
        if (kind.isEmpty() && !lost.isEmpty()) others << QStringLiteral("%1 (%2)").arg(table.table, lost);
        if (kind.isEmpty() || (table.rows == 0 && lost.isEmpty())) continue;
        lines << (lost.isEmpty() ? SalvageText::tr("%1: %2 saved, none lost").arg(kind).arg(table.rows)
                                 : SalvageText::tr("%1: %2 saved, %3").arg(kind).arg(table.rows).arg(lost));
    }
    if (!others.isEmpty()) lines << SalvageText::tr("Other records: %1").arg(others.join(QStringLiteral(", ")));
    if (report.standIns > 0)
        lines << SalvageText::tr(
            "%n name(s) could not be read and begin with “Recovered”; rename them when you know what they "
            "are",
            nullptr, report.standIns);
    if (report.journalLeftOut)
        lines << SalvageText::tr(
            "The journal beside the file did not fit it and was left out: the last changes before the program "
            "ended may be missing");
    if (report.unreadBytes > 0)
        lines << SalvageText::tr(
                     "The disk itself could not give %1 bytes of the file: save your work elsewhere and have it looked "
                     "at")
                     .arg(report.unreadBytes);
    if (!report.findings.isEmpty())
        lines << SalvageText::tr("A check of the new book still finds: %1").arg(report.findings.mid(0, 5).join(u' '));
    return lines;
}

}  // namespace steelyard
