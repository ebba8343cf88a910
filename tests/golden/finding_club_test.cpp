// What a whole review finds in a club whose findings are known: nothing is missed, and nothing is found beyond.
#include "tests/golden/finding_club.h"

#include "core/analysis/regime_engine.h"
#include "core/flags/athlete_review.h"
#include "core/flags/registry.h"

#include <gtest/gtest.h>

#include <set>

namespace steelyard {
namespace {

using testing_support::ClubMember;
using testing_support::Finding;
using testing_support::findingClub;
using testing_support::kClubDay;

std::vector<Finding> findingsOf(const AthleteLog& log)
{
    std::vector<Finding> found;
    for (const Flag& flag : reviewAthlete(log, RegimeEngine(), {}, kClubDay).flags) {
        const auto line = std::ranges::find_if(log.lines, [&](const LineRecord& one) { return one.id == flag.line; });
        found.push_back({flag.rule, line == log.lines.end() ? QString() : line->exercise.value.name, flag.severity});
    }
    return found;
}

std::string inWords(const std::vector<Finding>& findings)
{
    QStringList words;  // in any order of the findings the same
    for (const Finding& one : findings)
        words += QStringLiteral("%1 (%2, %3)").arg(one.rule, one.exercise, toText(one.severity));
    words.sort();
    return words.join(QStringLiteral("; ")).toStdString();
}

TEST(FindingClub, HasExactlyItsExpectedFindings)
{
    for (const ClubMember& member : findingClub()) {
        EXPECT_EQ(inWords(findingsOf(member.log)), inWords(member.expected))
            << member.log.athlete.value.name.toStdString();
    }
}

TEST(FindingClub, HasALifterForEveryRule)
{
    std::set<QString> expected;
    for (const ClubMember& member : findingClub())
        for (const Finding& one : member.expected) expected.insert(one.rule);
    std::set<QString> rules;
    for (const FlagRule* rule : flagRules()) rules.insert(rule->id());
    EXPECT_EQ(expected, rules);
}

// What a dismissal is compared with: every finding that isn't about single events says how bad it is, and how much worse
// would matter.
TEST(FindingClub, MeasuresEveryFindingThatNoSingleEventMakes)
{
    for (const ClubMember& member : findingClub())
        for (const Flag& flag : reviewAthlete(member.log, RegimeEngine(), {}, kClubDay).flags) {
            EXPECT_EQ(flag.measure.has_value(), !findRule(flag.rule)->isAboutEvents()) << flag.rule.toStdString();
            if (!flag.measure) continue;
            EXPECT_GT(flag.measure->value, 0) << flag.rule.toStdString();
            EXPECT_GT(flag.measure->step, 0) << flag.rule.toStdString();
        }
}

}  // namespace
}  // namespace steelyard
