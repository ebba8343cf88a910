#include "core/edits/repetition_edits.h"

#include "core/edits/plain_edit.h"
#include "core/storage/logbook_repository.h"
#include "core/storage/repetition_repository.h"
#include "core/storage/set_place.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct RepetitionEditText {
    Q_DECLARE_TR_FUNCTIONS(RepetitionEditText)
};

Result<void> recordOneSet(Transaction& tx, const SetRepetitions& of, const QDateTime& now)
{
    STEELYARD_CHECK(firstProblem(validate(of.repetitions)));
    const LogbookRepository logbook(tx.database());
    STEELYARD_TRY(const PlacedSet placed, logbook.find(of.set));
    const SetEntry set = withRepetitions(placed.set, of.repetitions);
    STEELYARD_CHECK(firstProblem(validate(set)));
    STEELYARD_TRY(const auto owner, logbook.ownerOf(placed.session));
    STEELYARD_CHECK(logbook.replace(tx, of.set, set, now));
    return RepetitionRepository(tx.database()).put(tx, owner, of.set, of.repetitions);
}

}  // namespace

std::unique_ptr<Edit> recordRepetitions(std::vector<SetRepetitions> sets, const Clock& clock)
{
    const QString label =
        RepetitionEditText::tr("record the repetitions of %n set(s)", nullptr, static_cast<int>(sets.size()));
    return plainEdit(label, [sets = std::move(sets), now = clock.nowUtc()](Transaction& tx) -> Result<void> {
        for (const SetRepetitions& of : sets) STEELYARD_CHECK(recordOneSet(tx, of, now));
        return {};
    });
}

std::unique_ptr<Edit> addCountedSet(LiftLine line, QDate date, const SetEntry& set, std::vector<Repetition> repetitions,
                                    QString label)
{
    return plainEdit(
        std::move(label), [line, date, set, repetitions = std::move(repetitions)](Transaction& tx) -> Result<void> {
            STEELYARD_CHECK(firstProblem(validate(repetitions)));
            STEELYARD_TRY(const PlacedSet placed, placeAtEnd(tx, line, date, withRepetitions(set, repetitions)));
            STEELYARD_CHECK(firstProblem(validate(placed.set)));
            STEELYARD_TRY(const auto id, LogbookRepository(tx.database()).insert(tx, line.athlete, placed));
            return RepetitionRepository(tx.database()).put(tx, line.athlete, id, repetitions);
        });
}

}  // namespace steelyard
