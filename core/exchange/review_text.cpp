#include "core/exchange/review_text.h"

#include "core/flags/actions.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct ReviewWords {
    Q_DECLARE_TR_FUNCTIONS(ReviewWords)
};

constexpr qsizetype kVerdictColumn = 12;
constexpr qsizetype kNumberColumn = 13;
constexpr qsizetype kNameColumn = kReviewTextWidth - 2 - kVerdictColumn - 3 * kNumberColumn;

// Breaks at spaces; a word longer than the line is cut, so that the width always holds.
QString wrapped(const QString& text, const QString& first, const QString& rest)
{
    QString out;
    QString line = first;
    bool empty = true;
    for (QString word : text.split(u' ', Qt::SkipEmptyParts)) {
        const qsizetype room = kReviewTextWidth - rest.size();
        if (word.size() > room) word = word.left(room - 1) + u'…';
        if (!empty && line.size() + 1 + word.size() > kReviewTextWidth) {
            out += line + u'\n';
            line = rest;
            empty = true;
        }
        if (!empty) line += u' ';
        line += word;
        empty = false;
    }
    return out + line + u'\n';
}

QString fitted(const QString& text, qsizetype width)
{
    return text.size() <= width ? text.leftJustified(width) : text.left(width - 1) + u'…';
}

QString severityWord(Severity severity)
{
    switch (severity) {
    case Severity::Low:
        return ReviewWords::tr("low");
    case Severity::Medium:
        return ReviewWords::tr("medium");
    case Severity::High:
        return ReviewWords::tr("high");
    }
    return {};
}

QString rateCell(const LineReading& reading)
{
    // A rate beside "can't tell" would be read as telling after all.
    if (!reading.rate || reading.verdict == Verdict::CantTell) return QStringLiteral("–");
    const QString number = QString::number(100 * reading.rate->perWeek, 'f', 2);
    return (reading.rate->perWeek > 0 ? QStringLiteral("+") : QString()) + number + QStringLiteral(" %/wk");
}

QString lineRow(const LineReview& line, MassUnit unit)
{
    const LineReading& reading = line.reading;
    QString name = line.exercise;
    for (const QString& part : {line.variant, line.grip, line.standard})
        if (!part.isEmpty() && part != asUsualName()) name += QStringLiteral(", ") + part;
    const Wording plain;
    const QString capacity = reading.capacity
                                 ? plain.fixed(plain.massIn(reading.capacity->kg, unit), 1) + u' ' + toText(unit)
                                 : QStringLiteral("–");
    const QString counted = QString::number(100 * reading.countedShare, 'f', 0) + QStringLiteral(" %");
    return QStringLiteral("  ") + fitted(name, kNameColumn - 1) + u' '
           + fitted(verdictWord(reading.verdict), kVerdictColumn) + rateCell(reading).rightJustified(kNumberColumn)
           + capacity.rightJustified(kNumberColumn)
           + (reading.points.empty() ? QStringLiteral("–") : counted).rightJustified(kNumberColumn) + u'\n';
}

QString tableHead()
{
    return QStringLiteral("  ") + fitted(ReviewWords::tr("lift line"), kNameColumn - 1) + u' '
           + fitted(ReviewWords::tr("verdict"), kVerdictColumn) + ReviewWords::tr("rate").rightJustified(kNumberColumn)
           + ReviewWords::tr("capacity").rightJustified(kNumberColumn)
           + ReviewWords::tr("counted").rightJustified(kNumberColumn) + u'\n';
}

QString flagText(const Flag& flag)
{
    QStringList labels;
    for (const QString& action : flag.actions) labels.push_back(actionLabel(action));
    QString text =
        wrapped(flag.sentence, QStringLiteral("  ● %1: ").arg(severityWord(flag.severity)), QStringLiteral("    "));
    if (!labels.isEmpty())
        text += wrapped(ReviewWords::tr("What could be done: %1.").arg(labels.join(QStringLiteral("; "))),
                        QStringLiteral("    "), QStringLiteral("    "));
    return text;
}

QString athleteText(const AthleteReview& review)
{
    const QString last = review.lastSession
                             ? ReviewWords::tr("last session %1").arg(review.lastSession->toString(Qt::ISODate))
                             : ReviewWords::tr("no session yet");
    QString text = wrapped(
        ReviewWords::tr("%1 (attention %2, %3)").arg(review.name, QString::number(review.attention, 'f', 1), last), {},
        QStringLiteral("  "));
    for (const Flag& flag : review.flags) text += flagText(flag);
    if (review.flags.empty()) text += QStringLiteral("  ") + ReviewWords::tr("Nothing open.") + u'\n';
    if (!review.answered.empty())
        text += QStringLiteral("  ")
                + ReviewWords::tr("Answered and resting: %n.", nullptr, static_cast<int>(review.answered.size()))
                + u'\n';
    if (!review.lines.empty()) text += tableHead();
    for (const LineReview& line : review.lines) text += lineRow(line, review.unit);
    return text + u'\n';
}

}  // namespace

QString verdictWord(Verdict verdict)
{
    switch (verdict) {
    case Verdict::Progressing:
        return ReviewWords::tr("progressing");
    case Verdict::Holding:
        return ReviewWords::tr("holding");
    case Verdict::Stalled:
        return ReviewWords::tr("stalled");
    case Verdict::Slipping:
        return ReviewWords::tr("slipping");
    case Verdict::CantTell:
        return ReviewWords::tr("can't tell");
    }
    return {};
}

QString reviewText(QDate asOf, const std::vector<AthleteReview>& reviews)
{
    QString text =
        ReviewWords::tr("Review as of %1: %n lifter(s), worst first", nullptr, static_cast<int>(reviews.size()))
            .arg(asOf.toString(Qt::ISODate))
        + QStringLiteral("\n\n");
    for (const AthleteReview& review : reviews) text += athleteText(review);
    return text;
}

}  // namespace steelyard
