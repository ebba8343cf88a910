#include "app/console/console.h"

#include <QtCore/QCoreApplication>

#include <cstdio>
#include <unistd.h>

namespace steelyard {
namespace {

struct ConsoleText {
    Q_DECLARE_TR_FUNCTIONS(ConsoleText)
};

void writeLine(std::FILE* to, const QString& text)
{
    const QByteArray utf8 = text.toUtf8();
    std::fwrite(utf8.constData(), 1, static_cast<std::size_t>(utf8.size()), to);
    if (!utf8.endsWith('\n')) std::fputc('\n', to);
    std::fflush(to);
}

}  // namespace

Result<QString> Console::required(const QString& option) const
{
    QString text = value(option);
    if (text.isEmpty()) return fail(ErrorCode::Unsupported, ConsoleText::tr("--%1 is needed here.").arg(option));
    return text;
}

Result<int> Console::integer(const QString& option, int fallback, int low, int high) const
{
    if (!has(option)) return fallback;
    bool ok = false;
    const int number = value(option).toInt(&ok);
    if (!ok || number < low || number > high)
        return fail(ErrorCode::Unsupported, ConsoleText::tr("--%1 is a whole number from %2 to %3.")
                                                .arg(option, QString::number(low), QString::number(high)));
    return number;
}

void Console::print(const QString& text) const
{
    writeLine(stdout, text);
}

void Console::print(const QJsonDocument& document) const
{
    writeLine(stdout, QString::fromUtf8(document.toJson(QJsonDocument::Indented)));
}

void Console::say(const QString& text) const
{
    writeLine(stderr, text);
}

Progress Console::progress() const
{
    if (isatty(fileno(stderr)) == 0) return {};
    return Progress([last = -1](double share) mutable {
        const int percent = static_cast<int>(share * 100);
        if (percent == last) return;
        last = percent;
        std::fprintf(stderr, "\r%3d %%%s", percent, percent >= 100 ? "\n" : "");
        std::fflush(stderr);
    });
}

int exitStatus(ErrorCode code)
{
    switch (code) {
    case ErrorCode::NotFound:
    case ErrorCode::Conflict:
    case ErrorCode::Invalid:
    case ErrorCode::Cancelled:
        return 1;
    case ErrorCode::Unsupported:
        return 2;
    case ErrorCode::Storage:
        return 3;
    case ErrorCode::NewerFormat:
        return 4;
    }
    return 3;
}

QCommandLineOption bookOption()
{
    return {QStringLiteral("book"), ConsoleText::tr("The coach's book."), QStringLiteral("file")};
}

QCommandLineOption athleteOption()
{
    return {QStringLiteral("athlete"), ConsoleText::tr("Only this athlete."), QStringLiteral("name")};
}

}  // namespace steelyard
