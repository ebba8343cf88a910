// Alt and a letter means one thing: what stands in the window takes no letter of a menu, and nothing beside it in the same panel the
// same one. Windows of their own have no menus.
#include "tests/support/club_window.h"
#include "ui/shell/page.h"

#include <QtGui/QKeySequence>
#include <QtWidgets/QAbstractButton>
#include <QtWidgets/QLabel>
#include <QtWidgets/QMenuBar>

#include <map>

namespace steelyard {
namespace {

QString mnemonicOf(const QWidget& widget)
{
    QString text;
    if (const auto* button = qobject_cast<const QAbstractButton*>(&widget)) text = button->text();
    if (const auto* label = qobject_cast<const QLabel*>(&widget); label && label->buddy()) text = label->text();
    return QKeySequence::mnemonic(text).toString();
}

// What fills a panel: the page or the part of it that is shown and hidden as a whole.
const QWidget* panelOf(const QWidget& widget)
{
    const QWidget* panel = widget.parentWidget();
    while (panel && QByteArrayView(panel->metaObject()->className()) == "QWidget") panel = panel->parentWidget();
    return panel;
}

class Mnemonics : public testing_support::ClubWindow {
protected:
    Mnemonics() : ClubWindow({.athletes = 2, .years = 1, .seed = 3}) {}
    [[nodiscard]] std::vector<const QWidget*> withMnemonic() const
    {
        std::vector<const QWidget*> found;
        for (const auto* widget : window.findChildren<QWidget*>())
            if (widget->window() == &window && !mnemonicOf(*widget).isEmpty()) found.push_back(widget);
        return found;
    }
};

TEST_F(Mnemonics, OfWhatStandsInTheWindowAreNoMenus)
{
    std::map<QString, QString> menus;
    for (const QAction* menu : window.menuBar()->actions())
        menus[QKeySequence::mnemonic(menu->text()).toString()] = menu->text();
    ASSERT_GE(menus.size(), 9U);
    const auto all = withMnemonic();
    ASSERT_GT(all.size(), 40U) << "the pages are there before they are looked at";
    for (const QWidget* widget : all)
        EXPECT_FALSE(menus.contains(mnemonicOf(*widget)))
            << qPrintable(mnemonicOf(*widget)) << " of " << panelOf(*widget)->metaObject()->className();
}

TEST_F(Mnemonics, AreThereOnceInAPanel)
{
    std::map<std::pair<const QWidget*, QString>, int> times;
    for (const QWidget* widget : withMnemonic()) ++times[{panelOf(*widget), mnemonicOf(*widget)}];
    for (const auto& [where, count] : times)
        EXPECT_EQ(count, 1) << where.first->metaObject()->className() << ": " << qPrintable(where.second);
}

}  // namespace
}  // namespace steelyard
