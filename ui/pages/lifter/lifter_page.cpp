#include "ui/pages/lifter/lifter_page.h"

#include "core/book/book.h"
#include "core/edits/edits.h"
#include "ui/charts/chart_table_model.h"
#include "ui/charts/progress_chart.h"
#include "ui/format/format.h"
#include "ui/pages/lifter/line_list_model.h"
#include "ui/pages/lifter/line_numbers.h"
#include "ui/pages/lifter/session_panel.h"
#include "ui/pages/lifter/set_words.h"

#include <QtGui/QClipboard>
#include <QtGui/QGuiApplication>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QGridLayout>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListView>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QSplitter>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QTableView>

#include <algorithm>

namespace steelyard {
namespace {

QLabel* textLabel(QWidget* parent, double size = 1.0, bool bold = false, bool quiet = false)
{
    auto* label = new QLabel(parent);
    label->setTextFormat(Qt::PlainText);
    QFont font = label->font();
    font.setPointSizeF(font.pointSizeF() * size);
    font.setBold(bold);
    label->setFont(font);
    if (quiet) label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

}  // namespace

LifterPage::LifterPage(const UiContext& context, QWidget* parent)
    : Page(parent), m_context(context), m_lines(new LineListModel(this)), m_data(new ChartTableModel(this))
{
    m_states = new QStackedWidget(this);
    m_hint = textLabel(this, 1.1, false, true);
    m_hint->setAlignment(Qt::AlignCenter);
    m_hint->setWordWrap(true);
    m_hint->setMargin(40);
    auto* split = new QSplitter(Qt::Horizontal, this);
    split->addWidget(makeLinePart());
    split->addWidget(makeMainPart());
    split->setStretchFactor(1, 1);
    split->setSizes({230, 900});
    split->setChildrenCollapsible(false);
    m_states->addWidget(m_hint);
    m_states->addWidget(split);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->addWidget(m_states);
    hint(tr("Choose a lifter in the roster to see how each of their lifts is going."));
}

LifterPage::~LifterPage()
{
    m_job.cancel();
}

QWidget* LifterPage::makeLinePart()
{
    m_list = new QListView(this);
    m_list->setModel(m_lines);
    m_list->setItemDelegate(new LineDelegate(m_list));
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setMinimumWidth(190);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    m_list->setAccessibleName(tr("Lift lines"));
    connect(m_list->selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& now) {
        if (const int line = m_lines->lineAt(now); line >= 0) chooseLine(line);
    });
    return m_list;
}

QLayout* LifterPage::makeHeader()
{
    m_name = textLabel(this, 1.25, true);
    m_verdict = textLabel(this, 1.25, true);
    m_why = textLabel(this);
    m_why->setWordWrap(true);
    auto* top = new QHBoxLayout;
    top->addWidget(m_name);
    top->addStretch(1);
    top->addWidget(m_verdict);
    auto* numbers = new QGridLayout;
    numbers->setHorizontalSpacing(32);
    numbers->setVerticalSpacing(0);
    for (int i = 0; i < 3; ++i) {
        auto& cell = m_numbers[static_cast<std::size_t>(i)];
        cell = {textLabel(this, 0.9, false, true), textLabel(this, 1.15, true), textLabel(this, 0.9, false, true)};
        for (int row = 0; row < 3; ++row) numbers->addWidget(cell[static_cast<std::size_t>(row)], row, i);
    }
    numbers->setColumnStretch(3, 1);
    auto* header = new QVBoxLayout;
    header->setSpacing(4);
    header->addLayout(top);
    header->addWidget(m_why);
    header->addLayout(numbers);
    return header;
}

QWidget* LifterPage::makeChartPart()
{
    m_chart = new ProgressChart(this);
    m_note = textLabel(this, 0.95, false, true);
    m_note->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_note->setWordWrap(true);
    m_note->setFixedWidth(190);
    auto* chartSide = new QWidget(this);
    auto* beside = new QHBoxLayout(chartSide);
    beside->setContentsMargins({});
    beside->addWidget(m_chart, 1);
    beside->addWidget(m_note);
    auto* table = new QTableView(this);
    table->setModel(m_data);
    table->verticalHeader()->hide();
    table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table->setShowGrid(false);
    table->setFrameShape(QFrame::NoFrame);
    table->setAccessibleName(tr("Data of the chart"));
    m_views = new QStackedWidget(this);
    m_views->addWidget(chartSide);
    m_views->addWidget(table);
    connect(m_chart, &ProgressChart::pointedAt, this, &LifterPage::showNote);
    connect(m_chart, &ProgressChart::selectedSession, this, &LifterPage::showSession);
    connect(m_chart, &ProgressChart::lineStepped, this, &LifterPage::stepLine);
    return m_views;
}

QWidget* LifterPage::makeMainPart()
{
    auto* main = new QWidget(this);
    auto* all = new QVBoxLayout(main);
    all->setContentsMargins(14, 10, 12, 8);
    all->setSpacing(8);
    all->addLayout(makeHeader());

    m_stretch = new QComboBox(this);
    m_stretch->setAccessibleName(tr("Stretch of time"));
    for (const auto& [text, months] :
         {std::pair(tr("All time"), 0), {tr("Last 6 months"), 6}, {tr("Last 12 months"), 12}, {tr("Last 2 years"), 24}})
        m_stretch->addItem(text, months);
    m_stretch->setCurrentIndex(2);
    m_showData = new QPushButton(tr("Show &data"), this);
    m_showData->setCheckable(true);
    m_copy = new QPushButton(tr("&Copy"), this);
    m_copy->setToolTip(tr("Copy the data of the chart as a table"));
    auto* tools = new QHBoxLayout;
    tools->addWidget(m_stretch);
    tools->addStretch(1);
    tools->addWidget(m_showData);
    tools->addWidget(m_copy);

    auto* upper = new QWidget(this);
    auto* upperLayout = new QVBoxLayout(upper);
    upperLayout->setContentsMargins({});
    upperLayout->addLayout(tools);
    upperLayout->addWidget(makeChartPart(), 1);
    m_sessionPanel =
        new SessionPanel([this](Id<SetEntry> id) { return m_context.book.logbook().replacedSets(id); }, this);
    auto* split = new QSplitter(Qt::Vertical, this);
    split->addWidget(upper);
    split->addWidget(m_sessionPanel);
    split->setStretchFactor(0, 1);  // a taller window is for the chart
    split->setStretchFactor(1, 0);
    split->setSizes({420, 170});
    split->setChildrenCollapsible(false);
    m_sessionPanel->setMinimumHeight(120);
    all->addWidget(split, 1);

    connect(m_stretch, &QComboBox::currentIndexChanged, this, &LifterPage::redrawChart);
    connect(m_showData, &QPushButton::toggled, this, [this](bool on) { m_views->setCurrentIndex(on ? 1 : 0); });
    connect(m_copy, &QPushButton::clicked, this, [this] { perform(QStringLiteral("lifter.copy")); });
    connect(m_sessionPanel, &SessionPanel::changeWanted, this, &LifterPage::correct);
    return main;
}

void LifterPage::showAthlete(std::optional<Id<Athlete>> athlete)
{
    if (athlete == m_athlete) return;
    m_athlete = athlete;
    m_wantedLine.reset();
    m_session = QDate();
    if (!athlete) {
        m_job.cancel();
        ++m_asked;
        m_line = -1;
        m_lines->setReading(nullptr);
        m_reading.reset();
        hint(tr("Choose a lifter in the roster to see how each of their lifts is going."));
        return;
    }
    read();
}

void LifterPage::showLine(Id<LiftLine> line)
{
    m_wantedLine = line;
    if (const int row = m_lines->rowOf(line); row >= 0) m_list->setCurrentIndex(m_lines->index(row));
}

void LifterPage::bookChanged(const Changes& changes)
{
    if (!m_athlete) return;
    if (changes.athletes.contains(*m_athlete) || changes.library || changes.settings || changes.roster) read();
}

void LifterPage::takeFocus()
{
    if (m_line >= 0)
        m_chart->setFocus();
    else
        setFocus();
}

void LifterPage::read()
{
    m_job.cancel();
    const int asked = ++m_asked;
    if (!m_reading) hint(tr("Reading the record…"));
    m_job = m_context.jobs.run(
        this, tr("Reading a lifter’s record"),
        [path = m_context.book.path(), athlete = *m_athlete, today = m_context.clock.today()](
            const Progress& progress) { return readLifter(path, athlete, today, progress); },
        [this, asked](Result<LifterReading> answer) {
            if (asked == m_asked) take(std::move(answer));
        });
}

void LifterPage::take(Result<LifterReading> answer)
{
    m_lines->setReading(nullptr);
    m_line = -1;
    if (!answer) {
        m_reading.reset();
        hint(tr("The record could not be read. %1").arg(answer.error().what));
        return;
    }
    m_reading = std::make_unique<LifterReading>(std::move(*answer));
    m_lines->setReading(m_reading.get());
    if (m_lines->rowCount() == 0) {
        hint(tr("Nothing is logged for %1 yet. Import a logbook, or print a sheet for the next session and key in what "
                "was "
                "lifted. From the first session on, every lift has its line here.")
                 .arg(m_reading->log.athlete.value.name));
        return;
    }
    m_states->setCurrentIndex(1);
    int row = m_wantedLine ? m_lines->rowOf(*m_wantedLine) : -1;
    if (row < 0) {
        // The line that was trained last; among equals the one with the most sessions.
        const auto newest = std::ranges::max_element(m_reading->log.lines, {}, [](const LineRecord& line) {
            return std::pair(line.exposures.empty() ? QDate(1, 1, 1) : line.exposures.back().date,
                             line.exposures.size());
        });
        row = m_lines->rowOf(newest->id);
    }
    m_list->setCurrentIndex(m_lines->index(row));
}

void LifterPage::hint(const QString& text)
{
    m_hint->setText(text);
    m_states->setCurrentIndex(0);
    Q_EMIT actionsChanged();
}

const LineRecord* LifterPage::record() const
{
    return m_reading && m_line >= 0 ? &m_reading->log.lines[static_cast<std::size_t>(m_line)] : nullptr;
}

const LineReading* LifterPage::reading() const
{
    return m_reading && m_line >= 0 ? &m_reading->readings[static_cast<std::size_t>(m_line)] : nullptr;
}

void LifterPage::chooseLine(int line)
{
    m_line = line;
    const LineRecord& shown = *record();
    const LineReading& read = *reading();
    if (m_wantedLine != shown.id) m_session = m_wantedLine ? QDate() : m_session;
    m_wantedLine = shown.id;
    const QString detail = lineDetail(shown);
    m_name->setText(detail.isEmpty() ? lineTitle(shown) : lineTitle(shown) + QStringLiteral(" · ") + detail);
    m_verdict->setText(format::verdictShape(read.verdict) + u' ' + format::verdictWord(read.verdict));
    m_why->setText(read.why);
    const auto numbers = lineNumbers(read, m_reading->log.athlete.value.unit);
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        m_numbers[i][0]->setText(numbers[i].title);
        m_numbers[i][1]->setText(numbers[i].value);
        m_numbers[i][2]->setText(numbers[i].detail);
    }
    m_sessionPanel->showDecisions(m_reading->log.decisions, shown.id);
    redrawChart();
    Q_EMIT actionsChanged();
}

void LifterPage::redrawChart()
{
    if (!record()) return;
    ProgressOptions options;
    options.unit = m_reading->log.athlete.value.unit;
    options.asOf = m_context.clock.today();
    const QDate last = record()->exposures.back().date;
    // A line that rested for long is shown to its end: the stretch is counted back from its last session.
    if (const int months = m_stretch->currentData().toInt(); months > 0) options.from = last.addMonths(-months);
    if (last.daysTo(options.asOf) > 120) options.asOf = last;
    ProgressSpec spec = buildProgressSpec(
        {*reading(), m_reading->log.blocks, m_reading->log.decisions, record()->id, lineTitle(*record())}, options);
    m_data->setTable(spec.table);
    m_chart->setSpec(std::move(spec));
    const auto& exposures = record()->exposures;
    auto at = std::ranges::find(exposures, m_session, &Exposure::date);
    if (at == exposures.end()) at = std::prev(exposures.end());
    const auto exposure = static_cast<int>(at - exposures.begin());
    m_chart->select(exposure);
    showNote(exposure);
    showSession(exposure);
}

void LifterPage::showNote(int exposure)
{
    const LineRecord* shown = record();
    const bool there = shown && exposure >= 0 && exposure < static_cast<int>(shown->exposures.size());
    m_note->setText(there ? sessionWords(shown->exposures[static_cast<std::size_t>(exposure)]) : QString());
}

void LifterPage::showSession(int exposure)
{
    const LineRecord* shown = record();
    if (!shown || exposure < 0 || exposure >= static_cast<int>(shown->exposures.size())) {
        m_sessionPanel->showSession(nullptr, false);
        return;
    }
    const Exposure& session = shown->exposures[static_cast<std::size_t>(exposure)];
    m_session = session.date;
    m_sessionPanel->showSession(&session, !m_context.book.isReadOnly());
}

void LifterPage::stepLine(int by)
{
    const int row = m_lines->step(m_list->currentIndex().row(), by);
    m_list->setCurrentIndex(m_lines->index(row));
}

void LifterPage::correct(Id<SetEntry> id, const SetEntry& set)
{
    const auto changed = m_context.book.history().perform(changeSet(id, set, m_context.clock));
    if (!changed)
        m_sessionPanel->say(changed.error().what);
    else
        Q_EMIT said(tr("The set was changed; what it said before is kept."));
}

bool LifterPage::canPerform(const QString& action) const
{
    return m_line >= 0 && action.startsWith(QStringLiteral("lifter."));
}

void LifterPage::perform(const QString& action)
{
    if (!record()) return;
    if (action == QStringLiteral("lifter.nextLine")) stepLine(1);
    if (action == QStringLiteral("lifter.previousLine")) stepLine(-1);
    if (action == QStringLiteral("lifter.chart")) m_showData->toggle();
    if (action == QStringLiteral("lifter.copy")) {
        QGuiApplication::clipboard()->setText(toTabSeparated(m_chart->spec().table));
        Q_EMIT said(tr("The data of the chart is on the clipboard."));
    }
}

}  // namespace steelyard
