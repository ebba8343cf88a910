// A session is keyed from its sheet under a minute, and a whole day of sixty lifters in one sitting; by keys alone.
#include "core/edits/edits.h"
#include "tests/support/keying_club.h"

#include <QtCore/QElapsedTimer>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QListWidget>

namespace steelyard {
namespace {

constexpr double kKeysASecond = 5;  // of somebody who reads from paper

// What was written on the sheet: as planned, or something else, and how often it was watched.
struct Written {
    QString line;  // empty: as planned
    bool watched = false;
};

class KeyingWalk : public testing_support::KeyingClub {
protected:
    KeyingWalk() : KeyingClub({.athletes = 3, .years = 1, .seed = 5, .exercisesPerSession = 5}) {}

    void keyRow(const Written& written)
    {
        type(written.line);
        press(Qt::Key_Return, written.watched ? Qt::ControlModifier : Qt::NoModifier);
    }
};

// Five exercises of four sets: one in four other than planned, every exercise rated, one joint, one muscle that isn't the target.
TEST_F(KeyingWalk, AWholeSessionWithRatingsTakesLessThanAMinute)
{
    const QByteArray before = content();
    startKeying();
    ASSERT_EQ(view().desk()->sheet().exercises.size(), 5U);
    keys = 1;  // K
    QElapsedTimer clockwork;
    clockwork.start();
    std::vector<SetEntry> expected;
    for (std::size_t exercise = 0; exercise < 5; ++exercise) {
        while (view().desk()->exercise(exercise).rows.size() < 4) press(Qt::Key_M, Qt::ControlModifier);
        while (view().currentPlace()->row > 0) press(Qt::Key_Up);
        for (std::size_t row = 0; row < 4; ++row) {
            ASSERT_EQ(view().currentPlace(), (KeyingPlace{exercise, row}));
            SetEntry set = *view().desk()->row({exercise, row}).planned;
            Written written{{}, row == 0};
            if (written.watched) set.off = 0;
            if (row == 3) {
                written.line = QStringLiteral("%1-1s @9").arg(set.reps - 1);
                set.reps -= 1;
                set.off = 1;
                set.marks.set(Mark::Swing, 1);
                set.effort = Effort{Effort::Scale::Rpe, Decimal(9)};
            }
            expected.push_back(set);
            keyRow(written);
        }
        type(exercise == 2 ? QStringLiteral("867calv") : QStringLiteral("867t"));
        type(exercise == 1 ? QStringLiteral("4.") : QStringLiteral("."));
    }
    const double machine = static_cast<double>(clockwork.elapsed()) / 1000;
    const auto stored = record();
    ASSERT_EQ(stored.sets.size(), expected.size());
    for (const SetEntry& set : expected)
        EXPECT_TRUE(std::ranges::any_of(stored.sets, [&](const RecordedSet& one) { return one.set == set; }))
            << set.number;
    ASSERT_EQ(stored.ratings.size(), 5U);
    for (std::size_t exercise = 0; exercise < 5; ++exercise) {
        const auto& rating = view().desk()->exercise(exercise).rating;
        EXPECT_EQ(rating.tension, 8);
        EXPECT_EQ(rating.burn, 6);
        EXPECT_EQ(rating.pump, 7);
        EXPECT_EQ(rating.gaveOut, exercise == 2 ? QStringLiteral("calves") : QStringLiteral("target"));
        EXPECT_EQ(rating.discomfort[static_cast<std::size_t>(Joint::Elbow)],
                  exercise == 1 ? std::optional(4) : std::nullopt);
    }
    std::printf(
        "A session of 5 exercises with 4 sets and ratings: %d keys, %.0f s at %.0f keys a second; the program took "
        "%.1f s\n",
        keys, keys / kKeysASecond, kKeysASecond, machine);
    EXPECT_LT(keys / kKeysASecond, 60);
    EXPECT_LT(machine / keys, 1 / kKeysASecond) << "slower than the keys come";
    while (window.book()->history().canUndo()) ASSERT_TRUE(window.book()->history().undo());
    EXPECT_EQ(content(), before);
    EXPECT_EQ(view().desk()->sheet().storedSets(), 0) << "and the screen shows it";
}

class KeyingDay : public testing_support::KeyingClub {
protected:
    KeyingDay() : KeyingClub({.athletes = 60, .years = 1, .seed = 9}) {}
};

TEST_F(KeyingDay, SixtyLiftersAreKeyedInOneSitting)
{
    const QDate date = clock.today().addDays(1);
    showFloor(date);
    page().findChild<QCheckBox*>()->setChecked(true);
    ASSERT_TRUE(QTest::qWaitFor([&] { return page().isSettled(); }, 60000));
    page().findChild<QListWidget*>(QStringLiteral("dayLifters"))->setCurrentRow(0);
    press(Qt::Key_K);
    keys = 1;
    QElapsedTimer clockwork;
    clockwork.start();
    std::map<Id<Athlete>, int> expected;
    for (int lifter = 0; lifter < 60; ++lifter) {
        ASSERT_TRUE(page().isKeying());
        const KeyingSheet sheet = view().desk()->sheet();
        ASSERT_FALSE(expected.contains(sheet.athlete)) << lifter;
        if (view().desk()->dayAfter()) type(QStringLiteral("."));
        for (const KeyingExercise& exercise : sheet.exercises) {
            for (const KeyingRow& row : exercise.rows) {
                if (!row.planned) type(QStringLiteral("20x10"));
                press(Qt::Key_Return);
            }
            type(QStringLiteral("768t."));
        }
        EXPECT_EQ(view().desk()->sheet().storedSets(), sheet.rowCount())
            << qPrintable(view().desk()->lifter().log.athlete.value.name);
        expected[sheet.athlete] = sheet.rowCount();
        press(Qt::Key_Return);  // the end: on to the next one
    }
    const double machine = static_cast<double>(clockwork.elapsed()) / 1000;
    EXPECT_TRUE(QTest::qWaitFor([&] { return !page().isKeying(); })) << "after the last one come the sheets again";
    EXPECT_EQ(*countSetsOn(window.book()->database(), date), expected);
    std::printf("A day of 60 lifters: %d keys, %.0f minutes at %.0f keys a second; the program took %.1f s\n", keys,
                keys / kKeysASecond / 60, kKeysASecond, machine);
    EXPECT_LT(machine / keys, 1 / kKeysASecond);
    EXPECT_EQ(prompter.errors, QStringList());
}

}  // namespace
}  // namespace steelyard
