#include "ui/pages/import/import_page.h"

#include "ui/pages/import/import_preview_model.h"
#include "ui/prompt/prompter.h"

#include <QtCore/QFile>
#include <QtCore/QFileInfo>
#include <QtCore/QMimeData>
#include <QtGui/QDragEnterEvent>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPlainTextEdit>
#include <QtWidgets/QProgressBar>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QTableView>
#include <QtWidgets/QTableWidget>

namespace steelyard {
namespace {

constexpr qint64 kHeadBytes = 256 * 1024;
constexpr int kMostReported = 500;

void chooseData(QComboBox* box, const QVariant& value)
{
    box->setCurrentIndex(std::max(0, box->findData(value)));
}

}  // namespace

ImportPage::ImportPage(LogbookImporter& importer, Prompter& prompter, JobRunner& jobs, QWidget* parent)
    : QWidget(parent), m_importer(importer), m_prompter(prompter), m_jobs(jobs), m_model(new ImportPreviewModel(this))
{
    setAcceptDrops(true);
    auto* all = new QVBoxLayout(this);
    all->setSpacing(8);
    all->addLayout(makeFileRow());
    all->addLayout(makeChoiceRow());
    all->addLayout(makeTables(), 1);
    all->addLayout(makeDoRow());
    m_tick.setInterval(100);
    connect(&m_tick, &QTimer::timeout, this,
            [this] { m_progress->setValue(static_cast<int>(m_importJob.share() * 100)); });
    updateButtons();
}

ImportPage::~ImportPage()
{
    m_previewJob.cancel();
    m_importJob.cancel();
}

QLayout* ImportPage::makeFileRow()
{
    m_file =
        new QLabel(tr("Choose a logbook file, or drop one here. Nothing is written before you press Import."), this);
    m_file->setTextFormat(Qt::PlainText);
    auto* choose = new QPushButton(tr("&Choose a file…"), this);
    connect(choose, &QPushButton::clicked, this, &ImportPage::chooseFile);
    auto* row = new QHBoxLayout;
    row->addWidget(choose);
    row->addWidget(m_file, 1);
    return row;
}

QLayout* ImportPage::makeChoiceRow()
{
    auto* row = new QHBoxLayout;
    const auto add = [&](const QString& name, const std::vector<std::pair<QString, QVariant>>& items) {
        auto* label = new QLabel(name, this);
        auto* box = new QComboBox(this);
        for (const auto& [text, value] : items) box->addItem(text, value);
        label->setBuddy(box);
        row->addWidget(label);
        row->addWidget(box);
        row->addSpacing(8);
        connect(box, &QComboBox::currentIndexChanged, this, &ImportPage::choicesChanged);
        return box;
    };
    std::vector<std::pair<QString, QVariant>> encodings;
    for (const QString& name : m_importer.encodings()) encodings.emplace_back(name, name);
    m_encoding = add(tr("&Encoding"), encodings);
    m_separator =
        add(tr("&Separator"), {{tr("comma"), QChar(u',')}, {tr("semicolon"), QChar(u';')}, {tr("tab"), QChar(u'\t')}});
    m_decimal = add(tr("&Decimals"), {{tr("point, 42.5"), false}, {tr("comma, 42,5"), true}});
    m_dates = add(tr("Da&tes"), {{tr("year-month-day"), static_cast<int>(DateOrder::YearMonthDay)},
                                 {tr("day-month-year"), static_cast<int>(DateOrder::DayMonthYear)},
                                 {tr("month-day-year"), static_cast<int>(DateOrder::MonthDayYear)}});
    m_unit = add(tr("&Unit, if a row names none"),
                 {{tr("kg"), static_cast<int>(MassUnit::kg)}, {tr("lb"), static_cast<int>(MassUnit::lb)}});
    row->addStretch(1);
    return row;
}

QLayout* ImportPage::makeTables()
{
    m_columns = new QTableWidget(0, 2, this);
    m_columns->setHorizontalHeaderLabels({tr("Logbook"), tr("Column of the file")});
    m_columns->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    m_columns->verticalHeader()->hide();
    m_columns->horizontalHeader()->setStretchLastSection(true);
    m_columns->setFixedWidth(320);
    m_columns->setAccessibleName(tr("Which column of the file is which"));
    m_rows = new QTableView(this);
    m_rows->setModel(m_model);
    for (QTableView* table : {static_cast<QTableView*>(m_columns), m_rows}) {
        table->setShowGrid(false);
        table->setFrameShape(QFrame::NoFrame);
        table->setWordWrap(false);
        table->horizontalHeader()->setHighlightSections(false);
        table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() * 8 / 5);
    }
    m_rows->setAccessibleName(tr("First rows of the file"));
    m_report = new QPlainTextEdit(this);
    m_report->setReadOnly(true);
    m_report->setAccessibleName(tr("What can’t be read, by row"));
    m_report->setPlaceholderText(tr("What can’t be read will stand here: the row, what is wrong, and how to mend it."));
    m_report->setMaximumHeight(150);
    m_report->setTabChangesFocus(true);
    auto* right = new QVBoxLayout;
    right->addWidget(m_rows, 1);
    right->addWidget(m_report);
    auto* row = new QHBoxLayout;
    row->addWidget(m_columns);
    row->addLayout(right, 1);
    return row;
}

QLayout* ImportPage::makeDoRow()
{
    m_counts = new QLabel(this);
    m_counts->setTextFormat(Qt::PlainText);
    m_counts->setWordWrap(true);
    m_aside = new QCheckBox(tr("Set &bad rows aside and import the rest"), this);
    m_progress = new QProgressBar(this);
    m_progress->setRange(0, 100);
    m_progress->setFixedWidth(160);
    m_import = new QPushButton(tr("&Import"), this);
    m_stop = new QPushButton(tr("Sto&p"), this);
    auto* close = new QPushButton(tr("C&lose"), this);
    auto* row = new QHBoxLayout;
    row->addWidget(m_counts, 1);
    for (QWidget* part : {static_cast<QWidget*>(m_aside), static_cast<QWidget*>(m_progress),
                          static_cast<QWidget*>(m_stop), static_cast<QWidget*>(m_import), static_cast<QWidget*>(close)})
        row->addWidget(part);
    connect(m_aside, &QCheckBox::toggled, this, [this](bool on) {
        m_choices.setBadRowsAside = on;
        updateButtons();
    });
    connect(m_import, &QPushButton::clicked, this, &ImportPage::bringIn);
    connect(m_stop, &QPushButton::clicked, this, [this] { m_importJob.cancel(); });
    connect(close, &QPushButton::clicked, this, &ImportPage::closed);
    return row;
}

void ImportPage::chooseFile()
{
    m_prompter.chooseFileToOpen(this,
                                {tr("Import a logbook"), {}, tr("Logbooks (*.csv *.tsv *.txt);;All files (*)"), {}},
                                [this](const QString& path) { openFile(path); });
}

void ImportPage::openFile(const QString& path)
{
    if (m_importJob.isRunning()) return;
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        m_file->setText(tr("“%1” can’t be opened: %2").arg(QFileInfo(path).fileName(), file.errorString()));
        return;
    }
    m_path = path;
    m_file->setText(path);
    const bool aside = m_choices.setBadRowsAside;
    m_choices = m_importer.guess(file.read(kHeadBytes));
    m_choices.setBadRowsAside = aside;
    m_model->setPreview({});
    fillChoices();
    preview();
}

void ImportPage::fillChoices()
{
    m_filling = true;
    chooseData(m_encoding, m_choices.encoding);
    chooseData(m_separator, m_choices.separator);
    chooseData(m_decimal, m_choices.decimalComma);
    chooseData(m_dates, static_cast<int>(m_choices.dates));
    chooseData(m_unit, static_cast<int>(m_choices.unit));
    m_filling = false;
}

void ImportPage::fillColumns(const QStringList& header)
{
    m_filling = true;
    m_columns->setRowCount(static_cast<int>(m_choices.columns.size()));
    for (int row = 0; row < m_columns->rowCount(); ++row) {
        const ColumnChoice& choice = m_choices.columns[static_cast<std::size_t>(row)];
        auto* name = new QTableWidgetItem(choice.needed ? tr("%1 (needed)").arg(choice.column) : choice.column);
        name->setFlags(Qt::ItemIsEnabled);
        m_columns->setItem(row, 0, name);
        auto* box = new QComboBox(m_columns);
        box->setAccessibleName(tr("Column of the file for %1").arg(choice.column));
        box->addItem(tr("–"));
        box->addItems(header);
        box->setCurrentIndex(choice.source + 1);
        m_columns->setCellWidget(row, 1, box);
        connect(box, &QComboBox::currentIndexChanged, this, &ImportPage::choicesChanged);
    }
    m_columns->resizeColumnToContents(0);
    m_filling = false;
}

void ImportPage::choicesChanged()
{
    if (m_filling || m_path.isEmpty()) return;
    m_choices.encoding = m_encoding->currentData().toString();
    m_choices.separator = m_separator->currentData().toChar();
    m_choices.decimalComma = m_decimal->currentData().toBool();
    m_choices.dates = static_cast<DateOrder>(m_dates->currentData().toInt());
    m_choices.unit = static_cast<MassUnit>(m_unit->currentData().toInt());
    for (int row = 0; row < m_columns->rowCount(); ++row)
        if (const auto* box = qobject_cast<QComboBox*>(m_columns->cellWidget(row, 1)))
            m_choices.columns[static_cast<std::size_t>(row)].source = box->currentIndex() - 1;
    preview();
}

void ImportPage::preview()
{
    m_previewJob.cancel();
    m_readable = false;
    const int asked = ++m_asked;
    m_counts->setText(tr("Reading the file…"));
    updateButtons();
    m_previewJob = m_jobs.run(
        this, tr("Previewing a logbook"),
        [importer = &m_importer, path = m_path, choices = m_choices](const Progress& progress) {
            return importer->preview(path, choices, progress);
        },
        [this, asked](Result<ImportPreview> answer) {
            if (asked == m_asked) take(std::move(answer));
        });
}

void ImportPage::take(Result<ImportPreview> preview)
{
    if (!preview) {
        m_counts->setText(preview.error().what);
        updateButtons();
        return;
    }
    m_readable = true;
    if (preview->header != m_model->preview().header) fillColumns(preview->header);
    QStringList lines;
    for (const ImportTrouble& trouble : preview->troubles) {
        if (lines.size() == kMostReported) break;
        const QString column = preview->header.value(trouble.source);
        lines +=
            column.isEmpty()
                ? tr("Line %1, %2: %3").arg(QString::number(trouble.row + 2), trouble.what, trouble.mend)
                : tr("Line %1, “%2”, %3: %4").arg(QString::number(trouble.row + 2), column, trouble.what, trouble.mend);
    }
    if (const auto left = static_cast<int>(preview->troubles.size()) - kMostReported; left > 0)
        lines += tr("… and %n more.", nullptr, left);
    m_report->setPlainText(lines.join(u'\n'));
    m_counts->setText(tr("New lifters: %1. New sets: %2. Already there: %3. Rows that can’t be read: %4.")
                          .arg(QString::number(preview->newAthletes), QString::number(preview->newSets),
                               QString::number(preview->alreadyThere), QString::number(preview->badRows)));
    if (!preview->refusal.isEmpty()) m_counts->setText(preview->refusal);
    m_model->setPreview(std::move(*preview));
    if (const QString missing = missingColumns(); !missing.isEmpty())
        m_counts->setText(tr("Say which column of the file holds: %1.").arg(missing));
    updateButtons();
}

QString ImportPage::missingColumns() const
{
    QStringList names;
    for (const ColumnChoice& choice : m_choices.columns)
        if (choice.needed && choice.source < 0) names += choice.column;
    return names.join(QStringLiteral(", "));
}

void ImportPage::updateButtons()
{
    const bool running = m_importJob.isRunning();
    const ImportPreview& preview = m_model->preview();
    const bool clean = preview.badRows == 0 || m_choices.setBadRowsAside;
    const bool taken = m_readable && preview.refusal.isEmpty();
    m_import->setEnabled(taken && !running && clean && preview.newSets > 0 && missingColumns().isEmpty());
    m_stop->setVisible(running);
    m_progress->setVisible(running);
    m_aside->setEnabled(!running);
    m_columns->setEnabled(!running);
    for (QComboBox* box : {m_encoding, m_separator, m_decimal, m_dates, m_unit})
        box->setEnabled(!running && !m_path.isEmpty());
}

void ImportPage::bringIn()
{
    m_progress->setValue(0);
    m_importJob = m_importer.start(this, m_path, m_choices, [this](const Result<int>& sets) { finished(sets); });
    m_tick.start();
    updateButtons();
}

void ImportPage::finished(const Result<int>& sets)
{
    m_tick.stop();
    m_importJob = {};
    m_readable = false;  // what was new is there now
    if (sets) {
        QString text = tr("%n set(s) came in. Undo takes them out again.", nullptr, *sets);
        if (const int aside = m_choices.setBadRowsAside ? m_model->preview().badRows : 0; aside > 0)
            text += u' ' + tr("%n row(s) set aside: %1", nullptr, aside).arg(LogbookImporter::setAsidePath(m_path));
        m_counts->setText(text);
        Q_EMIT imported(*sets);
    } else {
        m_readable = true;
        m_counts->setText(sets.error().code == ErrorCode::Cancelled ? tr("Stopped. Nothing was written.")
                                                                    : sets.error().what);
    }
    updateButtons();
}

void ImportPage::dragEnterEvent(QDragEnterEvent* event)
{
    if (event->mimeData()->hasUrls() && event->mimeData()->urls().front().isLocalFile()) event->acceptProposedAction();
}

void ImportPage::dropEvent(QDropEvent* event)
{
    const QList<QUrl> urls = event->mimeData()->urls();
    if (!urls.isEmpty() && urls.front().isLocalFile()) openFile(urls.front().toLocalFile());
}

}  // namespace steelyard
