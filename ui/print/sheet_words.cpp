#include "ui/print/sheet_words.h"

#include "core/flags/actions.h"
#include "core/keying/set_notation.h"
#include "ui/print/load_drawing.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QLocale>

#include <algorithm>

namespace steelyard {
namespace {

struct SheetText {
    Q_DECLARE_TR_FUNCTIONS(SheetText)
};

QString sheetAmount(Decimal amount)
{
    return amount.trimmed().toString().replace(QLatin1Char('.'), QLocale().decimalPoint());
}

QString sheetJoint(Joint joint)
{
    switch (joint) {
    case Joint::Elbow:
        return SheetText::tr("Elbow");
    case Joint::Shoulder:
        return SheetText::tr("Shoulder");
    case Joint::Wrist:
        return SheetText::tr("Wrist");
    case Joint::LowerBack:
        return SheetText::tr("Lower back");
    case Joint::Hip:
        return SheetText::tr("Hip");
    case Joint::Knee:
        return SheetText::tr("Knee");
    case Joint::Neck:
        return SheetText::tr("Neck");
    case Joint::Ankle:
        return SheetText::tr("Ankle");
    }
    return {};
}

QString cueHead(CueKind kind)
{
    switch (kind) {
    case CueKind::Start:
        return SheetText::tr("Start");
    case CueKind::End:
        return SheetText::tr("End");
    case CueKind::Path:
        return SheetText::tr("Path");
    case CueKind::Body:
        return SheetText::tr("Body");
    case CueKind::Lowering:
        return SheetText::tr("Lowering");
    case CueKind::LeastTravel:
        return SheetText::tr("Counts from");
    }
    return {};
}

// "25 + 10 + 2.5"; the unit is written only where it isn't plain: plates of both kinds together, or of another unit than what they
// go with.
QString plateSum(const std::vector<Load>& plates, MassUnit with)
{
    const bool mixed = std::ranges::any_of(plates, [&](const Load& p) { return p.unit() != with; });
    QStringList parts;
    for (const Load& plate : plates) parts += mixed ? sheetLoad(plate) : sheetAmount(plate.amount());
    return parts.join(QStringLiteral(" + "));
}

QString barWords(const SheetLoad& load)
{
    QString text = SheetText::tr("bar %1").arg(sheetLoad(*load.bar));
    if (load.collars) text = SheetText::tr("%1, collars %2").arg(text, sheetLoad(*load.collars));
    return text;
}

// 3 sets at one load: "3 sets"; else set by set, joined by dots.
QString joinEqual(const std::vector<int>& numbers)
{
    const bool equal = std::ranges::all_of(numbers, [&](int n) { return n == numbers.front(); });
    if (equal && numbers.size() > 1)
        return QStringLiteral("%1 × %2").arg(QString::number(numbers.size()), QString::number(numbers.front()));
    QStringList parts;
    for (const int n : numbers) parts += QString::number(n);
    return parts.join(QStringLiteral(" · "));
}

bool wasWatched(const ResultToBeat& result)
{
    return std::ranges::any_of(result.sets, &SheetResult::watched);
}

// "97.5 kg × 10, 9, 9; 90 kg × 8"
QString resultWords(const ResultToBeat& result, bool units)
{
    const auto& sets = result.sets;
    QStringList groups;
    for (std::size_t i = 0; i < sets.size();) {
        QStringList reps;
        std::size_t j = i;
        for (; j < sets.size() && sets[j].load.mass() == sets[i].load.mass(); ++j)
            reps += QString::number(sets[j].countedReps);
        const QString load = units ? sheetLoad(sets[i].load) : sheetAmount(sets[i].load.amount());
        groups += QStringLiteral("%1 × %2").arg(load, reps.join(QStringLiteral(", ")));
        i = j;
    }
    return groups.join(QStringLiteral("; "));
}

}  // namespace

QString sheetNumber(double value)
{
    QLocale locale;
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    const double tenths = value * 10;
    const bool whole = static_cast<double>(static_cast<int>(value)) == value;
    const bool oneDecimal = static_cast<double>(static_cast<int>(tenths)) == tenths;
    return locale.toString(value, 'f', whole ? 0 : oneDecimal ? 1 : 2);
}

QString sheetLoad(const Load& load)
{
    return sheetAmount(load.amount()) + QChar(0xA0) + toText(load.unit());
}

QString sheetDate(QDate date)
{
    return QLocale().toString(date, QStringLiteral("dddd d MMMM yyyy"));
}

QString sheetWeekday(QDate date)
{
    return QLocale().toString(date, QStringLiteral("dddd d MMMM"));
}

QString sheetShortDate(QDate date)
{
    return QLocale().toString(date, QStringLiteral("d MMM yyyy"));
}

QString weekWords(const SessionSheet& sheet)
{
    QString words;
    if (sheet.place)
        words =
            SheetText::tr("week %1 of %2").arg(QString::number(sheet.place->week), QString::number(sheet.place->weeks));
    if (sheet.week == WeekKind::Normal) return words;
    const QString kind = sheet.week == WeekKind::Deload ? SheetText::tr("deload") : SheetText::tr("test");
    return words.isEmpty() ? SheetText::tr("%1 week").arg(kind) : SheetText::tr("%1, %2").arg(words, kind);
}

QString headOf(const SessionSheet& sheet)
{
    QStringList parts;
    if (!sheet.title.isEmpty()) parts += sheet.title;
    parts += weekWords(sheet);
    if (sheet.source != SheetSource::PlannedDay && sheet.takenFrom)
        parts += SheetText::tr("Not planned: exercises as on %1").arg(sheetShortDate(*sheet.takenFrom));
    if (!sheet.group.isEmpty()) parts += sheet.group;
    parts += sheet.gym.isEmpty() ? SheetText::tr("no gym set") : sheet.gym;
    parts.removeAll(QString());
    return parts.join(QStringLiteral(" · "));
}

QString setLegend()
{
    const std::pair<Mark, QString> marks[] = {
        {Mark::ShortBottom, SheetText::tr("bottom")}, {Mark::ShortTop, SheetText::tr("top")},
        {Mark::Swing, SheetText::tr("swing")},        {Mark::Dropped, SheetText::tr("dropped")},
        {Mark::Lean, SheetText::tr("lean")},          {Mark::Assisted, SheetText::tr("assisted")}};
    QStringList parts;
    for (const auto& [mark, words] : marks) parts += letterOf(mark) + QLatin1Char(' ') + words;
    return SheetText::tr("off = off standard, blank = not watched · marks: %1").arg(parts.join(QStringLiteral(", ")));
}

QString cautionWords(const SheetCaution& caution)
{
    switch (caution.kind) {
    case CautionKind::Discomfort:
        return SheetText::tr(
                   "%1: discomfort %2 of 10 on %3. Ask before starting and keep to what feels comfortable; if "
                   "it stays or grows, stop and let a health professional look at it.")
            .arg(caution.joint ? sheetJoint(*caution.joint) : QString(), QString::number(caution.rating),
                 sheetShortDate(caution.date));
    case CautionKind::HeavyBar:
        return SheetText::tr(
            "Heavy bar: safety pins set, collars on, and a spotter where the bar could come down on the lifter.");
    case CautionKind::Under18:
        return SheetText::tr("Under 18: local rules and supervision apply.");
    case CautionKind::AfterBreak:
        return SheetText::tr("No session since %1: take the warm-up slowly and go by the reserve, not by old numbers.")
            .arg(sheetShortDate(caution.date));
    }
    return {};
}

QString coachNoteWords(const CoachNote& note)
{
    QString words = note.words;
    if (note.action == u"refer_out") {
        words += QLatin1Char(' ') + referralCaution();
    } else if (words.isEmpty()) {
        words = actionNote(note.action);
        if (words.isEmpty()) words = actionLabel(note.action);
    }
    words = words.trimmed();
    if (!note.about.isEmpty()) words = QStringLiteral("%1: %2").arg(note.about, words);
    return SheetText::tr("Coach, %1: %2").arg(sheetShortDate(note.madeOn), words);
}

QString coachNotesWords(const SheetExercise& exercise)
{
    QStringList notes;
    for (const CoachNote& note : exercise.coachNotes) notes += coachNoteWords(note);
    return notes.join(QLatin1Char(' '));
}

QString nameOf(const SheetExercise& exercise)
{
    return exercise.turn.isEmpty() ? exercise.exercise : exercise.turn + QLatin1Char(' ') + exercise.exercise;
}

QString detailOf(const SheetExercise& exercise)
{
    return detailParts(exercise).join(QStringLiteral(" · "));
}

QStringList detailParts(const SheetExercise& exercise)
{
    QStringList parts;
    for (const QString& part : {exercise.variant, exercise.grip, exercise.standard})
        if (!part.isEmpty() && part != asUsualName()) parts += part;
    if (exercise.sides == Sides::OneAtATime) parts += SheetText::tr("each side");
    if (exercise.restSeconds)
        parts += SheetText::tr("rest %1 s").arg(*exercise.restSeconds).replace(QLatin1Char(' '), QChar(0xA0));
    return parts;
}

QString loadWords(const SheetExercise& exercise)
{
    if (!exercise.target.load) return SheetText::tr("Load: find it");
    const SheetLoad& load = *exercise.target.load;
    switch (exercise.loading) {
    case Loading::PerHand:
        return SheetText::tr("%1 each hand").arg(sheetLoad(load.load));
    case Loading::Added:
        return load.picture == LoadPicture::BodyOnly ? SheetText::tr("Body mass")
                                                     : SheetText::tr("Body + %1").arg(sheetLoad(load.load));
    case Loading::Assisted:
        return SheetText::tr("%1 of help").arg(sheetLoad(load.load));
    case Loading::BarTotal:
    case Loading::Stack:
        break;
    }
    return sheetLoad(load.load);
}

QString repsWords(const SheetExercise& exercise)
{
    if (!exercise.target.reps.empty()) return joinEqual(exercise.target.reps);
    return QStringLiteral("%1 × %2–%3")
        .arg(QString::number(exercise.sets), QString::number(exercise.band.low), QString::number(exercise.band.high));
}

QString reserveWords(const SheetExercise& exercise)
{
    if (!exercise.target.reserve) return {};
    const QString number = sheetNumber(*exercise.target.reserve);
    return exercise.target.reservePlanned ? SheetText::tr("RIR %1").arg(number)
                                          : SheetText::tr("RIR %1 as last time").arg(number);
}

QString setUpWords(const SheetExercise& exercise)
{
    QStringList parts{reserveWords(exercise)};
    if (exercise.target.load) parts += loadingWords(*exercise.target.load);
    parts.removeAll(QString());
    return parts.join(QStringLiteral(" · "));
}

QString loadingWords(const SheetLoad& load)
{
    switch (load.picture) {
    case LoadPicture::Bar:
        if (load.plates.empty()) return SheetText::tr("empty %1").arg(barWords(load));
        return SheetText::tr("%1 per side · %2").arg(plateSum(load.plates, load.load.unit()), barWords(load));
    case LoadPicture::BarUnknown:
        return SheetText::tr("bar and plates together; the gym's plates aren't known");
    case LoadPicture::Dumbbells:
        return SheetText::tr("dumbbells %1").arg(sheetLoad(load.load));
    case LoadPicture::Pin:
        if (load.pin && !load.plates.empty())
            return SheetText::tr("pin at %1, on it %2")
                .arg(sheetLoad(*load.pin), plateSum(load.plates, load.pin->unit()));
        return SheetText::tr("pin at %1").arg(sheetLoad(load.load));
    case LoadPicture::Belt:
        return load.plates.empty() ? SheetText::tr("hung on the body")
                                   : SheetText::tr("on the belt: %1").arg(plateSum(load.plates, load.load.unit()));
    case LoadPicture::BodyOnly:
        return SheetText::tr("nothing added");
    case LoadPicture::Counterweight:
        return SheetText::tr("help set at %1").arg(sheetLoad(load.load));
    }
    return {};
}

QString cantMakeWords(const SheetLoad& load)
{
    if (load.exact) return {};
    const QString asked = sheetLoad(load.asked);
    if (load.underEmptyBar && load.above)
        return SheetText::tr("%1 is under the lightest that this bar allows: %2.").arg(asked, sheetLoad(*load.above));
    if (load.below && load.above)
        return SheetText::tr("%1 can't be made here exactly: %2 below, %3 above.")
            .arg(asked, sheetLoad(*load.below), sheetLoad(*load.above));
    if (load.below)
        return SheetText::tr("%1 is more than can be loaded here: the most is %2.").arg(asked, sheetLoad(*load.below));
    if (load.above)
        return SheetText::tr("%1 is less than can be set here: the least is %2.").arg(asked, sheetLoad(*load.above));
    return SheetText::tr("%1 can't be made here.").arg(asked);
}

QString toBeatWords(const SheetExercise& exercise)
{
    if (!exercise.toBeat) return SheetText::tr("To beat: nothing comparable yet");
    QString text = SheetText::tr("To beat: %1 counted (%2)")
                       .arg(resultWords(*exercise.toBeat, true), sheetShortDate(exercise.toBeat->date));
    if (!wasWatched(*exercise.toBeat)) text += SheetText::tr(", not watched");
    return text;
}

QString toBeatWordsShort(const SheetExercise& exercise)
{
    if (!exercise.toBeat) return SheetText::tr("To beat: nothing yet");
    const bool otherUnit = std::ranges::any_of(
        exercise.toBeat->sets, [&](const SheetResult& set) { return set.load.unit() != exercise.unit; });
    QString text = SheetText::tr("To beat: %1 (%2)")
                       .arg(resultWords(*exercise.toBeat, otherUnit),
                            QLocale().toString(exercise.toBeat->date, QStringLiteral("d MMM")));
    if (!wasWatched(*exercise.toBeat)) text += SheetText::tr(", not watched");
    return text;
}

QString warmUpWordsShort(const SheetExercise& exercise)
{
    QStringList parts;
    for (const SheetWarmUp& set : exercise.warmUps)
        parts += QStringLiteral("%1 × %2").arg(
            set.load.load.unit() == exercise.unit ? sheetAmount(set.load.load.amount()) : sheetLoad(set.load.load),
            QString::number(set.reps));
    return parts.isEmpty() ? QString() : SheetText::tr("Warm-up: %1").arg(parts.join(QStringLiteral(", ")));
}

QString setUpWordsShort(const SheetExercise& exercise)
{
    const auto& load = exercise.target.load;
    const bool drawn =
        load && load->picture == LoadPicture::Bar && !load->plates.empty() && load->plates.size() <= kMostNumberedDiscs;
    QString setUp = drawn ? barWords(*load) : load ? loadingWords(*load) : QString();
    // The load itself says it.
    if (load
        && (load->picture == LoadPicture::Dumbbells || (load->picture == LoadPicture::Pin && load->plates.empty())))
        setUp.clear();
    QStringList parts{reserveWords(exercise), setUp};
    parts.removeAll(QString());
    return parts.join(QStringLiteral(" · "));
}

QString warmUpWords(const SheetExercise& exercise)
{
    QStringList parts;
    for (const SheetWarmUp& set : exercise.warmUps) {
        QString part = QStringLiteral("%1 × %2").arg(sheetLoad(set.load.load), QString::number(set.reps));
        if (set.load.picture == LoadPicture::Bar)
            part += set.load.plates.empty()
                        ? SheetText::tr(" (empty bar)")
                        : QStringLiteral(" (%1)").arg(plateSum(set.load.plates, set.load.load.unit()));
        parts += part;
    }
    return parts.isEmpty() ? QString() : SheetText::tr("Warm-up: %1").arg(parts.join(QStringLiteral("; ")));
}

QString cueWords(const SheetExercise& exercise)
{
    QStringList parts;
    for (const RepCue& cue : exercise.cues) {
        const QString value =
            cue.kind == CueKind::LeastTravel ? SheetText::tr("%1 % of the travel").arg(cue.text) : cue.text;
        parts += QStringLiteral("%1: %2").arg(cueHead(cue.kind), value);
    }
    return parts.join(QStringLiteral(" · "));
}

QString cueWordsShort(const SheetExercise& exercise)
{
    QStringList parts;
    for (const RepCue& cue : exercise.cues)
        parts +=
            cue.kind == CueKind::LeastTravel ? SheetText::tr("counts from %1 % of the travel").arg(cue.text) : cue.text;
    return parts.join(QStringLiteral("; "));
}

QString noteWords(const SheetExercise& exercise)
{
    return exercise.note.simplified();
}

QString whyWords(const SheetExercise& exercise)
{
    QString text = exercise.target.why;
    if (exercise.toBeat && !exercise.toBeat->effortKnown)
        text += QLatin1Char(' ') + SheetText::tr("The effort of last time isn't known in full: write the RIR today.");
    return text.trimmed();
}

QString afterwardsWords(const SheetExercise& exercise)
{
    if (!exercise.afterwards) return {};
    if (!exercise.afterwards->load)
        return SheetText::tr("Next time: there is no harder load here; more repetitions or a harder variant.");
    return SheetText::tr("Next time: %1, once every set has %2 counted with the reserve.")
        .arg(sheetLoad(*exercise.afterwards->load), QString::number(exercise.afterwards->reps));
}

}  // namespace steelyard
