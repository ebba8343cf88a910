// From facts and probabilities to one word. The order is the order of the questions:
//
//   too few, not to the standard                              can't tell
//   an easier week                                            last week's word
//   effort unknown                                            rising when very sure, else can't tell
//   back from a break, an easier week, a planned hold         holding
//   not rising is likely enough: falling has a share in it    slipping
//                                it has not                   stalled
//   rising is likely enough                                   progressing
//   otherwise                                                 holding
//
// A word that was said last week needs less to be said again. Pure; the same record and day give the same word.
#pragma once

#include "core/analysis/line_gates.h"
#include "core/analysis/line_reading.h"

namespace steelyard {

struct Finding {
    Verdict verdict = Verdict::CantTell;
    const char16_t* reason = u"too_few";
};

// `notRisingLimit`: how likely "not rising" must be; `said`: last week's word, absent when there was none to keep.
// No chances: no set could be turned into an estimate.
[[nodiscard]] Finding decideVerdict(const LineGates&, const std::optional<RegimeChances>&, double notRisingLimit,
                                    std::optional<Verdict> said, const VerdictThresholds&);

// A reason that looks at the plan or the calendar and not at the record: such a week leaves the word before it standing.
[[nodiscard]] bool isOfTheCalendar(QStringView reason);

// Probabilities as stated turned into what came true on simulated lifters: "not rising" was stated too boldly near 1 and too
// timidly near 0. What is decided rests on the stated ones; what is shown, on these.
[[nodiscard]] RegimeChances calibrated(const RegimeChances&);

}  // namespace steelyard
