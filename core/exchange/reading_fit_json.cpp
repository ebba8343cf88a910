#include "core/exchange/reading_fit_json.h"

#include "core/book/reading_numbers.h"
#include "core/exchange/json_names.h"
#include "core/exchange/json_reading.h"
#include "core/storage/reading_parameter_repository.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct ReadingFitJsonText {
    Q_DECLARE_TR_FUNCTIONS(ReadingFitJsonText)
};

QJsonObject readingFitJson(const ReadingFit& fit)
{
    QJsonObject numbers;
    for (const auto& [name, value] : fit.numbers) numbers[name] = value;
    return {{QStringLiteral("version"), fit.version},
            {QStringLiteral("fitted_on"), fit.fittedOn.toString(Qt::ISODate)},
            {QStringLiteral("lines"), fit.lines},
            {QStringLiteral("sets"), fit.sets},
            {QStringLiteral("log_likelihood_before"), fit.logLikelihoodBefore},
            {QStringLiteral("log_likelihood_after"), fit.logLikelihoodAfter},
            {QStringLiteral("numbers"), numbers}};
}

Result<ReadingFit> readingFitFromJson(const QJsonValue& json)
{
    JsonPlace place = JsonPlace::of(json, ReadingFitJsonText::tr("book.json, reading_parameters"));
    ReadingFit fit;
    fit.version = place.integer(QStringLiteral("version"));
    fit.fittedOn = readDate(place, QStringLiteral("fitted_on"));
    fit.lines = place.integer(QStringLiteral("lines"));
    fit.sets = place.integer(QStringLiteral("sets"));
    fit.logLikelihoodBefore = place.real(QStringLiteral("log_likelihood_before"));
    fit.logLikelihoodAfter = place.real(QStringLiteral("log_likelihood_after"));
    JsonPlace numbers(place.object(QStringLiteral("numbers")), place.place());
    for (const QString& name : numbers.names()) fit.numbers[name] = numbers.real(name);
    if (fit.version < 1 || fit.lines < 0 || fit.sets < 0)
        place.fault(QStringLiteral("version"), ReadingFitJsonText::tr("versions count from 1, lines and sets from 0"));
    STEELYARD_CHECK(place.finish());
    STEELYARD_CHECK(numbers.finish());
    if (!parametersOf(fit)) return place.refuse(ReadingFitJsonText::tr("a number is out of its range."));
    return fit;
}

}  // namespace

QJsonArray readingFitsJson(const std::vector<ReadingFit>& fits)
{
    QJsonArray list;
    for (const ReadingFit& fit : fits) list.append(readingFitJson(fit));
    return list;
}

Result<void> readingFitsFromJson(Transaction& transaction, const QJsonArray& json)
{
    STEELYARD_CHECK(transaction.database().execute("DELETE FROM reading_parameters"));
    const ReadingParameterRepository repository(transaction.database());
    for (const auto& one : json) {
        STEELYARD_TRY(const ReadingFit fit, readingFitFromJson(one));
        STEELYARD_TRY(const int version, repository.insert(transaction, fit));
        static_cast<void>(version);
    }
    return {};
}

}  // namespace steelyard
