#include "ui/pages/floor/floor_page.h"

#include "core/book/book.h"
#include "core/sheets/sheet_code.h"
#include "ui/format/format.h"
#include "ui/format/people.h"
#include "ui/pages/floor/keying_view.h"
#include "ui/pages/floor/rack_view.h"
#include "ui/pages/floor/sheet_field.h"
#include "ui/pages/floor/sheet_preview.h"
#include "ui/print/fonts.h"

#include <QtCore/QSignalBlocker>
#include <QtWidgets/QLabel>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QDateEdit>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QStackedWidget>

#include <algorithm>
#include <utility>

namespace steelyard {
namespace {

bool isKeyAction(const QString& action)
{
    return action.startsWith(QLatin1StringView("floor.key."));
}

}  // namespace

FloorPage::FloorPage(const UiContext& context, QWidget* parent) : Page(parent), m_context(context)
{
    if (!loadBundledFonts()) qWarning("The bundled fonts could not be read; sheets use another one.");
    build();
    m_rack = new RackView(context, this);
    connect(m_rack, &RackView::closed, this, &FloorPage::takeFocus);
}

FloorPage::~FloorPage()
{
    delete m_rack;  // the window would keep it longer than the book
}

void FloorPage::showEvent(QShowEvent* event)
{
    Page::showEvent(event);
    if (m_stale && !isKeying()) makeSheets();
}

bool FloorPage::isKeying() const
{
    return m_layers->currentWidget() == m_keying;
}

void FloorPage::hideEvent(QHideEvent* event)
{
    Page::hideEvent(event);
    if (m_rack && m_rack->isVisible()) m_rack->leave();
}

RackView* FloorPage::rack() const
{
    return m_rack;
}

void FloorPage::openRack()
{
    // Sheets of this day serve even while they are made anew.
    const bool ofThisDay = !m_sheets.empty() && m_sheets.front().sheet.date == m_date->date();
    const auto row = static_cast<std::size_t>(std::max(m_list->currentRow(), 0));
    const std::size_t sheet = row < m_rows.size() ? m_rows[row].sheet.value_or(0) : 0;
    m_rack->open(ofThisDay ? m_sheets : std::vector<DaySheet>(), sheet, m_date->date());
}

void FloorPage::showAthlete(std::optional<Id<Athlete>> athlete)
{
    const bool another = athlete != m_athlete;
    m_athlete = athlete;
    for (std::size_t row = 0; row < m_rows.size(); ++row)
        if (athlete && m_rows[row].athlete == *athlete) m_list->setCurrentRow(static_cast<int>(row));
    if (isKeying() && athlete && another) m_keying->open(*athlete, false);
}

void FloorPage::bookChanged(const Changes& changes)
{
    if (changes.athletes.empty() && !changes.roster && !changes.library) return;
    m_stale = true;
    if (m_rack->isVisible()) m_rack->bookChanged();
    if (isKeying()) {
        m_keying->reread();
        return;
    }
    if (isVisible()) makeSheets();
}

void FloorPage::takeFocus()
{
    if (isKeying())
        m_keying->takeFocus();
    else
        m_list->setFocus();
}

bool FloorPage::canPerform(const QString& action) const
{
    if (action == QLatin1StringView("floor.key.back")) return isKeying();
    if (action == QLatin1StringView("floor.code")) return true;
    if (isKeyAction(action)) return isKeying() && m_keying->canPerform(action);
    if (isKeying()) return false;
    if (action == QLatin1StringView("floor.key")) return currentRow() || m_athlete;
    if (action == QLatin1StringView("floor.print") || action == QLatin1StringView("floor.pdf"))
        return !chosenSheets().empty();
    if (action == QLatin1StringView("floor.rack")) return !m_sheets.empty();
    return action.startsWith(QLatin1StringView("floor."));
}

void FloorPage::perform(const QString& action)
{
    if (action == QLatin1StringView("floor.key")) return startKeying();
    if (action == QLatin1StringView("floor.key.back")) {
        if (m_field->goBack()) return;
        if (!m_keying->goBack()) stopKeying();
        return;
    }
    if (isKeyAction(action)) return m_keying->perform(action);
    if (action == QLatin1StringView("floor.code"))
        return m_field->ask([this](const QString& typed) { return openSheet(typed); });
    if (action == QLatin1StringView("floor.print")) print(false);
    if (action == QLatin1StringView("floor.pdf")) print(true);
    if (action == QLatin1StringView("floor.layout"))
        m_layout->setCurrentIndex((m_layout->currentIndex() + 1) % m_layout->count());
    if (action == QLatin1StringView("floor.rack")) openRack();
    if (action == QLatin1StringView("floor.today")) m_date->setDate(m_context.clock.today());
    if (action == QLatin1StringView("floor.previousDay")) m_date->setDate(m_date->date().addDays(-1));
    if (action == QLatin1StringView("floor.nextDay")) m_date->setDate(m_date->date().addDays(1));
}

void FloorPage::makeSheets()
{
    m_job.cancel();
    m_stale = true;
    say(tr("Making the sheets…"));
    m_preview->setHint({});
    const DaySheetsRequest request{m_date->date(), 1, std::nullopt, m_others->isChecked()};
    m_job = m_context.jobs.run(
        this, tr("Making the sheets"),
        [path = m_context.book.path(), request, layout = layoutOfPaper()](const Progress& progress) {
            return readFloorDay(path, request, layout, progress);
        },
        [this, date = request.from](Result<FloorDay> day) {
            if (date == m_date->date()) take(std::move(day));
        });
}

void FloorPage::take(Result<FloorDay> day)
{
    if (!day && day.error().code == ErrorCode::Cancelled) return;
    m_stale = false;
    QString hint = tr(
        "Nothing is planned for this day, and nobody trained on this weekday in two of the last "
        "four weeks. Choose another day ([ and ]), or show those not expected as well. K keys a session of the lifter "
        "chosen in the roster all the same.");
    if (!day) hint = day.error().what;
    const bool made = day.has_value();
    m_sheets = made ? std::move(day->sheets) : std::vector<DaySheet>();
    m_week = made ? std::move(day->week) : std::vector<DaySheet>();
    m_gyms = made ? std::move(day->gyms) : std::vector<Row<Gym>>();
    makeRows(made ? day->keyed : std::map<Id<Athlete>, int>());
    fillList();
    m_preview->setHint(hint);
    if (!made)
        say(tr("The sheets could not be made."));
    else if (m_sheets.empty())
        say(tr("Nobody is expected that day."));
    else
        say(tr("%n sheet(s). Ticked ones are printed.", nullptr, static_cast<int>(m_sheets.size())));
    if (const auto wanted = std::exchange(m_toKey, std::nullopt)) startKeyingOf(*wanted);
}

// Those with a sheet; and, where everybody is wanted, those for whom none can be made, because they can be keyed all the same.
void FloorPage::makeRows(const std::map<Id<Athlete>, int>& keyed)
{
    const auto setsOf = [&](Id<Athlete> athlete) {
        const auto found = keyed.find(athlete);
        return found == keyed.end() ? 0 : found->second;
    };
    m_rows.clear();
    for (std::size_t i = 0; i < m_sheets.size(); ++i)
        m_rows.push_back({m_sheets[i].athlete, m_sheets[i].sheet.athlete, i, setsOf(m_sheets[i].athlete)});
    const auto everybody = m_context.book.athletes().all();
    if (!everybody) return;
    for (const auto& row : *everybody) {
        const bool there = std::ranges::find(m_rows, row.id, &DayRow::athlete) != m_rows.end();
        const int sets = setsOf(row.id);
        if (there || row.value.archived || (!m_others->isChecked() && sets == 0)) continue;
        m_rows.push_back({row.id, row.value.name, std::nullopt, sets});
    }
}

QString FloorPage::rowText(const DayRow& row) const
{
    QStringList parts{format::person(row.name)};
    if (row.sheet) {
        const DaySheet& day = m_sheets[*row.sheet];
        if (row.keyed == 0) parts += tr("%n exercise(s)", nullptr, static_cast<int>(day.sheet.exercises.size()));
        if (day.sheet.source == SheetSource::PlannedDay) parts += tr("planned");
        if (!day.expected) parts += tr("not expected");
    } else {
        parts += tr("no sheet");
    }
    if (row.keyed > 0) parts += tr("%n set(s) keyed", nullptr, row.keyed);
    return parts.join(QStringLiteral(" · "));
}

void FloorPage::fillList()
{
    const QSignalBlocker quiet(m_list);
    m_list->clear();
    int current = 0;
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        auto* item = new QListWidgetItem(rowText(m_rows[i]), m_list);
        item->setToolTip(format::plainToolTip(item->text()));
        if (m_rows[i].sheet) {
            item->setFlags(item->flags() | Qt::ItemIsUserCheckable);
            item->setCheckState(m_sheets[*m_rows[i].sheet].expected ? Qt::Checked : Qt::Unchecked);
        }
        if (m_athlete && m_rows[i].athlete == *m_athlete) current = static_cast<int>(i);
    }
    if (!m_rows.empty()) m_list->setCurrentRow(current);
    showPreview();
    Q_EMIT actionsChanged();
}

const FloorPage::DayRow* FloorPage::currentRow() const
{
    const int row = m_list->currentRow();
    return !m_stale && row >= 0 && row < std::ssize(m_rows) ? &m_rows[static_cast<std::size_t>(row)] : nullptr;
}

void FloorPage::startKeying()
{
    const DayRow* row = currentRow();
    if (row || m_athlete) startKeyingOf(row ? row->athlete : *m_athlete);
}

void FloorPage::startKeyingOf(Id<Athlete> athlete)
{
    std::vector<KeyedPerson> people;
    people.reserve(m_rows.size());
    for (const DayRow& row : m_rows) people.push_back({row.athlete, row.name});
    m_keying->setDay(m_date->date(), std::move(people));
    m_layers->setCurrentWidget(m_keying);
    if (!m_keying->open(athlete)) stopKeying();
    Q_EMIT actionsChanged();
}

Result<void> FloorPage::openSheet(const QString& typed)
{
    STEELYARD_TRY(const SheetCode code, readSheetId(typed));
    STEELYARD_TRY(const auto everybody, m_context.book.athletes().all());
    STEELYARD_TRY(const auto athlete, athleteOfSheet(code, everybody));
    if (isKeying()) {
        stopKeying();
        if (isKeying())
            return fail(ErrorCode::Conflict, tr("What is typed in the row isn't stored yet: see to it first."));
    }
    if (code.date != m_date->date())
        Q_EMIT said(tr("This sheet is of %1: what is keyed goes to that day.").arg(format::date(code.date)));
    keyOnDay(athlete, code.date);
    return {};
}

void FloorPage::keyOnDay(Id<Athlete> athlete, QDate day)
{
    m_toKey = athlete;
    if (day != m_date->date())
        m_date->setDate(day);
    else if (m_stale)
        makeSheets();
    else
        startKeyingOf(*std::exchange(m_toKey, std::nullopt));
}

void FloorPage::keySession(QDate day)
{
    if (isKeying()) stopKeying();
    // What is typed in the row and isn't stored yet keeps its place.
    if (!isKeying() && m_athlete) keyOnDay(*m_athlete, day);
}

void FloorPage::stopKeying()
{
    const auto last = m_keying->desk() ? std::optional(m_keying->desk()->sheet().athlete) : std::nullopt;
    if (!m_keying->close()) return;
    if (last) m_athlete = last;
    m_layers->setCurrentIndex(0);
    m_list->setFocus();
    if (m_stale && isVisible())
        makeSheets();
    else
        fillList();
    Q_EMIT actionsChanged();
}

std::vector<SessionSheet> FloorPage::chosenSheets() const
{
    std::vector<SessionSheet> chosen;
    if (m_stale) return chosen;
    for (std::size_t row = 0; row < m_rows.size(); ++row)
        if (m_rows[row].sheet && m_list->item(static_cast<int>(row))->checkState() == Qt::Checked)
            chosen.push_back(m_sheets[*m_rows[row].sheet].sheet);
    return chosen;
}

PaperSize FloorPage::paper() const
{
    return m_paper->currentIndex() == 0 ? PaperSize::A4 : PaperSize::Letter;
}

PaperLayout FloorPage::layoutOfPaper() const
{
    return static_cast<PaperLayout>(m_layout->currentData().toInt());
}

// What goes on paper of these sheets of the day: in the week's layout, the days of their lifters.
FloorPaper FloorPage::paperOf(std::vector<SessionSheet> sheets) const
{
    FloorPaper paper{layoutOfPaper(), std::move(sheets), m_gyms, this->paper(), m_date->date()};
    if (paper.layout != PaperLayout::Week) return paper;
    std::vector<SessionSheet> days;
    for (const DaySheet& day : m_week)
        if (std::ranges::find(paper.sheets, day.sheet.athlete, &SessionSheet::athlete) != paper.sheets.end())
            days.push_back(day.sheet);
    paper.sheets = std::move(days);
    return paper;
}

// A paper of one lifter shows the one in front, a paper of several all that are ticked.
void FloorPage::showPreview()
{
    const DayRow* row = currentRow();
    if (row && !row->sheet)
        m_preview->setHint(
            tr("There is no sheet for %1: nothing is planned and nothing was done before. K keys a session all "
               "the same.")
                .arg(format::person(row->name)));
    else if (row)
        m_preview->setHint({});
    const bool several = layoutOfPaper() == PaperLayout::Group || layoutOfPaper() == PaperLayout::Day;
    std::vector<SessionSheet> sheets;
    if (several)
        sheets = chosenSheets();
    else if (row && row->sheet)
        sheets.push_back(m_sheets[*row->sheet].sheet);
    m_preview->setPages(paperOf(std::move(sheets)).pages(paper()), paper());
    Q_EMIT actionsChanged();
}

void FloorPage::say(const QString& text)
{
    m_line->setText(text);
}

void FloorPage::print(bool intoPdf)
{
    const FloorPaper chosen = paperOf(chosenSheets());
    if (chosen.sheets.empty()) return say(tr("Tick at least one lifter first."));
    const auto quietly = [this](const QString& text) { say(text); };
    if (intoPdf)
        saveFloorPaper(m_context, this, chosen, quietly);
    else
        printFloorPaper(m_context, this, chosen, quietly);
}

}  // namespace steelyard
