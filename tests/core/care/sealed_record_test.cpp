// One lifter's record, sealed for another coach: a book of them alone.
#include "core/care/sealed_record.h"

#include "core/book/book.h"
#include "core/exchange/book_dump.h"
#include "core/exchange/book_import.h"
#include "core/exchange/new_book.h"
#include "core/samples/sample_club.h"
#include "tests/support/full_book.h"
#include "tests/support/temp_book.h"
#include "tests/support/temp_dir.h"

#include <QtCore/QDir>
#include <QtCore/QFileInfo>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using testing_support::TempDir;

class SealedRecord : public testing::Test {
protected:
    TempDir m_dir;
    FixedClock m_clock{QDate(2026, 3, 2)};
    Passphrase m_passphrase = must(Passphrase::make(QStringLiteral("seven plain words will do")));
    QString m_sealed = m_dir.path(u"record.sealed");

    Result<ExportReport> seal(Book& book, Id<Athlete> athlete, const Progress& progress = {})
    {
        return sealRecord(book.database(), {athlete, m_sealed, m_passphrase, SealCost::least()}, m_clock, progress);
    }
    [[nodiscard]] std::unique_ptr<Book> opened()
    {
        const QString path = m_dir.path(u"opened.steelyard");
        must(openSealedFile(m_sealed, path, m_passphrase, {}));
        return must(Book::open(path, m_clock));
    }
};

TEST_F(SealedRecord, OpensAsABookThatHoldsWhatTheRecordInTheOpenHolds)
{
    const auto book = must(Book::create(m_dir.path(u"full.steelyard"), m_clock));
    test::fillFullBook(*book);
    const auto athlete = must(book->athletes().findByName(test::kFirstLifter)).id;
    const auto report = must(seal(*book, athlete));
    EXPECT_EQ(report.athletes, 1);
    EXPECT_EQ(report.files, QStringList{m_sealed});
    must(exportBook(book->database(), m_dir.path(u"open"), athlete, {}));
    const auto inTheOpen = must(Book::create(m_dir.path(u"open.steelyard"), m_clock));
    must(importExport(*inTheOpen, m_dir.path(u"open"),
                      [](Transaction& tx, const QString& csv, const Progress&) { return test::fillFromCsv(tx, csv); },
                      {}));
    EXPECT_EQ(must(dumpContent(opened()->database())), must(dumpContent(inTheOpen->database())));
}

TEST_F(SealedRecord, HoldsNobodyElse)
{
    const auto book = must(newBook(m_dir.path(u"club.steelyard"), m_clock));
    must(fillSampleClub(*book, {.athletes = 5, .years = 1, .seed = 5, .lastDay = m_clock.today()}, {}));
    const auto athletes = must(book->athletes().all());
    must(seal(*book, athletes[2].id));
    opened().reset();
    const QByteArray bytes = m_dir.read(u"opened.steelyard");
    for (const auto& row : athletes)
        EXPECT_EQ(bytes.contains(row.value.name.toUtf8()), row.id == athletes[2].id) << qPrintable(row.value.name);
}

TEST_F(SealedRecord, LeavesNothingInTheOpen)
{
    const auto book = must(Book::create(m_dir.path(u"full.steelyard"), m_clock));
    test::fillFullBook(*book);
    const QStringList before = QDir::temp().entryList({QStringLiteral("core_tests-*")}, QDir::Dirs);
    const auto athlete = must(book->athletes().findByName(test::kFirstLifter)).id;
    must(seal(*book, athlete));
    std::stop_source stop;
    stop.request_stop();
    m_sealed = m_dir.path(u"never.sealed");
    EXPECT_FALSE(seal(*book, athlete, Progress({}, stop.get_token())));
    EXPECT_FALSE(QFileInfo::exists(m_sealed));
    m_sealed = m_dir.path(u"no/such/folder.sealed");
    EXPECT_FALSE(seal(*book, athlete));
    EXPECT_EQ(QDir::temp().entryList({QStringLiteral("core_tests-*")}, QDir::Dirs), before);
}

}  // namespace
}  // namespace steelyard
