// A trial's outcomes as small multiples: every session's value in the order of the sessions, one mark an arm, hollow where it
// doesn't count; at the right the level of each arm with its 90 % interval; a dotted line for the drift over the sessions.
// Discomfort stands joint by joint with the trial's limit. Ratings share the scale 0-10.
//
//   const PanelsSpec spec = buildTrialCourse({trial, record, &effects, names}, QLocale());
//   buildTrialDiscomfort({trial, record, nullptr, names}, QLocale())    // the joints alone: shown while results are hidden
//
// A stop is a session that is due; PanelStop::exposure is its place in Trial::days. Pure; no failures.
#pragma once

#include "core/trials/arm_effects.h"
#include "ui/charts/panels_spec.h"

namespace steelyard {

struct TrialCourseSource {
    const Trial& trial;
    const TrialRecord& record;
    const TrialEffects* effects = nullptr;
    const std::vector<QString>& armNames;
};

[[nodiscard]] PanelShape armShape(std::size_t arm);

[[nodiscard]] PanelsSpec buildTrialCourse(const TrialCourseSource&, const QLocale&);
[[nodiscard]] PanelsSpec buildTrialDiscomfort(const TrialCourseSource&, const QLocale&);

}  // namespace steelyard
