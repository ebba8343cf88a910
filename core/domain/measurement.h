// What a tape said at one place of the body on one day. The value keeps the decimals and the unit it was typed in.
//
//   const Measurement waist{QDate(2026, 3, 2), BodyPlace::Waist, *Decimal::parse(u"84.5"), TapeUnit::cm};
//   validate(waist, today).empty();   waist.centimetres() == 84.5;
//
// An athlete has at most one of a day and place. Invariants (validate): a date up to `today`, a length between 5 and 300 cm.
// The limits only catch slips (a missing point, the wrong unit); they say nothing about a body. An inch is 2.54 cm by
// definition (international yard and pound agreement, 1959).
#pragma once

#include "core/base/decimal.h"
#include "core/base/enum_text.h"
#include "core/domain/problem.h"

#include <QtCore/QDate>

namespace steelyard {

enum class BodyPlace { Neck, Shoulders, Chest, Waist, Hips, UpperArm, Forearm, Thigh, Calf };
enum class TapeUnit { cm, in };

inline constexpr double kCentimetresPerInch = 2.54;

struct Measurement {
    QDate date;
    BodyPlace place = BodyPlace::Waist;
    Decimal value;
    TapeUnit unit = TapeUnit::cm;

    [[nodiscard]] double centimetres() const;
    friend bool operator==(const Measurement&, const Measurement&) = default;
};

[[nodiscard]] Problems validate(const Measurement&, QDate today);

template <>
struct EnumText<BodyPlace> {
    static constexpr auto table = std::to_array<EnumKey<BodyPlace>>({{BodyPlace::Neck, "neck"},
                                                                     {BodyPlace::Shoulders, "shoulders"},
                                                                     {BodyPlace::Chest, "chest"},
                                                                     {BodyPlace::Waist, "waist"},
                                                                     {BodyPlace::Hips, "hips"},
                                                                     {BodyPlace::UpperArm, "upper_arm"},
                                                                     {BodyPlace::Forearm, "forearm"},
                                                                     {BodyPlace::Thigh, "thigh"},
                                                                     {BodyPlace::Calf, "calf"}});
};
template <>
struct EnumText<TapeUnit> {
    static constexpr auto table = std::to_array<EnumKey<TapeUnit>>({{TapeUnit::cm, "cm"}, {TapeUnit::in, "in"}});
};

}  // namespace steelyard
