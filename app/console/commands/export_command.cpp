#include "app/console/commands/commands.h"
#include "app/console/passphrase_input.h"
#include "core/care/sealed_record.h"
#include "core/exchange/book_export.h"
#include "core/storage/athlete_repository.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFileInfo>
#include <QtCore/QJsonArray>
#include <QtCore/QJsonObject>

namespace steelyard {
namespace {

struct ExportCommandText {
    Q_DECLARE_TR_FUNCTIONS(ExportCommandText)
};

Result<ExportReport> sealTheRecord(const Console& console, Database& database, std::optional<Id<Athlete>> only,
                                   const QString& to)
{
    if (!only)
        return fail(ErrorCode::Unsupported,
                    ExportCommandText::tr("--encrypt needs --athlete NAME. To seal the whole book, use backup."));
    if (QFileInfo::exists(to))
        return fail(ErrorCode::Invalid,
                    ExportCommandText::tr("“%1” is there already and was not touched. Choose another name.").arg(to));
    STEELYARD_TRY(const auto passphrase, readPassphrase(console, Asked::Twice));
    return sealRecord(database, {*only, to, *passphrase}, console.clock(), console.progress());
}

Result<void> runExport(const Console& console)
{
    STEELYARD_TRY(const QString path, console.required(QStringLiteral("book")));
    STEELYARD_TRY(const QString to, console.required(QStringLiteral("to")));
    STEELYARD_TRY(auto database, Database::open(path, Access::ReadOnly));
    std::optional<Id<Athlete>> only;
    if (console.has(QStringLiteral("athlete"))) {
        STEELYARD_TRY(const QString name, console.required(QStringLiteral("athlete")));
        STEELYARD_TRY(const auto athlete, AthleteRepository(*database).findByName(name));
        only = athlete.id;
    }
    STEELYARD_TRY(const ExportReport report, console.has(QStringLiteral("encrypt"))
                                                 ? sealTheRecord(console, *database, only, to)
                                                 : exportBook(*database, to, only, console.progress()));
    if (console.json()) {
        console.print(QJsonDocument(QJsonObject{{QStringLiteral("files"), QJsonArray::fromStringList(report.files)},
                                                {QStringLiteral("athletes"), static_cast<qint64>(report.athletes)},
                                                {QStringLiteral("sets"), static_cast<qint64>(report.sets)}}));
        return {};
    }
    for (const QString& file : report.files) console.print(file);
    console.say(ExportCommandText::tr("Athletes: %1, sets: %2.")
                    .arg(QString::number(report.athletes), QString::number(report.sets)));
    return {};
}

}  // namespace

ConsoleCommand exportCommand()
{
    return {
        QStringLiteral("export"),
        ExportCommandText::tr("write everything, or one athlete's whole record, as CSV and JSON"),
        {bookOption(),
         {QStringLiteral("to"), ExportCommandText::tr("The folder to write into."), QStringLiteral("dir")},
         athleteOption(),
         {QStringLiteral("encrypt"),
          ExportCommandText::tr("Seal one athlete's record into the file named by --to, with a passphrase, read from "
                                "standard input. “restore” opens it as a book.")}},
        &runExport};
}

}  // namespace steelyard
