#include "ui/pages/lifter/repetitions_view.h"

#include "core/book/book.h"
#include "core/edits/repetition_edits.h"
#include "core/exchange/repetition_csv.h"
#include "ui/format/format.h"
#include "ui/format/repetition_words.h"
#include "ui/pages/lifter/repetition_bars.h"
#include "ui/pages/lifter/repetition_import.h"
#include "ui/pages/lifter/repetition_line.h"
#include "ui/pages/lifter/set_words.h"
#include "ui/prompt/prompter.h"
#include "ui/widgets/words.h"

#include <QtCore/QFile>
#include <QtGui/QShortcut>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

constexpr int kSetListWidth = 300;
constexpr qint64 kMostDeviceBytes = 16LL * 1024 * 1024;

}  // namespace

RepetitionsView::RepetitionsView(const UiContext& context, QWidget* parent) : LifterView(parent), m_context(context)
{
    m_stack = new QStackedWidget(this);
    m_stack->addWidget(makeBoard());
    m_import = new RepetitionImport(this);
    m_stack->addWidget(m_import);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->addWidget(m_stack);
    connect(m_import, &RepetitionImport::wanted, this, &RepetitionsView::record);
    connect(m_import, &RepetitionImport::left, this, [this] {
        m_stack->setCurrentIndex(0);
        takeFocus();
    });
    for (const auto& [key, by] : {std::pair(Qt::Key_Left, -1), std::pair(Qt::Key_Right, 1)}) {
        auto* step = new QShortcut(key, m_sets);
        step->setContext(Qt::WidgetShortcut);
        connect(step, &QShortcut::activated, this, [this, by = by] { stepSession(by); });
    }
}

QWidget* RepetitionsView::makeBoard()
{
    auto* board = new QWidget(this);
    m_heading = plainWords(board);
    QFont bold = m_heading->font();
    bold.setBold(true);
    m_heading->setFont(bold);
    m_sets = new QListWidget(board);
    m_sets->setFixedWidth(kSetListWidth);
    m_sets->setFrameShape(QFrame::NoFrame);
    m_sets->setTextElideMode(Qt::ElideRight);
    m_sets->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_sets->setAccessibleName(tr("Sets of the session"));
    m_bars = new RepetitionBars(board);
    m_words = plainWords(board);
    m_words->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_hint = plainWords(board);
    m_hint->setForegroundRole(QPalette::PlaceholderText);
    m_line = new RepetitionLine(board);
    m_line->hide();
    auto* right = new QVBoxLayout;
    right->addWidget(m_bars, 3);
    right->addWidget(m_line);
    right->addWidget(m_words);
    right->addWidget(m_hint);
    right->addStretch(1);
    auto* both = new QHBoxLayout;
    both->addWidget(m_sets);
    both->addSpacing(12);
    both->addLayout(right, 1);
    auto* all = new QVBoxLayout(board);
    all->setContentsMargins({});
    all->addWidget(m_heading);
    all->addLayout(both, 1);
    connect(m_sets, &QListWidget::currentRowChanged, this, &RepetitionsView::showSet);
    connect(m_line, &RepetitionLine::left, this, [this] {
        m_line->hide();
        takeFocus();
    });
    connect(m_line, &RepetitionLine::entered, this, [this](const std::vector<Repetition>& typed) {
        if (const LoggedSet* set = chosen()) record({{set->id, typed}});
    });
    return board;
}

void RepetitionsView::show(const ShownLine& shown)
{
    m_shown = shown;
    m_stack->setCurrentIndex(0);
    fillSets();
}

void RepetitionsView::takeFocus()
{
    m_sets->setFocus();
}

const std::vector<SetRepetitions>& RepetitionsView::all() const
{
    return m_shown.lifter->repetitions;
}

const Exposure* RepetitionsView::session() const
{
    if (!m_shown.lifter || m_shown.exposure() < 0) return nullptr;
    return &m_shown.record().exposures[static_cast<std::size_t>(m_shown.exposure())];
}

const LoggedSet* RepetitionsView::chosen() const
{
    const Exposure* shown = session();
    const int row = m_sets->currentRow();
    return shown && row >= 0 && row < std::ssize(shown->sets) ? &shown->sets[static_cast<std::size_t>(row)] : nullptr;
}

void RepetitionsView::stepSession(int by)
{
    const int to = m_shown.exposure() + by;
    if (to < 0 || to >= std::ssize(m_shown.record().exposures)) return;
    m_shown.session = m_shown.record().exposures[static_cast<std::size_t>(to)].date;
    Q_EMIT sessionLookedAt(to);
    fillSets();
}

void RepetitionsView::fillSets()
{
    const QSignalBlocker quiet(m_sets);
    const int before = m_sets->currentRow();
    m_sets->clear();
    const Exposure* shown = session();
    m_heading->setText(shown ? tr("Session of %1 (← →: the one before, the one after)")
                                   .arg(format::weekday(shown->date) + u' ' + format::date(shown->date))
                             : tr("No session of this line yet."));
    int first = -1;
    for (std::size_t i = 0; shown && i < shown->sets.size(); ++i) {
        const LoggedSet& logged = shown->sets[i];
        const auto* repetitions = repetitionsOf(all(), logged.id);
        if (repetitions && first < 0) first = static_cast<int>(i);
        const QString words = tr("Set %1: %2").arg(QString::number(logged.set.number), setWords(logged.set));
        auto* item = new QListWidgetItem((repetitions ? QStringLiteral("● ") : QStringLiteral("○ ")) + words, m_sets);
        item->setToolTip(format::plainToolTip(words + u'\n'
                                              + (repetitions ? tr("Its repetitions are known one by one.")
                                                             : tr("Its repetitions are not known one by one."))));
    }
    m_sets->setCurrentRow(before >= 0 && before < m_sets->count() ? before : std::max(first, 0));
    showSet();
}

void RepetitionsView::showSet()
{
    const LoggedSet* set = chosen();
    const auto* repetitions = set ? repetitionsOf(all(), set->id) : nullptr;
    const auto& least = m_shown.record().standard.value.leastTravelPercent;
    const auto full = fullTravel(lineRepetitions(m_shown.record(), all()));
    m_bars->setRepetitions(repetitions ? *repetitions : std::vector<Repetition>(), full, least);
    m_bars->setVisible(repetitions);
    m_line->hide();
    QStringList lines;
    if (repetitions) {
        if (full) lines += fullTravelWords(*full, least);
        const QString alike = consistencyWords(likeSets(m_shown.record(), all(), set->id));
        lines += alike.isEmpty() ? tr("How alike they are can't be told from so few.")
                                 : tr("Sets of this lift like it (same kind, load within a tenth):") + u'\n' + alike;
    }
    m_words->setText(lines.join(u'\n'));
    say(repetitions
            ? QString()
            : tr("Here stand the repetitions of a set one by one: how far each went, how long it was lowered, which "
                 "were short. E types them. They also come from counting at the rack (R on the Floor page), or from a "
                 "measuring device's file: I brings one in for this session."));
    Q_EMIT canChanged();
}

QString RepetitionsView::words() const
{
    return m_words->text();
}

void RepetitionsView::say(const QString& text)
{
    m_hint->setText(text);
    m_hint->setVisible(!text.isEmpty());
}

bool RepetitionsView::can(const QString& action) const
{
    if (m_context.book.isReadOnly() || !chosen()) return false;
    if (action == QStringLiteral("lifter.measured") || action == QStringLiteral("lifter.edit")) return true;
    return action == QStringLiteral("lifter.remove") && repetitionsOf(all(), chosen()->id);
}

void RepetitionsView::perform(const QString& action)
{
    if (!chosen()) return;
    if (action == QStringLiteral("lifter.edit")) typeThem();
    if (action == QStringLiteral("lifter.measured")) askForFile();
    if (action == QStringLiteral("lifter.remove")) record({{chosen()->id, {}}});
}

void RepetitionsView::typeThem()
{
    const LoggedSet* set = chosen();
    if (!set) return;
    const auto* known = repetitionsOf(all(), set->id);
    if (known && !canBeTyped(*known))
        return say(tr("A device measured these. Del takes them away; then E types others."));
    const LineRecord& record = m_shown.record();
    m_line->open(known ? std::span<const Repetition>(*known) : std::span<const Repetition>(), set->set,
                 {fullTravel(lineRepetitions(record, all())), record.standard.value.leastTravelPercent});
    m_hint->hide();
    m_line->show();
    m_line->setFocus();
}

void RepetitionsView::askForFile()
{
    m_context.prompter.chooseFileToOpen(
        this, {tr("Repetitions from a measuring device"), {}, tr("Delimited text (*.csv *.txt *.tsv)"), {}},
        [this](const QString& path) { readFile(path); });
}

void RepetitionsView::readFile(const QString& path)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) return say(tr("“%1” can't be read: %2").arg(path, file.errorString()));
    if (file.size() > kMostDeviceBytes)
        return say(tr("“%1” is larger than 16 MB. Export the repetitions of one session, one row each.").arg(path));
    auto table = readRepetitionTable(file.readAll());
    if (!table) return say(table.error().what);
    const LoggedSet* set = chosen();
    if (!set) return;
    const LineRecord& record = m_shown.record();
    m_import->open(*std::move(table),
                   {*session(), set->id, m_shown.lifter->log.athlete.value.name, record.exercise.value.name,
                    lineRepetitions(record, all()), record.standard.value.leastTravelPercent});
    m_stack->setCurrentIndex(1);
    m_import->setFocus();
}

void RepetitionsView::record(const std::vector<SetRepetitions>& sets)
{
    const auto done = m_context.book.history().perform(recordRepetitions(sets, m_context.clock));
    m_stack->setCurrentIndex(0);
    takeFocus();
    if (!done) return say(done.error().what);
    Q_EMIT said(sets.front().repetitions.empty()
                    ? tr("The repetitions were removed. Ctrl+Z brings them back.")
                    : tr("The repetitions stand with their sets. Ctrl+Z takes them back."));
}

}  // namespace steelyard
