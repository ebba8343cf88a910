#include "core/sheets/coach_notes.h"

#include "tests/support/sheet_samples.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::SheetSample;

const QDate kMonday(2027, 3, 8);

// Curl and squat were done last Monday; the coach decides two days later.
class CoachNotes : public testing::Test {
protected:
    SheetSample sample;
    const QDate decidedOn = kMonday.addDays(-5);

    CoachNotes()
    {
        sample.done(sample.curl, kMonday.addDays(-7), {{u"40", 10}});
        sample.done(sample.squat, kMonday.addDays(-7), {{u"60", 10}});
    }
    Decision& decide(std::optional<std::size_t> line, const QString& action, const QString& reason = {})
    {
        Decision decision{.athlete = sample.log.athlete.id};
        if (line) decision.line = sample.log.lines[*line].id;
        decision.rule = QStringLiteral("stalled");
        decision.madeOn = decidedOn;
        decision.action = action;
        decision.reason = reason;
        sample.log.decisions.push_back({Id<Decision>(std::ssize(sample.log.decisions) + 1), {}, decision});
        return sample.log.decisions.back().value;
    }
    [[nodiscard]] SessionSheet sheetOn(QDate date) const
    {
        return buildSessionSheet(sample.log, sample.library, sample.gym, date).value();
    }
};

TEST_F(CoachNotes, StandWithTheExerciseUntilItWasTrained)
{
    decide(sample.curl, QStringLiteral("film_check"));
    const SessionSheet next = sheetOn(kMonday);
    ASSERT_EQ(next.exercises.size(), 2U);
    EXPECT_EQ(next.exercises[0].coachNotes,
              (std::vector<CoachNote>{{QStringLiteral("film_check"), {}, decidedOn, {}}}));
    EXPECT_TRUE(next.exercises[1].coachNotes.empty());
    EXPECT_TRUE(next.coachNotes.empty());
    sample.done(sample.squat, kMonday, {{u"60", 10}});
    sample.done(sample.curl, kMonday, {{u"40", 11}});
    EXPECT_TRUE(sheetOn(kMonday.addDays(7)).exercises.at(0).coachNotes.empty());
    EXPECT_EQ(sheetOn(kMonday).exercises.at(0).coachNotes.size(), 1U) << "printed again it is the same sheet";
}

TEST_F(CoachNotes, ADecisionOnTheEveningOfASessionIsForTheNextOne)
{
    decide(sample.curl, QStringLiteral("film_check")).madeOn = kMonday.addDays(-7);
    EXPECT_EQ(sheetOn(kMonday).exercises.at(0).coachNotes.size(), 1U);
}

TEST_F(CoachNotes, AChangeThatLandedInThePlanNeedsNoneAndOneThatDidNotSaysWhatToDo)
{
    decide(sample.curl, QStringLiteral("drop_set"));
    EXPECT_TRUE(sheetOn(kMonday).exercises.at(0).coachNotes.empty());
    decide(sample.squat, QStringLiteral("drop_set"), QStringLiteral("One set less than last time."));
    EXPECT_EQ(sheetOn(kMonday).exercises.at(1).coachNotes.at(0).words, QStringLiteral("One set less than last time."));
}

TEST_F(CoachNotes, WhatIsDoneAtTheDeskIsNotPrinted)
{
    decide(sample.curl, QStringLiteral("contact_lifter"), QStringLiteral("call on Friday"));
    decide(std::nullopt, QStringLiteral("correct_entry"));
    const SessionSheet sheet = sheetOn(kMonday);
    EXPECT_TRUE(sheet.exercises.at(0).coachNotes.empty());
    EXPECT_TRUE(sheet.coachNotes.empty());
}

TEST_F(CoachNotes, AboutTheWholeLifterTheyHeadTheSheetUntilAnySession)
{
    decide(std::nullopt, QStringLiteral("deload"), QStringLiteral("Half the sets."));
    EXPECT_EQ(sheetOn(kMonday).coachNotes.size(), 1U);
    EXPECT_TRUE(sheetOn(kMonday).exercises.at(0).coachNotes.empty());
    sample.done(sample.squat, kMonday.addDays(-2), {{u"60", 10}});
    EXPECT_TRUE(sheetOn(kMonday).coachNotes.empty());
}

TEST_F(CoachNotes, SendingSomebodyToAProfessionalHeadsTheSheetWhicheverLiftItIsAbout)
{
    decide(sample.pulldown, QStringLiteral("refer_out"));
    const SessionSheet sheet = sheetOn(kMonday);
    ASSERT_EQ(sheet.coachNotes.size(), 1U) << "the pulldown itself isn't on this sheet";
    EXPECT_EQ(sheet.coachNotes[0].about, QStringLiteral("Pulldown"));
}

TEST_F(CoachNotes, ANewerAnswerToTheSameFlagReplacesThem)
{
    decide(sample.curl, QStringLiteral("film_check"));
    Decision& dismissed = decide(sample.curl, {}, QStringLiteral("seen on film"));
    dismissed.kind = DecisionKind::Dismiss;
    dismissed.madeOn = decidedOn.addDays(1);
    EXPECT_TRUE(sheetOn(kMonday).exercises.at(0).coachNotes.empty());
}

TEST_F(CoachNotes, ADecisionIsNotKnownBeforeItsDay)
{
    decide(sample.curl, QStringLiteral("film_check")).madeOn = kMonday.addDays(1);
    EXPECT_TRUE(sheetOn(kMonday).exercises.at(0).coachNotes.empty());
}

}  // namespace
}  // namespace steelyard
