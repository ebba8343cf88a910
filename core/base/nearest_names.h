// Names in the order in which somebody who mistyped one may have meant them.
//
//   nearestFirst({u"row"_qs, u"arm-curl/cable"_qs}, u"arm curl")   == {u"arm-curl/cable"_qs, u"row"_qs}
//
// First those that hold all that was typed, then by how many letters would have to be changed, put in or left out
// (Levenshtein distance), then by name. Case, accents and what isn't a letter or digit make no difference. No failures.
#pragma once

#include <QtCore/QStringList>

namespace steelyard {

[[nodiscard]] QStringList nearestFirst(const QStringList& names, QStringView typed);
// Letters to change, put in or leave out between two texts.
[[nodiscard]] int editDistance(QStringView a, QStringView b);

}  // namespace steelyard
