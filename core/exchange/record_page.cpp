#include "core/exchange/record_page.h"

#include "core/exchange/record_html.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/athlete_repository.h"
#include "core/storage/logbook_repository.h"
#include "core/storage/set_json.h"
#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonDocument>

#include <algorithm>

namespace steelyard {
namespace {

struct RecordPageText {
    Q_DECLARE_TR_FUNCTIONS(RecordPageText)
};

using PageRows = std::vector<QStringList>;

QString isoDay(const std::optional<QDate>& day)
{
    return day ? day->toString(Qt::ISODate) : QString();
}

template <class Number>
QString integerText(const std::optional<Number>& number)
{
    return number ? QString::number(*number) : QString();
}

QString typedDecimal(const std::optional<Decimal>& number)
{
    return number ? number->toString() : QString();
}

QString plainWord(QString key)
{
    return key.replace(u'_', u' ');
}

QString lengthText(const std::optional<Length>& length)
{
    return length ? RecordPageText::tr("%1 cm").arg(static_cast<double>(toMillimetres(*length)) / 10) : QString();
}

QString liftTitle(const LineRecord& line)
{
    return QStringList{line.exercise.value.name, line.variant.value.name, line.grip.value.name,
                       line.standard.value.name}
        .join(QStringLiteral(", "));
}

template <class Lift>
QString nameOfPlanned(const Lift& lift, const Library& library)
{
    const auto* variant = library.find(lift.variant);
    const auto* grip = library.find(lift.grip);
    const auto* standard = library.find(lift.standard);
    QStringList parts;
    if (variant) parts += library.fullName(variant->value);
    if (grip) parts += grip->value.name;
    if (standard) parts += standard->value.name;
    return parts.join(QStringLiteral(", "));
}

QStringList setCells(const SetEntry& set)
{
    QString effort;
    if (set.effort)
        effort = (set.effort->scale == Effort::Scale::Rir ? RecordPageText::tr("%1 in reserve")
                                                          : RecordPageText::tr("effort %1"))
                     .arg(set.effort->value.toString());
    return {QString::number(set.number),
            set.load.toString(),
            QString::number(set.reps),
            set.off ? QString::number(*set.off) : RecordPageText::tr("not watched"),
            set.failed ? RecordPageText::tr("yes") : QString(),
            effort,
            plainWord(QString::fromStdString(set.marks.toString())),
            typedDecimal(set.loweringSeconds),
            typedDecimal(set.leanDegrees),
            set.kind == SetKind::Work ? QString() : plainWord(toText(set.kind)),
            set.note};
}

QStringList setHeader()
{
    return {RecordPageText::tr("Set"),
            RecordPageText::tr("Load"),
            RecordPageText::tr("Repetitions"),
            RecordPageText::tr("Off standard"),
            RecordPageText::tr("One failed part-way"),
            RecordPageText::tr("Effort"),
            RecordPageText::tr("Why off standard"),
            RecordPageText::tr("Lowering, s"),
            RecordPageText::tr("Lean, degrees"),
            RecordPageText::tr("Kind"),
            RecordPageText::tr("Note")};
}

QString ratingText(const ExerciseRating& rating)
{
    QStringList parts;
    const auto say = [&](const QString& what, const std::optional<int>& score) {
        if (score) parts += RecordPageText::tr("%1 %2 of 10").arg(what, QString::number(*score));
    };
    say(RecordPageText::tr("tension"), rating.tension);
    say(RecordPageText::tr("burn"), rating.burn);
    say(RecordPageText::tr("pump"), rating.pump);
    if (!rating.gaveOut.isEmpty()) parts += RecordPageText::tr("gave out first: %1").arg(rating.gaveOut);
    for (const auto& [joint, key] : EnumText<Joint>::table)
        say(RecordPageText::tr("discomfort, %1:").arg(plainWord(toText(joint))),
            rating.discomfort[static_cast<std::size_t>(joint)]);
    say(RecordPageText::tr("next day's soreness"), rating.nextSoreness);
    say(RecordPageText::tr("next day's weakness"), rating.nextWeakness);
    return parts.join(QStringLiteral("; "));
}

class RecordPageWriter {
public:
    RecordPageWriter(Database& db, const Library& library, const AthleteLog& log)
        : m_db(db),
          m_library(library),
          m_log(log),
          m_page(RecordPageText::tr("What is kept of %1").arg(log.athlete.value.name))
    {}

    Result<QByteArray> write()
    {
        writeWhy();
        writeProfile();
        writeConsents();
        STEELYARD_CHECK(writeBody());
        writeStandards();
        writeSessions();
        STEELYARD_CHECK(writeFormerValues());
        writeBlocks();
        writeTrials();
        writeDecisions();
        return m_page.finish();
    }

private:
    void writeWhy()
    {
        m_page.paragraph(RecordPageText::tr(
            "This page shows everything that your coach's book holds about you. The same is in logbook.csv and "
            "book.json beside it, for another program; README.txt says what their columns and names mean."));
        m_page.heading(RecordPageText::tr("Why, who sees it, how long"));
        m_page.table({RecordPageText::tr("Question"), RecordPageText::tr("Answer")},
                     {{RecordPageText::tr("Why it is kept"),
                       RecordPageText::tr("To plan your training, to see whether it works, and to notice in time when "
                                          "something hurts.")},
                      {RecordPageText::tr("Who sees it"),
                       RecordPageText::tr("Your coach. The program sends nothing anywhere; ask your coach whether "
                                          "anybody else is shown it.")},
                      {RecordPageText::tr("Where it comes from"),
                       RecordPageText::tr("From you, from what your coach saw, and from files that your coach brought "
                                          "in.")},
                      {RecordPageText::tr("How long"),
                       RecordPageText::tr("Until you ask to have it erased or your coach no longer needs it. Backups "
                                          "are replaced over time; ask your coach about them.")},
                      {RecordPageText::tr("What you can ask for"),
                       RecordPageText::tr("To see it, to have it corrected, to have it erased, to take it with you, "
                                          "to take a consent back, and to complain to the authority for data "
                                          "protection where you live.")}});
    }

    void writeProfile()
    {
        const Athlete& a = m_log.athlete.value;
        PageRows rows;
        const auto say = [&rows](const QString& what, const QString& value) {
            if (!value.isEmpty()) rows.push_back({what, value});
        };
        say(RecordPageText::tr("Name"), a.name);
        say(RecordPageText::tr("Date of birth"), isoDay(a.born));
        say(RecordPageText::tr("Sex"), a.sex ? toText(*a.sex) : QString());
        say(RecordPageText::tr("Height"), lengthText(a.height));
        say(RecordPageText::tr("Shoulder breadth"), lengthText(a.shoulderBreadth));
        say(RecordPageText::tr("Upper arm"), lengthText(a.upperArm));
        say(RecordPageText::tr("Forearm"), lengthText(a.forearm));
        say(RecordPageText::tr("Training experience"), a.experience ? toText(*a.experience) : QString());
        say(RecordPageText::tr("Unit"), toText(a.unit));
        say(RecordPageText::tr("Group"), a.group);
        say(RecordPageText::tr("Days a week"), integerText(a.daysPerWeek));
        say(RecordPageText::tr("Minutes a day"), integerText(a.minutesPerDay));
        say(RecordPageText::tr("Joint history"), a.jointHistory);
        say(RecordPageText::tr("Note"), a.note);
        say(RecordPageText::tr("Tags"), tagText(a.tags));
        for (const MuscleAim& aim : a.aims)
            say(RecordPageText::tr("Sets a week, %1").arg(m_log.muscleName(aim.muscle)),
                QStringLiteral("%1–%2").arg(aim.weeklySetsLow).arg(aim.weeklySetsHigh));
        say(RecordPageText::tr("Archived"), a.archived ? RecordPageText::tr("yes") : QString());
        m_page.heading(RecordPageText::tr("Profile"));
        m_page.table({RecordPageText::tr("What"), RecordPageText::tr("Value")}, rows);
    }

    void writeConsents()
    {
        PageRows rows;
        for (const HealthConsent& consent : m_log.athlete.value.consents)
            rows.push_back({consent.givenOn ? isoDay(consent.givenOn)
                                            : RecordPageText::tr("kept before anybody was asked; to be confirmed"),
                            plainWord(consent.scope.toString().replace(u' ', QStringLiteral(", "))),
                            consentWording(consent.wording), isoDay(consent.withdrawnOn), consent.note});
        m_page.heading(RecordPageText::tr("Consent to entries about health"));
        if (rows.empty()) m_page.paragraph(RecordPageText::tr("None was given; no such entries are kept."));
        m_page.table({RecordPageText::tr("Given"), RecordPageText::tr("For"), RecordPageText::tr("In these words"),
                      RecordPageText::tr("Withdrawn"), RecordPageText::tr("Note")},
                     rows);
    }

    Result<void> writeBody()
    {
        PageRows masses;
        for (const BodyMassEntry& entry : m_log.bodyMass) masses.push_back({isoDay(entry.date), entry.mass.toString()});
        STEELYARD_TRY(const auto measured, AthleteRepository(m_db).measurements(m_log.athlete.id));
        PageRows tape;
        for (const Measurement& one : measured)
            tape.push_back(
                {isoDay(one.date), plainWord(toText(one.place)), one.value.toString() + u' ' + toText(one.unit)});
        if (masses.empty() && tape.empty()) return {};
        m_page.heading(RecordPageText::tr("Body"));
        m_page.table({RecordPageText::tr("Day"), RecordPageText::tr("Body mass")}, masses);
        m_page.table({RecordPageText::tr("Day"), RecordPageText::tr("Place"), RecordPageText::tr("Tape")}, tape);
        return {};
    }

    void writeStandards()
    {
        PageRows rows;
        for (const Row<RepStandard>& row : m_library.standards) {
            const RepStandard& s = row.value;
            if (s.athlete != m_log.athlete.id) continue;
            const auto* variant = m_library.find(s.variant);
            rows.push_back({s.name, variant ? m_library.fullName(variant->value) : QString(), s.start, s.end, s.path,
                            s.body, s.lowering, integerText(s.leastTravelPercent)});
        }
        if (rows.empty()) return;
        m_page.heading(RecordPageText::tr("Agreed with you: what counts as a repetition"));
        m_page.table({RecordPageText::tr("Name"), RecordPageText::tr("Of"), RecordPageText::tr("Start"),
                      RecordPageText::tr("End"), RecordPageText::tr("Path"), RecordPageText::tr("Body"),
                      RecordPageText::tr("Lowering"), RecordPageText::tr("Least travel, %")},
                     rows);
    }

    void writeSessions()
    {
        m_page.heading(RecordPageText::tr("Sessions"));
        m_page.paragraph(RecordPageText::tr("Where repetitions were noted one by one, they stand in book.json."));
        for (const QDate day : m_log.sessionDates) {
            PageRows sets;
            PageRows ratings;
            for (const LineRecord& line : m_log.lines) {
                const auto exposure = std::ranges::find(line.exposures, day, &Exposure::date);
                if (exposure == line.exposures.end()) continue;
                for (const LoggedSet& logged : exposure->sets)
                    sets.push_back(QStringList{liftTitle(line)} + setCells(logged.set));
                if (!exposure->rating.none()) ratings.push_back({liftTitle(line), ratingText(exposure->rating)});
            }
            m_page.paragraph(isoDay(day));
            m_page.table(QStringList{RecordPageText::tr("Lift")} + setHeader(), sets);
            m_page.table({RecordPageText::tr("Lift"), RecordPageText::tr("Said after it")}, ratings);
        }
    }

    Result<void> writeFormerValues()
    {
        STEELYARD_TRY(auto st,
                      m_db.prepare("SELECT s.date, p.line_id, p.replaced_at, p.change, p.was FROM set_replaced p "
                                   "JOIN session s ON s.id = p.session_id WHERE s.athlete_id = ?1 "
                                   "ORDER BY s.date, p.id"));
        st.bind(1, m_log.athlete.id);
        PageRows rows;
        while (true) {
            STEELYARD_TRY(const bool more, st.step());
            if (!more) break;
            const auto line = std::ranges::find(m_log.lines, st.id<LiftLine>(1), &LineRecord::id);
            const auto was = setFromJson(QJsonDocument::fromJson(st.text(4).toUtf8()).object());
            rows.push_back(QStringList{st.text(0), line == m_log.lines.end() ? QString() : liftTitle(*line), st.text(2),
                                       plainWord(st.text(3))}
                           + (was ? setCells(*was) : QStringList{}));
        }
        if (rows.empty()) return {};
        m_page.heading(RecordPageText::tr("What sets said before they were changed or removed"));
        m_page.table(QStringList{RecordPageText::tr("Day"), RecordPageText::tr("Lift"), RecordPageText::tr("Changed"),
                                 RecordPageText::tr("How")}
                         + setHeader(),
                     rows);
        return {};
    }

    void writeBlocks()
    {
        if (!m_log.blocks.empty()) m_page.heading(RecordPageText::tr("Plans"));
        for (const Row<Block>& row : m_log.blocks) {
            const Block& block = row.value;
            m_page.paragraph(QStringList{block.name, block.aim, isoDay(block.start)}.join(QStringLiteral(" · ")));
            PageRows rows;
            for (const PlannedWeek& week : block.weeks)
                for (const PlannedDay& day : week.days)
                    for (const Slot& slot : day.slotList)
                        rows.push_back({isoDay(day.date), day.title, nameOfPlanned(slot, m_library),
                                        QString::number(slot.sets),
                                        QStringLiteral("%1–%2").arg(slot.band.low).arg(slot.band.high),
                                        typedDecimal(slot.plannedRir), slot.load ? slot.load->toString() : QString(),
                                        integerText(slot.restSeconds), slot.note});
            m_page.table(
                {RecordPageText::tr("Day"), RecordPageText::tr("Title"), RecordPageText::tr("Lift"),
                 RecordPageText::tr("Sets"), RecordPageText::tr("Repetitions"), RecordPageText::tr("In reserve"),
                 RecordPageText::tr("Load"), RecordPageText::tr("Rest, s"), RecordPageText::tr("Note")},
                rows);
            PageRows off;
            for (const DaysOff& days : block.daysOff)
                off.push_back({isoDay(days.first), isoDay(days.last), days.reason});
            m_page.table({RecordPageText::tr("Off from"), RecordPageText::tr("To"), RecordPageText::tr("Reason")}, off);
        }
    }

    void writeTrials()
    {
        if (!m_log.trials.empty()) m_page.heading(RecordPageText::tr("Trials"));
        for (const Row<Trial>& row : m_log.trials) {
            const Trial& trial = row.value;
            m_page.paragraph(QStringList{isoDay(trial.designedOn), trial.question, trial.whyMoreThanOne}.join(u' '));
            PageRows arms;
            for (std::size_t arm = 0; arm < trial.arms.size(); ++arm)
                arms.push_back({armLetter(arm), nameOfPlanned(trial.arms[arm], m_library),
                                QStringLiteral("%1–%2").arg(trial.arms[arm].band.low).arg(trial.arms[arm].band.high),
                                typedDecimal(trial.arms[arm].loweringSeconds)});
            m_page.table({RecordPageText::tr("Arm"), RecordPageText::tr("Lift"), RecordPageText::tr("Repetitions"),
                          RecordPageText::tr("Lowering, s")},
                         arms);
            PageRows days;
            for (const TrialDay& day : trial.days)
                days.push_back({isoDay(day.date), armLetter(day.arm), day.armDone ? armLetter(*day.armDone) : QString(),
                                day.missed ? RecordPageText::tr("missed") : QString(), day.note});
            m_page.table({RecordPageText::tr("Day"), RecordPageText::tr("Arm drawn"), RecordPageText::tr("Arm done"),
                          RecordPageText::tr("Missed"), RecordPageText::tr("Note")},
                         days);
            if (trial.ending)
                m_page.paragraph(
                    RecordPageText::tr("Ended %1 (%2). %3")
                        .arg(isoDay(trial.ending->date), plainWord(toText(trial.ending->kind)), trial.ending->reason));
        }
    }

    void writeDecisions()
    {
        PageRows rows;
        for (const Row<Decision>& row : m_log.decisions) {
            const Decision& d = row.value;
            QString about;
            if (d.line) {
                const auto line = std::ranges::find(m_log.lines, *d.line, &LineRecord::id);
                if (line != m_log.lines.end()) about = liftTitle(*line);
            }
            rows.push_back({isoDay(d.madeOn), about, plainWord(d.rule), d.said, plainWord(toText(d.kind)),
                            isoDay(d.until), plainWord(d.action), d.reason});
        }
        if (rows.empty()) return;
        m_page.heading(RecordPageText::tr("What your coach decided"));
        m_page.table({RecordPageText::tr("Day"), RecordPageText::tr("About"), RecordPageText::tr("What was noticed"),
                      RecordPageText::tr("In words"), RecordPageText::tr("Decision"), RecordPageText::tr("Until"),
                      RecordPageText::tr("What was done"), RecordPageText::tr("Reason")},
                     rows);
    }

    Database& m_db;
    const Library& m_library;
    const AthleteLog& m_log;
    RecordHtml m_page;
};

}  // namespace

Result<QByteArray> recordPage(Database& db, const Library& library, Id<Athlete> athlete)
{
    STEELYARD_TRY(const AthleteLog log, readAthleteLog(db, library, athlete));
    return RecordPageWriter(db, library, log).write();
}

}  // namespace steelyard
