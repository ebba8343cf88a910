// The logbook on the real window, keys only: a session is found, a set changed and brought back, a line split in two with a
// preview, and all of it undone.
#include "core/exchange/book_dump.h"
#include "core/storage/athlete_log_reader.h"
#include "tests/support/club_window.h"
#include "tests/support/temp_book.h"
#include "ui/pages/lifter/logbook_bulk.h"
#include "ui/pages/lifter/logbook_session.h"

#include <QtWidgets/QComboBox>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QTableView>
#include <QtWidgets/QTableWidget>

namespace steelyard {
namespace {

using test::must;

class LogbookWalk : public testing_support::ClubWindow {
protected:
    LogbookWalk() : ClubWindow({.athletes = 3, .years = 1, .seed = 11}) {}
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        ClubWindow::press(key, modifiers);
        settle();
    }
    // Into whatever has the keyboard.
    void type(const QString& text) { QTest::keyClicks(window.focusWidget(), text); }
    [[nodiscard]] QByteArray dump() { return must(dumpContent(window.book()->database())); }
    [[nodiscard]] AthleteLog log()
    {
        return must(readAthleteLog(window.book()->database(), must(window.book()->library().read()), chosen()));
    }
    [[nodiscard]] LogbookSession& session() { return *window.findChild<LogbookSession*>(); }
    [[nodiscard]] QString typed()
    {
        const auto* table = session().table();
        return table->model()->index(table->currentIndex().row(), LogbookSetModel::Typed).data().toString();
    }
    // What is typed in place is taken a moment later.
    [[nodiscard]] bool becomes(const QString& text)
    {
        return QTest::qWaitFor([&] { return typed() == text && window.isSettled(); }, 20000);
    }
    void tabTo(const QString& name)
    {
        for (int i = 0; i < 12 && window.focusWidget()->accessibleName() != name
                        && window.focusWidget()->parentWidget()->accessibleName() != name;
             ++i)
            press(Qt::Key_Tab);
    }
};

TEST_F(LogbookWalk, FindsChangesBringsBackSplitsAndUndoes)
{
    press(Qt::Key_2, Qt::ControlModifier);
    const QByteArray before = dump();
    const std::size_t linesBefore = log().lines.size();
    press(Qt::Key_Slash);
    ASSERT_TRUE(qobject_cast<QLineEdit*>(window.focusWidget()));
    const QDate wanted = log().sessionDates[log().sessionDates.size() / 2];
    type(wanted.toString(Qt::ISODate));
    press(Qt::Key_Return);
    press(Qt::Key_Return);
    ASSERT_EQ(window.focusWidget(), session().table());
    const QString said = typed();
    press(Qt::Key_E);
    ASSERT_TRUE(session().isEditing());
    auto* line = qobject_cast<QLineEdit*>(window.focusWidget());
    ASSERT_TRUE(line);
    line->selectAll();
    type(QStringLiteral("33.25x7 w"));
    press(Qt::Key_Return);
    ASSERT_TRUE(becomes(QStringLiteral("33.25x7 w")));
    press(Qt::Key_B);
    ASSERT_EQ(window.focusWidget(), session().before());
    press(Qt::Key_Return);
    ASSERT_TRUE(becomes(said));

    press(Qt::Key_M);
    const auto& bulk = *window.findChild<LogbookBulk*>();
    ASSERT_TRUE(bulk.isVisible());
    tabTo(QStringLiteral("Standard then"));
    auto* standard = qobject_cast<QComboBox*>(window.focusWidget());
    ASSERT_TRUE(standard && standard->isEditable());
    standard->lineEdit()->selectAll();
    type(QStringLiteral("paused"));
    ASSERT_EQ(bulk.findChild<QTableWidget*>()->rowCount(), 2);
    press(Qt::Key_Return);
    EXPECT_FALSE(bulk.isVisible());
    EXPECT_EQ(log().lines.size(), linesBefore + 1);

    for (int i = 0; i < 3; ++i) press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(dump(), before);
}

}  // namespace
}  // namespace steelyard
