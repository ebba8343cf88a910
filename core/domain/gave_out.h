// What gave out first at the end of an exercise's sets (ExerciseRating::gaveOut): a muscle's key, or the target itself.
#pragma once

#include <QtCore/QStringView>

namespace steelyard {

// The word that says the target itself gave out first.
inline constexpr QStringView kTargetGaveOut = u"target";

}  // namespace steelyard
