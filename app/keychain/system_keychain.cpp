#include "app/keychain/system_keychain.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QPointer>
#include <QtCore/QThread>
#include <QtCore/QTimer>
#include <QtDBus/QDBusConnection>
#include <QtDBus/QDBusMessage>
#include <QtDBus/QDBusObjectPath>
#include <QtDBus/QDBusVariant>

#include <qt6keychain/keychain.h>

namespace steelyard {
namespace {

constexpr auto kService = "org.steelyard.Steelyard";
constexpr unsigned long kMostMsToEnd = 500;
constexpr int kMostMsToAsk = 1000;

struct KeychainText {
    Q_DECLARE_TR_FUNCTIONS(KeychainText)
};

Error errorOf(const QKeychain::Job& job)
{
    switch (job.error()) {
    case QKeychain::AccessDeniedByUser:
    case QKeychain::AccessDenied:
        return {ErrorCode::Cancelled, KeychainText::tr("The keychain stayed locked. Type the passphrase instead."),
                job.errorString()};
    case QKeychain::NoBackendAvailable:
    case QKeychain::NotImplemented:
        return {ErrorCode::Unsupported,
                KeychainText::tr("This computer has no keychain that can be reached. Type the passphrase instead."),
                job.errorString()};
    default:
        return {ErrorCode::Storage, KeychainText::tr("The keychain failed. Type the passphrase instead."),
                job.errorString()};
    }
}

Error tooSlow()
{
    return {ErrorCode::Storage, KeychainText::tr("The keychain did not answer. Type the passphrase instead."), {}};
}

// A Secret Service that is locked, with nobody there to unlock it, is reported by QtKeychain as one without the entry. Asked in
// the keychain's own thread, so this may wait.
bool isSecretServiceLocked()
{
    const auto ask = [](const QString& path, const QString& interface, const QString& method,
                        const QVariantList& with) {
        QDBusMessage call =
            QDBusMessage::createMethodCall(QStringLiteral("org.freedesktop.secrets"), path, interface, method);
        call.setArguments(with);
        return QDBusConnection::sessionBus().call(call, QDBus::Block, kMostMsToAsk).arguments().value(0);
    };
    const auto collection =
        ask(QStringLiteral("/org/freedesktop/secrets"), QStringLiteral("org.freedesktop.Secret.Service"),
            QStringLiteral("ReadAlias"), {QStringLiteral("default")})
            .value<QDBusObjectPath>()
            .path();
    if (collection.size() < 2) return false;  // no service, or no collection to be locked
    return ask(collection, QStringLiteral("org.freedesktop.DBus.Properties"), QStringLiteral("Get"),
               {QStringLiteral("org.freedesktop.Secret.Collection"), QStringLiteral("Locked")})
        .value<QDBusVariant>()
        .variant()
        .toBool();
}

Error stayedLocked()
{
    return {ErrorCode::Cancelled, KeychainText::tr("The keychain stayed locked. Type the passphrase instead."), {}};
}

Result<std::optional<QString>> whatWasRead(const QKeychain::Job& job)
{
    if (job.error() == QKeychain::EntryNotFound && isSecretServiceLocked()) return fail(stayedLocked());
    if (job.error() == QKeychain::EntryNotFound) return std::nullopt;
    if (job.error() != QKeychain::NoError) return fail(errorOf(job));
    QString secret = static_cast<const QKeychain::ReadPasswordJob&>(job).textData();
    // An entry without anything in it is no passphrase that anybody set.
    if (secret.isEmpty()) return std::nullopt;
    return std::optional(std::move(secret));
}

Result<void> whetherDone(const QKeychain::Job& job)
{
    if (job.error() != QKeychain::NoError) return fail(errorOf(job));
    return {};
}

// A locked service says that nothing was there to delete, or that all went well, and keeps the entry.
Result<void> whetherGone(const QKeychain::Job& job)
{
    const bool said = job.error() == QKeychain::NoError || job.error() == QKeychain::EntryNotFound;
    if (said && isSecretServiceLocked()) return fail(stayedLocked());
    if (said) return {};
    return whetherDone(job);
}

}  // namespace

// One call: answered once, by the keychain or by the end of patience, in the owner's thread.
template <class Answer>
struct SystemKeychain::Request : std::enable_shared_from_this<Request<Answer>> {
    std::function<void(Answer)> then;
    bool answered = false;

    void answer(Answer with)
    {
        if (std::exchange(answered, true)) return;
        then(std::move(with));
    }
    static std::shared_ptr<Request> begin(QObject* owner, std::chrono::milliseconds patience,
                                          std::function<void(Answer)> then)
    {
        auto request = std::make_shared<Request>();
        request->then = std::move(then);
        QTimer::singleShot(patience, owner, [request] { request->answer(fail(tooSlow())); });
        return request;
    }
    // In the keychain's thread.
    template <class Job>
    void start(Job* job, const QPointer<QObject>& owner, Answer (*meaning)(const QKeychain::Job&))
    {
        job->setInsecureFallback(false);
        job->setAutoDelete(true);
        QObject::connect(job, &QKeychain::Job::finished, job,
                         [self = this->shared_from_this(), owner, meaning](QKeychain::Job* done) {
                             if (!owner) return;
                             QMetaObject::invokeMethod(
                                 owner, [self, with = meaning(*done)] { self->answer(with); }, Qt::QueuedConnection);
                         });
        job->start();
    }
};

SystemKeychain::SystemKeychain(std::chrono::milliseconds patience) : m_patience(patience) {}

SystemKeychain::~SystemKeychain()
{
    if (!m_thread) return;
    m_thread->quit();
    // A thread that hangs in the session bus can't be ended; the program's end must not wait for it.
    if (m_thread->wait(kMostMsToEnd)) return;
    [[maybe_unused]] const QThread* const left = m_thread.release();
}

QObject* SystemKeychain::worker()
{
    if (!m_thread) {
        m_thread = std::make_unique<QThread>();
        m_thread->setObjectName(QStringLiteral("keychain"));
        m_worker = new QObject;
        m_worker->moveToThread(m_thread.get());
        QObject::connect(m_thread.get(), &QThread::finished, m_worker, &QObject::deleteLater);
        m_thread->start();
    }
    return m_worker;
}

void SystemKeychain::read(const QString& key, QObject* owner, Read then)
{
    auto request = Request<Result<std::optional<QString>>>::begin(owner, m_patience, std::move(then));
    QMetaObject::invokeMethod(worker(), [request, key, from = QPointer(owner)] {
        auto* job = new QKeychain::ReadPasswordJob(QString::fromLatin1(kService));
        job->setKey(key);
        request->start(job, from, whatWasRead);
    });
}

void SystemKeychain::keep(const QString& key, const QString& secret, QObject* owner, Done then)
{
    auto request = Request<Result<void>>::begin(owner, m_patience, std::move(then));
    QMetaObject::invokeMethod(worker(), [request, key, secret, from = QPointer(owner)] {
        auto* job = new QKeychain::WritePasswordJob(QString::fromLatin1(kService));
        job->setKey(key);
        job->setTextData(secret);
        request->start(job, from, whetherDone);
    });
}

void SystemKeychain::forget(const QString& key, QObject* owner, Done then)
{
    auto request = Request<Result<void>>::begin(owner, m_patience, std::move(then));
    QMetaObject::invokeMethod(worker(), [request, key, from = QPointer(owner)] {
        auto* job = new QKeychain::DeletePasswordJob(QString::fromLatin1(kService));
        job->setKey(key);
        request->start(job, from, whetherGone);
    });
}

}  // namespace steelyard
