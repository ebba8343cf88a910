// The keychain of the coach's desktop: whatever QtKeychain finds (a Secret Service such as GNOME's keyring, or KWallet).
//
//   SystemKeychain keychain;                       // starts nothing yet
//   keychain.read(secretKeyOfBook(path), this, …); // secret_store.h
//
// All of it happens in a thread of its own, because looking for a keychain can hang as long as a broken session bus does.
// A request that takes longer than `patience` is answered as failed; its late answer is dropped. QtKeychain's plain-text
// fallback stays off. A Secret Service that is locked with nobody to unlock it is told apart from one without the entry.
#pragma once

#include "core/care/secret_store.h"

#include <memory>

class QThread;

namespace steelyard {

class SystemKeychain final : public SecretStore {
public:
    explicit SystemKeychain(std::chrono::milliseconds patience = kSecretPatience);
    ~SystemKeychain() override;

    void read(const QString& key, QObject* owner, Read then) override;
    void keep(const QString& key, const QString& secret, QObject* owner, Done then) override;
    void forget(const QString& key, QObject* owner, Done then) override;

private:
    template <class Answer>
    struct Request;
    // What runs in the keychain's thread.
    QObject* worker();

    std::chrono::milliseconds m_patience;
    std::unique_ptr<QThread> m_thread;
    QObject* m_worker = nullptr;
};

}  // namespace steelyard
