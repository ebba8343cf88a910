#include "ui/pages/lifter/body_view.h"

#include "core/book/book.h"
#include "core/edits/body_edits.h"
#include "ui/format/format.h"
#include "ui/pages/lifter/set_words.h"
#include "ui/shell/theme.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QDateEdit>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QTableView>

namespace steelyard {
namespace {

constexpr int kBodyWidth = 340;

}  // namespace

BodyView::BodyView(const UiContext& context, QWidget* parent)
    : PanelsView(tr("Body mass and measurements"), parent), m_context(context), m_model(new BodyModel(this))
{
    addBeside(makeEntries());
    setFootnote(
        tr("Weigh and measure at the same time of day and in the same way; a single value says little, and none of "
           "them says how healthy somebody is. Write down only what the lifter wants written down."));
}

QLayout* BodyView::makeLine()
{
    m_date = new QDateEdit(this);
    m_date->setDisplayFormat(format::datePattern());
    m_date->setAccessibleName(tr("Day"));
    m_what = new QComboBox(this);
    m_what->setAccessibleName(tr("What was measured"));
    m_what->addItem(bodyWhat({}));
    for (const auto& row : EnumText<BodyPlace>::table) m_what->addItem(bodyWhat(row.value));
    m_value = new QLineEdit(this);
    m_value->setAccessibleName(tr("Value"));
    for (QWidget* field : std::initializer_list<QWidget*>{m_date, m_what, m_value}) field->installEventFilter(this);
    connect(m_value, &QLineEdit::returnPressed, this, &BodyView::keep);
    connect(m_what, &QComboBox::currentIndexChanged, this, &BodyView::hintAsUsual);
    auto* line = new QHBoxLayout;
    line->addWidget(m_date);
    line->addWidget(m_what);
    line->addWidget(m_value, 1);
    return line;
}

QWidget* BodyView::makeEntries()
{
    auto* left = new QWidget(this);
    left->setFixedWidth(kBodyWidth);
    auto* all = new QVBoxLayout(left);
    all->setContentsMargins({});
    all->setSpacing(4);
    all->addLayout(makeLine());
    m_hint = new QLabel(left);
    m_hint->setTextFormat(Qt::PlainText);
    m_hint->setWordWrap(true);
    m_entries = new QTableView(left);
    m_entries->setModel(m_model);
    m_entries->setAccessibleName(tr("Entries"));
    m_entries->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_entries->setSelectionMode(QAbstractItemView::SingleSelection);
    m_entries->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_entries->setShowGrid(false);
    m_entries->setWordWrap(false);
    m_entries->setTabKeyNavigation(false);
    m_entries->setFrameShape(QFrame::NoFrame);
    m_entries->verticalHeader()->hide();
    m_entries->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 6);
    m_entries->horizontalHeader()->setHighlightSections(false);
    m_entries->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_entries->horizontalHeader()->setSectionResizeMode(BodyModel::What, QHeaderView::Stretch);
    all->addWidget(m_hint);
    all->addWidget(m_entries, 1);
    connect(m_entries, &QTableView::activated, this, &BodyView::correct);
    connect(m_entries->selectionModel(), &QItemSelectionModel::currentRowChanged, this, &LifterView::canChanged);
    return left;
}

void BodyView::show(const ShownLine& shown)
{
    const bool isSame = m_shown.lifter && m_shown.lifter->log.athlete.id == shown.lifter->log.athlete.id;
    const BodyEntry before = chosen() ? *chosen() : BodyEntry();
    m_shown = shown;
    const auto athlete = shown.lifter->log.athlete.id;
    const auto mass = m_context.book.athletes().bodyMass(athlete);
    const auto measured = m_context.book.athletes().measurements(athlete);
    if (!mass || !measured) return say((mass ? measured.error() : mass.error()).what);
    const BodyRecord record{*mass, *measured};
    m_model->setRecord(record, shown.unit());
    if (!isSame) {
        endCorrection();
        m_date->setDate(shown.today);
    }
    const int row = isSame ? m_model->rowOf(before.date, before.place) : 0;
    if (m_model->rowCount() > 0) m_entries->selectRow(std::max(0, row));
    for (QWidget* field : std::initializer_list<QWidget*>{m_date, m_what, m_value})
        field->setEnabled(!m_context.book.isReadOnly());
    m_entries->setVisible(m_model->rowCount() > 0);
    PanelsOptions options = optionsFor(shown);
    options.from.reset();
    showSpec(buildBodySpec(record, options),
             tr("Nothing is written down yet. Type body mass or a tape measurement at the left, and Enter keeps it; "
                "from the second entry on, the course stands here."));
    hintAsUsual();
}

const BodyEntry* BodyView::chosen() const
{
    return m_model->at(m_entries->currentIndex().row());
}

std::optional<BodyPlace> BodyView::typedPlace() const
{
    const int index = m_what->currentIndex() - 1;
    if (index < 0) return std::nullopt;
    return EnumText<BodyPlace>::table.at(static_cast<std::size_t>(index)).value;
}

void BodyView::hint(const QString& text, bool isWrong)
{
    QPalette colours = palette();
    const ThemeColours& theme = themeColours(colours);
    colours.setColor(QPalette::WindowText, isWrong ? theme.alarm : theme.quiet);
    m_hint->setPalette(colours);
    m_hint->setText(text);
}

void BodyView::hintAsUsual()
{
    if (!m_shown.lifter) return;
    const QString unit = typedPlace() ? QStringLiteral("cm, in") : QStringLiteral("kg, lb");
    m_value->setPlaceholderText(typedPlace() ? QStringLiteral("84.5") : QStringLiteral("81.4"));
    if (m_instead)
        hint(tr("Correcting %1 of %2. Enter keeps it, Escape leaves it.")
                 .arg(bodyWhat(m_instead->place), format::date(m_instead->date)),
             false);
    else
        hint(tr("Enter keeps it. Units: %1. A second entry of the same day replaces the first.").arg(unit), false);
}

void BodyView::keep()
{
    if (const auto place = typedPlace())
        keepTape(*place);
    else
        keepMass();
}

void BodyView::keepMass()
{
    const auto mass = parseLoadCell(m_value->text(), m_shown.unit());
    if (!mass) return hint(tr("“%1” can’t be read as a mass: 81.4, 81.4 kg or 179 lb.").arg(m_value->text()), true);
    const auto athlete = m_shown.lifter->log.athlete.id;
    const BodyMassEntry entry{m_date->date(), *mass};
    if (m_instead && m_instead->place)
        return hint(tr("An entry of %1 stays one. Remove it to type another kind.").arg(bodyWhat(m_instead->place)),
                    true);
    store(correctBodyMass(athlete, entry, m_shown.today, m_instead ? std::optional(m_instead->date) : std::nullopt),
          tr("Body mass was kept."));
}

void BodyView::keepTape(BodyPlace place)
{
    const TapeUnit usual = m_shown.unit() == MassUnit::lb ? TapeUnit::in : TapeUnit::cm;
    auto measured = parseTape(m_value->text(), usual);
    if (!measured)
        return hint(tr("“%1” can’t be read as a length: 84.5, 84.5 cm or 33 in.").arg(m_value->text()), true);
    if (m_instead && !m_instead->place)
        return hint(tr("An entry of %1 stays one. Remove it to type another kind.").arg(bodyWhat(m_instead->place)),
                    true);
    measured->date = m_date->date();
    measured->place = place;
    std::optional<MeasuredAt> instead;
    if (m_instead) instead = MeasuredAt{m_instead->date, *m_instead->place};
    store(recordMeasurement(m_shown.lifter->log.athlete.id, *measured, m_shown.today, instead),
          tr("The measurement was kept."));
}

// The record is read again after the change, and comes by show().
void BodyView::store(std::unique_ptr<Edit> edit, const QString& words)
{
    const auto done = m_context.book.history().perform(std::move(edit));
    if (!done) return hint(done.error().what, true);
    endCorrection();
    Q_EMIT said(words);
}

void BodyView::endCorrection()
{
    m_instead.reset();
    m_value->clear();
    hintAsUsual();
}

void BodyView::correct()
{
    const BodyEntry* entry = chosen();
    if (!entry || m_context.book.isReadOnly()) return;
    m_instead = *entry;
    m_date->setDate(entry->date);
    m_what->setCurrentIndex(entry->place ? static_cast<int>(*entry->place) + 1 : 0);
    m_value->setText(entry->typed);
    hintAsUsual();
    m_value->setFocus(Qt::ShortcutFocusReason);
    m_value->selectAll();
}

void BodyView::remove()
{
    const BodyEntry* entry = chosen();
    if (!entry) return;
    const auto athlete = m_shown.lifter->log.athlete.id;
    store(
        entry->place ? removeMeasurement(athlete, {entry->date, *entry->place}) : removeBodyMass(athlete, entry->date),
        tr("The entry was removed."));
}

bool BodyView::can(const QString& action) const
{
    if (m_context.book.isReadOnly()) return false;
    if (action == QStringLiteral("lifter.add")) return true;
    return chosen() && (action == QStringLiteral("lifter.edit") || action == QStringLiteral("lifter.remove"));
}

void BodyView::perform(const QString& action)
{
    if (action == QStringLiteral("lifter.edit")) return correct();
    if (action == QStringLiteral("lifter.remove")) return remove();
    endCorrection();
    m_value->setFocus(Qt::ShortcutFocusReason);
}

void BodyView::takeFocus()
{
    if (m_model->rowCount() > 0)
        m_entries->setFocus(Qt::ShortcutFocusReason);
    else
        m_value->setFocus(Qt::ShortcutFocusReason);
}

// Escape first leaves a correction; then it goes back to the progress, as everywhere.
bool BodyView::eventFilter(QObject* watched, QEvent* event)
{
    const bool isKey = event->type() == QEvent::KeyPress || event->type() == QEvent::ShortcutOverride;
    if (!isKey || !m_instead || static_cast<QKeyEvent*>(event)->key() != Qt::Key_Escape)
        return PanelsView::eventFilter(watched, event);
    if (event->type() == QEvent::ShortcutOverride) {
        event->accept();
        return true;
    }
    endCorrection();
    m_entries->setFocus(Qt::OtherFocusReason);
    return true;
}

}  // namespace steelyard
