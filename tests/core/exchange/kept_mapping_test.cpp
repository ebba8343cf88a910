#include "core/exchange/kept_mapping.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

LogbookMapping fullMapping()
{
    LogbookMapping mapping;
    mapping.encoding = TextEncoding::Windows1252;
    mapping.separator = u';';
    mapping.decimalMark = u',';
    mapping.dateOrder = DateOrder::DayMonthYear;
    mapping.byHand = true;
    mapping.skip = 2;
    mapping.unit = MassUnit::lb;
    mapping.columns = {{QStringLiteral("date"), QStringLiteral("Datum")}, {QStringLiteral("sets"), 4}};
    mapping.fixed = {{QStringLiteral("grip"), QStringLiteral("neutral")}};
    mapping.sets = {{{QStringLiteral("load"), QStringLiteral("kg 1")}, {QStringLiteral("reps"), 6}},
                    {{QString(kNotationColumn), 7}}};
    mapping.exercises = {
        {{QStringLiteral("KH Curl"), {}}, {QStringLiteral("Arm curl"), QStringLiteral("dumbbells, seated")}}};
    return mapping;
}

TEST(Mapping, ComesBackFromItsFileAsItWas)
{
    const LogbookMapping mapping = fullMapping();
    const auto back = readMapping(writeMapping(mapping));
    ASSERT_TRUE(back) << back.error().what.toStdString();
    EXPECT_EQ(*back, mapping);
}

TEST(Mapping, SaysWhatIsWrongWithItsSetsAndExercises)
{
    for (const char* bad : {R"({"format":1,"sets":[{}]})", R"({"format":1,"sets":[{"weight":1}]})",
                            R"({"format":1,"columns":{"notation":1}})", R"({"format":1,"skip":-1})",
                            R"({"format":1,"exercises":[{"name":"a"}]})",
                            R"({"format":1,"exercises":[{"name":"a","is":{"exercise":""}}]})"})
        EXPECT_FALSE(readMapping(bad)) << bad;
}

TEST(KeptMapping, FitsAFileWithItsColumnsInAnotherOrder)
{
    LogbookMapping mapping;
    mapping.columns = {{QStringLiteral("date"), 1}, {QStringLiteral("reps"), 3}, {QStringLiteral("note"), 4}};
    mapping.sets = {{{QStringLiteral("load"), 2}}};
    const QStringList header{QStringLiteral("Day"), QStringLiteral("kg"), QStringLiteral("Reps"), QString()};
    const LogbookMapping kept = toKeep(mapping, header);
    const auto fitting =
        fitMapping(kept, {QStringLiteral("kg"), QStringLiteral("Reps"), QStringLiteral("Day"), QString()});
    ASSERT_TRUE(fitting);
    EXPECT_EQ(std::get<int>(fitting->columns.at(QStringLiteral("date"))), 3);
    EXPECT_EQ(std::get<int>(fitting->columns.at(QStringLiteral("reps"))), 2);
    EXPECT_EQ(std::get<int>(fitting->columns.at(QStringLiteral("note"))), 4)
        << "a column without a name stays where it was";
    EXPECT_EQ(std::get<int>(fitting->sets[0].at(QStringLiteral("load"))), 1);
    EXPECT_FALSE(fitMapping(kept, {QStringLiteral("kg"), QStringLiteral("Reps")}));
}

TEST(KeptMapping, HoldsNothingAboutPeople)
{
    LogbookMapping mapping;
    mapping.fixed = {{QStringLiteral("athlete"), QStringLiteral("Ada Fulcrum")}};
    mapping.athletes = {{QStringLiteral("Ada F."), QStringLiteral("Ada Fulcrum")}};
    EXPECT_FALSE(writeMapping(toKeep(mapping, {})).contains("Ada"));
    EXPECT_FALSE(writeMapping(mapping).contains("Ada F.")) << "not even unkept";
}

TEST(HeaderSignature, IsTheSameInAnyOrderAndNoneWithoutHeadings)
{
    const LogbookMapping mapping;
    const QString signature = headerSignature(mapping, {QStringLiteral("Datum"), QStringLiteral("Übung")});
    EXPECT_EQ(signature, headerSignature(mapping, {QStringLiteral("ubung"), QStringLiteral("DATUM")}));
    EXPECT_NE(signature, headerSignature(mapping, {QStringLiteral("Datum"), QStringLiteral("Satz")}));
    LogbookMapping without;
    without.hasHeader = false;
    EXPECT_TRUE(headerSignature(without, {QStringLiteral("1"), QStringLiteral("2")}).isEmpty());
}

}  // namespace
}  // namespace steelyard
