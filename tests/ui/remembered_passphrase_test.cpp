// A passphrase in the keychain, as a coach meets it: remembered when they tick it, filled in, forgotten, and never invented.
#include "core/care/sealed_file.h"
#include "tests/support/shell_book.h"
#include "ui/pages/care/restore_panel.h"
#include "ui/pages/care/seal_panel.h"
#include "ui/shell/backup_keeper.h"
#include "ui/shell/privacy_deeds.h"

#include <QtWidgets/QCheckBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>

#include <map>

namespace steelyard {
namespace {

const QString kSaid = QStringLiteral("seven plain words will do");

class NotedSecrets final : public SecretStore {
public:
    void read(const QString& key, QObject*, Read then) override
    {
        if (fails) return then(fail(ErrorCode::Storage, QStringLiteral("too slow")));
        const auto at = kept.find(key);
        then(at == kept.end() ? std::nullopt : std::optional(at->second));
    }
    void keep(const QString& key, const QString& secret, QObject*, Done then) override
    {
        if (fails) return then(fail(ErrorCode::Storage, QStringLiteral("too slow")));
        kept[key] = QString(secret.constData(), secret.size());  // the caller wipes its own
        then({});
    }
    void forget(const QString& key, QObject*, Done then) override
    {
        if (fails) return then(fail(ErrorCode::Storage, QStringLiteral("too slow")));
        kept.erase(key);
        then({});
    }
    std::map<QString, QString> kept;
    bool fails = false;
};

class Remembered : public testing::Test {
protected:
    Remembered()
    {
        MainServices services{.reviewer = reviewByHand};
        services.secrets = secrets;
        services.backupFolder = [this](const QString&) { return shell.folder.filePath(QStringLiteral("shelf")); };
        services.dailyBackups = false;
        services.openBackups = [this](const UiContext& given, const MainServices::Restore&, QWidget*) {
            context = std::make_unique<UiContext>(given);
        };
        window = std::make_unique<MainWindow>(std::move(services), shell.prompter, shell.clock, shell.settings);
        EXPECT_TRUE(window->openBook(shell.path()));
        window->perform(QStringLiteral("book.backups"));
        shell.prompter.path = shell.folder.filePath(QStringLiteral("out.steelyard.sealed"));
    }
    // What the panel said in the end.
    QString seal(bool tick)
    {
        SealPanel panel(*context, sealedCopyOfBook(*context));
        for (const char* field : {"passphrase", "passphraseAgain"})
            panel.findChild<QLineEdit*>(QString::fromLatin1(field))->setText(kSaid);
        panel.findChild<QCheckBox*>(QStringLiteral("rememberPassphrase"))->setChecked(tick);
        QTest::keyClick(panel.findChild<QLineEdit*>(QStringLiteral("passphraseAgain")), Qt::Key_Return);
        EXPECT_TRUE(QTest::qWaitFor([&] { return panel.said().startsWith(QStringLiteral("Sealed: ")); }, 30'000))
            << qPrintable(panel.said());
        EXPECT_TRUE(QTest::qWaitFor([&] { return window->isSettled(); }, 30'000));
        return panel.said();
    }
    QString filledIn()
    {
        RestorePanel panel(shell.path(), context->jobs, context->clock, secrets.get());
        panel.show(RestorePanel::Source{shell.prompter.path, QStringLiteral("out")});
        return panel.findChild<QLineEdit*>(QStringLiteral("passphrase"))->text();
    }
    [[nodiscard]] QString key() const { return secretKeyOfBook(shell.path()); }

    ShellBook shell{{QStringLiteral("Bo Marrow")}};
    std::shared_ptr<NotedSecrets> secrets = std::make_shared<NotedSecrets>();
    std::unique_ptr<MainWindow> window;
    std::unique_ptr<UiContext> context;
};

TEST_F(Remembered, OnlyWhenTickedAndThenFilledIn)
{
    ASSERT_NE(context, nullptr);
    seal(false);
    EXPECT_TRUE(secrets->kept.empty());
    EXPECT_TRUE(filledIn().isEmpty());
    EXPECT_FALSE(shell.settings.value(kKeychainInUse).toBool());
    seal(true);
    EXPECT_EQ(secrets->kept, (std::map<QString, QString>{{key(), kSaid}}));
    EXPECT_EQ(filledIn(), kSaid);
    EXPECT_TRUE(shell.settings.value(kKeychainInUse).toBool());
}

TEST_F(Remembered, NotByAKeychainThatFailsAndTheFileIsSealedAllTheSame)
{
    ASSERT_NE(context, nullptr);
    secrets->fails = true;
    EXPECT_TRUE(seal(true).contains(QStringLiteral("may not have remembered")));
    EXPECT_TRUE(isSealedFile(shell.prompter.path).value_or(false));
    EXPECT_TRUE(filledIn().isEmpty());
    EXPECT_FALSE(shell.settings.value(kKeychainInUse).toBool());
}

TEST_F(Remembered, UntilItIsForgottenAndItIsSaidWhenThatIsntKnown)
{
    secrets->kept[key()] = kSaid;
    secrets->fails = true;
    window->perform(QStringLiteral("book.forget"));
    EXPECT_EQ(shell.prompter.errors.size(), 1);
    EXPECT_EQ(secrets->kept.size(), 1U);
    secrets->fails = false;
    window->perform(QStringLiteral("book.forget"));
    EXPECT_EQ(shell.prompter.errors.size(), 1);
    EXPECT_TRUE(secrets->kept.empty());
}

}  // namespace
}  // namespace steelyard
