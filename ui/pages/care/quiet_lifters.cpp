#include "ui/pages/care/quiet_lifters.h"

#include "core/book/book.h"
#include "ui/format/format.h"

#include <QtCore/QSettings>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QSpinBox>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

const QString kMonthsKey = QStringLiteral("care/retention_months");

}  // namespace

QuietLifters::QuietLifters(const UiContext& context, QWidget* parent)
    : QGroupBox(tr("Still needed?"), parent),
      m_context(context),
      m_months(new QSpinBox(this)),
      m_list(new QListWidget(this)),
      m_said(new QLabel(this))
{
    m_months->setRange(kFewestRetentionMonths, kMostRetentionMonths);
    m_months->setAccessibleName(tr("Months without a new entry"));
    m_months->setValue(m_context.settings ? m_context.settings->value(kMonthsKey, kUsualRetentionMonths).toInt()
                                          : kUsualRetentionMonths);
    auto* label = new QLabel(tr("No new entry for this many &months:"), this);
    label->setBuddy(m_months);
    m_said->setTextFormat(Qt::PlainText);
    m_said->setWordWrap(true);
    m_list->setAccessibleName(tr("Lifters without a new entry for long"));
    m_list->setTextElideMode(Qt::ElideRight);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    connect(m_months, &QSpinBox::valueChanged, this, [this](int months) {
        if (m_context.settings) m_context.settings->setValue(kMonthsKey, months);
        read();
    });
    const auto choose = [this](QListWidgetItem* item) {
        Q_EMIT chosen(Id<Athlete>(item->data(Qt::UserRole).toLongLong()));
    };
    connect(m_list, &QListWidget::itemActivated, this, choose);
    connect(m_list, &QListWidget::itemClicked, this, choose);
    auto* row = new QHBoxLayout;
    row->addWidget(label, 1);
    row->addWidget(m_months);
    auto* all = new QVBoxLayout(this);
    all->addLayout(row);
    all->addWidget(m_list, 1);
    all->addWidget(m_said);
    read();
}

void QuietLifters::read()
{
    m_list->clear();
    const auto quiet = inactiveAthletes(m_context.book.database(), m_context.clock.today(), m_months->value());
    if (!quiet) return m_said->setText(quiet.error().what);
    for (const InactiveAthlete& one : *quiet) {
        const QString words = tr("%1, last entry %2").arg(one.name, format::date(one.lastDay));
        auto* item = new QListWidgetItem(words, m_list);
        item->setData(Qt::UserRole, static_cast<qlonglong>(one.athlete.value()));
        item->setToolTip(format::plainToolTip(words));
    }
    m_list->setVisible(!quiet->empty());
    const auto everybody = m_context.book.athletes().all();
    if (everybody && everybody->empty()) return m_said->setText(tr("There is nobody in this book yet."));
    m_said->setText(quiet->empty() ? tr("Everybody has newer entries. A record that is no longer needed should go; who "
                                        "comes up here is yours to decide, nothing is erased by itself.")
                                   : tr("Enter shows one at the left. Nothing is erased by itself."));
}

}  // namespace steelyard
