#include "ui/widgets/passphrase_fields.h"

#include <QtTest/QSignalSpy>
#include <QtTest/QTest>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPushButton>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

const QString kTyped = QStringLiteral("twelve crooked gherkins");

class PassphrasePanel : public testing::Test {
protected:
    void make(const PassphraseFields::Options& options)
    {
        fields = std::make_unique<PassphraseFields>(options);
        fields->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(fields.get()));
        fields->takeFocus();
    }
    QLineEdit* field(const char* name) { return fields->findChild<QLineEdit*>(QString::fromLatin1(name)); }
    QString said() { return fields->findChild<QLabel*>(QStringLiteral("passphraseProblem"))->text(); }

    std::unique_ptr<PassphraseFields> fields;
};

TEST_F(PassphrasePanel, GivesAPassphraseThatWasTypedTwiceAndKeepsNothingOfIt)
{
    make({});
    const QSignalSpy entered(fields.get(), &PassphraseFields::entered);
    QTest::keyClicks(field("passphrase"), kTyped);
    QTest::keyClick(field("passphrase"), Qt::Key_Return);
    EXPECT_EQ(entered.size(), 0);
    EXPECT_TRUE(field("passphraseAgain")->hasFocus());
    QTest::keyClicks(field("passphraseAgain"), kTyped);
    QTest::keyClick(field("passphraseAgain"), Qt::Key_Return);
    EXPECT_EQ(entered.size(), 1);
    const auto taken = fields->take();
    ASSERT_TRUE(taken);
    EXPECT_EQ(taken->bytes().size(), static_cast<std::size_t>(kTyped.size()));
    EXPECT_TRUE(fields->isEmpty());
}

TEST_F(PassphrasePanel, SaysWhereTheyDifferAndAsksForTheSecondAgain)
{
    make({});
    field("passphrase")->setText(kTyped);
    field("passphraseAgain")->setText(kTyped + u'!');
    EXPECT_FALSE(fields->take());
    EXPECT_FALSE(said().isEmpty());
    EXPECT_EQ(field("passphrase")->text(), kTyped);
    EXPECT_TRUE(field("passphraseAgain")->text().isEmpty());
    EXPECT_TRUE(field("passphraseAgain")->hasFocus());
    QTest::keyClicks(field("passphraseAgain"), kTyped);
    EXPECT_TRUE(said().isEmpty());
    EXPECT_TRUE(fields->take());
}

TEST_F(PassphrasePanel, RefusesAShortOne)
{
    make({.is = PassphraseFields::Known});
    field("passphrase")->setText(QStringLiteral("short"));
    EXPECT_FALSE(fields->take());
    EXPECT_FALSE(said().isEmpty());
    EXPECT_EQ(field("passphraseAgain"), nullptr);
}

TEST_F(PassphrasePanel, HidesTheLettersUntilTheyAreAskedFor)
{
    make({});
    EXPECT_EQ(field("passphrase")->echoMode(), QLineEdit::Password);
    EXPECT_EQ(field("passphraseAgain")->echoMode(), QLineEdit::Password);
    fields->findChild<QPushButton*>(QStringLiteral("offerWords"))->click();
    EXPECT_EQ(field("passphrase")->echoMode(), QLineEdit::Normal);
    const QString offered = field("passphrase")->text();
    EXPECT_EQ(offered.split(u' ').size(), 6);
    EXPECT_TRUE(field("passphraseAgain")->text().isEmpty());
    EXPECT_FALSE(fields->take());  // they have to be typed once
    field("passphraseAgain")->setText(offered);
    EXPECT_TRUE(fields->take());
    EXPECT_EQ(field("passphrase")->echoMode(), QLineEdit::Password);
}

TEST_F(PassphrasePanel, HintsAtTheStrengthWhileItIsTyped)
{
    make({});
    const auto* strength = fields->findChild<QLabel*>(QStringLiteral("passphraseStrength"));
    EXPECT_TRUE(strength->text().isEmpty());
    QStringList hints;
    for (const char* text : {"abc", "aaaaaaaaaaaaaaa", "acorn quilt moth radish", "twelve crooked gherkins, yes"}) {
        field("passphrase")->setText(QString::fromLatin1(text));
        hints << strength->text();
    }
    EXPECT_EQ(hints.removeDuplicates(), 0);
}

TEST_F(PassphrasePanel, OffersToRememberItOnlyWhereThatIsPossibleAndNeverByItself)
{
    make({});
    EXPECT_EQ(fields->findChild<QCheckBox*>(QStringLiteral("rememberPassphrase")), nullptr);
    EXPECT_FALSE(fields->wantsRemembering());
    make({.canRemember = true});
    auto* tick = fields->findChild<QCheckBox*>(QStringLiteral("rememberPassphrase"));
    ASSERT_NE(tick, nullptr);
    EXPECT_FALSE(fields->wantsRemembering());
    tick->setChecked(true);
    EXPECT_TRUE(fields->wantsRemembering());
}

}  // namespace
}  // namespace steelyard
