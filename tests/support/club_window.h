// A window on a sample club, with the rules and readings that a coach gets.
//
//   class Spine : public testing_support::ClubWindow { protected: Spine() : ClubWindow({.athletes = 5, .years = 1, .seed = 3}) {} };
#pragma once

#include "core/book/roster_review.h"
#include "core/exchange/book_dump.h"
#include "core/exchange/new_book.h"
#include "core/samples/sample_club.h"
#include "tests/support/scripted_prompter.h"
#include "tests/support/temp_dir.h"
#include "ui/shell/book_view.h"
#include "ui/shell/main_window.h"
#include "ui/shell/roster_pane.h"

#include <QtCore/QSettings>
#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace steelyard::testing_support {

class ClubWindow : public testing::Test {
protected:
    explicit ClubWindow(SampleClubOptions options) : m_options(options) {}

    void SetUp() override
    {
        auto book = newBook(path, clock);
        ASSERT_TRUE(book) << qPrintable(book.error().what);
        m_options.lastDay = clock.today();
        const auto filled = fillSampleClub(**book, m_options, {});
        ASSERT_TRUE(filled) << qPrintable(filled.error().what);
        book->reset();
        ASSERT_TRUE(window.openBook(path));
        window.show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
        settle();
    }
    void settle()
    {
        ASSERT_TRUE(QTest::qWaitFor([&] { return window.isSettled(); }, 60000));
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        QWidget* target = window.focusWidget() ? window.focusWidget() : &window;
        QTest::keyClick(target, key, modifiers);
    }
    // All that the book holds, to compare with.
    [[nodiscard]] QByteArray content() const { return dumpContent(window.book()->database()).value_or(QByteArray()); }
    [[nodiscard]] Id<Athlete> chosen() const { return *window.view()->roster()->chosen(); }
    [[nodiscard]] const AthleteReview& chosenReview() const { return *window.reviews()->find(chosen()); }

    TempDir dir;
    QString path = dir.path(u"club.steelyard");
    FixedClock clock{QDate(2027, 3, 1)};
    ScriptedPrompter prompter;
    QSettings settings{dir.path(u"settings.ini"), QSettings::IniFormat};
    MainWindow window{MainServices{.reviewer = reviewRoster}, prompter, clock, settings};

private:
    SampleClubOptions m_options;
};

}  // namespace steelyard::testing_support
