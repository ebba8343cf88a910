// Which lifters the picture of the roster shows: by words, and by one muscle, exercise, open flag, group and tag. Every
// part that is chosen must fit.
//
//   PictureFilter filter{.text = u"ada"_qs, .rule = u"stalled"_qs};
//   filter.accepts(review)
//
// What can be chosen is a table: a new part is one row of it. By name, not by number, so that a filter means the same in
// any book. An empty part lets everybody pass.
#pragma once

#include "core/flags/athlete_review.h"

#include <QtCore/QVariantMap>

#include <span>

namespace steelyard {

struct PictureFilter {
    QString text;  // in name, group and tags; see matchesSearch()
    QString muscle;
    QString exercise;
    QString rule;  // id
    QString group;
    QString tag;
    friend bool operator==(const PictureFilter&, const PictureFilter&) = default;

    [[nodiscard]] bool accepts(const AthleteReview& review) const;
    // As it is kept. Unknown keys are left alone.
    [[nodiscard]] QVariantMap toMap() const;
    [[nodiscard]] static PictureFilter fromMap(const QVariantMap& map);
};

struct PictureFacet {
    const char* key;                 // as it is kept
    const char* any;                 // for people, when nothing is chosen; PictureFilter's translation context
    QString PictureFilter::*chosen;  // the part it sets
    QStringList (*valuesOf)(const AthleteReview&);
    QString (*label)(const QString& value);  // for people

    [[nodiscard]] QString anyText() const;
};
[[nodiscard]] std::span<const PictureFacet> pictureFacets();

}  // namespace steelyard
