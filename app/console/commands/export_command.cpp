#include "app/console/commands/commands.h"
#include "core/exchange/book_export.h"
#include "core/storage/athlete_repository.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonArray>
#include <QtCore/QJsonObject>

namespace steelyard {
namespace {

struct ExportCommandText {
    Q_DECLARE_TR_FUNCTIONS(ExportCommandText)
};

Result<void> runExport(const Console& console)
{
    STEELYARD_TRY(const QString path, console.required(QStringLiteral("book")));
    STEELYARD_TRY(const QString dir, console.required(QStringLiteral("to")));
    STEELYARD_TRY(auto database, Database::open(path, Access::ReadOnly));
    std::optional<Id<Athlete>> only;
    if (console.has(QStringLiteral("athlete"))) {
        STEELYARD_TRY(const QString name, console.required(QStringLiteral("athlete")));
        STEELYARD_TRY(const auto athlete, AthleteRepository(*database).findByName(name));
        only = athlete.id;
    }
    STEELYARD_TRY(const ExportReport report, exportBook(*database, dir, only, console.progress()));
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
    return {QStringLiteral("export"),
            ExportCommandText::tr("write everything, or one athlete's whole record, as CSV and JSON"),
            {bookOption(),
             {QStringLiteral("to"), ExportCommandText::tr("The folder to write into."), QStringLiteral("dir")},
             athleteOption()},
            &runExport};
}

}  // namespace steelyard
