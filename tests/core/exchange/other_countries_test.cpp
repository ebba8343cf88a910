// What a country writes otherwise (decimal marks, digits, small letters), and words that a database could take for an order, change
// nothing in what is stored and handed on.
#include "core/exchange/book_dump.h"
#include "core/exchange/book_export.h"
#include "core/exchange/book_import.h"
#include "core/keying/set_notation.h"
#include "core/storage/statement.h"
#include "tests/support/full_book.h"
#include "tests/support/temp_book.h"

#include <QtCore/QLocale>
#include <QtCore/QTemporaryDir>

#include <gtest/gtest.h>

#include <array>

namespace steelyard {
namespace {

using test::fileBytes;
using test::must;

constexpr std::array kCountries{"C", "en_US", "de_DE", "de_CH", "fr_FR", "tr_TR", "ar_EG", "hi_IN", "fa_IR"};

class InACountry {
public:
    explicit InACountry(const char* name) { QLocale::setDefault(QLocale(QString::fromLatin1(name))); }
    ~InACountry() { QLocale::setDefault(m_before); }
    InACountry(const InACountry&) = delete;
    InACountry& operator=(const InACountry&) = delete;

private:
    QLocale m_before;
};

TEST(OtherCountries, ExportTheSameBytesAndReadThemBackAsTheSameBook)
{
    const FixedClock clock(QDate(2026, 3, 2));
    const QTemporaryDir dir;
    const auto book = must(Book::create(dir.filePath(QStringLiteral("full.steelyard")), clock));
    test::fillFullBook(*book);
    const QByteArray content = must(dumpContent(book->database()));
    std::vector<QByteArray> first;
    for (const char* country : kCountries) {
        const InACountry here(country);
        const QString to = dir.filePath(QString::fromLatin1(country));
        std::vector<QByteArray> files;
        for (const QString& file : must(exportBook(book->database(), to, std::nullopt, {})).files)
            files.push_back(fileBytes(file));
        if (first.empty()) first = files;
        EXPECT_EQ(files, first) << country;
        const auto back = must(Book::create(to + QStringLiteral(".steelyard"), clock));
        must(importExport(
            *back, to, [](Transaction& tx, const QString& csv, const Progress&) { return test::fillFromCsv(tx, csv); },
            {}));
        EXPECT_EQ(must(dumpContent(back->database())), content) << country;
    }
}

TEST(OtherCountries, ReadALoadWithEitherMarkAndNeverAThousandForOne)
{
    for (const char* country : kCountries) {
        const InACountry here(country);
        for (const char16_t* line : {u"102.5x8", u"102,5x8"}) {
            const auto set = readSet(line, {});
            ASSERT_TRUE(set) << country;
            EXPECT_EQ(set->load.toString(), QStringLiteral("102.5 kg")) << country;
        }
        for (const char16_t* line : {u"1.500x8", u"1,500x8"}) {
            const auto set = readSet(line, {});
            if (!set) continue;  // refused is as good
            EXPECT_LT(set->load.kilograms(), 2.0) << country;
        }
    }
}

TEST(WordsThatLookLikeSql, AreStoredAsTheyAreInEveryText)
{
    const QString nasty = QStringLiteral("x'); DROP TABLE athlete; -- \" ` \\ % _ ?1 :name [a] $b @c /* */ NULL");
    test::TempBook temp;
    const QByteArray schema = [&] {
        auto st = must(temp->database().prepare("SELECT group_concat(sql, ';') FROM sqlite_schema"));
        EXPECT_TRUE(must(st.step()));
        return QByteArray(st.text(0).toUtf8());
    }();
    Athlete athlete;
    athlete.name = nasty;
    athlete.group = nasty;
    athlete.note = nasty;
    athlete.jointHistory = nasty;
    athlete.consents = {HealthConsent::given(QDate(2026, 1, 5))};
    {
        auto tx = must(Transaction::begin(temp->database()));
        must(temp->athletes().insert(tx, athlete));
        must(tx.commit());
    }
    EXPECT_EQ(must(temp->athletes().findByName(nasty)).value, athlete);
    EXPECT_EQ(must(temp->athletes().all()).size(), 2U);
    auto st = must(temp->database().prepare("SELECT group_concat(sql, ';') FROM sqlite_schema"));
    ASSERT_TRUE(must(st.step()));
    EXPECT_EQ(st.text(0).toUtf8(), schema);
}

}  // namespace
}  // namespace steelyard
