#include "ui/pages/lifter/logbook_session.h"

#include "ui/format/format.h"
#include "ui/pages/lifter/logbook_list_model.h"
#include "ui/pages/lifter/logbook_set_delegate.h"
#include "ui/pages/lifter/set_words.h"
#include "ui/shell/theme.h"
#include "ui/widgets/words.h"

#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QTableView>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

constexpr int kMostBeforeRows = 4;
constexpr int kTypedLetters = 22;

enum BeforeRole { HistoryIndex = Qt::UserRole + 1, ValueIndex };

}  // namespace

LogbookSession::LogbookSession(Histories histories, QWidget* parent)
    : QWidget(parent),
      m_historiesOf(std::move(histories)),
      m_model(new LogbookSetModel(this)),
      m_table(new QTableView(this)),
      m_delegate(new LogbookSetDelegate(*m_model, m_table)),
      m_heading(plainWords(this)),
      m_words(plainWords(this)),
      m_message(plainWords(this)),
      m_beforeTitle(quietWords(this)),
      m_before(new QListWidget(this))
{
    makeTable();
    QFont bold = m_heading->font();
    bold.setBold(true);
    m_heading->setFont(bold);
    m_message->hide();
    m_beforeTitle->setText(tr("What it said before. Enter brings it back."));
    m_before->setFrameShape(QFrame::NoFrame);
    m_before->setAccessibleName(tr("What it said before"));
    m_before->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_before->setTextElideMode(Qt::ElideRight);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->setSpacing(3);
    all->addWidget(m_heading);
    all->addWidget(m_table, 1);
    all->addWidget(m_words);
    all->addWidget(m_message);
    all->addWidget(m_beforeTitle);
    all->addWidget(m_before);
    connect(m_model, &LogbookSetModel::changeWanted, this, &LogbookSession::changeWanted);
    connect(m_model, &LogbookSetModel::addWanted, this, &LogbookSession::addWanted);
    connect(m_model, &LogbookSetModel::rateWanted, this, &LogbookSession::rateWanted);
    m_words->setMinimumHeight(2 * fontMetrics().lineSpacing());  // the table shouldn't jump
    m_words->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    connect(m_model, &LogbookSetModel::dataChanged, this, &LogbookSession::showWords);
    connect(m_model, &LogbookSetModel::refused, this, &LogbookSession::say);
    connect(m_before, &QListWidget::itemActivated, this, &LogbookSession::bringBackCurrent);
    connect(m_delegate, &LogbookSetDelegate::ended, this, &LogbookSession::editingEnded, Qt::QueuedConnection);
}

void LogbookSession::makeTable()
{
    m_table->setModel(m_model);
    m_table->setItemDelegate(m_delegate);
    m_table->setAccessibleName(tr("Sets and ratings of the session"));
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 8);
    m_table->horizontalHeader()->hide();
    m_table->horizontalHeader()->setMinimumSectionSize(20);
    m_table->horizontalHeader()->setSectionResizeMode(LogbookSetModel::Words, QHeaderView::Stretch);
    m_table->setColumnWidth(LogbookSetModel::Number, fontMetrics().averageCharWidth() * 4);
    m_table->setColumnWidth(LogbookSetModel::Typed, fontMetrics().averageCharWidth() * kTypedLetters);
    m_table->setShowGrid(false);
    m_table->setWordWrap(false);
    m_table->setFrameShape(QFrame::NoFrame);
    m_table->setTabKeyNavigation(false);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setEditTriggers(QAbstractItemView::EditKeyPressed);
    m_table->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    connect(m_table, &QTableView::activated, this, &LogbookSession::openRow);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this, &LogbookSession::fillBefore);
}

void LogbookSession::show(const LogbookSetModel::ShownSession& session, QDate date)
{
    const int row = m_table->currentIndex().row();
    const LineRecord* line = date == m_date ? m_model->lineAt(row) : nullptr;
    const LoggedSet* set = m_model->setAt(row);
    const auto lineBefore = line ? std::optional(line->id) : std::nullopt;
    const auto setBefore = line && set ? std::optional(set->id) : std::nullopt;
    const auto kind = m_model->kindAt(row);
    m_message->hide();
    m_date = date;
    m_editable = session.editable;
    const auto histories = date.isValid() ? m_historiesOf(date) : std::vector<SetHistory>();
    m_histories = histories.value_or(std::vector<SetHistory>());
    m_model->setSession(session);
    m_heading->setText(date.isValid() ? tr("%1: %2").arg(format::weekday(date) + u' ' + format::date(date),
                                                         session.day ? dayHints(*session.day) : tr("nothing logged"))
                                      : tr("No session is chosen."));
    fitRows();
    if (lineBefore)
        restore(*lineBefore, kind, setBefore, row);
    else if (m_model->rowCount() > 1)
        m_table->setCurrentIndex(m_model->index(1, LogbookSetModel::Typed));
    fillBefore();
    if (!histories) say(histories.error().what);
}

// After a set was added the row to type the next one into is the current one still.
void LogbookSession::restore(Id<LiftLine> line, LogbookSetModel::Kind kind, std::optional<Id<SetEntry>> set, int row)
{
    int found = set ? m_model->rowOf(*set) : m_model->rowOf(line, kind);
    if (found < 0) found = std::min(row, m_model->rowCount() - 1);
    m_table->setCurrentIndex(m_model->index(found, LogbookSetModel::Typed));
}

// The name of a line has the whole row.
void LogbookSession::fitRows()
{
    m_table->clearSpans();
    for (int row = 0; row < m_model->rowCount(); ++row)
        if (m_model->kindAt(row) == LogbookSetModel::Kind::Heading)
            m_table->setSpan(row, 0, 1, LogbookSetModel::ColumnCount);
}

bool LogbookSession::isEditing() const
{
    return m_delegate->isEditing();
}

void LogbookSession::openRow(const QModelIndex& index)
{
    const LineRecord* line = m_model->lineAt(index.row());
    if (!line) return;
    if (m_model->kindAt(index.row()) == LogbookSetModel::Kind::Heading)
        Q_EMIT chartWanted(line->id);
    else if (m_editable && !isEditing())
        m_table->edit(m_model->index(index.row(), LogbookSetModel::Typed));
}

bool LogbookSession::can(const QString& action) const
{
    const int row = m_table->currentIndex().row();
    if (action == QStringLiteral("lifter.before")) return m_before->count() > 0;
    if (!m_editable || !m_model->lineAt(row)) return false;
    if (action == QStringLiteral("lifter.remove")) return m_model->setAt(row);
    if (action == QStringLiteral("lifter.edit")) return m_model->kindAt(row) != LogbookSetModel::Kind::Heading;
    return action == QStringLiteral("lifter.add");
}

void LogbookSession::perform(const QString& action)
{
    const QModelIndex current = m_table->currentIndex();
    if (!can(action)) return;
    if (action == QStringLiteral("lifter.before")) {
        m_before->setFocus(Qt::ShortcutFocusReason);
        if (m_before->currentRow() < 0) m_before->setCurrentRow(0);
    } else if (action == QStringLiteral("lifter.remove")) {
        Q_EMIT removeWanted(m_model->setAt(current.row())->id);
    } else if (action == QStringLiteral("lifter.edit")) {
        openRow(current);
    } else {
        addSet();
    }
}

void LogbookSession::addSet()
{
    const LineRecord* line = m_model->lineAt(m_table->currentIndex().row());
    const int row = m_model->rowOf(line->id, LogbookSetModel::Kind::Add);
    m_table->setCurrentIndex(m_model->index(row, LogbookSetModel::Typed));
    m_table->setFocus(Qt::ShortcutFocusReason);
    m_table->edit(m_table->currentIndex());
}

void LogbookSession::fillBefore()
{
    m_before->clear();
    const LoggedSet* set = m_model->setAt(m_table->currentIndex().row());
    const auto chosen = set ? std::optional(set->id) : std::nullopt;
    for (std::size_t i = 0; i < m_histories.size(); ++i) addBefore(m_histories[i], i, chosen);
    const bool some = m_before->count() > 0;
    m_beforeTitle->setVisible(some);
    m_before->setVisible(some);
    const int rows = std::min(m_before->count(), kMostBeforeRows);
    m_before->setFixedHeight(std::max(1, rows) * (fontMetrics().height() + 6));
    showWords();
    Q_EMIT moved();
}

void LogbookSession::showWords()
{
    m_words->setText(m_model->index(m_table->currentIndex().row(), LogbookSetModel::Words).data().toString());
}

// Of the chosen set every value, the newest first; of a removed one that with which it went.
void LogbookSession::addBefore(const SetHistory& history, std::size_t index, std::optional<Id<SetEntry>> chosen)
{
    if (!history.gone && history.set != chosen) return;
    for (std::size_t left = history.was.size(); left > 0; --left) {
        const std::size_t value = left - 1;
        const ReplacedSet& was = history.was[value];
        const QString day = format::date(was.at.toLocalTime().date());
        const QString text =
            history.gone ? tr("removed on %1: set %2, %3").arg(day, QString::number(was.was.number), setWords(was.was))
                         : tr("until %1: %2").arg(day, setWords(was.was));
        auto* item = new QListWidgetItem(text, m_before);
        item->setToolTip(format::plainToolTip(text));
        item->setData(HistoryIndex, static_cast<int>(index));
        item->setData(ValueIndex, static_cast<int>(value));
        if (history.gone) return;
    }
}

void LogbookSession::bringBackCurrent()
{
    const QListWidgetItem* item = m_before->currentItem();
    if (!item || !m_editable) return;
    const auto value = static_cast<std::size_t>(item->data(ValueIndex).toInt());
    const SetHistory history = m_histories.at(static_cast<std::size_t>(item->data(HistoryIndex).toInt()));
    m_table->setFocus(Qt::OtherFocusReason);
    Q_EMIT bringBackWanted(history, value);
}

void LogbookSession::takeFocus()
{
    m_table->setFocus(Qt::ShortcutFocusReason);
    if (!m_table->currentIndex().isValid()) m_table->setCurrentIndex(m_model->index(0, LogbookSetModel::Typed));
}

void LogbookSession::say(const QString& text)
{
    m_message->setText(text);
    m_message->setVisible(!text.isEmpty());
}

}  // namespace steelyard
