// What stands on the paper of the review, as data: for an assistant who goes through the roster with a pen. Numbers and
// dates are put into words where it is painted (ui/print/review_pieces.h).
//
//   const ReviewSheet sheet = buildReviewSheet(shown, asOf);
//   sheet.entries.front().flags.front().sentence
//
// Pure; no failures. Every lifter that is handed in has an entry, also one with nothing open.
#pragma once

#include "core/flags/athlete_review.h"

namespace steelyard {

struct ReviewSheetFlag {
    QString title;
    QString sentence;
    Severity severity = Severity::Low;
    QStringList choices;             // labels of what could be done, best first
    std::optional<Decision> answer;  // absent: open
};

struct ReviewSheetLine {
    QString name;
    Verdict verdict = Verdict::CantTell;
    std::optional<TrendRate> rate;
    std::optional<CapacityEstimate> capacity;
};

struct ReviewSheetEntry {
    QString athlete;
    QString group;
    MassUnit unit = MassUnit::kg;
    std::optional<QDate> lastSession;
    std::vector<ReviewSheetFlag> flags;  // open ones worst first, then those that were answered
    std::vector<ReviewSheetLine> lines;  // trained in the last kRecentWeeks weeks
};

struct ReviewSheet {
    QDate asOf;
    std::vector<ReviewSheetEntry> entries;  // worst first
};

// In any order; none is null.
[[nodiscard]] ReviewSheet buildReviewSheet(std::vector<const AthleteReview*> reviews, QDate asOf);

}  // namespace steelyard
