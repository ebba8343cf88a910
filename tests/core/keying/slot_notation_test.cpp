#include "core/keying/slot_notation.h"

#include <gtest/gtest.h>

#include <random>

namespace steelyard {
namespace {

Slot bare()
{
    Slot slot{.variant = Id<Variant>(1), .grip = Id<Grip>(1), .standard = Id<RepStandard>(1)};
    slot.sets = 4;
    slot.band = {5, 8};
    return slot;
}

Slot read(QStringView line)
{
    const auto reading = readDose(line, bare(), MassUnit::kg);
    if (!reading) qFatal("%s", qPrintable(reading.error().text));
    return *reading;
}

TEST(DoseLine, SaysSetsBandReserveLoadRestAndNote)
{
    const Slot slot = read(u"3x8-12 rir2 42.5 120s \"elbows still");
    EXPECT_EQ(slot.sets, 3);
    EXPECT_EQ(slot.band, (RepBand{8, 12}));
    EXPECT_EQ(slot.plannedRir, Decimal(2));
    EXPECT_EQ(slot.load, Load::parseWithUnit(u"42.5 kg"));
    EXPECT_EQ(slot.restSeconds, 120);
    EXPECT_EQ(slot.note, QStringLiteral("elbows still"));
}

TEST(DoseLine, KeepsSetsAndBandThatItDoesNotName)
{
    EXPECT_EQ(read(u"3x").band, (RepBand{5, 8}));
    EXPECT_EQ(read(u"3x").sets, 3);
    EXPECT_EQ(read(u"10-15").sets, 4);
    EXPECT_EQ(read(u"3x10").band, (RepBand{10, 10}));
    EXPECT_EQ(read(u""), bare());
}

TEST(DoseLine, TakesAnyOrderAndEitherUnit)
{
    const Slot slot = read(u"2min 95lb RIR1,5 3×6–8");
    EXPECT_EQ(slot.load, Load::parseWithUnit(u"95 lb"));
    EXPECT_EQ(slot.restSeconds, 120);
    EXPECT_EQ(slot.plannedRir, Decimal::parse(u"1.5"));
    EXPECT_EQ(slot.band, (RepBand{6, 8}));
}

TEST(DoseLine, SaysWhereItCannotBeRead)
{
    const auto wrong = readDose(u"3x8 heavy", bare(), MassUnit::kg);
    ASSERT_FALSE(wrong);
    EXPECT_EQ(wrong.error().at, 4);
    EXPECT_EQ(wrong.error().length, 5);
    const auto twice = readDose(u"3x8 40 45", bare(), MassUnit::kg);
    ASSERT_FALSE(twice);
    EXPECT_EQ(twice.error().at, 7);
    EXPECT_FALSE(readDose(u"3x8 9999kg", bare(), MassUnit::kg));
}

TEST(DoseLine, ReadsBackWhatItWrites)
{
    std::mt19937 random(7);
    const auto upTo = [&](int most) { return std::uniform_int_distribution(0, most)(random); };
    for (int i = 0; i < 500; ++i) {
        Slot slot = bare();
        slot.sets = 1 + upTo(29);
        slot.band.low = 1 + upTo(20);
        slot.band.high = slot.band.low + upTo(5);
        if (upTo(1)) slot.plannedRir = Decimal::fromScaled(upTo(50), 1);
        if (upTo(1))
            slot.load = Load::make(Decimal::fromScaled(upTo(9999), upTo(2)), upTo(1) ? MassUnit::kg : MassUnit::lb);
        if (upTo(1)) slot.restSeconds = upTo(900);
        if (upTo(1)) slot.note = QStringLiteral("slow\\ down\n\"now\"");
        const QString line = writeDose(slot, MassUnit::kg);
        const auto back = readDose(line, bare(), MassUnit::kg);
        ASSERT_TRUE(back) << qPrintable(line);
        EXPECT_EQ(*back, slot) << qPrintable(line);
    }
}

}  // namespace
}  // namespace steelyard
