#include "ui/print/review_layout.h"

#include "tests/support/temp_dir.h"
#include "ui/print/fonts.h"
#include "ui/print/pdf_writer.h"
#include "ui/print/review_pieces.h"
#include "ui/print/sheet_words.h"
#include "ui/print/text_measure.h"

#include <QtCore/QFile>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

const QDate kMonday(2027, 3, 8);

ReviewSheetFlag paperFlag(int words)
{
    return {QStringLiteral("Stalled"),
            QStringLiteral("improvement ").repeated(words).trimmed(),
            Severity::Medium,
            {QStringLiteral("Keep the load"), QStringLiteral("Drop a set"), QStringLiteral("Change the grip")},
            {}};
}

ReviewSheetLine paperLine(const QString& name)
{
    return {name, Verdict::Progressing, TrendRate{.perWeek = 0.004, .low90 = -0.001, .high90 = 0.009},
            CapacityEstimate{.kg = 60, .low90Kg = 57, .high90Kg = 63}};
}

ReviewSheetEntry paperEntry(int number, int flags)
{
    ReviewSheetEntry entry{.athlete = QStringLiteral("Lifter %1").arg(number), .group = QStringLiteral("Tuesday")};
    for (int i = 0; i < flags; ++i) entry.flags.push_back(paperFlag(8 + 5 * i));
    for (int i = 0; i < 3; ++i) entry.lines.push_back(paperLine(QStringLiteral("Arm curl %1").arg(i)));
    return entry;
}

// Usual lifters; nobody urgent; words that never end; more flags than a page holds.
ReviewSheet everyKindOfLifter()
{
    ReviewSheet sheet{kMonday, {}};
    for (int i = 0; i < 20; ++i) sheet.entries.push_back(paperEntry(i, i % 4));
    ReviewSheetEntry wide = paperEntry(20, 1);
    wide.athlete = QString(300, u'W');
    wide.group = QStringLiteral("a very long group ").repeated(20);
    wide.flags[0].sentence = QString(900, u'W');
    wide.flags[0].choices = QStringList(9, QString(150, u'W'));
    wide.lines[0].name = QString(200, u'W');
    sheet.entries.push_back(wide);
    sheet.entries.push_back(paperEntry(21, 30));
    ReviewSheetEntry answered = paperEntry(22, 1);
    answered.flags[0].answer = Decision{.athlete = Id<Athlete>(1),
                                        .line = {},
                                        .rule = QStringLiteral("stalled"),
                                        .kind = DecisionKind::Dismiss,
                                        .madeOn = kMonday.addDays(-2),
                                        .until = {},
                                        .action = {},
                                        .reason = QStringLiteral("slept badly")};
    sheet.entries.push_back(answered);
    return sheet;
}

class ReviewLayouts : public testing::TestWithParam<PaperSize> {
protected:
    void SetUp() override
    {
        ASSERT_TRUE(loadBundledFonts());
        layout = layOutReview(sheet, GetParam());
    }
    [[nodiscard]] static QStringList wordsOf(const SheetPage& page)
    {
        QStringList words;
        for (const TextItem& item : page.texts) words << item.text;
        return words;
    }
    const ReviewSheet sheet = everyKindOfLifter();
    SheetLayout layout;
};

TEST_P(ReviewLayouts, NothingLiesOutsideTheMarginsOrItsCell)
{
    const QRectF inside(kSideMargin, kClipMargin, layout.paper.width() - 2 * kSideMargin,
                        layout.paper.height() - kClipMargin - kBottomMargin);
    const QRectF roomy = inside.adjusted(-0.01, -0.01, 0.01, 0.01);
    for (const SheetPage& page : layout.pages) {
        for (const TextItem& item : page.texts) {
            EXPECT_TRUE(roomy.contains(item.cell)) << qPrintable(item.text);
            EXPECT_LE(textWidthMm(item.text, item.points, item.bold), item.cell.width() + 0.01)
                << qPrintable(item.text);
            EXPECT_GE(item.cell.height() + 0.01, lineHeightMm(item.points)) << qPrintable(item.text);
        }
        for (const BoxItem& box : page.boxes) {
            EXPECT_TRUE(roomy.contains(box.rect));
            EXPECT_EQ(box.grey, 0);
            EXPECT_GE(box.line, kHairline);
        }
        for (const LineItem& line : page.lines) {
            EXPECT_TRUE(roomy.contains(line.line.p1()) && roomy.contains(line.line.p2()));
            EXPECT_GE(line.width, kHairline);
        }
    }
}

TEST_P(ReviewLayouts, NoTextCoversAnother)
{
    for (const SheetPage& page : layout.pages)
        for (std::size_t i = 0; i < page.texts.size(); ++i)
            for (std::size_t j = i + 1; j < page.texts.size(); ++j) {
                const QRectF shared = page.texts[i].cell.intersected(page.texts[j].cell);
                EXPECT_FALSE(shared.width() > 0.01 && shared.height() > 0.01)
                    << qPrintable(page.texts[i].text + QStringLiteral(" | ") + page.texts[j].text);
            }
}

TEST_P(ReviewLayouts, EveryLifterAppearsInOrder)
{
    QStringList names;
    // Where a lifter goes on to the next page, the name stands there again, an overlong one cut off sooner or later.
    const auto goesOn = [&](const QString& name) {
        const QString cut = name.chopped(name.endsWith(QChar(0x2026)) ? 1 : 0);
        const QString before =
            names.empty() ? QString() : names.back().chopped(names.back().endsWith(QChar(0x2026)) ? 1 : 0);
        return cut == before
               || (name.endsWith(QChar(0x2026)) && !before.isEmpty()
                   && (cut.startsWith(before) || before.startsWith(cut)));
    };
    for (const SheetPage& page : layout.pages)
        for (const TextItem& item : page.texts)
            if (item.points == kReviewNamePoints && !goesOn(item.text)) names << item.text;
    ASSERT_EQ(names.size(), std::ssize(sheet.entries)) << qPrintable(names.join(u'|'));
    for (qsizetype i = 0; i < names.size(); ++i)
        EXPECT_TRUE(sheet.entries[static_cast<std::size_t>(i)].athlete.startsWith(names[i].chopped(1)))
            << qPrintable(names[i]);
}

// On every page, what follows a heading before the next one begins with a flag's title or says that nothing is open; a
// heading that says "continued" may be followed by anything, but by something.
TEST_P(ReviewLayouts, AHeadingStandsWithItsFirstFlag)
{
    int headings = 0;
    for (const SheetPage& page : layout.pages) {
        std::vector<TextItem> inOrder = page.texts;
        std::ranges::stable_sort(inOrder, {}, [](const TextItem& item) { return item.cell.top(); });
        for (std::size_t i = 0; i < inOrder.size(); ++i) {
            if (inOrder[i].points != kReviewNamePoints) continue;
            ++headings;
            ASSERT_LT(i + 2, inOrder.size());
            EXPECT_EQ(inOrder[i + 1].cell.top(), inOrder[i].cell.top());  // group and last session
            const QString& next = inOrder[i + 2].text;
            if (inOrder[i + 1].text == QStringLiteral("continued")) {
                EXPECT_FALSE(next.startsWith(QStringLiteral("Contains health")));
                continue;
            }
            EXPECT_TRUE(next.contains(QStringLiteral("Stalled")) || next == QStringLiteral("Nothing open."))
                << qPrintable(next);
        }
    }
    EXPECT_GE(headings, static_cast<int>(sheet.entries.size()));
}

TEST_P(ReviewLayouts, EveryPageHasItsNumberTheDayAndTheWordOnPrivacy)
{
    ASSERT_GT(layout.pages.size(), 3u);
    for (std::size_t i = 0; i < layout.pages.size(); ++i) {
        const QStringList words = wordsOf(layout.pages[i]);
        EXPECT_EQ(words.filter(QStringLiteral("page %1/%2").arg(i + 1).arg(layout.pages.size())).size(), 1);
        EXPECT_TRUE(words.contains(sheetDate(kMonday)));
        EXPECT_EQ(words.filter(QStringLiteral("Contains health information")).size(), 1);
        EXPECT_FALSE(words.filter(QStringLiteral("destroy it afterwards.")).isEmpty());  // not cut
    }
}

TEST_P(ReviewLayouts, AnOpenFlagHasABoxForEveryChoiceAndALineToWriteOn)
{
    ReviewSheet one{kMonday, {paperEntry(1, 1)}};
    const SheetPage page = layOutReview(one, GetParam()).pages.at(0);
    EXPECT_EQ(page.boxes.size(), one.entries[0].flags[0].choices.size() + 2u);
    one.entries[0].flags[0].answer = sheet.entries.back().flags[0].answer;
    const SheetPage answered = layOutReview(one, GetParam()).pages.at(0);
    EXPECT_TRUE(answered.boxes.empty());
    EXPECT_EQ(answered.lines.size() + 1, page.lines.size());
    EXPECT_EQ(wordsOf(answered).filter(QStringLiteral("dismissed (slept badly)")).size(), 1);
}

TEST_P(ReviewLayouts, ANewLifterNeedNotBeginANewPage)
{
    const ReviewSheet two{kMonday, {paperEntry(1, 1), paperEntry(2, 1)}};
    EXPECT_EQ(layOutReview(two, GetParam()).pages.size(), 1u);
}

TEST_P(ReviewLayouts, BecomeAPdf)
{
    const testing_support::TempDir dir;
    const QString path = dir.path(u"review.pdf");
    ASSERT_TRUE(writePagesPdf(layout.pages, GetParam(), QStringLiteral("Weekly review"), path));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_TRUE(file.readAll().startsWith("%PDF"));
    EXPECT_FALSE(writePagesPdf({}, GetParam(), QString(), path));
}

INSTANTIATE_TEST_SUITE_P(OnBothPapers, ReviewLayouts, testing::Values(PaperSize::A4, PaperSize::Letter),
                         [](const auto& each) { return each.param == PaperSize::A4 ? "A4" : "Letter"; });

}  // namespace
}  // namespace steelyard
