#include "app/translations.h"
#include "app/desktop/composition.h"
#include "app/desktop/end_signal.h"
#include "app/desktop/crash_note.h"
#include "app/desktop/long_words.h"
#include "app/desktop/picture.h"
#include "core/base/memory.h"
#include "core/care/closed_process.h"
#include "core/care/event_log.h"
#include "ui/print/fonts.h"
#include "ui/prompt/qt_prompter.h"
#include "ui/shell/actions.h"
#include "ui/shell/book_view.h"
#include "ui/shell/guarded_application.h"
#include "ui/shell/theme.h"

#include <QtCore/QCommandLineParser>
#include <QtCore/QSettings>
#include <QtCore/QTemporaryDir>
#include <QtWidgets/QApplication>

#include <clocale>
#include <cstdio>

namespace {

using namespace steelyard;

struct Wishes {
    QString book;
    std::optional<QDate> asOf;
    ThemeChoice theme = ThemeChoice::System;
    PictureRequest picture;
    QString page;
    QString athlete;
    QString import;
    bool longWords = false;
};

struct MainText {
    Q_DECLARE_TR_FUNCTIONS(MainText)
};

std::optional<QString> readSize(const QString& text, QSize& size)
{
    const QStringList parts = text.split(QLatin1Char('x'));
    const QSize wanted = parts.size() == 2 ? QSize(parts[0].toInt(), parts[1].toInt()) : QSize();
    if (wanted.width() < 200 || wanted.height() < 200 || wanted.width() > 8000 || wanted.height() > 8000)
        return MainText::tr("--size takes width x height between 200 and 8000, for example 1366x768.");
    size = wanted;
    return std::nullopt;
}

// What is wrong with the words of the call; nothing when they can be used.
std::optional<QString> readWishes(const QApplication& app, Wishes& wishes)
{
    QCommandLineParser parser;
    parser.setApplicationDescription(MainText::tr("Weekly review and session sheets for a coach with many lifters."));
    parser.addHelpOption();
    parser.addVersionOption();
    parser.addPositionalArgument(QStringLiteral("book"), MainText::tr("The book to open."), QStringLiteral("[BOOK]"));
    const QCommandLineOption asOf(QStringLiteral("as-of"), MainText::tr("Take DATE for today."),
                                  QStringLiteral("DATE"));
    const QCommandLineOption theme(QStringLiteral("theme"), QStringLiteral("light, dark, system"),
                                   QStringLiteral("THEME"), QStringLiteral("system"));
    const QCommandLineOption picture(QStringLiteral("picture"), MainText::tr("Draw the window into FILE and end."),
                                     QStringLiteral("FILE"));
    const QCommandLineOption size(QStringLiteral("size"), MainText::tr("Size of the picture."), QStringLiteral("WxH"),
                                  QStringLiteral("1366x768"));
    const QCommandLineOption page(QStringLiteral("page"), QStringLiteral("week, lifter, block, floor, first, recovery"),
                                  QStringLiteral("PAGE"), QStringLiteral("week"));
    const QCommandLineOption athlete(QStringLiteral("athlete"), MainText::tr("Choose this lifter."),
                                     QStringLiteral("NAME"));
    const QCommandLineOption then(
        QStringLiteral("then"), MainText::tr("Before the picture, perform this action of the window; may be repeated."),
        QStringLiteral("ACTION"));
    const QCommandLineOption longWords(QStringLiteral("long-words"),
                                       MainText::tr("Write every word longer, as other languages would."));
    const QCommandLineOption import(QStringLiteral("import"), MainText::tr("Bring this logbook file into the book."),
                                    QStringLiteral("LOGBOOK"));
    parser.addOptions({asOf, theme, picture, size, page, athlete, then, longWords, import});
    parser.process(app);

    const QStringList books = parser.positionalArguments();
    if (books.size() > 1) return MainText::tr("One book at a time.");
    wishes.book = books.value(0);
    if (parser.isSet(asOf)) {
        wishes.asOf = QDate::fromString(parser.value(asOf), Qt::ISODate);
        if (!wishes.asOf->isValid()) return MainText::tr("--as-of takes a date such as 2027-03-01.");
    }
    const QStringList themes{QStringLiteral("system"), QStringLiteral("light"), QStringLiteral("dark")};
    const auto themeIndex = themes.indexOf(parser.value(theme));
    if (themeIndex < 0) return MainText::tr("--theme takes light, dark or system.");
    wishes.theme = static_cast<ThemeChoice>(themeIndex);
    wishes.picture.file = parser.value(picture);
    wishes.page = parser.value(page);
    const QStringList pages{QStringLiteral("week"),  QStringLiteral("lifter"), QStringLiteral("block"),
                            QStringLiteral("floor"), QStringLiteral("first"),  QStringLiteral("recovery")};
    if (!pages.contains(wishes.page))
        return MainText::tr("--page takes week, lifter, block, floor, first or recovery.");
    wishes.athlete = parser.value(athlete);
    wishes.import = parser.value(import);
    wishes.longWords = parser.isSet(longWords);
    wishes.picture.actions = parser.values(then);
    return readSize(parser.value(size), wishes.picture.size);
}

EventLog* eventLog = nullptr;  // a message handler is handed nothing

void writeMessage(QtMsgType type, const QMessageLogContext& context, const QString& text)
{
    if (eventLog) eventLog->write(type == QtDebugMsg || type == QtInfoMsg ? u"said" : u"warned", text);
    std::fprintf(stderr, "%s\n", qUtf8Printable(qFormatLogMessage(type, context, text)));
}

// While the event loop runs, until the end of main.
class LogInUse {
public:
    explicit LogInUse(EventLog& log)
    {
        eventLog = &log;
        noteCrashesIn(log.descriptor());
        qInstallMessageHandler(writeMessage);
    }
    ~LogInUse()
    {
        qInstallMessageHandler(nullptr);
        noteCrashesIn(-1);
        eventLog = nullptr;
    }
    Q_DISABLE_COPY_MOVE(LogInUse)
};

// What was stored is stored; the rest of the program may not be as it should. Said once: what draws wrongly draws again and again.
void sayCaught(GuardedApplication& app, EventLog& log, Prompter& prompter, MainWindow& window)
{
    app.setCaught([&, said = false](const QString& kind) mutable {
        log.write(u"caught", kind);
        if (std::exchange(said, true)) return;
        prompter.tellError(
            &window, MainText::tr("Something in the program failed"),
            {ErrorCode::Storage,
             MainText::tr("What was stored before stays stored. Close Steelyard and start it again. Help, "
                          "Save a diagnosis file, writes down what is known of it, without names."),
             kind});
    });
}

int endWith(const QString& message, int status)
{
    std::fprintf(stderr, "steelyard: %s\n", qUtf8Printable(message));
    return status;
}

}  // namespace

int main(int argc, char** argv)
{
    keepFreedMemory();
    closeToOthers();
    GuardedApplication app(argc, argv);
    std::setlocale(LC_NUMERIC, "C");  // Qt took the system's; files and SQLite are read in this one
    steelyard::installTranslations(app);
    QApplication::setApplicationName(QStringLiteral("steelyard"));
    QApplication::setOrganizationName(QStringLiteral("steelyard"));
    QApplication::setApplicationVersion(QStringLiteral(STEELYARD_VERSION));
    QSettings::setDefaultFormat(QSettings::IniFormat);
    Wishes wishes;
    if (const auto problem = readWishes(app, wishes)) return endWith(*problem, 2);
    if (wishes.longWords) QCoreApplication::installTranslator(new LongWords(&app));
    for (const QString& action : wishes.picture.actions)
        if (!findAction(action)) return endWith(MainText::tr("--then: there is no action “%1”.").arg(action), 2);
    applyTheme(app, wishes.theme);
    if (!loadBundledFonts())
        return endWith(MainText::tr("The fonts that come with the program could not be loaded."), 3);

    const SystemClock systemClock;
    const FixedClock fixedClock(wishes.asOf.value_or(systemClock.today()));
    const Clock& clock = wishes.asOf ? static_cast<const Clock&>(fixedClock) : systemClock;
    const QString usualSettings = QSettings().fileName();
    closeFileToOthers(usualSettings);
    // A picture leaves nothing behind: neither what its actions set, nor a backup.
    const bool isPicture = !wishes.picture.file.isEmpty();
    const QTemporaryDir scratch;
    QSettings settings(isPicture ? scratch.filePath(QStringLiteral("settings.ini")) : usualSettings,
                       QSettings::IniFormat);
    EventLog log(EventLog::usualFolder(), systemClock);
    const LogInUse inUse(log);
    log.write(u"begin", QStringLiteral(STEELYARD_VERSION));
    QtPrompter prompter([&log](const Error& error) {
        log.write(u"error", QStringLiteral("%1 %2").arg(static_cast<int>(error.code)).arg(error.detail));
    });
    MainServices services = makeServices(clock, log);
    services.dailyBackups = !isPicture;
    MainWindow window(std::move(services), prompter, clock, settings);
    sayCaught(app, log, prompter, window);
    if (!wishes.book.isEmpty() && wishes.page != QLatin1StringView("first")) {
        const bool opened = window.openBook(wishes.book);
        if (!opened && !wishes.picture.file.isEmpty() && wishes.page != QLatin1StringView("recovery"))
            return endWith(MainText::tr("“%1” could not be opened.").arg(wishes.book), 3);
        if (opened && !wishes.athlete.isEmpty() && !window.view()->chooseLifter(wishes.athlete))
            return endWith(MainText::tr("There is nobody called “%1” in this book.").arg(wishes.athlete), 1);
        if (opened) window.view()->showPlace(wishes.page);
    }
    window.show();
    closeOnSignal(window);
    if (!wishes.import.isEmpty()) window.importFile(wishes.import);
    if (!wishes.picture.file.isEmpty()) takePicture(window, wishes.picture);
    return QApplication::exec();
}
