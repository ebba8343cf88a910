#include "ui/widgets/lift_chooser.h"

#include "core/base/text.h"
#include "ui/shell/theme.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kRowsInSight = 7;

// Every word that was typed stands somewhere in the name.
bool holdsWords(const QString& name, const QString& typed)
{
    const QString key = searchKey(name);
    const QStringList words = searchKey(typed).split(u' ', Qt::SkipEmptyParts);
    return std::ranges::all_of(words, [&](const QString& word) { return key.contains(word); });
}

}  // namespace

LiftChooser::LiftChooser(QWidget* parent)
    : QFrame(parent),
      m_title(new QLabel(this)),
      m_find(new QLineEdit(this)),
      m_list(new QListWidget(this)),
      m_consequence(new QLabel(this))
{
    setFrameShape(QFrame::StyledPanel);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(10, 6, 10, 6);
    column->setSpacing(4);
    auto* top = new QHBoxLayout;
    top->addWidget(m_title);
    top->addWidget(m_find, 1);
    column->addLayout(top);
    column->addWidget(m_list);
    column->addWidget(m_consequence);
    m_title->setTextFormat(Qt::PlainText);
    m_title->setBuddy(m_find);
    m_find->setPlaceholderText(tr("Type to find"));
    m_find->installEventFilter(this);
    m_list->setFocusPolicy(Qt::NoFocus);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setTextElideMode(Qt::ElideRight);
    m_list->setUniformItemSizes(true);
    m_list->setFixedHeight(kRowsInSight * (fontMetrics().height() + 4) + 4);
    m_consequence->setTextFormat(Qt::PlainText);
    m_consequence->setWordWrap(true);
    m_consequence->setMinimumHeight(3 * fontMetrics().lineSpacing());
    m_consequence->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    connect(m_find, &QLineEdit::textChanged, this, &LiftChooser::filter);
    connect(m_list, &QListWidget::currentRowChanged, this, &LiftChooser::showConsequence);
    connect(m_list, &QListWidget::itemDoubleClicked, this, &LiftChooser::enter);
    hide();
}

void LiftChooser::choose(const QString& title, std::vector<LiftChoice> choices, bool question,
                         std::function<void(const LiftLine&)> taken)
{
    m_choices = std::move(choices);
    m_question = question;
    m_taken = std::move(taken);
    m_asked = false;
    m_title->setText(title);
    m_find->setAccessibleName(title);
    m_find->clear();
    filter();
    show();
    m_find->setFocus(Qt::ShortcutFocusReason);
}

void LiftChooser::filter()
{
    m_list->clear();
    for (std::size_t i = 0; i < m_choices.size(); ++i) {
        if (!holdsWords(m_choices[i].name, m_find->text())) continue;
        auto* item = new QListWidgetItem(m_choices[i].name, m_list);
        item->setToolTip(m_choices[i].name);
        item->setData(Qt::UserRole, static_cast<qulonglong>(i));
    }
    m_list->setCurrentRow(0);
    showConsequence();
}

const LiftChoice* LiftChooser::current() const
{
    const auto* item = m_list->currentItem();
    return item ? &m_choices[item->data(Qt::UserRole).toULongLong()] : nullptr;
}

void LiftChooser::showConsequence()
{
    m_asked = false;
    QPalette colours = m_consequence->palette();
    colours.setColor(QPalette::WindowText, themeColours(palette()).quiet);
    m_consequence->setPalette(colours);
    const LiftChoice* choice = current();
    m_consequence->setText(choice ? choice->consequence
                                  : tr("Nothing is called that. Another word, or Escape to leave it."));
}

void LiftChooser::enter()
{
    const LiftChoice* choice = current();
    if (!choice) return;
    if (m_question && !m_asked) {
        m_asked = true;
        QPalette colours = m_consequence->palette();
        colours.setColor(QPalette::WindowText, themeColours(palette()).warm);
        m_consequence->setPalette(colours);
        m_consequence->setText(tr("%1 Enter: do so. Escape: choose another.").arg(choice->consequence));
        return;
    }
    const LiftLine lift = choice->lift;
    const auto taken = std::move(m_taken);
    hide();
    taken(lift);
}

bool LiftChooser::goBack()
{
    if (isHidden()) return false;
    if (m_asked) {
        showConsequence();
        return true;
    }
    hide();
    Q_EMIT left();
    return true;
}

bool LiftChooser::eventFilter(QObject* watched, QEvent* event)
{
    if (watched != m_find || event->type() != QEvent::KeyPress) return QFrame::eventFilter(watched, event);
    const int key = static_cast<QKeyEvent*>(event)->key();
    const int last = m_list->count() - 1;
    if (key == Qt::Key_Down) m_list->setCurrentRow(std::min(last, m_list->currentRow() + 1));
    if (key == Qt::Key_Up) m_list->setCurrentRow(std::max(0, m_list->currentRow() - 1));
    if (key == Qt::Key_Return || key == Qt::Key_Enter) enter();
    return key == Qt::Key_Down || key == Qt::Key_Up || key == Qt::Key_Return || key == Qt::Key_Enter;
}

}  // namespace steelyard
