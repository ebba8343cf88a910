// Something in the sets is more than the record leads one to expect: a film of a set would show what it is. Help that nobody
// marks can't be seen in numbers; this is all that can be done about it.
#include "core/flags/entry_doubts.h"
#include "core/flags/rule_support.h"
#include "core/numerics/robust_trend.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct FilmCheckText {
    Q_DECLARE_TR_FUNCTIONS(FilmCheckText)
};

constexpr double kSureOfRising = 0.75;
// Help that was marked: at least this share of the repetitions, in so many of the sessions before.
constexpr double kLeastMarkedShare = 0.2;
constexpr std::size_t kMarkedSessions = 3;
constexpr std::size_t kCleanSessions = 2;
// Counted repetitions jump by a fifth, and by two at least.
constexpr double kRepsJumpShare = 1.2;
constexpr double kLeastRepsJump = 2;
// z of the rank test at one in a hundred, one-sided, and the least difference that matters.
constexpr double kRankLimit = 2.326;
constexpr double kLeastDifferenceSds = 0.5;

// One reason to ask, in words, and what shows it.
struct FilmReason {
    QString sentence;
    std::vector<Evidence> evidence;
};

std::optional<FilmReason> beatsItsForecast(const ReviewSnapshot& snapshot, const SnapshotLine& line,
                                           const RuleParameters& limits)
{
    const QDate from = snapshot.asOf.addDays(-limits.whole(u"days"));
    const auto doubts = doubtfulEntries(line, from, snapshot.asOf);
    std::optional<FilmReason> reason;
    for (const SessionSurprise& one : line.reading.surprises) {
        const bool doubted =
            std::ranges::any_of(doubts, [&](const EntryDoubt& doubt) { return doubt.date == one.date; });
        if (one.date <= from || one.errorSds <= limits.value(u"deviations") || doubted) continue;
        if (!reason) reason.emplace();
        reason->sentence =
            FilmCheckText::tr("%1 × %2 on %3 is about %4 repetitions more than the sessions before lead one to expect")
                .arg(snapshot.wording.load(one.load), QString::number(one.reps), snapshot.wording.day(one.date),
                     snapshot.wording.number(one.extraReps));
        reason->evidence.push_back({one.date, FilmCheckText::tr("repetitions above what was expected"), one.extraReps});
    }
    return reason;
}

// Two ways of reading the rise agree: the filter, which expects the pace of the lifter's experience and so is slow to state
// more, and the robust straight line through the sessions, whose lower end is still fast.
std::optional<FilmReason> risesTooFast(const ReviewSnapshot& snapshot, const SnapshotLine& line,
                                       const RuleParameters& limits)
{
    const LineReading& reading = line.reading;
    if (reading.verdict != Verdict::Progressing || !reading.stated || reading.stated->rising < kSureOfRising) return {};
    if (!reading.rate || !reading.fastPerWeek || !reading.plain) return {};
    const double growth = reading.rate->perWeek;
    const double fast = *reading.fastPerWeek;
    if (growth <= limits.value(u"paces") * fast || reading.plain->low90 <= fast) return {};
    return FilmReason{
        FilmCheckText::tr("it rises by about %1 % a week, where %2 % would be fast for this lifter's experience")
            .arg(snapshot.wording.number(100 * growth), snapshot.wording.number(100 * fast)),
        {{*line.lastTrained, FilmCheckText::tr("rise in % a week"), 100 * growth}}};
}

std::optional<double> medianOver(std::span<const CountedExposure* const> exposures,
                                 double (*value)(const ReadingPoint&))
{
    std::vector<double> values;
    for (const CountedExposure* one : exposures) values.push_back(value(one->point));
    return median(std::move(values));
}

double countedRepsAt(const ReadingPoint& point)
{
    return point.countedReps;
}

double topKgAt(const ReadingPoint& point)
{
    return point.topLoad.kilograms();
}

// Marks on the sessions before, none on the last ones, and the counted repetitions up at no lighter load.
std::optional<FilmReason> marksStop(const ReviewSnapshot& snapshot, const SnapshotLine& line)
{
    const auto last = line.lastWorking(kMarkedSessions + kCleanSessions);
    if (last.size() < kMarkedSessions + kCleanSessions || last.back()->point.date <= snapshot.asOf.addDays(-7 * 3))
        return {};
    const std::span<const CountedExposure* const> marked(last.data(), kMarkedSessions);
    const std::span<const CountedExposure* const> clean(last.data() + kMarkedSessions, kCleanSessions);
    const bool stopped =
        std::ranges::all_of(marked, [](const auto* one) { return one->offShare().value_or(0) >= kLeastMarkedShare; })
        && std::ranges::all_of(clean, [](const auto* one) { return one->point.offReps == 0; });
    if (!stopped) return {};
    const double before = *medianOver(marked, countedRepsAt);
    const double load = *medianOver(marked, topKgAt);
    for (const CountedExposure* one : clean) {
        const double jump = std::max(before * kRepsJumpShare, before + kLeastRepsJump);
        if (topKgAt(one->point) < load || countedRepsAt(one->point) < jump) return {};
    }
    const ReadingPoint& now = last.back()->point;
    FilmReason reason{FilmCheckText::tr("the marks stopped while the counted repetitions went from %1 to %2")
                          .arg(snapshot.wording.number(before, 0), QString::number(now.countedReps)),
                      {}};
    for (const CountedExposure* one : last)
        reason.evidence.push_back({one->point.date,
                                   FilmCheckText::tr("counted repetitions (%1 off standard)").arg(one->point.offReps),
                                   countedRepsAt(one->point)});
    return reason;
}

// Kendall's rank test of a series against yes and no is the rank-sum test of two groups (Wilcoxon 1945; Mann & Whitney 1947).
std::optional<FilmReason> betterUnwatched(const SnapshotLine& line, const RuleParameters& limits)
{
    std::vector<double> alone;
    std::vector<double> errors;
    std::vector<double> seen;
    std::vector<double> unseen;
    for (const SessionSurprise& one : line.reading.surprises) {
        alone.push_back(one.watched ? 0 : 1);
        errors.push_back(one.errorSds);
        (one.watched ? seen : unseen).push_back(one.errorSds);
    }
    const auto least = static_cast<std::size_t>(limits.whole(u"sets_each"));
    if (seen.size() < least || unseen.size() < least) return {};
    const double difference = *median(unseen) - *median(seen);
    const auto test = mannKendall(alone, errors);
    if (!test || test->z < kRankLimit || difference < kLeastDifferenceSds) return {};
    return FilmReason{FilmCheckText::tr("sets that nobody watched run above the watched ones (%1 against %2 sessions)")
                          .arg(QString::number(unseen.size()), QString::number(seen.size())),
                      {{line.reading.surprises.back().date,
                        FilmCheckText::tr("unwatched above watched, in standard deviations of a set"), difference}}};
}

class FilmCheckRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("film_check"); }
    QString title() const override { return FilmCheckText::tr("Film a set"); }
    QString explanation() const override
    {
        return FilmCheckText::tr(
            "A set far above what was expected, a rise faster than experience explains, marks that stop while "
            "repetitions "
            "jump, or sets that do better when nobody watches. Each may be real; help that nobody marked looks the "
            "same in "
            "numbers, and a film of one set tells them apart.");
    }
    Concern concern() const override { return Concern::Housekeeping; }
    std::vector<RuleParameter> parameters() const override
    {
        return {{QStringLiteral("deviations"), FilmCheckText::tr("Above what was expected, more than"),
                 FilmCheckText::tr("standard deviations"), 3, 2, 6,
                 FilmCheckText::tr("Our convention: chance alone reaches it about once in several hundred sets.")},
                {QStringLiteral("days"), FilmCheckText::tr("Looks back"), FilmCheckText::tr("days"), 21, 7, 56,
                 FilmCheckText::tr("Our convention: what can still be asked about.")},
                {QStringLiteral("paces"), FilmCheckText::tr("Rises faster than"),
                 FilmCheckText::tr("times a fast pace"), 2, 1, 10,
                 FilmCheckText::tr(
                     "Our convention; a fast pace is that of one rising lifter in twenty of this experience.")},
                {QStringLiteral("sets_each"), FilmCheckText::tr("Compares from"),
                 FilmCheckText::tr("sessions watched, and as many not"), 6, 4, 20,
                 FilmCheckText::tr("Our convention: fewer can hardly differ beyond chance.")},
                worseParameter(FilmCheckText::tr("reasons"), 1, 1, 3)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        std::vector<LineFinding> findings;
        for (const SnapshotLine& line : snapshot.lines) {
            if (!line.recent) continue;
            Flag flag{id(),
                      line.record->id,
                      Severity::Low,
                      {},
                      {},
                      {QStringLiteral("film_check"), QStringLiteral("watch_sets"), QStringLiteral("retest_standard")}};
            QStringList reasons;
            for (auto& reason : {beatsItsForecast(snapshot, line, limits), risesTooFast(snapshot, line, limits),
                                 marksStop(snapshot, line), betterUnwatched(line, limits)}) {
                if (!reason) continue;
                reasons << reason->sentence;
                flag.evidence.insert(flag.evidence.end(), reason->evidence.begin(), reason->evidence.end());
            }
            if (reasons.isEmpty()) continue;
            flag.measure = measured(static_cast<double>(reasons.size()), limits);
            if (reasons.size() > 1) flag.severity = Severity::Medium;
            flag.sentence = FilmCheckText::tr("%1: please film a set; %2.")
                                .arg(lineName(*line.record), reasons.join(QStringLiteral("; ")));
            std::ranges::stable_sort(flag.evidence, {}, &Evidence::date);
            findings.push_back({&line, std::move(flag)});
        }
        const QString whole =
            FilmCheckText::tr("Please film a set of each lift: %n of them did better than the record explains.",
                              nullptr, static_cast<int>(findings.size()));
        addByLineOrLifter(std::move(findings), snapshot, whole, flags);
    }
};

}  // namespace

const FlagRule& filmCheckRule();
const FlagRule& filmCheckRule()
{
    static const FilmCheckRule rule;
    return rule;
}

}  // namespace steelyard
