// What was lifted. Sets stand in sessions (one athlete, one day); each set belongs to a lift line.
//
// A lift line is athlete x variant x grip x rep standard: the only thing whose history is one history.
// Counted repetitions are reps - off. `off` absent means nobody watched, which is not the same as zero.
// A repetition that failed part-way is recorded (failed) and is never part of reps.
#pragma once

#include "core/domain/athlete.h"

#include <algorithm>
#include <array>

namespace steelyard {

enum class Mark { ShortBottom, ShortTop, Swing, Dropped, Lean, Assisted };
enum class SetKind { Work, WarmUp, Deload, Test };
enum class Joint { Elbow, Shoulder, Wrist, LowerBack, Hip, Knee, Neck, Ankle };

inline constexpr std::size_t kMarkCount = 6;
inline constexpr std::size_t kJointCount = 8;

// How many repetitions of a set carry each mark. One repetition may carry several.
class MarkCounts {
public:
    [[nodiscard]] int of(Mark mark) const { return m_counts[static_cast<std::size_t>(mark)]; }
    void set(Mark mark, int count) { m_counts[static_cast<std::size_t>(mark)] = static_cast<std::uint16_t>(count); }
    [[nodiscard]] bool none() const { return *this == MarkCounts{}; }
    [[nodiscard]] int total() const;
    // "short_bottom:2;swing:1"; empty when none. The inverse of toString() accepts any order, each mark once.
    [[nodiscard]] std::string toString() const;
    [[nodiscard]] static std::optional<MarkCounts> parse(std::string_view text);
    friend bool operator==(const MarkCounts&, const MarkCounts&) = default;

private:
    std::array<std::uint16_t, kMarkCount> m_counts{};
};

// Effort as it was reported: repetitions in reserve, or effort on the 1-10 scale tied to it.
struct Effort {
    enum class Scale { Rir, Rpe };
    Scale scale = Scale::Rir;
    Decimal value;

    // Repetitions in reserve as a number; absent for an effort under 7, where the scale is only a category.
    // Source of the tie (RIR = 10 - RPE from 7 to 10): Zourdos et al. 2016, JSCR 30(1):267-275.
    [[nodiscard]] std::optional<double> repsInReserve() const;
    friend bool operator==(const Effort&, const Effort&) = default;
};

struct SetEntry {
    int number = 1;  // order within the session as written down, from 1
    Load load;
    int reps = 0;            // completed, whatever their quality
    std::optional<int> off;  // of these, off standard; absent = not watched
    bool failed = false;     // a further repetition failed part-way
    std::optional<Effort> effort;
    MarkCounts marks;
    SetKind kind = SetKind::Work;
    std::optional<Decimal> loweringSeconds;
    // Backward lean of the trunk as it was measured, in degrees from upright at the hardest point, typical of the set.
    std::optional<Decimal> leanDegrees = {};
    QString note;

    [[nodiscard]] int countedReps() const { return reps - off.value_or(0); }
    [[nodiscard]] bool watched() const { return off.has_value(); }
    friend bool operator==(const SetEntry&, const SetEntry&) = default;
};

// Said once an exercise in a session; each 0-10 or not rated.
struct ExerciseRating {
    std::optional<int> tension;
    std::optional<int> burn;
    std::optional<int> pump;
    QString gaveOut;  // muscle that gave out first, "target" for the target; empty = not rated
    std::array<std::optional<int>, kJointCount> discomfort{};  // by Joint
    std::optional<int> nextSoreness;
    std::optional<int> nextWeakness;

    [[nodiscard]] bool none() const { return *this == ExerciseRating{}; }
    [[nodiscard]] bool hasDiscomfort() const
    {
        return std::ranges::any_of(discomfort, [](const auto& joint) { return joint.has_value(); });
    }
    [[nodiscard]] ExerciseRating withoutDiscomfort() const
    {
        ExerciseRating rest = *this;
        rest.discomfort = {};
        return rest;
    }
    // The strongest of tension, burn and pump: heavy sets are felt as the first, light ones as the second, some only after.
    // Absent when none was rated.
    [[nodiscard]] std::optional<int> felt() const { return std::max({tension, burn, pump}); }
    friend bool operator==(const ExerciseRating&, const ExerciseRating&) = default;
};

struct Session {
    Id<Athlete> athlete;
    QDate date;
    friend bool operator==(const Session&, const Session&) = default;
};

struct LiftLine {
    Id<Athlete> athlete;
    Id<Variant> variant;
    Id<Grip> grip;
    Id<RepStandard> standard;
    friend bool operator==(const LiftLine&, const LiftLine&) = default;
};

// Where a set stands in the book.
struct PlacedSet {
    Id<Session> session;
    Id<LiftLine> line;
    int position = 1;  // order within the session over all exercises, from 1
    SetEntry set;
    friend bool operator==(const PlacedSet&, const PlacedSet&) = default;
};

[[nodiscard]] Problems validate(const SetEntry&);
[[nodiscard]] Problems validate(const ExerciseRating&);

template <>
struct EnumText<Mark> {
    static constexpr auto table = std::to_array<EnumKey<Mark>>({{Mark::ShortBottom, "short_bottom"},
                                                                {Mark::ShortTop, "short_top"},
                                                                {Mark::Swing, "swing"},
                                                                {Mark::Dropped, "dropped"},
                                                                {Mark::Lean, "lean"},
                                                                {Mark::Assisted, "assisted"}});
};
template <>
struct EnumText<SetKind> {
    static constexpr auto table = std::to_array<EnumKey<SetKind>>(
        {{SetKind::Work, "work"}, {SetKind::WarmUp, "warmup"}, {SetKind::Deload, "deload"}, {SetKind::Test, "test"}});
};
template <>
struct EnumText<Joint> {
    static constexpr auto table = std::to_array<EnumKey<Joint>>({{Joint::Elbow, "elbow"},
                                                                 {Joint::Shoulder, "shoulder"},
                                                                 {Joint::Wrist, "wrist"},
                                                                 {Joint::LowerBack, "lower_back"},
                                                                 {Joint::Hip, "hip"},
                                                                 {Joint::Knee, "knee"},
                                                                 {Joint::Neck, "neck"},
                                                                 {Joint::Ankle, "ankle"}});
};

}  // namespace steelyard
