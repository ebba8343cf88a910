#include "app/translations.h"
#include "app/desktop/composition.h"
#include "app/desktop/end_signal.h"
#include "app/desktop/long_words.h"
#include "app/desktop/picture.h"
#include "core/base/memory.h"
#include "ui/print/fonts.h"
#include "ui/prompt/qt_prompter.h"
#include "ui/shell/actions.h"
#include "ui/shell/book_view.h"
#include "ui/shell/theme.h"

#include <QtCore/QCommandLineParser>
#include <QtCore/QSettings>
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

int endWith(const QString& message, int status)
{
    std::fprintf(stderr, "steelyard: %s\n", qUtf8Printable(message));
    return status;
}

}  // namespace

int main(int argc, char** argv)
{
    keepFreedMemory();
    QApplication app(argc, argv);
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
    QSettings settings;
    QtPrompter prompter;
    MainServices services = makeServices(clock);
    services.dailyBackups = wishes.picture.file.isEmpty();  // a picture leaves nothing behind
    MainWindow window(std::move(services), prompter, clock, settings);
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
