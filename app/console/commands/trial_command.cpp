#include "app/console/commands/commands.h"
#include "app/console/commands/trial_arm_words.h"
#include "app/console/commands/trial_report.h"
#include "core/book/book.h"
#include "core/edits/trial_edits.h"
#include "core/planning/propose_trial.h"
#include "core/trials/arm_differences.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonArray>

#include <algorithm>
#include <numeric>

namespace steelyard {
namespace {

struct TrialCommandText {
    Q_DECLARE_TR_FUNCTIONS(TrialCommandText)
};

constexpr int kMostBlocksAsked = 50;
constexpr int kMostSetsAsked = 30;
constexpr int kMostDaysBetween = 30;
constexpr int kMostRunInAsked = 20;
constexpr int kMostTrialNumber = 1000;

tl::unexpected<Error> slip(const QString& text)
{
    return fail(ErrorCode::Unsupported, text);
}

// "tension:0.6"; without any the registry's own weights.
Result<std::vector<TrialOutcome>> readOutcomes(const Console& console)
{
    const QStringList words = console.values(QStringLiteral("outcome"));
    if (words.isEmpty()) return defaultOutcomes();
    std::vector<TrialOutcome> outcomes;
    for (const QString& word : words) {
        bool isNumber = false;
        const TrialOutcome outcome{word.section(u':', 0, 0), word.section(u':', 1).toDouble(&isNumber)};
        if (!isNumber) return slip(TrialCommandText::tr("--outcome is a key and its weight, like tension:0.4."));
        if (!findOutcome(outcome.key)) {
            QStringList keys;
            for (const OutcomeKind& kind : outcomeKinds()) keys += kind.key;
            return fail(ErrorCode::Invalid, TrialCommandText::tr("No outcome is called “%1”. There are: %2.")
                                                .arg(outcome.key, keys.join(QStringLiteral(", "))));
        }
        outcomes.push_back(outcome);
    }
    return outcomes;
}

Result<std::uint64_t> readSeed(const Console& console)
{
    if (!console.has(QStringLiteral("seed"))) return 1;
    bool isNumber = false;
    const std::uint64_t seed = console.value(QStringLiteral("seed")).toULongLong(&isNumber);
    if (!isNumber) return slip(TrialCommandText::tr("--seed is a whole number, 0 or above."));
    return seed;
}

Result<void> readArms(const Console& console, const LifterTrials& trials, Trial& trial)
{
    STEELYARD_TRY(const int runIn, console.integer(QStringLiteral("run-in"), 0, 0, kMostRunInAsked));
    for (const QString& words : console.values(QStringLiteral("arm"))) {
        STEELYARD_TRY(TrialArm arm, readArm(words, trials.log, trials.library));
        arm.runIn = runIn;
        trial.arms.push_back(arm);
    }
    if (trial.arms.size() < kFewestArms || trial.arms.size() > kMostArms)
        return slip(TrialCommandText::tr("Say --arm %1 to %2 times.").arg(kFewestArms).arg(kMostArms));
    return {};
}

Result<Trial> readDesign(const Console& console, const LifterTrials& trials)
{
    Trial trial{.athlete = trials.log.athlete.id};
    trial.designedOn = console.clock().today();
    STEELYARD_TRY(const QString factor, console.required(QStringLiteral("factor")));
    const auto named = fromKey<TrialFactor>(QStringView(factor));
    if (!named) return slip(TrialCommandText::tr("--factor is one of: %1.").arg(keyList<TrialFactor>()));
    trial.factor = *named;
    trial.whyMoreThanOne = console.value(QStringLiteral("reason"));
    STEELYARD_CHECK(readArms(console, trials, trial));
    STEELYARD_TRY(trial.outcomes, readOutcomes(console));
    STEELYARD_TRY(trial.seed, readSeed(console));
    STEELYARD_TRY(trial.blocks, console.integer(QStringLiteral("blocks"), trial.blocks, 1, kMostBlocksAsked));
    STEELYARD_TRY(trial.sets, console.integer(QStringLiteral("sets"), trial.sets, 1, kMostSetsAsked));
    STEELYARD_TRY(trial.daysBetween,
                  console.integer(QStringLiteral("days-between"), trial.daysBetween, 1, kMostDaysBetween));
    if (console.has(QStringLiteral("rir"))) {
        trial.plannedRir = Decimal::parse(QStringView(console.value(QStringLiteral("rir"))));
        if (!trial.plannedRir) return slip(TrialCommandText::tr("--rir is a number like 2 or 1.5."));
    }
    trial.question = console.value(QStringLiteral("question")).trimmed();
    if (trial.question.isEmpty()) {
        const auto names = armNames(trial, trials.library);
        trial.question =
            QStringList(names.begin(), names.end()).join(TrialCommandText::tr(" or ")) + QStringLiteral("?");
    }
    return trial;
}

Result<std::vector<int>> readWeekdays(const Console& console)
{
    std::vector<int> weekdays;
    const QString words = console.value(QStringLiteral("weekdays"));
    for (const QString& word : words.split(u',', Qt::SkipEmptyParts)) {
        bool isNumber = false;
        const int weekday = word.toInt(&isNumber);
        if (!isNumber || weekday < 1 || weekday > kDaysOfPlanWeek)
            return slip(TrialCommandText::tr("--weekdays are numbers from 1, Monday, to 7, Sunday, like 1,4."));
        weekdays.push_back(weekday);
    }
    return weekdays;
}

QJsonArray datesJson(const std::vector<QDate>& dates)
{
    QJsonArray list;
    for (const QDate date : dates) list.append(date.toString(Qt::ISODate));
    return list;
}

QJsonObject designJson(const LifterTrials& trials, const ProposedTrial& proposed, bool accepted)
{
    const Trial& trial = proposed.trial;
    const auto names = armNames(trial, trials.library);
    QJsonArray arms;
    for (std::size_t arm = 0; arm < trial.arms.size(); ++arm)
        arms.append(QJsonObject{{QStringLiteral("arm"), armLetter(arm)},
                                {QStringLiteral("name"), names[arm]},
                                {QStringLiteral("band_low"), trial.arms[arm].band.low},
                                {QStringLiteral("band_high"), trial.arms[arm].band.high}});
    QJsonArray outcomes;
    for (const TrialOutcome& outcome : trial.outcomes)
        outcomes.append(QJsonObject{{QStringLiteral("key"), outcome.key}, {QStringLiteral("weight"), outcome.weight}});
    QJsonArray days;
    for (const TrialDay& day : trial.days)
        days.append(QJsonObject{{QStringLiteral("date"), day.date.toString(Qt::ISODate)},
                                {QStringLiteral("block"), day.block},
                                {QStringLiteral("arm"), armLetter(day.arm)}});
    return {{QStringLiteral("athlete"), trials.log.athlete.value.name},
            {QStringLiteral("question"), trial.question},
            {QStringLiteral("factor"), toText(trial.factor)},
            {QStringLiteral("arms"), arms},
            {QStringLiteral("outcomes"), outcomes},
            {QStringLiteral("seed"), QString::number(trial.seed)},
            {QStringLiteral("blocks"), trial.blocks},
            {QStringLiteral("days"), days},
            {QStringLiteral("planned"), datesJson(proposed.laid.laid)},
            {QStringLiteral("outside_the_plan"), datesJson(proposed.laid.outside)},
            {QStringLiteral("no_training_day"), datesJson(proposed.laid.noTraining)},
            {QStringLiteral("accepted"), accepted}};
}

QString designText(const LifterTrials& trials, const ProposedTrial& proposed)
{
    const Trial& trial = proposed.trial;
    const auto names = armNames(trial, trials.library);
    QStringList lines{QStringLiteral("%1: %2").arg(trials.log.athlete.value.name, trial.question)};
    for (std::size_t arm = 0; arm < names.size(); ++arm)
        lines << QStringLiteral("  %1 %2").arg(armLetter(arm), names[arm]);
    for (const TrialDay& day : trial.days)
        lines << (day.block > 0
                      ? TrialCommandText::tr("  %1  %2, block %3")
                            .arg(day.date.toString(Qt::ISODate), armLetter(day.arm), QString::number(day.block))
                      : TrialCommandText::tr("  %1  %2, to get used to it")
                            .arg(day.date.toString(Qt::ISODate), armLetter(day.arm)));
    if (const auto outside = proposed.laid.outside.size() + proposed.laid.noTraining.size(); outside > 0)
        lines << TrialCommandText::tr("%n session(s) stand in no planned day yet.", nullptr, static_cast<int>(outside));
    return lines.join(u'\n');
}

Result<std::unique_ptr<Book>> openToWrite(const Console& console)
{
    STEELYARD_TRY(const QString path, console.required(QStringLiteral("book")));
    STEELYARD_TRY(auto book, Book::open(path, console.clock()));
    if (book->isReadOnly())
        return fail(ErrorCode::Storage,
                    TrialCommandText::tr("The book is open elsewhere (%1); close it there first. Nothing was changed.")
                        .arg(book->holder()));
    return book;
}

Result<LifterTrials> readTrialsOf(const Console& console)
{
    STEELYARD_TRY(const QString path, console.required(QStringLiteral("book")));
    STEELYARD_TRY(const QString name, console.required(QStringLiteral("athlete")));
    STEELYARD_TRY(const auto book, Book::openForReading(path, console.clock()));
    STEELYARD_TRY(const auto athlete, book->athletes().findByName(name));
    return readTrials(book->database(), athlete.id, console.clock().today());
}

Result<void> runDesign(const Console& console)
{
    STEELYARD_TRY(const LifterTrials trials, readTrialsOf(console));
    STEELYARD_TRY(Trial trial, readDesign(console, trials));
    TrialWish wish{.trial = std::move(trial), .from = console.clock().today(), .today = console.clock().today()};
    if (console.has(QStringLiteral("from")))
        wish.from = QDate::fromString(console.value(QStringLiteral("from")), Qt::ISODate);
    if (!wish.from.isValid()) return slip(TrialCommandText::tr("--from is a date like 2027-03-01."));
    STEELYARD_TRY(wish.weekdays, readWeekdays(console));
    STEELYARD_TRY(const ProposedTrial proposed, proposeTrial(trials.log, trials.library, wish));
    const bool accept = console.has(QStringLiteral("accept"));
    if (accept) {
        STEELYARD_TRY(const auto book, openToWrite(console));
        STEELYARD_CHECK(book->history().perform(designTrial(proposed.trial, blockChanges(proposed.laid))));
    }
    if (console.json())
        console.print(QJsonDocument(designJson(trials, proposed, accept)));
    else
        console.print(designText(trials, proposed));
    return {};
}

Result<void> runStatus(const Console& console)
{
    STEELYARD_TRY(const LifterTrials trials, readTrialsOf(console));
    QJsonArray list;
    QStringList texts;
    for (const Row<Trial>& row : trials.log.trials) {
        const TrialAnalysis analysis = trials.analyse(row.value);
        list.append(trialStatusJson(row.value, analysis));
        texts << trialStatusText(row.value, analysis);
    }
    if (console.json())
        console.print(QJsonDocument(QJsonObject{{QStringLiteral("athlete"), trials.log.athlete.value.name},
                                                {QStringLiteral("as_of"), trials.asOf.toString(Qt::ISODate)},
                                                {QStringLiteral("trials"), list}}));
    else
        console.print(texts.isEmpty() ? TrialCommandText::tr("%1 is in no trial.").arg(trials.log.athlete.value.name)
                                      : texts.join(QStringLiteral("\n\n")));
    return {};
}

// By its number from 1, oldest first; else the one that runs, else the newest.
Result<Row<Trial>> chosenTrial(const Console& console, const LifterTrials& trials)
{
    const auto& all = trials.log.trials;
    STEELYARD_TRY(const int number, console.integer(QStringLiteral("trial"), 0, 1, kMostTrialNumber));
    if (all.empty() || number > std::ssize(all))
        return fail(ErrorCode::NotFound,
                    TrialCommandText::tr("%1 has %n trial(s).", nullptr, static_cast<int>(all.size()))
                        .arg(trials.log.athlete.value.name));
    if (number > 0) return all[static_cast<std::size_t>(number - 1)];
    const auto runs = std::ranges::find_if(all, [](const Row<Trial>& row) { return !row.value.ending; });
    return runs == all.end() ? all.back() : *runs;
}

// A look before the end is written down, once a day.
Result<bool> recordLook(const Console& console, Row<Trial>& row, const TrialStanding& standing)
{
    if (row.value.ending) return false;
    const int done = std::accumulate(standing.arms.begin(), standing.arms.end(), 0,
                                     [](int sum, const ArmStanding& arm) { return sum + arm.done; });
    const TrialLook look{console.clock().today(), done};
    if (std::ranges::find(row.value.looks, look.date, &TrialLook::date) != row.value.looks.end()) return false;
    STEELYARD_TRY(const auto book, openToWrite(console));
    STEELYARD_CHECK(book->history().perform(lookAtTrial(row, look)));
    row.value.looks.push_back(look);
    return true;
}

Result<void> runAnalyse(const Console& console)
{
    STEELYARD_TRY(const LifterTrials trials, readTrialsOf(console));
    STEELYARD_TRY(Row<Trial> row, chosenTrial(console, trials));
    STEELYARD_TRY(const bool recorded, recordLook(console, row, trials.analyse(row.value).standing));
    const TrialAnalysis analysis = trials.analyse(row.value);
    if (!console.json()) {
        console.print(trialVerdictText(row.value, analysis));
        return {};
    }
    QJsonObject json = trialVerdictJson(row.value, analysis);
    json[QStringLiteral("athlete")] = trials.log.athlete.value.name;
    json[QStringLiteral("as_of")] = trials.asOf.toString(Qt::ISODate);
    json[QStringLiteral("look_recorded")] = recorded;
    console.print(QJsonDocument(json));
    return {};
}

Result<void> runTrial(const Console& console)
{
    const QString what = console.files().value(0);
    if (console.files().size() == 1) {
        if (what == QStringLiteral("design")) return runDesign(console);
        if (what == QStringLiteral("status")) return runStatus(console);
        if (what == QStringLiteral("analyse")) return runAnalyse(console);
    }
    return slip(TrialCommandText::tr("Say what to do: trial design, trial status or trial analyse."));
}

}  // namespace

ConsoleCommand trialCommand()
{
    const auto option = [](const char* name, const QString& says, const char* value) {
        return QCommandLineOption(QString::fromLatin1(name), says, QString::fromLatin1(value));
    };
    return {
        QStringLiteral("trial"),
        TrialCommandText::tr("design a comparison, see how it stands, or read its verdict"),
        {bookOption(), athleteOption(),
         option("arm",
                TrialCommandText::tr("An arm, two to four times: a line's key, or exercise/variant/grip/standard; "
                                     "then ;band=8-12 and ;lowering=3 where it differs in these."),
                "arm"),
         option("factor", TrialCommandText::tr("What the arms differ in."), "factor"),
         option("question", TrialCommandText::tr("What is asked; the arms' names if not said."), "text"),
         option("reason", TrialCommandText::tr("Why the arms differ in more than one thing."), "text"),
         option("outcome",
                TrialCommandText::tr("What is looked at and its weight, like tension:0.4; may be said again."),
                "key:weight"),
         option("blocks", TrialCommandText::tr("Blocks, each with every arm once; 6 if not said."), "n"),
         option("run-in", TrialCommandText::tr("Sessions of each arm to get used to it."), "n"),
         option("sets", TrialCommandText::tr("Sets a session; 3 if not said."), "n"),
         option("rir", TrialCommandText::tr("Planned repetitions in reserve."), "n"),
         option("days-between", TrialCommandText::tr("Fewest days from one session to the next; 2 if not said."), "n"),
         option("weekdays", TrialCommandText::tr("Weekdays of the sessions, 1 is Monday; the lifter's if not said."),
                "1,4"),
         option("from", TrialCommandText::tr("The first day that may be a session; today if not said."), "date"),
         option("seed", TrialCommandText::tr("Of the draw; the same seed draws the same order."), "n"),
         option("trial",
                TrialCommandText::tr("Which one to analyse, by its number from 1; the running one if not said."), "n"),
         QCommandLineOption(QStringLiteral("accept"),
                            TrialCommandText::tr("Keep the design in the book and its sessions in the plan."))},
        &runTrial};
}

}  // namespace steelyard
