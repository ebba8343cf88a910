#include "core/planning/progression_registry.h"

#include <QtCore/QRegularExpression>

#include <gtest/gtest.h>

#include <set>

namespace steelyard {
namespace {

TEST(ProgressionRegistry, EveryRuleDescribesItselfAndItsNumbers)
{
    static const QRegularExpression kWord(QStringLiteral("^[a-z]+(_[a-z]+)*$"));
    std::set<QString> ids;
    for (const ProgressionRule* rule : progressionRules()) {
        EXPECT_TRUE(kWord.match(rule->id()).hasMatch()) << rule->id().toStdString();
        EXPECT_TRUE(ids.insert(rule->id()).second) << rule->id().toStdString();
        EXPECT_FALSE(rule->title().isEmpty());
        EXPECT_GT(rule->description().size(), rule->title().size());
        std::set<QString> names;
        for (const RuleParameter& parameter : rule->parameters()) {
            EXPECT_TRUE(names.insert(parameter.name).second) << parameter.name.toStdString();
            EXPECT_FALSE(parameter.label.isEmpty());
            EXPECT_FALSE(parameter.sourceOfDefault.isEmpty());
            EXPECT_LE(parameter.low, parameter.defaultValue);
            EXPECT_GE(parameter.high, parameter.defaultValue);
        }
    }
    EXPECT_EQ(ids, (std::set<QString>{QStringLiteral("band_then_load"), QStringLiteral("load_by_step"),
                                      QStringLiteral("effort_ramp"), QStringLiteral("hold")}));
}

TEST(ProgressionRegistry, ASlotWithoutARuleAndOneOfANewerProgramGoByBandThenLoad)
{
    EXPECT_EQ(progressionFor({}).id(), QStringLiteral("band_then_load"));
    EXPECT_EQ(progressionFor(u"from_the_future").id(), QStringLiteral("band_then_load"));
    EXPECT_EQ(progressionFor(u"hold").id(), QStringLiteral("hold"));
    EXPECT_EQ(findProgression(u"from_the_future"), nullptr);
}

TEST(ProgressionRegistry, WithoutASetNothingComesNext)
{
    for (const ProgressionRule* rule : progressionRules())
        EXPECT_FALSE(rule->next({{}, {8, 12}, 2.0, 3, {}}, RuleParameters(*rule, {}))) << rule->id().toStdString();
}

}  // namespace
}  // namespace steelyard
