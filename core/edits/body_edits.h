// The edits of a lifter's body mass and tape measurements.
//
//   history.perform(recordMeasurement(id, {today, BodyPlace::Waist, *Decimal::parse(u"84.5"), TapeUnit::cm}, today));
//   history.perform(removeMeasurement(id, day, BodyPlace::Waist));
//
// There is one entry of a day (and place): recording a second one replaces the first. `instead` names an entry that goes in the
// same step, when its day or place was corrected. `today` bounds the day. Failures: Invalid, NotFound.
#pragma once

#include "core/domain/athlete.h"
#include "core/domain/measurement.h"
#include "core/edits/edit.h"

namespace steelyard {

struct MeasuredAt {
    QDate date;
    BodyPlace place = BodyPlace::Waist;
    friend bool operator==(const MeasuredAt&, const MeasuredAt&) = default;
};

[[nodiscard]] std::unique_ptr<Edit> correctBodyMass(Id<Athlete> id, const BodyMassEntry& entry, QDate today,
                                                    std::optional<QDate> instead = std::nullopt);
[[nodiscard]] std::unique_ptr<Edit> removeBodyMass(Id<Athlete> id, QDate date);
[[nodiscard]] std::unique_ptr<Edit> recordMeasurement(Id<Athlete> id, const Measurement& measured, QDate today,
                                                      std::optional<MeasuredAt> instead = std::nullopt);
[[nodiscard]] std::unique_ptr<Edit> removeMeasurement(Id<Athlete> id, const MeasuredAt& at);

}  // namespace steelyard
