#include "ui/print/sheet_layout.h"

#include "tests/support/sheet_samples.h"
#include "ui/print/fonts.h"
#include "ui/print/sheet_words.h"
#include "ui/print/text_measure.h"

#include <gtest/gtest.h>

#include <map>
#include <set>

namespace steelyard {
namespace {

using testing_support::SheetSample;

const QDate kMonday(2027, 3, 8);

// As a coach plans it: three sets each, names and cues of a usual length, a warm-up where the load asks for one, discs to hang.
SessionSheet usualDay(int exercises)
{
    SheetSample sample;
    const std::pair<QString, QString> more[] = {
        {QStringLiteral("Overhead press"), QStringLiteral("straight bar, standing")},
        {QStringLiteral("Bent-over row"), QStringLiteral("straight bar, level back")},
        {QStringLiteral("Romanian deadlift"), QStringLiteral("straight bar")},
        {QStringLiteral("Lying triceps extension"), QStringLiteral("angled bar")},
    };
    for (int i = 0; std::ssize(sample.log.lines) < exercises; ++i) {
        const auto& [name, variant] = more[i % 4];
        sample.addLine(name, variant, Loading::BarTotal, Implement::StraightBar);
    }
    const std::array loads{u"40", u"97.5", u"22", u"55", u"47.5", u"70", u"85", u"30"};
    std::vector<std::size_t> lines;
    for (std::size_t line = 0; line < static_cast<std::size_t>(exercises); ++line) {
        const auto* load = loads[line % loads.size()];
        sample.done(line, kMonday.addDays(-7), {{load, 10}, {load, 9}, {load, 9}});
        lines.push_back(line);
    }
    sample.plan(kMonday, lines);
    return *buildSessionSheet(sample.log, sample.library, sample.gym, kMonday);
}

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
    for (const int exercises : {6, 8, 12}) sheets.push_back(usualDay(exercises));
    SessionSheet turns = usualDay(8);
    for (std::size_t i = 0; i < 8; ++i)
        turns.exercises[i].turn = QChar(u'A' + static_cast<char16_t>(i / 2)) + QString::number(i % 2 + 1);
    sheets.push_back(turns);
    return sheets;
}

QStringList wordsOn(const SheetPage& page)
{
    QStringList words;
    for (const TextItem& item : page.texts) words += item.text;
    return words;
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
                EXPECT_TRUE(!box.band || box.grey == 0);
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

// Letter is shorter: seven go on it.
TEST_P(SheetLayouts, EightUsualExercisesAreOnePageWithEverythingThatIsNeeded)
{
    const int count = GetParam() == PaperSize::A4 ? 8 : 7;
    const SessionSheet day = usualDay(count);
    const SheetLayout layout = layOutSheet(day, GetParam());
    ASSERT_EQ(layout.pages.size(), 1U);
    ASSERT_EQ(std::ssize(layout.pages[0].exercises), count);
    const QString all = wordsOn(layout.pages[0]).join(u' ');
    for (const SheetExercise& exercise : day.exercises) {
        EXPECT_TRUE(all.contains(loadWords(exercise))) << qPrintable(loadWords(exercise));
        EXPECT_TRUE(all.contains(exercise.exercise)) << qPrintable(exercise.exercise);
    }
    EXPECT_EQ(all.count(QStringLiteral("To beat:")), count);
    const auto warmUps = std::ranges::count_if(day.exercises, [](const auto& each) { return !each.warmUps.empty(); });
    EXPECT_EQ(all.count(QStringLiteral("Warm-up:")), warmUps);
    EXPECT_EQ(std::ranges::count_if(layout.pages[0].boxes, &BoxItem::writeIn), count * (3 * 4 + 6));
}

TEST_P(SheetLayouts, ATrialsArmIsSaidHoweverFullThePageIs)
{
    for (const int count : {4, GetParam() == PaperSize::A4 ? 8 : 7}) {
        SessionSheet day = usualDay(count);
        SheetTrial trial;
        trial.arm = 1;
        trial.armName = QStringLiteral("neutral, medium");
        trial.session = 5;
        trial.sessions = 12;
        trial.asked = {QStringLiteral("tension"), QStringLiteral("target_first")};
        day.exercises[0].trial = trial;
        const SheetLayout layout = layOutSheet(day, GetParam());
        EXPECT_EQ(layout.pages.size(), 1U) << count;
        const QString all = wordsOn(layout.pages[0]).join(u' ');
        EXPECT_TRUE(all.contains(QStringLiteral("Trial: arm B"))) << count << qPrintable(all);
        EXPECT_TRUE(all.contains(QStringLiteral("words every time"))) << count;
    }
}

TEST_P(SheetLayouts, TwelveExercisesGoOnOnASecondPageWhichHasItsHead)
{
    const SheetLayout layout = layOutSheet(usualDay(12), GetParam());
    ASSERT_EQ(layout.pages.size(), 2U);
    EXPECT_EQ(layout.pages[0].exercises.size() + layout.pages[1].exercises.size(), 12U);
    for (const SheetPage& page : layout.pages) {
        EXPECT_TRUE(wordsOn(page).contains(QStringLiteral("Sample Lifter")));
        EXPECT_TRUE(wordsOn(page).contains(QStringLiteral("off, marks"))) << "labels on every page";
        EXPECT_EQ(page.codes.size(), 1U);
    }
}

TEST_P(SheetLayouts, FewExercisesKeepEveryReason)
{
    const SheetLayout layout = layOutSheet(usualDay(3), GetParam());
    EXPECT_EQ(wordsOn(layout.pages[0]).join(u' ').count(QStringLiteral("Next time")), 3);
}

TEST_P(SheetLayouts, WhatIsDoneInTurnsIsNamedBracketedAndOnOnePage)
{
    const SheetLayout& layout = layouts.back();
    std::map<QChar, std::set<std::size_t>> pagesOf;
    std::size_t brackets = 0;
    for (std::size_t page = 0; page < layout.pages.size(); ++page) {
        for (const PlacedExercise& placed : layout.pages[page].exercises)
            pagesOf[sheets.back().exercises[static_cast<std::size_t>(placed.index)].turn.front()].insert(page);
        for (const LineItem& line : layout.pages[page].lines)
            brackets += line.line.x1() < kSideMargin && line.line.x1() == line.line.x2() ? 1 : 0;
    }
    ASSERT_EQ(pagesOf.size(), 4U);
    for (const auto& [letter, pages] : pagesOf) EXPECT_EQ(pages.size(), 1U);
    EXPECT_EQ(brackets, 4U);
    EXPECT_TRUE(wordsOn(layout.pages[0]).contains(QStringLiteral("A1 Arm curl")));
}

TEST_P(SheetLayouts, NoInkStandsOnAColour)
{
    for (const SheetLayout& layout : layouts)
        for (const SheetPage& page : layout.pages)
            for (const BoxItem& box : page.boxes) {
                if (!box.band) continue;
                const QRectF inside = box.rect.adjusted(0.05, 0.05, -0.05, -0.05);
                for (const TextItem& item : page.texts)
                    EXPECT_FALSE(item.cell.intersects(inside)) << qPrintable(item.text);
            }
}

TEST_P(SheetLayouts, TheCodeHasItsQuietZone)
{
    constexpr double kQuiet = kScanQuietModules * kScanModule;
    for (const SheetLayout& layout : layouts)
        for (const SheetPage& page : layout.pages) {
            ASSERT_EQ(page.codes.size(), 1U);
            const QRectF quiet = page.codes[0].rect.adjusted(-kQuiet + 0.01, -kQuiet, kQuiet, kQuiet - 0.01);
            for (const TextItem& item : page.texts) EXPECT_FALSE(item.cell.intersects(quiet)) << qPrintable(item.text);
            for (const BoxItem& box : page.boxes) EXPECT_FALSE(box.rect.intersects(quiet));
            for (const LineItem& line : page.lines)
                EXPECT_FALSE(quiet.contains(line.line.p1()) || quiet.contains(line.line.p2()));
        }
}

TEST_P(SheetLayouts, TheHeadSaysTheWeekOfTheBlock)
{
    SessionSheet sheet = usualDay(4);
    sheet.place = PlaceInBlock{3, 6};
    sheet.week = WeekKind::Deload;
    EXPECT_TRUE(
        wordsOn(layOutSheet(sheet, GetParam()).pages[0]).join(u' ').contains(QStringLiteral("week 3 of 6, deload")));
}

INSTANTIATE_TEST_SUITE_P(OnBothPapers, SheetLayouts, testing::Values(PaperSize::A4, PaperSize::Letter),
                         [](const auto& each) { return each.param == PaperSize::A4 ? "A4" : "Letter"; });

}  // namespace
}  // namespace steelyard
