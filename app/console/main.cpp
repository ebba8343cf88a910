#include "app/translations.h"
#include "app/console/commands/commands.h"
#include "core/base/memory.h"
#include "core/care/closed_process.h"

#include <QtCore/QCoreApplication>

#include <clocale>
#include <cstdio>

namespace steelyard {
namespace {

struct MainText {
    Q_DECLARE_TR_FUNCTIONS(MainText)
};

std::vector<ConsoleCommand> allCommands()
{
    return {newCommand(),    demoCommand(),     importCommand(), exportCommand(),  eraseCommand(),
            reviewCommand(), forecastCommand(), learnCommand(),  planCommand(),    trialCommand(),
            sheetsCommand(), verifyCommand(),   backupCommand(), restoreCommand(), salvageCommand()};
}

QString commandList(const std::vector<ConsoleCommand>& commands)
{
    QString text;
    for (const ConsoleCommand& command : commands)
        text += QStringLiteral("  %1%2\n").arg(command.name.leftJustified(10), command.does);
    return text;
}

int refuse(const QString& text)
{
    std::fprintf(stderr, "%s\n", text.toUtf8().constData());
    return exitStatus(ErrorCode::Unsupported);
}

int runCommand(const ConsoleCommand& command, const QStringList& arguments)
{
    QCommandLineParser words;
    words.setApplicationDescription(QStringLiteral("steelyard-console %1: %2").arg(command.name, command.does));
    words.addOption({QStringLiteral("json"), MainText::tr("Print one JSON document.")});
    words.addOption({QStringLiteral("as-of"), MainText::tr("Take this day for today."), QStringLiteral("date")});
    const QCommandLineOption help = words.addHelpOption();
    for (const QCommandLineOption& option : command.options) words.addOption(option);
    if (!words.parse(arguments)) return refuse(words.errorText());
    if (words.isSet(help)) {
        std::printf("%s", words.helpText().toUtf8().constData());
        return 0;
    }
    std::unique_ptr<Clock> clock = std::make_unique<SystemClock>();
    if (words.isSet(QStringLiteral("as-of"))) {
        const QDate day = QDate::fromString(words.value(QStringLiteral("as-of")), Qt::ISODate);
        if (!day.isValid()) return refuse(MainText::tr("--as-of is a date like 2027-03-01."));
        clock = std::make_unique<FixedClock>(day);
    }
    const Console console(words, *clock);
    const Result<void> outcome = command.run(console);
    if (outcome) return 0;
    if (!outcome.error().what.isEmpty()) console.say(outcome.error().what);
    if (!outcome.error().detail.isEmpty()) console.say(QStringLiteral("(%1)").arg(outcome.error().detail));
    return exitStatus(outcome.error().code);
}

int runConsole(const QStringList& arguments)
{
    const auto commands = allCommands();
    const QString name = arguments.value(1);
    if (name == QStringLiteral("--version")) {
        std::printf("steelyard-console %s\n", STEELYARD_VERSION);
        return 0;
    }
    if (name == QStringLiteral("--help")) {
        std::printf("%s", commandList(commands).toUtf8().constData());
        return 0;
    }
    for (const ConsoleCommand& command : commands)
        if (command.name == name) return runCommand(command, arguments);
    return refuse(MainText::tr("Say what to do:\n%1").arg(commandList(commands)));
}

}  // namespace
}  // namespace steelyard

int main(int argc, char** argv)
{
    steelyard::keepFreedMemory();
    steelyard::closeToOthers();
    QCoreApplication app(argc, argv);
    QCoreApplication::setApplicationName(QStringLiteral("steelyard-console"));
    QCoreApplication::setApplicationVersion(QStringLiteral(STEELYARD_VERSION));
    std::setlocale(LC_NUMERIC, "C");
    steelyard::installTranslations(app);
    return steelyard::runConsole(QCoreApplication::arguments());
}
