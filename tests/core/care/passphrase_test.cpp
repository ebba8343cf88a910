#include "core/care/passphrase_strength.h"
#include "core/care/passphrase_word_list.h"
#include "core/care/secret_store.h"
#include "core/care/suggested_passphrase.h"
#include "tests/support/temp_dir.h"

#include <QtCore/QRegularExpression>
#include <QtCore/QSet>
#include <QtCore/QStringList>

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

TEST(PassphraseWords, AreDifferentPlainAndShort)
{
    QSet<QString> seen;
    static const QRegularExpression plain(QStringLiteral("^[a-z]{3,10}$"));
    for (const char* word : kPassphraseWords) {
        EXPECT_TRUE(plain.match(QString::fromLatin1(word)).hasMatch()) << word;
        seen.insert(QString::fromLatin1(word));
    }
    EXPECT_EQ(seen.size(), 512);
}

TEST(SuggestedPassphrase, IsDrawnFromAllWordsAndNeverTheSame)
{
    QSet<QString> words;
    QSet<QString> whole;
    for (int i = 0; i < 1500; ++i) {
        const QString drawn = suggestedPassphrase();
        EXPECT_EQ(drawn.split(u' ').size(), kSuggestedWords);
        whole.insert(drawn);
        for (const QString& word : drawn.split(u' ')) words.insert(word);
    }
    EXPECT_EQ(whole.size(), 1500);
    EXPECT_EQ(words.size(), 512);  // 9,000 drawings: that one of 512 words never comes has a chance of one in 80,000
    EXPECT_EQ(passphraseStrength(suggestedPassphrase()), PassphraseStrength::Good);
}

TEST(PassphraseStrength, IsLowForWhatRepeatsOrCounts)
{
    EXPECT_EQ(passphraseStrength(u"short"), PassphraseStrength::TooShort);
    EXPECT_EQ(passphraseStrength(u"aaaaaaaaaaaaaaaaaaaa"), PassphraseStrength::Weak);
    EXPECT_EQ(passphraseStrength(u"abcdefghijklmnop"), PassphraseStrength::Weak);
    EXPECT_EQ(passphraseStrength(u"123456789012"), PassphraseStrength::Weak);
    EXPECT_EQ(passphraseStrength(u"acorn actor acorn actor"), PassphraseStrength::Weak);
    EXPECT_EQ(passphraseStrength(u"acorn quilt moth"), PassphraseStrength::Weak);
    EXPECT_EQ(passphraseStrength(u"acorn quilt moth radish"), PassphraseStrength::Fair);
    EXPECT_EQ(passphraseStrength(u"Twelve crooked gherkins, yes!"), PassphraseStrength::Good);
}

TEST(SecretKey, IsTheSameForOneBookHoweverItIsNamedAndTellsNothing)
{
    const testing_support::TempDir dir;
    const QString book = dir.write(u"Ada Fulcrum.steelyard", "x");
    const QString key = secretKeyOfBook(book);
    EXPECT_EQ(secretKeyOfBook(dir.path() + QStringLiteral("/./Ada Fulcrum.steelyard")), key);
    EXPECT_NE(secretKeyOfBook(dir.write(u"other.steelyard", "x")), key);
    EXPECT_FALSE(key.contains(QStringLiteral("Ada")));
    static const QRegularExpression form(QStringLiteral("^sealed-backups/[0-9a-f]{32}$"));
    EXPECT_TRUE(form.match(key).hasMatch());
}

}  // namespace
}  // namespace steelyard
