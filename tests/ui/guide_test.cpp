// The guide says what the program has: its links lead somewhere, its keys exist, every place has a page.
#include "core/flags/registry.h"
#include "ui/shell/actions.h"
#include "ui/shell/help_dialogs.h"

#include <QtCore/QDir>
#include <QtCore/QRegularExpression>
#include <QtGui/QImage>
#include <QtGui/QKeySequence>
#include <QtWidgets/QDialog>
#include <QtWidgets/QTextBrowser>

#include <gtest/gtest.h>

#include <memory>

namespace steelyard {
namespace {

QStringList guidePages()
{
    return QDir(QStringLiteral(":/guide")).entryList({QStringLiteral("*.md")});
}

QString guideText(const QString& page)
{
    QFile file(QStringLiteral(":/guide/") + page);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << qPrintable(page);
    return QString::fromUtf8(file.readAll());
}

TEST(Guide, LeadsFromItsFirstPageToAllOthersAndNowhereElse)
{
    static const QRegularExpression link(QStringLiteral("(!?)\\[[^\\]]*\\]\\(([^)]+)\\)"));
    QStringList reached{QStringLiteral("guide.md")};
    for (qsizetype i = 0; i < reached.size(); ++i)
        for (auto at = link.globalMatch(guideText(reached[i])); at.hasNext();) {
            const auto found = at.next();
            const QString target = found.captured(2);
            if (!found.captured(1).isEmpty()) {
                EXPECT_FALSE(QImage(QStringLiteral(":/guide/") + target).isNull()) << qPrintable(target);
                continue;
            }
            EXPECT_TRUE(guidePages().contains(target)) << qPrintable(reached[i] + QStringLiteral(": ") + target);
            if (!reached.contains(target)) reached << target;
        }
    reached.sort();
    EXPECT_EQ(reached, guidePages());
}

TEST(Guide, NamesOnlyKeysThatTheProgramHas)
{
    QStringList known;
    for (const ActionRow& row : actionTable()) known << row.shortcut.split(QLatin1Char(';'), Qt::SkipEmptyParts);
    // Keys of the sheets' preview and of the chart, which are no actions.
    known << QStringLiteral("+") << QStringLiteral("−") << QStringLiteral("0");
    static const QRegularExpression key(QStringLiteral("\\*\\*((?:Ctrl\\+|Shift\\+|F)?[^*\\s]{1,8})\\*\\*"));
    int seen = 0;
    for (const QString& page : guidePages())
        for (auto at = key.globalMatch(guideText(page)); at.hasNext();) {
            const QString name = at.next().captured(1);
            if (name.size() > 3 && !name.startsWith(QStringLiteral("Ctrl+"))) continue;  // a word in bold
            ++seen;
            EXPECT_TRUE(known.contains(name)) << qPrintable(page + QStringLiteral(": ") + name);
        }
    EXPECT_GT(seen, 20);
}

TEST(Guide, ExplainsEveryFlagByItsTitle)
{
    const QString text = guideText(QStringLiteral("flags.md"));
    for (const FlagRule* rule : flagRules())
        EXPECT_TRUE(text.contains(QStringLiteral("*%1*").arg(rule->title()))) << qPrintable(rule->title());
}

TEST(Guide, OpensAtThePlaceInFront)
{
    for (const QString& place :
         {QStringLiteral("week"), QStringLiteral("lifter"), QStringLiteral("block"), QStringLiteral("floor")}) {
        const std::unique_ptr<QDialog> dialog(makeGuide(nullptr, place));
        const auto* browser = dialog->findChild<QTextBrowser*>();
        EXPECT_EQ(browser->source().fileName(), place + QStringLiteral(".md"));
        EXPECT_GT(browser->toPlainText().size(), 300);
    }
    const std::unique_ptr<QDialog> dialog(makeGuide(nullptr, QString()));
    EXPECT_EQ(dialog->findChild<QTextBrowser*>()->source().fileName(), QStringLiteral("guide.md"));
}

}  // namespace
}  // namespace steelyard
