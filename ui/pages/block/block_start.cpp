#include "ui/pages/block/block_start.h"

#include "ui/format/format.h"
#include "ui/pages/block/block_words.h"
#include "ui/shell/theme.h"
#include "ui/widgets/words.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QDateEdit>
#include <QtWidgets/QFormLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QSpinBox>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kWidestForm = 760;

}  // namespace

BlockStart::BlockStart(QWidget* parent)
    : QWidget(parent),
      m_intro(plainWords(this)),
      m_source(new QComboBox(this)),
      m_name(new QLineEdit(this)),
      m_start(new QDateEdit(this)),
      m_weeks(new QSpinBox(this)),
      m_deload(new QCheckBox(tr("The last one &is an easier week"), this)),
      m_daysOff(new QLineEdit(this)),
      m_problem(plainWords(this)),
      m_make(new QPushButton(tr("&Make the block"), this)),
      m_leave(new QPushButton(tr("Leave it"), this))
{
    build();
    connect(m_source, &QComboBox::currentIndexChanged, this, &BlockStart::showSource);
    connect(m_make, &QPushButton::clicked, this, &BlockStart::make);
    connect(m_leave, &QPushButton::clicked, this, &BlockStart::left);
}

void BlockStart::build()
{
    m_source->setAccessibleName(tr("Start from"));
    m_source->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_start->setCalendarPopup(true);
    m_start->setDisplayFormat(format::datePattern());
    m_weeks->setRange(1, static_cast<int>(kMostBlockWeeks));
    m_daysOff->setPlaceholderText(tr("such as %1 – %2 holiday; leave it empty for none")
                                      .arg(format::date(QDate(2027, 12, 24)), format::date(QDate(2027, 12, 31))));
    auto* days = new QHBoxLayout;
    for (int day = 1; day <= kDaysOfPlanWeek; ++day) {
        auto* box = new QCheckBox(QLocale().dayName(day, QLocale::ShortFormat), this);
        box->setAccessibleName(QLocale().dayName(day));
        m_weekdays[static_cast<std::size_t>(day) - 1] = box;
        days->addWidget(box);
    }
    days->addStretch(1);
    auto* weeks = new QHBoxLayout;
    weeks->addWidget(m_weeks);
    weeks->addWidget(m_deload);
    weeks->addStretch(1);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_make);
    buttons->addWidget(m_leave);
    buttons->addStretch(1);
    auto* form = new QFormLayout;
    form->addRow(tr("Fr&om"), m_source);
    form->addRow(tr("&Name"), m_name);
    form->addRow(tr("First &day"), m_start);
    auto* weeksLabel = new QLabel(tr("Week&s"), this);
    weeksLabel->setBuddy(m_weeks);
    form->addRow(weeksLabel, weeks);
    form->addRow(tr("Training days"), days);
    form->addRow(tr("D&ays off"), m_daysOff);
    auto* inner = new QWidget(this);
    inner->setMaximumWidth(kWidestForm);
    auto* column = new QVBoxLayout(inner);
    column->setSpacing(12);
    column->addWidget(m_intro);
    column->addLayout(form);
    column->addWidget(m_problem);
    column->addLayout(buttons);
    column->addStretch(1);
    auto* whole = new QHBoxLayout(this);
    whole->setContentsMargins(24, 20, 24, 12);
    whole->addWidget(inner, 1);
    whole->addStretch(0);
}

void BlockStart::offer(Offer offer)
{
    m_offer = std::move(offer);
    m_intro->setText(m_offer->intro);
    m_intro->setVisible(!m_offer->intro.isEmpty());
    m_leave->setVisible(m_offer->canLeave);
    m_name->setText(m_offer->name);
    m_start->setDate(m_offer->start);
    m_daysOff->clear();
    say({});
    const QSignalBlocker quiet(m_source);
    m_source->clear();
    for (const BlockSource& source : m_offer->sources) {
        m_source->addItem(source.title);
        m_source->setItemData(m_source->count() - 1, format::plainToolTip(source.title), Qt::ToolTipRole);
    }
    m_source->setCurrentIndex(0);
    showSource();
}

void BlockStart::showSource()
{
    const int at = m_source->currentIndex();
    if (!m_offer || at < 0) return;
    const BlockSource& source = m_offer->sources[static_cast<std::size_t>(at)];
    m_weeks->setValue(static_cast<int>(source.weeks));
    m_weeks->setEnabled(!source.hasShape);
    m_deload->setVisible(!source.hasShape);
    m_deload->setChecked(true);
    for (int day = 1; day <= kDaysOfPlanWeek; ++day)
        m_weekdays[static_cast<std::size_t>(day) - 1]->setChecked(std::ranges::find(source.weekdays, day)
                                                                  != source.weekdays.end());
}

std::vector<int> BlockStart::weekdays() const
{
    std::vector<int> chosen;
    for (int day = 1; day <= kDaysOfPlanWeek; ++day)
        if (m_weekdays[static_cast<std::size_t>(day) - 1]->isChecked()) chosen.push_back(day);
    return chosen;
}

void BlockStart::takeFocus()
{
    m_name->setFocus(Qt::ShortcutFocusReason);
    m_name->selectAll();
}

void BlockStart::say(const QString& problem)
{
    QPalette colours = m_problem->palette();
    colours.setColor(QPalette::WindowText,
                     problem.isEmpty() ? themeColours(palette()).quiet : themeColours(palette()).alarm);
    m_problem->setPalette(colours);
    m_problem->setText(problem.isEmpty() ? tr("Enter makes it. Everything can be changed afterwards.") : problem);
}

void BlockStart::make()
{
    if (!m_offer || m_source->currentIndex() < 0) return;
    const auto daysOff = readDaysOff(m_daysOff->text());
    if (!daysOff) return say(daysOff.error().what);
    const BlockWishes wishes{.athlete = m_offer->athlete,
                             .name = m_name->text(),
                             .start = m_start->date(),
                             .weeks = static_cast<std::size_t>(m_weeks->value()),
                             .weekdays = weekdays(),
                             .lastIsDeload = m_deload->isChecked(),
                             .daysOff = *daysOff};
    const auto block = startBlock(m_offer->sources[static_cast<std::size_t>(m_source->currentIndex())], wishes);
    if (!block) return say(block.error().what);
    Q_EMIT made(*block);
}

void BlockStart::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) return make();
    if (event->key() == Qt::Key_Escape && m_offer && m_offer->canLeave) {
        Q_EMIT left();
        return;
    }
    QWidget::keyPressEvent(event);
}

}  // namespace steelyard
