#include "core/keying/set_notation.h"

#include <gtest/gtest.h>

#include <random>

namespace steelyard {

void PrintTo(const NotationProblem& problem, std::ostream* out)
{
    *out << problem.at << '+' << problem.length << ": " << problem.text.toStdString();
}

namespace {

Load kg(const char* amount)
{
    return *Load::parse(std::string_view(amount), MassUnit::kg);
}

const NotationContext kAfterForty{Load::make(Decimal(40), MassUnit::kg), MassUnit::kg, SetKind::Work};

SetEntry read(QStringView line, const NotationContext& context = kAfterForty)
{
    const auto reading = readSet(line, context);
    EXPECT_TRUE(reading) << line.toString().toStdString() << " -> "
                         << (reading ? std::string() : reading.error().text.toStdString());
    return reading.value_or(SetEntry{});
}

NotationProblem problemOf(QStringView line, const NotationContext& context = kAfterForty)
{
    const auto reading = readSet(line, context);
    EXPECT_FALSE(reading) << line.toString().toStdString() << " was read";
    return reading ? NotationProblem{-1, -1, {}} : reading.error();
}

TEST(SetNotation, ReadsLoadTimesRepetitions)
{
    SetEntry set;
    set.load = kg("42.5");
    set.reps = 12;
    for (const auto* line : {u"42.5x12", u"42,5 x 12", u"  42.5kg×12 ", u"42.5 KG * 12", u"42.5X12"})
        EXPECT_EQ(read(line), set) << QStringView(line).toString().toStdString();
}

TEST(SetNotation, KeepsTheUnitAndTheDecimalsThatWereTyped)
{
    EXPECT_EQ(read(u"95lb x 8").load, *Load::parse(u"95", MassUnit::lb));
    EXPECT_EQ(read(u"42.50x8").load.toString(), QStringLiteral("42.50 kg"));
    EXPECT_EQ(read(u"95x8", {std::nullopt, MassUnit::lb}).load.unit(), MassUnit::lb);
    EXPECT_EQ(read(u"0x8").load.toString(), QStringLiteral("0 kg"));
}

TEST(SetNotation, RepetitionsAloneKeepTheLoadOfBefore)
{
    EXPECT_EQ(read(u"12").load, kg("40"));
    EXPECT_EQ(read(u"12").reps, 12);
    EXPECT_EQ(read(u"x12").load, kg("40"));
    EXPECT_EQ(problemOf(u"12", {}).at, 0);
    EXPECT_EQ(problemOf(u"12", {}).length, 2);
}

TEST(SetNotation, TellsNotWatchedFromWatchedAndFine)
{
    EXPECT_EQ(read(u"12").off, std::nullopt);
    EXPECT_EQ(read(u"12w").off, 0);
    EXPECT_EQ(read(u"12-0").off, 0);
    EXPECT_EQ(read(u"12-3").off, 3);
    EXPECT_EQ(read(u"12-3").countedReps(), 9);
}

TEST(SetNotation, MarksOfOneKindSayHowManyWereOff)
{
    EXPECT_EQ(read(u"12 s2").off, 2);
    EXPECT_EQ(read(u"12s").off, 1);
    EXPECT_EQ(read(u"12s2").marks.of(Mark::Swing), 2);
    // One repetition may carry two marks, so of several kinds the number off is the coach's to say.
    const NotationProblem several = problemOf(u"12 s2 t1");
    EXPECT_EQ(several.at, 3);
    EXPECT_EQ(several.length, 5);
    const SetEntry set = read(u"12-2 s2 t1");
    EXPECT_EQ(set.off, 2);
    EXPECT_EQ(set.marks.toString(), "short_top:1;swing:2");
    EXPECT_EQ(read(u"12-? s2").off, std::nullopt);
}

TEST(SetNotation, EveryMarkHasItsLetter)
{
    EXPECT_EQ(read(u"12-6 b1 t2 s3 d4 l5 a6").marks.toString(),
              "short_bottom:1;short_top:2;swing:3;dropped:4;lean:5;assisted:6");
}

TEST(SetNotation, ReadsEverythingElseInAnyOrder)
{
    SetEntry set;
    set.load = kg("42.5");
    set.reps = 12;
    set.off = 1;
    set.failed = true;
    set.effort = Effort{Effort::Scale::Rpe, Decimal::fromScaled(85, 1)};
    set.marks.set(Mark::Dropped, 1);
    set.loweringSeconds = Decimal(3);
    set.leanDegrees = Decimal(12);
    set.kind = SetKind::Test;
    set.note = QStringLiteral("slow; \"calm\"");
    EXPECT_EQ(read(u"42.5x12 d @8.5 + /3 lean12 test \"slow; \"calm\""), set);
    EXPECT_EQ(read(u"42.5x12test lean12/3+d1@8.5\"slow; \"calm\""), set);
    EXPECT_EQ(read(u"12 rir2").effort, (Effort{Effort::Scale::Rir, Decimal(2)}));
}

TEST(SetNotation, SaysWhereALineDoesNotFit)
{
    struct Case {
        const char16_t* line;
        qsizetype at;
        qsizetype length;
    };
    for (const Case& each : std::initializer_list<Case>{
             {u"", 0, 0},              // nothing typed
             {u"   ", 3, 0},           //
             {u"abc", 0, 1},           // a set begins with a number
             {u"42.5x", 5, 0},         // repetitions are missing
             {u"42.5kg", 6, 0},        // so they are here
             {u"42.5x12.5", 5, 4},     // half a repetition
             {u"42.5", 0, 4},          // a load without repetitions
             {u"42.5x900", 5, 3},      //
             {u"9000x5", 0, 4},        // no such load
             {u"1.2345x5", 0, 6},      //
             {u"12 q", 3, 1},          // means nothing
             {u"12-", 3, 0},           // how many?
             {u"12-13", 3, 2},         // more than there are
             {u"12 s13", 4, 2},        //
             {u"12 s0", 3, 2},         //
             {u"12ss", 3, 1},          // twice
             {u"12w-2", 3, 1},         // both
             {u"12@", 3, 0},           //
             {u"12@8rir2", 4, 3},      // one scale
             {u"12@11", 0, 5},         // the scale ends at ten
             {u"12/3/3", 4, 1},        //
             {u"12 lean", 7, 0},       //
             {u"12 test test", 8, 4},  //
             {u"12++", 3, 1},          //
             {u"12 \"a\\b", 5, 1},     // a lone backslash in a note
             {u"123456789012x5", 0, 12},
         }) {
        const NotationProblem problem = problemOf(each.line);
        EXPECT_EQ(problem.at, each.at) << QStringView(each.line).toString().toStdString() << " "
                                       << problem.text.toStdString();
        EXPECT_EQ(problem.length, each.length)
            << QStringView(each.line).toString().toStdString() << " " << problem.text.toStdString();
        EXPECT_FALSE(problem.text.isEmpty());
    }
}

TEST(SetNotation, CutsPastedLinesAtSemicolonsButNotInsideANote)
{
    const auto parts = splitSets(u"42.5x12; 12 ;; 11-1 \"tired; slept badly");
    ASSERT_EQ(parts.size(), 3U);
    EXPECT_EQ(parts[0], u"42.5x12");
    EXPECT_EQ(parts[1], u"12");
    EXPECT_EQ(parts[2], u"11-1 \"tired; slept badly");
    EXPECT_TRUE(splitSets(u" ; ").empty());
    EXPECT_EQ(splitSets(u" 12; 11 \"tired  ").back(), u"11 \"tired  ") << "spaces at its end are the note's";
}

// Any set that the book would take.
class SetMaker {
public:
    explicit SetMaker(unsigned seed) : m_random(seed) {}

    SetEntry make()
    {
        SetEntry set;
        const int decimals = upTo(3);
        set.load = *Load::make(Decimal::fromScaled(upTo(decimals == 3 ? 1999999 : 1999), decimals),
                               chance() ? MassUnit::kg : MassUnit::lb);
        set.reps = upTo(200);
        if (chance()) set.off = upTo(set.reps);
        set.failed = chance();
        if (chance()) set.effort = effort();
        for (const auto& row : EnumText<Mark>::table)
            if (chance()) set.marks.set(row.value, upTo(set.reps));
        set.kind = EnumText<SetKind>::table[static_cast<std::size_t>(upTo(3))].value;
        if (chance()) set.loweringSeconds = Decimal::fromScaled(upTo(1200), 1);
        if (chance()) set.leanDegrees = Decimal::fromScaled(upTo(600), 1);
        if (chance()) set.note = note();
        return set;
    }
    bool chance() { return upTo(1) == 1; }

private:
    int upTo(int most) { return std::uniform_int_distribution(0, most)(m_random); }
    Effort effort()
    {
        if (chance()) return {Effort::Scale::Rir, Decimal::fromScaled(upTo(60), 1)};
        return {Effort::Scale::Rpe, Decimal::fromScaled(10 + upTo(90), 1)};
    }
    QString note()
    {
        const QString letters = QStringLiteral("aw -+@/\\n\n\";x12,éß漢 \t'=");
        QString text;
        for (int i = upTo(20); i >= 0; --i) text += letters[upTo(static_cast<int>(letters.size()) - 1)];
        return text;
    }
    std::mt19937 m_random;
};

TEST(SetNotation, WhatIsWrittenIsReadBackAsTheSameSet)
{
    SetMaker maker(20260302);
    int noted = 0;
    for (int i = 0; i < 20'000; ++i) {
        const SetEntry set = maker.make();
        noted += set.note.isEmpty() ? 0 : 1;
        const MassUnit usual = maker.chance() ? MassUnit::kg : MassUnit::lb;
        const SetKind kind = maker.chance() ? SetKind::Work : SetKind::Deload;
        const QString line = writeSet(set, usual, kind);
        const auto reading = readSet(line, {std::nullopt, usual, kind});
        ASSERT_TRUE(reading) << line.toStdString() << " -> " << reading.error().text.toStdString();
        ASSERT_EQ(*reading, set) << line.toStdString();
        ASSERT_EQ(writeSet(*reading, usual, kind), line);
    }
    EXPECT_GT(noted, 5000);
}

TEST(SetNotation, NeverReadsNorFailsOutsideTheLine)
{
    const QString letters = QStringLiteral("0123456789.,x×*kglbw-+@/\"\\ ?btsdla;rirleanwarmupdeloadtestwork\n\u0301");
    std::mt19937 random(7);
    std::uniform_int_distribution<int> letter(0, static_cast<int>(letters.size()) - 1);
    std::uniform_int_distribution<int> length(0, 24);
    int read = 0;
    for (int i = 0; i < 50'000; ++i) {
        QString line;
        for (int n = length(random); n > 0; --n) line += letters[letter(random)];
        const auto reading = readSet(line, kAfterForty);
        if (!reading) {
            ASSERT_GE(reading.error().at, 0) << line.toStdString();
            ASSERT_GE(reading.error().length, 0) << line.toStdString();
            ASSERT_LE(reading.error().at + reading.error().length, line.size()) << line.toStdString();
            ASSERT_FALSE(reading.error().text.isEmpty()) << line.toStdString();
            continue;
        }
        ++read;
        ASSERT_TRUE(validate(*reading).empty()) << line.toStdString();
        ASSERT_EQ(*readSet(writeSet(*reading, MassUnit::kg), {}), *reading) << line.toStdString();
    }
    EXPECT_GT(read, 500);
}

}  // namespace
}  // namespace steelyard
