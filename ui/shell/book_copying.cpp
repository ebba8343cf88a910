#include "ui/shell/book_copying.h"

#include "core/book/book.h"
#include "core/storage/book_copy.h"
#include "ui/jobs/job.h"
#include "ui/prompt/prompter.h"
#include "ui/shell/context.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QDir>
#include <QtCore/QFileInfo>

namespace steelyard {
namespace {

struct CopyText {
    Q_DECLARE_TR_FUNCTIONS(CopyText)
};

QString suggestedCopy(const UiContext& context)
{
    const QFileInfo book(context.book.path());
    return book.dir().filePath(
        CopyText::tr("%1 of %2").arg(book.completeBaseName(), context.clock.today().toString(Qt::ISODate))
        + QStringLiteral(".steelyard"));
}

void copyTo(const UiContext& context, QWidget* owner, const QString& path, std::function<void(const QString&)> say)
{
    const auto done = [&prompter = context.prompter, owner, path, say = std::move(say)](const Result<void>& made) {
        if (made)
            say(CopyText::tr("A copy with everything that was saved is in “%1”.").arg(path));
        else
            prompter.tellError(owner, CopyText::tr("The copy could not be made"), made.error());
    };
    // What lost its place is only there for the connection that holds it, in this thread.
    if (!context.book.database().checkPlace()) return done(copyBook(context.book.database(), path));
    context.jobs.run(
        owner, CopyText::tr("Saving a copy"),
        [book = context.book.path(), path](const Progress&) -> Result<void> {
            STEELYARD_TRY(const auto database, Database::openReader(book));
            return copyBook(*database, path);
        },
        done);
}

}  // namespace

void saveCopy(const UiContext& context, QWidget* owner, std::function<void(const QString&)> say)
{
    const FileQuestion question{CopyText::tr("Save a copy of this book"), suggestedCopy(context),
                                CopyText::tr("Books (*.steelyard)"), QStringLiteral("steelyard")};
    context.prompter.chooseFileToSave(owner, question, [&context, owner, say = std::move(say)](const QString& path) {
        copyTo(context, owner, path, say);
    });
}

}  // namespace steelyard
