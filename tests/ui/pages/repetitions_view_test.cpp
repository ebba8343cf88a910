// The repetitions of a session on the Lifter page, and a measuring device's file on its way into them.
#include "ui/pages/lifter/repetitions_view.h"

#include "core/edits/repetition_edits.h"
#include "core/storage/repetition_repository.h"
#include "tests/support/lifter_page_book.h"
#include "ui/pages/lifter/repetition_import.h"
#include "ui/pages/lifter/repetition_line.h"

#include <QtTest/QTest>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QListWidget>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::must;

struct RepetitionsCase : testing_support::LifterPageBook {
    std::optional<LiftLine> line;

    RepetitionsCase()
    {
        line = club.addLine(QStringLiteral("Arm curl"), 6);
        open();
        EXPECT_TRUE(settled());
        page->perform(QStringLiteral("lifter.repetitions"));
    }
    [[nodiscard]] RepetitionsView& view() const { return *page->findChild<RepetitionsView*>(); }
    [[nodiscard]] QListWidget& sets() const { return *view().findChild<QListWidget*>(); }
    [[nodiscard]] std::vector<SetRepetitions> stored() const
    {
        return must(RepetitionRepository(club.book->database()).ofLifter(*club.athlete));
    }
    void bringIn(const QByteArray& csv)
    {
        prompter.path = club.dir.path(u"device.csv");
        QFile file(prompter.path);
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(csv);
        file.close();
        page->perform(QStringLiteral("lifter.measured"));
    }
};

QByteArray threeSets()
{
    QByteArray csv = "set,rep,travel (cm),eccentric (s)\n";
    for (int set = 1; set <= 3; ++set)
        for (int rep = 1; rep <= 8; ++rep)
            csv += QByteArray::number(set) + ',' + QByteArray::number(rep) + ','
                   + (set == 2 && rep == 8 ? "40.0"
                      : rep % 2 == 0       ? "50.4"
                                           : "50.0")
                   + ",2." + QByteArray::number(rep) + '\n';
    return csv;
}

void setLeastTravel(Book& book, Id<RepStandard> id, int percent)
{
    const QString sql =
        QStringLiteral("UPDATE rep_standard SET least_travel_percent = %1 WHERE id = %2").arg(percent).arg(id.value());
    ASSERT_TRUE(book.database().execute(sql.toUtf8().constData()));
}

TEST(RepetitionsView, SaysWhatItIsForWhenASetHasNone)
{
    const RepetitionsCase c;
    EXPECT_EQ(c.sets().count(), 3);
    EXPECT_TRUE(c.says(QStringLiteral("counting at the rack")));
    EXPECT_TRUE(c.page->canPerform(QStringLiteral("lifter.measured")));
    EXPECT_FALSE(c.page->canPerform(QStringLiteral("lifter.remove")));
}

TEST(RepetitionsView, ADevicesFileIsLookedAtThenRecordedAsOneStepThatCanBeUndone)
{
    RepetitionsCase c;
    c.bringIn(threeSets());
    RepetitionImport& import = *c.view().import();
    ASSERT_TRUE(import.isVisible());
    EXPECT_TRUE(import.preview().contains(QStringLiteral("Rows 2 to 9: set 1"))) << qPrintable(import.preview());
    EXPECT_TRUE(c.stored().empty());
    QTest::keyClick(&import, Qt::Key_Return);
    ASSERT_TRUE(c.settled());
    const auto stored = c.stored();
    ASSERT_EQ(stored.size(), 3U);
    EXPECT_EQ(stored[0].repetitions.size(), 8U);
    EXPECT_EQ(stored[0].repetitions[1].travelMm, Decimal::parse(u"504"));
    EXPECT_TRUE(c.view().words().contains(QStringLiteral("Travel: 5"))) << qPrintable(c.view().words());
    ASSERT_TRUE(c.club.book->history().undo());
    EXPECT_TRUE(c.stored().empty());
}

TEST(RepetitionsView, RepetitionsUnderTheStandardsShareAreMarkedShort)
{
    RepetitionsCase c;
    setLeastTravel(*c.club.book, c.line->standard, 90);
    Changes changes;
    changes.library = true;
    c.page->bookChanged(changes);
    ASSERT_TRUE(c.settled());
    c.bringIn(threeSets());
    EXPECT_TRUE(c.view().import()->preview().contains(QStringLiteral(", 1 short")))
        << qPrintable(c.view().import()->preview());
    QTest::keyClick(c.view().import(), Qt::Key_Return);
    ASSERT_TRUE(c.settled());
    EXPECT_EQ(c.stored().at(1).repetitions.at(7).marks.toString(), "short_bottom");
    EXPECT_TRUE(c.stored().at(1).repetitions.at(6).marks.none());
    const SetEntry set = must(c.club.book->logbook().find(c.stored().at(1).set)).set;
    EXPECT_EQ(set.marks.of(Mark::ShortBottom), 1);
    EXPECT_EQ(set.loweringSeconds, Decimal::parse(u"2.5"));
}

TEST(RepetitionsView, AnotherColumnOrUnitIsSeenAtOnceAndEscapeLeavesEverythingAsItWas)
{
    RepetitionsCase c;
    c.bringIn("which,how far,seconds\n1,502,2\n2,498,2\n3,500,2\n");
    RepetitionImport& import = *c.view().import();
    EXPECT_TRUE(import.preview().contains(QStringLiteral("Name the column")));
    QComboBox* travel = import.columnBox(RepetitionColumn::Travel);
    travel->setCurrentIndex(2);
    Q_EMIT travel->activated(2);
    EXPECT_TRUE(import.preview().contains(QStringLiteral("Full travel 500 mm"))) << qPrintable(import.preview());
    QTest::keyClick(&import, Qt::Key_Escape);
    EXPECT_FALSE(import.isVisible());
    EXPECT_TRUE(c.view().isVisible());
    EXPECT_TRUE(c.stored().empty());
}

TEST(RepetitionsView, AFileThatCannotBeReadSaysSoInPlace)
{
    RepetitionsCase c;
    c.bringIn("only,a,heading\n");
    EXPECT_FALSE(c.view().import()->isVisible());
    EXPECT_TRUE(c.says(QStringLiteral("This file has no rows")));
}

TEST(RepetitionsView, TheRepetitionsOfOneSetAreRemovedAndComeBack)
{
    RepetitionsCase c;
    c.bringIn(threeSets());
    QTest::keyClick(c.view().import(), Qt::Key_Return);
    ASSERT_TRUE(c.settled());
    c.sets().setCurrentRow(1);
    ASSERT_TRUE(c.page->canPerform(QStringLiteral("lifter.remove")));
    c.page->perform(QStringLiteral("lifter.remove"));
    ASSERT_TRUE(c.settled());
    EXPECT_EQ(c.stored().size(), 2U);
    ASSERT_TRUE(c.club.book->history().undo());
    EXPECT_EQ(c.stored().size(), 3U);
}

TEST(RepetitionsView, TheRatingsShowTheTravelOnceThereIsSome)
{
    RepetitionsCase c;
    c.page->perform(QStringLiteral("lifter.ratings"));
    const auto hasTravel = [&] { return c.says(QStringLiteral("Travel: 50")); };
    EXPECT_FALSE(hasTravel());
    c.page->perform(QStringLiteral("lifter.repetitions"));
    c.bringIn(threeSets());
    QTest::keyClick(c.view().import(), Qt::Key_Return);
    ASSERT_TRUE(c.settled());
    c.page->perform(QStringLiteral("lifter.ratings"));
    EXPECT_TRUE(hasTravel());
}

TEST(RepetitionsView, TypedRepetitionsGoIntoTheSetAsOneStepThatCanBeUndone)
{
    RepetitionsCase c;
    c.sets().setCurrentRow(1);
    ASSERT_TRUE(c.page->canPerform(QStringLiteral("lifter.edit")));
    c.page->perform(QStringLiteral("lifter.edit"));
    RepetitionLine& line = *c.view().line();
    ASSERT_TRUE(line.isVisible());
    EXPECT_EQ(line.edit()->selectedText(), line.edit()->text());

    QTest::keyClicks(line.edit(), QStringLiteral("5*52/2 51b 50x"));
    EXPECT_TRUE(line.reading().startsWith(QStringLiteral("At character 14"))) << qPrintable(line.reading());
    QTest::keyClick(line.edit(), Qt::Key_Return);
    EXPECT_TRUE(c.stored().empty());
    EXPECT_EQ(line.edit()->selectedText(), QStringLiteral("x"));
    QTest::keyClick(line.edit(), Qt::Key_Backspace);
    EXPECT_TRUE(line.reading().contains(QStringLiteral("1 off standard (short at the bottom 1)")))
        << qPrintable(line.reading());
    QTest::keyClick(line.edit(), Qt::Key_Return);

    ASSERT_EQ(c.stored().size(), 1U);
    EXPECT_EQ(c.stored()[0].repetitions.size(), 7U);
    EXPECT_EQ(c.stored()[0].repetitions[0].travelMm, Decimal(520));
    ASSERT_TRUE(c.settled());
    EXPECT_FALSE(line.isVisible());
    const auto id = c.stored()[0].set;
    const auto placed = must(c.club.book->logbook().find(id));
    EXPECT_EQ(placed.set.reps, 7);
    EXPECT_EQ(placed.set.off, 1);
    EXPECT_EQ(placed.set.marks.of(Mark::ShortBottom), 1);

    ASSERT_TRUE(c.club.book->history().undo());
    ASSERT_TRUE(c.settled());
    EXPECT_TRUE(c.stored().empty());
    EXPECT_NE(must(c.club.book->logbook().find(id)).set, placed.set);
}

TEST(RepetitionsView, EscapeLeavesTheLineAndWhatADeviceMeasuredStays)
{
    RepetitionsCase c;
    c.page->perform(QStringLiteral("lifter.edit"));
    RepetitionLine& line = *c.view().line();
    QTest::keyClicks(line.edit(), QStringLiteral("3*."));
    QTest::keyClick(line.edit(), Qt::Key_Escape);
    EXPECT_FALSE(line.isVisible());
    EXPECT_TRUE(c.sets().hasFocus());
    EXPECT_TRUE(c.stored().empty());

    c.bringIn(threeSets());
    QTest::keyClick(c.view().import(), Qt::Key_Return);
    ASSERT_TRUE(c.settled());
    ASSERT_EQ(c.stored().size(), 3U);
    c.page->perform(QStringLiteral("lifter.edit"));
    EXPECT_FALSE(line.isVisible());
    EXPECT_TRUE(c.says(QStringLiteral("A device measured these")));
}

}  // namespace
}  // namespace steelyard
