// Asks the system's keychain one thing and prints the answer, for keychain_test.cpp, which runs it on session buses of its own.
//
//   keychain_probe read KEY | keep KEY SECRET | forget KEY
//
// Prints "secret …", "missing", "done" or "failed CODE", then how long it took and how often the main thread came round.
#include "app/keychain/system_keychain.h"
#include "core/base/steady_clock.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QTimer>

#include <cstdio>

using namespace steelyard;

namespace {

const char* nameOf(ErrorCode code)
{
    switch (code) {
    case ErrorCode::Unsupported:
        return "unsupported";
    case ErrorCode::Cancelled:
        return "cancelled";
    default:
        return "storage";
    }
}

void print(const Result<void>& answer)
{
    std::printf(answer ? "done\n" : "failed %s\n", answer ? "" : nameOf(answer.error().code));
    if (!answer) std::fprintf(stderr, "%s\n", qPrintable(answer.error().detail));
}

void print(const Result<std::optional<QString>>& answer)
{
    if (!answer) return print(Result<void>(fail(answer.error())));
    std::printf(*answer ? "secret %s\n" : "missing\n", *answer ? qPrintable(**answer) : "");
}

}  // namespace

int main(int argc, char** argv)
{
    const QCoreApplication app(argc, argv);
    const QStringList words = QCoreApplication::arguments();
    SystemKeychain keychain;
    QObject owner;
    QTimer heart;
    int beats = 0;
    QObject::connect(&heart, &QTimer::timeout, &heart, [&] { ++beats; });
    heart.start(50);
    const auto began = steadyNow();
    const auto end = [&](const auto& answer) {
        print(answer);
        std::printf("ms %lld beats %d\n", static_cast<long long>((steadyNow() - began).count()), beats);
        QCoreApplication::quit();
    };
    const QString key = words.value(2);
    if (words.value(1) == QLatin1String("keep"))
        keychain.keep(key, words.value(3), &owner, [&](const Result<void>& answer) { end(answer); });
    else if (words.value(1) == QLatin1String("forget"))
        keychain.forget(key, &owner, [&](const Result<void>& answer) { end(answer); });
    else
        keychain.read(key, &owner, [&](const Result<std::optional<QString>>& answer) { end(answer); });
    return QCoreApplication::exec();
}
