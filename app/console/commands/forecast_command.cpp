#include "app/console/commands/commands.h"
#include "core/base/wording.h"
#include "core/book/book.h"
#include "core/book/set_outlook.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonArray>
#include <QtCore/QJsonObject>

#include <cmath>

namespace steelyard {
namespace {

struct ForecastCommandText {
    Q_DECLARE_TR_FUNCTIONS(ForecastCommandText)
};

// What isn't a number is a slip in the words; a number that can't be is refused input.
Result<Decimal> decimalOption(const Console& console, const QString& option)
{
    STEELYARD_TRY(const QString text, console.required(option));
    if (const auto number = Decimal::parse(QStringView(text))) return *number;
    return fail(ErrorCode::Unsupported,
                ForecastCommandText::tr("--%1 is a number like 2 or 42.5; “%2” is none.").arg(option, text));
}

Result<Load> loadOption(const Console& console)
{
    STEELYARD_TRY(const Decimal amount, decimalOption(console, QStringLiteral("load")));
    if (const auto load = Load::make(amount, MassUnit::kg)) return *load;
    return fail(ErrorCode::Invalid,
                ForecastCommandText::tr("--load is kilograms from 0 to %1, with at most %2 decimals.")
                    .arg(Load::kMaxAmount)
                    .arg(Load::kMaxDecimals));
}

Result<OutlookRequest> readWords(const Console& console)
{
    const QString loadWord = QStringLiteral("load");
    const QString repsWord = QStringLiteral("reps");
    OutlookRequest request;
    STEELYARD_TRY(request.athlete, console.required(QStringLiteral("athlete")));
    STEELYARD_TRY(request.line, console.required(QStringLiteral("line")));
    request.asOf = console.clock().today();
    if (console.has(loadWord) == console.has(repsWord))
        return fail(
            ErrorCode::Unsupported,
            ForecastCommandText::tr("Either --load (what will it bring?) or --reps (which load brings so many?) "
                                    "is needed here."));
    STEELYARD_TRY(const Decimal rir, decimalOption(console, QStringLiteral("rir")));
    request.rir = rir.toDouble();
    if (request.rir < 0 || request.rir > kMostReserveAsked)
        return fail(ErrorCode::Invalid, ForecastCommandText::tr("--rir is from 0 to %1 repetitions in reserve.")
                                            .arg(QString::number(kMostReserveAsked)));
    STEELYARD_TRY(request.setNumber, console.integer(QStringLiteral("set-number"), 1, 1, kMostSetNumber));
    if (console.has(loadWord)) {
        STEELYARD_TRY(request.load, loadOption(console));
    } else {
        STEELYARD_TRY(request.reps, console.integer(repsWord, 1, 1, kMostWantedReps));
    }
    return request;
}

QJsonObject outlookJson(const OutlookRequest& request, const SetOutlook& outlook)
{
    const SetTarget& target = outlook.target;
    QJsonArray chances;
    for (const RepChance& chance : target.chances)
        chances.append(
            QJsonObject{{QStringLiteral("reps"), chance.reps}, {QStringLiteral("probability"), chance.probability}});
    QJsonObject json{{QStringLiteral("as_of"), request.asOf.toString(Qt::ISODate)},
                     {QStringLiteral("athlete"), outlook.athlete},
                     {QStringLiteral("line"), outlook.lineKey},
                     {QStringLiteral("load_kg"), target.loadKg},
                     {QStringLiteral("rir"), request.rir},
                     {QStringLiteral("set"), request.setNumber},
                     {QStringLiteral("reps_median"), target.repsMedian},
                     {QStringLiteral("reps_low50"), target.within50.low},
                     {QStringLiteral("reps_high50"), target.within50.high},
                     {QStringLiteral("reps_low80"), target.within80.low},
                     {QStringLiteral("reps_high80"), target.within80.high},
                     {QStringLiteral("reps_low95"), target.within95.low},
                     {QStringLiteral("reps_high95"), target.within95.high},
                     {QStringLiteral("target_reps"), target.targetReps},
                     {QStringLiteral("target_probability"), target.targetProbability},
                     {QStringLiteral("chances"), chances},
                     {QStringLiteral("cautions"), QJsonArray::fromStringList(outlook.cautions)}};
    if (!request.reps) return json;
    json[QStringLiteral("wanted_reps")] = *request.reps;
    json[QStringLiteral("load_for_reps_kg")] = *outlook.loadForRepsKg;
    json[QStringLiteral("loadable_kg")] =
        outlook.loadable ? QJsonValue(outlook.loadable->kilograms()) : QJsonValue(QJsonValue::Null);
    return json;
}

QString intervalPart(const RepInterval& reps, const Wording& wording)
{
    return ForecastCommandText::tr("%1 to %2").arg(wording.fixed(reps.low, 1), wording.fixed(reps.high, 1));
}

QString targetSentence(const SetTarget& target)
{
    const auto tally = [](double chance) { return static_cast<int>(std::lround(100 * chance)); };
    if (target.targetReps == 0)
        return ForecastCommandText::tr("Nothing to aim for: one repetition would come about in %1 of 100 such sets.")
            .arg(tally(target.chanceOf(1)));
    return ForecastCommandText::tr("Aim for %1: about %2 of 100 such sets reach it; one more, about %3.")
        .arg(target.targetReps)
        .arg(tally(target.targetProbability))
        .arg(tally(target.chanceOf(target.targetReps + 1)));
}

// People read the unit of the lifter.
QString outlookText(const OutlookRequest& request, const SetOutlook& outlook)
{
    const Wording wording;
    const SetTarget& target = outlook.target;
    const QString mass = wording.mass(target.loadKg, outlook.unit, 2);
    QStringList lines{
        ForecastCommandText::tr("%1: %2, as of %3").arg(outlook.athlete, outlook.lineName, wording.day(request.asOf))};
    if (request.reps) {
        const QString exact = wording.mass(*outlook.loadForRepsKg, outlook.unit, 1);
        lines << (outlook.loadable
                      ? ForecastCommandText::tr("For %n repetition(s): %1; the gym's nearest is %2.", nullptr,
                                                *request.reps)
                            .arg(exact, wording.load(*outlook.loadable))
                      : ForecastCommandText::tr("For %n repetition(s): %1. No gym is known to round it to.", nullptr,
                                                *request.reps)
                            .arg(exact));
    }
    lines << ForecastCommandText::tr(
                 "Set %1 at %2 with %3 in reserve: about %4 counted repetitions (50 % %5; 80 % %6; 95 % %7).")
                 .arg(QString::number(request.setNumber), mass, wording.number(request.rir, 2),
                      wording.fixed(target.repsMedian, 1), intervalPart(target.within50, wording),
                      intervalPart(target.within80, wording), intervalPart(target.within95, wording));
    lines << targetSentence(target);
    return lines.join(u'\n');
}

QString cautionSentence(const QString& word)
{
    if (word == u"too_few")
        return ForecastCommandText::tr("Few or no recent sessions stand behind this, so it is wide and may be off.");
    if (word == u"mixed_record")
        return ForecastCommandText::tr("Much of what was watched lately was off standard, so trust this less.");
    if (word == u"effort_unknown")
        return ForecastCommandText::tr("Effort is seldom written down; this takes it to have stayed as usual.");
    return ForecastCommandText::tr("No body mass is written down; %1 kg is taken for it.")
        .arg(QString::number(kAssumedBodyKg, 'f', 0));
}

Result<void> runForecast(const Console& console)
{
    STEELYARD_TRY(const QString path, console.required(QStringLiteral("book")));
    STEELYARD_TRY(const OutlookRequest request, readWords(console));
    STEELYARD_TRY(const auto book, Book::openForReading(path, console.clock()));
    STEELYARD_TRY(const SetOutlook outlook, readSetOutlook(book->database(), request));
    for (const QString& caution : outlook.cautions) console.say(cautionSentence(caution));
    if (console.json())
        console.print(QJsonDocument(outlookJson(request, outlook)));
    else
        console.print(outlookText(request, outlook));
    return {};
}

}  // namespace

ConsoleCommand forecastCommand()
{
    return {
        QStringLiteral("forecast"),
        ForecastCommandText::tr("repetitions to expect of a set, or the load for so many"),
        {bookOption(),
         athleteOption(),
         {QStringLiteral("line"), ForecastCommandText::tr("The lift line, by its key."), QStringLiteral("key")},
         {QStringLiteral("load"), ForecastCommandText::tr("The load that is planned."), QStringLiteral("kg")},
         {QStringLiteral("reps"), ForecastCommandText::tr("Or the repetitions that are wanted."), QStringLiteral("n")},
         {QStringLiteral("rir"), ForecastCommandText::tr("Repetitions to keep in reserve."), QStringLiteral("n")},
         {QStringLiteral("set-number"), ForecastCommandText::tr("Which working set of the session; 1 if not said."),
          QStringLiteral("n")}},
        &runForecast};
}

}  // namespace steelyard
