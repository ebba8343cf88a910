#include "ui/pages/import/name_match_view.h"

#include "ui/widgets/elided_label.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QCompleter>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QStyledItemDelegate>
#include <QtWidgets/QTableView>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

constexpr int kMostNumbered = 9;

// Every name that a row can become: a new one, the suggestions, then all others. Typing finds any part of a name.
class BecomesDelegate final : public QStyledItemDelegate {
public:
    BecomesDelegate(NameMatchModel* model, NameMatchView* view)
        : QStyledItemDelegate(view), m_model(model), m_view(view)
    {}

    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem&, const QModelIndex& index) const override
    {
        auto* box = new QComboBox(parent);
        box->setEditable(true);
        box->setInsertPolicy(QComboBox::NoInsert);
        for (const ExerciseName& name : choices(index.row())) box->addItem(NameMatchModel::fullName(name));
        box->completer()->setFilterMode(Qt::MatchContains);
        box->completer()->setCompletionMode(QCompleter::PopupCompletion);
        box->completer()->setCaseSensitivity(Qt::CaseInsensitive);
        return box;
    }
    void setEditorData(QWidget* editor, const QModelIndex& index) const override
    {
        auto* box = static_cast<QComboBox*>(editor);
        const auto& now = m_model->at(index.row()).becomes;
        const auto all = choices(index.row());
        const auto at = std::ranges::find(all, now);
        box->setCurrentIndex(at == all.end() ? 0 : static_cast<int>(at - all.begin()));
    }
    void setModelData(QWidget* editor, QAbstractItemModel*, const QModelIndex& index) const override
    {
        // What was typed and is no name of the list changes nothing.
        auto* box = static_cast<QComboBox*>(editor);
        const int at = box->findText(box->currentText(), Qt::MatchFixedString);
        const auto all = choices(index.row());
        if (at >= 0) m_model->choose(index.row(), all[static_cast<std::size_t>(at)]);
    }

private:
    [[nodiscard]] std::vector<ExerciseName> choices(int row) const
    {
        const NameMatchModel::Match& match = m_model->at(row);
        std::vector<ExerciseName> all{match.name.name};
        const auto add = [&all](const ExerciseName& name) {
            if (std::ranges::find(all, name) == all.end()) all.push_back(name);
        };
        for (const ExerciseSuggestion& suggestion : match.name.suggestions) add(suggestion.name);
        if (match.isAthlete)
            for (const QString& name : m_view->names().athletes) add({name, {}});
        else
            for (const ExerciseName& name : m_view->names().exercises) add(name);
        return all;
    }

    NameMatchModel* m_model;
    NameMatchView* m_view;
};

}  // namespace

NameMatchView::NameMatchView(NameMatchModel* model, QWidget* parent)
    : QWidget(parent), m_model(model), m_table(new QTableView(this)), m_suggestions(new ElidedLabel(this))
{
    m_table->setModel(m_model);
    m_table->setItemDelegateForColumn(NameMatchModel::Becomes, new BecomesDelegate(m_model, this));
    m_table->setAccessibleName(tr("Names of the file and what they come in as"));
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed);
    m_table->setShowGrid(false);
    m_table->setFrameShape(QFrame::NoFrame);
    m_table->setWordWrap(false);
    m_table->setTabKeyNavigation(false);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() * 8 / 5);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setSectionResizeMode(NameMatchModel::InFile, QHeaderView::Stretch);
    m_table->horizontalHeader()->setSectionResizeMode(NameMatchModel::Becomes, QHeaderView::Stretch);
    for (const int narrow : {NameMatchModel::RowCount, NameMatchModel::How})
        m_table->horizontalHeader()->setSectionResizeMode(narrow, QHeaderView::ResizeToContents);
    m_table->installEventFilter(this);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this, &NameMatchView::showSuggestions);
    connect(m_model, &QAbstractItemModel::dataChanged, this, &NameMatchView::showSuggestions);
    connect(m_model, &QAbstractItemModel::modelReset, this, &NameMatchView::showSuggestions);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_table, 1);
    column->addWidget(m_suggestions);
    showSuggestions();
}

void NameMatchView::takeFocus()
{
    m_table->setFocus();
    m_table->selectRow(std::max(0, m_table->currentIndex().row()));
}

void NameMatchView::showSuggestions()
{
    const QModelIndex current = m_table->currentIndex();
    if (m_model->rowCount() == 0)
        return m_suggestions->setText(
            tr("Names that the book doesn’t have will stand here, to be matched in one pass."));
    if (!current.isValid()) return m_suggestions->setText(tr("Up and down choose a name; its suggestions stand here."));
    QStringList words;
    int number = 0;
    for (const ExerciseSuggestion& suggestion : m_model->at(current.row()).name.suggestions)
        if (++number <= kMostNumbered)
            words += QStringLiteral("%1  %2").arg(QString::number(number), NameMatchModel::fullName(suggestion.name));
    words += tr("N  new");
    words += tr("Enter  any other");
    m_suggestions->setText(words.join(QStringLiteral("     ")));
}

void NameMatchView::goOn(int row)
{
    const int next = std::min(row + 1, m_model->rowCount() - 1);
    m_table->setCurrentIndex(m_model->index(next, NameMatchModel::Becomes));
}

bool NameMatchView::press(int key)
{
    const QModelIndex current = m_table->currentIndex();
    if (!current.isValid()) return false;
    const int row = current.row();
    if (key >= Qt::Key_1 && key <= Qt::Key_9)
        m_model->takeSuggestion(row, key - Qt::Key_1);
    else if (key == Qt::Key_N)
        m_model->makeNew(row);
    else if (key == Qt::Key_Return || key == Qt::Key_Enter) {
        m_table->edit(m_model->index(row, NameMatchModel::Becomes));
        return true;
    } else
        return false;
    goOn(row);
    return true;
}

bool NameMatchView::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_table && event->type() == QEvent::KeyPress) {
        const auto* pressed = static_cast<QKeyEvent*>(event);
        if (!(pressed->modifiers() & (Qt::ControlModifier | Qt::AltModifier)) && press(pressed->key())) return true;
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace steelyard
