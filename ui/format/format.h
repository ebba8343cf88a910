// Numbers, dates, units and machine words as people read them: the only place that knows the locale.
//
//   format::load(load)            "42.5 kg", in the decimals it was typed in
//   format::percent(0.004, 1)     "0.4 %"
//   format::ago(date, today)      "3 weeks ago"
//
// Minus is U+2212, which is as wide as plus. Absent values are a dash, in the same place as a number.
#pragma once

#include "core/base/wording.h"
#include "core/flags/flag.h"

#include <QtCore/QLocale>

namespace steelyard::format {

[[nodiscard]] QString absent();  // "–"
[[nodiscard]] QString number(double value, int decimals);
[[nodiscard]] QString signedNumber(double value, int decimals);  // "+0.4", "−0.4", "0.0"
[[nodiscard]] QString decimal(const Decimal& value);             // in the decimals it was typed in
[[nodiscard]] QString shortNumber(double value);                 // with as many decimals as it needs, two at most
[[nodiscard]] QString percent(double share, int decimals = 0);
[[nodiscard]] QString signedPercent(double share, int decimals);  // with its sign and unit
[[nodiscard]] QString unit(MassUnit unit);
[[nodiscard]] QString load(const Load& load);
// Kilograms shown in the athlete's unit: "52.5 kg", "116 lb".
[[nodiscard]] QString mass(double kilograms, MassUnit shown, int decimals = 1);
[[nodiscard]] double massIn(double kilograms, MassUnit shown);

[[nodiscard]] QString date(QDate date);              // the locale's short form with the whole year
[[nodiscard]] QString moment(const QDateTime& utc);  // its day and time of day, here
[[nodiscard]] QString fileSize(qint64 bytes);        // "54.2 MB"
[[nodiscard]] QString dayMonth(QDate date);          // "3 Mar"
[[nodiscard]] QString weekday(QDate date);           // "Monday"
[[nodiscard]] QString ago(QDate date, QDate today);  // "today", "yesterday", "5 days ago", "in 2 weeks"
// How core words the sentences it makes for the screen: by locale, masses in the lifter's own unit.
[[nodiscard]] Wording wording();
// The widget's pattern for typing a date, with a four-digit year.
[[nodiscard]] QString datePattern();

[[nodiscard]] QString verdictWord(Verdict verdict);
// One character that repeats the word as a shape: black and white safe.
[[nodiscard]] QString verdictShape(Verdict verdict);
[[nodiscard]] QString severityWord(Severity severity);
[[nodiscard]] QString severityShape(std::optional<Severity> severity);  // absent: nothing open
[[nodiscard]] QString decisionWord(DecisionKind kind);
// The whole answer to a flag: "watching until 3 Mar 2027 (slept badly)", "acted: Keep the load".
[[nodiscard]] QString decisionAnswer(const Decision& decision);
[[nodiscard]] QString markWord(Mark mark);
[[nodiscard]] QString jointWord(Joint joint);
[[nodiscard]] QString setKindWord(SetKind kind);
// A tooltip that shows the text as it is, though it may look like mark-up.
[[nodiscard]] QString plainToolTip(const QString& text);

}  // namespace steelyard::format
