#include "core/exchange/review_json.h"

#include <QtCore/QJsonArray>

#include <cmath>

namespace steelyard {
namespace {

QJsonValue jsonNumber(double value)
{
    return std::isfinite(value) ? QJsonValue(value) : QJsonValue(QJsonValue::Null);
}

QJsonValue jsonNumber(std::optional<double> value)
{
    return value ? jsonNumber(*value) : QJsonValue(QJsonValue::Null);
}

template <class Part>
QJsonValue jsonNumber(const std::optional<Part>& part, double Part::*member)
{
    return part ? jsonNumber((*part).*member) : QJsonValue(QJsonValue::Null);
}

QJsonValue jsonDay(const std::optional<QDate>& date)
{
    return date ? QJsonValue(date->toString(Qt::ISODate)) : QJsonValue(QJsonValue::Null);
}

QJsonObject jsonNext(const std::optional<Forecast>& next)
{
    const QJsonValue none(QJsonValue::Null);
    return {{QStringLiteral("load_kg"), next ? jsonNumber(next->load.kilograms()) : none},
            {QStringLiteral("rir"), next ? QJsonValue(next->repsInReserve) : none},
            {QStringLiteral("reps_median"), jsonNumber(next, &Forecast::repsMedian)},
            {QStringLiteral("reps_low80"), jsonNumber(next, &Forecast::repsLow80)},
            {QStringLiteral("reps_high80"), jsonNumber(next, &Forecast::repsHigh80)}};
}

QJsonObject jsonLine(const LineReview& line)
{
    const LineReading& reading = line.reading;
    return {{QStringLiteral("key"), line.key},
            {QStringLiteral("exercise"), line.exercise},
            {QStringLiteral("variant"), line.variant},
            {QStringLiteral("grip"), line.grip},
            {QStringLiteral("standard"), line.standard},
            {QStringLiteral("verdict"), toText(reading.verdict)},
            {QStringLiteral("reason"), reading.reason},
            {QStringLiteral("since"), jsonDay(reading.since)},
            {QStringLiteral("since_earliest"), jsonDay(reading.sinceEarliest)},
            {QStringLiteral("since_latest"), jsonDay(reading.sinceLatest)},
            {QStringLiteral("exposures"), reading.exposures},
            {QStringLiteral("counted_share"), jsonNumber(reading.countedShare)},
            {QStringLiteral("watched_share"), jsonNumber(reading.watchedShare)},
            {QStringLiteral("rate_per_week"), jsonNumber(reading.rate, &TrendRate::perWeek)},
            {QStringLiteral("rate_low90"), jsonNumber(reading.rate, &TrendRate::low90)},
            {QStringLiteral("rate_high90"), jsonNumber(reading.rate, &TrendRate::high90)},
            {QStringLiteral("plain_rate_per_week"), jsonNumber(reading.plain, &TrendRate::perWeek)},
            {QStringLiteral("weeks_to_tell"), jsonNumber(reading.weeksToTell)},
            {QStringLiteral("p_rising"), jsonNumber(reading.rate, &TrendRate::pRising)},
            {QStringLiteral("p_falling"), jsonNumber(reading.rate, &TrendRate::pFalling)},
            {QStringLiteral("capacity_kg"), jsonNumber(reading.capacity, &CapacityEstimate::kg)},
            {QStringLiteral("capacity_low90_kg"), jsonNumber(reading.capacity, &CapacityEstimate::low90Kg)},
            {QStringLiteral("capacity_high90_kg"), jsonNumber(reading.capacity, &CapacityEstimate::high90Kg)},
            {QStringLiteral("why"), reading.why},
            {QStringLiteral("next"), jsonNext(reading.next)}};
}

// Two lines of one athlete never share a key, and a flag's line is always one of the review's.
QJsonValue jsonFlagLine(const Flag& flag, const AthleteReview& review)
{
    for (const LineReview& line : review.lines)
        if (flag.line == line.id) return line.key;
    return QJsonValue::Null;
}

QJsonObject jsonFlag(const Flag& flag, const AthleteReview& review)
{
    QJsonArray evidence;
    for (const Evidence& row : flag.evidence)
        evidence.append(QJsonObject{{QStringLiteral("date"), row.date.toString(Qt::ISODate)},
                                    {QStringLiteral("what"), row.what},
                                    {QStringLiteral("value"), jsonNumber(row.value)}});
    return {{QStringLiteral("id"), flag.rule},
            {QStringLiteral("line"), jsonFlagLine(flag, review)},
            {QStringLiteral("severity"), toText(flag.severity)},
            {QStringLiteral("sentence"), flag.sentence},
            {QStringLiteral("evidence"), evidence},
            {QStringLiteral("actions"), QJsonArray::fromStringList(flag.actions)}};
}

QJsonObject jsonAthlete(const AthleteReview& review)
{
    QJsonArray lines;
    for (const LineReview& line : review.lines) lines.append(jsonLine(line));
    QJsonArray flags;
    for (const Flag& flag : review.flags) flags.append(jsonFlag(flag, review));
    return {{QStringLiteral("name"), review.name},
            {QStringLiteral("attention"), jsonNumber(review.attention)},
            {QStringLiteral("lines"), lines},
            {QStringLiteral("flags"), flags}};
}

// One review is made with one set of numbers.
int versionOf(const std::vector<AthleteReview>& reviews)
{
    for (const AthleteReview& review : reviews)
        if (!review.lines.empty()) return review.lines.front().reading.parametersVersion;
    return 0;
}

}  // namespace

QJsonObject reviewJson(QDate asOf, const QString& bookPath, const std::vector<AthleteReview>& reviews)
{
    QJsonArray athletes;
    for (const AthleteReview& review : reviews) athletes.append(jsonAthlete(review));
    return {{QStringLiteral("as_of"), asOf.toString(Qt::ISODate)},
            {QStringLiteral("book"), bookPath},
            {QStringLiteral("parameters_version"), versionOf(reviews)},
            {QStringLiteral("athletes"), athletes}};
}

}  // namespace steelyard
