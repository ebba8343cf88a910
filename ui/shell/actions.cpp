#include "ui/shell/actions.h"

#include <algorithm>

namespace steelyard {
namespace {

struct ActionText {
    Q_DECLARE_TR_FUNCTIONS(ActionText)
};

QString u(const char* latin1)
{
    return QString::fromLatin1(latin1);
}

std::vector<ActionRow> makeActionTable()
{
    using enum ActionMenu;
    const QString everywhere;
    const QString week = u("week");
    const QString lifter = u("lifter");
    const QString block = u("block");
    const QString floor = u("floor");
    return {
        {u("book.new"), Book, ActionText::tr("&New book…"), u("Ctrl+N"), everywhere},
        {u("book.open"), Book, ActionText::tr("&Open a book…"), u("Ctrl+O"), everywhere},
        {u("book.sample"), Book, ActionText::tr("Make a &sample club…"), {}, everywhere},
        {u("book.import"), Book, ActionText::tr("&Import a logbook…"), u("Ctrl+I"), everywhere,
         NeedsBook | NeedsWritable, true},
        {u("book.paste"), Book, ActionText::tr("Bring in sets as &text…"), u("Ctrl+Shift+V"), everywhere,
         NeedsBook | NeedsWritable},
        {u("book.copy"), Book, ActionText::tr("Save a co&py…"), u("Ctrl+Shift+C"), everywhere, NeedsBook},
        {u("book.backups"), Book, ActionText::tr("&Backups…"), u("Ctrl+Shift+K"), everywhere, NeedsBook},
        {u("book.lock"), Book, ActionText::tr("&Lock the screen"), u("Ctrl+L"), everywhere, NeedsNothing, true},
        {u("book.lockSettings"), Book, ActionText::tr("Lock and i&dle time…"), u("Ctrl+Shift+L"), everywhere},
        {u("book.forget"), Book, ActionText::tr("&Forget the remembered passphrase"), {}, everywhere, NeedsBook},
        {u("book.close"), Book, ActionText::tr("&Close the book"), u("Ctrl+W"), everywhere, NeedsBook, true},
        {u("book.quit"), Book, ActionText::tr("&Quit"), u("Ctrl+Q"), everywhere},

        {u("edit.undo"), Edit, ActionText::tr("&Undo"), u("Ctrl+Z"), everywhere, NeedsBook | NeedsWritable},
        {u("edit.redo"), Edit, ActionText::tr("&Redo"), u("Ctrl+Shift+Z;Ctrl+Y"), everywhere,
         NeedsBook | NeedsWritable},

        {u("roster.search"), Roster, ActionText::tr("&Search the roster"), u("Ctrl+F"), everywhere, NeedsBook},
        {u("roster.sort"), Roster, ActionText::tr("Sort by &name or attention"), u("Ctrl+Shift+S"), everywhere,
         NeedsBook},
        {u("roster.next"), Roster, ActionText::tr("&Next lifter"), u("N"), everywhere, NeedsBook, true},
        {u("roster.previous"), Roster, ActionText::tr("&Previous lifter"), u("P"), everywhere, NeedsBook},
        {u("roster.add"), Roster, ActionText::tr("&Add a lifter…"), u("Ctrl+Shift+N"), everywhere,
         NeedsBook | NeedsWritable, true},
        {u("roster.data"), Roster, ActionText::tr("One lifter's &data: consent, hand over, erase…"), u("Ctrl+Shift+D"),
         everywhere, NeedsBook | NeedsWritable},
        {u("roster.learn"),
         Roster,
         ActionText::tr("&Learn from the roster"),
         {},
         everywhere,
         NeedsBook | NeedsWritable,
         true},

        {u("roster.rules"), Roster, ActionText::tr("&What is flagged, and how loads go on…"), u("Ctrl+,"), everywhere,
         NeedsBook | NeedsWritable, true},

        {u("roster.sooner"),
         Roster,
         ActionText::tr("Say a stall s&ooner"),
         {},
         everywhere,
         NeedsBook | NeedsWritable,
         true},
        {u("roster.usual"), Roster, ActionText::tr("Say a stall as us&ual"), {}, everywhere, NeedsBook | NeedsWritable},
        {u("roster.surer"),
         Roster,
         ActionText::tr("Say a stall when su&rer"),
         {},
         everywhere,
         NeedsBook | NeedsWritable},

        {u("week.nextFlag"), Week, ActionText::tr("Next &flag"), u("J"), week, NeedsLifter},
        {u("week.previousFlag"), Week, ActionText::tr("Previous f&lag"), u("K"), week, NeedsLifter},
        {u("week.act"), Week, ActionText::tr("&Act on the flag"), u("A"), week, NeedsLifter | NeedsWritable, true},
        {u("week.watch"), Week, ActionText::tr("&Watch it until a day"), u("W"), week, NeedsLifter | NeedsWritable},
        {u("week.dismiss"), Week, ActionText::tr("&Dismiss it with a reason"), u("D"), week,
         NeedsLifter | NeedsWritable},
        {u("week.fine"), Week, ActionText::tr("Looked at, &fine: on to the next lifter"), u("F"), week,
         NeedsLifter | NeedsWritable},
        {u("week.open"), Week, ActionText::tr("&Open the line's chart"), u("O"), week, NeedsLifter, true},
        {u("week.why"), Week, ActionText::tr("Wh&y this verdict"), u("Y"), week, NeedsLifter},
        {u("week.sets"), Week, ActionText::tr("The &sets behind the verdict"), u("Shift+Y"), week, NeedsLifter},
        {u("week.lines"), Week, ActionText::tr("&Go to the lift lines"), u("G"), week, NeedsLifter},
        {u("week.answered"), Week, ActionText::tr("Show what was a&nswered"), u("E"), week, NeedsLifter},

        {u("week.print"), Week, ActionText::tr("&Print the review…"), u("Ctrl+P"), week, NeedsBook, true},
        {u("week.pdf"), Week, ActionText::tr("Sa&ve the review as PDF…"), u("Ctrl+Shift+P"), week, NeedsBook},

        {u("week.picture"), Week, ActionText::tr("The &roster as a picture, and back"), u("R"), week, NeedsBook, true},
        {u("week.picture.filter"), Week, ActionText::tr("Picture: f&ilter by words"), u("/"), week, NeedsBook},
        {u("week.picture.everybody"), Week, ActionText::tr("Picture: show every&body"), u("X"), week, NeedsBook},
        {u("week.picture.sort"), Week, ActionText::tr("Picture: sort by the ne&xt column"), u("S"), week, NeedsBook},
        {u("week.picture.turn"), Week, ActionText::tr("Picture: turn the order ro&und"), u("Shift+S"), week, NeedsBook},
        {u("week.picture.tags"), Week, ActionText::tr("Picture: change the &tags…"), u("T"), week,
         NeedsLifter | NeedsWritable},
        {u("week.picture.copy"), Week, ActionText::tr("Picture: &copy as a table"), u("C"), week, NeedsBook},
        {u("week.picture.kept"), Week, ActionText::tr("Picture: choose a &kept filter"), u("V"), week, NeedsBook},
        {u("week.picture.keep"), Week, ActionText::tr("Picture: keep this filter…"), u("Ctrl+S"), week, NeedsBook},
        {u("week.picture.rename"), Week, ActionText::tr("Picture: rename the filter…"), u("F2"), week, NeedsBook},
        {u("week.picture.delete"), Week, ActionText::tr("Picture: delete the filter"), u("Shift+Del"), week, NeedsBook},

        {u("lifter.nextLine"), Lifter, ActionText::tr("&Next lift line"), u("J"), lifter, NeedsLifter},
        {u("lifter.previousLine"), Lifter, ActionText::tr("&Previous lift line"), u("K"), lifter, NeedsLifter},
        {u("lifter.progress"), Lifter, ActionText::tr("P&rogress of the line"), u("1"), lifter, NeedsLifter, true},
        {u("lifter.compare"), Lifter, ActionText::tr("Co&mpare lines"), u("2"), lifter, NeedsLifter},
        {u("lifter.curve"), Lifter, ActionText::tr("Repetitions against l&oad"), u("3"), lifter, NeedsLifter},
        {u("lifter.ratings"), Lifter, ActionText::tr("Ratin&gs and repetitions"), u("4"), lifter, NeedsLifter},
        {u("lifter.training"), Lifter, ActionText::tr("Training by &week"), u("5"), lifter, NeedsLifter},
        {u("lifter.decisions"), Lifter, ActionText::tr("&Decisions and what followed"), u("6"), lifter, NeedsLifter},
        {u("lifter.logbook"), Lifter, ActionText::tr("Log&book: sessions and their sets"), u("7"), lifter, NeedsLifter},
        {u("lifter.body"), Lifter, ActionText::tr("Bod&y mass and measurements"), u("8"), lifter, NeedsLifter},
        {u("lifter.repetitions"), Lifter, ActionText::tr("Repetitions &one by one"), u("9"), lifter, NeedsLifter},
        {u("lifter.trials"), Lifter, ActionText::tr("&Trials: one way against another"), u("0"), lifter, NeedsLifter},
        {u("lifter.why"), Lifter, ActionText::tr("Wh&y: the sets behind the verdict"), u("Y"), lifter, NeedsLifter},
        {u("lifter.chart"), Lifter, ActionText::tr("The chart's numbers as a &table"), u("D"), lifter, NeedsLifter,
         true},
        {u("lifter.copy"), Lifter, ActionText::tr("&Copy the numbers"), u("C"), lifter, NeedsLifter},
        {u("lifter.copyPicture"), Lifter, ActionText::tr("Copy the chart as a p&icture"), u("Shift+C"), lifter,
         NeedsLifter},
        {u("lifter.savePicture"), Lifter, ActionText::tr("&Save the chart as a picture…"), u("Ctrl+E"), lifter,
         NeedsLifter},

        {u("lifter.find"), Lifter, ActionText::tr("&Find a session in the logbook"), u("/"), lifter, NeedsLifter, true},
        {u("lifter.add"), Lifter, ActionText::tr("&Add a set or a measurement"), u("A"), lifter,
         NeedsLifter | NeedsWritable},
        {u("lifter.edit"), Lifter, ActionText::tr("Chang&e the set, rating or measurement"), u("E"), lifter,
         NeedsLifter | NeedsWritable},
        {u("lifter.remove"), Lifter, ActionText::tr("Remo&ve the set or measurement"), u("Del"), lifter,
         NeedsLifter | NeedsWritable},
        {u("lifter.before"), Lifter, ActionText::tr("W&hat it said before"), u("B"), lifter, NeedsLifter},
        {u("lifter.measured"), Lifter, ActionText::tr("Repetitions from a device's &file…"), u("I"), lifter,
         NeedsLifter | NeedsWritable},
        {u("lifter.bulk"), Lifter, ActionText::tr("Change &many sets…"), u("M"), lifter, NeedsLifter | NeedsWritable},

        {u("lifter.trial.new"), Lifter, ActionText::tr("Set &up a trial of this lift…"), u("T"), lifter,
         NeedsLifter | NeedsWritable, true},
        {u("lifter.trial.look"), Lifter, ActionText::tr("Trial: &look at the results so far"), u("L"), lifter,
         NeedsLifter | NeedsWritable},
        {u("lifter.trial.key"), Lifter, ActionText::tr("Trial: &key the chosen session"), u("G"), lifter, NeedsLifter},
        {u("lifter.trial.other"), Lifter, ActionText::tr("Trial: another arm was done…"), u("O"), lifter,
         NeedsLifter | NeedsWritable},
        {u("lifter.trial.missed"), Lifter, ActionText::tr("Trial: the session was missed, or not"), u("X"), lifter,
         NeedsLifter | NeedsWritable},
        {u("lifter.trial.note"), Lifter, ActionText::tr("Trial: a remark on the session…"), u("R"), lifter,
         NeedsLifter | NeedsWritable},
        {u("lifter.trial.move"), Lifter, ActionText::tr("Trial: the session on another day…"), u("Shift+M"), lifter,
         NeedsLifter | NeedsWritable},
        {u("lifter.trial.finish"), Lifter, ActionText::tr("Trial: conclude it with a choice…"), u("F"), lifter,
         NeedsLifter | NeedsWritable},
        {u("lifter.trial.stop"), Lifter, ActionText::tr("Trial: stop it with a reason…"), u("S"), lifter,
         NeedsLifter | NeedsWritable},
        {u("lifter.trial.hurt"), Lifter, ActionText::tr("Trial: end it for discomfort…"), u("H"), lifter,
         NeedsLifter | NeedsWritable},
        {u("lifter.trial.wins"), Lifter, ActionText::tr("Trial: what was preferred o&ver the roster"), u("V"), lifter,
         NeedsLifter},
        {u("lifter.trial.print"), Lifter, ActionText::tr("Trial: print the result for the lifter…"), u("Ctrl+P"),
         lifter, NeedsLifter},
        {u("lifter.trial.pdf"), Lifter, ActionText::tr("Trial: save the result as PDF…"), u("Ctrl+Shift+P"), lifter,
         NeedsLifter},

        {u("block.add"), Block, ActionText::tr("&Put in a lift…"), u("A"), block, NeedsLifter | NeedsWritable},
        {u("block.edit"), Block, ActionText::tr("Chang&e the dose in place"), u("E"), block,
         NeedsLifter | NeedsWritable},
        {u("block.sets.more"), Block, ActionText::tr("A set &more"), u("+;="), block, NeedsLifter | NeedsWritable},
        {u("block.sets.fewer"), Block, ActionText::tr("A set &less"), u("-"), block, NeedsLifter | NeedsWritable},
        {u("block.band"), Block, ActionText::tr("Rep &band…"), u("B"), block, NeedsLifter | NeedsWritable},
        {u("block.reserve"), Block, ActionText::tr("&Reserve…"), u("R"), block, NeedsLifter | NeedsWritable},
        {u("block.load"), Block, ActionText::tr("L&oad…"), u("L"), block, NeedsLifter | NeedsWritable},
        {u("block.lock"), Block, ActionText::tr("&Keep the load, or leave it to the record"), u("Shift+L"), block,
         NeedsLifter | NeedsWritable},
        {u("block.progression"), Block, ActionText::tr("How it goes on…"), u("U"), block, NeedsLifter | NeedsWritable},
        {u("block.pin"), Block, ActionText::tr("F&ix for the next proposal, or not"), u("I"), block,
         NeedsLifter | NeedsWritable},
        {u("block.rest"), Block, ActionText::tr("Res&t after a set…"), u("T"), block, NeedsLifter | NeedsWritable},
        {u("block.note"), Block, ActionText::tr("&Note…"), u("O"), block, NeedsLifter | NeedsWritable},
        {u("block.superset"), Block, ActionText::tr("In turns as a &superset, and apart"), u("S"), block,
         NeedsLifter | NeedsWritable},
        {u("block.replace"), Block, ActionText::tr("Another e&xercise, variant or grip…"), u("C"), block,
         NeedsLifter | NeedsWritable},
        {u("block.replaceAll"), Block, ActionText::tr("Another one in the &whole block…"), u("Shift+C"), block,
         NeedsLifter | NeedsWritable},
        {u("block.remove"), Block, ActionText::tr("Ta&ke out"), u("Del"), block, NeedsLifter | NeedsWritable},

        {u("block.cut"), Block, ActionText::tr("C&ut"), u("Ctrl+X"), block, NeedsLifter | NeedsWritable, true},
        {u("block.copy"), Block, ActionText::tr("&Copy"), u("Ctrl+C"), block, NeedsLifter},
        {u("block.paste"), Block, ActionText::tr("Paste here"), u("Ctrl+V"), block, NeedsLifter | NeedsWritable},
        {u("block.up"), Block, ActionText::tr("Move up in the day"), u("Alt+Up"), block, NeedsLifter | NeedsWritable},
        {u("block.down"), Block, ActionText::tr("Move down in the day"), u("Alt+Down"), block,
         NeedsLifter | NeedsWritable},
        {u("block.earlier"), Block, ActionText::tr("Move to the day before"), u("Alt+Left"), block,
         NeedsLifter | NeedsWritable},
        {u("block.later"), Block, ActionText::tr("Move to the day after"), u("Alt+Right"), block,
         NeedsLifter | NeedsWritable},

        {u("block.scope"), Block, ActionText::tr("Change this &week, or the later ones too"), u("W"), block,
         NeedsLifter, true},
        {u("block.nextWeek"), Block, ActionText::tr("The week after"), u("]"), block, NeedsLifter},
        {u("block.previousWeek"), Block, ActionText::tr("The week before"), u("["), block, NeedsLifter},
        {u("block.day"), Block, ActionText::tr("The &day as a list, and back"), u("D"), block, NeedsLifter},
        {u("block.nextLimit"), Block, ActionText::tr("Next broken l&imit"), u("J"), block, NeedsLifter},
        {u("block.previousLimit"), Block, ActionText::tr("Previous broken limit"), u("K"), block, NeedsLifter},

        {u("block.week.easier"), Block, ActionText::tr("An easier week, and a normal one again"), u("X"), block,
         NeedsLifter | NeedsWritable, true},
        {u("block.week.test"), Block, ActionText::tr("A test week, and a normal one again"), u("Shift+X"), block,
         NeedsLifter | NeedsWritable},
        {u("block.ramp"), Block, ActionText::tr("Reserve over the weeks…"), u("Shift+R"), block,
         NeedsLifter | NeedsWritable},
        {u("block.week.duplicate"), Block, ActionText::tr("Duplicate the week"), u("Ctrl+D"), block,
         NeedsLifter | NeedsWritable},
        {u("block.week.insert"), Block, ActionText::tr("An empty week after this"), u("Ins"), block,
         NeedsLifter | NeedsWritable},
        {u("block.week.remove"), Block, ActionText::tr("Take out the week"), u("Shift+Del"), block,
         NeedsLifter | NeedsWritable},
        {u("block.weekdays"), Block, ActionText::tr("Training days…"), u("Shift+D"), block,
         NeedsLifter | NeedsWritable},
        {u("block.daysOff"), Block, ActionText::tr("Days off…"), u("H"), block, NeedsLifter | NeedsWritable},
        {u("block.shift"), Block, ActionText::tr("Move the sessions on by days…"), u("M"), block,
         NeedsLifter | NeedsWritable},
        {u("block.start"), Block, ActionText::tr("First day of the block…"), u("Shift+S"), block,
         NeedsLifter | NeedsWritable},
        {u("block.aims"), Block, ActionText::tr("Sets wanted a week, by muscle…"), u("G"), block,
         NeedsLifter | NeedsWritable},
        {u("block.minutes"), Block, ActionText::tr("Minutes a day…"), u("Shift+M"), block, NeedsLifter | NeedsWritable},

        {u("block.new"), Block, ActionText::tr("Start a block…"), u("Ctrl+B"), block, NeedsLifter | NeedsWritable,
         true},
        {u("block.propose"), Block, ActionText::tr("&Propose a block…"), u("Ctrl+Shift+B"), block,
         NeedsLifter | NeedsWritable},
        {u("block.forecast"), Block, ActionText::tr("Loads from the record…"), u("F"), block,
         NeedsLifter | NeedsWritable},
        {u("block.many"), Block, ActionText::tr("A template for many lifters…"), u("Ctrl+M"), block,
         NeedsLifter | NeedsWritable},
        {u("block.choose"), Block, ActionText::tr("Choose among the blocks"), u("/"), block, NeedsLifter},
        {u("block.rename"), Block, ActionText::tr("Rename the block…"), u("F2"), block, NeedsLifter | NeedsWritable},
        {u("block.template"), Block, ActionText::tr("Keep its shape as a template…"), u("Ctrl+T"), block,
         NeedsLifter | NeedsWritable},
        {u("block.delete"), Block, ActionText::tr("Remove the block"), u("Ctrl+Del"), block,
         NeedsLifter | NeedsWritable},

        {u("floor.print"), Floor, ActionText::tr("&Print the sheets…"), u("Ctrl+P"), floor, NeedsBook},
        {u("floor.pdf"), Floor, ActionText::tr("Save the sheets as P&DF…"), u("Ctrl+Shift+P"), floor, NeedsBook},
        {u("floor.layout"), Floor, ActionText::tr("Another &layout of the paper"), u("L"), floor, NeedsBook},
        {u("floor.previousDay"), Floor, ActionText::tr("The day &before"), u("["), floor, NeedsBook, true},
        {u("floor.nextDay"), Floor, ActionText::tr("The day &after"), u("]"), floor, NeedsBook},
        {u("floor.today"), Floor, ActionText::tr("&Today"), u("T"), floor, NeedsBook},
        {u("floor.rack"), Floor, ActionText::tr("&Count at the rack"), u("R"), floor, NeedsBook | NeedsWritable, true},

        {u("floor.key"), Floor, ActionText::tr("&Key the session"), u("K"), floor, NeedsBook, true},
        {u("floor.code"), Floor, ActionText::tr("Key by the sheet's &number…"), u("Ctrl+J"), floor, NeedsBook},
        {u("floor.key.back"), Floor, ActionText::tr("Keying: one step back, and to the &sheets"), u("Esc"), floor,
         NeedsBook},
        {u("floor.key.nextLifter"), Floor, ActionText::tr("Keying: ne&xt lifter"), u("Ctrl+PgDown"), floor, NeedsBook},
        {u("floor.key.previousLifter"), Floor, ActionText::tr("Keying: p&revious lifter"), u("Ctrl+PgUp"), floor,
         NeedsBook},
        {u("floor.key.nextExercise"), Floor, ActionText::tr("Keying: on to the next e&xercise"), u("PgDown"), floor,
         NeedsBook},
        {u("floor.key.previousExercise"), Floor, ActionText::tr("Keying: back to the exercise be&fore"), u("PgUp"),
         floor, NeedsBook},
        {u("floor.key.more"), Floor, ActionText::tr("Keying: a set &more"), u("Ctrl+M"), floor,
         NeedsBook | NeedsWritable},
        {u("floor.key.lift"), Floor, ActionText::tr("Keying: another variant, &grip or standard…"), u("Ctrl+G"), floor,
         NeedsBook | NeedsWritable},
        {u("floor.key.add"), Floor, ActionText::tr("Keying: an &exercise more…"), u("Ctrl+E"), floor,
         NeedsBook | NeedsWritable},
        {u("floor.key.remove"), Floor, ActionText::tr("Keying: remove the set from the &book"), u("Ctrl+D"), floor,
         NeedsBook | NeedsWritable},

        {u("view.week"), View, ActionText::tr("&Week"), u("Ctrl+1"), everywhere, NeedsBook},
        {u("view.lifter"), View, ActionText::tr("&Lifter"), u("Ctrl+2"), everywhere, NeedsBook},
        {u("view.block"), View, ActionText::tr("&Block"), u("Ctrl+3"), everywhere, NeedsBook},
        {u("view.floor"), View, ActionText::tr("&Floor"), u("Ctrl+4"), everywhere, NeedsBook},
        {u("view.initials"), View, ActionText::tr("Names as &initials, and back"), u("Ctrl+Shift+I"), everywhere,
         NeedsBook, true},
        {u("view.refresh"), View, ActionText::tr("Read the records &again"), u("F5"), everywhere, NeedsBook, true},
        {u("view.cancel"), View, ActionText::tr("&Stop what is running"), u("Ctrl+."), everywhere},

        {u("help.find"), Help, ActionText::tr("&Find an action…"), u("Ctrl+K"), everywhere},
        {u("help.keys"), Help, ActionText::tr("List of &keys"), u("Ctrl+/"), everywhere},
        {u("help.guide"), Help, ActionText::tr("&Guide"), u("F1"), everywhere},
        {u("help.diagnosis"), Help, ActionText::tr("Save a &diagnosis file…"), {}, everywhere, NeedsNothing, true},
        {u("help.about"), Help, ActionText::tr("&About Steelyard"), {}, everywhere, NeedsNothing, true},
    };
}

}  // namespace

const std::vector<ActionRow>& actionTable()
{
    static const std::vector<ActionRow> table = makeActionTable();
    return table;
}

const ActionRow* findAction(const QString& id)
{
    const auto at = std::ranges::find(actionTable(), id, &ActionRow::id);
    return at == actionTable().end() ? nullptr : &*at;
}

QString menuTitle(ActionMenu menu)
{
    switch (menu) {
    case ActionMenu::Book:
        return ActionText::tr("&Book");
    case ActionMenu::Edit:
        return ActionText::tr("&Edit");
    case ActionMenu::Roster:
        return ActionText::tr("&Roster");
    case ActionMenu::Week:
        return ActionText::tr("&Week");
    case ActionMenu::Lifter:
        return ActionText::tr("&Lifter");
    case ActionMenu::Block:
        return ActionText::tr("Bloc&k");
    case ActionMenu::Floor:
        return ActionText::tr("&Floor");
    case ActionMenu::View:
        return ActionText::tr("&View");
    case ActionMenu::Help:
        return ActionText::tr("&Help");
    }
    return {};
}

QString plainText(const QString& textWithMnemonic)
{
    QString text = textWithMnemonic;
    return text.remove(QLatin1Char('&'));
}

}  // namespace steelyard
