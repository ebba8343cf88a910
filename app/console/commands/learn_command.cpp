#include "app/console/commands/commands.h"
#include "core/book/book.h"
#include "core/book/learn_parameters.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonArray>
#include <QtCore/QJsonObject>

namespace steelyard {
namespace {

struct LearnCommandText {
    Q_DECLARE_TR_FUNCTIONS(LearnCommandText)
};

constexpr int kNameColumn = 30;
constexpr int kNumberColumn = 12;

QJsonObject learnJson(const LearnReport& report)
{
    QJsonArray changes;
    for (const LearnedNumber& one : learnedNumbers(report))
        changes.append(QJsonObject{{QStringLiteral("name"), one.name},
                                   {QStringLiteral("before"), one.before},
                                   {QStringLiteral("after"), one.after}});
    return {{QStringLiteral("version"), report.version ? QJsonValue(*report.version) : QJsonValue(QJsonValue::Null)},
            {QStringLiteral("kept"), report.kept},
            {QStringLiteral("lines"), report.fit.lines},
            {QStringLiteral("sets"), report.fit.sets},
            {QStringLiteral("lines_apart"), report.linesApart},
            {QStringLiteral("evaluations"), report.fit.evaluations},
            {QStringLiteral("log_likelihood_before"), report.fit.logLikelihoodBefore},
            {QStringLiteral("log_likelihood_after"), report.fit.logLikelihoodAfter},
            {QStringLiteral("apart_before"), report.apartBefore},
            {QStringLiteral("apart_after"), report.apartAfter},
            {QStringLiteral("changes"), changes}};
}

void printLearned(const Console& console, const LearnReport& report)
{
    console.print(learnSentence(report));
    const ParameterFit& fit = report.fit;
    if (fit.evaluations > 0)
        console.print(LearnCommandText::tr("Log likelihood of %1 sets: %2, before %3 (%4 evaluations).")
                          .arg(fit.sets)
                          .arg(fit.logLikelihoodAfter, 0, 'f', 1)
                          .arg(fit.logLikelihoodBefore, 0, 'f', 1)
                          .arg(fit.evaluations));
    if (report.linesApart > 0)
        console.print(LearnCommandText::tr("Of the %n line(s) kept apart: %1, before %2.", nullptr, report.linesApart)
                          .arg(report.apartAfter, 0, 'f', 1)
                          .arg(report.apartBefore, 0, 'f', 1));
    for (const LearnedNumber& one : learnedNumbers(report))
        console.print(one.name.leftJustified(kNameColumn)
                      + QString::number(one.before, 'g', 4).rightJustified(kNumberColumn) + QStringLiteral(" → ")
                      + QString::number(one.after, 'g', 4).leftJustified(kNumberColumn)
                      + LearnCommandText::tr("× %1").arg(one.after / one.before, 0, 'f', 2));
}

Result<void> runLearn(const Console& console)
{
    STEELYARD_TRY(const QString path, console.required(QStringLiteral("book")));
    STEELYARD_TRY(const auto book, Book::open(path, console.clock()));
    if (book->isReadOnly())
        return fail(ErrorCode::Storage,
                    LearnCommandText::tr("The book is open in another program (%1). Close it there first.")
                        .arg(book->holder()));
    STEELYARD_TRY(const LearnReport report, learnParameters({path, console.clock().today(), {}}, console.progress()));
    if (console.json())
        console.print(QJsonDocument(learnJson(report)));
    else
        printLearned(console, report);
    return {};
}

}  // namespace

ConsoleCommand learnCommand()
{
    return {QStringLiteral("learn"),
            LearnCommandText::tr("fit the numbers behind the readings to this roster's own record"),
            {bookOption()},
            &runLearn};
}

}  // namespace steelyard
