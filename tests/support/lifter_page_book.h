// The Lifter page on a book with one lifter, as the tests of the page and of its views use it.
//
//   struct MyCase : testing_support::LifterPageBook { ... };
//   MyCase c;  c.club.addLine(...);  c.open();  c.settled();
#pragma once

#include "tests/support/lifter_book.h"
#include "tests/support/scripted_prompter.h"
#include "ui/charts/progress_chart.h"
#include "ui/pages/lifter/lifter_page.h"
#include "ui/shell/review_store.h"

#include <QtTest/QTest>
#include <QtWidgets/QLabel>

#include <algorithm>

namespace steelyard::testing_support {

struct LifterPageBook {
    LifterBook club{QDate(2026, 11, 20)};
    JobRunner jobs;
    ScriptedPrompter prompter;
    ReviewStore reviews{*club.book, club.clock, jobs,
                        [](const RosterReviewRequest&, const Progress&) { return std::vector<AthleteReview>(); }};
    std::unique_ptr<LifterPage> page;
    ChangeHub::Subscription subscription;

    void open()
    {
        page = std::make_unique<LifterPage>(UiContext{*club.book, reviews, prompter, club.clock, jobs});
        page->resize(1106, 700);
        page->show();
        subscription = club.book->hub().subscribe([this](const Changes& changes) { page->bookChanged(changes); });
        page->showAthlete(club.athlete);
    }
    void close()
    {
        subscription = {};
        page.reset();
    }
    [[nodiscard]] ProgressChart& chart() const { return *page->findChild<ProgressChart*>(); }
    [[nodiscard]] bool says(const QString& text) const
    {
        const auto labels = page->findChildren<QLabel*>();
        return std::ranges::any_of(labels,
                                   [&](QLabel* label) { return label->isVisible() && label->text().contains(text); });
    }
    [[nodiscard]] bool settled() const
    {
        return QTest::qWaitFor([this] { return jobs.running().empty(); }, 20000);
    }
};

}  // namespace steelyard::testing_support
