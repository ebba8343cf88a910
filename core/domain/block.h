// A block: some weeks of planned sessions with an aim. Weeks hold days, days hold slots.
#pragma once

#include "core/domain/logbook.h"

namespace steelyard {

enum class WeekKind { Normal, Deload, Test };

struct Slot {
    Id<Variant> variant;
    Id<Grip> grip;
    Id<RepStandard> standard;
    int sets = 3;
    RepBand band;
    std::optional<Decimal> plannedRir;
    std::optional<Load> load;  // absent: from the lifter's record when the sheet is made
    std::optional<int> restSeconds;
    QString note;
    friend bool operator==(const Slot&, const Slot&) = default;
};

struct PlannedDay {
    QDate date;
    QString title;
    std::vector<Slot> slotList;
    friend bool operator==(const PlannedDay&, const PlannedDay&) = default;
};

struct PlannedWeek {
    WeekKind kind = WeekKind::Normal;
    std::vector<PlannedDay> days;
    friend bool operator==(const PlannedWeek&, const PlannedWeek&) = default;
};

struct Block {
    Id<Athlete> athlete;
    QString name;
    QString aim;
    QDate start;
    std::vector<PlannedWeek> weeks;
    friend bool operator==(const Block&, const Block&) = default;
};

[[nodiscard]] Problems validate(const Block&);
// Index of the block's week that a day lies in; absent before and after it.
[[nodiscard]] std::optional<std::size_t> weekOfBlock(const Block&, QDate day);

template <>
struct EnumText<WeekKind> {
    static constexpr auto table = std::to_array<EnumKey<WeekKind>>(
        {{WeekKind::Normal, "normal"}, {WeekKind::Deload, "deload"}, {WeekKind::Test, "test"}});
};

}  // namespace steelyard
