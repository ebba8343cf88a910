#include "core/care/lock_secret.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QRegularExpression>

#include <sodium.h>

#include <array>

namespace steelyard {
namespace {

constexpr int kMostLockMegabytes = 1024;
constexpr int kMostLockPasses = 10;

struct LockText {
    Q_DECLARE_TR_FUNCTIONS(LockText)
};

const char* letters(const Passphrase& passphrase)
{
    return reinterpret_cast<const char*>(passphrase.bytes().data());
}

}  // namespace

Result<LockSecret> LockSecret::of(const Passphrase& passphrase)
{
    std::array<char, crypto_pwhash_STRBYTES> hash{};
    if (crypto_pwhash_str(hash.data(), letters(passphrase), passphrase.bytes().size(),
                          crypto_pwhash_OPSLIMIT_INTERACTIVE, crypto_pwhash_MEMLIMIT_INTERACTIVE)
        != 0)
        return fail(ErrorCode::Storage, LockText::tr("There is not enough memory to set the passphrase."));
    return LockSecret(QByteArray(hash.data()));
}

std::optional<LockSecret> LockSecret::fromText(const QString& text)
{
    // What settings say must not decide how much memory a try takes.
    static const QRegularExpression form(
        QStringLiteral(R"(^\$argon2id\$v=19\$m=(\d{1,9}),t=(\d{1,4}),p=1\$[A-Za-z0-9+/]{22}\$[A-Za-z0-9+/]{43}$)"));
    const auto match = form.match(text);
    if (!match.hasMatch() || match.captured(1).toInt() > kMostLockMegabytes * 1024
        || match.captured(2).toInt() > kMostLockPasses || text.size() >= qsizetype{crypto_pwhash_STRBYTES})
        return std::nullopt;
    return LockSecret(text.toLatin1());
}

bool LockSecret::matches(const Passphrase& passphrase) const
{
    return crypto_pwhash_str_verify(m_hash.constData(), letters(passphrase), passphrase.bytes().size()) == 0;
}

}  // namespace steelyard
