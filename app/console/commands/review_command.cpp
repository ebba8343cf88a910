#include "app/console/commands/commands.h"
#include "core/book/book.h"
#include "core/book/roster_review.h"
#include "core/exchange/review_json.h"
#include "core/exchange/review_text.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct ReviewCommandText {
    Q_DECLARE_TR_FUNCTIONS(ReviewCommandText)
};

Result<void> runReview(const Console& console)
{
    STEELYARD_TRY(const QString path, console.required(QStringLiteral("book")));
    RosterReviewRequest request{path, console.clock().today(), {}, {}};
    // Programs read kilograms, people the unit of the lifter; days are ISO for both.
    if (console.json()) request.wording.unit = MassUnit::kg;
    {
        STEELYARD_TRY(const auto book, Book::openForReading(path, console.clock()));
        if (console.has(QStringLiteral("athlete"))) {
            STEELYARD_TRY(const auto row, book->athletes().findByName(console.value(QStringLiteral("athlete"))));
            request.only.push_back(row.id);
        }
    }
    STEELYARD_TRY(const auto reviews, reviewRoster(request, console.progress()));
    if (console.json())
        console.print(QJsonDocument(reviewJson(request.asOf, path, reviews)));
    else
        console.print(reviewText(request.asOf, reviews));
    return {};
}

}  // namespace

ConsoleCommand reviewCommand()
{
    return {QStringLiteral("review"),
            ReviewCommandText::tr("read every lift line and raise the flags, worst first"),
            {bookOption(), athleteOption()},
            &runReview};
}

}  // namespace steelyard
