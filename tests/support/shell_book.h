// A small book on disk and a window on it. Reviews are made by hand: one stalled flag a lifter, open until a decision on
// it is stored, so that the window is tested without the rules.
#pragma once

#include "core/book/book.h"
#include "core/edits/edits.h"
#include "tests/support/scripted_prompter.h"
#include "ui/shell/book_view.h"
#include "ui/shell/main_window.h"

#include <QtCore/QSettings>
#include <QtCore/QTemporaryDir>
#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace steelyard {

inline Result<std::vector<AthleteReview>> reviewByHand(const RosterReviewRequest& request, const Progress&)
{
    STEELYARD_TRY(const auto database, Database::openReader(request.bookPath));
    STEELYARD_TRY(const auto athletes, AthleteRepository(*database).all());
    std::vector<AthleteReview> reviews;
    for (const auto& athlete : athletes) {
        if (!request.only.empty() && !std::ranges::count(request.only, athlete.id)) continue;
        const Flag flag{.rule = QStringLiteral("stalled"),
                        .severity = Severity::Medium,
                        .sentence = QStringLiteral("No gain in eight weeks."),
                        .evidence = {{request.asOf.addDays(-7), QStringLiteral("counted repetitions at 40 kg"), 8}},
                        .actions = {QStringLiteral("hold_load"), QStringLiteral("change_grip")}};
        AthleteReview review{.athlete = athlete.id, .name = athlete.value.name, .group = athlete.value.group};
        STEELYARD_TRY(const auto decisions, DecisionRepository(*database).of(athlete.id));
        if (decisions.empty()) {
            review.flags = {flag};
            review.attention = 3;
        } else {
            review.answered = {{flag, decisions.back().value}};
        }
        reviews.push_back(std::move(review));
    }
    return reviews;
}

class ShellBook {
public:
    explicit ShellBook(const QStringList& names)
    {
        auto book = Book::create(path(), clock);
        EXPECT_TRUE(book.has_value());
        for (const QString& name : names) {
            Athlete athlete;
            athlete.name = name;
            athlete.consents = {HealthConsent::given(QDate(2020, 1, 1))};
            EXPECT_TRUE((*book)->history().perform(addAthlete(athlete)).has_value());
        }
    }
    [[nodiscard]] QString path() const { return folder.filePath(QStringLiteral("club.steelyard")); }
    [[nodiscard]] std::unique_ptr<MainWindow> open()
    {
        auto window = std::make_unique<MainWindow>(MainServices{.reviewer = reviewByHand}, prompter, clock, settings);
        EXPECT_TRUE(window->openBook(path()));
        window->show();
        EXPECT_TRUE(QTest::qWaitForWindowActive(window.get()));
        EXPECT_TRUE(QTest::qWaitFor([&] { return window->isSettled(); }));
        return window;
    }

    QTemporaryDir folder;
    FixedClock clock{QDate(2027, 3, 1)};
    ScriptedPrompter prompter;
    QSettings settings{folder.filePath(QStringLiteral("settings.ini")), QSettings::IniFormat};
};

}  // namespace steelyard
