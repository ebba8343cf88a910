#include "core/edits/body_edits.h"

#include "core/edits/plain_edit.h"
#include "core/storage/athlete_repository.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct BodyEditText {
    Q_DECLARE_TR_FUNCTIONS(BodyEditText)
};

// Loads may be 0, a body mass not; the upper limit catches a missing point.
Result<void> checkBodyMass(const BodyMassEntry& entry, QDate today)
{
    constexpr double least = 20;
    constexpr double most = 400;
    if (!entry.date.isValid() || entry.date > today)
        return fail(ErrorCode::Invalid, BodyEditText::tr("The day must be a date up to today."));
    if (entry.mass.kilograms() < least || entry.mass.kilograms() > most)
        return fail(ErrorCode::Invalid,
                    BodyEditText::tr("A body mass between 20 and 400 kg is needed. Is the unit right?"));
    return {};
}

}  // namespace

std::unique_ptr<Edit> correctBodyMass(Id<Athlete> id, const BodyMassEntry& entry, QDate today,
                                      std::optional<QDate> instead)
{
    return plainEdit(BodyEditText::tr("record body mass"), [=](Transaction& tx) -> Result<void> {
        STEELYARD_CHECK(checkBodyMass(entry, today));
        const AthleteRepository athletes(tx.database());
        if (instead && *instead != entry.date) STEELYARD_CHECK(athletes.removeBodyMass(tx, id, *instead));
        return athletes.putBodyMass(tx, id, entry);
    });
}

std::unique_ptr<Edit> removeBodyMass(Id<Athlete> id, QDate date)
{
    return plainEdit(BodyEditText::tr("remove a body mass"), [id, date](Transaction& tx) {
        return AthleteRepository(tx.database()).removeBodyMass(tx, id, date);
    });
}

std::unique_ptr<Edit> recordMeasurement(Id<Athlete> id, const Measurement& measured, QDate today,
                                        std::optional<MeasuredAt> instead)
{
    return plainEdit(BodyEditText::tr("record a measurement"), [=](Transaction& tx) -> Result<void> {
        STEELYARD_CHECK(firstProblem(validate(measured, today)));
        const AthleteRepository athletes(tx.database());
        if (instead && *instead != MeasuredAt{measured.date, measured.place})
            STEELYARD_CHECK(athletes.removeMeasurement(tx, id, instead->date, instead->place));
        return athletes.putMeasurement(tx, id, measured);
    });
}

std::unique_ptr<Edit> removeMeasurement(Id<Athlete> id, const MeasuredAt& at)
{
    return plainEdit(BodyEditText::tr("remove a measurement"), [id, at](Transaction& tx) {
        return AthleteRepository(tx.database()).removeMeasurement(tx, id, at.date, at.place);
    });
}

}  // namespace steelyard
