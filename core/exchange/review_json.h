// A review as one JSON document: the form that scripts read. Every key stands in every row; what isn't known is null.
//
//   const QJsonObject document = reviewJson(asOf, bookPath, reviews);
//   document[u"athletes"][0][u"lines"][0][u"verdict"]   // "stalled"
//
// parameters_version: of the learned numbers that the readings rest on; 0: the shipped ones, or nothing was read.
// Units: kilograms, shares of 1, dates ISO 8601. Evidence, flags and lines keep the review's order. No failures.
#pragma once

#include "core/flags/athlete_review.h"

#include <QtCore/QJsonObject>

namespace steelyard {

[[nodiscard]] QJsonObject reviewJson(QDate asOf, const QString& bookPath, const std::vector<AthleteReview>& reviews);

}  // namespace steelyard
