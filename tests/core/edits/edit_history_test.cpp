#include "core/edits/edit_history.h"

#include "core/edits/body_edits.h"
#include "core/edits/edits.h"
#include "core/edits/keying_edits.h"
#include "core/edits/repetition_edits.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using test::rawDump;
using test::TempBook;
using test::workSet;

Measurement measured(BodyPlace place)
{
    return {QDate(2026, 1, 9), place, Decimal::parse(u"84.50").value(), TapeUnit::cm};
}

// A book with one logged set, so that there is something to change.
struct BookWithASet {
    TempBook book;
    std::optional<Id<SetEntry>> set;
    std::optional<Id<LiftLine>> line;
    std::optional<Id<Block>> block;

    BookWithASet()
    {
        auto tx = must(Transaction::begin(book->database()));
        const auto logbook = book->logbook();
        line = must(logbook.line(tx, book.line()));
        const auto session = must(logbook.session(tx, book.athlete(), QDate(2026, 2, 3)));
        set = must(logbook.insert(tx, book.athlete(), {session, *line, 1, workSet("40", 10, 1)}));
        must(book->athletes().putBodyMass(tx, book.athlete(),
                                          {QDate(2026, 1, 9), Load::parseWithUnit(u"70.9 kg").value()}));
        must(book->athletes().putMeasurement(tx, book.athlete(), measured(BodyPlace::Waist)));
        block = must(book->blocks().insert(tx, blockOf(QStringLiteral("Winter"))));
        must(tx.commit());
    }

    Block blockOf(const QString& name)
    {
        Block made{.athlete = book.athlete()};
        made.name = name;
        made.start = QDate(2026, 3, 2);
        made.weeks = {{WeekKind::Normal, {{QDate(2026, 3, 2), QString(), {}}}}};
        return made;
    }
};

std::vector<Repetition> threeTapped()
{
    std::vector<Repetition> list;
    for (const int number : {1, 2, 3}) list.push_back({.number = number, .source = RepetitionSource::Tapped});
    list[1].marks.set(Mark::Swing);
    list[2].partWay = true;
    return list;
}

struct EditCase {
    const char* name;
    std::unique_ptr<Edit> (*make)(BookWithASet&);
};

// A block that runs when the decision is made, with a slot changed by it.
std::unique_ptr<Edit> landingEdit(BookWithASet& b)
{
    Decision decision{.athlete = b.book.athlete()};
    decision.line = b.line;
    decision.rule = QStringLiteral("stalled");
    decision.madeOn = QDate(2026, 3, 1);
    decision.action = QStringLiteral("drop_set");
    Block changed = b.blockOf(QStringLiteral("Winter"));
    const LiftLine& line = b.book.line();
    changed.weeks[0].days[0].slotList.push_back(
        {.variant = line.variant, .grip = line.grip, .standard = line.standard, .sets = 2});
    return makeDecision(decision, QStringLiteral("stalled"), BlockChange{*b.block, changed});
}

std::unique_ptr<Edit> decisionEdit(BookWithASet& b)
{
    Decision decision{.athlete = b.book.athlete()};
    decision.line = b.line;
    decision.rule = QStringLiteral("stalled");
    decision.kind = DecisionKind::Dismiss;
    decision.madeOn = QDate(2026, 3, 2);
    decision.reason = QStringLiteral("new job, little sleep");
    return makeDecision(decision, QStringLiteral("stalled"));
}

std::unique_ptr<Edit> ratingEdit(BookWithASet& b)
{
    ExerciseRating rating;
    rating.pump = 8;
    return rateExercise(b.book.line(), QDate(2026, 2, 3), rating);
}

std::unique_ptr<Edit> profileEdit(BookWithASet& b)
{
    Athlete athlete = must(b.book->athletes().find(b.book.athlete())).value;
    athlete.name = QStringLiteral("Ada Beam");
    athlete.archived = true;
    return changeAthlete(b.book.athlete(), athlete);
}

const EditCase kEdits[] = {
    {"addAthlete",
     [](BookWithASet&) {
         Athlete athlete;
         athlete.name = QStringLiteral("Basil Notch");
         return addAthlete(athlete);
     }},
    {"changeAthlete", &profileEdit},
    {"recordBodyMass",
     [](BookWithASet& b) {
         return recordBodyMass(b.book.athlete(), {QDate(2026, 2, 1), Load::parseWithUnit(u"71.3 kg").value()});
     }},
    {"correctBodyMass",
     [](BookWithASet& b) {
         return correctBodyMass(b.book.athlete(), {QDate(2026, 2, 1), Load::parseWithUnit(u"71.3 kg").value()},
                                QDate(2026, 3, 2), QDate(2026, 1, 9));
     }},
    {"removeBodyMass", [](BookWithASet& b) { return removeBodyMass(b.book.athlete(), QDate(2026, 1, 9)); }},
    {"recordMeasurement",
     [](BookWithASet& b) {
         return recordMeasurement(b.book.athlete(), measured(BodyPlace::Hips), QDate(2026, 3, 2),
                                  MeasuredAt{QDate(2026, 1, 9), BodyPlace::Waist});
     }},
    {"removeMeasurement",
     [](BookWithASet& b) {
         return removeMeasurement(b.book.athlete(), {QDate(2026, 1, 9), BodyPlace::Waist});
     }},
    {"makeDecision", &decisionEdit},
    {"makeDecisionThatLands", &landingEdit},
    {"addSet", [](BookWithASet& b) { return addSet(b.book.line(), QDate(2026, 2, 5), workSet("42.5", 9)); }},
    {"addSetToASession", [](BookWithASet& b) { return addSet(b.book.line(), QDate(2026, 2, 3), workSet("42.5", 9)); }},
    {"keySetBeforeOthers",
     [](BookWithASet& b) { return keySet(b.book.line(), QDate(2026, 2, 3), workSet("42.5", 9), QStringLiteral("k")); }},
    {"changeSet", [](BookWithASet& b) { return changeSet(*b.set, workSet("45", 8, 0), b.book.clock()); }},
    {"removeSet", [](BookWithASet& b) { return removeSet(*b.set, b.book.clock()); }},
    {"recordRepetitions",
     [](BookWithASet& b) {
         return recordRepetitions({{*b.set, threeTapped()}}, b.book.clock());
     }},
    {"addCountedSet",
     [](BookWithASet& b) {
         return addCountedSet(b.book.line(), QDate(2026, 2, 5), workSet("42.5", 0), threeTapped(),
                              QStringLiteral("counted"));
     }},
    {"rateExercise", &ratingEdit},
    {"addBlock", [](BookWithASet& b) { return addBlock(b.blockOf(QStringLiteral("Spring"))); }},
    {"changeBlock", [](BookWithASet& b) { return changeBlock(*b.block, b.blockOf(QStringLiteral("Late winter"))); }},
    {"removeBlock", [](BookWithASet& b) { return removeBlock(*b.block, b.book.athlete()); }},
    {"addTemplate", [](BookWithASet&) { return addTemplate({.name = QStringLiteral("Three days"), .weeks = {{}}}); }},
    {"setRuleThreshold",
     [](BookWithASet&) { return setRuleThreshold(QStringLiteral("stalled"), QStringLiteral("weeks"), 8); }},
};

class EveryEdit : public testing::TestWithParam<EditCase> {};

TEST_P(EveryEdit, IsTakenBackAndForthExactly)
{
    BookWithASet b;
    const QByteArray before = rawDump(b.book->database());
    ASSERT_TRUE(must(b.book->history().perform(GetParam().make(b))));
    const QByteArray after = rawDump(b.book->database());
    EXPECT_NE(after, before);
    EXPECT_FALSE(b.book->history().undoLabel().isEmpty());
    must(b.book->history().undo());
    EXPECT_EQ(rawDump(b.book->database()), before);
    must(b.book->history().redo());
    EXPECT_EQ(rawDump(b.book->database()), after);
    must(b.book->history().undo());
    EXPECT_EQ(rawDump(b.book->database()), before);
}

TEST_P(EveryEdit, SaysWhatItTouchedOnceItIsDone)
{
    BookWithASet b;
    int told = 0;
    const auto subscription = b.book->hub().subscribe([&](const Changes& changes) {
        EXPECT_FALSE(changes.none());
        ++told;
    });
    must(b.book->history().perform(GetParam().make(b)));
    EXPECT_EQ(told, 1);
    must(b.book->history().undo());
    EXPECT_EQ(told, 2);
}

INSTANTIATE_TEST_SUITE_P(All, EveryEdit, testing::ValuesIn(kEdits),
                         [](const auto& test) { return std::string(test.param.name); });

TEST(EditHistory, ForgetsAnEditThatChangedNothing)
{
    BookWithASet b;
    EXPECT_FALSE(must(b.book->history().perform(changeSet(*b.set, workSet("40", 10, 1), b.book.clock()))));
    EXPECT_FALSE(b.book->history().canUndo());
}

TEST(EditHistory, LeavesTheBookAloneWhenAnEditIsRefused)
{
    BookWithASet b;
    const QByteArray before = rawDump(b.book->database());
    EXPECT_FALSE(b.book->history().perform(changeSet(*b.set, workSet("40", 10, 11), b.book.clock())));
    EXPECT_EQ(rawDump(b.book->database()), before);
    EXPECT_FALSE(b.book->history().canUndo());
}

TEST(EditHistory, ADecisionAndWhereItLandsAreOneStep)
{
    BookWithASet b;
    const auto blocks = must(b.book->blocks().of(b.book.athlete()));
    must(b.book->history().perform(landingEdit(b)));
    EXPECT_EQ(must(b.book->blocks().of(b.book.athlete()))[0].value.weeks[0].days[0].slotList.size(), 1U);
    EXPECT_EQ(must(b.book->decisions().of(b.book.athlete())).size(), 1U);
    must(b.book->history().undo());
    EXPECT_EQ(must(b.book->blocks().of(b.book.athlete())), blocks);
    EXPECT_TRUE(must(b.book->decisions().of(b.book.athlete())).empty());
}

TEST(EditHistory, ADecisionWhosePlanIsRefusedIsNotStoredEither)
{
    BookWithASet b;
    Block broken = b.blockOf(QString());
    Decision decision{.athlete = b.book.athlete()};
    decision.rule = QStringLiteral("stalled");
    decision.madeOn = QDate(2026, 3, 1);
    EXPECT_FALSE(b.book->history().perform(makeDecision(decision, QStringLiteral("x"), BlockChange{*b.block, broken})));
    EXPECT_TRUE(must(b.book->decisions().of(b.book.athlete())).empty());
}

TEST(EditHistory, RefusesToUndoWhatWasChangedBehindItsBack)
{
    BookWithASet b;
    must(b.book->history().perform(changeSet(*b.set, workSet("45", 8, 0), b.book.clock())));
    must(b.book->database().execute("UPDATE set_entry SET reps = 3"));
    const QByteArray before = rawDump(b.book->database());
    const auto undone = b.book->history().undo();
    ASSERT_FALSE(undone);
    EXPECT_EQ(undone.error().code, ErrorCode::Conflict);
    EXPECT_EQ(rawDump(b.book->database()), before);
}

TEST(EditHistory, ANewEditEndsWhatCouldBeRedone)
{
    BookWithASet b;
    must(b.book->history().perform(decisionEdit(b)));
    must(b.book->history().undo());
    EXPECT_TRUE(b.book->history().canRedo());
    must(b.book->history().perform(ratingEdit(b)));
    EXPECT_FALSE(b.book->history().canRedo());
}

TEST(ChangeHub, StopsTellingOneThatLeft)
{
    ChangeHub hub;
    int told = 0;
    Changes changes;
    changes.roster = true;
    {
        const auto subscription = hub.subscribe([&](const Changes&) { ++told; });
        hub.publish(changes);
        hub.publish(Changes{});
    }
    hub.publish(changes);
    EXPECT_EQ(told, 1);
}

}  // namespace
}  // namespace steelyard
