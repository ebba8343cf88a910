// Athletes, their aims, their body mass and tape measurements over time. Writers demand a Transaction; readers give values.
// Failures: NotFound, Invalid (a name that is taken, a value that validate() refuses), Storage.
#pragma once

#include "core/domain/athlete.h"
#include "core/domain/measurement.h"
#include "core/storage/transaction.h"

namespace steelyard {

class AthleteRepository {
public:
    explicit AthleteRepository(Database& database) : m_database(database) {}

    [[nodiscard]] Result<std::vector<Row<Athlete>>> all() const;  // by name, archived ones too
    [[nodiscard]] Result<Row<Athlete>> find(Id<Athlete>) const;
    [[nodiscard]] Result<Row<Athlete>> findByName(const QString& name) const;
    [[nodiscard]] Result<Id<Athlete>> insert(Transaction&, const Athlete&, QUuid uuid = QUuid::createUuid()) const;
    [[nodiscard]] Result<void> replace(Transaction&, Id<Athlete>, const Athlete&) const;

    [[nodiscard]] Result<std::vector<BodyMassEntry>> bodyMass(Id<Athlete>) const;  // oldest first
    // One entry a day: a second one on the same day replaces the first.
    [[nodiscard]] Result<void> putBodyMass(Transaction&, Id<Athlete>, const BodyMassEntry&) const;
    [[nodiscard]] Result<void> removeBodyMass(Transaction&, Id<Athlete>, QDate) const;  // NotFound: none on that day

    [[nodiscard]] Result<std::vector<Measurement>> measurements(Id<Athlete>) const;  // oldest first, then by place
    // One a day and place: a second one replaces the first.
    [[nodiscard]] Result<void> putMeasurement(Transaction&, Id<Athlete>, const Measurement&) const;
    [[nodiscard]] Result<void> removeMeasurement(Transaction&, Id<Athlete>, QDate, BodyPlace) const;  // NotFound: none

private:
    Database& m_database;
};

}  // namespace steelyard
