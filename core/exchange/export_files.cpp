#include "core/exchange/export_files.h"

#include "core/exchange/logbook_columns.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct ExportFilesText {
    Q_DECLARE_TR_FUNCTIONS(ExportFilesText)
};

// One line a column, in the order of kLogbookColumns; the joints share one.
QString columnMeaning(std::string_view column)
{
    if (column == "date") return ExportFilesText::tr("day of the session, ISO 8601 (2027-03-01)");
    if (column == "athlete") return ExportFilesText::tr("name");
    if (column == "exercise")
        return ExportFilesText::tr("name; with variant, grip and standard it names the lift line");
    if (column == "variant") return ExportFilesText::tr("way of doing the exercise");
    if (column == "grip") return ExportFilesText::tr("hands");
    if (column == "standard") return ExportFilesText::tr("what counted as a repetition");
    if (column == "load") return ExportFilesText::tr("load as it was typed, in the unit that follows");
    if (column == "unit") return ExportFilesText::tr("kg or lb");
    if (column == "set") return ExportFilesText::tr("number of the set, from 1");
    if (column == "reps") return ExportFilesText::tr("repetitions completed, whatever their quality");
    if (column == "off") return ExportFilesText::tr("how many of them were off standard; blank: nobody watched");
    if (column == "failed") return ExportFilesText::tr("1 if one further repetition failed part-way");
    if (column == "rir") return ExportFilesText::tr("repetitions in reserve, as reported");
    if (column == "rpe") return ExportFilesText::tr("effort 1 to 10, as reported");
    if (column == "marks") return ExportFilesText::tr("why repetitions were off standard, like short_bottom:2;swing:1");
    if (column == "lowering_s") return ExportFilesText::tr("seconds of lowering, typical of the set");
    if (column == "lean_deg")
        return ExportFilesText::tr("backward lean of the trunk as measured, degrees from upright, typical of the set");
    if (column == "kind") return ExportFilesText::tr("work, warmup, deload or test");
    if (column == "tension" || column == "burn" || column == "pump")
        return ExportFilesText::tr("0 to 10, on the exercise's first row of the session; blank: not rated");
    if (column == "gave_out") return ExportFilesText::tr("muscle that gave out first; “target” for the target");
    if (column.starts_with("discomfort_")) return ExportFilesText::tr("0 to 10 in this joint; blank: not rated");
    if (column.starts_with("next_")) return ExportFilesText::tr("0 to 10 in the target on the next day");
    if (column == "note") return ExportFilesText::tr("free text");
    return {};
}

// What the names in book.json mean, for somebody who writes a reader.
QString jsonNames()
{
    return ExportFilesText::tr(
        "\nNames in book.json (format 1; an entry that is not there is not known):\n"
        "  library            muscles, grips, exercises, variants, standards: each with “uuid” (muscles: “key”) by "
        "which\n"
        "                     the others name it\n"
        "  gyms               bars, plates in pairs, dumbbells and stacks as first, step, last\n"
        "  athletes           one entry each: profile, then the lists that follow\n"
        "    aims             sets a week by muscle, low to high\n"
        "    health_consents  given_on, wording (number of the text agreed to), scope, withdrawn_on; without "
        "given_on:\n"
        "                     kept before anybody was asked\n"
        "    body_mass        date, mass\n"
        "    measurements     date, place, value, unit (cm or in)\n"
        "    standards        what counts as a repetition, as agreed with this athlete\n"
        "    lines            what has one history: variant, grip, standard\n"
        "    blocks           plans: weeks, days, and slots with sets, reps from band low to high, planned RIR, load\n"
        "    trials           question, arms, outcomes with weights, days as drawn and done, ending\n"
        "    decisions        rule, kind (act, watch, dismiss), made_on, until, action, reason, what was said\n"
        "    empty_sessions   days without sets\n"
        "    lone_ratings     ratings of exercises without sets\n"
        "    replaced_sets    what a set said before; “now” is its number today, absent when it is gone\n"
        "    repetitions      one by one: travel, lowest and highest point in mm, seconds up and down, marks\n");
}

}  // namespace

QByteArray exportReadme(const QString& athlete)
{
    QString text = athlete.isEmpty()
                       ? ExportFilesText::tr("A whole book of lifters, written by Steelyard.\n")
                       : ExportFilesText::tr("The whole record of %1, written by Steelyard.\n").arg(athlete);
    text += ExportFilesText::tr(
        "\nlogbook.csv  every set with its ratings. UTF-8, comma-separated, decimal point, one header line.\n"
        "book.json    everything else: people, body mass, lift lines, plans, decisions, replaced sets, gyms and the\n"
        "             library. Loads are texts with their unit (“42.5 kg”), lengths are millimetres, dates ISO 8601.\n"
        "             What is not known is left out.\n"
        "README.txt   this page.\n");
    if (!athlete.isEmpty()) text += ExportFilesText::tr("record.html  the same to read: open it in any browser.\n");
    text += ExportFilesText::tr(
        "\nTogether they hold everything; read into a new book they give the same content.\n"
        "\nA text that begins with = + - @ or an apostrophe has one apostrophe more in front, so that no spreadsheet "
        "takes\n"
        "it for a formula.\n"
        "\nColumns of logbook.csv:\n");
    for (const LogbookColumn& column : kLogbookColumns)
        text += QStringLiteral("  %1  %2\n")
                    .arg(QString::fromLatin1(column.name.data(), static_cast<qsizetype>(column.name.size()))
                             .leftJustified(22),
                         columnMeaning(column.name));
    return (text + jsonNames()).toUtf8();
}

}  // namespace steelyard
