#include "ui/pages/import/paste_page.h"

#include "core/book/book.h"
#include "core/exchange/logbook_import.h"
#include "ui/format/format.h"
#include "ui/format/people.h"
#include "ui/format/set_words.h"
#include "ui/shell/backup_keeper.h"
#include "ui/shell/theme.h"

#include <QtCore/QCoreApplication>
#include <QtGui/QTextBlock>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QDateEdit>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPlainTextEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QScrollBar>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

// Lines don't wrap, so that a line and its reading stand beside each other.
QPlainTextEdit* makeLines(QWidget* parent, const QString& name)
{
    auto* edit = new QPlainTextEdit(parent);
    edit->setLineWrapMode(QPlainTextEdit::NoWrap);
    edit->setTabChangesFocus(true);
    edit->setAccessibleName(name);
    return edit;
}

Result<ImportOutcome> bringInLog(const QString& book, const ParsedLogbook& log, const QDateTime& now,
                                 const Progress& progress)
{
    STEELYARD_TRY(auto database, Database::openWriter(book));
    return importLogbook(*database, log, {.madeAt = now}, progress);
}

}  // namespace

PastePage::PastePage(const UiContext& context, std::optional<Id<Athlete>> athlete, QWidget* parent)
    : QWidget(parent), m_context(context)
{
    if (auto library = m_context.book.library().read()) m_library = std::move(*library);
    auto* all = new QVBoxLayout(this);
    all->setSpacing(8);
    all->addLayout(makeTop(athlete));
    all->addLayout(makeTexts(), 1);
    all->addLayout(makeBottom());
    connect(m_text, &QPlainTextEdit::textChanged, this, &PastePage::read);
    connect(m_text, &QPlainTextEdit::cursorPositionChanged, this, &PastePage::sayLine);
    connect(m_athlete, &QComboBox::currentIndexChanged, this, &PastePage::read);
    connect(m_order, &QComboBox::currentIndexChanged, this, &PastePage::read);
    connect(m_date, &QDateEdit::dateChanged, this, &PastePage::read);
    read();
}

PastePage::~PastePage()
{
    m_job.cancel();
}

QLayout* PastePage::makeTop(std::optional<Id<Athlete>> athlete)
{
    m_athlete = new QComboBox(this);
    m_athlete->addItem(tr("whoever the text names"), QString());
    if (const auto athletes = m_context.book.athletes().all())
        for (const auto& row : *athletes) {
            m_athletes.push_back({row.value.name, row.value.unit});
            m_athlete->addItem(format::person(row.value.name), row.value.name);
            if (row.id == athlete) m_athlete->setCurrentIndex(m_athlete->count() - 1);
        }
    m_athlete->setMinimumContentsLength(20);
    m_athlete->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_date = new QDateEdit(m_context.clock.today(), this);
    m_date->setDisplayFormat(format::datePattern());
    m_date->setMaximumDate(m_context.clock.today().addDays(1));
    m_order = new QComboBox(this);
    m_order->addItem(tr("day-month-year"), static_cast<int>(DateOrder::DayMonthYear));
    m_order->addItem(tr("month-day-year"), static_cast<int>(DateOrder::MonthDayYear));
    auto* row = new QHBoxLayout;
    const auto put = [&](const QString& name, QWidget* field) {
        auto* label = new QLabel(name, this);
        label->setBuddy(field);
        row->addWidget(label);
        row->addWidget(field);
        row->addSpacing(10);
    };
    put(tr("&Sets of"), m_athlete);
    put(tr("&Day, if no line says one"), m_date);
    put(tr("D&ates such as 3/4/2026"), m_order);
    row->addStretch(1);
    return row;
}

QLayout* PastePage::makeTexts()
{
    m_text = makeLines(this, tr("Sets as text"));
    m_text->setPlaceholderText(
        tr("Ada Fulcrum:\n2026-03-01\nArm curl, cable, upright\n42.5x12 w; 12; 11-1 @9\nRow: 60x10; "
           "10\n# a remark for yourself"));
    m_reading = makeLines(this, tr("How each line is read"));
    m_reading->setReadOnly(true);
    m_reading->setFocusPolicy(Qt::ClickFocus);
    m_reading->setPlaceholderText(tr("How each line is read will stand here, beside it."));
    connect(m_text->verticalScrollBar(), &QScrollBar::valueChanged, m_reading->verticalScrollBar(),
            &QScrollBar::setValue);
    connect(m_reading->verticalScrollBar(), &QScrollBar::valueChanged, m_text->verticalScrollBar(),
            &QScrollBar::setValue);
    auto* row = new QHBoxLayout;
    row->addWidget(m_text, 1);
    row->addWidget(m_reading, 1);
    return row;
}

QLayout* PastePage::makeBottom()
{
    m_said = new QLabel(this);
    m_said->setTextFormat(Qt::PlainText);
    m_said->setWordWrap(true);
    m_import = new QPushButton(tr("&Bring in"), this);
    auto* close = new QPushButton(tr("C&lose"), this);
    connect(m_import, &QPushButton::clicked, this, &PastePage::bringIn);
    connect(close, &QPushButton::clicked, this, &PastePage::closed);
    auto* row = new QHBoxLayout;
    row->addWidget(m_said, 1);
    row->addWidget(m_import);
    row->addWidget(close);
    return row;
}

void PastePage::takeFocus()
{
    m_text->setFocus();
}

void PastePage::setText(const QString& text)
{
    m_text->setPlainText(text);
}

void PastePage::read()
{
    const PasteContext context{m_library,
                               m_athletes,
                               m_athlete->currentData().toString(),
                               m_date->date(),
                               m_context.clock.today(),
                               static_cast<DateOrder>(m_order->currentData().toInt())};
    m_log = readPastedLog(m_text->toPlainText(), context);
    showReading();
    markProblems();
    sayLine();
    m_import->setEnabled(!m_job.isRunning() && m_log.problems == 0 && !m_log.rows.empty());
}

QString PastePage::reading(const PastedLine& line) const
{
    QStringList sets;
    switch (line.kind) {
    case PastedLine::Kind::Nothing:
        return {};
    case PastedLine::Kind::Athlete:
        return line.name;
    case PastedLine::Kind::Date:
        return format::weekday(line.date) + u' ' + format::date(line.date);
    case PastedLine::Kind::Exercise:
        return line.isNew ? tr("%1 (new in the library)").arg(line.name) : line.name;
    case PastedLine::Kind::Sets:
        for (const SetEntry& set : line.sets) sets += setWords(set, SetWords::Whole);
        return (line.name.isEmpty() ? QString() : line.name + QStringLiteral(": ")) + sets.join(QStringLiteral("; "));
    case PastedLine::Kind::Wrong:
        return QStringLiteral("⚠ ") + line.problem;
    }
    return {};
}

void PastePage::showReading()
{
    QStringList lines;
    for (const PastedLine& line : m_log.lines) lines += reading(line);
    const int scrolled = m_text->verticalScrollBar()->value();
    m_reading->setPlainText(m_log.rows.empty() && m_log.problems == 0 ? QString() : lines.join(u'\n'));
    m_reading->verticalScrollBar()->setValue(scrolled);
}

// Under what doesn't fit, and the whole of its reading.
void PastePage::markProblems()
{
    const QColor alarm = themeColours(palette()).alarm;
    QList<QTextEdit::ExtraSelection> marks;
    QList<QTextEdit::ExtraSelection> readings;
    for (std::size_t i = 0; i < m_log.lines.size(); ++i) {
        const PastedLine& line = m_log.lines[i];
        if (line.kind != PastedLine::Kind::Wrong) continue;
        const QTextBlock block = m_text->document()->findBlockByNumber(static_cast<int>(i));
        QTextEdit::ExtraSelection mark;
        mark.cursor = QTextCursor(block);
        // Where something is missing, the character before it is marked.
        const int at = static_cast<int>(std::min<qsizetype>(line.at, std::max(0, block.length() - 2)));
        mark.cursor.setPosition(block.position() + at);
        mark.cursor.setPosition(
            block.position() + std::min(at + std::max(1, static_cast<int>(line.length)), block.length() - 1),
            QTextCursor::KeepAnchor);
        mark.format.setUnderlineStyle(QTextCharFormat::WaveUnderline);
        mark.format.setUnderlineColor(alarm);
        mark.format.setForeground(alarm);
        marks.append(mark);
        QTextEdit::ExtraSelection reading;
        reading.cursor = QTextCursor(m_reading->document()->findBlockByNumber(static_cast<int>(i)));
        reading.cursor.select(QTextCursor::LineUnderCursor);
        reading.format.setForeground(alarm);
        readings.append(reading);
    }
    m_text->setExtraSelections(marks);
    m_reading->setExtraSelections(readings);
}

// Of the line with the cursor what is wrong, else how much there is.
void PastePage::sayLine()
{
    const auto at = static_cast<std::size_t>(m_text->textCursor().blockNumber());
    if (at < m_log.lines.size() && m_log.lines[at].kind == PastedLine::Kind::Wrong)
        return m_said->setText(
            tr("Line %1, character %2: %3")
                .arg(QString::number(at + 1), QString::number(m_log.lines[at].at + 1), m_log.lines[at].problem));
    if (m_log.problems > 0)
        return m_said->setText(
            tr("%n line(s) can’t be read; nothing comes in before they can.", nullptr, m_log.problems));
    if (m_log.rows.empty())
        return m_said->setText(
            tr("A line for the lifter with a colon, one for the day, one for the exercise, then its sets. "
               "Nothing is written before you press Bring in."));
    m_said->setText(tr("%n set(s) to bring in.", nullptr, static_cast<int>(m_log.rows.size())));
}

void PastePage::bringIn()
{
    m_import->setEnabled(false);
    keepFirst(m_context.backups, BackupReason::Import, this, [this, log = m_log.asLogbook()] { bringInNow(log); });
}

void PastePage::bringInNow(const ParsedLogbook& log)
{
    m_job = m_context.jobs.run(
        this, tr("Bringing in sets"),
        [book = m_context.book.path(), log, place = m_context.book.database().checkPlace(),
         now = m_context.clock.nowUtc()](const Progress& progress) -> Result<ImportOutcome> {
            STEELYARD_CHECK(place);  // never into another file that came there
            return bringInLog(book, log, now, progress);
        },
        [this](const Result<ImportOutcome>& outcome) {
            m_job = {};
            if (!outcome) {
                m_import->setEnabled(true);
                return m_said->setText(outcome.error().what);
            }
            const ImportReport& report = outcome->report;
            if (!report.written)
                return m_said->setText(tr("Nothing was brought in: %1").arg(toText(report.problems.front())));
            m_context.book.history().adopt(outcome->changes);
            QString text = tr("%n set(s) came in. Undo takes them out again.", nullptr, report.setsAdded);
            if (report.setsAlreadyThere > 0)
                text += u' ' + tr("%n set(s) were there already.", nullptr, report.setsAlreadyThere);
            m_said->setText(text);
            Q_EMIT imported(report.setsAdded);
        });
}

}  // namespace steelyard
