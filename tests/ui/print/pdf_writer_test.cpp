#include "ui/print/pdf_writer.h"

#include "tests/support/sheet_samples.h"
#include "tests/support/temp_dir.h"
#include "ui/print/fonts.h"

#include <QtCore/QProcess>
#include <QtCore/QRegularExpression>

#include <gtest/gtest.h>

#include <csignal>
#include <sys/resource.h>

namespace steelyard {
namespace {

using testing_support::SheetSample;
using testing_support::TempDir;

const QDate kMonday(2027, 3, 8);

SessionSheet usualSheet()
{
    SheetSample sample;
    sample.done(sample.squat, kMonday.addDays(-7), {{u"97.5", 12}, {u"97.5", 12}, {u"97.5", 12}});
    sample.done(sample.pulldown, kMonday.addDays(-7), {{u"50", 10}, {u"50", 9}});
    return *buildSessionSheet(sample.log, sample.library, sample.gym, kMonday);
}

QString outputOf(const QString& program, const QStringList& arguments)
{
    QProcess process;
    process.start(program, arguments);
    EXPECT_TRUE(process.waitForFinished()) << qPrintable(program) << " is needed by this test";
    EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().constData();
    return QString::fromUtf8(process.readAllStandardOutput());
}

class PdfOfSheets : public testing::TestWithParam<PaperSize> {
protected:
    void SetUp() override { ASSERT_TRUE(loadBundledFonts()); }
    TempDir dir;
};

TEST_P(PdfOfSheets, HasEveryPageOnThePaperAsked)
{
    const std::vector<SessionSheet> sheets(3, usualSheet());
    const QString path = dir.path(u"sheets.pdf");
    ASSERT_TRUE(writeSheetsPdf(sheets, GetParam(), path));
    const QString info = outputOf(QStringLiteral("pdfinfo"), {path});
    EXPECT_TRUE(info.contains(QRegularExpression(QStringLiteral("Pages:\\s+3\n")))) << qPrintable(info);
    const auto size = GetParam() == PaperSize::A4 ? QStringLiteral("59[45].*84[12]") : QStringLiteral("612 x 792");
    EXPECT_TRUE(info.contains(QRegularExpression(QStringLiteral("Page size:\\s+") + size))) << qPrintable(info);
}

TEST_P(PdfOfSheets, HoldsNamesLoadsPlatesAndResultsAsText)
{
    const QString path = dir.path(u"sheets.pdf");
    ASSERT_TRUE(writeSheetsPdf(std::vector{usualSheet()}, GetParam(), path));
    const QString text = outputOf(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), path, QStringLiteral("-")});
    // Where a gap becomes a space is the reader's guess.
    const auto plain = [](QString words) { return words.remove(QRegularExpression(QStringLiteral("[\\s\\x{A0}]+"))); };
    for (const auto& words : {QStringLiteral("Sample Lifter"), QStringLiteral("100 kg"), QStringLiteral("3 × 8"),
                              QStringLiteral("25 + 15 per side · bar 20 kg"), QStringLiteral("04HTQK-1DBM4"),
                              QStringLiteral("97.5 kg × 12, 12, 12 counted"), QStringLiteral("pin at 50 kg")})
        EXPECT_TRUE(plain(text).contains(plain(words))) << qPrintable(words) << " is missing in\n" << qPrintable(text);
}

TEST_P(PdfOfSheets, CarriesItsFonts)
{
    const QString path = dir.path(u"sheets.pdf");
    ASSERT_TRUE(writeSheetsPdf(std::vector{usualSheet()}, GetParam(), path));
    const QStringList fonts = outputOf(QStringLiteral("pdffonts"), {path}).split(u'\n', Qt::SkipEmptyParts).mid(2);
    ASSERT_FALSE(fonts.isEmpty());
    // Columns of pdffonts: … emb sub uni object ID.
    for (const QString& font : fonts)
        EXPECT_TRUE(font.contains(QRegularExpression(QStringLiteral("\\syes\\s+(yes|no)\\s+yes\\s+\\d+\\s+\\d+$"))))
            << qPrintable(font);
}

// What a scanner reads from a page that was printed, or copied, in grey and coarsely: the sheet's number and nothing else.
TEST_P(PdfOfSheets, TheCodeIsReadByAScanner)
{
    const SessionSheet sheet = usualSheet();
    const QString path = dir.path(u"sheets.pdf");
    ASSERT_TRUE(writeSheetsPdf(std::vector{sheet}, GetParam(), path));
    const QString picture = dir.path(u"page");
    outputOf(QStringLiteral("pdftoppm"), {QStringLiteral("-r"), QStringLiteral("150"), QStringLiteral("-gray"),
                                          QStringLiteral("-singlefile"), path, picture});
    const QString read = outputOf(QStringLiteral("zbarimg"), {QStringLiteral("--quiet"), QStringLiteral("--raw"),
                                                              picture + QStringLiteral(".pgm")});
    EXPECT_EQ(read.trimmed(), sheet.sheetId);
}

INSTANTIATE_TEST_SUITE_P(OnBothPapers, PdfOfSheets, testing::Values(PaperSize::A4, PaperSize::Letter),
                         [](const auto& each) { return each.param == PaperSize::A4 ? "A4" : "Letter"; });

TEST(PdfWriter, AFileThatCantBeWrittenIsAnErrorAndNothingElse)
{
    ASSERT_TRUE(loadBundledFonts());
    TempDir dir;
    const auto written = writeSheetsPdf(std::vector{usualSheet()}, PaperSize::A4, dir.path(u"missing/sheets.pdf"));
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().code, ErrorCode::Storage);
}

TEST(PdfWriter, ADiskWithoutRoomIsNoticed)
{
    ASSERT_TRUE(loadBundledFonts());
    const TempDir dir;
    const QString path = dir.path(u"sheets.pdf");
    const auto previous = std::signal(SIGXFSZ, SIG_IGN);
    rlimit before{};
    ASSERT_EQ(getrlimit(RLIMIT_FSIZE, &before), 0);
    const rlimit small{1000, before.rlim_max};
    ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &small), 0);
    const auto written = writeSheetsPdf(std::vector{usualSheet()}, PaperSize::A4, path);
    ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &before), 0);
    std::signal(SIGXFSZ, previous);
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().code, ErrorCode::Storage);
    EXPECT_FALSE(QFile::exists(path));
}

TEST(PdfWriter, NoSheetsAreRefusedAndLeaveNoFile)
{
    TempDir dir;
    EXPECT_FALSE(writeSheetsPdf({}, PaperSize::A4, dir.path(u"none.pdf")));
    EXPECT_FALSE(QFile::exists(dir.path(u"none.pdf")));
}

}  // namespace
}  // namespace steelyard
