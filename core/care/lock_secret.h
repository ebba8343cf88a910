// Whether a typed passphrase is the one that opens the screen again, without keeping it: an Argon2id hash with its own salt, as
// libsodium's crypto_pwhash_str writes it.
//
//   STEELYARD_TRY(const LockSecret secret, LockSecret::of(passphrase));
//   settings.setValue("lock/secret", secret.text());
//   if (LockSecret::fromText(text)->matches(typed)) open();
//
// One try costs about a tenth of a second and 64 MB: call it off the window's thread. Failures: Storage (no memory).
// Source: RFC 9106; the format is that of libsodium's documentation of password storage.
#pragma once

#include "core/care/passphrase.h"

#include <optional>

namespace steelyard {

class LockSecret {
public:
    [[nodiscard]] static Result<LockSecret> of(const Passphrase&);
    // Nothing when it is no such hash, or one that would cost more than a gigabyte or ten passes to try.
    [[nodiscard]] static std::optional<LockSecret> fromText(const QString& text);
    [[nodiscard]] QString text() const { return QString::fromLatin1(m_hash); }
    [[nodiscard]] bool matches(const Passphrase&) const;

private:
    explicit LockSecret(QByteArray hash) : m_hash(std::move(hash)) {}

    QByteArray m_hash;
};

}  // namespace steelyard
