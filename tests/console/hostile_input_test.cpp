// A file of gigabytes that somebody takes for a logbook.
#include "tests/console/club.h"

#include <QtCore/QElapsedTimer>
#include <QtCore/QFile>

namespace steelyard {
namespace {

TEST_F(Club, AnImportOfGigabytesIsRefusedAtOnceByItsSize)
{
    ASSERT_EQ(run("new").status, 0);
    const QByteArray before = test::fileBytes(m_book);
    QFile huge(file("huge.csv"));
    ASSERT_TRUE(huge.open(QIODevice::WriteOnly));
    huge.write("date,athlete,exercise,reps\n");
    ASSERT_TRUE(huge.resize(3LL * 1024 * 1024 * 1024));  // takes no room on the disk
    huge.close();
    QElapsedTimer timer;
    timer.start();
    const Said said = run("import", {huge.fileName()});
    EXPECT_EQ(said.status, 1);
    EXPECT_TRUE(said.err.contains(QStringLiteral("256"))) << said.err.toStdString();
    EXPECT_LT(timer.elapsed(), 10'000) << "it isn't read";
    EXPECT_EQ(test::fileBytes(m_book), before);
}

TEST_F(Club, SalvageSavesADamagedBookAndSaysWhatWasLost)
{
    makeClub();
    QFile book(m_book);
    ASSERT_TRUE(book.open(QIODevice::ReadWrite));
    book.write(QByteArray(50, 'x'));
    book.close();
    EXPECT_EQ(run("verify").status, 3);
    const QString saved = file("saved.steelyard");
    const Said said = run("salvage", {QStringLiteral("--to"), saved});
    EXPECT_EQ(said.status, 0) << said.err.toStdString();
    EXPECT_TRUE(said.out.contains("Lifters: 3 saved, none lost")) << said.out.constData();
    EXPECT_EQ(run("salvage", {QStringLiteral("--to"), saved}).status, 1) << "never over a file";
    EXPECT_EQ(console({QStringLiteral("verify"), QStringLiteral("--book"), saved}).status, 0);
}

}  // namespace
}  // namespace steelyard
