#include "ui/pages/care/lifter_data_page.h"

#include "core/care/health_consent.h"
#include "core/care/sealed_record.h"
#include "core/exchange/book_export.h"
#include "ui/pages/care/consent_panel.h"
#include "ui/pages/care/erase_panel.h"
#include "ui/pages/care/quiet_lifters.h"
#include "ui/pages/care/seal_panel.h"
#include "ui/format/people.h"
#include "ui/prompt/prompter.h"

#include <QtCore/QDir>
#include <QtCore/QFileInfo>
#include <QtGui/QKeyEvent>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QCompleter>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {

LifterDataPage::LifterDataPage(const UiContext& context, LifterDataStart start, QWidget* parent)
    : QWidget(parent),
      m_context(context),
      m_start(std::move(start)),
      m_consent(new ConsentPanel(this)),
      m_erase(new ErasePanel(this)),
      m_quiet(new QuietLifters(context, this))
{
    m_left = new QStackedWidget(this);
    auto* page = new QWidget(m_left);
    auto* left = new QVBoxLayout(page);
    left->setContentsMargins(0, 0, 0, 0);
    left->addLayout(makeTop());
    left->addWidget(m_consent);
    left->addWidget(makeHandOver());
    left->addWidget(m_erase, 1);
    auto* sides = new QHBoxLayout;
    m_left->addWidget(page);
    sides->addWidget(m_left, 5);
    sides->addWidget(m_quiet, 2);
    auto* all = new QVBoxLayout(this);
    all->setSpacing(8);
    all->addLayout(sides, 1);
    all->addLayout(makeBottom());
    connect(m_lifters, &QComboBox::currentIndexChanged, this, &LifterDataPage::showLifter);
    connect(m_consent, &ConsentPanel::given, this, &LifterDataPage::give);
    connect(m_consent, &ConsentPanel::withdrawn, this, [this] { erase(true); });
    connect(m_erase, &ErasePanel::confirmed, this, [this] { erase(false); });
    connect(m_quiet, &QuietLifters::chosen, this, &LifterDataPage::choose);
    fillLifters();
    if (m_start.athlete) choose(*m_start.athlete);
    showLifter();
    say(m_start.receipt);
    m_subscription = m_context.book.hub().subscribe([this](const Changes&) { readAgain(); });
}

QLayout* LifterDataPage::makeTop()
{
    m_lifters = new QComboBox(this);
    m_lifters->setAccessibleName(tr("Lifter"));
    m_lifters->setMinimumContentsLength(24);
    m_lifters->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    auto* label = new QLabel(tr("&Lifter"), this);
    label->setBuddy(m_lifters);
    auto* row = new QHBoxLayout;
    row->addWidget(label);
    row->addWidget(m_lifters, 1);
    return row;
}

QWidget* LifterDataPage::makeHandOver()
{
    auto* box = new QGroupBox(tr("Hand over"), this);
    auto* words = new QLabel(
        tr("Everything that is kept of this lifter and nobody else, in a folder: a page to read in "
           "any browser, tables for another program, and what their columns mean. Or sealed into one file, for "
           "another coach: a book of this lifter alone."),
        box);
    words->setTextFormat(Qt::PlainText);
    words->setWordWrap(true);
    m_handOver = new QPushButton(tr("Write into a &folder…"), box);
    m_handOver->setAutoDefault(false);
    connect(m_handOver, &QPushButton::clicked, this, &LifterDataPage::chooseFolder);
    m_sealed = new QPushButton(tr("&Seal into a file…"), box);
    m_sealed->setAutoDefault(false);
    connect(m_sealed, &QPushButton::clicked, this, &LifterDataPage::beginSealing);
    auto* buttons = new QVBoxLayout;
    buttons->addWidget(m_handOver);
    buttons->addWidget(m_sealed);
    auto* row = new QHBoxLayout(box);
    row->addWidget(words, 1);
    row->addLayout(buttons);
    return box;
}

QLayout* LifterDataPage::makeBottom()
{
    m_said = new QLabel(this);
    m_said->setTextFormat(Qt::PlainText);
    m_said->setWordWrap(true);
    auto* close = new QPushButton(tr("&Close"), this);
    connect(close, &QPushButton::clicked, this, &LifterDataPage::closed);
    auto* row = new QHBoxLayout;
    row->addWidget(m_said, 1);
    row->addWidget(close, 0, Qt::AlignBottom);
    return row;
}

void LifterDataPage::fillLifters()
{
    const QSignalBlocker quiet(m_lifters);
    m_lifters->clear();
    const auto athletes = m_context.book.athletes().all();
    if (!athletes) return say(athletes.error().what);
    if (athletes->empty()) say(tr("Nobody is in this book yet."));
    for (const Row<Athlete>& row : *athletes)
        m_lifters->addItem(row.value.name, static_cast<qlonglong>(row.id.value()));
    m_lifters->setCurrentIndex(-1);
}

// After a commit, undo and redo included.
void LifterDataPage::readAgain()
{
    const auto athlete = chosen();
    fillLifters();
    {
        const QSignalBlocker quiet(m_lifters);
        if (athlete) choose(*athlete);
    }
    showLifter();
    m_quiet->read();
}

void LifterDataPage::takeFocus()
{
    m_lifters->setFocus();
}

void LifterDataPage::choose(Id<Athlete> athlete)
{
    m_lifters->setCurrentIndex(m_lifters->findData(static_cast<qlonglong>(athlete.value())));
}

std::optional<Id<Athlete>> LifterDataPage::chosen() const
{
    if (m_lifters->currentIndex() < 0) return std::nullopt;
    return Id<Athlete>(m_lifters->currentData().toLongLong());
}

void LifterDataPage::showLifter()
{
    const auto athlete = chosen();
    m_handOver->setEnabled(athlete.has_value() && !m_job.isRunning());
    m_sealed->setEnabled(athlete.has_value());
    if (!athlete) {
        m_consent->setNobody();
        m_erase->setNobody();
        return;
    }
    const auto row = m_context.book.athletes().find(*athlete);
    const auto kept = countHealthEntries(m_context.book.database(), *athlete);
    const auto plan = planErasure(m_context.book.database(), *athlete);
    if (!row || !kept || !plan) return say(!row ? row.error().what : !kept ? kept.error().what : plan.error().what);
    m_consent->show(*row, *kept);
    m_erase->show(*plan, copiesHolding(m_start.copies, plan->mark));
}

void LifterDataPage::give(const QString& note)
{
    const auto athlete = chosen();
    if (!athlete) return;
    HealthConsent consent = HealthConsent::given(m_context.clock.today());
    consent.note = note;
    const auto stored = m_context.book.history().perform(giveHealthConsent(*athlete, consent));
    if (!stored) return m_context.prompter.tellError(this, tr("The consent could not be recorded"), stored.error());
    say(tr("Recorded. Undo takes it back."));
}

void LifterDataPage::erase(bool healthOnly)
{
    const auto athlete = chosen();
    if (!athlete || !m_start.erase) return;
    const auto row = m_context.book.athletes().find(*athlete);
    if (!row) return say(row.error().what);
    // The shell closes the book, and this window with it.
    const auto erase = m_start.erase;
    const EraseWish wish{*athlete, {row->value.name, row->uuid}, healthOnly};
    Q_EMIT closed();
    erase(wish);
}

void LifterDataPage::chooseFolder()
{
    const QFileInfo book(m_context.book.path());
    m_context.prompter.chooseFolder(this, {tr("Where should the record go?"), book.path(), {}, {}},
                                    [this](const QString& folder) { handOver(folder); });
}

void LifterDataPage::handOver(const QString& folder)
{
    const auto athlete = chosen();
    if (!athlete) return;
    // A folder of its own inside the chosen one, so that nothing that stands there is replaced unasked.
    const QString wanted = tr("Record of %1").arg(m_context.clock.today().toString(Qt::ISODate));
    QString inside = QDir(folder).filePath(wanted);
    for (int i = 2; QFileInfo::exists(inside); ++i) inside = QDir(folder).filePath(wanted + u' ' + QString::number(i));
    m_job = m_context.jobs.run(
        this, tr("Handing over a record"),
        [book = m_context.book.path(), inside, athlete = *athlete](const Progress& progress) -> Result<ExportReport> {
            STEELYARD_TRY(const auto database, Database::openReader(book));
            return exportBook(*database, inside, athlete, progress);
        },
        [this, inside](const Result<ExportReport>& report) {
            m_job = {};
            m_handOver->setEnabled(true);
            if (!report) return m_context.prompter.tellError(this, tr("The record was not written"), report.error());
            say(tr("Written to “%1”. It is not sealed: hand it over in person, or seal it before it is sent.")
                    .arg(inside));
        });
    m_handOver->setEnabled(false);
}

void LifterDataPage::beginSealing()
{
    const auto athlete = chosen();
    if (!athlete || m_seal) return;
    const auto row = m_context.book.athletes().find(*athlete);
    if (!row) return say(row.error().what);
    SealPanel::Work work{.title = tr("A sealed record of %1").arg(format::person(row->value.name)),
                         .fileName = tr("Record of %1").arg(m_context.clock.today().toString(Qt::ISODate))
                                     + QStringLiteral(".steelyard.sealed")};
    work.seal = [book = m_context.book.path(), athlete = *athlete, &clock = m_context.clock](
                    const QString&, const QString& to, const Passphrase& passphrase,
                    const Progress& progress) -> Result<void> {
        STEELYARD_TRY(const auto database, Database::openReader(book));
        STEELYARD_TRY([[maybe_unused]] const auto report,
                      sealRecord(*database, {athlete, to, passphrase}, clock, progress));
        return {};
    };
    say({});
    m_seal = new SealPanel(m_context, std::move(work), m_left);
    connect(m_seal, &SealPanel::left, this, &LifterDataPage::endSealing);
    m_left->addWidget(m_seal);
    m_left->setCurrentWidget(m_seal);
    m_quiet->setEnabled(false);
    m_seal->takeFocus();
}

void LifterDataPage::endSealing()
{
    m_left->removeWidget(m_seal);
    std::exchange(m_seal, nullptr)->deleteLater();
    m_quiet->setEnabled(true);
    m_sealed->setFocus();
}

void LifterDataPage::say(const QString& text)
{
    m_said->setText(text);
}

void LifterDataPage::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape) {
        if (m_seal) return endSealing();
        Q_EMIT closed();
        return;
    }
    QWidget::keyPressEvent(event);
}

}  // namespace steelyard
