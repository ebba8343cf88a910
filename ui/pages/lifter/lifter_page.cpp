#include "ui/pages/lifter/lifter_page.h"

#include "core/book/book.h"
#include "core/edits/edits.h"
#include "ui/charts/chart_table_model.h"
#include "ui/charts/progress_chart.h"
#include "ui/format/format.h"
#include "ui/pages/lifter/line_header.h"
#include "ui/pages/lifter/line_list_model.h"
#include "ui/pages/lifter/session_panel.h"
#include "ui/pages/lifter/set_words.h"
#include "ui/pages/lifter/why_view.h"

#include <QtGui/QClipboard>
#include <QtGui/QGuiApplication>
#include <QtGui/QShortcut>
#include <QtWidgets/QApplication>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListView>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QSplitter>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QTableView>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

enum ViewOfLine { ChartView, DataView, WhyOfLine };
constexpr int kRestingDays = 120;  // a line that rested for longer is shown to its end; nothing is expected of it

QLabel* quietLabel(QWidget* parent, double size)
{
    auto* label = new QLabel(parent);
    label->setTextFormat(Qt::PlainText);
    QFont font = label->font();
    font.setPointSizeF(font.pointSizeF() * size);
    label->setFont(font);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

}  // namespace

LifterPage::LifterPage(const UiContext& context, QWidget* parent)
    : Page(parent), m_context(context), m_lines(new LineListModel(this)), m_data(new ChartTableModel(this))
{
    m_states = new QStackedWidget(this);
    m_hint = quietLabel(this, 1.1);
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
    m_whyJob.cancel();
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

QWidget* LifterPage::makeChartPart()
{
    m_chart = new ProgressChart(this);
    m_note = quietLabel(this, 0.95);
    m_note->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_note->setWordWrap(true);
    m_note->setFixedWidth(190);
    auto* chartSide = new QWidget(this);
    auto* beside = new QHBoxLayout(chartSide);
    beside->setContentsMargins({});
    beside->addWidget(m_chart, 1);
    beside->addWidget(m_note);
    m_views = new QStackedWidget(this);
    m_views->addWidget(chartSide);
    m_views->addWidget(makeDataTable());
    m_views->addWidget(makeWhyView());
    connect(m_chart, &ProgressChart::pointedAt, this, &LifterPage::showNote);
    connect(m_chart, &ProgressChart::selectedSession, this, &LifterPage::showSession);
    connect(m_chart, &ProgressChart::lineStepped, this, &LifterPage::stepLine);
    return m_views;
}

QWidget* LifterPage::makeDataTable()
{
    auto* table = new QTableView(this);
    table->setModel(m_data);
    table->verticalHeader()->hide();
    table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table->setShowGrid(false);
    table->setFrameShape(QFrame::NoFrame);
    table->setAccessibleName(tr("Data of the chart"));
    return table;
}

QWidget* LifterPage::makeWhyView()
{
    m_whyView = new WhyView(this);
    connect(m_whyView, &WhyView::sessionLookedAt, this, &LifterPage::showSession);
    connect(m_whyView, &WhyView::sessionWanted, this, [this](int exposure) {
        openWhy(false);
        m_chart->select(exposure);
        m_chart->setFocus();
    });
    m_back = new QShortcut(Qt::Key_Escape, this);
    m_back->setContext(Qt::WidgetWithChildrenShortcut);
    m_back->setEnabled(false);
    connect(m_back, &QShortcut::activated, this, [this] { openWhy(false); });
    return m_whyView;
}

QLayout* LifterPage::makeTools()
{
    m_stretch = new QComboBox(this);
    m_stretch->setAccessibleName(tr("Stretch of time"));
    for (const auto& [text, months] :
         {std::pair(tr("All time"), 0), {tr("Last 6 months"), 6}, {tr("Last 12 months"), 12}, {tr("Last 2 years"), 24}})
        m_stretch->addItem(text, months);
    m_stretch->setCurrentIndex(2);
    m_showWhy = new QPushButton(tr("Wh&y"), this);
    m_showWhy->setCheckable(true);
    m_showWhy->setToolTip(tr("The sets that carried the verdict (Y)"));
    m_showData = new QPushButton(tr("Show &data"), this);
    m_showData->setCheckable(true);
    m_copy = new QPushButton(tr("&Copy"), this);
    m_copy->setToolTip(tr("Copy the data of the chart as a table"));
    auto* tools = new QHBoxLayout;
    tools->addWidget(m_stretch);
    tools->addStretch(1);
    tools->addWidget(m_showWhy);
    tools->addWidget(m_showData);
    tools->addWidget(m_copy);
    connect(m_stretch, &QComboBox::currentIndexChanged, this, &LifterPage::redrawChart);
    connect(m_showWhy, &QPushButton::clicked, this, &LifterPage::openWhy);
    connect(m_showData, &QPushButton::clicked, this, [this](bool on) { showView(on ? DataView : ChartView); });
    connect(m_copy, &QPushButton::clicked, this, [this] { perform(QStringLiteral("lifter.copy")); });
    return tools;
}

QWidget* LifterPage::makeMainPart()
{
    auto* main = new QWidget(this);
    auto* all = new QVBoxLayout(main);
    all->setContentsMargins(14, 10, 12, 8);
    all->setSpacing(8);
    m_header = new LineHeader(this);
    all->addWidget(m_header);
    auto* upper = new QWidget(this);
    auto* upperLayout = new QVBoxLayout(upper);
    upperLayout->setContentsMargins({});
    upperLayout->addLayout(makeTools());
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
    if (!isVisible()) openWhy(false);  // who comes from another page comes for the chart
    if (const int row = m_lines->rowOf(line); row >= 0) m_list->setCurrentIndex(m_lines->index(row));
}

void LifterPage::bookChanged(const Changes& changes)
{
    if (!m_athlete) return;
    if (changes.athletes.contains(*m_athlete) || changes.library || changes.settings || changes.roster) read();
}

void LifterPage::takeFocus()
{
    if (m_line >= 0 && m_views->currentIndex() == WhyOfLine)
        m_whyView->takeFocus();
    else if (m_line >= 0)
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
    m_reading = std::make_shared<const LifterReading>(std::move(*answer));
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
    if (std::exchange(m_whyWanted, false)) openWhy(true);
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
    if (m_wantedLine != shown.id) m_session = m_wantedLine ? QDate() : m_session;
    m_wantedLine = shown.id;
    const QString detail = lineDetail(shown);
    m_header->showLine(detail.isEmpty() ? lineTitle(shown) : lineTitle(shown) + QStringLiteral(" · ") + detail,
                       *reading(), m_reading->log.athlete.value.unit);
    m_sessionPanel->showDecisions(m_reading->log.decisions, shown.id);
    redrawChart();
    if (m_views->currentIndex() == WhyOfLine) explain();
    Q_EMIT actionsChanged();
}

void LifterPage::redrawChart()
{
    if (!record()) return;
    ProgressOptions options;
    options.unit = m_reading->log.athlete.value.unit;
    options.asOf = m_context.clock.today();
    const QDate last = record()->exposures.back().date;
    // The stretch is counted back from the line's last session.
    if (const int months = m_stretch->currentData().toInt(); months > 0) options.from = last.addMonths(-months);
    if (last.daysTo(options.asOf) > kRestingDays) {
        options.asOf = last;
        options.nextSet = false;
    }
    ProgressSpec spec = buildProgressSpec(
        {*reading(), m_reading->log.blocks, m_reading->log.decisions, record()->id, lineTitle(*record())}, options);
    m_data->setTable(spec.table);
    m_chart->setSpec(std::move(spec));
    const int exposure = chosenExposure();
    m_chart->select(exposure);
    showNote(exposure);
    showSession(exposure);
}

int LifterPage::chosenExposure() const
{
    const auto& exposures = record()->exposures;
    const auto at = std::ranges::find(exposures, m_session, &Exposure::date);
    return static_cast<int>((at == exposures.end() ? std::prev(at) : at) - exposures.begin());
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

void LifterPage::showView(int view)
{
    m_views->setCurrentIndex(view);
    m_showData->setChecked(view == DataView);
    m_showWhy->setChecked(view == WhyOfLine);
    m_back->setEnabled(view == WhyOfLine);
}

void LifterPage::openWhy(bool open)
{
    const bool isOpen = m_views->currentIndex() == WhyOfLine;
    m_whyWanted = false;
    if (open == isOpen) return;
    if (open) {
        m_beforeWhy = QApplication::focusWidget();
        showView(WhyOfLine);
        explain();
        m_whyView->takeFocus();
        return;
    }
    m_whyJob.cancel();
    ++m_askedWhy;
    showView(ChartView);
    showSession(m_chart->selected());
    if (m_beforeWhy && m_beforeWhy->isVisible() && isAncestorOf(m_beforeWhy))
        m_beforeWhy->setFocus();
    else
        m_chart->setFocus();
}

void LifterPage::explain()
{
    m_whyJob.cancel();
    const int asked = ++m_askedWhy;
    m_whyView->showWaiting();
    m_whyJob = m_context.jobs.run(
        this, tr("Going through the sets of a line"),
        [lifter = m_reading, line = static_cast<std::size_t>(m_line)](const Progress&) {
            return explainLineOf(*lifter, line);
        },
        [this, asked](LineExplanation answer) {
            if (asked != m_askedWhy || !reading()) return;
            m_whyView->showExplanation(*reading(), std::move(answer), m_reading->thresholds);
            m_whyView->lookAt(chosenExposure());
        });
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
    if (action == QStringLiteral("lifter.why") && m_athlete && m_job.isRunning()) return true;
    return m_line >= 0 && action.startsWith(QStringLiteral("lifter."));
}

void LifterPage::perform(const QString& action)
{
    if (!record()) {
        m_whyWanted = action == QStringLiteral("lifter.why");
        return;
    }
    if (action == QStringLiteral("lifter.nextLine")) stepLine(1);
    if (action == QStringLiteral("lifter.previousLine")) stepLine(-1);
    if (action == QStringLiteral("lifter.why")) openWhy(m_views->currentIndex() != WhyOfLine);
    if (action == QStringLiteral("lifter.chart")) showView(m_views->currentIndex() == DataView ? ChartView : DataView);
    if (action == QStringLiteral("lifter.copy")) {
        QGuiApplication::clipboard()->setText(toTabSeparated(m_chart->spec().table));
        Q_EMIT said(tr("The data of the chart is on the clipboard."));
    }
}

}  // namespace steelyard
