// A window on a sample club whose lifters trained up to the day before the one that is keyed, with what keying tests press and
// look at. The lifter in front is the first of the day, and the questions about the day after are skipped.
//
//   class KeyingViews : public testing_support::KeyingClub { protected: KeyingViews() : KeyingClub({.athletes = 4, .years = 1}) {} };
#pragma once

#include "core/exchange/book_dump.h"
#include "core/storage/session_reader.h"
#include "tests/support/club_window.h"
#include "ui/pages/floor/floor_page.h"
#include "ui/pages/floor/keying_block.h"
#include "ui/pages/floor/keying_edit.h"
#include "ui/pages/floor/keying_view.h"
#include "ui/pages/floor/rating_row.h"
#include "ui/widgets/elided_label.h"

#include <QtWidgets/QDateEdit>
#include <QtWidgets/QLabel>

namespace steelyard::testing_support {

class KeyingClub : public ClubWindow {
protected:
    explicit KeyingClub(SampleClubOptions options) : ClubWindow(options) {}

    [[nodiscard]] FloorPage& page() const { return *window.view()->findChild<FloorPage*>(); }
    [[nodiscard]] KeyingView& view() const { return *page().keying(); }
    // The log of the sample club ends on the clock's day; this one has no sets yet.
    [[nodiscard]] QDate day() const { return m_day; }

    void showFloor(QDate date)
    {
        m_day = date;
        window.perform(QStringLiteral("view.floor"));
        page().findChild<QDateEdit*>()->setDate(date);
        ASSERT_TRUE(QTest::qWaitFor([&] { return page().isSettled(); }, 30000));
    }
    // The first day from tomorrow on that somebody is expected on.
    void startKeying()
    {
        QDate date = clock.today().addDays(1);
        showFloor(date);
        for (int i = 0; i < 7 && !page().canPerform(QStringLiteral("floor.print")); ++i)
            showFloor(date = date.addDays(1));
        press(Qt::Key_K);
        ASSERT_TRUE(page().isKeying());
        if (view().desk()->dayAfter()) type(QStringLiteral("."));
        ASSERT_EQ(view().currentPlace(), (KeyingPlace{0, 0}));
        ASSERT_TRUE(view().desk()->row({0, 0}).planned);
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        ++keys;
        ClubWindow::press(key, modifiers);
    }
    void type(const QString& text)
    {
        for (const QChar letter : text) {
            ++keys;
            QTest::keyClick(window.focusWidget() ? window.focusWidget() : &window, letter.toLatin1());
        }
    }
    void keyFirstExercise()
    {
        for (std::size_t row = view().desk()->exercise(0).rows.size(); row > 0; --row) press(Qt::Key_Return);
    }
    [[nodiscard]] KeyingEdit* edit() const { return qobject_cast<KeyingEdit*>(window.focusWidget()); }
    // Beside the row where the cursor is.
    [[nodiscard]] QString words() const { return edit()->parentWidget()->findChild<ElidedLabel*>()->text(); }
    [[nodiscard]] SessionRecord record() const
    {
        return *readSession(window.book()->database(), view().desk()->sheet().athlete, m_day);
    }
    // Of the first exercise.
    [[nodiscard]] ExerciseRating rating() const { return view().desk()->exercise(0).rating; }
    [[nodiscard]] QByteArray content() const { return *dumpContent(window.book()->database()); }
    [[nodiscard]] bool isSaid(const QString& text) const
    {
        const auto labels = page().findChildren<QLabel*>();
        return std::ranges::any_of(
            labels, [&](const QLabel* label) { return label->isVisible() && label->text().contains(text); });
    }

    int keys = 0;

private:
    QDate m_day;
};

}  // namespace steelyard::testing_support
