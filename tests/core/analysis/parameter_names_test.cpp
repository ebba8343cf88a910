#include "core/analysis/parameter_names.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

TEST(ParameterNames, GiveBackEveryNumber)
{
    // A different value for each name: two names of one number, or a forgotten one, would show.
    auto numbers = numbersOf({});
    EXPECT_EQ(parametersFrom(numbers, 0), ReadingParameters{});
    for (auto& [name, value] : numbers) {
        const auto before = parametersFrom(numbers, 3);
        ASSERT_TRUE(before);
        const double was = value;
        const bool summed = name.startsWith(u"change_") || name.startsWith(u"start_r") || name.startsWith(u"start_f")
                            || name.startsWith(u"experience_prior");
        value = name == u"ages"          ? 16
                : name == u"young_weeks" ? 5
                                         : was * 0.999 + (was == 0 ? 0.1 : 0) + (summed ? was * (0.001 - 1e-8) : 0);
        const auto after = parametersFrom(numbers, 3);
        ASSERT_TRUE(after) << qPrintable(name);
        EXPECT_NE(*after, *before) << qPrintable(name);
        EXPECT_EQ(numbersOf(*after).at(name), value) << qPrintable(name);
        EXPECT_EQ(numbersOf(*after), numbers) << qPrintable(name);
    }
}

// Every double that a reading rests on has a name: 8 bytes each but for the integers and the version.
TEST(ParameterNames, AreAsManyAsThereAreNumbers)
{
    constexpr std::size_t kIntegers = 3;  // ages, young weeks, version
    constexpr std::size_t kInMemory = sizeof(ReadingParameters) / sizeof(double);
    EXPECT_EQ(numbersOf({}).size() + 1, kInMemory) << "of which " << kIntegers << " are integers, padded";
}

TEST(ParameterNames, LeaveUnknownOnesAloneAndTakeShippedNumbersForMissingOnes)
{
    const auto parameters =
        parametersFrom({{QStringLiteral("of_a_newer_program"), -4}, {QStringLiteral("day_noise"), 0.03}}, 7);
    ASSERT_TRUE(parameters);
    ReadingParameters expected;
    expected.filter.dayNoise = 0.03;
    expected.version = 7;
    EXPECT_EQ(*parameters, expected);
}

TEST(ParameterNames, RefuseWhatNoReadingCouldRestOn)
{
    const auto with = [](const char* name, double value) {
        return parametersFrom({{QString::fromLatin1(name), value}}, 1).has_value();
    };
    EXPECT_TRUE(with("week_memory", 0.5));
    for (const auto& [name, value] : std::initializer_list<std::pair<const char*, double>>{{"day_noise", 0},
                                                                                           {"day_noise", -0.02},
                                                                                           {"week_memory", 1},
                                                                                           {"off_share", 0},
                                                                                           {"ages", 9},
                                                                                           {"ages", 12},
                                                                                           {"ages", 400},
                                                                                           {"tail", 2},
                                                                                           {"young_weeks", 2.5},
                                                                                           {"elasticity_mean", 1e30},
                                                                                           {"change_flat_flat", 0.5},
                                                                                           {"start_rising", 0.9},
                                                                                           {"noise_scale_1", 0}})
        EXPECT_FALSE(with(name, value)) << name << ' ' << value;
}

}  // namespace
}  // namespace steelyard
