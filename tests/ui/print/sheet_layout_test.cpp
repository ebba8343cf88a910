#include "ui/print/sheet_layout.h"

#include "tests/support/sheet_samples.h"
#include "ui/print/fonts.h"
#include "ui/print/sheet_words.h"
#include "ui/print/text_measure.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::SheetSample;

const QDate kMonday(2027, 3, 8);

// Four usual exercises; long names everywhere; pounds with an impossible load; many exercises; very many sets.
std::vector<SessionSheet> sheetsOfEveryKind()
{
    std::vector<SessionSheet> sheets;
    const auto add = [&](SheetSample& sample) {
        sheets.push_back(*buildSessionSheet(sample.log, sample.library, sample.gym, kMonday));
    };
    SheetSample usual;
    for (std::size_t line = 0; line < 4; ++line)
        usual.done(line, kMonday.addDays(-7), {{u"40", 10}, {u"40", 9}, {u"40", 9}}).rating.discomfort[5] = 6;
    add(usual);
    SheetSample named = usual;
    named.log.athlete.value.name = QStringLiteral("Wide Name ").repeated(12);
    for (LineRecord& line : named.log.lines) {
        line.exercise.value.name = QString(120, QLatin1Char('W'));
        line.variant.value.name = QStringLiteral("very long words of a variant ").repeated(4);
    }
    add(named);
    SheetSample pounds = usual;
    pounds.log.athlete.value.unit = MassUnit::lb;
    pounds.plan(kMonday, {0, 1, 2, 3}, testing_support::kg(u"43.7"));
    add(pounds);
    SheetSample many;
    for (int i = 0; i < 10; ++i)
        many.addLine(QStringLiteral("Row %1").arg(i), QStringLiteral("cable"), Loading::Stack, Implement::Cable);
    for (std::size_t line = 0; line < many.log.lines.size(); ++line)
        many.done(line, kMonday.addDays(-7), {{u"40", 10}, {u"40", 9}, {u"40", 9}});
    add(many);
    SheetSample sets;
    sets.done(0, kMonday.addDays(-7), std::vector<testing_support::SampleSet>(45, {u"40", 10}));
    add(sets);
    SheetSample heavy;
    heavy.done(1, kMonday.addDays(-7), {{u"390", 3}});
    add(heavy);
    return sheets;
}

class SheetLayouts : public testing::TestWithParam<PaperSize> {
protected:
    void SetUp() override
    {
        ASSERT_TRUE(loadBundledFonts());
        sheets = sheetsOfEveryKind();
        for (const SessionSheet& sheet : sheets) layouts.push_back(layOutSheet(sheet, GetParam()));
    }
    std::vector<SessionSheet> sheets;
    std::vector<SheetLayout> layouts;
};

TEST_P(SheetLayouts, EveryTextFitsItsCellAndThePaper)
{
    for (const SheetLayout& layout : layouts)
        for (const SheetPage& page : layout.pages)
            for (const TextItem& item : page.texts) {
                const double along = item.upright ? item.cell.height() : item.cell.width();
                const double across = item.upright ? item.cell.width() : item.cell.height();
                EXPECT_LE(textWidthMm(item.text, item.points, item.bold), along + 0.01) << qPrintable(item.text);
                EXPECT_GE(across + 0.01, lineHeightMm(item.points)) << qPrintable(item.text);
                EXPECT_GE(item.cell.top(), kClipMargin - 0.01) << qPrintable(item.text);
                EXPECT_GE(item.cell.left(), kSideMargin - 0.01) << qPrintable(item.text);
                EXPECT_LE(item.cell.right(), layout.paper.width() - kSideMargin + 0.01) << qPrintable(item.text);
                EXPECT_LE(item.cell.bottom(), layout.paper.height() - kBottomMargin + 0.01) << qPrintable(item.text);
            }
}

TEST_P(SheetLayouts, TypeLinesGreysAndBoxesKeepTheirLimits)
{
    for (const SheetLayout& layout : layouts)
        for (const SheetPage& page : layout.pages) {
            for (const TextItem& item : page.texts) EXPECT_GE(item.points, kSmallestPoints) << qPrintable(item.text);
            for (const LineItem& line : page.lines) EXPECT_GE(line.width, kHairline);
            for (const BoxItem& box : page.boxes) {
                EXPECT_GE(box.line, kHairline);
                EXPECT_LE(box.grey, kDarkestGrey);
                if (!box.writeIn) continue;
                EXPECT_GE(box.rect.width(), kWriteInWidth);
                EXPECT_GE(box.rect.height(), kWriteInHeight);
                EXPECT_LE(box.rect.bottom(), layout.paper.height() - kBottomMargin);
            }
        }
}

TEST_P(SheetLayouts, NoExerciseIsSplitAndNoneCoversAnother)
{
    for (const SheetLayout& layout : layouts)
        for (const SheetPage& page : layout.pages)
            for (std::size_t i = 0; i < page.exercises.size(); ++i) {
                EXPECT_LE(page.exercises[i].area.bottom(), layout.paper.height() - kBottomMargin);
                if (i > 0) {
                    EXPECT_LE(page.exercises[i - 1].area.bottom(), page.exercises[i].area.top());
                }
            }
}

TEST_P(SheetLayouts, EveryPageSaysWhoWhenWhichPageAndWhichSheet)
{
    const SheetLayout& layout = layouts[3];
    ASSERT_GT(layout.pages.size(), 1U);
    for (std::size_t i = 0; i < layout.pages.size(); ++i) {
        QStringList words;
        for (const TextItem& item : layout.pages[i].texts) words += item.text;
        EXPECT_TRUE(words.contains(sheets[3].athlete));
        EXPECT_TRUE(words.contains(sheetDate(kMonday)));
        EXPECT_EQ(words.filter(sheets[3].sheetId).size(), 1);
        EXPECT_EQ(words.filter(QStringLiteral("%1/%2").arg(i + 1).arg(layout.pages.size())).size(), 1);
    }
}

TEST_P(SheetLayouts, LoadsAndRepetitionsAreLargeAndBold)
{
    const SheetExercise& exercise = sheets[0].exercises[0];
    int found = 0;
    for (const TextItem& item : layouts[0].pages[0].texts)
        if (item.text == loadWords(exercise) || item.text == repsWords(exercise)) {
            EXPECT_GE(item.points, kLargePoints);
            EXPECT_TRUE(item.bold);
            ++found;
        }
    EXPECT_GE(found, 2);
}

TEST_P(SheetLayouts, EverySetHasItsRowInOrder)
{
    std::vector<int> numbers;
    for (const SheetPage& page : layouts[4].pages)
        for (const TextItem& item : page.texts) {
            bool number = false;
            const int value = item.text.toInt(&number);
            if (number && item.side == TextSide::Centre && !item.upright) numbers.push_back(value);
        }
    ASSERT_EQ(numbers.size(), 45U);
    for (int i = 0; i < 45; ++i) EXPECT_EQ(numbers[static_cast<std::size_t>(i)], i + 1);
}

TEST_P(SheetLayouts, AUsualDayOfFourExercisesIsOnePage)
{
    EXPECT_EQ(layouts[0].pages.size(), 1U);
}

INSTANTIATE_TEST_SUITE_P(OnBothPapers, SheetLayouts, testing::Values(PaperSize::A4, PaperSize::Letter),
                         [](const auto& each) { return each.param == PaperSize::A4 ? "A4" : "Letter"; });

}  // namespace
}  // namespace steelyard
