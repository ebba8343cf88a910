#include "app/console/commands/commands.h"
#include "core/exchange/new_book.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct NewCommandText {
    Q_DECLARE_TR_FUNCTIONS(NewCommandText)
};

Result<void> runNew(const Console& console)
{
    STEELYARD_TRY(const QString path, console.required(QStringLiteral("book")));
    STEELYARD_TRY(const auto book, newBook(path, console.clock()));
    STEELYARD_TRY(const Library library, book->library().read());
    console.say(NewCommandText::tr("Made “%1” with %2 variants of %3 exercises.")
                    .arg(path, QString::number(library.variants.size()), QString::number(library.exercises.size())));
    return {};
}

}  // namespace

ConsoleCommand newCommand()
{
    return {QStringLiteral("new"),
            NewCommandText::tr("make an empty book with the starter library"),
            {bookOption()},
            &runNew};
}

}  // namespace steelyard
