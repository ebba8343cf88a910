#include "core/book/learn_parameters.h"

#include "core/analysis/parameter_names.h"
#include "core/book/fit_sample.h"
#include "core/book/reading_numbers.h"
#include "core/storage/reading_parameter_repository.h"

#include <QtCore/QCoreApplication>

#include <numeric>

namespace steelyard {
namespace {

struct LearnText {
    Q_DECLARE_TR_FUNCTIONS(LearnText)
};

constexpr double kReadingShare = 0.15;  // of the work

Result<double> pooled(std::span<const FitLine> lines, const ReadingParameters& parameters, int threads,
                      const Progress& progress)
{
    const auto each = logLikelihoodOf(lines, parameters, threads, progress);
    if (!each) return fail(ErrorCode::Cancelled, LearnText::tr("Learning was stopped."));
    return std::accumulate(each->begin(), each->end(), 0.0);
}

Result<void> store(const LearnRequest& request, LearnReport& report, const ReadingParameters& fitted)
{
    STEELYARD_TRY(const auto db, Database::openWriter(request.bookPath));
    const ReadingParameterRepository repository(*db);
    STEELYARD_TRY(auto transaction, Transaction::begin(*db));
    STEELYARD_TRY(const ReadingParameters now, readReadingParameters(*db, request.asOf));
    if (now != report.before)
        return fail(ErrorCode::Conflict,
                    LearnText::tr("Other numbers were learned meanwhile. Nothing was stored; try again."));
    ReadingFit fit{0,
                   request.asOf,
                   report.fit.lines,
                   report.fit.sets,
                   report.fit.logLikelihoodBefore,
                   report.fit.logLikelihoodAfter,
                   numbersOf(fitted)};
    STEELYARD_TRY(const int version, repository.insert(transaction, fit));
    const Changes changes = transaction.changes();
    STEELYARD_CHECK(transaction.commit());
    report.version = version;
    report.changes = changes;
    report.after = fitted;
    report.after.version = version;
    return {};
}

}  // namespace

Result<LearnReport> learnParameters(const LearnRequest& request, const Progress& progress)
{
    LearnReport report;
    FitSample sample;
    {
        STEELYARD_TRY(const auto db, Database::openReader(request.bookPath));
        STEELYARD_TRY(report.before, readReadingParameters(*db, request.asOf));
        STEELYARD_TRY(sample, readFitSample(*db, request.asOf, progress.part(0, kReadingShare)));
    }
    report.after = report.before;
    STEELYARD_TRY(report.fit,
                  fitParameters(sample.lines, report.before, request.options, progress.part(kReadingShare, 1)));
    if (!report.fit.fitted) {
        report.kept = QString::fromUtf16(report.fit.kept);
        return report;
    }
    report.linesApart = static_cast<int>(sample.apart.size());
    STEELYARD_TRY(report.apartBefore, pooled(sample.apart, report.before, request.options.threads, progress));
    STEELYARD_TRY(report.apartAfter, pooled(sample.apart, *report.fit.fitted, request.options.threads, progress));
    if (report.linesApart > 0 && report.apartAfter <= report.apartBefore) {
        report.kept = QStringLiteral("worse_apart");
        return report;
    }
    STEELYARD_CHECK(store(request, report, *report.fit.fitted));
    return report;
}

QString learnSentence(const LearnReport& report)
{
    if (report.version)
        return LearnText::tr("Learned from %n lift line(s): readings now rest on version %1 of the numbers.", nullptr,
                             report.fit.lines)
            .arg(*report.version);
    if (report.kept == u"too_few_lines")
        return LearnText::tr(
                   "Too little to learn from: %n lift line(s) with enough weeks in the last year, and %1 are "
                   "needed. The numbers stay as they are.",
                   nullptr, report.fit.lines)
            .arg(kLeastFitLines);
    if (report.kept == u"worse_apart")
        return LearnText::tr(
            "Other numbers suit %n lift line(s), but not the ones kept apart to check them. The numbers "
            "stay as they are.",
            nullptr, report.fit.lines);
    return LearnText::tr("The numbers suit the %n lift line(s) as they are.", nullptr, report.fit.lines);
}

std::vector<LearnedNumber> learnedNumbers(const LearnReport& report)
{
    const auto before = numbersOf(report.before);
    std::vector<LearnedNumber> numbers;
    for (const auto& [name, value] : numbersOf(report.after))
        if (const double was = before.at(name); was != value) numbers.push_back({name, was, value});
    return numbers;
}

}  // namespace steelyard
