#include "core/flags/registry.h"

#include "core/flags/actions.h"
#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

#include <QtCore/QRegularExpression>
#include <QtCore/QSet>

namespace steelyard {
namespace {

TEST(FlagRegistry, HasEveryRuleOnceUnderALowerCaseId)
{
    const QRegularExpression form(QStringLiteral("^[a-z]+(_[a-z]+)*$"));
    QSet<QString> ids;
    for (const FlagRule* rule : flagRules()) {
        EXPECT_TRUE(form.match(rule->id()).hasMatch()) << qPrintable(rule->id());
        EXPECT_EQ(findRule(rule->id()), rule);
        ids.insert(rule->id());
    }
    EXPECT_EQ(ids.size(), static_cast<qsizetype>(flagRules().size()));
    for (const char* id : {"stalled", "slipping", "mixed_record", "unwatched", "line_switching", "unsupported_jump",
                           "joint_discomfort", "effort_unknown", "missed_sessions", "implausible_entry"})
        EXPECT_TRUE(ids.contains(QString::fromLatin1(id))) << id;
    EXPECT_EQ(findRule(u"of_a_newer_program"), nullptr);
}

TEST(FlagRegistry, EveryRuleExplainsItselfAndItsThresholds)
{
    for (const FlagRule* rule : flagRules()) {
        EXPECT_FALSE(rule->title().isEmpty() || rule->explanation().isEmpty()) << qPrintable(rule->id());
        QSet<QString> names;
        for (const RuleParameter& parameter : rule->parameters()) {
            EXPECT_FALSE(parameter.unit.isEmpty() || parameter.sourceOfDefault.isEmpty()) << qPrintable(parameter.name);
            EXPECT_LE(parameter.low, parameter.defaultValue) << qPrintable(parameter.name);
            EXPECT_GE(parameter.high, parameter.defaultValue) << qPrintable(parameter.name);
            EXPECT_FALSE(names.contains(parameter.name)) << qPrintable(parameter.name);
            names.insert(parameter.name);
        }
    }
}

TEST(FlagRegistry, NoRuleFindsAnythingInAnEmptyRecord)
{
    const QDate day(2026, 6, 1);
    const testing_support::LogBuilder nothing;
    const auto lineOnly = testing_support::LogBuilder().line(QStringLiteral("Row"));
    for (const FlagRule* rule : flagRules()) {
        EXPECT_TRUE(testing_support::askRule(rule->id(), nothing.build(), day).empty()) << qPrintable(rule->id());
        EXPECT_TRUE(testing_support::askRule(rule->id(), lineOnly.build(), day).empty()) << qPrintable(rule->id());
    }
}

TEST(RuleParameters, TakeTheCoachsValueWithinTheRange)
{
    const FlagRule& rule = *findRule(u"unwatched");
    const auto sessions = [&](double set) {
        return RuleParameters(rule, {{{QStringLiteral("unwatched"), QStringLiteral("sessions")}, set}})
            .whole(u"sessions");
    };
    EXPECT_EQ(RuleParameters(rule, {}).whole(u"sessions"), 4);
    EXPECT_EQ(sessions(7), 7);
    EXPECT_EQ(sessions(1000), 30);
    EXPECT_EQ(sessions(-1), 2);
}

TEST(FlagActions, HaveALabelForEveryWord)
{
    const QStringList words = actionWords();
    ASSERT_FALSE(words.isEmpty());
    for (const QString& word : words) EXPECT_NE(actionLabel(word), word);
    EXPECT_EQ(QSet<QString>(words.begin(), words.end()).size(), words.size());
    EXPECT_EQ(actionLabel(u"of_a_newer_program"), QStringLiteral("of_a_newer_program"));
}

}  // namespace
}  // namespace steelyard
