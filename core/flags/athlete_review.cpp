#include "core/flags/athlete_review.h"

#include "core/flags/answers.h"
#include "core/flags/attention.h"
#include "core/flags/registry.h"

#include <algorithm>

namespace steelyard {
namespace {

std::vector<Flag> askEveryRule(const ReviewSnapshot& snapshot, const RuleSettings& settings)
{
    std::vector<Flag> flags;
    for (const FlagRule* rule : flagRules()) rule->check(snapshot, RuleParameters(*rule, settings), flags);
    sortWorstFirst(flags);
    return flags;
}

// Trained in the last weeks first, then by key; the others by how long ago.
std::vector<LineReview> reviewedLines(ReviewSnapshot& snapshot)
{
    std::vector<SnapshotLine*> order;
    order.reserve(snapshot.lines.size());
    for (SnapshotLine& line : snapshot.lines) order.push_back(&line);
    std::ranges::stable_sort(order, [](const SnapshotLine* a, const SnapshotLine* b) {
        if (a->recent != b->recent) return a->recent;
        return !a->recent && a->lastTrained > b->lastTrained;
    });
    std::vector<LineReview> lines;
    lines.reserve(order.size());
    for (SnapshotLine* line : order) {
        const LineRecord& record = *line->record;
        lines.push_back({record.id, record.key, record.exercise.value.name, record.variant.value.name,
                         record.grip.value.name, record.standard.value.name, std::move(line->reading)});
    }
    return lines;
}

}  // namespace

bool comesBefore(const AthleteReview& a, const AthleteReview& b)
{
    // No day is before every day.
    if (a.attention != b.attention) return a.attention > b.attention;
    return std::tie(a.lookedOn, a.name) < std::tie(b.lookedOn, b.name);
}

AthleteReview reviewAthlete(const AthleteLog& log, const ReadingEngine& engine, const RuleSettings& settings,
                            QDate asOf, const Wording& wording)
{
    ReviewSnapshot snapshot = takeSnapshot(log, engine, asOf, wording);
    AthleteReview review{.athlete = log.athlete.id,
                         .name = log.athlete.value.name,
                         .group = log.athlete.value.group,
                         .unit = log.athlete.value.unit};
    for (const QDate date : log.sessionDates)
        if (date <= asOf) review.lastSession = date;
    for (Flag& flag : askEveryRule(snapshot, settings)) {
        if (const Decision* answer = answerTo(flag, log.decisions, asOf))
            review.answered.push_back({std::move(flag), *answer});
        else {
            if (const Decision* earlier = newestAnswer(flag, log.decisions, asOf))
                review.returned.push_back({flag, *earlier});
            review.flags.push_back(std::move(flag));
        }
    }
    review.attention = attentionOf(review.flags);
    review.lookedOn = lastLookedAt(log.decisions, asOf);
    review.finished = isFinished(review.flags, log.decisions, asOf);
    review.tags = log.athlete.value.tags;
    review.summary = summarise(snapshot);
    review.lines = reviewedLines(snapshot);
    return review;
}

}  // namespace steelyard
