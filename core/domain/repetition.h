// The repetitions of a set one by one: typed afterwards, tapped while they were done, or measured by a device.
//
//   Repetition third{.number = 3, .source = RepetitionSource::Measured, .travelMm = Decimal(512)};
//   third.marks.set(Mark::ShortTop);
//   validate(repetitions).empty();
//   const SetEntry set = withRepetitions(logged, repetitions);    // what they say about the set
//
// Heights are of the load over the lowest point it ever had. The lifting time of a tapped repetition is what is left of the time
// since the repetition before when the lowering is taken off, pauses included; a device says what it calls so. What a source
// doesn't tell is absent. A repetition that failed part-way is the last one and is never part of the set's repetitions.
// Invariants (validate): numbers 1, 2, 3 …; travel and heights from 0 to 3000 mm, low under high; times from 0 to 120 s.
#pragma once

#include "core/domain/logbook.h"

#include <bitset>
#include <span>

namespace steelyard {

enum class RepetitionSource { Typed, Tapped, Measured };

// Which marks one repetition carries.
class RepetitionMarks {
public:
    [[nodiscard]] bool has(Mark mark) const { return m_bits.test(static_cast<std::size_t>(mark)); }
    void set(Mark mark, bool on = true) { m_bits.set(static_cast<std::size_t>(mark), on); }
    [[nodiscard]] bool none() const { return m_bits.none(); }
    // "short_bottom;swing": in the order of the marks; empty when none. parse() accepts any order, each mark once.
    [[nodiscard]] std::string toString() const;
    [[nodiscard]] static std::optional<RepetitionMarks> parse(std::string_view text);
    friend bool operator==(const RepetitionMarks&, const RepetitionMarks&) = default;

private:
    std::bitset<kMarkCount> m_bits;
};

struct Repetition {
    int number = 1;
    RepetitionSource source = RepetitionSource::Typed;
    std::optional<Decimal> travelMm = {};
    std::optional<Decimal> lowMm = {};
    std::optional<Decimal> highMm = {};
    std::optional<Decimal> liftingSeconds = {};
    std::optional<Decimal> loweringSeconds = {};
    RepetitionMarks marks = {};
    bool partWay = false;

    // As it was measured, else between the two heights.
    [[nodiscard]] std::optional<double> travel() const;
    friend bool operator==(const Repetition&, const Repetition&) = default;
};

// The repetitions of one set, in order.
struct SetRepetitions {
    Id<SetEntry> set;
    std::vector<Repetition> repetitions;
    friend bool operator==(const SetRepetitions&, const SetRepetitions&) = default;
};

inline constexpr int kMostRepetitions = 200;

[[nodiscard]] Problems validate(std::span<const Repetition>);

// The set with what its repetitions say of it. The lowering time is the median over the whole repetitions, in tenths of a second,
// when at least half of them have one. Typed or tapped, somebody looked at each: repetitions, failure, marks and off-standard
// repetitions are theirs. A device sees travel and time only: it leaves repetitions and failure alone, its short repetitions replace
// those marked before, and a set that nobody watched stays one.
[[nodiscard]] SetEntry withRepetitions(SetEntry set, std::span<const Repetition> repetitions);

template <>
struct EnumText<RepetitionSource> {
    static constexpr auto table = std::to_array<EnumKey<RepetitionSource>>({{RepetitionSource::Typed, "typed"},
                                                                            {RepetitionSource::Tapped, "tapped"},
                                                                            {RepetitionSource::Measured, "measured"}});
};

}  // namespace steelyard
