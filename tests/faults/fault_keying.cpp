// A coach's program in small, for tests that end it in the middle of its work: it opens a book as the real ones do and types
// sets or imports files one after the other, saying "acknowledged N" after each one that the book took.
//
//   fault_keying type BOOK [--die-after MICROSECONDS]     killed by its own alarm clock at that time, wherever it is
//   fault_keying import BOOK [--die-after MICROSECONDS]
//   fault_keying open BOOK [--die-after MICROSECONDS]     opens it, which brings an older one up to date
//   fault_keying hold BOOK                                "holding" or "reading", until its input ends
//   fault_keying dump BOOK                                the content, as text
//   fault_keying stranger BOOK                            as another person than the owner: reads, tries to write
//   fault_keying full BOOK --room BYTES                   types until no file may grow beyond that, then has room again
//   fault_keying keep BOOK SHELF, restore BOOK SHELF FIRST SECOND [--die-after MICROSECONDS] [--room BYTES]     see care_tasks.h
//   fault_keying keepfull BOOK SHELF --room BYTES or --ballast FILE
//   fault_keying full BOOK --ballast FILE                 types until the disk is full, then removes that file
//   fault_keying work BOOK --work WORK [--room … | --ballast …]   does one of disk_works.h without room, then with it
#include "core/book/verify.h"
#include "core/exchange/book_dump.h"
#include "core/exchange/logbook_import.h"
#include "tests/faults/care_tasks.h"
#include "tests/faults/disk_works.h"
#include "tests/faults/keying.h"

#include <QtCore/QCommandLineParser>
#include <QtCore/QCoreApplication>
#include <QtCore/QDirIterator>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>

#include <sys/resource.h>
#include <sys/time.h>
#include <unistd.h>

#include <csignal>

namespace steelyard {
namespace {

// Unbuffered: what was said before the end is heard after it.
void say(const QByteArray& line)
{
    const QByteArray whole = line + '\n';
    [[maybe_unused]] const auto written = ::write(STDOUT_FILENO, whole.constData(), static_cast<size_t>(whole.size()));
}

void sayError(const char* what, const Error& error)
{
    say(QByteArray(what) + ": " + error.what.toUtf8() + " [" + error.detail.toUtf8() + ']');
}

void die(int)
{
    ::kill(::getpid(), SIGKILL);
}

void dieAfter(int microseconds)
{
    std::signal(SIGALRM, die);
    itimerval timer{};
    timer.it_value.tv_sec = microseconds / 1'000'000;
    timer.it_value.tv_usec = microseconds % 1'000'000;
    ::setitimer(ITIMER_REAL, &timer, nullptr);
}

Result<void> typeUntilTheEnd(Book& book)
{
    STEELYARD_TRY(const LiftLine line, test::onlyLine(book));
    STEELYARD_TRY(int n, test::countSets(book));
    while (true) {
        STEELYARD_CHECK(test::typeSet(book, line, ++n));
        say("acknowledged " + QByteArray::number(n));
    }
}

Result<void> importUntilTheEnd(Book& book)
{
    STEELYARD_TRY(int sets, test::countSets(book));
    for (int n = sets / test::kRowsAnImport + 1;; ++n) {
        STEELYARD_TRY(const auto log, parseLogbook(test::batchCsv(n), {}, book.clock().today(), Progress()));
        STEELYARD_TRY(const auto worker, Database::openWriter(book.path()));
        STEELYARD_TRY(const auto outcome, importLogbook(*worker, log, {false, false, book.clock().nowUtc()}, {}));
        book.history().adopt(outcome.changes);
        say("acknowledged " + QByteArray::number(n));
    }
}

void allowFiles(rlim_t bytes)
{
    rlimit limit{};
    ::getrlimit(RLIMIT_FSIZE, &limit);
    limit.rlim_cur = std::min(bytes, limit.rlim_max);
    ::setrlimit(RLIMIT_FSIZE, &limit);
}

// Takes the room away where a limit stands for a full disk, and gives what brings it back.
std::function<void()> roomMaker(const QCommandLineParser& options)
{
    if (options.isSet(QStringLiteral("room"))) {
        std::signal(SIGXFSZ, SIG_IGN);
        allowFiles(options.value(QStringLiteral("room")).toULong());
        return [] { allowFiles(RLIM_INFINITY); };
    }
    return [ballast = options.value(QStringLiteral("ballast"))] { QFile::remove(ballast); };
}

// Types until the book refuses, looks whether all that was acknowledged is there, makes room and types one more.
Result<void> fillTheDisk(Book& book, const std::function<void()>& makeRoom)
{
    STEELYARD_TRY(const LiftLine line, test::onlyLine(book));
    int acknowledged = 0;
    while (acknowledged < 100'000) {
        const auto typed = test::typeSet(book, line, acknowledged + 1);
        if (!typed) {
            sayError("refused", typed.error());
            break;
        }
        ++acknowledged;
    }
    say("acknowledged " + QByteArray::number(acknowledged));
    say("difference: " + QByteArray::fromStdString(test::differenceFromTyped(book, acknowledged)));
    makeRoom();
    STEELYARD_CHECK(test::typeSet(book, line, acknowledged + 1));
    say("again: " + QByteArray::fromStdString(test::differenceFromTyped(book, acknowledged + 1)));
    STEELYARD_CHECK(book.history().undo());
    say("undone: " + QByteArray::fromStdString(test::differenceFromTyped(book, acknowledged)));
    return {};
}

Result<void> beAStranger(Book& book)
{
    say(book.isReadOnly() ? "reading" : "holding");
    STEELYARD_TRY(const int sets, test::countSets(book));
    say("sets " + QByteArray::number(sets));
    STEELYARD_TRY(const LiftLine line, test::onlyLine(book));
    if (const auto typed = test::typeSet(book, line, sets + 1); !typed) sayError("refused", typed.error());
    return {};
}

// Takes the room away with a file that fills it, or by a limit.
Result<void> keepUntilFull(const QString& book, const BackupShelf& shelf, const BackupShelf& second,
                           const QCommandLineParser& options)
{
    const QString ballast = options.value(QStringLiteral("ballast"));
    std::signal(SIGXFSZ, SIG_IGN);
    const auto fill = [&] {
        if (ballast.isEmpty()) return allowFiles(options.value(QStringLiteral("room")).toULong());
        QFile file(ballast);
        if (!file.open(QIODevice::WriteOnly | QIODevice::Unbuffered)) return;
        while (file.write(QByteArray(4096, '.')) == 4096) continue;
    };
    const auto makeRoom = [&] {
        if (ballast.isEmpty()) return allowFiles(RLIM_INFINITY);
        QFile::remove(ballast);
    };
    return test::keepWithoutRoom(book, shelf, second, fill, makeRoom, say);
}

// The files beside the book and in folders there, but for those that SQLite keeps while one reads.
QStringList besides(const QString& book)
{
    const QFileInfo file(book);
    QStringList names;
    QDirIterator files(file.path(), QDir::Files | QDir::Hidden, QDirIterator::Subdirectories);
    while (files.hasNext()) names << files.next().mid(file.path().size() + 1);
    names.removeIf([&](const QString& name) { return name.startsWith(file.fileName() + u'-'); });
    return names;
}

// Tries it, says what was refused and what was left lying beside the book, and tries again with room.
Result<void> workWithoutRoom(const QString& work, const QString& book, const Clock& clock,
                             const std::function<void()>& makeRoom)
{
    const QStringList before = besides(book);
    if (const auto outcome = test::doDiskWork(work, book, clock); !outcome) sayError("refused", outcome.error());
    QStringList left = besides(book);
    left.removeIf([&](const QString& name) { return before.contains(name); });
    say("left: " + left.join(u' ').toUtf8());
    makeRoom();
    const auto again = test::doDiskWork(work, book, clock);
    say("again: " + (again ? QByteArray("done") : again.error().what.toUtf8()));
    STEELYARD_TRY(const auto opened, Book::open(book, clock));
    STEELYARD_TRY(const auto report, verifyBook(opened->database(), {}));
    say("findings: " + report.findings.join(u' ').toUtf8());
    return {};
}

Result<void> run(const QCommandLineParser& options)
{
    const QString task = options.positionalArguments().value(0);
    const QString path = options.positionalArguments().value(1);
    const FixedClock clock(QDate(2026, 3, 2));
    if (task == u"stranger" && ::getuid() == 0 && (::setgid(65534) != 0 || ::setuid(65534) != 0))
        return fail(ErrorCode::Unsupported, QStringLiteral("can't become somebody else"));
    if (options.isSet(QStringLiteral("die-after"))) dieAfter(options.value(QStringLiteral("die-after")).toInt());
    const QStringList words = options.positionalArguments();
    const BackupShelf shelf(words.value(2), clock);
    if (options.isSet(QStringLiteral("room")) && (task == u"restore" || task == u"dump")) {
        std::signal(SIGXFSZ, SIG_IGN);
        allowFiles(options.value(QStringLiteral("room")).toULong());
    }
    if (task == u"keep") return test::keepUntilTheEnd(path, shelf, say);
    if (task == u"restore") return test::restoreUntilTheEnd(path, words.mid(3), shelf, clock, say);
    if (task == u"keepfull")
        return keepUntilFull(path, shelf, BackupShelf(words.value(2) + QStringLiteral("-second"), clock), options);
    const auto makeRoom = roomMaker(options);
    if (task == u"work") return workWithoutRoom(options.value(QStringLiteral("work")), path, clock, makeRoom);
    STEELYARD_TRY(const auto book, Book::open(path, clock));
    if (task == u"type") return typeUntilTheEnd(*book);
    if (task == u"import") return importUntilTheEnd(*book);
    if (task == u"stranger") return beAStranger(*book);
    if (task == u"hold") {
        say(book->isReadOnly() ? "reading" : "holding");
        char byte = 0;
        while (::read(STDIN_FILENO, &byte, 1) > 0) continue;
    }
    if (task == u"dump") {
        STEELYARD_TRY(const QByteArray content, dumpContent(book->database()));
        say(content);
    }
    if (task == u"full") return fillTheDisk(*book, makeRoom);
    return {};
}

}  // namespace
}  // namespace steelyard

int main(int argc, char** argv)
{
    const QCoreApplication application(argc, argv);
    QCommandLineParser options;
    options.addOption({QStringLiteral("die-after"), QString(), QStringLiteral("us")});
    options.addOption({QStringLiteral("room"), QString(), QStringLiteral("bytes")});
    options.addOption({QStringLiteral("ballast"), QString(), QStringLiteral("file")});
    options.addOption({QStringLiteral("work"), QString(), QStringLiteral("work")});
    options.process(application);
    const auto outcome = steelyard::run(options);
    if (!outcome) steelyard::sayError("failed", outcome.error());
    return outcome ? 0 : 1;
}
