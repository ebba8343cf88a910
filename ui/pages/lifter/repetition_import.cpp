#include "ui/pages/lifter/repetition_import.h"

#include "ui/format/format.h"
#include "ui/format/repetition_words.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QGridLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPlainTextEdit>
#include <QtWidgets/QPushButton>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kBoxColumns = 5;
constexpr std::size_t kMostProblemsShown = 50;

QString columnWord(RepetitionColumn column)
{
    switch (column) {
    case RepetitionColumn::Date:
        return RepetitionImport::tr("Day");
    case RepetitionColumn::Athlete:
        return RepetitionImport::tr("Lifter");
    case RepetitionColumn::Exercise:
        return RepetitionImport::tr("Exercise");
    case RepetitionColumn::Set:
        return RepetitionImport::tr("Set");
    case RepetitionColumn::Number:
        return RepetitionImport::tr("Repetition");
    case RepetitionColumn::Travel:
        return RepetitionImport::tr("Travel");
    case RepetitionColumn::Low:
        return RepetitionImport::tr("Lowest point");
    case RepetitionColumn::High:
        return RepetitionImport::tr("Highest point");
    case RepetitionColumn::Lifting:
        return RepetitionImport::tr("Lifting time");
    case RepetitionColumn::Lowering:
        return RepetitionImport::tr("Lowering time");
    }
    return {};
}

// A box with its name above.
void addBox(QGridLayout* grid, int place, const QString& name, QComboBox* box)
{
    auto* label = new QLabel(name, box->parentWidget());
    label->setBuddy(box);
    box->setAccessibleName(name);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(9);
    grid->addWidget(label, 2 * (place / kBoxColumns), place % kBoxColumns);
    grid->addWidget(box, 2 * (place / kBoxColumns) + 1, place % kBoxColumns);
}

}  // namespace

RepetitionImport::RepetitionImport(QWidget* parent) : QWidget(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    makeBoxes();
    m_preview = new QPlainTextEdit(this);
    m_preview->setReadOnly(true);
    m_preview->setTabChangesFocus(true);
    m_preview->setAccessibleName(tr("What will be recorded"));
    m_take = new QPushButton(tr("Recor&d them"), this);
    m_take->setToolTip(tr("Key: %1").arg(QStringLiteral("Enter")));
    auto* leave = new QPushButton(tr("Leave &it"), this);
    leave->setToolTip(tr("Key: %1").arg(QStringLiteral("Esc")));
    auto* buttons = new QHBoxLayout;
    buttons->addStretch(1);
    buttons->addWidget(leave);
    buttons->addWidget(m_take);
    auto* all = static_cast<QVBoxLayout*>(layout());
    all->addWidget(m_preview, 1);
    all->addLayout(buttons);
    connect(m_take, &QPushButton::clicked, this, &RepetitionImport::take);
    connect(leave, &QPushButton::clicked, this, &RepetitionImport::left);
}

void RepetitionImport::makeBoxes()
{
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    auto* grid = new QGridLayout;
    int place = 0;
    for (std::size_t i = 0; i < kRepetitionColumnCount; ++i) {
        m_columns[i] = new QComboBox(this);
        addBox(grid, place++, columnWord(static_cast<RepetitionColumn>(i)), m_columns[i]);
    }
    m_length = new QComboBox(this);
    for (const auto& row : EnumText<LengthUnit>::table) m_length->addItem(toText(row.value));
    addBox(grid, place++, tr("Lengths in"), m_length);
    m_time = new QComboBox(this);
    for (const auto& row : EnumText<TimeUnit>::table) m_time->addItem(toText(row.value));
    addBox(grid, place++, tr("Times in"), m_time);
    m_end = new QComboBox(this);
    for (const Mark mark : {Mark::ShortBottom, Mark::ShortTop}) m_end->addItem(format::markWord(mark), toText(mark));
    addBox(grid, place++, tr("Too little travel is"), m_end);
    m_end->setToolTip(tr("Where the file has no heights. With lowest and highest points the program sees it itself."));
    all->addLayout(grid);
    for (QComboBox* box : findChildren<QComboBox*>())
        connect(box, &QComboBox::activated, this, &RepetitionImport::look);
}

void RepetitionImport::open(RepetitionTable table, const RepetitionImportTarget& target)
{
    m_table = std::move(table);
    m_target = target;
    const RepetitionMapping guessed = guessRepetitionColumns(m_table);
    for (std::size_t i = 0; i < kRepetitionColumnCount; ++i) {
        m_columns[i]->clear();
        m_columns[i]->addItem(format::absent());
        m_columns[i]->addItems(m_table.header);
        m_columns[i]->setCurrentIndex(guessed.columns[i].value_or(-1) + 1);
    }
    m_length->setCurrentText(toText(guessed.length));
    m_time->setCurrentText(toText(guessed.time));
    look();
    setFocus();
}

RepetitionMapping RepetitionImport::mapping() const
{
    RepetitionMapping chosen;
    for (std::size_t i = 0; i < kRepetitionColumnCount; ++i)
        if (m_columns[i]->currentIndex() > 0) chosen.columns[i] = m_columns[i]->currentIndex() - 1;
    chosen.length = fromKey<LengthUnit>(QStringView(m_length->currentText())).value_or(LengthUnit::mm);
    chosen.time = fromKey<TimeUnit>(QStringView(m_time->currentText())).value_or(TimeUnit::s);
    return chosen;
}

std::vector<Repetition> RepetitionImport::judged(std::vector<Repetition> repetitions) const
{
    if (!m_full || !m_target->leastPercent) return repetitions;
    const auto end = fromKey<Mark>(QStringView(m_end->currentData().toString())).value_or(Mark::ShortBottom);
    return markShort(std::move(repetitions), *m_full, *m_target->leastPercent, end);
}

QString RepetitionImport::matchWords(const RepetitionMatch& match, const RepetitionReading& reading) const
{
    const ReadRepetitions& read = reading.sets[match.read];
    const QString rows = tr("Rows %1 to %2").arg(read.rows.front()).arg(read.rows.back());
    if (!match.set) return tr("%1: not recorded. %2").arg(rows, match.why);
    const auto repetitions = judged(read.repetitions);
    const auto off = std::ranges::count_if(repetitions, [](const Repetition& one) { return !one.marks.none(); });
    QString words = tr("%1: set %2, %n repetition(s)", nullptr, static_cast<int>(repetitions.size()))
                        .arg(rows)
                        .arg(match.setNumber);
    if (off > 0) words += tr(", %1 short").arg(off);
    return match.why.isEmpty() ? words + u'.' : words + QStringLiteral(". ") + match.why;
}

void RepetitionImport::look()
{
    if (!m_target) return;
    m_ready.clear();
    const RepetitionMapping chosen = mapping();
    QStringList lines;
    if (!tellsAnything(chosen)) {
        lines += tr("Name the column of the travel, of the lowest and highest points, or of a time.");
    } else {
        const RepetitionReading reading = readRepetitions(m_table, chosen);
        auto sets = m_target->before;
        for (const ReadRepetitions& one : reading.sets)
            if (one.sound) sets.push_back(one.repetitions);
        m_full = fullTravel(sets);
        if (m_full) lines += fullTravelWords(*m_full, m_target->leastPercent);
        for (const RepetitionMatch& match : matchRepetitions(
                 reading.sets, {m_target->session, m_target->chosen, m_target->athlete, m_target->exercise})) {
            lines += matchWords(match, reading);
            if (match.set) m_ready.push_back({*match.set, judged(reading.sets[match.read].repetitions)});
        }
        for (std::size_t i = 0; i < std::min(reading.problems.size(), kMostProblemsShown); ++i)
            lines += tr("Row %1, “%2”: %3")
                         .arg(QString::number(reading.problems[i].row), reading.problems[i].column,
                              reading.problems[i].text);
    }
    m_preview->setPlainText(lines.join(u'\n'));
    m_take->setEnabled(!m_ready.empty());
}

QString RepetitionImport::preview() const
{
    return m_preview->toPlainText();
}

void RepetitionImport::take()
{
    if (!m_ready.empty()) Q_EMIT wanted(m_ready);
}

bool RepetitionImport::event(QEvent* event)
{
    // Escape leaves the file, not the view.
    if (event->type() == QEvent::ShortcutOverride && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

void RepetitionImport::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) return take();
    if (event->key() == Qt::Key_Escape) return Q_EMIT left();
    QWidget::keyPressEvent(event);
}

}  // namespace steelyard
