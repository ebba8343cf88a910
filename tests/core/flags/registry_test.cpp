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
    for (const char* id :
         {"stalled", "slipping", "mixed_record", "unwatched", "line_switching", "unsupported_jump", "joint_discomfort",
          "effort_unknown", "missed_sessions", "implausible_entry", "whole_lifter_drop", "film_check", "wrong_limiter",
          "rep_band_misfit", "weak_stimulus", "effort_low", "spillover_fatigue", "deload_due", "sets_out_of_band"})
        EXPECT_TRUE(ids.contains(QString::fromLatin1(id))) << id;
    EXPECT_EQ(findRule(u"of_a_newer_program"), nullptr);
}

TEST(FlagRegistry, EveryRuleExplainsItselfAndItsThresholds)
{
    for (const FlagRule* rule : flagRules()) {
        EXPECT_FALSE(rule->title().isEmpty() || rule->explanation().isEmpty()) << qPrintable(rule->id());
        QSet<QString> names;
        for (const RuleParameter& parameter : rule->parameters()) {
            EXPECT_FALSE(parameter.label.isEmpty() || parameter.unit.isEmpty() || parameter.sourceOfDefault.isEmpty())
                << qPrintable(parameter.name);
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

// A record in which most rules find something, of a lifter who counts in pounds.
testing_support::LogBuilder troubledPoundLifter(QDate day)
{
    using testing_support::MadeSet;
    testing_support::LogBuilder log;
    log.unit(MassUnit::lb).daysPerWeek(3);
    log.line(QStringLiteral("Arm curl")).exposures(24, day, 4, [](int i) {
        return MadeSet{.load = 40 + testing_support::wobble(i), .reps = 10, .off = 0, .rir = 1};
    });
    log.discomfort(Joint::Elbow, 8);
    log.line(QStringLiteral("Row")).exposures(20, day.addDays(-1), 4, [](int i) {
        return MadeSet{.load = 70 - 0.8 * i + testing_support::wobble(i), .reps = 10, .off = {}, .rir = 1};
    });
    log.line(QStringLiteral("Press")).exposures(20, day.addDays(-2), 4, [](int i) {
        return MadeSet{.load = i == 17 ? 400.0 : i == 19 ? 60.0 : 40.0, .reps = 10, .off = 0, .rir = 1};
    });
    return log;
}

TEST(FlagRegistry, SentencesFollowTheWordingAndTheLiftersUnit)
{
    const QDate day(2026, 6, 1);
    const auto log = troubledPoundLifter(day);
    const Wording german{
        .locale = QLocale(QLocale::German), .datePattern = QStringLiteral("dd.MM.yyyy"), .minus = u'-', .unit = {}};
    const Wording kilograms{.unit = MassUnit::kg};
    static const QRegularExpression iso(QStringLiteral(R"(\d{4}-\d\d-\d\d)"));
    static const QRegularExpression kilo(QStringLiteral(R"(\bkg\b)"));
    int rules = 0;
    int days = 0;
    int pounds = 0;
    for (const FlagRule* rule : flagRules()) {
        const auto shown = testing_support::askRule(rule->id(), log.build(), day, {}, german);
        const auto plain = testing_support::askRule(rule->id(), log.build(), day, {}, kilograms);
        ASSERT_EQ(shown.size(), plain.size()) << qPrintable(rule->id());
        rules += !shown.empty();
        for (std::size_t f = 0; f < shown.size(); ++f) {
            EXPECT_FALSE(shown[f].sentence.contains(iso)) << qPrintable(shown[f].sentence);
            days += plain[f].sentence.contains(iso);
            for (std::size_t e = 0; e < shown[f].evidence.size(); ++e) {
                EXPECT_FALSE(shown[f].evidence[e].what.contains(kilo)) << qPrintable(shown[f].evidence[e].what);
                if (!plain[f].evidence[e].what.contains(kilo)) continue;
                EXPECT_NEAR(shown[f].evidence[e].value * 0.45359237, plain[f].evidence[e].value, 1e-9);
                ++pounds;
            }
        }
    }
    EXPECT_GE(rules, 5);
    EXPECT_GE(days, 3);
    EXPECT_GE(pounds, 8);
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
