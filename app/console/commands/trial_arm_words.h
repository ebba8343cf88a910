// An arm of a trial as words of a call.
//
//   readArm(u"arm-curl/straight-bar-upright/neutral-medium", log, library)
//   readArm(u"Arm curl/straight bar, upright/neutral, medium/strict; band=6-9; lowering=3.5", log, library)
//
// Up to four names with slashes between: exercise, variant, grip, standard; a lift line's key is such a text too. Case, accents and
// punctuation make no difference. What is left out is as usual. After semicolons: the rep band (else the variant's) and the seconds
// of lowering. Failures: Invalid, naming what nothing is called, with the nearest names; Unsupported for a slip after a semicolon.
#pragma once

#include "core/analysis/athlete_log.h"
#include "core/base/result.h"

namespace steelyard {

[[nodiscard]] Result<TrialArm> readArm(QStringView words, const AthleteLog&, const Library&);

}  // namespace steelyard
