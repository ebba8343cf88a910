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
    m_lifters = new QRadioButton(tr("This line &across lifters"), controls);
    m_lines->setChecked(true);
    m_list = new QListWidget(controls);
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setWordWrap(true);
    m_list->setSpacing(1);
    m_list->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setAccessibleName(tr("What is compared"));
    m_felt = new QCheckBox(tr("How they &felt"), controls);
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
    all->addWidget(m_lifters);
    all->addWidget(m_list, 1);
    all->addWidget(m_felt);
    all->addWidget(m_common);
    all->addWidget(m_start);
    connect(m_lines, &QRadioButton::toggled, this, &CompareView::fill);
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
    }
    if (!m_shown.lifter) return;
    m_felt->setEnabled(m_lines->isChecked());
    if (m_lines->isChecked())
        fillOwnLines();
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
        compareEveryday(m_shown.lifter->log, lines, {first, m_shown.today}, {}, format::wording());
    PanelsSpec spec = buildEveryday(found, names, QLocale());
    setFootnote(everydayWords(found));
    showSpec(std::move(spec), found.sentence);
    Q_EMIT changed();
}

void CompareView::draw()
{
    if (m_offered.empty()) return;
    if (m_felt->isChecked() && m_lines->isChecked()) return showEveryday();
    const auto chosen = ticked();
    const auto common = commonStart(chosen, m_shown.from());
    if (m_common->isChecked() && common) {
        const QSignalBlocker quiet(m_start);
        m_start->setDate(*common);
    }
    PanelsSpec spec =
        buildCompareSpec(chosen, m_common->isChecked() ? common : std::optional(m_start->date()), optionsFor(m_shown));
    const bool lifters = m_lifters->isChecked();
    QString words = spec.summary;
    if (lifters && m_offered.size() == 1)
        words += u' ' + tr("Nobody else trains this variant with this grip to this rep standard.");
    words += u' '
             + (lifters ? tr("Comparing lifters says nothing of who is better: the pace that can be expected differs "
                             "with experience, age and what each trains for.")
                        : tr("Each line is held against itself; light bands: 90 % intervals of its capacity."));
    setFootnote(words.trimmed());
    const QString otherwise =
        chosen.empty()
            ? tr("Tick at the left what should be compared.")
            : tr("None of the ticked lines has a capacity to start from in this stretch of time. %1").arg(spec.summary);
    showSpec(std::move(spec), otherwise);
    Q_EMIT changed();
}

}  // namespace steelyard
