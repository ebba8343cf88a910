// How the import page is put together; what it does stands in import_page.cpp.
#include "ui/pages/import/column_table.h"
#include "ui/pages/import/file_options.h"
#include "ui/pages/import/import_page.h"
#include "ui/pages/import/import_preview_model.h"
#include "ui/pages/import/name_match_view.h"
#include "ui/shell/theme.h"
#include "ui/widgets/asked_line.h"
#include "ui/widgets/elided_label.h"

#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPlainTextEdit>
#include <QtWidgets/QProgressBar>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QTabWidget>
#include <QtWidgets/QTableView>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {

ImportPage::ImportPage(const Services& services, QWidget* parent)
    : QWidget(parent),
      m_services(services),
      m_memory(services.settings, services.bookPath),
      m_ask(new AskedLine(this)),
      m_options(new FileOptions(this)),
      m_columns(new ColumnTable(this)),
      m_model(new ImportPreviewModel(this)),
      m_matches(new NameMatchModel(this))
{
    setAcceptDrops(true);
    auto* all = new QVBoxLayout(this);
    all->setSpacing(8);
    all->addLayout(makeFileRow());
    all->addWidget(m_ask);
    m_ask->hide();
    all->addWidget(m_options);
    all->addWidget(makeNotice());
    all->addWidget(makeDatesQuestion());
    auto* tables = new QHBoxLayout;
    m_columns->setFixedWidth(370);
    tables->addWidget(m_columns);
    tables->addWidget(makeTabs(), 1);
    all->addLayout(tables, 1);
    m_agreed = new QCheckBox(this);
    m_agreed->hide();
    connect(m_agreed, &QCheckBox::toggled, this, [this](bool on) {
        m_choices.discomfortAgreed = on;
        preview();
    });
    all->addWidget(m_agreed);
    all->addLayout(makeDoRow());
    m_tick.setInterval(100);
    connect(&m_tick, &QTimer::timeout, this, [this] {
        const JobHandle& job = m_importJob.isRunning() ? m_importJob : m_previewJob;
        m_progress->setValue(static_cast<int>(job.share() * 100));
    });
    connect(m_options, &FileOptions::changed, this, &ImportPage::choicesChanged);
    connect(m_columns, &ColumnTable::changed, this, &ImportPage::choicesChanged);
    connect(m_matches, &NameMatchModel::matchChosen, this, &ImportPage::namesChosen);
    fillKept();
    updateButtons();
}

ImportPage::~ImportPage()
{
    m_previewJob.cancel();
    m_importJob.cancel();
}

QLayout* ImportPage::makeFileRow()
{
    m_file = new ElidedLabel(this);
    m_file->setText(tr("Choose a logbook file, or drop one here. Nothing is written before you press Import."));
    auto* choose = new QPushButton(tr("&Choose a file…"), this);
    connect(choose, &QPushButton::clicked, this, &ImportPage::chooseFile);
    m_kept = new QComboBox(this);
    m_kept->setAccessibleName(tr("Mapping"));
    m_kept->setMinimumContentsLength(14);
    m_kept->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    auto* label = new QLabel(tr("&Mapping"), this);
    label->setBuddy(m_kept);
    m_keep = new QPushButton(tr("&Keep…"), this);
    m_keep->setToolTip(tr("Give this mapping a name, for other files of the same kind"));
    m_forget = new QPushButton(tr("For&get"), this);
    connect(m_kept, &QComboBox::currentIndexChanged, this, &ImportPage::chooseKept);
    connect(m_keep, &QPushButton::clicked, this, &ImportPage::keepMapping);
    connect(m_forget, &QPushButton::clicked, this, &ImportPage::forgetMapping);
    auto* row = new QHBoxLayout;
    row->addWidget(choose);
    row->addWidget(m_file, 1);
    for (QWidget* part : {static_cast<QWidget*>(label), static_cast<QWidget*>(m_kept), static_cast<QWidget*>(m_keep),
                          static_cast<QWidget*>(m_forget)})
        row->addWidget(part);
    return row;
}

QWidget* ImportPage::makeNotice()
{
    m_notice = new QLabel(this);
    m_notice->setTextFormat(Qt::PlainText);
    m_notice->setWordWrap(true);
    QPalette colours = m_notice->palette();
    colours.setColor(QPalette::WindowText, themeColours(colours).warm);
    m_notice->setPalette(colours);
    m_notice->hide();
    return m_notice;
}

QWidget* ImportPage::makeDatesQuestion()
{
    m_datesQuestion = new QWidget(this);
    m_datesText = new QLabel(m_datesQuestion);
    m_datesText->setTextFormat(Qt::PlainText);
    QPalette colours = m_datesText->palette();
    colours.setColor(QPalette::WindowText, themeColours(colours).warm);
    m_datesText->setPalette(colours);
    auto* day = new QPushButton(tr("The da&y"), m_datesQuestion);
    auto* month = new QPushButton(tr("The mont&h"), m_datesQuestion);
    connect(day, &QPushButton::clicked, this, [this] { answerDates(DateOrder::DayMonthYear); });
    connect(month, &QPushButton::clicked, this, [this] { answerDates(DateOrder::MonthDayYear); });
    auto* row = new QHBoxLayout(m_datesQuestion);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_datesText);
    row->addWidget(day);
    row->addWidget(month);
    row->addStretch(1);
    m_datesQuestion->hide();
    return m_datesQuestion;
}

QTabWidget* ImportPage::makeTabs()
{
    m_rows = new QTableView(this);
    m_rows->setModel(m_model);
    m_rows->setShowGrid(false);
    m_rows->setFrameShape(QFrame::NoFrame);
    m_rows->setWordWrap(false);
    m_rows->horizontalHeader()->setHighlightSections(false);
    m_rows->verticalHeader()->setDefaultSectionSize(fontMetrics().height() * 8 / 5);
    m_rows->setAccessibleName(tr("First rows of the file"));
    m_names = new NameMatchView(m_matches, this);
    m_report = new QPlainTextEdit(this);
    m_report->setReadOnly(true);
    m_report->setFrameShape(QFrame::NoFrame);
    m_report->setAccessibleName(tr("What can’t be read, by row"));
    m_report->setPlaceholderText(tr("What can’t be read will stand here: the row, what is wrong, and how to mend it."));
    m_report->setTabChangesFocus(true);
    m_tabs = new QTabWidget(this);
    m_tabs->setDocumentMode(true);
    m_tabs->addTab(m_rows, tr("First &rows"));
    m_tabs->addTab(m_names, tr("&Names"));
    m_tabs->addTab(m_report, tr("&Problems"));
    connect(m_tabs, &QTabWidget::currentChanged, this, [this](int tab) {
        if (tab == 1) m_names->takeFocus();
    });
    return m_tabs;
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
    m_stop = new QPushButton(tr("Stop"), this);
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
    connect(m_stop, &QPushButton::clicked, this, [this] {
        m_importJob.cancel();
        m_previewJob.cancel();
    });
    connect(close, &QPushButton::clicked, this, &ImportPage::closed);
    return row;
}

}  // namespace steelyard
