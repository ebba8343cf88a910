// Every action of the window, once: menus, shortcuts, the action finder, the list of keys and the tests all read this.
//
//   {"week.act", "Week", "&Act…", "A", "week", NeedsWritable | NeedsLifter}
//
// A page's action has the page's key in `where`; the shell calls Page::canPerform and Page::perform with the id. Single
// letters work because page actions are enabled only while their page is in front, and a field that takes text takes
// letters first. Adding an action: one row here, one branch in the page.
#pragma once

#include <QtCore/QCoreApplication>
#include <QtCore/QString>

#include <vector>

namespace steelyard {

enum ActionNeed : unsigned {
    NeedsNothing = 0,
    NeedsBook = 1,
    NeedsWritable = 2,
    NeedsLifter = 4,  // a lifter is selected
};

enum class ActionMenu { Book, Edit, Roster, Week, Lifter, Block, Floor, View, Help };

struct ActionRow {
    QString id;
    ActionMenu menu;
    QString text;      // with its mnemonic
    QString shortcut;  // portable text; empty: none. Several are separated by ';', the first is shown
    QString where;     // a page's key, or empty: everywhere
    unsigned needs = NeedsNothing;
    bool separated = false;  // a line stands above it in its menu
};

[[nodiscard]] const std::vector<ActionRow>& actionTable();
[[nodiscard]] const ActionRow* findAction(const QString& id);
[[nodiscard]] QString menuTitle(ActionMenu menu);
[[nodiscard]] QString plainText(const QString& textWithMnemonic);

}  // namespace steelyard
