// The review for an assistant: onto a printer, or into a PDF.
//
//   printReview(context, this, shown);     saveReviewPdf(context, this, shown, [this](const QString& text) { ... });
//
// `shown` are the lifters to print, in any order; none is null. Without a printer the PDF is offered instead.
#pragma once

#include "core/flags/athlete_review.h"
#include "ui/shell/context.h"

#include <functional>

class QWidget;

namespace steelyard {

using SayQuietly = std::function<void(const QString&)>;

void printReview(const UiContext& context, QWidget* parent, const std::vector<const AthleteReview*>& shown,
                 const SayQuietly& say);
void saveReviewPdf(const UiContext& context, QWidget* parent, const std::vector<const AthleteReview*>& shown,
                   const SayQuietly& say);

}  // namespace steelyard
