#include "ui/charts/chart_picture.h"

#include "tests/support/made_up_reading.h"
#include "tests/support/temp_dir.h"
#include "ui/charts/progress_chart.h"
#include "ui/shell/theme.h"

#include <QtCore/QFile>
#include <QtGui/QPainter>
#include <QtSvg/QSvgRenderer>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

const ChartCaption kCaption{QStringLiteral("Dana Quill · Arm curl"), QStringLiteral("20 Nov 2026")};

struct PictureCase {
    ProgressChart chart;

    explicit PictureCase(bool dark)
    {
        chart.setPalette(themePalette(dark));
        chart.resize(640, 400);
        const std::vector<Row<Block>> blocks;
        const std::vector<Row<Decision>> decisions;
        chart.setSpec(
            buildProgressSpec({madeUpReading(20), blocks, decisions, {}, QStringLiteral("Arm curl")}, {QLocale::c()}));
    }
};

int darkPixels(const QImage& image)
{
    int dark = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x) dark += qGray(image.pixel(x, y)) < 110;
    return dark;
}

TEST(ChartPicture, IsDarkOnWhiteWhateverTheWindowLooksLike)
{
    PictureCase light(false);
    PictureCase dark(true);
    const QImage first = chartImage(light.chart, kCaption);
    EXPECT_EQ(first, chartImage(dark.chart, kCaption));
    EXPECT_EQ(first.pixelColor(2, 2), QColor(Qt::white));
    EXPECT_GT(darkPixels(first), 500);
}

TEST(ChartPicture, GivesTheDrawingItsOwnColoursBack)
{
    PictureCase c(true);
    const QImage before = c.chart.grab().toImage();
    (void)chartImage(c.chart, kCaption);
    EXPECT_EQ(c.chart.palette(), themePalette(true));
    EXPECT_EQ(c.chart.grab().toImage(), before);
}

TEST(ChartPicture, LeavesADrawingWithoutColoursOfItsOwnWithThoseOfItsWindow)
{
    QWidget window;
    window.setPalette(themePalette(true));
    QWidget drawing(&window);
    drawing.resize(80, 60);
    (void)chartImage(drawing, kCaption);
    EXPECT_FALSE(drawing.testAttribute(Qt::WA_SetPalette));
    window.setPalette(themePalette(false));
    EXPECT_EQ(drawing.palette().color(QPalette::Base), themePalette(false).color(QPalette::Base));
}

TEST(ChartPicture, HasTwoDotsForEachOfTheScreen)
{
    PictureCase c(false);
    const QImage image = chartImage(c.chart, kCaption);
    EXPECT_GE(image.width(), 2 * c.chart.width());
    EXPECT_GT(image.height(), 2 * c.chart.height());
}

TEST(ChartPicture, KeepsWordsAsWordsAndLinesAsLinesInSvg)
{
    PictureCase c(false);
    const QByteArray svg = chartSvg(c.chart, kCaption);
    EXPECT_TRUE(svg.contains("<text"));
    EXPECT_TRUE(svg.contains("Dana Quill"));
    EXPECT_TRUE(svg.contains("counted reps"));
    EXPECT_FALSE(svg.contains("<image")) << "a picture of a picture";
    QSvgRenderer read(svg);
    ASSERT_TRUE(read.isValid());
    QImage image(read.defaultSize(), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    read.render(&painter);
    painter.end();
    // The same drawing, seen through the other renderer: about as much ink.
    const double ink = darkPixels(image);
    const double own = darkPixels(chartImage(c.chart, kCaption).scaled(read.defaultSize()));
    EXPECT_GT(ink, 0.5 * own);
    EXPECT_LT(ink, 2 * own);
}

TEST(ChartPicture, DrawsAPdfWithFontsAndNoPictureInIt)
{
    PictureCase c(false);
    const QByteArray pdf = chartPdf(c.chart, kCaption);
    EXPECT_TRUE(pdf.startsWith("%PDF-"));
    EXPECT_TRUE(pdf.contains("/FontFile"));
    EXPECT_FALSE(pdf.contains("/Subtype /Image"));
}

TEST(ChartPicture, IsSavedAsItsSuffixSays)
{
    const testing_support::TempDir dir;
    PictureCase c(false);
    const std::pair<QString, QByteArray> kinds[]{
        {QStringLiteral("a.png"), "\x89PNG"}, {QStringLiteral("a.SVG"), "<?xml"}, {QStringLiteral("a.pdf"), "%PDF-"}};
    for (const auto& [name, start] : kinds) {
        const QString path = dir.path(name);
        ASSERT_TRUE(saveChart(c.chart, kCaption, path)) << qPrintable(name);
        QFile file(path);
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        EXPECT_TRUE(file.readAll().startsWith(start)) << qPrintable(name);
    }
}

TEST(ChartPicture, SaysWhatIsWrongWithAnotherSuffixAndWithAFolderThatIsNotThere)
{
    const testing_support::TempDir dir;
    PictureCase c(false);
    const auto other = saveChart(c.chart, kCaption, dir.path(QStringLiteral("a.bmp")));
    ASSERT_FALSE(other);
    EXPECT_EQ(other.error().code, ErrorCode::Invalid);
    EXPECT_TRUE(other.error().what.contains(QStringLiteral(".bmp")));
    EXPECT_FALSE(QFile::exists(dir.path(QStringLiteral("a.bmp"))));
    const auto nowhere = saveChart(c.chart, kCaption, dir.path(QStringLiteral("none/a.svg")));
    ASSERT_FALSE(nowhere);
    EXPECT_EQ(nowhere.error().code, ErrorCode::Storage);
    EXPECT_TRUE(nowhere.error().what.contains(QStringLiteral("a.svg")));
}

}  // namespace
}  // namespace steelyard
