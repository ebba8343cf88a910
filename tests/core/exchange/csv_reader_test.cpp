#include "core/exchange/csv_reader.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

std::vector<QStringList> records(const QString& text, QChar separator = u',')
{
    CsvReader reader(text, separator);
    std::vector<QStringList> all;
    while (true) {
        auto record = reader.next();
        if (!record || !*record) return all;
        all.push_back((*record)->fields);
    }
}

QString complaint(const QString& text)
{
    CsvReader reader(text, u',');
    while (true) {
        auto record = reader.next();
        if (!record) return record.error().what;
        if (!*record) return {};
    }
}

TEST(CsvReader, TakesEveryKindOfLineEnd)
{
    const std::vector<QStringList> wanted{{QStringLiteral("a"), QStringLiteral("b")}, {QStringLiteral("1"), QString()}};
    for (const char* text : {"a,b\n1,\n", "a,b\r\n1,\r\n", "a,b\r1,\r", "a,b\n1,"})
        EXPECT_EQ(records(QString::fromLatin1(text)), wanted) << text;
}

TEST(CsvReader, KeepsSeparatorsMarksAndLineEndsInsideQuotations)
{
    const auto all = records(QStringLiteral("\"a;b\"\"c\";\"x\r\ny\"\n"), u';');
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all[0], QStringList({QStringLiteral("a;b\"c"), QStringLiteral("x\r\ny")}));
}

TEST(CsvReader, NamesTheLineWhereAQuotationBeginsThatNeverEnds)
{
    EXPECT_TRUE(complaint(QStringLiteral("a\n\"b\nc\n")).contains(QStringLiteral("Line 2"))) << "not the last line";
}

TEST(CsvReader, RefusesTextAfterAClosingMark)
{
    EXPECT_TRUE(complaint(QStringLiteral("a\n\"b\"c\n")).contains(QStringLiteral("Line 2")));
}

TEST(CsvReader, RefusesAFieldOfAMegabyteQuotedOrNot)
{
    const QString big(1024 * 1024, u'x');
    EXPECT_FALSE(complaint(big).isEmpty());
    EXPECT_FALSE(complaint(u'"' + big + u'"').isEmpty());
    EXPECT_TRUE(complaint(QString(kMostFieldCharacters, u'x')).isEmpty());
}

TEST(CsvReader, RefusesARowOfMoreThanAThousandFields)
{
    EXPECT_TRUE(complaint(QString(kMostFields - 1, u',')).isEmpty());
    EXPECT_TRUE(complaint(QString(kMostFields, u',')).contains(QStringLiteral("Line 1")));
}

TEST(CsvReader, GivesNothingForNothing)
{
    EXPECT_TRUE(records({}).empty());
    EXPECT_TRUE(records(QStringLiteral("\r\r\r")).empty());
}

TEST(DecodeText, ReadsTheSameWordInEveryEncoding)
{
    const QString word = QString(QChar(0xDC)) + QStringLiteral("bung");
    EXPECT_EQ(decodeText("\xC3\x9C"
                         "bung",
                         TextEncoding::Utf8)
                  .value(),
              word);
    EXPECT_EQ(decodeText("\xEF\xBB\xBF\xC3\x9C"
                         "bung",
                         TextEncoding::Windows1252)
                  .value(),
              word);
    EXPECT_EQ(decodeText("\xDC"
                         "bung",
                         TextEncoding::Latin1)
                  .value(),
              word);
    EXPECT_EQ(decodeText("\x80", TextEncoding::Windows1252).value(), QString(QChar(0x20AC)));
    EXPECT_EQ(decodeText(QByteArray("\xFF\xFE\xDC\0b\0u\0n\0g\0", 12), TextEncoding::Utf8).value(), word);
    EXPECT_EQ(decodeText(QByteArray("\xFE\xFF\0\xDC\0b\0u\0n\0g", 12), TextEncoding::Utf8).value(), word);
}

TEST(DecodeText, RefusesBytesThatAreNotOfTheEncodingAndNamesTheLine)
{
    for (const QByteArray& bad : {QByteArray("a\nb\xDC"), QByteArray("a\n\xC0\x80"), QByteArray("a\n\xED\xA0\x80")}) {
        const auto text = decodeText(bad, TextEncoding::Utf8);
        ASSERT_FALSE(text) << bad.toHex().toStdString();
        EXPECT_TRUE(text.error().what.contains(QStringLiteral("Line 2"))) << bad.toHex().toStdString();
    }
    EXPECT_FALSE(decodeText("a\x81", TextEncoding::Windows1252));
}

TEST(DecodeText, RefusesANul)
{
    const auto text = decodeText(QByteArray("a\nb\0c", 5), TextEncoding::Utf8);
    ASSERT_FALSE(text);
    EXPECT_TRUE(text.error().what.contains(QStringLiteral("Line 2")));
}

}  // namespace
}  // namespace steelyard
