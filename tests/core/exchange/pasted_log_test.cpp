#include "core/exchange/pasted_log.h"

#include "core/exchange/logbook_import.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using test::TempBook;

const QDate kPasteDay(2026, 3, 2);

struct PasteCase {
    TempBook book;
    Library library = must(book->library().read());

    [[nodiscard]] PastedLog read(const QString& text, const QString& athlete = QStringLiteral("Ada Fulcrum")) const
    {
        return readPastedLog(text, {library,
                                    {{QStringLiteral("Ada Fulcrum")}, {QStringLiteral("Basil Notch"), MassUnit::lb}},
                                    athlete,
                                    kPasteDay,
                                    kPasteDay});
    }
    [[nodiscard]] PastedLine line(const QString& text) const { return read(text).lines.back(); }
};

TEST(PastedLog, ReadsLiftersDaysExercisesAndSetsLineByLine)
{
    const PasteCase c;
    const PastedLog log =
        c.read(QStringLiteral("# spring\n\nBasil Notch:\n2026-02-03\nArm curl\n95x12 w; 12 @8\n- 90kg x10\n"
                              "3.2.2026:\narm CURL: 50x8"),
               {});
    EXPECT_EQ(log.problems, 0);
    ASSERT_EQ(log.rows.size(), 4U);
    EXPECT_EQ(log.rows[0].athlete, QStringLiteral("Basil Notch"));
    EXPECT_EQ(log.rows[0].date, QDate(2026, 2, 3));
    EXPECT_EQ(log.rows[0].exercise, QStringLiteral("Arm curl"));
    EXPECT_EQ(log.rows[0].set.load.toString(), QStringLiteral("95 lb")) << "the lifter's own unit";
    EXPECT_EQ(log.rows[1].set.load.toString(), QStringLiteral("95 lb")) << "the load before";
    EXPECT_EQ(log.rows[1].set.effort->value.toString(), QStringLiteral("8"));
    EXPECT_EQ(log.rows[2].set.load.toString(), QStringLiteral("90 kg"));
    EXPECT_EQ(log.rows[3].line, 9);
    using Kind = PastedLine::Kind;
    const std::vector<Kind> kinds{Kind::Nothing, Kind::Nothing, Kind::Athlete, Kind::Date, Kind::Exercise,
                                  Kind::Sets,    Kind::Sets,    Kind::Date,    Kind::Sets};
    for (std::size_t i = 0; i < kinds.size(); ++i) EXPECT_EQ(log.lines[i].kind, kinds[i]) << i;
}

TEST(PastedLog, KeepsTheVariantTheGripAndTheStandard)
{
    const PasteCase c;
    const auto& variant = c.library.variants.front().value;
    const PastedLog log = c.read(c.library.fullName(variant) + QStringLiteral(" / neutral / strict\n40x8"));
    ASSERT_EQ(log.rows.size(), 1U);
    EXPECT_EQ(log.rows[0].variant, variant.name);
    EXPECT_EQ(log.rows[0].grip, QStringLiteral("neutral"));
    EXPECT_EQ(log.rows[0].standard, QStringLiteral("strict"));
}

struct WrongPaste {
    const char* text;
    int at;
    const char* says;
};

class WrongLines : public testing::TestWithParam<WrongPaste> {};

TEST_P(WrongLines, SayWhereAndWhatToDo)
{
    const PasteCase c;
    const PastedLine line = c.line(QString::fromLatin1(GetParam().text));
    EXPECT_EQ(line.kind, PastedLine::Kind::Wrong);
    EXPECT_EQ(line.at, GetParam().at);
    EXPECT_TRUE(line.problem.contains(QString::fromLatin1(GetParam().says))) << line.problem.toStdString();
}

INSTANTIATE_TEST_SUITE_P(PastedLog, WrongLines,
                         testing::Values(WrongPaste{"Ada Fulcrom:", 0, "Ada Fulcrum"},
                                         WrongPaste{"  Arm crul", 2, "Arm curl"},
                                         WrongPaste{"42.5x12", 0, "which exercise"},
                                         WrongPaste{"Arm curl\n40x12; 40x1o", 11, "means nothing"},
                                         WrongPaste{"Arm curl: 40x12 @", 17, ""}, WrongPaste{"31.2.2026", 0, "no day"},
                                         WrongPaste{"2026-03-09", 0, "not come yet"},
                                         WrongPaste{"Arm curl\nAda Fulcrum:\n40x8", 0, "which exercise"}));

TEST(PastedLog, AsksForTheLifterWhenNobodyIsChosen)
{
    const PasteCase c;
    EXPECT_TRUE(c.read(QStringLiteral("Arm curl\n40x8"), {}).lines.back().problem.contains(QStringLiteral("whose")));
}

TEST(PastedLog, MakesANewExerciseOnlyWhenToldTo)
{
    const PasteCase c;
    const PastedLog log = c.read(QStringLiteral("+ Board press\n60x8"));
    EXPECT_TRUE(log.lines[0].isNew);
    EXPECT_EQ(log.rows.at(0).exercise, QStringLiteral("Board press"));
    EXPECT_FALSE(c.read(QStringLiteral("+ arm curl\n60x8")).lines[0].isNew) << "the library has it";
}

TEST(PastedLog, ComesInAsOneEditAndTwiceIsOnce)
{
    PasteCase c;
    const QByteArray before = test::rawDump(c.book->database());
    const PastedLog log = c.read(QStringLiteral("Arm curl\n40x8; 8; 7+"));
    const auto bringIn = [&] {
        auto outcome = must(importLogbook(c.book->database(), log.asLogbook(), {}, Progress()));
        c.book->history().adopt(outcome.changes);
        return outcome.report;
    };
    EXPECT_EQ(bringIn().setsAdded, 3);
    EXPECT_EQ(bringIn().setsAlreadyThere, 3);
    must(c.book->history().undo());
    EXPECT_EQ(test::rawDump(c.book->database()), before);
}

}  // namespace
}  // namespace steelyard
