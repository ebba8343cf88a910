#include "ui/shell/add_lifter_dialog.h"

#include "core/base/text.h"
#include "core/edits/edits.h"

#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QDialogButtonBox>
#include <QtWidgets/QFormLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPushButton>

namespace steelyard {

AddLifterDialog::AddLifterDialog(Book& book, const QStringList& groups, QWidget* parent)
    : QDialog(parent),
      m_book(book),
      m_name(new QLineEdit(this)),
      m_group(new QComboBox(this)),
      m_unit(new QComboBox(this)),
      m_agreed(new QCheckBox(tr("They &agreed to entries about discomfort"), this)),
      m_problem(new QLabel(this))
{
    setAttribute(Qt::WA_DeleteOnClose);
    setWindowTitle(tr("Add a lifter"));
    m_name->setMaxLength(static_cast<int>(kMaxNameLength));
    m_group->setEditable(true);
    m_group->addItem(QString());
    m_group->addItems(groups);
    m_unit->addItem(tr("kilograms"), static_cast<int>(MassUnit::kg));
    m_unit->addItem(tr("pounds"), static_cast<int>(MassUnit::lb));
    m_problem->setTextFormat(Qt::PlainText);
    m_problem->setWordWrap(true);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    buttons->addButton(tr("Add"), QDialogButtonBox::AcceptRole);
    auto* form = new QFormLayout(this);
    form->addRow(tr("&Name"), m_name);
    form->addRow(tr("&Group"), m_group);
    form->addRow(tr("Loads in"), m_unit);
    form->addRow(m_agreed);
    auto* words = new QLabel(consentWording(kConsentWording), this);
    words->setTextFormat(Qt::PlainText);
    words->setWordWrap(true);
    words->setMinimumWidth(fontMetrics().averageCharWidth() * 64);
    form->addRow(words);
    form->addRow(m_problem);
    form->addRow(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &AddLifterDialog::add);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
}

void AddLifterDialog::add()
{
    Athlete athlete;
    athlete.name = cleanName(m_name->text());
    athlete.group = cleanName(m_group->currentText());
    athlete.unit = static_cast<MassUnit>(m_unit->currentData().toInt());
    // Without it the fields of discomfort and joint history stay empty and hidden; it can be recorded later.
    if (m_agreed->isChecked()) athlete.consents = {HealthConsent::given(m_book.clock().today())};
    const Problems problems = validate(athlete, m_book.clock().today());
    if (!problems.empty()) {
        m_problem->setText(problems.front().text);
        return;
    }
    const auto stored = m_book.history().perform(addAthlete(athlete));
    if (!stored) {
        m_problem->setText(stored.error().what);
        return;
    }
    Q_EMIT added(athlete.name);
    accept();
}

}  // namespace steelyard
