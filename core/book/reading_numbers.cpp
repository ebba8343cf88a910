#include "core/book/reading_numbers.h"

#include "core/analysis/parameter_names.h"
#include "core/storage/reading_parameter_repository.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct ReadingNumbersText {
    Q_DECLARE_TR_FUNCTIONS(ReadingNumbersText)
};

}  // namespace

Result<ReadingParameters> parametersOf(const ReadingFit& fit)
{
    auto parameters = parametersFrom(fit.numbers, fit.version);
    if (!parameters)
        return fail(ErrorCode::Storage,
                    ReadingNumbersText::tr("The learned numbers, version %1, are out of range.").arg(fit.version));
    return *parameters;
}

Result<ReadingParameters> readReadingParameters(Database& db, QDate asOf)
{
    STEELYARD_TRY(const auto fit, ReadingParameterRepository(db).latest(asOf));
    if (!fit) return ReadingParameters{};
    return parametersOf(*fit);
}

}  // namespace steelyard
