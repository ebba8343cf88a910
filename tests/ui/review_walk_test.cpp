// A whole review of sixty lifters on the real window, keys only: to an empty queue, and back by undo.
#include "core/exchange/book_dump.h"
#include "tests/support/club_window.h"

#include <QtWidgets/QLabel>

namespace steelyard {
namespace {

constexpr int kLifters = 60;

class ReviewWalk : public testing_support::ClubWindow {
protected:
    ReviewWalk() : ClubWindow({.athletes = kLifters, .years = 1, .seed = 5}) {}
    // A key, and all that follows from it.
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        ClubWindow::press(key, modifiers);
        settle();
    }
    [[nodiscard]] int finished() const
    {
        return static_cast<int>(std::ranges::count_if(window.reviews()->reviews(), &AthleteReview::finished));
    }
    [[nodiscard]] bool isSaid(const QString& words) const
    {
        const auto labels = window.view()->findChildren<QLabel*>();
        return std::ranges::any_of(labels, [&](const QLabel* label) { return label->text().contains(words); });
    }
    [[nodiscard]] int decisionsInTheBook() const
    {
        int count = 0;
        for (const AthleteReview& review : window.reviews()->reviews())
            count += static_cast<int>(window.book()->decisions().of(review.athlete)->size());
        return count;
    }
    [[nodiscard]] QByteArray content() const { return *dumpContent(window.book()->database()); }
};

TEST_F(ReviewWalk, EndsWithAnEmptyQueueAndUndoBringsTheBookBack)
{
    const QByteArray before = content();
    const int decisionsBefore = decisionsInTheBook();
    int edits = 0;

    // The worst lifter: every flag answered, which finishes them.
    const Id<Athlete> worst = chosen();
    ASSERT_FALSE(chosenReview().flags.empty());
    for (std::size_t left = chosenReview().flags.size(); left > 0; --left) {
        press(Qt::Key_D);
        QTest::keyClicks(window.focusWidget(), QStringLiteral("spoken about it"));
        press(Qt::Key_Return);
        ++edits;
        ASSERT_EQ(chosenReview().flags.size(), left - 1);
    }
    EXPECT_TRUE(chosenReview().finished);
    EXPECT_EQ(finished(), 1);

    // The others: F, which goes on by itself, and never to somebody who is finished.
    press(Qt::Key_N);
    EXPECT_NE(chosen(), worst);
    for (int lifter = 1; lifter < kLifters; ++lifter) {
        ASSERT_FALSE(chosenReview().finished);
        press(Qt::Key_F);
        ++edits;
        ASSERT_EQ(finished(), lifter + 1);
        EXPECT_EQ(isSaid(QStringLiteral("%1 of 60 finished, about").arg(lifter + 1)),
                  lifter >= 3 && lifter + 1 < kLifters);
    }
    EXPECT_TRUE(isSaid(QStringLiteral("Everybody is finished")));
    EXPECT_EQ(prompter.errors, QStringList());

    // The decisions are in the book, one a key that stored.
    EXPECT_EQ(decisionsInTheBook() - decisionsBefore, edits);

    for (int i = 0; i < edits; ++i) press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(content(), before);
    EXPECT_EQ(finished(), 0);
}

TEST_F(ReviewWalk, GoesOnWhereTheLastSittingEnded)
{
    press(Qt::Key_F);
    press(Qt::Key_F);
    const Id<Athlete> third = chosen();
    ASSERT_TRUE(window.openBook(path));
    settle();
    EXPECT_EQ(finished(), 2);
    EXPECT_EQ(chosen(), third);
    // N passes by those who are finished, also from the end of the list.
    for (int i = 1; i < kLifters - 2; ++i) press(Qt::Key_N);
    press(Qt::Key_N);
    EXPECT_EQ(chosen(), third);
}

}  // namespace
}  // namespace steelyard
