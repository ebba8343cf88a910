#include "app/console/commands/commands.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFileInfo>
#include <QtCore/QProcess>

namespace steelyard {
namespace {

struct SheetsCommandText {
    Q_DECLARE_TR_FUNCTIONS(SheetsCommandText)
};

// Drawing text needs fonts, and fonts live in the GUI module, which this program must not load: the painter is a program
// of its own beside it.
Result<void> runSheets(const Console& console)
{
    QStringList words;
    for (const char* needed : {"book", "date", "pdf"}) {
        const QString option = QString::fromLatin1(needed);
        STEELYARD_TRY(const QString value, console.required(option));
        words << QStringLiteral("--") + option << value;
    }
    for (const char* optional : {"days", "athlete", "paper", "layout"}) {
        const QString option = QString::fromLatin1(optional);
        if (console.has(option)) words << QStringLiteral("--") + option << console.value(option);
    }
    const QString painter = QCoreApplication::applicationDirPath() + QStringLiteral("/steelyard-paper");
    if (!QFileInfo(painter).isExecutable())
        return fail(ErrorCode::Unsupported,
                    SheetsCommandText::tr("“%1” is not there; sheets are painted by it. Install Steelyard whole.")
                        .arg(painter));
    const int status = QProcess::execute(painter, words);
    switch (status) {
    case 0:
        return {};
    case 1:
        return fail(ErrorCode::Invalid, {});  // it has said what and how to mend it
    case 2:
        return fail(ErrorCode::Unsupported, {});
    case 4:
        return fail(ErrorCode::NewerFormat, {});
    default:
        return fail(ErrorCode::Storage, {});
    }
}

}  // namespace

ConsoleCommand sheetsCommand()
{
    return {QStringLiteral("sheets"),
            SheetsCommandText::tr("session sheets as a PDF"),
            {bookOption(),
             athleteOption(),
             {QStringLiteral("date"), SheetsCommandText::tr("The first day."), QStringLiteral("date")},
             {QStringLiteral("days"), SheetsCommandText::tr("How many days."), QStringLiteral("n")},
             {QStringLiteral("paper"), SheetsCommandText::tr("A4 or Letter."), QStringLiteral("size")},
             {QStringLiteral("layout"),
              SheetsCommandText::tr("page (one lifter), group (several), week (of a lifter) or day (of the gym)."),
              QStringLiteral("layout")},
             {QStringLiteral("pdf"), SheetsCommandText::tr("The file to write."), QStringLiteral("file")}},
            &runSheets};
}

}  // namespace steelyard
