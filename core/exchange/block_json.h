// Blocks, templates and what they are made of in the book's JSON. See book_json.h for the format.
//
//   {"uuid": …, "name": …, "aim": …, "start": "2026-03-02", "minutes_per_day": 60,
//    "easing": {"sets_percent": 50, "load_percent": 90, "more_reserve": 2},
//    "aims": [{"muscle": "biceps", "weekly_sets_low": 8, "weekly_sets_high": 14}],
//    "days_off": [{"first": …, "last": …, "reason": …}],
//    "weeks": [{"kind": "normal", "days": [{"date": …, "title": …, "slots": [
//        {"variant": …, "grip": …, "standard": …, "sets": 3, "band_low": 8, "band_high": 12, "planned_rir": "2", "load": "42.5 kg",
//         "rest_s": 120, "note": …, "progression": …, "superset": 1, "load_locked": true}]}]}]}
//
// A template has no start, minutes, aims and days off. Left out: what is as usual.
#pragma once

#include "core/domain/block.h"
#include "core/exchange/library_json.h"

namespace steelyard {

class JsonPlace;

// Variant, grip and standard: what a lift line and a planned slot have in common.
[[nodiscard]] QJsonObject liftToJson(Id<Variant>, Id<Grip>, Id<RepStandard>, const Library&);
struct LiftNames {
    std::optional<Id<Variant>> variant;
    std::optional<Id<Grip>> grip;
    std::optional<Id<RepStandard>> standard;
    [[nodiscard]] bool whole() const { return variant && grip && standard; }
};
// Where it isn't whole, the place has the fault.
[[nodiscard]] LiftNames liftFromJson(JsonPlace&, const JsonNames&);

[[nodiscard]] QJsonArray aimsToJson(const std::vector<MuscleAim>&, const Library&);
[[nodiscard]] Result<std::vector<MuscleAim>> aimsFromJson(const QJsonArray&, const JsonNames&, const QString& where);

[[nodiscard]] QJsonObject toJson(const Row<Block>&, const Library&);
[[nodiscard]] QJsonObject toJson(const Row<BlockTemplate>&, const Library&);

template <class T>
struct NamedByUuid {
    QUuid uuid;
    T value;
};
[[nodiscard]] Result<NamedByUuid<Block>> blockFromJson(const QJsonObject&, Id<Athlete>, const JsonNames&,
                                                       const QString& where);
[[nodiscard]] Result<NamedByUuid<BlockTemplate>> templateFromJson(const QJsonObject&, const JsonNames&);

}  // namespace steelyard
