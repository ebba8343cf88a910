#include "ui/pages/lifter/logbook_bulk_words.h"

#include "ui/format/format.h"
#include "ui/format/plan_words.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct BulkText {
    Q_DECLARE_TR_FUNCTIONS(BulkText)
};

constexpr qsizetype kMostProblems = 3;

QString problemWords(const BulkProblem& problem)
{
    const QString day = format::date(problem.date);
    switch (problem.kind) {
    case BulkTrouble::NothingThere:
        return BulkText::tr("There is nothing in that stretch of days.");
    case BulkTrouble::SameLine:
        return BulkText::tr("They stand on this line already: choose another grip, variant or standard.");
    case BulkTrouble::ForeignStandard:
        return BulkText::tr("This standard is of another variant or another lifter.");
    case BulkTrouble::SetsClash:
        return BulkText::tr(
                   "%1: a set of the same number stands there already. Leave that day out, or remove one of "
                   "the two first.")
            .arg(day);
    case BulkTrouble::RatingsClash:
        return BulkText::tr("%1: both are rated. Empty one of the ratings first.").arg(day);
    case BulkTrouble::IntoTheFuture:
        return BulkText::tr("%1 is yet to come.").arg(day);
    case BulkTrouble::NoDays:
        return BulkText::tr("By how many days? Less than 0 is earlier.");
    case BulkTrouble::NameNeeded:
        return BulkText::tr("A name is needed.");
    case BulkTrouble::SameName:
        return BulkText::tr("That is its name. Type another one.");
    case BulkTrouble::NameTaken:
        return BulkText::tr("Another one has this name. If both are the same, move the sets to that one.");
    }
    return {};
}

QStringList allProblems(const std::vector<BulkProblem>& problems)
{
    QStringList words;
    for (const BulkProblem& problem : problems) {
        if (words.size() == kMostProblems) {
            words += BulkText::tr("And %n more.", nullptr, static_cast<int>(problems.size() - kMostProblems));
            break;
        }
        words += problemWords(problem);
    }
    return words;
}

QString countWords(int sessions, int sets)
{
    if (sets == 0) return BulkText::tr("nothing");
    return BulkText::tr("%n session(s)", nullptr, sessions) + QStringLiteral(",\n")
           + BulkText::tr("%n set(s)", nullptr, sets);
}

QString moveSentence(const MovePlan& plan)
{
    QStringList words{BulkText::tr("To the other line: %n set(s)", nullptr, plan.sets) + u' '
                      + BulkText::tr("of %n session(s).", nullptr, static_cast<int>(plan.days.size()))};
    if (plan.ratings > 0) words += BulkText::tr("With %n rating(s).", nullptr, plan.ratings);
    if (plan.decisions > 0)
        words += BulkText::tr("And with %n decision(s), because nothing stays behind.", nullptr, plan.decisions);
    if (plan.newStandard) words += BulkText::tr("“%1” becomes a standard of this lifter.").arg(plan.newStandard->name);
    if (plan.otherLoading) words += BulkText::tr("Mind the loads: the number means something else there.");
    return words.join(u' ');
}

}  // namespace

QString wholeLineName(const LiftLine& line, const Library& library)
{
    const QString name = format::liftName(line, library);
    const auto* standard = library.find(line.standard);
    return standard && standard->value.name != asUsualName() ? name + QStringLiteral(" · ") + standard->value.name
                                                             : name;
}

BulkWords bulkWords(const MovePlan& plan, const Library& library)
{
    BulkWords words{moveSentence(plan), {BulkText::tr("line"), BulkText::tr("now"), BulkText::tr("then")}};
    for (const LineCount& count : plan.lines) {
        QString name = wholeLineName(count.line, library);
        if (plan.newStandard && count.line == plan.target && &count != &plan.lines.front())
            name = format::liftName(count.line, library) + QStringLiteral(" · ") + plan.newStandard->name;
        words.rows.push_back(
            {name, countWords(count.sessions, count.sets), countWords(count.sessionsAfter, count.setsAfter)});
    }
    words.problems = allProblems(plan.problems);
    if (std::ranges::count(plan.problems, BulkTrouble::SameLine, &BulkProblem::kind) > 0) words.rows.clear();
    return words;
}

BulkWords bulkWords(const ShiftPlan& plan)
{
    BulkWords words{BulkText::tr("To another day: %n session(s).", nullptr, static_cast<int>(plan.moves.size())),
                    {BulkText::tr("sets"), BulkText::tr("now"), BulkText::tr("then")}};
    for (const DayMove& move : plan.moves) {
        QString after = format::shortDay(move.after) + u' ' + QString::number(move.after.year());
        if (move.joins) after += BulkText::tr(", joined to the session there");
        words.rows.push_back({BulkText::tr("%n set(s)", nullptr, move.sets),
                              format::shortDay(move.before) + u' ' + QString::number(move.before.year()), after});
    }
    words.problems = allProblems(plan.problems);
    return words;
}

BulkWords bulkWords(const RenamePlan& plan)
{
    BulkWords words{BulkText::tr("To be called so: %n lift line(s)", nullptr, plan.lines) + u' '
                        + BulkText::tr("of %n lifter(s); histories stay as they are.", nullptr, plan.lifters),
                    {BulkText::tr("where"), BulkText::tr("now"), BulkText::tr("then")}};
    words.rows.push_back({BulkText::tr("in the library"), plan.before, plan.wish.name});
    if (plan.plannedSlots > 0)
        words.rows.push_back(
            {BulkText::tr("in %n planned slot(s)", nullptr, plan.plannedSlots), plan.before, plan.wish.name});
    words.problems = allProblems(plan.problems);
    return words;
}

}  // namespace steelyard
