#include "ui/pages/lifter/session_panel.h"

#include "ui/format/format.h"
#include "ui/pages/lifter/set_words.h"
#include "ui/widgets/words.h"

#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QTableView>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
SessionPanel::SessionPanel(History history, QWidget* parent)
    : QWidget(parent),
      m_historyOf(std::move(history)),
      m_model(new SetTableModel(this)),
      m_table(new QTableView(this)),
      m_heading(selectableWords(this)),
      m_message(selectableWords(this)),
      m_history(selectableWords(this))
{
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("Sets of the session"));
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 8);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_table->horizontalHeader()->setSectionResizeMode(SetTableModel::Note, QHeaderView::Stretch);
    m_table->setShowGrid(false);
    m_table->setFrameShape(QFrame::NoFrame);
    m_table->setTabKeyNavigation(false);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed
                             | QAbstractItemView::AnyKeyPressed);
    m_message->hide();
    m_history->setForegroundRole(QPalette::PlaceholderText);

    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->setSpacing(3);
    all->addWidget(m_heading);
    all->addWidget(m_table, 1);
    all->addWidget(m_message);
    all->addWidget(m_history);
    QFont bold = m_heading->font();
    bold.setBold(true);
    m_heading->setFont(bold);
    connect(m_model, &SetTableModel::changeWanted, this, &SessionPanel::changeWanted);
    connect(m_model, &SetTableModel::refused, this, &SessionPanel::say);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this, &SessionPanel::showHistory);
    showSession(nullptr, false);
}

void SessionPanel::showSession(const Exposure* exposure, bool editable)
{
    m_message->hide();
    const QModelIndex current = m_table->currentIndex();
    const bool same = exposure && exposure->date == m_date;
    m_date = exposure ? exposure->date : QDate();
    m_model->setSets(exposure ? exposure->sets : std::vector<LoggedSet>(), editable);
    m_table->setVisible(exposure);
    if (!exposure) {
        m_heading->setText(tr("No session chosen. Step through them with the arrow keys, or click a point."));
        m_history->clear();
        return;
    }
    m_heading->setText(tr("Session of %1").arg(format::weekday(m_date) + u' ' + format::date(m_date)));
    if (m_model->rowCount() > 0)
        m_table->setCurrentIndex(same && current.isValid() ? m_model->index(current.row(), current.column())
                                                           : m_model->index(0, SetTableModel::LoadColumn));
    showHistory();
}

void SessionPanel::showHistory()
{
    const LoggedSet* logged = m_model->at(m_table->currentIndex().row());
    m_history->clear();
    if (!logged) return;
    const auto replaced = m_historyOf(logged->id);
    if (!replaced) {
        m_history->setText(replaced.error().what);
        return;
    }
    QStringList lines;
    for (const ReplacedSet& was : *replaced)
        lines +=
            tr("Set %1 said %2 until %3.")
                .arg(QString::number(logged->set.number), setWords(was.was), format::date(was.at.toLocalTime().date()));
    m_history->setText(lines.join(u'\n'));
}

QString SessionPanel::historyText() const
{
    return m_history->text();
}

void SessionPanel::say(const QString& text)
{
    m_message->setText(text);
    m_message->setVisible(!text.isEmpty());
}

}  // namespace steelyard
