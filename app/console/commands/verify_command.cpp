#include "app/console/commands/commands.h"
#include "core/book/verify.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonArray>
#include <QtCore/QJsonObject>

namespace steelyard {
namespace {

struct VerifyCommandText {
    Q_DECLARE_TR_FUNCTIONS(VerifyCommandText)
};

Result<void> runVerify(const Console& console)
{
    STEELYARD_TRY(const QString path, console.required(QStringLiteral("book")));
    STEELYARD_TRY(auto database, Database::open(path, Access::ReadOnly));
    STEELYARD_TRY(const VerifyReport report, verifyBook(*database, console.progress()));
    if (console.json()) {
        console.print(
            QJsonDocument(QJsonObject{{QStringLiteral("sound"), report.findings.isEmpty()},
                                      {QStringLiteral("athletes"), report.athletes},
                                      {QStringLiteral("sessions"), report.sessions},
                                      {QStringLiteral("sets"), report.sets},
                                      {QStringLiteral("findings"), QJsonArray::fromStringList(report.findings)}}));
    } else {
        console.print(VerifyCommandText::tr("%1 athletes, %2 sessions, %3 sets looked at.")
                          .arg(report.athletes)
                          .arg(report.sessions)
                          .arg(report.sets));
        for (const QString& finding : report.findings) console.print(finding);
    }
    if (!report.findings.isEmpty())
        return fail(ErrorCode::Storage,
                    VerifyCommandText::tr("This book is not sound: %n finding(s). Make a copy, then restore a backup.",
                                          nullptr, static_cast<int>(report.findings.size())));
    if (!console.json()) console.print(VerifyCommandText::tr("The book is sound."));
    return {};
}

}  // namespace

ConsoleCommand verifyCommand()
{
    return {QStringLiteral("verify"),
            VerifyCommandText::tr("check a book's file and everything in it"),
            {bookOption()},
            &runVerify};
}

}  // namespace steelyard
