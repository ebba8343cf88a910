#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

LogBuilder withOne(double factor, int reps = 10)
{
    return LogBuilder().line(QStringLiteral("Arm curl")).exposures(10, kToday, 4, [&](int i) {
        if (i == 7) return MadeSet{.load = 40 * factor, .reps = reps, .off = 0, .rir = 1};
        return MadeSet{.load = 40 + testing_support::wobble(i), .reps = 10, .off = 0, .rir = 1};
    });
}

QString sentenceFor(const LogBuilder& builder)
{
    const auto flags = askRule(u"implausible_entry", builder.build(), kToday);
    return flags.empty() ? QString() : flags.front().sentence;
}

TEST(ImplausibleEntryRule, GuessesThatKilogramsAndPoundsWereMixedUp)
{
    EXPECT_TRUE(sentenceFor(withOne(2.2046)).contains(QStringLiteral("pounds")));
    EXPECT_TRUE(sentenceFor(withOne(1 / 2.2046)).contains(QStringLiteral("pounds")));
}

TEST(ImplausibleEntryRule, GuessesThatTheDecimalPointMoved)
{
    EXPECT_TRUE(sentenceFor(withOne(10)).contains(QStringLiteral("decimal point")));
    EXPECT_TRUE(sentenceFor(withOne(0.1)).contains(QStringLiteral("decimal point")));
}

TEST(ImplausibleEntryRule, NamesTheEntryOnly)
{
    const auto flags = askRule(u"implausible_entry", withOne(10).build(), kToday);
    ASSERT_EQ(flags.size(), 1u);
    ASSERT_EQ(flags[0].evidence.size(), 1u);
    EXPECT_EQ(flags[0].evidence[0].date, kToday.addDays(-8));
    EXPECT_NEAR(flags[0].evidence[0].value, 400.0, 1e-9);
}

TEST(ImplausibleEntryRule, SpeaksAboveItsRatioOnly)
{
    EXPECT_TRUE(sentenceFor(withOne(1.75)).isEmpty());
    EXPECT_FALSE(sentenceFor(withOne(1.85)).isEmpty());
}

TEST(ImplausibleEntryRule, SpeaksOfRepetitionsThatCantBe)
{
    EXPECT_TRUE(sentenceFor(withOne(1, 24)).isEmpty());
    EXPECT_FALSE(sentenceFor(withOne(1, 25)).isEmpty());
}

TEST(ImplausibleEntryRule, LeavesALightDayOfManyRepetitionsAlone)
{
    EXPECT_TRUE(sentenceFor(withOne(0.5, 20)).isEmpty());
    EXPECT_FALSE(sentenceFor(withOne(0.5, 10)).isEmpty());
}

// One session of ten as typed, among sessions of about `load` x `reps`.
QString sentenceAmong(double load, int reps, const Load& typed, int typedReps)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Arm curl")).exposures(10, kToday, 4, [&](int i) {
        return MadeSet{.load = load + testing_support::wobble(i), .reps = reps, .off = 0, .rir = 1};
    });
    AthleteLog log = builder.build();
    SetEntry& set = log.lines.front().exposures[7].sets.front().set;
    set.load = typed;
    set.reps = typedReps;
    const auto flags = askRule(u"implausible_entry", log, kToday);
    return flags.empty() ? QString() : flags.front().sentence;
}

Load kilograms(const char* amount)
{
    return *Load::parse(std::string_view(amount), MassUnit::kg);
}

Load pounds(const char* amount)
{
    return *Load::parse(std::string_view(amount), MassUnit::lb);
}

#define EXPECT_SAYS(sentence, part) EXPECT_TRUE((sentence).contains(QStringLiteral(part))) << qPrintable(sentence)

TEST(ImplausibleEntryRule, SuggestsTheSameNumberInTheOtherUnit)
{
    EXPECT_SAYS(sentenceAmong(45, 10, kilograms("99"), 10),
                "99 lb would fit: perhaps kilograms and pounds were mixed up");
    EXPECT_SAYS(sentenceAmong(45, 10, pounds("45"), 10), "45 kg would fit: perhaps kilograms and pounds were mixed up");
}

TEST(ImplausibleEntryRule, TakesAFewPercentForTheSameFactor)
{
    EXPECT_SAYS(sentenceAmong(45, 10, kilograms("104"), 10), "104 lb would fit");                     // 47.2 kg
    EXPECT_FALSE(sentenceAmong(45, 10, kilograms("118"), 10).contains(QStringLiteral("would fit")));  // 53.5 kg
}

TEST(ImplausibleEntryRule, SuggestsWhatWasTurnedIntoTheOtherUnitOnceTooOften)
{
    EXPECT_SAYS(sentenceAmong(45, 10, kilograms("20.4"), 10), "about 45 kg would fit: perhaps it was turned");
    EXPECT_SAYS(sentenceAmong(45, 10, pounds("218.3"), 10), "about 99 lb would fit: perhaps it was turned");
}

TEST(ImplausibleEntryRule, SuggestsWhereTheDecimalPointBelongs)
{
    EXPECT_SAYS(sentenceAmong(42.5, 10, kilograms("425"), 10),
                "42.5 kg would fit: perhaps the decimal point was moved");
    EXPECT_SAYS(sentenceAmong(42.5, 10, kilograms("4.25"), 10),
                "42.5 kg would fit: perhaps the decimal point was moved");
}

TEST(ImplausibleEntryRule, SuggestsTheNumberWithoutTheDigitThatWasTypedTwice)
{
    EXPECT_SAYS(sentenceAmong(45, 10, kilograms("455"), 10), "45 kg × 10 would fit: perhaps two digits");
    EXPECT_SAYS(sentenceAmong(40, 10, kilograms("440"), 10), "40 kg × 10 would fit: perhaps two digits");
    EXPECT_SAYS(sentenceAmong(40, 9, kilograms("40"), 99), "40 kg × 9 would fit: perhaps two digits");
}

TEST(ImplausibleEntryRule, SuggestsThatLoadAndRepetitionsChangedPlaces)
{
    EXPECT_SAYS(sentenceAmong(40, 10, kilograms("10"), 40),
                "40 kg × 10 would fit: perhaps load and repetitions changed");
    // A light day on purpose has other numbers.
    EXPECT_TRUE(sentenceAmong(40, 10, kilograms("20"), 25).isEmpty());
}

TEST(ImplausibleEntryRule, SuggestsNothingWhereNothingFits)
{
    const QString sentence = sentenceAmong(40, 10, kilograms("75"), 10);
    EXPECT_SAYS(sentence, "perhaps a slip");
    EXPECT_FALSE(sentence.contains(QStringLiteral("would fit")));
}

#undef EXPECT_SAYS

TEST(ImplausibleEntryRule, IsSilentWithoutNeighboursAndWithoutData)
{
    const LogBuilder few = LogBuilder().line(QStringLiteral("Row")).exposures(3, kToday, 4, [](int i) {
        return MadeSet{.load = i == 1 ? 400.0 : 40.0, .reps = 10};
    });
    EXPECT_TRUE(sentenceFor(few).isEmpty());
    EXPECT_TRUE(sentenceFor(LogBuilder()).isEmpty());
}

}  // namespace
}  // namespace steelyard
