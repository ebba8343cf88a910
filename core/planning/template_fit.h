// A template as one lifter's block: on their days, with what their gym has, without what they don't tolerate, and every difference
// from the template by name, so that it can be looked at before anything is written.
//
//   STEELYARD_TRY(const TemplateFit fit, fitTemplate(shape, {log, library, gym, today}, {tr("Spring"), monday, {1, 3, 5}, {}}));
//   fit.differences[0].sentence       == "Pulldown, cable → Chin, bodyweight: the gym has no stack."
//
// A lift gives way where the gym lacks its implement, the library hides it, or a joint was rated above kAcceptableDiscomfort after
// its exercise in the last kComplaintWeeks; after a rating between that and kSafeDiscomfort it stays and is named. Its substitute has
// the same target muscle, stands on none of the template's days already, and is, in this order: done before by this lifter, a way
// of the same exercise (unless that is what hurts), with the same implement, alike in its helpers, first by name. Without one
// the lift is left out. A rep standard that was agreed with somebody else gives way to the lifter's own, else to the usual one.
// Loads are left to the forecast (block_forecast.h).
//
// What it says of a joint records what was rated; what it is, only somebody who examines the joint can say.
// Pure. Failures: Invalid, where the name or the start is missing.
#pragma once

#include "core/planning/block_totals.h"

namespace steelyard {

struct TemplateFitInput {
    const AthleteLog& log;
    const Library& library;
    const Gym* gym = nullptr;
    QDate today;
    Wording wording = {};
};

struct TemplateWishes {
    QString name;
    QDate start;
    std::vector<int> weekdays = {};  // 1 is Monday; empty, or fewer than the template has sessions: the template's own
    std::vector<DaysOff> daysOff = {};
};

enum class FitKind { OtherLift, LeftOut, OtherStandard, Reminder, OtherDays };

struct FitDifference {
    FitKind kind = FitKind::OtherLift;
    std::optional<LiftLine> before = {};  // OtherDays: absent
    std::optional<LiftLine> after = {};   // OtherLift, OtherStandard
    QString sentence;                     // for the coach
    friend bool operator==(const FitDifference&, const FitDifference&) = default;
};

struct TemplateFit {
    Block block;
    std::vector<FitDifference> differences;  // in the order of the template
    std::vector<BrokenLimit> broken;         // of the block, as the editor would mark it
};

[[nodiscard]] Result<TemplateFit> fitTemplate(const BlockTemplate&, const TemplateFitInput&, const TemplateWishes&);

}  // namespace steelyard
