#include "app/console/commands/commands.h"
#include "core/care/salvage.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonArray>
#include <QtCore/QJsonObject>

namespace steelyard {
namespace {

struct SalvageCommandText {
    Q_DECLARE_TR_FUNCTIONS(SalvageCommandText)
};

QJsonObject toJson(const SalvageReport& report)
{
    QJsonArray tables;
    for (const RescuedTable& table : report.tables)
        tables.append(QJsonObject{{QStringLiteral("table"), table.table},
                                  {QStringLiteral("saved"), static_cast<qint64>(table.rows)},
                                  {QStringLiteral("refused"), static_cast<qint64>(table.refused)},
                                  {QStringLiteral("unreadable"), static_cast<qint64>(table.unreadable)},
                                  {QStringLiteral("end_unknown"), table.endUnknown},
                                  {QStringLiteral("found"), table.wasThere}});
    return {{QStringLiteral("lost"), report.anythingLost()},
            {QStringLiteral("stand_ins"), report.standIns},
            {QStringLiteral("journal_left_out"), report.journalLeftOut},
            {QStringLiteral("unread_bytes"), report.unreadBytes},
            {QStringLiteral("tables"), tables},
            {QStringLiteral("findings"), QJsonArray::fromStringList(report.findings)}};
}

Result<void> runSalvage(const Console& console)
{
    STEELYARD_TRY(const QString damaged, console.required(QStringLiteral("book")));
    STEELYARD_TRY(const QString to, console.required(QStringLiteral("to")));
    STEELYARD_TRY(const SalvageReport report, salvageBook(damaged, to, console.progress()));
    if (console.json()) {
        console.print(QJsonDocument(toJson(report)));
        return {};
    }
    for (const QString& line : salvageLines(report)) console.print(line);
    return {};
}

}  // namespace

ConsoleCommand salvageCommand()
{
    return {QStringLiteral("salvage"),
            SalvageCommandText::tr("save what can be saved from a damaged book into a new one"),
            {bookOption(),
             QCommandLineOption(QStringLiteral("to"), SalvageCommandText::tr("the new book"), QStringLiteral("FILE"))},
            &runSalvage};
}

}  // namespace steelyard
