#include "ui/pages/week/week_page.h"

#include "core/edits/edits.h"
#include "core/flags/registry.h"
#include "ui/format/format.h"
#include "ui/format/people.h"
#include "ui/jobs/job.h"
#include "ui/pages/week/flag_list.h"
#include "ui/pages/week/lines_panel.h"
#include "ui/pages/week/review_paper.h"
#include "ui/pages/week/roster_picture.h"
#include "ui/prompt/prompter.h"
#include "ui/shell/review_store.h"
#include "ui/widgets/elided_label.h"

#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QSplitter>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>
#include <utility>

namespace steelyard {
namespace {

QLabel* weekLabel(double scale, QWidget* parent)
{
    auto* label = new QLabel(parent);
    label->setTextFormat(Qt::PlainText);
    QFont font = label->font();
    font.setPointSizeF(font.pointSizeF() * scale);
    label->setFont(font);
    return label;
}

}  // namespace

WeekPage::WeekPage(const UiContext& context, QWidget* parent)
    : Page(parent),
      m_context(context),
      m_name(new ElidedLabel(this)),
      m_summary(weekLabel(1.0, this)),
      m_progress(weekLabel(1.0, this)),
      m_fine(new QPushButton(tr("F   Looked at, fine"), this)),
      m_flags(new FlagList(this)),
      m_panel(new LinesPanel(this)),
      m_sides(new QStackedWidget(this)),
      m_picture(new RosterPicture(context, this))
{
    QFont large = m_name->font();
    large.setPointSizeF(large.pointSizeF() * 1.5);
    m_name->setFont(large);
    auto* head = new QHBoxLayout;
    head->setContentsMargins(14, 8, 14, 0);
    head->addWidget(m_name, 1);
    head->addWidget(m_progress);
    head->addSpacing(12);
    head->addWidget(m_fine);
    m_fine->setFocusPolicy(Qt::NoFocus);  // F does the same, and the flags keep the keys
    m_fine->setToolTip(tr("Nothing more to do for this lifter in this round: on to the next"));
    m_summary->setContentsMargins(14, 0, 14, 4);
    auto* splitter = new QSplitter(Qt::Vertical, this);
    splitter->addWidget(m_flags);
    splitter->addWidget(m_panel);
    splitter->setStretchFactor(0, 3);
    splitter->setStretchFactor(1, 2);
    splitter->setChildrenCollapsible(false);
    splitter->setSizes({420, 260});  // the reasons come before the table
    auto* review = new QWidget(this);
    auto* layout = new QVBoxLayout(review);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addLayout(head);
    layout->addWidget(m_summary);
    layout->addWidget(splitter, 1);
    m_sides->addWidget(review);
    m_sides->addWidget(m_picture);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(m_sides);
    connectPicture();
    connect(&m_context.reviews, &ReviewStore::reviewsChanged, this, &WeekPage::refresh);
    connect(m_fine, &QPushButton::clicked, this, [this] { perform(QStringLiteral("week.fine")); });
    connect(m_flags, &FlagList::actionRequested, this, &WeekPage::perform);
    connect(m_flags, &FlagList::flagChosen, this, [this] {
        if (const Flag* flag = m_flags->chosen(); flag && flag->line) m_panel->choose(*flag->line);
        Q_EMIT actionsChanged();
    });
    connect(&m_flags->bar(), &DecideBar::decided, this, &WeekPage::decide);
    connect(&m_flags->bar(), &DecideBar::left, this, [this] {
        m_flags->closeBar();
        takeFocus();
    });
    connect(m_panel, &LinesPanel::lineOpened, this, [this](Id<LiftLine> line) {
        if (m_athlete) Q_EMIT lineRequested(*m_athlete, line);
    });
    m_timer.start();
    refresh();
}

void WeekPage::connectPicture()
{
    connect(m_picture, &RosterPicture::athleteChosen, this, &WeekPage::athleteRequested);
    connect(m_picture, &RosterPicture::actionsChanged, this, &WeekPage::actionsChanged);
    connect(m_picture, &RosterPicture::said, this, &WeekPage::said);
    connect(m_picture, &RosterPicture::athleteOpened, this, [this](Id<Athlete> athlete) {
        Q_EMIT athleteRequested(athlete);
        Q_EMIT actionRequested(QStringLiteral("view.lifter"));
    });
}

bool WeekPage::isPictureShown() const
{
    return m_sides->currentWidget() == m_picture;
}

// Everybody, or those whom the picture shows.
void WeekPage::putOnPaper(bool pdf)
{
    std::vector<const AthleteReview*> shown;
    if (isPictureShown())
        shown = m_picture->shownReviews();
    else
        for (const AthleteReview& review : m_context.reviews.reviews()) shown.push_back(&review);
    if (shown.empty()) return Q_EMIT said(tr("Nobody is shown, so there is nothing to print."));
    const auto say = [this](const QString& text) { Q_EMIT said(text); };
    if (pdf)
        saveReviewPdf(m_context, this, shown, say);
    else
        printReview(m_context, this, shown, say);
}

void WeekPage::showAthlete(std::optional<Id<Athlete>> athlete)
{
    if (athlete != m_athlete) m_flags->forgetChoice();
    m_athlete = athlete;
    m_picture->showAthlete(athlete);
    refresh();
}

void WeekPage::bookChanged(const Changes& changes)
{
    // The review that follows brings what changed; what the bar shows of the plan may be of yesterday by then.
    if (m_athlete && changes.athletes.contains(*m_athlete)) m_flags->closeBar();
    if (changes.roster && m_athlete) sayHeading(m_context.reviews.find(*m_athlete));
}

void WeekPage::takeFocus()
{
    if (isPictureShown()) return m_picture->takeFocus();
    m_flags->setFocus(Qt::OtherFocusReason);
}

void WeekPage::sayProgress()
{
    if (!m_context.reviews.isReady()) return;
    const auto& all = m_context.reviews.reviews();
    const auto finished = static_cast<int>(std::ranges::count_if(all, &AthleteReview::finished));
    const auto left = static_cast<int>(all.size()) - finished;
    if (m_finished && finished > *m_finished) m_pace.finished(static_cast<double>(m_timer.elapsed()) / 1000);
    m_finished = finished;
    const auto minutes = m_pace.minutesLeft(left);
    const QString done = tr("%1 of %2 finished").arg(QString::number(finished), QString::number(all.size()));
    if (left == 0 && !all.empty())
        m_progress->setText(tr("Everybody is finished for this week."));
    else if (minutes)
        m_progress->setText(done + tr(", about %n minute(s) left", nullptr, *minutes));
    else
        m_progress->setText(done);
}

// No flag is answered by it: they stay open, and the lifter leaves the queue of this round.
void WeekPage::markFine()
{
    const AthleteReview* review = m_athlete ? m_context.reviews.find(*m_athlete) : nullptr;
    if (!review || m_context.book.isReadOnly()) return;
    const QString name = review->name;
    const Decision decision{
        .athlete = *m_athlete, .rule = kLookedAtRule.toString(), .madeOn = m_context.reviews.asOf()};
    const auto stored = m_context.book.history().perform(makeDecision(decision, tr("%1 as a whole").arg(name)));
    if (!stored) {
        m_context.prompter.tellError(this, tr("The decision could not be stored"), stored.error());
        return;
    }
    Q_EMIT said(tr("%1: looked at, fine").arg(format::person(name)));
    Q_EMIT actionRequested(QStringLiteral("roster.next"));
}

void WeekPage::showEvent(QShowEvent* event)
{
    Page::showEvent(event);
    if (std::exchange(m_stale, false)) refresh();
}

void WeekPage::refresh()
{
    sayProgress();
    // Behind another page nobody looks, and flags take time to lay out.
    m_stale = isHidden();
    if (m_stale) return;
    const AthleteReview* review = m_athlete ? m_context.reviews.find(*m_athlete) : nullptr;
    sayHeading(review);
    const bool writable = !m_context.book.isReadOnly();
    m_fine->setEnabled(review && !review->finished && writable);
    m_panel->setLines(review ? review->lines : std::vector<LineReview>(), review ? review->unit : MassUnit::kg);
    m_flags->showReview(review ? std::optional(*review) : std::nullopt, writable,
                        review ? noteFor(*review) : QString());
}

// Where nothing is flagged.
QString WeekPage::noteFor(const AthleteReview& review) const
{
    return review.lines.empty()
               ? tr("Nothing is logged for this lifter yet. Import a logbook, or key in a session on the Floor page.")
               : tr("Nothing asks for a decision here. F finishes this lifter and goes to the next.");
}

void WeekPage::sayHeading(const AthleteReview* review)
{
    if (!review) {
        m_name->setText({});
        m_summary->setText(!m_context.reviews.isReady() ? tr("Reading the records…")
                           : m_athlete                  ? tr("Reading this lifter's record…")
                                       : tr("Choose a lifter at the left. N goes to the next who isn't finished."));
        return;
    }
    m_name->setText(format::person(review->name));
    QStringList parts;
    if (!review->group.isEmpty()) parts.push_back(review->group);
    parts.push_back(review->lastSession
                        ? tr("last session %1").arg(format::ago(*review->lastSession, m_context.reviews.asOf()))
                        : tr("nothing logged yet"));
    parts.push_back(review->flags.empty() ? tr("nothing open")
                                          : tr("%n flag(s) open", nullptr, static_cast<int>(review->flags.size())));
    m_summary->setText(parts.join(QStringLiteral("  ·  ")));
}

bool WeekPage::canPerform(const QString& action) const
{
    if (action == QLatin1StringView("week.picture")) return true;
    if (action == QLatin1StringView("week.print") || action == QLatin1StringView("week.pdf"))
        return m_context.reviews.isReady() && !m_context.reviews.reviews().empty();
    // Behind the picture nothing is decided unseen.
    if (RosterPicture::owns(action) || isPictureShown())
        return RosterPicture::owns(action) && isPictureShown() && m_picture->canPerform(action);
    if (action == QLatin1StringView("week.why") || action == QLatin1StringView("week.lines"))
        return m_panel->hasLines();
    if (action == QLatin1StringView("week.answered") || action == QLatin1StringView("week.fine"))
        return m_athlete && m_context.reviews.find(*m_athlete);
    if (action == QLatin1StringView("week.open") || action == QLatin1StringView("week.sets"))
        return m_panel->hasLines();
    return m_flags->chosen() != nullptr;
}

void WeekPage::perform(const QString& action)
{
    if (!canPerform(action)) return;
    if (RosterPicture::owns(action)) return m_picture->perform(action);
    if (action == QLatin1StringView("week.print")) putOnPaper(false);
    if (action == QLatin1StringView("week.pdf")) putOnPaper(true);
    if (action == QLatin1StringView("week.picture")) {
        m_sides->setCurrentIndex(1 - m_sides->currentIndex());
        takeFocus();
        Q_EMIT actionsChanged();
    }
    if (action == QLatin1StringView("week.nextFlag")) m_flags->chooseNext(1);
    if (action == QLatin1StringView("week.previousFlag")) m_flags->chooseNext(-1);
    if (action == QLatin1StringView("week.act")) {
        m_flags->openBar(DecisionKind::Act, m_context.reviews.asOf());
        if (m_flags->isBarOpen()) readPlan(*m_flags->chosen());
    }
    if (action == QLatin1StringView("week.watch")) m_flags->openBar(DecisionKind::Watch, m_context.reviews.asOf());
    if (action == QLatin1StringView("week.dismiss")) m_flags->openBar(DecisionKind::Dismiss, m_context.reviews.asOf());
    if (action == QLatin1StringView("week.fine")) markFine();
    if (action == QLatin1StringView("week.open")) openLine();
    if (action == QLatin1StringView("week.sets") && openLine()) Q_EMIT actionRequested(QStringLiteral("lifter.why"));
    if (action == QLatin1StringView("week.why")) m_panel->toggleWhy();
    if (action == QLatin1StringView("week.lines")) m_panel->takeFocus();
    if (action == QLatin1StringView("week.answered")) m_flags->toggleAnswered();
}

void WeekPage::readPlan(const Flag& flag)
{
    m_context.jobs.run(
        &m_flags->bar(), tr("Reading the plan"),
        [path = m_context.book.path(), athlete = *m_athlete, asOf = m_context.reviews.asOf()](const Progress&) {
            return readPlanRecord(path, athlete, asOf);
        },
        [this, opened = m_flags->opening(), line = flag.line](Result<PlanRecord> record) {
            if (opened != m_flags->opening()) return;
            if (!record) return m_flags->bar().sayProblem(record.error().what);
            m_flags->bar().setRecord(std::make_shared<const PlanRecord>(*std::move(record)), line);
            m_flags->bringBarIntoSight();
        });
}

void WeekPage::decide(const FlagAnswer& answer)
{
    const Flag* flag = m_flags->chosen();
    if (!flag || !m_athlete) return;
    const Decision decision{.athlete = *m_athlete,
                            .line = flag->line,
                            .rule = flag->rule,
                            .kind = answer.kind,
                            .madeOn = m_context.reviews.asOf(),
                            .until = answer.until,
                            .action = answer.action,
                            .reason = answer.reason,
                            .severity = flag->severity,
                            .said = flag->sentence,
                            .measure = flag->measure ? std::optional(flag->measure->value) : std::nullopt};
    const QString about = QStringLiteral("%1: %2").arg(ruleTitle(flag->rule), m_flags->about(*flag));
    const auto stored = m_context.book.history().perform(makeDecision(decision, about, answer.block));
    if (!stored) {
        m_context.prompter.tellError(this, tr("The decision could not be stored"), stored.error());
        return;
    }
    const auto line = flag->line ? flag->line : m_panel->chosen();
    const QString rule = flag->rule;
    m_flags->closeBar();
    takeFocus();
    QString words = tr("Stored: %1, %2").arg(format::decisionWord(answer.kind), about);
    if (answer.block) words += tr("; %n planned slot(s) changed", nullptr, answer.changedSlots);
    Q_EMIT said(words);
    // What the answer begins is designed where trials are.
    if (answer.action == QLatin1StringView("start_trial") && line) Q_EMIT trialRequested(*m_athlete, *line, rule);
}

bool WeekPage::openLine()
{
    const Flag* flag = m_flags->chosen();
    const auto line = m_panel->tableHasFocus() || !flag || !flag->line ? m_panel->chosen() : flag->line;
    if (!m_athlete || !line) return false;
    Q_EMIT lineRequested(*m_athlete, *line);
    return true;
}

}  // namespace steelyard
