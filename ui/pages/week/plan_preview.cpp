#include "ui/pages/week/plan_preview.h"

#include "core/base/text.h"
#include "core/flags/actions.h"
#include "ui/format/format.h"
#include "ui/format/plan_words.h"
#include "ui/shell/theme.h"
#include "ui/widgets/elided_label.h"

#include <QtWidgets/QComboBox>
#include <QtWidgets/QGridLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>

#include <algorithm>

namespace steelyard {
namespace {

constexpr std::size_t kMostRows = 6;
constexpr int kMostNoteLetters = 400;
constexpr int kCellLetters = 28;
constexpr int kMostCellLetters = 60;
constexpr int kNoteLetters = 90;
constexpr int kFieldLetters = 22;  // a long name is cut in the closed field and whole in its list and tool tip

QComboBox* previewField(const QString& name, QWidget* parent)
{
    auto* field = new QComboBox(parent);
    field->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    field->setMinimumContentsLength(kFieldLetters);
    field->setAccessibleName(name);
    field->setToolTip(name);
    field->hide();
    return field;
}

QLabel* previewLabel(QWidget* parent, const QString& text = {}, bool quiet = false)
{
    auto* label = new QLabel(text, parent);
    label->setTextFormat(Qt::PlainText);
    if (quiet) {
        QPalette palette = label->palette();
        palette.setColor(QPalette::WindowText, themeColours(palette).quiet);
        label->setPalette(palette);
    }
    return label;
}

// As wide as its text where there is room, and cut where there isn't; kCellLetters of it stay in any case.
ElidedLabel* previewCell(const QString& text, QWidget* parent)
{
    auto* label = new ElidedLabel(parent);
    label->setText(text);
    label->setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Fixed);
    const int letter = label->fontMetrics().averageCharWidth();
    label->setMinimumWidth(std::min(label->sizeHint().width(), kCellLetters * letter));
    label->setMaximumWidth(kMostCellLetters * letter);
    return label;
}

void addName(QComboBox* field, const QString& name)
{
    field->addItem(name);
    field->setItemData(field->count() - 1, format::plainToolTip(name), Qt::ToolTipRole);
}

}  // namespace

PlanPreview::PlanPreview(QWidget* parent)
    : QWidget(parent),
      m_key(previewLabel(this, tr("Tab"), true)),
      m_lift(previewField(tr("Which exercise"), this)),
      m_choice(previewField(tr("Which one"), this)),
      m_scope(previewField(tr("For how long"), this)),
      m_note(new QLineEdit(this)),
      m_says(previewLabel(this)),
      m_caution(previewLabel(this, referralCaution(), true)),
      m_table(new QWidget(this)),
      m_grid(new QGridLayout(m_table))
{
    m_scope->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    m_scope->addItem(tr("for one week"));
    m_scope->addItem(tr("to the end of the block"));
    m_note->setMaxLength(kMostNoteLetters);
    m_note->setAccessibleName(tr("Note on the sheet"));
    m_note->setPlaceholderText(tr("Note on the sheet"));
    m_caution->setWordWrap(true);
    m_says->setWordWrap(true);
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(18);
    m_grid->setVerticalSpacing(1);
    m_grid->setColumnStretch(5, 1);  // what is short stands together
    m_note->setMaximumWidth(fontMetrics().averageCharWidth() * kNoteLetters);
    auto* choices = new QHBoxLayout;
    choices->addWidget(m_key);
    for (QWidget* field : {m_lift, m_choice, m_scope}) choices->addWidget(field);
    choices->addStretch(1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    column->addLayout(choices);
    for (QWidget* row : std::initializer_list<QWidget*>{m_says, m_note, m_caution, m_table}) column->addWidget(row);
    connect(m_lift, &QComboBox::currentIndexChanged, this, &PlanPreview::fillChoices);
    connect(m_choice, &QComboBox::currentIndexChanged, this, &PlanPreview::refresh);
    connect(m_scope, &QComboBox::currentIndexChanged, this, &PlanPreview::refresh);
    clear();
}

std::vector<QWidget*> PlanPreview::fields() const
{
    return {m_lift, m_choice, m_scope, m_note};
}

void PlanPreview::clear()
{
    m_record.reset();
    m_plan = {};
    for (QWidget* field : fields()) field->hide();
    m_key->hide();
    m_caution->hide();
    clearTable();
    m_says->setText(tr("Reading the plan…"));
}

void PlanPreview::setRecord(std::shared_ptr<const PlanRecord> record, std::optional<Id<LiftLine>> line, QDate today)
{
    m_record = std::move(record);
    m_today = today;
    m_line.reset();
    for (const LineRecord& one : m_record->log.lines)
        if (line == one.id) m_line = one.line;
    m_lifts = liftsAhead(m_record->log, today);
    fillLifts();
}

void PlanPreview::setAction(const QString& action)
{
    m_action = action;
    if (m_record) fillLifts();
}

// A flag about the whole lifter leaves open which exercise is meant.
void PlanPreview::fillLifts()
{
    const QSignalBlocker block(m_lift);
    m_lift->clear();
    const bool open = !m_line && !m_lifts.empty() && placeOf(m_action) == ActionPlace::Plan && m_action != u"deload";
    if (open && !needsLift(m_action)) m_lift->addItem(tr("every exercise"));
    if (open)
        for (const LiftLine& lift : m_lifts) addName(m_lift, format::liftName(lift, m_record->library));
    m_lift->setVisible(m_lift->count() > 0);
    const QSignalBlocker scopeBlock(m_scope);
    m_scope->setCurrentIndex(static_cast<int>(usualScope(m_action)));
    fillChoices();
}

void PlanPreview::fillChoices()
{
    const QSignalBlocker block(m_choice);
    m_choice->clear();
    m_choices = choicesFor(input());
    for (const ReplanChoice& choice : m_choices) addName(m_choice, format::choiceWords(choice, m_record->library));
    m_choice->setVisible(!m_choices.empty());
    refresh();
}

ReplanInput PlanPreview::input() const
{
    std::optional<LiftLine> lift = m_line;
    if (m_lift->count() > 0) {
        const auto place = static_cast<std::size_t>(m_lift->currentIndex());
        const std::size_t first = needsLift(m_action) ? 0 : 1;
        if (place >= first) lift = m_lifts.at(place - first);
    }
    return {m_record->log, m_record->library, lift, m_action, m_today};
}

ReplanChoice PlanPreview::chosen() const
{
    ReplanChoice choice;
    if (m_choice->currentIndex() >= 0) choice = m_choices.at(static_cast<std::size_t>(m_choice->currentIndex()));
    choice.scope = static_cast<ReplanScope>(m_scope->currentIndex());
    return choice;
}

void PlanPreview::refresh()
{
    if (!m_record) return;
    m_plan = replan(input(), chosen());
    m_scope->setVisible(hasScope(m_action) && blockAhead(m_record->log, m_today));
    m_key->setVisible(m_lift->count() > 0 || m_choice->count() > 0 || !m_scope->isHidden());
    m_says->setText(format::replanWords(m_plan));
    showChanges();
    showNote();
    updateGeometry();
}

void PlanPreview::clearTable()
{
    while (QLayoutItem* item = m_grid->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    m_table->hide();
}

void PlanPreview::showChanges()
{
    clearTable();
    const auto& changes = m_plan.changes;
    const auto isOther = [&](const PlannedChange& change) {
        const Slot& first = changes.front().before;
        const Slot& slot = change.before;
        return slot.variant != first.variant || slot.grip != first.grip || slot.standard != first.standard;
    };
    const bool named = std::ranges::any_of(changes, isOther);
    int row = 0;
    for (const PlannedChange& change : changes) {
        if (static_cast<std::size_t>(row) == kMostRows) break;
        const auto words = format::slotDifference(change, m_record->library);
        m_grid->addWidget(previewLabel(m_table, format::shortDay(change.dayBefore), true), row, 0);
        const Slot& slot = change.before;
        const LiftLine lift{m_record->log.athlete.id, slot.variant, slot.grip, slot.standard};
        if (named) m_grid->addWidget(previewCell(format::liftName(lift, m_record->library), m_table), row, 1);
        m_grid->addWidget(previewCell(words.before, m_table), row, 2);
        m_grid->addWidget(previewLabel(m_table, QStringLiteral("→"), true), row, 3);
        m_grid->addWidget(previewCell(words.after, m_table), row, 4);
        ++row;
    }
    if (changes.size() > kMostRows)
        m_grid->addWidget(
            previewLabel(m_table, tr("and %n more", nullptr, static_cast<int>(changes.size() - kMostRows)), true), row,
            0, 1, 5);
    m_table->setVisible(!changes.empty());
}

void PlanPreview::showNote()
{
    const bool isNote = m_plan.isForSheet();
    m_note->setVisible(isNote);
    m_caution->setVisible(isNote && m_action == u"refer_out");
    m_note->setText(isNote ? format::actionNote(input(), chosen()) : QString());
    m_note->setCursorPosition(0);
}

QString PlanPreview::note() const
{
    if (!m_plan.isForSheet()) return {};
    const QString written = cleanName(m_note->text());
    // A change that no slot carries has to say itself.
    return written.isEmpty() && placeOf(m_action) == ActionPlace::Plan ? actionNote(m_action) : written;
}

}  // namespace steelyard
