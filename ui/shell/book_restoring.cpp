#include "ui/shell/book_restoring.h"

#include "ui/jobs/job.h"
#include "ui/prompt/prompter.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFileInfo>

namespace steelyard {
namespace {

struct RestoringText {
    Q_DECLARE_TR_FUNCTIONS(RestoringText)
};

using SharedStaged = std::shared_ptr<StagedBook>;

void tellRestored(const RestoreStage& stage, const Result<RestoredBook>& done)
{
    if (!done) {
        stage.prompter.tellError(stage.window, RestoringText::tr("The backup was not restored"), done.error());
        return;
    }
    stage.say(
        done->setAside.isEmpty()
            ? RestoringText::tr("Restored")
            : RestoringText::tr("Restored. The book as it was is “%1”.").arg(QFileInfo(done->setAside).fileName()));
}

void putIn(const RestoreStage& stage, const SharedStaged& staged)
{
    stage.jobs.run(
        stage.window, RestoringText::tr("Restoring"),
        [staged, shelf = stage.shelf, &clock = stage.clock](const Progress&) {
            return finishRestore(*staged, shelf, clock);
        },
        [stage, book = staged->book()](const Result<RestoredBook>& done) {
            stage.open(book);
            tellRestored(stage, done);
        });
}

}  // namespace

void restoreBook(const RestoreStage& stage, const RestoreWish& wish)
{
    const auto work = [wish, &clock = stage.clock](const Progress& progress) -> Result<SharedStaged> {
        STEELYARD_TRY(auto staged, stageRestore(wish, clock, progress));
        return std::make_shared<StagedBook>(std::move(staged));
    };
    stage.jobs.run(stage.window, RestoringText::tr("Getting the backup ready"), work,
                   [stage](const Result<SharedStaged>& staged) {
                       if (!staged) {
                           stage.prompter.tellError(stage.window, RestoringText::tr("The backup was not restored"),
                                                    staged.error());
                           return;
                       }
                       stage.close();
                       // A worker that still writes would take the new book's journal for the old one's.
                       whenNothingRuns(stage.jobs, stage.window, [stage, staged = *staged] { putIn(stage, staged); });
                   });
}

}  // namespace steelyard
