#include "ui/pages/lifter/compare_view.h"

#include "ui/charts/everyday_spec.h"
#include "ui/format/format.h"
#include "ui/format/people.h"
#include "ui/pages/lifter/line_list_model.h"
#include "ui/pages/lifter/same_line.h"

#include <QtCore/QSignalBlocker>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QDateEdit>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QRadioButton>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kControlsWidth = 196;
constexpr std::size_t kTickedLifters = 6;  // more than that are hard to tell apart; anybody can be ticked

// Where the exercise is said elsewhere.
QString wayOf(const LineRecord& line)
{
    const QString detail = lineDetail(line);
    if (line.variant.value.name == asUsualName()) return detail.isEmpty() ? line.exercise.value.name : detail;
    return detail.isEmpty() ? line.variant.value.name : line.variant.value.name + QStringLiteral(" · ") + detail;
}

QString wholeName(const LineRecord& line)
{
    const QString detail = lineDetail(line);
    return detail.isEmpty() ? lineTitle(line) : lineTitle(line) + QStringLiteral(" · ") + detail;
}

}  // namespace

CompareView::CompareView(JobRunner& jobs, QString bookPath, QWidget* parent)
    : PanelsView(tr("Lines compared"), parent), m_jobs(jobs), m_bookPath(std::move(bookPath))
{
    addBeside(makeControls());
}

CompareView::~CompareView()
{
    m_job.cancel();
}

QWidget* CompareView::makeControls()
{
    auto* controls = new QWidget(this);
    controls->setFixedWidth(kControlsWidth);
    m_lines = new QRadioButton(tr("Li&nes of this lifter"), controls);
    m_bands = new QRadioButton(tr("This line by repetition&s"), controls);
    m_bands->setToolTip(
        tr("Sessions apart by the repetitions of their first working set: 1–6, 7–12, 13–20 and more than 20"));
    m_lifters = new QRadioButton(tr("This line &across lifters"), controls);
    m_lines->setChecked(true);
    m_list = new QListWidget(controls);
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setWordWrap(true);
    m_list->setSpacing(1);
    m_list->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setAccessibleName(tr("What is compared"));
    m_felt = new QCheckBox(tr("How the&y felt"), controls);
    m_felt->setToolTip(
        tr("Ratings of two to four lines from days as they came: no trial, because nobody drew lots. T sets one up."));
    m_common = new QCheckBox(tr("Where all have beg&un"), controls);
    m_common->setChecked(true);
    m_start = new QDateEdit(controls);
    m_start->setDisplayFormat(format::datePattern());
    m_start->setCalendarPopup(true);
    m_start->setEnabled(false);
    m_start->setAccessibleName(tr("Compared from"));
    auto* all = new QVBoxLayout(controls);
    all->setContentsMargins({});
    all->setSpacing(4);
    all->addWidget(m_lines);
    all->addWidget(m_bands);
    all->addWidget(m_lifters);
    all->addWidget(m_list, 1);
    all->addWidget(m_felt);
    all->addWidget(m_common);
    all->addWidget(m_start);
    for (QRadioButton* what : {m_lines, m_bands, m_lifters})
        connect(what, &QRadioButton::toggled, this, [this](bool chosen) {
            if (chosen) fill();
        });
    connect(m_list, &QListWidget::itemChanged, this, &CompareView::draw);
    connect(m_start, &QDateEdit::dateChanged, this, &CompareView::draw);
    connect(m_felt, &QCheckBox::toggled, this, &CompareView::draw);
    connect(m_common, &QCheckBox::toggled, this, [this](bool common) {
        m_start->setEnabled(!common);
        draw();
    });
    return controls;
}

void CompareView::show(const ShownLine& shown)
{
    // Another stretch of time keeps what was ticked.
    const bool same = m_shown.lifter == shown.lifter && m_shown.line == shown.line && !m_offered.empty();
    m_shown = shown;
    if (same)
        draw();
    else
        fill();
}

void CompareView::leave()
{
    if (m_job.isRunning()) m_offered.clear();  // read again when the view is opened again
    m_job.cancel();
    ++m_asked;
}

void CompareView::fill()
{
    m_job.cancel();
    ++m_asked;
    {
        const QSignalBlocker quiet(m_list);
        m_list->clear();
        m_offered.clear();
        m_offeredLines.clear();
        m_split.reset();
    }
    if (!m_shown.lifter) return;
    m_felt->setEnabled(!m_lifters->isChecked());
    if (m_lines->isChecked())
        fillOwnLines();
    else if (m_bands->isChecked())
        readBands();
    else
        readLifters();
}

void CompareView::offer(ComparedLine line, const QString& inList, bool ticked)
{
    const QSignalBlocker quiet(m_list);
    auto* item = new QListWidgetItem(inList, m_list);
    item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
    item->setCheckState(ticked ? Qt::Checked : Qt::Unchecked);
    item->setToolTip(format::plainToolTip(inList));
    m_offered.push_back(std::move(line));
}

void CompareView::fillOwnLines()
{
    const Id<Exercise> exercise = m_shown.record().exercise.id;
    const auto& lines = m_shown.lifter->log.lines;
    // Those of the same exercise on top, named by what tells them apart.
    for (const bool related : {true, false})
        for (std::size_t i = 0; i < lines.size(); ++i)
            if ((lines[i].exercise.id == exercise) == related && !lines[i].exposures.empty()) {
                m_offeredLines.push_back(lines[i].id);
                offer({related ? wayOf(lines[i]) : wholeName(lines[i]), m_shown.lifter->readings[i].trend},
                      related ? wayOf(lines[i]) : wholeName(lines[i]), related);
            }
    draw();
}

void CompareView::readLifters()
{
    const int asked = m_asked;
    showSpec({}, tr("Reading the lifters who train this line…"));
    m_job = m_jobs.run(
        this, tr("Reading one line of several lifters"),
        [path = m_bookPath, line = m_shown.record().line, today = m_shown.today](const Progress& progress) {
            return readSameLine(path, line, today, progress);
        },
        [this, asked](Result<std::vector<LifterOnLine>> answer) {
            if (asked != m_asked) return;
            if (!answer) {
                say(answer.error().what);
                return;
            }
            const auto self = m_shown.lifter->log.athlete.id;
            std::ranges::stable_partition(*answer, [&](const LifterOnLine& one) { return one.athlete == self; });
            for (LifterOnLine& one : *answer) {
                const QString name = format::person(one.compared.name);
                one.compared.name = name;
                offer(std::move(one.compared), name, m_offered.size() < kTickedLifters);
            }
            draw();
        });
}

void CompareView::readBands()
{
    struct Read {
        BandSplit split;
        std::vector<LineReading> readings;
    };
    const int asked = m_asked;
    showSpec({}, tr("Taking the line apart…"));
    m_job = m_jobs.run(
        this, tr("Taking a line apart by repetitions"),
        [lifter = m_shown.lifter, line = m_shown.line](const Progress&) -> Result<Read> {
            BandSplit split = splitByBand(lifter->log, line);
            auto readings = lifter->engine->readAll(split.log, lifter->asOf);
            return Read{std::move(split), std::move(readings)};
        },
        [this, asked](Result<Read> read) {
            if (asked != m_asked || !read) return;
            for (std::size_t i = 0; i < read->readings.size(); ++i) {
                const auto sessions = static_cast<int>(read->split.log.lines[i].exposures.size());
                const QString name = tr("%1 repetitions").arg(usualBandText(read->split.bands[i]));
                m_offeredLines.push_back(read->split.log.lines[i].id);
                offer({name, std::move(read->readings[i].trend)}, tr("%1, %n session(s)", nullptr, sessions).arg(name),
                      true);
            }
            m_split = std::move(read->split.log);
            draw();
        });
}

std::vector<ComparedLine> CompareView::ticked() const
{
    std::vector<ComparedLine> chosen;
    for (int row = 0; row < m_list->count(); ++row)
        if (m_list->item(row)->checkState() == Qt::Checked) chosen.push_back(m_offered[static_cast<std::size_t>(row)]);
    return chosen;
}

void CompareView::showEveryday()
{
    std::vector<Id<LiftLine>> lines;
    std::vector<QString> names;
    for (int row = 0; row < m_list->count(); ++row)
        if (m_list->item(row)->checkState() == Qt::Checked) {
            lines.push_back(m_offeredLines[static_cast<std::size_t>(row)]);
            names.push_back(m_offered[static_cast<std::size_t>(row)].name);
        }
    const QDate first = m_common->isChecked() ? m_shown.from().value_or(QDate(1900, 1, 1)) : m_start->date();
    const EverydayComparison found =
        compareEveryday(m_split ? *m_split : m_shown.lifter->log, lines, {first, m_shown.today}, {}, format::wording());
    PanelsSpec spec = buildEveryday(found, names, QLocale());
    setFootnote(everydayWords(found));
    showSpec(std::move(spec), found.sentence);
    Q_EMIT changed();
}

QString CompareView::words(const PanelsSpec& spec) const
{
    QString words = spec.summary;
    if (m_lifters->isChecked() && m_offered.size() == 1)
        words += u' ' + tr("Nobody else trains this variant with this grip to this rep standard.");
    if (m_bands->isChecked() && m_offered.size() == 1)
        words += u' ' + tr("All its sessions were in one band of repetitions, so there is nothing to compare.");
    words += u' ';
    if (m_lifters->isChecked())
        words +=
            tr("Comparing lifters says nothing of who is better: the pace that can be expected differs with "
               "experience, age and what each trains for.");
    else if (m_bands->isChecked())
        words +=
            tr("Sessions by the repetitions of their first working set, each band held against itself. No band is "
               "best for everyone, and nobody drew lots: what changed along with the repetitions shows here, too.");
    else
        words += tr("Each line is held against itself; light bands: 90 % intervals of its capacity.");
    return words.trimmed();
}

void CompareView::draw()
{
    if (m_offered.empty()) return;
    if (m_felt->isChecked() && !m_lifters->isChecked()) return showEveryday();
    const auto chosen = ticked();
    const auto common = commonStart(chosen, m_shown.from());
    if (m_common->isChecked() && common) {
        const QSignalBlocker quiet(m_start);
        m_start->setDate(*common);
    }
    PanelsSpec spec =
        buildCompareSpec(chosen, m_common->isChecked() ? common : std::optional(m_start->date()), optionsFor(m_shown));
    setFootnote(words(spec));
    const QString otherwise =
        chosen.empty()
            ? tr("Tick at the left what should be compared.")
            : tr("None of the ticked lines has a capacity to start from in this stretch of time. %1").arg(spec.summary);
    showSpec(std::move(spec), otherwise);
    Q_EMIT changed();
}

}  // namespace steelyard
