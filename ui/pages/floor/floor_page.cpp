#include "ui/pages/floor/floor_page.h"

#include "core/book/book.h"
#include "ui/format/format.h"
#include "ui/pages/floor/sheet_preview.h"
#include "ui/print/fonts.h"
#include "ui/print/pdf_writer.h"
#include "ui/prompt/page_printing.h"
#include "ui/prompt/prompter.h"

#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QDateEdit>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QSplitter>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kSheetIndexRole = Qt::UserRole + 1;

QString sheetRowText(const DaySheet& day)
{
    const QString exercises = FloorPage::tr("%n exercise(s)", nullptr, static_cast<int>(day.sheet.exercises.size()));
    QString text = QStringLiteral("%1 · %2").arg(day.sheet.athlete, exercises);
    if (day.sheet.source == SheetSource::PlannedDay) text += QStringLiteral(" · ") + FloorPage::tr("planned");
    if (!day.expected) text += QStringLiteral(" · ") + FloorPage::tr("not expected");
    return text;
}

}  // namespace

FloorPage::FloorPage(const UiContext& context, QWidget* parent) : Page(parent), m_context(context)
{
    if (!loadBundledFonts()) qWarning("The bundled fonts could not be read; sheets use another one.");
    build();
}

QPushButton* FloorPage::makeButton(const QString& action, const QString& text, const QString& keys)
{
    auto* button = new QPushButton(text, this);
    button->setObjectName(action);
    button->setToolTip(tr("Key: %1").arg(keys));
    connect(button, &QPushButton::clicked, this, [this, action] { perform(action); });
    connect(this, &Page::actionsChanged, button, [this, button, action] { button->setEnabled(canPerform(action)); });
    return button;
}

QWidget* FloorPage::makeSide()
{
    auto* side = new QWidget(this);
    auto* column = new QVBoxLayout(side);
    m_date = new QDateEdit(m_context.clock.today(), side);
    m_date->setCalendarPopup(true);
    m_date->setDisplayFormat(format::datePattern());
    m_date->setAccessibleName(tr("Day of the sheets"));
    m_date->setToolTip(tr("Keys: [ the day before, ] the day after, T today"));
    m_paper = new QComboBox(side);
    m_paper->addItems({QStringLiteral("A4"), QStringLiteral("Letter")});
    m_paper->setAccessibleName(tr("Paper"));
    auto* top = new QHBoxLayout;
    top->addWidget(m_date, 1);
    top->addWidget(m_paper);
    m_others = new QCheckBox(tr("Show those not expected as &well"), side);
    m_list = new QListWidget(side);
    m_list->setAccessibleName(tr("Lifters of the day"));
    m_list->setSpacing(2);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setTextElideMode(Qt::ElideRight);
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setToolTip(tr("Space ticks a lifter; only ticked sheets are printed."));
    m_line = new QLabel(side);
    m_line->setTextFormat(Qt::PlainText);
    m_line->setWordWrap(true);
    column->addLayout(top);
    column->addWidget(m_others);
    column->addWidget(m_list, 1);
    column->addWidget(m_line);
    column->addWidget(makeButton(QStringLiteral("floor.print"), tr("&Print…"), QStringLiteral("Ctrl+P")));
    column->addWidget(makeButton(QStringLiteral("floor.pdf"), tr("Save as P&DF…"), QStringLiteral("Ctrl+Shift+P")));
    return side;
}

void FloorPage::build()
{
    auto* splitter = new QSplitter(this);
    splitter->addWidget(makeSide());
    m_preview = new SheetPreview(splitter);
    m_preview->setToolTip(tr("Keys: + and − zoom, 0 fits the width"));
    splitter->addWidget(m_preview);
    splitter->setStretchFactor(1, 1);
    splitter->setSizes({320, 700});
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins({});
    whole->addWidget(splitter);
    connect(m_date, &QDateEdit::dateChanged, this, [this] { makeSheets(); });
    connect(m_others, &QCheckBox::toggled, this, [this] { makeSheets(); });
    connect(m_paper, &QComboBox::currentIndexChanged, this, [this] { showPreview(); });
    connect(m_list, &QListWidget::currentRowChanged, this, [this] { showPreview(); });
    connect(m_list, &QListWidget::itemChanged, this, [this] { Q_EMIT actionsChanged(); });
}

void FloorPage::showEvent(QShowEvent* event)
{
    Page::showEvent(event);
    if (m_stale) makeSheets();
}

void FloorPage::showAthlete(std::optional<Id<Athlete>> athlete)
{
    m_athlete = athlete;
    for (int row = 0; row < m_list->count(); ++row) {
        const auto index = m_list->item(row)->data(kSheetIndexRole).toULongLong();
        if (athlete && m_sheets[index].athlete == *athlete) m_list->setCurrentRow(row);
    }
}

void FloorPage::bookChanged(const Changes& changes)
{
    if (changes.athletes.empty() && !changes.roster && !changes.library) return;
    m_stale = true;
    if (isVisible()) makeSheets();
}

void FloorPage::takeFocus()
{
    m_list->setFocus();
}

bool FloorPage::canPerform(const QString& action) const
{
    if (action == QLatin1StringView("floor.print") || action == QLatin1StringView("floor.pdf"))
        return !chosenSheets().empty();
    return action.startsWith(QLatin1StringView("floor."));
}

void FloorPage::perform(const QString& action)
{
    if (action == QLatin1StringView("floor.print")) print();
    if (action == QLatin1StringView("floor.pdf")) savePdf();
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
        [path = m_context.book.path(), request](const Progress& progress) -> Result<std::vector<DaySheet>> {
            STEELYARD_TRY(const auto database, Database::openReader(path));
            return readDaySheets(*database, request, progress);
        },
        [this, date = request.from](Result<std::vector<DaySheet>> sheets) {
            if (date == m_date->date()) take(std::move(sheets));
        });
}

void FloorPage::take(Result<std::vector<DaySheet>> sheets)
{
    if (!sheets && sheets.error().code == ErrorCode::Cancelled) return;
    m_stale = false;
    QString hint =
        tr("Nothing is planned for this day, and nobody trained on this weekday in two of the last "
           "four weeks. Choose another day ([ and ]), or show those not expected as well.");
    if (!sheets) hint = sheets.error().what;
    const bool made = sheets.has_value();
    m_sheets = made ? *std::move(sheets) : std::vector<DaySheet>();
    fillList();
    m_preview->setHint(hint);
    if (!made)
        say(tr("The sheets could not be made."));
    else if (m_sheets.empty())
        say(tr("Nobody is expected that day."));
    else
        say(tr("%n sheet(s). Ticked ones are printed.", nullptr, static_cast<int>(m_sheets.size())));
}

void FloorPage::fillList()
{
    const QSignalBlocker quiet(m_list);
    m_list->clear();
    int current = 0;
    for (std::size_t i = 0; i < m_sheets.size(); ++i) {
        auto* item = new QListWidgetItem(sheetRowText(m_sheets[i]), m_list);
        item->setFlags(item->flags() | Qt::ItemIsUserCheckable);
        item->setCheckState(m_sheets[i].expected ? Qt::Checked : Qt::Unchecked);
        item->setData(kSheetIndexRole, static_cast<qulonglong>(i));
        if (m_athlete && m_sheets[i].athlete == *m_athlete) current = static_cast<int>(i);
    }
    if (!m_sheets.empty()) m_list->setCurrentRow(current);
    showPreview();
    Q_EMIT actionsChanged();
}

std::vector<SessionSheet> FloorPage::chosenSheets() const
{
    std::vector<SessionSheet> chosen;
    if (m_stale) return chosen;
    for (int row = 0; row < m_list->count(); ++row) {
        const auto* item = m_list->item(row);
        if (item->checkState() == Qt::Checked)
            chosen.push_back(m_sheets[item->data(kSheetIndexRole).toULongLong()].sheet);
    }
    return chosen;
}

PaperSize FloorPage::paper() const
{
    return m_paper->currentIndex() == 0 ? PaperSize::A4 : PaperSize::Letter;
}

void FloorPage::showPreview()
{
    const auto* item = m_list->currentItem();
    if (!item) {
        m_preview->setSheets({}, paper());
        return;
    }
    m_preview->setSheets({m_sheets[item->data(kSheetIndexRole).toULongLong()].sheet}, paper());
}

void FloorPage::say(const QString& text)
{
    m_line->setText(text);
}

void FloorPage::savePdf()
{
    const auto sheets = chosenSheets();
    if (sheets.empty()) return say(tr("Tick at least one lifter first."));
    const QString name = tr("sheets %1").arg(m_date->date().toString(Qt::ISODate)) + QStringLiteral(".pdf");
    m_context.prompter.chooseFileToSave(
        this, {tr("Save the sheets"), name, tr("PDF files (*.pdf)"), QStringLiteral("pdf")},
        [this, sheets, size = paper()](const QString& path) {
            const auto written = writeSheetsPdf(sheets, size, path);
            if (written)
                say(tr("Saved %n sheet(s) in %1", nullptr, static_cast<int>(sheets.size())).arg(path));
            else
                m_context.prompter.tellError(this, tr("The sheets were not saved"), written.error());
        });
}

void FloorPage::print()
{
    const auto sheets = chosenSheets();
    if (sheets.empty()) return say(tr("Tick at least one lifter first."));
    const PrintQuestion question{
        tr("Sheets of %1").arg(format::date(m_date->date())), pageSize(paper()), [sheets](QPrinter& printer) {
            return printPages(printer, [&](PaperSize size) { return layOutSheets(sheets, size); });
        }};
    if (m_context.prompter.previewPrint(this, question)) return;
    m_context.prompter.ask(this,
                           {tr("No printer"), tr("No printer is set up on this machine."),
                            tr("The same pages can be saved as a PDF and printed elsewhere."), tr("Save as PDF…")},
                           [this] { savePdf(); });
}

}  // namespace steelyard
