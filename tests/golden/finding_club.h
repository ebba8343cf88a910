// An invented club in which every lifter trains steadily but for one thing, so that what a review must find is known by how the
// record was made: for each rule one lifter, and one about whom there is nothing to say.
#pragma once

#include "tests/support/log_builder.h"

#include <vector>

namespace steelyard::testing_support {

struct Finding {
    QString rule;
    QString exercise;  // of the line; empty: about the lifter
    Severity severity = Severity::Low;
};

struct ClubMember {
    AthleteLog log;
    std::vector<Finding> expected;
};

// A Sunday; the last sessions are two and five days before.
inline const QDate kClubDay(2026, 6, 7);

[[nodiscard]] std::vector<ClubMember> findingClub();

}  // namespace steelyard::testing_support
