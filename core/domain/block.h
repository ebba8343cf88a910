// A block: some weeks of planned sessions with an aim. Weeks hold days, days hold slots. A template is the shape of a block
// without lifter and loads.
#pragma once

#include "core/domain/athlete.h"
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
    QString progression;      // key of the rule by which it goes on; empty: the usual one. Unknown keys are kept
    int superset = 0;         // 1..kMostSupersets: the slots of a day with the same number are done in turns
    bool loadLocked = false;  // the coach's own load: a new forecast leaves it alone
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

// What a deload week takes off the plan. The defaults are common practice: fewer sets, a somewhat lighter load and more in
// reserve, exercises and days kept, as surveyed by Rogerson et al. 2024, Sports Med Open 10:26.
struct Easing {
    int setsPercent = 50;  // of the sets, rounded up to whole ones
    int loadPercent = 90;  // of the load
    int moreReserve = 2;   // repetitions
    friend bool operator==(const Easing&, const Easing&) = default;
};

// Days without training, both ends included: a holiday.
struct DaysOff {
    QDate first;
    QDate last;
    QString reason;
    friend bool operator==(const DaysOff&, const DaysOff&) = default;
};

inline constexpr int kMostSupersets = 9;

struct Block {
    Id<Athlete> athlete;
    QString name;
    QString aim;
    QDate start;
    std::vector<PlannedWeek> weeks;
    std::optional<int> minutesPerDay = {};  // absent: the athlete's
    Easing easing = {};
    std::vector<MuscleAim> aims = {};   // by muscle, each once; a muscle that isn't here has the athlete's aim
    std::vector<DaysOff> daysOff = {};  // by first day; no two share a day
    friend bool operator==(const Block&, const Block&) = default;
};

// The days of a template are counted from this Monday.
inline const QDate kTemplateStart(2001, 1, 1);

// A shape to start blocks from. No slot has a load.
struct BlockTemplate {
    QString name;
    QString aim;
    Easing easing = {};
    std::vector<PlannedWeek> weeks;
    friend bool operator==(const BlockTemplate&, const BlockTemplate&) = default;
};

[[nodiscard]] Problems validate(const Block&);
[[nodiscard]] Problems validate(const BlockTemplate&);
// Index of the block's week that a day lies in; absent before and after it.
[[nodiscard]] std::optional<std::size_t> weekOfBlock(const Block&, QDate day);
[[nodiscard]] bool isDayOff(const Block&, QDate day);

template <>
struct EnumText<WeekKind> {
    static constexpr auto table = std::to_array<EnumKey<WeekKind>>(
        {{WeekKind::Normal, "normal"}, {WeekKind::Deload, "deload"}, {WeekKind::Test, "test"}});
};

}  // namespace steelyard
