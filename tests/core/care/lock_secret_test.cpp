#include "core/care/lock_secret.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

Passphrase words(const QString& text)
{
    auto made = Passphrase::make(text);
    if (!made) qFatal("%s", qPrintable(made.error().what));
    return *std::move(made);
}

TEST(LockSecret, KnowsItsPassphraseAndNoOther)
{
    const auto secret = LockSecret::of(words(QStringLiteral("Zwölf krumme Gurken")));
    ASSERT_TRUE(secret);
    EXPECT_TRUE(secret->matches(words(QStringLiteral("Zwölf krumme Gurken"))));
    EXPECT_TRUE(secret->matches(words(QStringLiteral("Zwo\u0308lf krumme Gurken"))));  // another keyboard's ö
    EXPECT_FALSE(secret->matches(words(QStringLiteral("zwölf krumme Gurken"))));
    EXPECT_FALSE(secret->matches(words(QStringLiteral("Zwölf krumme Gurken "))));
}

TEST(LockSecret, OutlivesTheProgramWithoutThePassphrase)
{
    const auto secret = LockSecret::of(words(QStringLiteral("Zwölf krumme Gurken")));
    ASSERT_TRUE(secret);
    EXPECT_TRUE(secret->text().startsWith(QStringLiteral("$argon2id$v=19$m=65536,t=2,p=1$")));
    EXPECT_FALSE(secret->text().contains(QStringLiteral("Gurken")));
    const auto again = LockSecret::fromText(secret->text());
    ASSERT_TRUE(again);
    EXPECT_TRUE(again->matches(words(QStringLiteral("Zwölf krumme Gurken"))));
    EXPECT_NE(LockSecret::of(words(QStringLiteral("Zwölf krumme Gurken")))->text(), secret->text());
}

// Made by another implementation: Debian's argon2 20171227 (`echo -n "seven plain words" | argon2 steelyardsalt000 -id
// -v 13 -t 2 -m 16 -p 1 -l 32 -e`).
TEST(LockSecret, ReadsTheHashOfAnotherImplementation)
{
    const auto secret = LockSecret::fromText(QStringLiteral(
        "$argon2id$v=19$m=65536,t=2,p=1$c3RlZWx5YXJkc2FsdDAwMA$SlzsYnlVXhNhP8j4qcgR+mwo1qhSd6Miptp2mnyrxuk"));
    ASSERT_TRUE(secret);
    EXPECT_TRUE(secret->matches(words(QStringLiteral("seven plain words"))));
    EXPECT_FALSE(secret->matches(words(QStringLiteral("seven plain word!"))));
}

TEST(LockSecret, RefusesWhatIsNoHashAndWhatWouldTakeAllMemory)
{
    const QString salted = QStringLiteral("$AAAAAAAAAAAAAAAAAAAAAA$AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA");
    EXPECT_TRUE(LockSecret::fromText(QStringLiteral("$argon2id$v=19$m=65536,t=2,p=1") + salted));
    for (const QString& text :
         {QString(), QStringLiteral("seven plain words"), QStringLiteral("$argon2id$v=19$m=65536,t=2,p=1$"),
          QStringLiteral("$argon2id$v=19$m=268435456,t=2,p=1") + salted,
          QStringLiteral("$argon2id$v=19$m=65536,t=4000,p=1") + salted,
          QStringLiteral("$argon2i$v=19$m=65536,t=2,p=1") + salted})
        EXPECT_FALSE(LockSecret::fromText(text)) << qPrintable(text);
}

}  // namespace
}  // namespace steelyard
