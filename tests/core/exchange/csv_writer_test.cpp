#include "core/exchange/csv_writer.h"

#include "core/exchange/csv_text.h"

#include <QtCore/QBuffer>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

// Takes a few bytes and then no more, like a full disk.
class FullDevice final : public QIODevice {
public:
    FullDevice() { open(QIODevice::WriteOnly | QIODevice::Unbuffered); }

protected:
    qint64 readData(char*, qint64) override { return -1; }
    qint64 writeData(const char*, qint64 size) override { return std::min<qint64>(size, 3); }
};

QByteArray oneField(const QString& text)
{
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    CsvWriter csv(buffer);
    csv.text(text);
    EXPECT_TRUE(csv.endRow());
    EXPECT_TRUE(csv.finish());
    return buffer.data();
}

TEST(CsvWriter, QuotesOnlyWhatNeedsIt)
{
    EXPECT_EQ(oneField(QStringLiteral("strict")), "strict\n");
    EXPECT_EQ(oneField(QStringLiteral("bar, upright")), "\"bar, upright\"\n");
    EXPECT_EQ(oneField(QStringLiteral("say \"up\"")), "\"say \"\"up\"\"\"\n");
    EXPECT_EQ(oneField(QStringLiteral("one\ntwo")), "\"one\ntwo\"\n");
    EXPECT_EQ(oneField(QStringLiteral("ünïcödé 力")), QStringLiteral("ünïcödé 力\n").toUtf8());
    EXPECT_EQ(oneField(QString()), "\n");
}

TEST(CsvWriter, PutsCommasBetweenFieldsAndNothingAtTheEnd)
{
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    CsvWriter csv(buffer);
    csv.blank();
    csv.plain("42.50");
    csv.number(-7);
    csv.blank();
    ASSERT_TRUE(csv.endRow());
    csv.number(1);
    ASSERT_TRUE(csv.endRow());
    ASSERT_TRUE(csv.finish());
    EXPECT_EQ(buffer.data(), ",42.50,-7,\n1\n");
}

TEST(CsvWriter, GuardsTextThatASpreadsheetWouldRunAndLeavesNumbersAlone)
{
    EXPECT_EQ(oneField(QStringLiteral("=cmd()")), "'=cmd()\n");
    EXPECT_EQ(oneField(QStringLiteral("-5 kg")), "'-5 kg\n");
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    CsvWriter csv(buffer);
    csv.plain("-5");
    ASSERT_TRUE(csv.endRow());
    ASSERT_TRUE(csv.finish());
    EXPECT_EQ(buffer.data(), "-5\n");
}

TEST(CsvWriter, GuardingIsUndoneExactly)
{
    for (const QString& text :
         {QStringLiteral("=1"), QStringLiteral("+1"), QStringLiteral("-1"), QStringLiteral("@x"), QStringLiteral("\tx"),
          QStringLiteral("\rx"), QStringLiteral("'x"), QStringLiteral("'"), QStringLiteral("''=x"),
          QStringLiteral("'=x"), QStringLiteral("x=1"), QStringLiteral("it's"), QString()})
        EXPECT_EQ(unguardText(guardText(text)), text) << qPrintable(text);
    EXPECT_EQ(unguardText(QStringLiteral("'hook' grip")), QStringLiteral("'hook' grip"));
}

TEST(CsvWriter, SaysSoWhenTheDeviceIsFull)
{
    FullDevice device;
    CsvWriter csv(device);
    csv.plain("more than three bytes");
    ASSERT_TRUE(csv.endRow());
    const auto finished = csv.finish();
    ASSERT_FALSE(finished);
    EXPECT_EQ(finished.error().code, ErrorCode::Storage);
}

TEST(CsvWriter, WritesAHeapOfRowsWhole)
{
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    CsvWriter csv(buffer);
    constexpr int kRows = 100'000;
    for (int row = 0; row < kRows; ++row) {
        csv.number(row);
        ASSERT_TRUE(csv.endRow());
    }
    ASSERT_TRUE(csv.finish());
    EXPECT_EQ(buffer.data().count('\n'), kRows);
    EXPECT_TRUE(buffer.data().endsWith("\n99999\n"));
}

}  // namespace
}  // namespace steelyard
