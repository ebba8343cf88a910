// A row that is half typed when the screen locks is there when it opens again.
#include "tests/support/club_window.h"
#include "ui/pages/floor/keying_edit.h"
#include "ui/shell/screen_lock.h"

#include <QtWidgets/QLineEdit>

#include <algorithm>

namespace steelyard {
namespace {

const QString kOpens = QStringLiteral("twelve crooked gherkins");

class LockedKeying : public testing_support::ClubWindow {
protected:
    LockedKeying() : ClubWindow({.athletes = 4, .years = 1, .seed = 3}) {}

    void lockAndOpen()
    {
        window.screenLock().lock();
        ASSERT_TRUE(window.screenLock().isLocked());
        auto* field = window.findChild<QWidget*>(QStringLiteral("lockCover"))
                          ->findChild<QLineEdit*>(QStringLiteral("passphrase"));
        field->setText(kOpens);
        QTest::keyClick(field, Qt::Key_Return);
        ASSERT_TRUE(QTest::qWaitFor([&] { return !window.screenLock().isLocked(); }));
    }
};

TEST_F(LockedKeying, KeepsAHalfTypedRowAndTheBookAsItWas)
{
    window.screenLock().kept().set(*LockSecret::of(*Passphrase::make(kOpens)));
    window.view()->showPlace(QStringLiteral("floor"));
    settle();
    window.perform(QStringLiteral("floor.key"));
    settle();
    const auto rows = window.view()->currentPage()->findChildren<KeyingEdit*>();
    const auto shown = std::ranges::find_if(rows, [](const KeyingEdit* each) { return each->isVisible(); });
    ASSERT_NE(shown, rows.end());
    KeyingEdit* row = *shown;
    row->setFocus(Qt::OtherFocusReason);
    const QByteArray before = content();
    QTest::keyClicks(row, QStringLiteral("41.5x"));
    ASSERT_EQ(row->text(), QStringLiteral("41.5x"));
    lockAndOpen();
    EXPECT_EQ(row->text(), QStringLiteral("41.5x"));
    EXPECT_EQ(window.focusWidget(), row);
    EXPECT_EQ(content(), before);
}

}  // namespace
}  // namespace steelyard
