#include "app/console/commands/commands.h"
#include "core/exchange/new_book.h"
#include "core/samples/sample_club.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFile>

namespace steelyard {
namespace {

struct DemoCommandText {
    Q_DECLARE_TR_FUNCTIONS(DemoCommandText)
};

Result<void> runDemo(const Console& console)
{
    STEELYARD_TRY(const QString path, console.required(QStringLiteral("book")));
    SampleClubOptions options;
    STEELYARD_TRY(options.athletes, console.integer(QStringLiteral("athletes"), 24, 1, 500));
    STEELYARD_TRY(options.years, console.integer(QStringLiteral("years"), 3, 1, 10));
    STEELYARD_TRY(const int seed, console.integer(QStringLiteral("seed"), 1, 0, 2'000'000'000));
    options.seed = static_cast<std::uint64_t>(seed);
    options.lastDay = console.clock().today();
    auto made = newBook(path, console.clock());
    if (!made) return fail(made.error());
    if (const auto filled = fillSampleClub(**made, options, console.progress()); !filled) {
        made->reset();
        QFile::remove(path);  // ours, made a moment ago
        return filled;
    }
    STEELYARD_TRY(const auto sets, (*made)->database().integer("SELECT count(*) FROM set_entry"));
    console.say(DemoCommandText::tr("Made “%1”: an invented club of %2 with %3 sets up to %4.")
                    .arg(path, QString::number(options.athletes), QString::number(sets),
                         options.lastDay.toString(Qt::ISODate)));
    return {};
}

}  // namespace

ConsoleCommand demoCommand()
{
    return {
        QStringLiteral("demo"),
        DemoCommandText::tr("make a book filled with an invented club"),
        {bookOption(),
         {QStringLiteral("athletes"), DemoCommandText::tr("How many, 1 to 500."), QStringLiteral("n")},
         {QStringLiteral("years"), DemoCommandText::tr("How many years of sessions, 1 to 10."), QStringLiteral("y")},
         {QStringLiteral("seed"), DemoCommandText::tr("The same seed gives the same club."), QStringLiteral("s")}},
        &runDemo};
}

}  // namespace steelyard
