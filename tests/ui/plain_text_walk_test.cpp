// Names that look like mark-up, mnemonics or entities are shown letter by letter wherever they stand, and nothing in them is
// followed.
#include "tests/support/club_window.h"
#include "tests/support/page_tour.h"
#include "tests/support/text_walk.h"
#include "ui/prompt/qt_prompter.h"
#include "ui/shell/action_finder.h"
#include "ui/shell/lock_dialog.h"

#include <QtGui/QTextDocument>
#include <QtWidgets/QAbstractButton>
#include <QtWidgets/QGroupBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QMenu>
#include <QtWidgets/QMessageBox>
#include <QtWidgets/QTabBar>

namespace steelyard {
namespace {

using testing_support::paintedBy;
using testing_support::textsOf;
using testing_support::tourPages;

const QStringList kHostile{QStringLiteral("<b>x"), QStringLiteral("<img src=file:///etc/passwd>"),
                           QStringLiteral("&lt;i&gt;"), QStringLiteral("Smith & Jones"), QStringLiteral("%1 %n %2")};

// What is wrong with a widget that may show text of the book, empty when nothing is.
QStringList faultsOf(const QWidget& root)
{
    QStringList faults;
    const auto fault = [&](const QWidget* at, const QString& what) {
        faults << QStringLiteral("%1 %2: %3")
                      .arg(QString::fromLatin1(at->metaObject()->className()), at->objectName(), what);
    };
    for (const auto* label : root.findChildren<QLabel*>())
        if (label->textFormat() != Qt::PlainText && label->testAttribute(Qt::WA_WState_Polished)
            && !label->text().isEmpty())
            fault(label, QStringLiteral("is no plain text: ") + label->text());
    const auto loses = [](const QString& text) {
        return text.contains(QStringLiteral("Smith & Jones"))
               || text.contains(QRegularExpression(QStringLiteral("&lt;")));
    };
    for (const auto* button : root.findChildren<QAbstractButton*>())
        if (loses(QString(button->text()).remove(QStringLiteral("&&"))))
            fault(button, QStringLiteral("loses its &: ") + button->text());
    for (const auto* box : root.findChildren<QGroupBox*>())
        if (loses(QString(box->title()).remove(QStringLiteral("&&")))) fault(box, box->title());
    for (const auto* bar : root.findChildren<QTabBar*>())
        for (int i = 0; i < bar->count(); ++i)
            if (loses(QString(bar->tabText(i)).remove(QStringLiteral("&&")))) fault(bar, bar->tabText(i));
    for (const auto* menu : root.findChildren<QMenu*>())
        for (const QAction* action : menu->actions())
            if (loses(QString(action->text()).remove(QStringLiteral("&&")))) fault(menu, action->text());
    return faults;
}

// A tooltip is rich as soon as it looks like it: then it must come out as the text that it holds.
QStringList richTips(const QStringList& texts)
{
    QStringList faults;
    for (const QString& text : texts) {
        if (!text.contains(QStringLiteral("<p style=\"white-space: pre-wrap\">"))) continue;
        const QString html = text.mid(text.indexOf(u'<'));
        if (html.contains(QStringLiteral("<img")) || html.contains(QStringLiteral("<b>"))) faults << text;
    }
    return faults;
}

// Of widgets and models, those that would be taken for mark-up.
QStringList rawTips(const QWidget& root)
{
    QStringList faults;
    const auto look = [&](const QString& tip) {
        const bool made = tip.startsWith(QStringLiteral("<p style=\"white-space: pre-wrap\">"));
        for (const QString& hostile : kHostile)
            if (!made && tip.contains(hostile) && (Qt::mightBeRichText(tip) || hostile.contains(u'<'))) faults << tip;
    };
    for (const auto* each : root.findChildren<QWidget*>()) {
        look(each->toolTip());
        const auto* view = qobject_cast<const QAbstractItemView*>(each);
        if (!view || !view->model()) continue;
        const QAbstractItemModel& model = *view->model();
        for (int row = 0; row < std::min(model.rowCount(), 100); ++row)
            for (int column = 0; column < model.columnCount(); ++column)
                look(model.index(row, column).data(Qt::ToolTipRole).toString());
    }
    return faults;
}

// Labels are looked at once they were seen; before that nobody reads them (ui/shell/guarded_application.h).
class PlainText : public testing_support::ClubWindow {
protected:
    PlainText() : ClubWindow({.athletes = 4, .years = 1, .seed = 3}) {}

    void SetUp() override
    {
        ClubWindow::SetUp();
        Changes changes{.roster = true, .library = true};
        const auto all = window.book()->athletes().all();
        ASSERT_TRUE(all);
        for (std::size_t i = 0; i < all->size(); ++i) {
            rename("athlete", (*all)[i].id.value(), kHostile[static_cast<qsizetype>(i) % kHostile.size()]);
            changes.athletes.insert((*all)[i].id);
        }
        for (const char* table : {"exercise", "variant", "grip", "rep_standard"}) {
            const auto rows = window.book()->database().integer("SELECT max(id) FROM " + std::string(table));
            ASSERT_TRUE(rows);
            for (std::int64_t id = 1; id <= *rows; ++id)
                rename(table, id, kHostile[static_cast<qsizetype>(id) % kHostile.size()] + u' ' + QString::number(id));
        }
        window.book()->hub().publish(changes);
        settle();
    }
    void rename(const char* table, std::int64_t id, const QString& name)
    {
        auto statement =
            window.book()->database().prepare("UPDATE " + std::string(table) + " SET name = ?2 WHERE id = ?1");
        ASSERT_TRUE(statement);
        statement->bind(1, id);
        statement->bind(2, name);
        ASSERT_TRUE(statement->run());
    }
    void expectPlain(const QWidget& shown, const QString& where)
    {
        QStringList faults = faultsOf(shown) + richTips(textsOf(shown)) + rawTips(shown);
        faults.removeDuplicates();
        EXPECT_TRUE(faults.isEmpty()) << qPrintable(where) << ":\n" << qPrintable(faults.join(u'\n'));
    }
};

TEST_F(PlainText, IsWhatEveryPageShows)
{
    int named = 0;
    tourPages(window, [&](const QString& where) {
        expectPlain(window, where);
        const QString painted = paintedBy(window);
        named += painted.contains(QStringLiteral("Smith & Jones")) + painted.contains(QStringLiteral("<b>x"))
                 + painted.contains(QStringLiteral("&lt;i&gt;"));
    });
    EXPECT_GT(named, 10);
}

TEST_F(PlainText, IsWhatDialogsShow)
{
    for (const char* action :
         {"help.keys", "help.about", "help.find", "roster.add", "roster.rules", "book.lockSettings"}) {
        window.perform(QString::fromLatin1(action));
        for (auto* dialog : window.findChildren<QDialog*>()) {
            expectPlain(*dialog, QString::fromLatin1(action));
            delete dialog;
        }
    }
}

TEST_F(PlainText, IsWhatAMessageShows)
{
    QtPrompter asking;
    for (const QString& name : kHostile) {
        asking.ask(&window, {name, name, name, name}, [] {});
        asking.tellError(&window, name, {ErrorCode::Storage, name, name});
        int labels = 0;
        for (auto* box : window.findChildren<QMessageBox*>()) {
            expectPlain(*box, name);
            for (const auto* label : box->findChildren<QLabel*>()) labels += label->text() == name;
            for (const auto* button : box->findChildren<QAbstractButton*>())
                if (button->text().contains(QStringLiteral("Jones"))) {
                    EXPECT_EQ(button->text(), QStringLiteral("Smith && Jones"));
                }
            delete box;
        }
        EXPECT_GE(labels, 4) << qPrintable(name);
    }
}

TEST_F(PlainText, IsWhatStandsOnPaper)
{
    prompter.path = dir.path(u"paper.pdf");
    window.view()->showPlace(QStringLiteral("floor"));
    settle();
    window.perform(QStringLiteral("floor.pdf"));
    ASSERT_TRUE(QTest::qWaitFor([&] { return window.isSettled() && QFile::exists(prompter.path); }, 30000));
    QProcess reader;
    reader.start(QStringLiteral("pdftotext"), {QStringLiteral("-raw"), prompter.path, QStringLiteral("-")});
    ASSERT_TRUE(reader.waitForFinished(30000));
    const QString text = QString::fromUtf8(reader.readAllStandardOutput());
    int found = 0;
    for (const QString& name : kHostile) found += text.contains(name);
    EXPECT_GE(found, 3) << qPrintable(text.left(2000));
}

TEST_F(PlainText, OfTheLongestNamesWidensNoWindow)
{
    const auto all = window.book()->athletes().all();
    ASSERT_TRUE(all);
    Changes changes{.roster = true};
    for (const Row<Athlete>& row : *all) {
        rename("athlete", row.id.value(), QString(120, u'W').replace(0, 4, QString::number(row.id.value() + 1000)));
        changes.athletes.insert(row.id);
    }
    window.book()->hub().publish(changes);
    settle();
    tourPages(window, [&](const QString& where) {
        QStringList wide;
        for (const QWidget* each : window.findChildren<QWidget*>())
            if (each->minimumSizeHint().width() > 900)
                wide << QStringLiteral("%1 %2 %3")
                            .arg(QString::fromLatin1(each->metaObject()->className()), each->objectName())
                            .arg(each->minimumSizeHint().width());
        EXPECT_LE(window.minimumSizeHint().width(), 1366) << qPrintable(where + u'\n' + wide.join(u'\n'));
        EXPECT_LE(window.minimumSizeHint().height(), 768) << qPrintable(where);
    });
}

}  // namespace
}  // namespace steelyard
