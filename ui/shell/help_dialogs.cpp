#include "ui/shell/help_dialogs.h"

#include "ui/shell/actions.h"

#include <QtCore/QFile>
#include <QtCore/QUrl>
#include <QtGui/QKeySequence>
#include <QtWidgets/QDialog>
#include <QtWidgets/QDialogButtonBox>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QTextBrowser>
#include <QtWidgets/QTreeWidget>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

struct HelpText {
    Q_DECLARE_TR_FUNCTIONS(HelpText)
};

QDialog* makeHelpDialog(QWidget* parent, const QString& title, QWidget* content, QSize size)
{
    auto* dialog = new QDialog(parent);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setWindowTitle(title);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, dialog);
    QObject::connect(buttons, &QDialogButtonBox::rejected, dialog, &QDialog::reject);
    auto* layout = new QVBoxLayout(dialog);
    layout->addWidget(content, 1);
    layout->addWidget(buttons);
    dialog->resize(size);
    return dialog;
}

}  // namespace

QDialog* makeKeyList(QWidget* parent)
{
    auto* tree = new QTreeWidget;
    tree->setHeaderLabels({HelpText::tr("Action"), HelpText::tr("Key")});
    tree->setRootIsDecorated(false);
    tree->setSelectionMode(QAbstractItemView::NoSelection);
    QTreeWidgetItem* section = nullptr;
    std::optional<ActionMenu> menu;
    for (const ActionRow& row : actionTable()) {
        if (menu != row.menu) {
            section = new QTreeWidgetItem(tree, {plainText(menuTitle(row.menu))});
            QFont bold = tree->font();
            bold.setBold(true);
            section->setFont(0, bold);
            menu = row.menu;
        }
        QStringList keys;
        for (const QString& key : row.shortcut.split(QLatin1Char(';'), Qt::SkipEmptyParts))
            keys.push_back(QKeySequence(key).toString(QKeySequence::NativeText));
        new QTreeWidgetItem(section, {plainText(row.text), keys.join(HelpText::tr(" or "))});
    }
    tree->expandAll();
    tree->header()->setSectionResizeMode(0, QHeaderView::Stretch);
    return makeHelpDialog(parent, HelpText::tr("List of keys"), tree, {520, 620});
}

QDialog* makeGuide(QWidget* parent, const QString& place)
{
    const QString first = QStringLiteral("guide");
    const QString page = QFile::exists(QStringLiteral(":/guide/%1.md").arg(place)) ? place : first;
    auto* browser = new QTextBrowser;
    browser->setOpenExternalLinks(true);
    browser->document()->setDocumentMargin(16);
    browser->setSource(QUrl(QStringLiteral("qrc:/guide/%1.md").arg(page)));
    return makeHelpDialog(parent, HelpText::tr("Guide"), browser, {940, 700});
}

QDialog* makeAbout(QWidget* parent)
{
    auto* label =
        new QLabel(HelpText::tr("Steelyard %1\n\nWeekly review and session sheets for a coach with many "
                                "lifters.\nFree software under the GNU General Public License, version 3 or "
                                "later. It comes without any warranty.\n\nIt does not diagnose. Pain that "
                                "lasts, spreads or wakes somebody at night belongs to a licensed professional.")
                       .arg(QString::fromLatin1(STEELYARD_VERSION)));
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    return makeHelpDialog(parent, HelpText::tr("About Steelyard"), label, {460, 240});
}

}  // namespace steelyard
