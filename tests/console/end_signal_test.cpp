// The window as a program that the system asks to end, as at a logout.
#include "core/book/verify.h"
#include "tests/console/club.h"

#include <QtCore/QDeadlineTimer>
#include <QtCore/QFile>

#include <csignal>

namespace steelyard {
namespace {

using test::must;

TEST(WindowThatIsToldToEnd, ClosesItsBookAndEndsWell)
{
    test::TempBook book;
    book.close();
    const QString lock = book.path() + QStringLiteral(".lock");
    for (const int signal : {SIGTERM, SIGINT}) {
        QTemporaryDir home;
        QProcess window;
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
        environment.insert(QStringLiteral("XDG_CONFIG_HOME"), home.path());
        environment.insert(QStringLiteral("XDG_DATA_HOME"), home.path());
        window.setProcessEnvironment(environment);
        window.start(QStringLiteral(STEELYARD_PROGRAM), {book.path()});
        ASSERT_TRUE(window.waitForStarted());
        // It holds the book, and soon after its window and its loop are there.
        QDeadlineTimer patience(30'000);
        while (!QFile::exists(lock) && !patience.hasExpired()) window.waitForFinished(20);
        ASSERT_TRUE(QFile::exists(lock));
        window.waitForFinished(1500);
        ASSERT_EQ(window.state(), QProcess::Running);
        ASSERT_EQ(::kill(static_cast<pid_t>(window.processId()), signal), 0);
        ASSERT_TRUE(window.waitForFinished(30'000));
        EXPECT_EQ(window.exitStatus(), QProcess::NormalExit);
        EXPECT_EQ(window.exitCode(), 0);
        EXPECT_FALSE(QFile::exists(lock));
        EXPECT_FALSE(QFile::exists(book.path() + QStringLiteral("-wal"))) << "the journal went into the book";
    }
    EXPECT_EQ(must(verifyBook(must(Book::open(book.path(), book.clock()))->database(), {})).findings, QStringList());
}

}  // namespace
}  // namespace steelyard
