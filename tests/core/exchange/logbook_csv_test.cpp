#include "core/exchange/logbook_csv.h"
#include "core/exchange/logbook_guess.h"

#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

using test::must;

const QDate kParseDay(2026, 3, 2);

ParsedLogbook parsed(const QByteArray& bytes, const LogbookMapping& mapping = {})
{
    return must(parseLogbook(bytes, mapping, kParseDay, Progress()));
}

// One good row, with one column given another value.
QByteArray fileWith(const QByteArray& column, const QByteArray& value)
{
    std::vector<std::pair<QByteArray, QByteArray>> cells{
        {"date", "2026-03-01"}, {"athlete", "Ada Fulcrum"}, {"exercise", "Arm curl"}, {"load", "40"}, {"reps", "8"}};
    const auto known = std::ranges::find(cells, column, &std::pair<QByteArray, QByteArray>::first);
    if (known != cells.end())
        known->second = value;
    else
        cells.emplace_back(column, value);
    QByteArray header;
    QByteArray row;
    for (const auto& [name, cell] : cells) {
        header += (header.isEmpty() ? "" : ",") + name;
        row += (row.isEmpty() ? "" : ",") + QByteArray("\"") + cell + '"';
    }
    return header + '\n' + row + '\n';
}

struct BadCell {
    const char* column;
    const char* value;
};

class EveryColumn : public testing::TestWithParam<BadCell> {};

TEST_P(EveryColumn, RefusesWhatItCantMeanWithLineColumnAndAdvice)
{
    const auto [column, value] = GetParam();
    const ParsedLogbook log = parsed(fileWith(column, value));
    EXPECT_TRUE(log.rows.empty());
    ASSERT_EQ(log.problems.size(), 1U) << "one mistake, one problem";
    EXPECT_EQ(log.problems[0].line, 2);
    EXPECT_EQ(log.problems[0].column.toStdString(), column);
    EXPECT_GT(log.problems[0].text.size(), 10);
    EXPECT_TRUE(toText(log.problems[0]).contains(QStringLiteral("line 2, column ")));
}

const QByteArray kLongName(121, 'n');
const QByteArray kLongNote(4001, 'n');
INSTANTIATE_TEST_SUITE_P(
    LogbookCsv, EveryColumn,
    testing::Values(
        BadCell{"date", ""}, BadCell{"date", "2026-02-30"}, BadCell{"date", "01.03.2026"}, BadCell{"date", "26-03-01"},
        BadCell{"date", "2026-03-04"}, BadCell{"athlete", ""}, BadCell{"athlete", kLongName.constData()},
        BadCell{"exercise", "  "}, BadCell{"variant", kLongName.constData()}, BadCell{"grip", kLongName.constData()},
        BadCell{"standard", kLongName.constData()}, BadCell{"load", "heavy"}, BadCell{"load", "-5"},
        BadCell{"load", "2000.5"}, BadCell{"load", "1.2345"}, BadCell{"load", "42,5"}, BadCell{"load", "4e1"},
        BadCell{"unit", "stone"}, BadCell{"set", "0"}, BadCell{"set", "501"}, BadCell{"set", "1.5"},
        BadCell{"reps", ""}, BadCell{"reps", "ten"}, BadCell{"reps", "-1"}, BadCell{"reps", "201"}, BadCell{"off", "9"},
        BadCell{"off", "-1"}, BadCell{"off", "some"}, BadCell{"failed", "2"}, BadCell{"failed", "yes"},
        BadCell{"rir", "-1"}, BadCell{"rir", "31"}, BadCell{"rir", "few"}, BadCell{"rpe", "0"}, BadCell{"rpe", "11"},
        BadCell{"marks", "swing"}, BadCell{"marks", "wobble:1"}, BadCell{"marks", "swing:1;swing:1"},
        BadCell{"marks", "swing:9"}, BadCell{"lowering_s", "121"}, BadCell{"lowering_s", "slow"},
        BadCell{"lean_deg", "61"}, BadCell{"lean_deg", "-5"}, BadCell{"kind", "hard"}, BadCell{"tension", "11"},
        BadCell{"burn", "-1"}, BadCell{"pump", "7.5"}, BadCell{"gave_out", kLongName.constData()},
        BadCell{"discomfort_elbow", "11"}, BadCell{"discomfort_shoulder", "x"}, BadCell{"discomfort_wrist", "-1"},
        BadCell{"discomfort_lower_back", "11"}, BadCell{"discomfort_hip", "11"}, BadCell{"discomfort_knee", "11"},
        BadCell{"discomfort_neck", "11"}, BadCell{"discomfort_ankle", "11"}, BadCell{"next_soreness", "11"},
        BadCell{"next_weakness", "bad"}, BadCell{"note", kLongNote.constData()}));

TEST(LogbookCsv, ReadsEveryColumnAsItWasTyped)
{
    const ParsedLogbook log = parsed(
        "note,next_weakness,date,athlete,exercise,variant,grip,standard,load,unit,set,reps,off,failed,rir,marks,"
        "lowering_s,"
        "kind,lean_deg,tension,discomfort_lower_back,gave_out\n"
        "  two spaces first,3,2026-03-03, Ada  Fulcrum ,Arm curl,upright,neutral,strict,95.50,LB,4,8,2,1,1.5,"
        "swing:1;short_bottom:2,3.0,test,12.50,7,2,target\n");
    ASSERT_TRUE(log.problems.empty()) << toText(log.problems[0]).toStdString();
    const LogbookRow& row = log.rows.at(0);
    EXPECT_EQ(row.date, QDate(2026, 3, 3)) << "tomorrow may be another zone's today";
    EXPECT_EQ(row.athlete, QStringLiteral("Ada Fulcrum"));
    EXPECT_EQ(row.set.load.toString(), QStringLiteral("95.50 lb"));
    EXPECT_EQ(row.set.number, 4);
    EXPECT_EQ(row.set.off, 2);
    EXPECT_TRUE(row.set.failed);
    EXPECT_EQ(row.set.effort->value.toString(), QStringLiteral("1.5"));
    EXPECT_EQ(row.set.marks.toString(), "short_bottom:2;swing:1");
    EXPECT_EQ(row.set.loweringSeconds->toString(), QStringLiteral("3.0"));
    EXPECT_EQ(row.set.leanDegrees->toString(), QStringLiteral("12.50"));
    EXPECT_EQ(row.set.kind, SetKind::Test);
    EXPECT_EQ(row.set.note, QStringLiteral("  two spaces first"));
    EXPECT_EQ(row.rating.discomfort[static_cast<std::size_t>(Joint::LowerBack)], 2);
    EXPECT_EQ(row.rating.nextWeakness, 3);
}

TEST(LogbookCsv, KeepsNotWatchedApartFromWatchedAndFine)
{
    EXPECT_FALSE(parsed(fileWith("off", "")).rows.at(0).set.watched());
    EXPECT_TRUE(parsed(fileWith("off", "0")).rows.at(0).set.watched());
}

TEST(LogbookCsv, RefusesReserveAndEffortTogether)
{
    const ParsedLogbook log = parsed("date,athlete,exercise,reps,rir,rpe\n2026-03-01,A,B,8,2,8\n");
    ASSERT_EQ(log.problems.size(), 1U);
    EXPECT_EQ(log.problems[0].column, QStringLiteral("rpe"));
}

TEST(LogbookCsv, KeepsUnknownColumnsAsNotesAndReportsThem)
{
    const ParsedLogbook log = parsed("date,athlete,exercise,reps,note,discomfort_toe\n2026-03-01,A,B,8,good,4\n");
    EXPECT_EQ(log.unknownColumns, QStringList(QStringLiteral("discomfort_toe")));
    EXPECT_EQ(log.rows.at(0).set.note, QStringLiteral("good\ndiscomfort_toe: 4"));
}

TEST(LogbookCsv, RefusesAColumnThatStandsTwiceOrIsMissing)
{
    for (const char* header : {"date,athlete,exercise,reps,reps\n", "date,athlete,reps\n", ""}) {
        const auto log = parseLogbook(header, {}, kParseDay, Progress());
        ASSERT_FALSE(log) << header;
        EXPECT_EQ(log.error().code, ErrorCode::Invalid);
    }
    EXPECT_TRUE(parsed("date,athlete,exercise,reps\n").rows.empty());
}

TEST(LogbookCsv, ReadsDecimalCommasAndOtherDateOrdersOnlyWhenTold)
{
    LogbookMapping mapping;
    mapping.separator = u';';
    mapping.decimalMark = u',';
    mapping.dateOrder = DateOrder::DayMonthYear;
    mapping.unit = MassUnit::lb;
    const ParsedLogbook log =
        parsed("date;athlete;exercise;reps;load\n1.2.2026;A;B;8;42,50\n1.2.2026;A;B;8;1.250\n", mapping);
    ASSERT_EQ(log.rows.size(), 1U);
    EXPECT_EQ(log.rows[0].date, QDate(2026, 2, 1));
    EXPECT_EQ(log.rows[0].set.load.toString(), QStringLiteral("42.50 lb"));
    ASSERT_EQ(log.problems.size(), 1U) << "a grouped number is not guessed at";
    EXPECT_EQ(log.problems[0].line, 3);
}

TEST(LogbookMappingFile, SaysWhatIsWrong)
{
    EXPECT_TRUE(
        readMapping(R"({"format":1,"encoding":"windows-1252","decimal":",","columns":{"date":"Datum","reps":3}})"));
    for (const char* bad :
         {"", "[]", "{}", R"({"format":2})", R"({"format":1,"colour":1})", R"({"format":1,"separator":";;"})",
          R"({"format":1,"separator":"\""})", R"({"format":1,"columns":{"weight":1}})",
          R"({"format":1,"columns":{"reps":0}})", R"({"format":1,"date_order":"ydm"})"}) {
        const auto mapping = readMapping(bad);
        ASSERT_FALSE(mapping) << bad;
        EXPECT_EQ(mapping.error().code, ErrorCode::Invalid) << bad;
    }
}

TEST(LogbookMappingGuess, ReadsTheFileThatItWasMadeFor)
{
    const QByteArray file = "Datum;Name;Exercise;Weight (kg);Wdh\r\n31.01.2026;Ada;Arm curl;42,5;8\r\n";
    const LogbookMapping mapping = guessMapping(file);
    const ParsedLogbook log = parsed(file, mapping);
    ASSERT_EQ(log.rows.size(), 1U);
    EXPECT_EQ(log.rows[0].date, QDate(2026, 1, 31));
    EXPECT_EQ(log.rows[0].set.load.toString(), QStringLiteral("42.5 kg"));
    EXPECT_EQ(log.rows[0].set.reps, 8);
}

}  // namespace
}  // namespace steelyard
