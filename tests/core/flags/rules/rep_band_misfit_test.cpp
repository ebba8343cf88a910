#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::askRule;
using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kToday(2026, 6, 1);

struct RatedSession {
    int reps = 10;
    int felt = 5;
    QString gaveOut = QStringLiteral("target");
};

LogBuilder rated(const std::vector<RatedSession>& sessions)
{
    LogBuilder builder = LogBuilder().line(QStringLiteral("Arm curl"));
    const auto count = static_cast<int>(sessions.size());
    for (int i = 0; i < count; ++i) {
        const RatedSession& one = sessions[static_cast<std::size_t>(i)];
        builder.exposure(kToday.addDays(-5 * (count - 1 - i)),
                         {MadeSet{.load = 30, .reps = one.reps, .off = 0, .rir = 1}});
        builder.felt(one.felt, {}, one.felt - 1, one.gaveOut);
    }
    return builder;
}

const QString kOther = QStringLiteral("forearm_flexors");
const RatedSession kManyFeltLittle{24, 3, kOther};
const RatedSession kFewFeltWell{10, 7};

TEST(RepBandMisfitRule, SpeaksWhenAnotherBandDidBetter)
{
    const auto flags = askRule(u"rep_band_misfit",
                               rated({kFewFeltWell, kFewFeltWell, kFewFeltWell, kFewFeltWell, kManyFeltLittle,
                                      kManyFeltLittle, kManyFeltLittle, kManyFeltLittle})
                                   .build(),
                               kToday);
    ASSERT_EQ(flags.size(), 1u);
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("more than 20"))) << flags[0].sentence.toStdString();
    EXPECT_TRUE(flags[0].sentence.contains(QStringLiteral("7–12"))) << flags[0].sentence.toStdString();
    EXPECT_EQ(flags[0].actions.front(), QStringLiteral("change_band"));
    EXPECT_EQ(flags[0].evidence.size(), 4u);
}

TEST(RepBandMisfitRule, IsSilentInTheBetterBand)
{
    EXPECT_TRUE(askRule(u"rep_band_misfit",
                        rated({kManyFeltLittle, kManyFeltLittle, kManyFeltLittle, kManyFeltLittle, kFewFeltWell,
                               kFewFeltWell, kFewFeltWell, kFewFeltWell})
                            .build(),
                        kToday)
                    .empty());
}

TEST(RepBandMisfitRule, IsSilentWhenTheOtherIsBetterInOneRespectAndWorseInTheOther)
{
    const RatedSession now{24, 3};            // felt little, but the target gives out
    const RatedSession other{10, 7, kOther};  // felt well, but something else gives out
    EXPECT_TRUE(
        askRule(u"rep_band_misfit", rated({other, other, other, other, now, now, now, now}).build(), kToday).empty());
}

TEST(RepBandMisfitRule, IsSilentWithFewRatingsOrWhenBandsChangeFromSessionToSession)
{
    EXPECT_TRUE(askRule(u"rep_band_misfit",
                        rated({kFewFeltWell, kFewFeltWell, kFewFeltWell, kManyFeltLittle, kManyFeltLittle,
                               kManyFeltLittle, kManyFeltLittle})
                            .build(),
                        kToday)
                    .empty());
    EXPECT_TRUE(askRule(u"rep_band_misfit",
                        rated({kFewFeltWell, kManyFeltLittle, kFewFeltWell, kManyFeltLittle, kFewFeltWell,
                               kManyFeltLittle, kFewFeltWell, kManyFeltLittle})
                            .build(),
                        kToday)
                    .empty());
}

TEST(RepBandMisfitRule, FollowsItsSettings)
{
    const RatedSession now{24, 5};
    const RatedSession other{10, 7};
    const auto log = rated({other, other, other, other, now, now, now, now});
    EXPECT_EQ(askRule(u"rep_band_misfit", log.build(), kToday).size(), 1u);
    const RuleSettings calmer{{{QStringLiteral("rep_band_misfit"), QStringLiteral("felt_more")}, 3}};
    EXPECT_TRUE(askRule(u"rep_band_misfit", log.build(), kToday, calmer).empty());
}

}  // namespace
}  // namespace steelyard
