#include "ui/format/plan_words.h"

#include "core/flags/actions.h"
#include "tests/support/sheet_samples.h"
#include "ui/print/sheet_words.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::kg;
using testing_support::SheetSample;

// The plural forms come with the translation that the program loads, which tests do without.
class PlanWords : public testing::Test {
protected:
    SheetSample sample;
    const QDate monday{2027, 3, 8};
    [[nodiscard]] Slot curl() const
    {
        const LiftLine& lift = sample.log.lines[sample.curl].line;
        return {.variant = lift.variant, .grip = lift.grip, .standard = lift.standard, .band = {8, 12}};
    }
};

TEST_F(PlanWords, ADifferenceNamesWhatDiffersAndNothingElse)
{
    Slot less = curl();
    less.sets = 2;
    EXPECT_EQ(format::slotDifference({monday, curl(), monday, less}, sample.library),
              (format::BeforeAfter{QStringLiteral("3 set(s) of 8–12"), QStringLiteral("2 set(s) of 8–12")}));
    Slot held = curl();
    held.load = kg(u"42.5");
    EXPECT_EQ(format::slotDifference({monday, curl(), monday, held}, sample.library),
              (format::BeforeAfter{QStringLiteral("load from the record"), QStringLiteral("42.5\u00a0kg")}));
    EXPECT_EQ(format::slotDifference({monday, curl(), monday.addDays(3), curl()}, sample.library),
              (format::BeforeAfter{QStringLiteral("Mon 8 Mar"), QStringLiteral("Thu 11 Mar")}));
    Slot one = curl();
    one.sets = 1;
    one.plannedRir = Decimal(4);
    EXPECT_EQ(format::slotDifference({monday, curl(), monday, one}, sample.library),
              (format::BeforeAfter{QStringLiteral("3 set(s) of 8–12 · RIR open"),
                                   QStringLiteral("1 set(s) of 8–12 · RIR 4")}));
}

TEST_F(PlanWords, EveryActionThatMayStandOnASheetSaysWhatToDo)
{
    for (const QString& word : actionWords()) {
        const bool onSheet = placeOf(word) != ActionPlace::Desk && word != QStringLiteral("refer_out");
        EXPECT_EQ(!actionNote(word).isEmpty(), onSheet) << qPrintable(word);
    }
}

TEST_F(PlanWords, ANoteToHoldNamesTheLoadThatTheRecordHas)
{
    sample.done(sample.curl, monday.addDays(-7), {{u"40", 10}});
    const auto& lines = sample.log.lines;
    const auto note = [&](std::size_t line) {
        return format::actionNote({sample.log, sample.library, lines[line].line, QStringLiteral("hold_load"), monday},
                                  {});
    };
    EXPECT_EQ(note(sample.curl), QStringLiteral("Stay at 40\u00a0kg."));
    EXPECT_EQ(note(sample.squat), QStringLiteral("Stay at the load of last time."));
}

TEST_F(PlanWords, ANoteOnPaperHasItsDayAndSendingSomebodyOnAlwaysItsCaution)
{
    EXPECT_EQ(coachNoteWords({QStringLiteral("drop_set"), QStringLiteral("Two sets today."), monday, {}}),
              QStringLiteral("Coach, 8 Mar 2027: Two sets today."));
    EXPECT_TRUE(coachNoteWords({QStringLiteral("film_check"), {}, monday, {}}).contains(QStringLiteral("Film one")));
    const QString referred = coachNoteWords(
        {QStringLiteral("refer_out"), QStringLiteral("Left elbow."), monday, QStringLiteral("Pulldown")});
    EXPECT_TRUE(referred.startsWith(QStringLiteral("Coach, 8 Mar 2027: Pulldown: Left elbow. Please let a licensed")));
}

}  // namespace
}  // namespace steelyard
