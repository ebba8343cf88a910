// A lifter with an arm curl in two grips and a trial of them, on the Lifter page. The clock stands on Friday 20 November 2026.
//
//   TrialPageBook c;
//   c.store(c.design(4, QDate(2026, 9, 7)));      // Mondays and Thursdays
//   c.hold({.better = 1, .by = 2}, 8);            // eight of its sessions: arm B feels two points better
//   c.openTrials();
#pragma once

#include "core/edits/trial_edits.h"
#include "core/trials/trial_outcomes.h"
#include "core/trials/trial_schedule.h"
#include "tests/support/lifter_page_book.h"
#include "ui/pages/lifter/trial_form.h"
#include "ui/pages/lifter/trial_panel.h"
#include "ui/pages/lifter/trials_view.h"

namespace steelyard::testing_support {

struct TrialPageBook : LifterPageBook {
    // How the sessions that are held feel.
    struct Feeling {
        std::size_t better = 1;  // this arm
        int by = 0;              // points of tension
        int elbow = -1;          // discomfort of the second arm; below 0: nobody asked
    };

    TrialPageBook() : plain(club.addLine(QStringLiteral("Arm curl"), 0)), neutral(plain)
    {
        auto tx = must(Transaction::begin(club.book->database()));
        neutral.grip = must(LibraryRepository(club.book->database())
                                .insert(tx, Grip{QStringLiteral("neutral"), HandOrientation::Neutral, {}, {}}));
        if (const auto done = tx.commit(); !done) qFatal("%s", qPrintable(done.error().what));
        QDate day(2026, 7, 6);
        for (int i = 0; i < 12; ++i, day = day.addDays(i % 2 ? 3 : 4)) club.addSession(plain, day, i);
    }

    [[nodiscard]] TrialArm arm(const LiftLine& line, int runIn = 0) const
    {
        return {.variant = line.variant, .grip = line.grip, .standard = line.standard, .band = {8, 12}, .runIn = runIn};
    }
    [[nodiscard]] Trial design(int blocks, QDate from, int runIn = 0) const
    {
        Trial trial{.athlete = *club.athlete};
        trial.question = QStringLiteral("Arm curl: usual or neutral?");
        trial.designedOn = from;
        trial.arms = {arm(plain, runIn), arm(neutral, runIn)};
        trial.outcomes = defaultOutcomes();
        trial.blocks = blocks;
        trial.seed = 7;
        trial.days = must(drawDays(trial, {.from = from, .weekdays = {1, 4}}));
        return trial;
    }
    void store(const Trial& trial) { (void)must(club.book->history().perform(designTrial(trial, {}))); }
    [[nodiscard]] Row<Trial> stored() const { return must(club.book->trials().of(*club.athlete)).back(); }

    // The first `count` sessions, as drawn.
    void hold(const Feeling& feeling, std::size_t count)
    {
        const Trial trial = stored().value;
        for (std::size_t i = 0; i < count; ++i)
            holdDay(trial.days[i].date, trial.days[i].arm, feeling, static_cast<int>(i));
    }
    void holdDay(QDate date, std::size_t arm, const Feeling& feeling, int index)
    {
        const LiftLine& line = arm == 0 ? plain : neutral;
        club.addSession(line, date, 4);
        ExerciseRating rating;
        rating.tension = 5 + index % 2 + (arm == feeling.better ? feeling.by : 0);
        rating.burn = 5 + (index / 2) % 2;
        rating.pump = 5 + (index / 3) % 2;
        rating.gaveOut = QStringLiteral("target");
        auto& elbow = rating.discomfort[static_cast<std::size_t>(Joint::Elbow)];
        elbow = feeling.elbow >= 0 && arm == 1 ? feeling.elbow : 0;
        rating.nextSoreness = 3;
        rating.nextWeakness = 2;
        (void)must(club.book->history().perform(rateExercise(line, date, rating)));
    }

    [[nodiscard]] TrialsView& view() const { return *page->findChild<TrialsView*>(); }
    [[nodiscard]] TrialPanel& panel() const { return *view().panel(); }
    [[nodiscard]] TrialForm& form() const { return *view().form(); }
    void openTrials()
    {
        open();
        if (!settled()) qFatal("the record was not read");
        page->perform(QStringLiteral("lifter.trials"));
        if (!settled()) qFatal("the trials were not read");
    }
    // With what follows from it.
    void perform(const char* action)
    {
        page->perform(QString::fromLatin1(action));
        if (!settled()) qFatal("something still runs");
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        QWidget* target = page->focusWidget() ? page->focusWidget() : page.get();
        QTest::keyClick(target, key, modifiers);
    }
    // Into the line that asks, and Enter.
    void answer(const QString& text)
    {
        QWidget* line = page->focusWidget();
        QTest::keyClick(line, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClick(line, Qt::Key_Delete);
        QTest::keyClicks(line, text);
        QTest::keyClick(line, Qt::Key_Return);
        if (!settled()) qFatal("something still runs");
    }

    LiftLine plain;
    LiftLine neutral;
};

}  // namespace steelyard::testing_support
