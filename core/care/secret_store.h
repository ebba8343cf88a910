// A place where the machine's owner lets the program remember a passphrase: the system's keychain. Behind an interface, so that
// the program runs without one, and tests bring their own.
//
//   store.read(secretKeyOfBook(book.path()), this, [this](Result<std::optional<QString>> kept) {
//       if (!kept || !*kept) return askForPassphrase();       // unknown, or not there: ask
//       use(**kept);
//   });
//
// Nothing is ever the only copy of a secret here, and nothing here makes one up: that there is no entry is an answer of its own
// (an empty optional), never mixed up with a keychain that is missing, locked, refused or too slow (an Error), and neither is a
// reason to make a new passphrase. Nothing waits: answers come through `then`, in the thread of the call, only while `owner`
// lives, each exactly once and at the latest kSecretPatience after the call.
// Failures: Unsupported (this machine has no keychain, or it can't be reached), Cancelled (the owner of the keychain said no),
// Storage (it failed, or did not answer in time: whether a secret was kept or forgotten then isn't known).
#pragma once

#include "core/base/result.h"

#include <QtCore/QString>

#include <chrono>
#include <functional>
#include <optional>

class QObject;

namespace steelyard {

inline constexpr std::chrono::seconds kSecretPatience{5};

class SecretStore {
public:
    using Read = std::function<void(Result<std::optional<QString>>)>;
    using Done = std::function<void(Result<void>)>;

    virtual ~SecretStore() = default;
    virtual void read(const QString& key, QObject* owner, Read then) = 0;
    virtual void keep(const QString& key, const QString& secret, QObject* owner, Done then) = 0;
    // Also done when there was nothing to forget.
    virtual void forget(const QString& key, QObject* owner, Done then) = 0;
};

// The entry of one book: by where the book stands, because a copy of it elsewhere may well have another passphrase. A book that
// was moved is asked for its passphrase once more. The key tells no path and no name.
[[nodiscard]] QString secretKeyOfBook(const QString& path);

}  // namespace steelyard
