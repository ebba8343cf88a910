#include "ui/shell/opened_book.h"

#include "core/book/book.h"
#include "core/book/verify.h"
#include "core/storage/book_place.h"
#include "ui/jobs/job.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct OpenedBookText {
    Q_DECLARE_TR_FUNCTIONS(OpenedBookText)
};

}  // namespace

QString standingOf(const Book& book)
{
    QString place = placeSentence(placeCaution(fileSystemAt(book.path()), book.path()));
    if (!place.isEmpty()) return place;
    return book.isReadOnly() ? OpenedBookText::tr("Read only")
                             : OpenedBookText::tr("Everything is saved as it is typed");
}

void lookOver(JobRunner& jobs, QObject* owner, const QString& path, std::function<void(const Error&)> damaged)
{
    jobs.run(
        owner, OpenedBookText::tr("Looking the book over"),
        [path](const Progress&) -> Result<void> {
            STEELYARD_TRY(const auto reader, Database::openReader(path));
            return checkPages(*reader);
        },
        [damaged = std::move(damaged)](const Result<void>& sound) {
            if (!sound && sound.error().code == ErrorCode::Storage) damaged(sound.error());
        });
}

}  // namespace steelyard
