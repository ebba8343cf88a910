#include "ui/print/paper_layouts.h"

#include "tests/support/sheet_samples.h"
#include "ui/print/fonts.h"
#include "ui/print/group_layout.h"
#include "ui/print/sheet_words.h"
#include "ui/print/text_measure.h"
#include "ui/print/week_layout.h"

#include <gtest/gtest.h>

#include <set>

namespace steelyard {
namespace {

using testing_support::kg;
using testing_support::SheetSample;

const QDate kMonday(2027, 3, 8);

// Somebody with four exercises on some days.
std::vector<SessionSheet> daysOf(const QString& name, const std::vector<QDate>& days,
                                 const std::vector<std::size_t>& lines = {0, 1, 2, 3})
{
    SheetSample sample;
    sample.log.athlete.uuid = QUuid::createUuidV5(QUuid(), name);
    sample.log.athlete.value.name = name;
    sample.log.athlete.value.group = QStringLiteral("Evening");
    for (const std::size_t line : lines) sample.done(line, kMonday.addDays(-14), {{u"60", 10}, {u"60", 9}, {u"60", 9}});
    std::vector<SessionSheet> sheets;
    for (const QDate day : days) {
        sample.log.blocks.clear();
        sample.plan(day, lines, kg(u"60"));
        sheets.push_back(*buildSessionSheet(sample.log, sample.library, sample.gym, day));
    }
    return sheets;
}

std::vector<SessionSheet> joinedSheets(std::initializer_list<std::vector<SessionSheet>> parts)
{
    std::vector<SessionSheet> all;
    for (const auto& part : parts) all.insert(all.end(), part.begin(), part.end());
    return all;
}

QString wordsOf(const SheetPage& page)
{
    QStringList words;
    for (const TextItem& item : page.texts) words += item.text;
    return words.join(u'\n');
}

std::vector<Row<Gym>> testHall()
{
    return {{Id<Gym>(1), QUuid(), SheetSample().gym}};
}

class PaperLayouts : public testing::TestWithParam<PaperSize> {
protected:
    void SetUp() override { ASSERT_TRUE(loadBundledFonts()); }
    [[nodiscard]] std::vector<SheetPage> pages(PaperLayout layout, const std::vector<SessionSheet>& sheets) const
    {
        return layOutPapers(layout, {sheets, gyms}, GetParam());
    }
    std::vector<Row<Gym>> gyms = testHall();
};

TEST_P(PaperLayouts, EveryTextOfEveryLayoutFitsItsCellAndThePaper)
{
    auto sheets = joinedSheets({daysOf(QStringLiteral("Ann"), {kMonday, kMonday.addDays(2)}),
                                daysOf(QStringLiteral("Name ").repeated(20), {kMonday}),
                                daysOf(QStringLiteral("Cy"), {kMonday})});
    sheets[0].exercises[0].exercise = QString(90, QLatin1Char('W'));
    sheets[0].exercises[1].sets = 9;
    const QSizeF paper = paperMillimetres(GetParam());
    for (const PaperLayout layout : {PaperLayout::Page, PaperLayout::Group, PaperLayout::Week, PaperLayout::Day})
        for (const SheetPage& page : pages(layout, sheets)) {
            for (const TextItem& item : page.texts) {
                const double along = item.upright ? item.cell.height() : item.cell.width();
                EXPECT_LE(textWidthMm(item.text, item.points, item.bold), along + 0.01) << qPrintable(item.text);
                EXPECT_GE(item.points, kSmallestPoints);
                EXPECT_GE(item.cell.left(), kSideMargin - 0.01) << qPrintable(item.text);
                EXPECT_GE(item.cell.top(), kClipMargin - 0.01) << qPrintable(item.text);
                EXPECT_LE(item.cell.right(), paper.width() - kSideMargin + 0.01) << qPrintable(item.text);
                EXPECT_LE(item.cell.bottom(), paper.height() - kBottomMargin + 0.01) << qPrintable(item.text);
            }
            for (const BoxItem& box : page.boxes) {
                if (!box.writeIn) continue;
                EXPECT_GE(box.rect.width(), kWriteInWidth);
                EXPECT_GE(box.rect.height(), kWriteInHeight);
                EXPECT_LE(box.rect.bottom(), paper.height() - kBottomMargin);
            }
        }
}

TEST_P(PaperLayouts, TwoLiftersWithFourExercisesShareAPageEachWithTheirCode)
{
    const auto sheets =
        joinedSheets({daysOf(QStringLiteral("Ann"), {kMonday}), daysOf(QStringLiteral("Bo"), {kMonday})});
    const auto group = pages(PaperLayout::Group, sheets);
    ASSERT_EQ(group.size(), 1U);
    EXPECT_EQ(group[0].codes.size(), 2U);
    EXPECT_NE(group[0].codes[0].code, group[0].codes[1].code);
    EXPECT_NE(group[0].codes[0].rect.left(), group[0].codes[1].rect.left()) << "side by side";
    for (const SessionSheet& sheet : sheets) {
        EXPECT_TRUE(wordsOf(group[0]).contains(sheet.athlete));
        EXPECT_TRUE(wordsOf(group[0]).contains(sheet.sheetId));
    }
    EXPECT_EQ(wordsOf(group[0]).count(QStringLiteral("To beat:")), 8);
    EXPECT_EQ(std::ranges::count_if(group[0].boxes, &BoxItem::writeIn), 8 * (3 * 4 + 1));
}

TEST_P(PaperLayouts, FourLiftersWithOneExerciseAreStackedOnOnePageAndAFifthIsNot)
{
    std::vector<SessionSheet> sheets;
    for (const auto* name : {u"Ann", u"Bo", u"Cy", u"Di"}) {
        const auto day = daysOf(QString::fromUtf16(name), {kMonday}, {0});
        sheets.insert(sheets.end(), day.begin(), day.end());
    }
    ASSERT_EQ(pages(PaperLayout::Group, sheets).size(), 1U);
    const auto day = daysOf(QStringLiteral("Ed"), {kMonday}, {0});
    sheets.insert(sheets.end(), day.begin(), day.end());
    const auto more = pages(PaperLayout::Group, sheets);
    ASSERT_EQ(more.size(), 2U);
    EXPECT_LE(more[0].codes.size(), static_cast<std::size_t>(kMostOnAPage));
}

TEST_P(PaperLayouts, RowsOfALifterStandInKeyingOrder)
{
    const auto sheets = daysOf(QStringLiteral("Ann"), {kMonday});
    std::vector<int> numbers;
    for (const SheetPage& page : pages(PaperLayout::Group, sheets))
        for (const TextItem& item : page.texts) {
            bool number = false;
            const int value = item.text.toInt(&number);
            if (number && item.side == TextSide::Centre && item.bold && !item.upright) numbers.push_back(value);
        }
    ASSERT_EQ(numbers.size(), 12U);
    for (int i = 0; i < 12; ++i) EXPECT_EQ(numbers[static_cast<std::size_t>(i)], i + 1);
}

TEST_P(PaperLayouts, AnotherDayOrGroupBeginsAnotherPage)
{
    auto sheets =
        joinedSheets({daysOf(QStringLiteral("Ann"), {kMonday}, {0}), daysOf(QStringLiteral("Bo"), {kMonday}, {0})});
    sheets[1].group = QStringLiteral("Morning");
    EXPECT_EQ(pages(PaperLayout::Group, sheets).size(), 2U);
}

TEST_P(PaperLayouts, AWeekHasEveryDayWithExercisesAndTargetsByLifter)
{
    const auto sheets = joinedSheets(
        {daysOf(QStringLiteral("Bo"), {kMonday}), daysOf(QStringLiteral("Ann"), {kMonday.addDays(3), kMonday})});
    const auto week = pages(PaperLayout::Week, sheets);
    ASSERT_EQ(week.size(), 2U);
    const QString words = wordsOf(week[0]);
    EXPECT_TRUE(words.contains(QStringLiteral("Ann")));
    const qsizetype monday = words.indexOf(sheetWeekday(kMonday));
    const qsizetype thursday = words.indexOf(sheetWeekday(kMonday.addDays(3)));
    EXPECT_TRUE(monday >= 0 && thursday > monday);
    EXPECT_EQ(words.count(QStringLiteral("Arm curl")), 2);
    EXPECT_EQ(words.count(loadWords(sheets[0].exercises[0])), 8 - 2) << "the dumbbells' words are longer";
    EXPECT_EQ(std::ranges::count_if(week[0].boxes, &BoxItem::writeIn), 0);
}

TEST(WeekLayout, AWeekBeginsOnMonday)
{
    EXPECT_EQ(weekBegin(kMonday), kMonday);
    EXPECT_EQ(weekBegin(kMonday.addDays(6)), kMonday);
    EXPECT_EQ(weekBegin(kMonday.addDays(-1)), kMonday.addDays(-7));
}

TEST_P(PaperLayouts, TheDayOfTheGymNamesEverybodyInTheirTurnAndMarksWhatIsMissing)
{
    const auto sheets = joinedSheets(
        {daysOf(QStringLiteral("Ann"), {kMonday}, {1, 0}), daysOf(QStringLiteral("Bo"), {kMonday}, {1, 3})});
    const auto day = pages(PaperLayout::Day, sheets);
    ASSERT_EQ(day.size(), 1U);
    const QString words = wordsOf(day[0]);
    EXPECT_EQ(words.count(QStringLiteral("Ann")), 2);
    EXPECT_TRUE(words.indexOf(QStringLiteral("Turn 1")) < words.indexOf(QStringLiteral("Turn 2")));
    EXPECT_EQ(words.count(QStringLiteral("At once:")), 2);
    // Two bars are wanted in the first turn, the hall has one; 60 kg takes one pair of 20 each, there are four.
    EXPECT_EQ(words.count(QStringLiteral("Not enough:")), 1);
    EXPECT_TRUE(words.contains(QStringLiteral("the gym has 1")));
}

TEST(PaperLayoutNames, AreReadByTheWordsOfTheConsole)
{
    EXPECT_EQ(paperLayoutFrom(u"page"), PaperLayout::Page);
    EXPECT_EQ(paperLayoutFrom(u"group"), PaperLayout::Group);
    EXPECT_EQ(paperLayoutFrom(u"week"), PaperLayout::Week);
    EXPECT_EQ(paperLayoutFrom(u"day"), PaperLayout::Day);
    EXPECT_EQ(paperLayoutFrom(u"month"), std::nullopt);
}

INSTANTIATE_TEST_SUITE_P(OnBothPapers, PaperLayouts, testing::Values(PaperSize::A4, PaperSize::Letter),
                         [](const auto& each) { return each.param == PaperSize::A4 ? "A4" : "Letter"; });

}  // namespace
}  // namespace steelyard
