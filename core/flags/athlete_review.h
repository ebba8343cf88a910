// The review of one athlete: every lift line read, every rule asked, and the coach's earlier answers taken into account.
#pragma once

#include "core/base/wording.h"
#include "core/domain/rule_settings.h"
#include "core/flags/athlete_summary.h"
#include "core/flags/flag.h"

namespace steelyard {

struct LineReview {
    Id<LiftLine> id;
    QString key;
    QString exercise;
    QString variant;
    QString grip;
    QString standard;
    LineReading reading;
};

// A flag that the coach answered and that need not be looked at now.
struct AnsweredFlag {
    Flag flag;
    Decision decision;
};

struct AthleteReview {
    Id<Athlete> athlete;
    QString name;
    QString group;
    double attention = 0;  // what it costs to wait; 0 = nothing open. See attention.h
    std::optional<QDate> lastSession;
    std::vector<LineReview> lines;       // trained in the last weeks first
    std::vector<Flag> flags;             // open, worst first
    std::vector<AnsweredFlag> answered;  // watched until later, dismissed, acted upon lately
    std::vector<AnsweredFlag> returned;  // open again, with the answer that no longer holds
    MassUnit unit = MassUnit::kg;        // the lifter's own
    std::optional<QDate> lookedOn = {};  // the coach's newest decision; absent: none so far
    bool finished = false;               // in this round of the review
    std::vector<QString> tags = {};      // the coach's own
    AthleteSummary summary = {};
};

// The order of the roster: what costs most to wait first, then who was looked at longest ago, then by name.
[[nodiscard]] bool comesBefore(const AthleteReview& a, const AthleteReview& b);

// Pure: reads no clock and no database. `wording` is for the flags; the engine has its own.
[[nodiscard]] AthleteReview reviewAthlete(const AthleteLog&, const ReadingEngine&, const RuleSettings&, QDate asOf,
                                          const Wording& wording = {});

}  // namespace steelyard
