// A lifter who asks gets everything that is kept of them, readably, and not a word of anybody else.
#include "core/exchange/record_page.h"

#include "core/book/book.h"
#include "core/exchange/book_export.h"
#include "core/exchange/new_book.h"
#include "core/exchange/record_html.h"
#include "core/samples/sample_club.h"
#include "tests/support/full_book.h"
#include "tests/support/temp_book.h"
#include "tests/support/temp_dir.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using testing_support::TempDir;

class HandedOver : public testing::Test {
protected:
    TempDir m_dir;
    FixedClock m_clock{QDate(2026, 3, 2)};
    std::unique_ptr<Book> m_book = must(Book::create(m_dir.path(u"club.steelyard"), m_clock));

    [[nodiscard]] QString page(const QString& athlete)
    {
        const auto id = must(m_book->athletes().findByName(athlete)).id;
        return QString::fromUtf8(must(recordPage(m_book->database(), must(m_book->library().read()), id)));
    }
};

TEST_F(HandedOver, ThePageHasEveryKindOfEntry)
{
    test::fillFullBook(*m_book);
    const QString text = page(test::kFirstLifter);
    for (const QString& part : {test::kFirstLifter.toHtmlEscaped(),
                                QStringLiteral("1990-05-17"),
                                QStringLiteral("left elbow, 2021"),
                                QStringLiteral("zz juniors, back soon"),
                                QStringLiteral("180.3 cm"),
                                QStringLiteral("181.40 lb"),
                                QStringLiteral("15.50 cm"),
                                QStringLiteral("2025-06-02"),
                                QStringLiteral("on paper"),
                                QStringLiteral("My coach may keep what I say about discomfort"),
                                QStringLiteral("agreed with"),
                                QStringLiteral("2026-02-02"),
                                QStringLiteral("92.50 lb"),
                                QStringLiteral("not watched"),
                                QStringLiteral("discomfort, ankle: 7 of 10"),
                                QStringLiteral("swing:2;assisted:1"),
                                QStringLiteral("62.25 kg"),
                                QStringLiteral("edited"),
                                QStringLiteral("removed"),
                                QStringLiteral("Spring"),
                                QStringLiteral("=pause"),
                                QStringLiteral("=narrow or &quot;wide&quot;?"),
                                QStringLiteral("left, the gym closed"),
                                QStringLiteral("Arm curl: no clear improvement for 7 weeks."),
                                QStringLiteral("new job, &quot;tired&quot;"),
                                QStringLiteral("first line<br>&quot;second&quot;, line")})
        EXPECT_TRUE(text.contains(part)) << qPrintable(part);
}

TEST_F(HandedOver, ThePageSaysWhyWhoSeesItAndHowLong)
{
    test::fillFullBook(*m_book);
    const QString text = page(test::kFirstLifter);
    for (const char* question : {"Why it is kept", "Who sees it", "How long", "What you can ask for"})
        EXPECT_TRUE(text.contains(QLatin1StringView(question))) << question;
}

TEST_F(HandedOver, NoFileNamesAnybodyElse)
{
    m_book.reset();
    m_book = must(newBook(m_dir.path(u"sample.steelyard"), m_clock));
    must(fillSampleClub(*m_book, {.athletes = 9, .years = 1, .seed = 5, .lastDay = m_clock.today()}, {}));
    const auto athletes = must(m_book->athletes().all());
    for (const auto& one : {athletes[0], athletes[4]}) {
        const QString folder = m_dir.path(one.value.name);
        const auto report = must(exportBook(m_book->database(), folder, one.id, {}));
        ASSERT_EQ(report.files.size(), 4);
        for (const QString& file : report.files) {
            const QByteArray bytes = test::fileBytes(file);
            for (const auto& other : athletes) {
                EXPECT_EQ(bytes.contains(other.value.name.toUtf8()), other.id == one.id)
                    << qPrintable(file) << ' ' << qPrintable(other.value.name);
                if (other.id == one.id) continue;
                EXPECT_FALSE(bytes.contains(other.uuid.toByteArray(QUuid::WithoutBraces))) << qPrintable(file);
                for (const auto& line : must(m_book->logbook().lines(other.id)))
                    EXPECT_FALSE(bytes.contains(line.uuid.toByteArray(QUuid::WithoutBraces))) << qPrintable(file);
            }
        }
    }
}

TEST_F(HandedOver, TheWholeBookHasNoPageOfOne)
{
    test::fillFullBook(*m_book);
    EXPECT_EQ(must(exportBook(m_book->database(), m_dir.path(u"all"), std::nullopt, {})).files.size(), 3);
    EXPECT_FALSE(QFile::exists(m_dir.path(u"all/record.html")));
}

TEST(RecordHtml, ShowsWhatWasTypedAndLoadsNothing)
{
    RecordHtml page(QStringLiteral("<b>x & %1"));
    page.paragraph(QStringLiteral("<img src=file:///etc/passwd> &lt; %2"));
    page.table({QStringLiteral("a"), QStringLiteral("<script>")}, {{QStringLiteral("1"), {}}, {QStringLiteral("2")}});
    page.table({QStringLiteral("never")}, {});
    const QString text = QString::fromUtf8(page.finish());
    EXPECT_TRUE(text.contains(QStringLiteral("<h1>&lt;b&gt;x &amp; %1</h1>")));
    EXPECT_TRUE(text.contains(QStringLiteral("&lt;img src=file:///etc/passwd&gt; &amp;lt; %2")));
    EXPECT_FALSE(text.contains(QStringLiteral("<img")));
    EXPECT_FALSE(text.contains(QStringLiteral("script")));  // an empty column goes with its head
    EXPECT_FALSE(text.contains(QStringLiteral("never")));
    EXPECT_TRUE(text.contains(QStringLiteral("default-src 'none'")));
}

}  // namespace
}  // namespace steelyard
