#include "ui/pages/lifter/logbook_bulk.h"

#include "ui/format/format.h"
#include "ui/pages/lifter/logbook_bulk_words.h"
#include "ui/shell/theme.h"
#include "ui/widgets/words.h"

#include <QtCore/QPointer>
#include <QtGui/QKeyEvent>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QDateEdit>
#include <QtWidgets/QGridLayout>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QSpinBox>
#include <QtWidgets/QTableWidget>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kMostShiftDays = 3660;
constexpr int kBulkFieldLetters = 24;  // a long name is cut in the closed field and whole in its list and tool tip

QComboBox* bulkChoice(QWidget* parent)
{
    auto* box = new QComboBox(parent);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(kBulkFieldLetters);
    return box;
}

void addChoice(QComboBox* box, const QString& name, std::int64_t id)
{
    box->addItem(name, QVariant::fromValue(static_cast<qint64>(id)));
    box->setItemData(box->count() - 1, format::plainToolTip(name), Qt::ToolTipRole);
}

template <class Entity>
Id<Entity> chosenId(const QComboBox* box)
{
    return Id<Entity>(box->currentData().toLongLong());
}

template <class Entity>
void choose(QComboBox* box, Id<Entity> id)
{
    box->setCurrentIndex(std::max(0, box->findData(QVariant::fromValue(static_cast<qint64>(id.value())))));
}

}  // namespace

LogbookBulk::LogbookBulk(PlanRename planRename, Store store, Before before, QWidget* parent)
    : QWidget(parent),
      m_planRename(std::move(planRename)),
      m_store(std::move(store)),
      m_before(std::move(before)),
      m_form(new QGridLayout),
      m_task(bulkChoice(this)),
      m_line(bulkChoice(this)),
      m_from(new QDateEdit(this)),
      m_to(new QDateEdit(this)),
      m_days(new QSpinBox(this)),
      m_variant(bulkChoice(this)),
      m_grip(bulkChoice(this)),
      m_standard(bulkChoice(this)),
      m_renamed(bulkChoice(this)),
      m_name(new QLineEdit(this)),
      m_plan(new QCheckBox(this)),
      m_says(plainWords(this)),
      m_problems(plainWords(this)),
      m_preview(new QTableWidget(0, 3, this))
{
    for (const QString& name : {tr("Split a line in two from a day on"), tr("Move sets to another line"),
                                tr("Shift sessions to other days"), tr("Rename in the library")})
        m_task->addItem(name);
    m_days->setRange(-kMostShiftDays, kMostShiftDays);
    m_standard->setEditable(true);
    m_standard->setInsertPolicy(QComboBox::NoInsert);
    for (QDateEdit* date : {m_from, m_to}) date->setDisplayFormat(format::datePattern());
    addField(tr("What"), m_task, {Split, Move, Shift, Rename});
    addField(tr("Line"), m_line, {Split, Move, Rename});
    addField(tr("From"), m_from, {Split, Move, Shift});
    addField(tr("To"), m_to, {Move, Shift});
    addField(tr("Variant then"), m_variant, {Split, Move});
    addField(tr("Grip then"), m_grip, {Split, Move});
    addField(tr("Standard then"), m_standard, {Split, Move});
    addField(tr("By days"), m_days, {Shift});
    addField(tr("Name of"), m_renamed, {Rename});
    addField(tr("New name"), m_name, {Rename});
    m_standard->setToolTip(tr("A name that isn’t there yet becomes a standard of this lifter."));
    m_preview->verticalHeader()->hide();
    m_preview->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 6);
    m_preview->horizontalHeader()->setHighlightSections(false);
    m_preview->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    m_preview->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_preview->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
    m_preview->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_preview->setSelectionMode(QAbstractItemView::NoSelection);
    m_preview->setTabKeyNavigation(false);
    m_preview->setShowGrid(false);
    m_preview->setWordWrap(true);
    m_preview->setFrameShape(QFrame::NoFrame);
    m_preview->setAccessibleName(tr("Preview"));
    m_plan->installEventFilter(this);
    auto* hint = plainWords(this);
    hint->setText(tr("Enter does it in one step that Undo takes back, Escape leaves."));
    hint->setForegroundRole(QPalette::PlaceholderText);
    m_form->setColumnStretch(1, 1);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->setSpacing(6);
    all->addLayout(m_form);
    for (QWidget* row : std::initializer_list<QWidget*>{m_plan, m_says, m_problems}) all->addWidget(row);
    all->addWidget(m_preview, 1);
    all->addWidget(hint);
    connect(m_task, &QComboBox::currentIndexChanged, this, &LogbookBulk::showTask);
    connect(m_line, &QComboBox::currentIndexChanged, this, &LogbookBulk::fillTargets);
    connect(m_variant, &QComboBox::currentIndexChanged, this, &LogbookBulk::fillStandards);
    connect(m_renamed, &QComboBox::currentIndexChanged, this, &LogbookBulk::refresh);
    connect(m_grip, &QComboBox::currentIndexChanged, this, &LogbookBulk::refresh);
    connect(m_standard, &QComboBox::currentTextChanged, this, &LogbookBulk::refresh);
    connect(m_from, &QDateEdit::dateChanged, this, &LogbookBulk::refresh);
    connect(m_to, &QDateEdit::dateChanged, this, &LogbookBulk::refresh);
    connect(m_days, &QSpinBox::valueChanged, this, &LogbookBulk::refresh);
    connect(m_name, &QLineEdit::textChanged, this, &LogbookBulk::refresh);
    connect(m_plan, &QCheckBox::toggled, this, &LogbookBulk::refresh);
    showTask();  // fields that nothing is asked of need no room
}

void LogbookBulk::addField(const QString& label, QWidget* field, std::initializer_list<Task> tasks)
{
    auto* name = new QLabel(label, this);
    name->setBuddy(field);
    field->setAccessibleName(label);
    field->installEventFilter(this);
    for (auto* line : field->findChildren<QLineEdit*>()) line->installEventFilter(this);
    const int row = m_form->rowCount();
    m_form->addWidget(name, row, 0);
    m_form->addWidget(field, row, 1);
    m_fields.push_back({name, field, tasks});
}

void LogbookBulk::open(Source source)
{
    m_source = std::move(source);
    m_filling = true;
    const auto& dates = m_source->log.sessionDates;
    m_from->setDate(m_source->day.isValid() ? m_source->day : m_source->today);
    m_to->setDate(dates.empty() ? m_source->today : dates.back());
    m_days->setValue(0);
    m_name->clear();
    m_plan->setChecked(true);
    fillLines();
    m_filling = false;
    fillTargets();
    showTask();
    m_task->setFocus(Qt::ShortcutFocusReason);
}

LogbookBulk::Task LogbookBulk::task() const
{
    return static_cast<Task>(m_task->currentIndex());
}

const LineRecord* LogbookBulk::line() const
{
    const auto& lines = m_source->log.lines;
    const auto at = std::ranges::find(lines, chosenId<LiftLine>(m_line), &LineRecord::id);
    return at == lines.end() ? nullptr : &*at;
}

void LogbookBulk::fillLines()
{
    m_line->clear();
    for (const LineRecord& record : m_source->log.lines)
        if (!record.exposures.empty())
            addChoice(m_line, wholeLineName(record.line, m_source->library), record.id.value());
    if (m_source->line) choose(m_line, *m_source->line);
}

void LogbookBulk::fillTargets()
{
    const LineRecord* from = line();
    if (m_filling || !from) return;
    m_filling = true;
    m_variant->clear();
    for (const Row<Variant>& row : m_source->library.variants)
        if (row.value.exercise == from->exercise.id) addChoice(m_variant, row.value.name, row.id.value());
    choose(m_variant, from->line.variant);
    m_grip->clear();
    for (const Row<Grip>& row : m_source->library.grips) addChoice(m_grip, row.value.name, row.id.value());
    choose(m_grip, from->line.grip);
    fillRenamed();
    m_filling = false;
    fillStandards();
}

void LogbookBulk::fillStandards()
{
    const LineRecord* from = line();
    if (m_filling || !from) return;
    m_filling = true;
    m_standard->clear();
    const auto variant = chosenId<Variant>(m_variant);
    for (const Row<RepStandard>& row : m_source->library.standards)
        if (row.value.variant == variant && (!row.value.athlete || *row.value.athlete == from->line.athlete))
            addChoice(m_standard, row.value.name, row.id.value());
    if (variant == from->line.variant) choose(m_standard, from->line.standard);
    m_filling = false;
    refresh();
}

void LogbookBulk::fillRenamed()
{
    const LineRecord* from = line();
    m_renamed->clear();
    addChoice(m_renamed, tr("the exercise “%1”").arg(from->exercise.value.name), from->exercise.id.value());
    addChoice(m_renamed, tr("the variant “%1”").arg(from->variant.value.name), from->variant.id.value());
    addChoice(m_renamed, tr("the grip “%1”").arg(from->grip.value.name), from->grip.id.value());
    addChoice(m_renamed, tr("the standard “%1”").arg(from->standard.value.name), from->standard.id.value());
}

void LogbookBulk::showTask()
{
    for (const Field& field : m_fields) {
        const bool shown = std::ranges::count(field.tasks, task()) > 0;
        field.label->setVisible(shown);
        field.widget->setVisible(shown);
    }
    refresh();
}

MoveWish LogbookBulk::moveWish() const
{
    MoveWish wish{.line = line()->id,
                  .from = m_from->date(),
                  .variant = chosenId<Variant>(m_variant),
                  .grip = chosenId<Grip>(m_grip),
                  .standardName = m_standard->currentText(),
                  .planToo = m_plan->isChecked()};
    if (task() == Move) wish.to = m_to->date();
    return wish;
}

RenameWish LogbookBulk::renameWish() const
{
    return {static_cast<RenameKind>(m_renamed->currentIndex()), m_renamed->currentData().toLongLong(), m_name->text()};
}

void LogbookBulk::refresh()
{
    if (m_filling || !m_source || !line()) return;
    m_ready.reset();
    m_plan->hide();
    BulkWords words;
    if (task() == Shift) {
        const ShiftPlan plan =
            planShift(m_source->log, {m_from->date(), m_to->date(), m_days->value()}, m_source->today);
        words = bulkWords(plan);
        if (words.problems.isEmpty()) m_ready = shiftSessions(plan);
    } else if (task() == Rename) {
        const auto plan = m_planRename(m_source->library, renameWish());
        words = plan ? bulkWords(*plan) : BulkWords{{}, {}, {}, {plan.error().what}};
        if (words.problems.isEmpty()) m_ready = renameInLibrary(*plan);
    } else {
        const MovePlan plan = planMove(m_source->log, m_source->library, moveWish(), m_source->today);
        words = bulkWords(plan, m_source->library);
        m_plan->setText(tr("Change %n planned slot(s) after today as well", nullptr, plan.plannedSlots));
        m_plan->setVisible(plan.plannedSlots > 0);
        if (words.problems.isEmpty()) m_ready = moveSets(plan);
    }
    m_readyWords = words.says;
    showWords(words);
}

void LogbookBulk::showWords(const BulkWords& words)
{
    m_says->setText(words.says);
    m_problems->setText(words.problems.join(u'\n'));
    m_problems->setVisible(!words.problems.isEmpty());
    QPalette warm = palette();
    warm.setColor(QPalette::WindowText, themeColours(palette()).alarm);
    m_problems->setPalette(warm);
    m_preview->setHorizontalHeaderLabels(words.titles);
    m_preview->setRowCount(static_cast<int>(words.rows.size()));
    int at = 0;
    for (const BulkPreviewRow& row : words.rows) {
        int column = 0;
        for (const QString& text : {row.what, row.before, row.after}) {
            auto* item = new QTableWidgetItem(text);
            item->setToolTip(format::plainToolTip(text));
            m_preview->setItem(at, column++, item);
        }
        ++at;
    }
    m_preview->resizeRowsToContents();
}

void LogbookBulk::apply()
{
    if (!m_ready || !isEnabled()) return;
    const QPointer<QWidget> field = focusWidget();
    setEnabled(false);  // what was shown is what will be done
    m_before([this, field] {
        setEnabled(true);
        if (field) field->setFocus();
        applyNow();
    });
}

void LogbookBulk::applyNow()
{
    const QString problem = m_store(std::move(m_ready), m_readyWords);
    if (problem.isEmpty()) {
        Q_EMIT left();
        return;
    }
    refresh();
    m_problems->setText(problem);
    m_problems->show();
}

// Letters are for the field that has the keyboard; Enter and Escape are for the panel.
bool LogbookBulk::handleKey(QObject* watched, QEvent* event)
{
    const auto* key = static_cast<QKeyEvent*>(event);
    const bool isEscape = key->key() == Qt::Key_Escape;
    if (event->type() == QEvent::ShortcutOverride) {
        const bool isLetter = qobject_cast<QComboBox*>(watched) && !key->text().isEmpty() && key->text()[0].isPrint()
                              && !(key->modifiers() & (Qt::ControlModifier | Qt::AltModifier));
        if (isEscape || isLetter) event->accept();
        return isEscape || isLetter;
    }
    if (isEscape)
        Q_EMIT left();
    else if (key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter)
        apply();
    else
        return false;
    return true;
}

bool LogbookBulk::eventFilter(QObject* watched, QEvent* event)
{
    const bool isKey = event->type() == QEvent::KeyPress || event->type() == QEvent::ShortcutOverride;
    return (isKey && handleKey(watched, event)) || QWidget::eventFilter(watched, event);
}

}  // namespace steelyard
