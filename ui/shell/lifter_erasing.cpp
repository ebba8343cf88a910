#include "ui/shell/lifter_erasing.h"

#include "core/care/backup_shelf.h"
#include "core/care/erased_list.h"
#include "core/care/health_consent.h"
#include "core/care/settings_traces.h"
#include "ui/jobs/job.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QLocale>
#include <QtCore/QSettings>

namespace steelyard {
namespace {

struct LifterErasingText {
    Q_DECLARE_TR_FUNCTIONS(LifterErasingText)
};

struct ErasedFile {
    bool fileCleaned = true;
    QString why;
    std::int64_t rows = 0;
    QStringList stillNaming;
    QString backup;  // of just before; it holds them
};

Result<ErasedFile> eraseInFile(const QString& path, const QString& shelf, const Clock& clock, const EraseWish& wish)
{
    ErasedFile erased;
    {
        STEELYARD_TRY(const auto book, Book::open(path, clock));
        // For the others' sake: what follows writes the whole file anew, and can't be undone.
        if (!shelf.isEmpty()) {
            STEELYARD_TRY(const Backup kept, BackupShelf(shelf, clock).keep(book->database(), BackupReason::Erase));
            erased.backup = kept.path;
        }
        if (wish.healthOnly) {
            STEELYARD_TRY(const auto report, withdrawHealthConsent(*book, wish.athlete));
            erased.fileCleaned = report.fileCleaned;
            return erased;
        }
        STEELYARD_TRY(const ErasurePlan plan, planErasure(book->database(), wish.athlete));
        erased.rows = plan.rows();
        STEELYARD_TRY(const ErasureReport report, eraseAthlete(*book, wish.athlete));
        erased.fileCleaned = report.fileCleaned;
        erased.why = report.why;
        if (const auto kept = shelf.isEmpty() ? Result<void>() : rememberErased(shelf, {report.erased}); !kept)
            erased.why = (erased.why + u' ' + kept.error().what).trimmed();
    }
    STEELYARD_TRY(erased.stillNaming, filesNaming(path, wish.traces));
    return erased;
}

QString receiptOf(const ErasedFile& erased, bool healthOnly, int settings)
{
    QStringList parts;
    if (healthOnly) {
        parts += LifterErasingText::tr("The consent is withdrawn, and what this book kept of it is removed.");
    } else {
        parts += LifterErasingText::tr("Removed from this book: one lifter, %1 rows.")
                     .arg(QLocale().toString(static_cast<qlonglong>(erased.rows)));
        parts += erased.stillNaming.isEmpty()
                     ? LifterErasingText::tr("The book's files were looked through byte by byte: nothing was found.")
                     : LifterErasingText::tr("The name still stands in the book where it is not theirs.");
        if (settings > 0) parts += LifterErasingText::tr("It was taken out of the program's settings, too.");
    }
    if (!erased.fileCleaned && erased.why.isEmpty())
        parts += LifterErasingText::tr(
            "The file could not be cleaned of what they left in it; save a copy of the book "
            "and work with that.");
    if (!erased.why.isEmpty()) parts += erased.why;
    if (!erased.backup.isEmpty())
        parts += LifterErasingText::tr(
                     "A backup of just before still has what was removed: “%1”. Delete it when you no "
                     "longer need it.")
                     .arg(erased.backup);
    return parts.join(u' ');
}

}  // namespace

void eraseFromBook(const EraseSteps& steps, const EraseWish& wish)
{
    steps.close();
    const auto work = [steps, wish](const Progress&) {
        return eraseInFile(steps.book, steps.shelf, steps.clock, wish);
    };
    const auto done = [steps, wish](const Result<ErasedFile>& erased) {
        if (!erased) {
            steps.open(steps.book, {wish.athlete, false,
                                    LifterErasingText::tr("Nothing was removed: %1").arg(erased.error().what)});
            return;
        }
        const int settings = wish.healthOnly ? 0 : removeTraces(steps.settings, wish.traces.name);
        steps.open(steps.book, {wish.athlete, true, receiptOf(*erased, wish.healthOnly, settings)});
    };
    // A worker that still reads would keep the journal from being emptied.
    whenNothingRuns(steps.jobs, steps.owner, [steps, work, done] {
        steps.jobs.run(steps.owner, LifterErasingText::tr("Removing one lifter's data"), work, done);
    });
}

}  // namespace steelyard
