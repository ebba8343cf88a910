#include "core/storage/reading_parameter_repository.h"

#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonDocument>
#include <QtCore/QJsonObject>

namespace steelyard {
namespace {

struct ReadingParameterText {
    Q_DECLARE_TR_FUNCTIONS(ReadingParameterText)
};

constexpr std::string_view kFitColumns =
    "SELECT version, fitted_on, lines, sets, log_likelihood_before, log_likelihood_after, body FROM "
    "reading_parameters ";

Result<ReadingFit> fitOfRow(const Statement& st)
{
    auto numbers = numbersFromJson(st.text(6));
    if (!numbers)
        return fail(ErrorCode::Storage,
                    ReadingParameterText::tr("The learned numbers, version %1, can't be read.").arg(st.integer(0)));
    return ReadingFit{st.integer(0), st.date(1), st.integer(2),      st.integer(3),
                      st.real(4),    st.real(5), std::move(*numbers)};
}

}  // namespace

QString numbersToJson(const std::map<QString, double>& numbers)
{
    QJsonObject json;
    for (const auto& [name, value] : numbers) json[name] = value;
    return QString::fromUtf8(QJsonDocument(json).toJson(QJsonDocument::Compact));
}

std::optional<std::map<QString, double>> numbersFromJson(const QString& text)
{
    const QJsonDocument document = QJsonDocument::fromJson(text.toUtf8());
    if (!document.isObject()) return std::nullopt;
    const QJsonObject json = document.object();
    std::map<QString, double> numbers;
    for (auto one = json.begin(); one != json.end(); ++one) {
        if (!one.value().isDouble()) return std::nullopt;
        numbers[one.key()] = one.value().toDouble();
    }
    return numbers;
}

Result<std::optional<ReadingFit>> ReadingParameterRepository::latest(QDate asOf) const
{
    STEELYARD_TRY(auto st,
                  m_database.prepare(std::string(kFitColumns) + "WHERE fitted_on <= ?1 ORDER BY version DESC LIMIT 1"));
    st.bind(1, asOf);
    STEELYARD_TRY(const bool any, st.step());
    if (!any) return std::optional<ReadingFit>();
    STEELYARD_TRY(auto fit, fitOfRow(st));
    return std::optional(std::move(fit));
}

Result<std::vector<ReadingFit>> ReadingParameterRepository::all() const
{
    STEELYARD_TRY(auto st, m_database.prepare(std::string(kFitColumns) + "ORDER BY version"));
    std::vector<ReadingFit> fits;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return fits;
        STEELYARD_TRY(auto fit, fitOfRow(st));
        fits.push_back(std::move(fit));
    }
}

Result<int> ReadingParameterRepository::insert(Transaction& transaction, const ReadingFit& fit) const
{
    STEELYARD_TRY(auto st, m_database.prepare(
                               "INSERT INTO reading_parameters (version, fitted_on, lines, sets, "
                               "log_likelihood_before, log_likelihood_after, body) VALUES (coalesce(?1, (SELECT "
                               "coalesce(max(version), 0) + 1 FROM reading_parameters)), ?2, ?3, ?4, ?5, ?6, ?7)"));
    st.bindAll(fit.version > 0 ? std::optional(fit.version) : std::nullopt, fit.fittedOn, fit.lines, fit.sets,
               fit.logLikelihoodBefore, fit.logLikelihoodAfter, numbersToJson(fit.numbers));
    transaction.changes().settings = true;
    STEELYARD_TRY(const std::int64_t version, st.insert());
    return static_cast<int>(version);
}

}  // namespace steelyard
