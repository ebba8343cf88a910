// steelyard-paper: session sheets as a PDF. Its words and exit statuses are those of the console's `sheets`.
//
//   steelyard-paper --book club.steelyard --date 2027-03-01 --days 7 --paper A4 --pdf week.pdf
#include "app/translations.h"
#include "core/book/day_sheets.h"
#include "core/care/closed_process.h"
#include "core/storage/gym_repository.h"
#include "ui/print/fonts.h"
#include "ui/print/paper_layouts.h"
#include "ui/print/pdf_writer.h"
#include "ui/print/week_layout.h"

#include <QtCore/QCommandLineParser>
#include <QtCore/QFileInfo>
#include <QtGui/QGuiApplication>

#include <clocale>
#include <cstdio>

namespace steelyard {
namespace {

struct PaperProgramText {
    Q_DECLARE_TR_FUNCTIONS(PaperProgramText)
};

enum ExitStatus { Done = 0, Refused = 1, WrongWords = 2, StorageFailed = 3, NeedsNewer = 4 };

struct PaperCall {
    QString book;
    DaySheetsRequest request;
    PaperSize paper = PaperSize::A4;
    PaperLayout layout = PaperLayout::Page;
    QString pdf;
};

int sayPaper(const QString& text, ExitStatus status)
{
    std::fputs(qPrintable(text + QLatin1Char('\n')), status == Done ? stdout : stderr);
    return status;
}

ExitStatus statusOf(ErrorCode code)
{
    switch (code) {
    case ErrorCode::Storage:
        return StorageFailed;
    case ErrorCode::NewerFormat:
        return NeedsNewer;
    case ErrorCode::Unsupported:
        return WrongWords;
    case ErrorCode::NotFound:
    case ErrorCode::Conflict:
    case ErrorCode::Invalid:
    case ErrorCode::Cancelled:
        break;
    }
    return Refused;
}

void addPaperOptions(QCommandLineParser& parser)
{
    parser.setApplicationDescription(PaperProgramText::tr("Session sheets as a PDF."));
    parser.addOptions(
        {{QStringLiteral("book"), PaperProgramText::tr("The book."), QStringLiteral("FILE")},
         {QStringLiteral("date"), PaperProgramText::tr("First day, as 2027-03-01."), QStringLiteral("DATE")},
         {QStringLiteral("days"), PaperProgramText::tr("How many days from it."), QStringLiteral("N")},
         {QStringLiteral("athlete"), PaperProgramText::tr("This lifter only."), QStringLiteral("NAME")},
         {QStringLiteral("paper"), PaperProgramText::tr("A4 or Letter."), QStringLiteral("SIZE")},
         {QStringLiteral("layout"), PaperProgramText::tr("page, group, week or day."), QStringLiteral("LAYOUT")},
         {QStringLiteral("pdf"), PaperProgramText::tr("The file to write."), QStringLiteral("OUT")}});
    parser.addHelpOption();
}

// A week at a glance has its seven days from a Monday on, whichever day of it was named.
Result<void> readLayout(const QCommandLineParser& parser, PaperCall& call)
{
    if (!parser.isSet(QStringLiteral("layout"))) return {};
    const auto layout = paperLayoutFrom(parser.value(QStringLiteral("layout")));
    if (!layout) return fail(ErrorCode::Unsupported, PaperProgramText::tr("--layout is page, group, week or day."));
    call.layout = *layout;
    if (*layout != PaperLayout::Week) return {};
    if (parser.isSet(QStringLiteral("days")))
        return fail(ErrorCode::Unsupported, PaperProgramText::tr("--layout week is a week; leave out --days."));
    call.request.from = weekBegin(call.request.from);
    call.request.days = 7;
    return {};
}

Result<PaperCall> readCall(const QCommandLineParser& parser)
{
    PaperCall call;
    for (const auto& needed : {QStringLiteral("book"), QStringLiteral("date"), QStringLiteral("pdf")})
        if (parser.value(needed).isEmpty())
            return fail(ErrorCode::Unsupported, PaperProgramText::tr("--%1 is missing. See --help.").arg(needed));
    if (!parser.positionalArguments().isEmpty())
        return fail(
            ErrorCode::Unsupported,
            PaperProgramText::tr("“%1” is not understood. See --help.").arg(parser.positionalArguments().front()));
    call.book = parser.value(QStringLiteral("book"));
    call.pdf = parser.value(QStringLiteral("pdf"));
    call.request.from = QDate::fromString(parser.value(QStringLiteral("date")), Qt::ISODate);
    if (!call.request.from.isValid())
        return fail(ErrorCode::Unsupported, PaperProgramText::tr("--date “%1” is no day; write it as 2027-03-01.")
                                                .arg(parser.value(QStringLiteral("date"))));
    if (parser.isSet(QStringLiteral("days"))) {
        bool number = false;
        call.request.days = parser.value(QStringLiteral("days")).toInt(&number);
        if (!number || call.request.days < 1 || call.request.days > kMostSheetDays)
            return fail(ErrorCode::Unsupported,
                        PaperProgramText::tr("--days is a whole number from 1 to %1.").arg(kMostSheetDays));
    }
    if (parser.isSet(QStringLiteral("athlete"))) call.request.athlete = parser.value(QStringLiteral("athlete"));
    if (parser.isSet(QStringLiteral("paper"))) {
        const auto paper = paperSizeFrom(parser.value(QStringLiteral("paper")));
        if (!paper) return fail(ErrorCode::Unsupported, PaperProgramText::tr("--paper is A4 or Letter."));
        call.paper = *paper;
    }
    STEELYARD_CHECK(readLayout(parser, call));
    return call;
}

// A PDF over the book itself would be the end of the book.
Result<void> checkTarget(const PaperCall& call)
{
    const QString book = QFileInfo(call.book).canonicalFilePath();
    if (!book.isEmpty() && book == QFileInfo(call.pdf).canonicalFilePath())
        return fail(ErrorCode::Invalid, PaperProgramText::tr("--pdf names the book itself. Choose another file."));
    return {};
}

Result<int> writePaper(const PaperCall& call)
{
    STEELYARD_CHECK(checkTarget(call));
    STEELYARD_TRY(const auto database, Database::open(call.book, Access::ReadOnly));
    STEELYARD_TRY(auto made, readDaySheets(*database, call.request, Progress()));
    if (made.empty())
        return fail(ErrorCode::Invalid,
                    PaperProgramText::tr(
                        "Nobody is expected from %1 for %n day(s): there is no planned day, and nobody "
                        "trained on that weekday in two of the last four weeks. Name a lifter with --athlete to "
                        "get a sheet all the same.",
                        nullptr, call.request.days)
                        .arg(call.request.from.toString(Qt::ISODate)));
    std::vector<SessionSheet> sheets;
    for (DaySheet& day : made) sheets.push_back(std::move(day.sheet));
    STEELYARD_TRY(const auto gyms, GymRepository(*database).all());
    STEELYARD_CHECK(writePagesPdf(layOutPapers(call.layout, {sheets, gyms}, call.paper), call.paper,
                                  PaperProgramText::tr("Session sheets"), call.pdf));
    return static_cast<int>(sheets.size());
}

int runPaper(const QStringList& arguments)
{
    QCommandLineParser parser;
    addPaperOptions(parser);
    if (!parser.parse(arguments)) return sayPaper(parser.errorText(), WrongWords);
    if (parser.isSet(QStringLiteral("help"))) return sayPaper(parser.helpText(), Done);
    const auto call = readCall(parser);
    if (!call) return sayPaper(call.error().what, statusOf(call.error().code));
    if (!loadBundledFonts())
        return sayPaper(PaperProgramText::tr("The program's own fonts could not be read."), StorageFailed);
    const auto count = writePaper(*call);
    if (!count) return sayPaper(count.error().what, statusOf(count.error().code));
    return sayPaper(PaperProgramText::tr("%n sheet(s) in %1", nullptr, *count).arg(call->pdf), Done);
}

}  // namespace
}  // namespace steelyard

int main(int argc, char** argv)
{
    steelyard::closeToOthers();
    // Nothing is shown, so a display is neither needed nor asked for; a platform named from outside is kept.
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QGuiApplication application(argc, argv);
    std::setlocale(LC_NUMERIC, "C");
    steelyard::installTranslations(application);
    QCoreApplication::setApplicationName(QStringLiteral("steelyard-paper"));
    return steelyard::runPaper(QCoreApplication::arguments());
}
