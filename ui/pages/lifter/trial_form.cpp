#include "ui/pages/lifter/trial_form.h"

#include "core/keying/line_change.h"
#include "core/trials/arm_differences.h"
#include "core/trials/trial_decision.h"
#include "core/trials/trial_power.h"
#include "ui/format/format.h"
#include "ui/format/lift_words.h"
#include "ui/pages/lifter/trial_arm_fields.h"
#include "ui/pages/lifter/trial_draft.h"
#include "ui/pages/lifter/trial_outcome_fields.h"
#include "ui/pages/lifter/trial_preview.h"
#include "ui/shell/theme.h"
#include "ui/widgets/words.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QCompleter>
#include <QtWidgets/QDateEdit>
#include <QtWidgets/QFormLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QScrollArea>
#include <QtWidgets/QSpinBox>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kMostTrialSets = 12;
constexpr int kMostRunIn = 6;
constexpr int kMostBetween = 21;
constexpr int kTrialLiftLetters = 16;
constexpr int kTrialFormWidth = 400;

}  // namespace

TrialForm::TrialForm(std::function<std::uint64_t()> newSeed, QWidget* parent)
    : QWidget(parent),
      m_newSeed(std::move(newSeed)),
      m_proposed(fail(ErrorCode::Invalid, QString())),
      m_question(new QLineEdit(this)),
      m_lift(new QComboBox(this)),
      m_arms(new TrialArmFields(this)),
      m_outcomes(new TrialOutcomeFields(this)),
      m_sets(addNumber(tr("Sets a session"), 1, kMostTrialSets)),
      m_reserve(new QLineEdit(this)),
      m_runIn(addNumber(tr("Sessions of each arm to get used to it"), 0, kMostRunIn)),
      m_between(addNumber(tr("Fewest days from one session to the next"), 1, kMostBetween)),
      m_blocks(addNumber(tr("Blocks, each with every arm once"), kFirstLook, powerBlocks().back())),
      m_from(new QDateEdit(this)),
      m_preview(new TrialPreview(this)),
      m_seed(new QLabel(this)),
      m_draw(new QPushButton(tr("Draw a&gain"), this)),
      m_problem(plainWords(this)),
      m_start(new QPushButton(tr("Enter  Start the trial"), this)),
      m_leave(new QPushButton(tr("Esc  Leave it"), this))
{
    build();
    connect(m_question, &QLineEdit::textEdited, this, [this](const QString& text) {
        m_ownQuestion = !text.trimmed().isEmpty();
        refresh();
    });
    connect(m_lift, &QComboBox::activated, this, [this](int at) {
        if (m_draft && at >= 0 && at < std::ssize(m_lifts))
            begin(m_lifts[static_cast<std::size_t>(at)], m_draft->factor);
    });
    connect(m_arms, &TrialArmFields::changed, this, [this] {
        offerWeekdays();
        refresh();
    });
    connect(m_outcomes, &TrialOutcomeFields::changed, this, &TrialForm::refresh);
    connect(m_reserve, &QLineEdit::textChanged, this, &TrialForm::refresh);
    connect(m_from, &QDateEdit::dateChanged, this, &TrialForm::refresh);
    connect(m_draw, &QPushButton::clicked, this, &TrialForm::drawAgain);
    connect(m_start, &QPushButton::clicked, this, &TrialForm::accept);
    connect(m_leave, &QPushButton::clicked, this, &TrialForm::left);
}

QSpinBox* TrialForm::addNumber(const QString& name, int low, int high)
{
    auto* spin = new QSpinBox(this);
    spin->setRange(low, high);
    spin->setAccessibleName(name);
    spin->setToolTip(name);
    connect(spin, &QSpinBox::valueChanged, this, &TrialForm::refresh);
    return spin;
}

QLayout* TrialForm::makeSizes()
{
    m_reserve->setAccessibleName(tr("Planned reserve"));
    m_reserve->setPlaceholderText(tr("any"));
    m_reserve->setFixedWidth(fontMetrics().averageCharWidth() * 7);
    auto* grid = new QGridLayout;
    const auto put = [&](int row, int column, const QString& text, QWidget* field) {
        auto* label = new QLabel(text, this);
        label->setBuddy(field);
        grid->addWidget(label, row, column);
        grid->addWidget(field, row, column + 1);
    };
    put(0, 0, tr("Bl&ocks"), m_blocks);
    put(0, 2, tr("Getting &used"), m_runIn);
    put(0, 4, tr("Days betwee&n"), m_between);
    put(1, 0, tr("Se&ts"), m_sets);
    put(1, 2, tr("Re&serve"), m_reserve);
    grid->setColumnStretch(6, 1);
    grid->setVerticalSpacing(3);
    return grid;
}

QLayout* TrialForm::makeDays()
{
    m_from->setCalendarPopup(true);
    m_from->setDisplayFormat(format::datePattern());
    m_from->setAccessibleName(tr("From"));
    auto* days = new QHBoxLayout;
    days->setSpacing(2);
    for (int day = 1; day <= kDaysOfPlanWeek; ++day) {
        auto* box = new QCheckBox(QLocale().dayName(day, QLocale::ShortFormat), this);
        box->setAccessibleName(QLocale().dayName(day));
        m_weekdays[static_cast<std::size_t>(day) - 1] = box;
        days->addWidget(box);
        connect(box, &QCheckBox::toggled, this, &TrialForm::refresh);
    }
    days->addStretch(1);
    return days;
}

QLayout* TrialForm::makeFoot()
{
    auto* foot = new QHBoxLayout;
    foot->addWidget(m_start);
    foot->addWidget(m_leave);
    foot->addSpacing(12);
    foot->addWidget(m_seed);
    foot->addWidget(m_draw);
    foot->addStretch(1);
    m_seed->setToolTip(tr("The order is drawn from this number alone: the same number draws the same order."));
    return foot;
}

void TrialForm::build()
{
    m_question->setAccessibleName(tr("Question"));
    m_lift->setEditable(true);
    m_lift->setInsertPolicy(QComboBox::NoInsert);
    m_lift->setAccessibleName(tr("Lift, type to find"));
    m_lift->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_lift->setMinimumContentsLength(kTrialLiftLetters);
    m_lift->completer()->setCompletionMode(QCompleter::PopupCompletion);
    m_lift->completer()->setFilterMode(Qt::MatchContains);
    auto* left = new QWidget(this);
    auto* form = new QFormLayout;
    form->setVerticalSpacing(5);
    form->addRow(tr("&Question"), m_question);
    form->addRow(tr("L&ift"), m_lift);
    auto* days = makeDays();
    auto* column = new QVBoxLayout(left);
    column->setContentsMargins(0, 0, 6, 0);
    column->setSpacing(6);
    column->addLayout(form);
    column->addWidget(m_arms);
    column->addLayout(makeSizes());
    auto* from = new QFormLayout;
    from->addRow(tr("Fro&m"), m_from);
    from->addRow(tr("On"), days);
    column->addLayout(from);
    column->addWidget(m_outcomes);
    column->addStretch(1);
    auto* scroll = new QScrollArea(this);
    scroll->setWidget(left);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setMinimumWidth(kTrialFormWidth);
    auto* beside = new QScrollArea(this);
    beside->setWidget(m_preview);
    beside->setWidgetResizable(true);
    beside->setFrameShape(QFrame::NoFrame);
    beside->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    beside->setFocusPolicy(Qt::NoFocus);
    auto* upper = new QHBoxLayout;
    upper->setSpacing(14);
    upper->addWidget(scroll, 3);
    upper->addWidget(beside, 2);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->setSpacing(6);
    all->addLayout(upper, 1);
    all->addWidget(m_problem);
    all->addLayout(makeFoot());
    setTabOrder(m_question, m_lift);
}

void TrialForm::offer(Offer offer)
{
    m_offer = std::move(offer);
    m_ownQuestion = false;
    fillLifts();
    m_drawnFrom = m_offer->seed;
    begin(m_offer->lift, m_offer->factor);
}

void TrialForm::fillLifts()
{
    const QSignalBlocker quiet(m_lift);
    m_lifts = liftsToAdd(record().log, record().library, {});
    m_lift->clear();
    for (const LiftLine& lift : m_lifts) {
        const QString name = wholeLiftName(lift, record().library);
        m_lift->addItem(name);
        m_lift->setItemData(m_lift->count() - 1, format::plainToolTip(name), Qt::ToolTipRole);
    }
}

void TrialForm::begin(const LiftLine& lift, TrialFactor factor)
{
    m_filling = true;
    m_draft = draftTrial(record(), lift, factor, m_offer->today, m_drawnFrom);
    {
        const QSignalBlocker quiet(m_lift);
        const auto at = std::ranges::find(m_lifts, lift);
        m_lift->setCurrentIndex(at == m_lifts.end() ? -1 : static_cast<int>(at - m_lifts.begin()));
        m_lift->setToolTip(format::plainToolTip(m_lift->currentText()));
    }
    m_arms->offer(record(), *m_draft);
    m_outcomes->offer(*m_draft, mayKeep(record().log.athlete.value.consents, HealthField::Discomfort));
    m_sets->setValue(m_draft->sets);
    m_reserve->setText(m_draft->plannedRir ? m_draft->plannedRir->toString() : QString());
    m_runIn->setValue(m_draft->arms.front().runIn);
    m_between->setValue(m_draft->daysBetween);
    m_blocks->setValue(m_draft->blocks);
    m_from->setMinimumDate(m_offer->today);
    m_from->setDate(m_offer->today.addDays(1));
    offerWeekdays();
    m_filling = false;
    refresh();
}

// Days on which the exercise is planned, else the lifter's usual ones.
void TrialForm::offerWeekdays()
{
    const auto usual = draftWeekdays(record(), m_arms->apply(*m_draft), m_offer->today);
    const bool before = std::exchange(m_filling, true);
    for (int day = 1; day <= kDaysOfPlanWeek; ++day)
        m_weekdays[static_cast<std::size_t>(day) - 1]->setChecked(std::ranges::find(usual, day) != usual.end());
    m_filling = before;
}

std::vector<int> TrialForm::weekdays() const
{
    std::vector<int> chosen;
    for (int day = 1; day <= kDaysOfPlanWeek; ++day)
        if (m_weekdays[static_cast<std::size_t>(day) - 1]->isChecked()) chosen.push_back(day);
    return chosen;
}

Trial TrialForm::design() const
{
    Trial trial = m_outcomes->apply(m_arms->apply(*m_draft));
    trial.seed = m_drawnFrom;
    for (TrialArm& arm : trial.arms) arm.runIn = m_runIn->value();
    trial.sets = m_sets->value();
    trial.plannedRir = Decimal::parse(QStringView(m_reserve->text().trimmed().replace(u',', u'.')));
    trial.daysBetween = m_between->value();
    trial.blocks = m_blocks->value();
    trial.question = m_ownQuestion ? m_question->text().trimmed() : draftQuestion(trial, record().library);
    return trial;
}

void TrialForm::refresh()
{
    if (m_filling || !m_offer || !m_draft) return;
    const Trial trial = design();
    if (!m_ownQuestion) m_question->setText(trial.question);
    m_question->setToolTip(format::plainToolTip(trial.question));
    m_arms->showJudgement(trial);
    const QString refusal = m_arms->refusal(trial);
    if (!refusal.isEmpty())
        m_proposed = fail(ErrorCode::Invalid, refusal);
    else if (!m_reserve->text().trimmed().isEmpty() && !trial.plannedRir)
        m_proposed = fail(ErrorCode::Invalid, tr("Reserve is a number such as 2, or nothing for any."));
    else if (weekdays().empty())
        m_proposed = fail(ErrorCode::Invalid, tr("Tick the weekdays on which the sessions may be."));
    else
        m_proposed =
            proposeTrial(record().log, record().library,
                         {.trial = trial, .from = m_from->date(), .today = m_offer->today, .weekdays = weekdays()});
    m_preview->show(trial, m_proposed, armNames(trial, record().library), m_offer->today);
    m_seed->setText(tr("drawn from %1").arg(QString::number(trial.seed)));
    m_start->setEnabled(m_proposed.has_value());
    // The refusal of the arms stands beside them already.
    say(m_proposed || !refusal.isEmpty() ? QString() : m_proposed.error().what);
}

void TrialForm::say(const QString& problem)
{
    QPalette colours = m_problem->palette();
    colours.setColor(QPalette::WindowText,
                     problem.isEmpty() ? themeColours(palette()).quiet : themeColours(palette()).alarm);
    m_problem->setPalette(colours);
    m_problem->setText(problem.isEmpty() ? tr("Enter starts it; arms, order and weights then stand until its end. "
                                              "Undo takes it back.")
                                         : problem);
}

void TrialForm::drawAgain()
{
    m_drawnFrom = m_newSeed();
    refresh();
}

void TrialForm::accept()
{
    if (m_proposed) Q_EMIT accepted(*m_proposed);
}

void TrialForm::takeFocus()
{
    m_question->setFocus(Qt::ShortcutFocusReason);
    m_question->selectAll();
}

// While the form is open, letters and numbers are for its fields; as shortcuts they would walk away from it.
bool TrialForm::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* key = static_cast<QKeyEvent*>(event);
        const bool plain = !(key->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier));
        const bool isLetter = plain && !key->text().isEmpty() && key->text().at(0).isPrint();
        if (isLetter || key->key() == Qt::Key_Escape) {
            event->accept();
            return true;
        }
    }
    return QWidget::event(event);
}

void TrialForm::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        accept();
    else if (event->key() == Qt::Key_Escape)
        Q_EMIT left();
    else
        QWidget::keyPressEvent(event);
}

}  // namespace steelyard
