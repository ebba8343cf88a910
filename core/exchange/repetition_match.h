// Which of a device's sets is which of a session's.
//
//   const auto matches = matchRepetitions(reading.sets, {session, chosenSet, lifter, exercise});
//   matches[0].set            // where they go; absent: matches[0].why says why not
//
// A file that names day, lifter or exercise is held to it. Sets it numbers go to the sets of those numbers. Without numbers a single
// set goes to the chosen one, several go to the session's sets one after the other. No set is given twice. The number of
// repetitions need not agree: a device misses one now and then, and the set stays as it was written down.
#pragma once

#include "core/analysis/athlete_log.h"
#include "core/exchange/repetition_csv.h"

namespace steelyard {

struct RepetitionTarget {
    const Exposure& session;
    Id<SetEntry> chosen;
    QString athlete;
    QString exercise;
};

struct RepetitionMatch {
    std::size_t read = 0;  // index of what was read
    std::optional<Id<SetEntry>> set;
    int setNumber = 0;  // of it
    QString why;        // it goes nowhere; or what is odd though it does
};

[[nodiscard]] std::vector<RepetitionMatch> matchRepetitions(const std::vector<ReadRepetitions>& read,
                                                            const RepetitionTarget& target);

}  // namespace steelyard
