#include "core/sheets/coach_notes.h"

#include "core/planning/replan.h"

#include <algorithm>

namespace steelyard {
namespace {

constexpr QStringView kReferOut = u"refer_out";

bool isForPaper(const Decision& decision)
{
    if (decision.kind != DecisionKind::Act || decision.rule == kLookedAtRule) return false;
    const ActionPlace place = placeOf(decision.action);
    return place == ActionPlace::Sheet || (place == ActionPlace::Plan && !decision.reason.isEmpty());
}

bool isTrainedBetween(const LineRecord& line, QDate after, QDate before)
{
    return std::ranges::any_of(
        line.exposures, [&](const Exposure& exposure) { return exposure.date > after && exposure.date < before; });
}

bool isDone(const AthleteLog& log, const Decision& decision, QDate date)
{
    if (!decision.line)
        return std::ranges::any_of(log.sessionDates,
                                   [&](QDate session) { return session > decision.madeOn && session < date; });
    const auto line = std::ranges::find(log.lines, *decision.line, &LineRecord::id);
    return line == log.lines.end() || isTrainedBetween(*line, decision.madeOn, date);
}

template <class Wanted>
std::vector<CoachNote> notesWhere(const AthleteLog& log, QDate date, Wanted wanted)
{
    std::vector<CoachNote> notes;
    for (auto at = log.decisions.begin(); at != log.decisions.end(); ++at) {
        const Decision& decision = at->value;
        if (!isForPaper(decision) || decision.madeOn > date || !wanted(decision)) continue;
        const bool answeredAnew = std::any_of(std::next(at), log.decisions.end(), [&](const Row<Decision>& later) {
            return later.value.rule == decision.rule && later.value.line == decision.line && later.value.madeOn <= date;
        });
        if (answeredAnew || isDone(log, decision, date)) continue;
        notes.push_back({decision.action, decision.reason.simplified(), decision.madeOn, {}});
    }
    return notes;
}

}  // namespace

std::vector<CoachNote> notesOnLine(const AthleteLog& log, const LineRecord& line, QDate date)
{
    return notesWhere(
        log, date, [&](const Decision& decision) { return decision.line == line.id && decision.action != kReferOut; });
}

std::vector<CoachNote> notesOnSheet(const AthleteLog& log, QDate date)
{
    auto notes = notesWhere(log, date, [](const Decision& decision) { return !decision.line; });
    for (const LineRecord& line : log.lines) {
        auto referred = notesWhere(log, date, [&](const Decision& decision) {
            return decision.line == line.id && decision.action == kReferOut;
        });
        for (CoachNote& note : referred) {
            note.about = line.exercise.value.name;
            notes.push_back(std::move(note));
        }
    }
    std::ranges::stable_sort(notes, {}, &CoachNote::madeOn);
    return notes;
}

}  // namespace steelyard
