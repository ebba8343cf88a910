#include "ui/pages/import/import_page.h"

#include "core/exchange/kept_mapping.h"
#include "ui/format/format.h"
#include "ui/pages/import/column_table.h"
#include "ui/pages/import/file_options.h"
#include "ui/pages/import/import_preview_model.h"
#include "ui/pages/import/name_match_view.h"
#include "ui/prompt/prompter.h"
#include "ui/widgets/asked_line.h"
#include "ui/widgets/elided_label.h"

#include <QtCore/QFile>
#include <QtCore/QFileInfo>
#include <QtCore/QMimeData>
#include <QtGui/QDragEnterEvent>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPlainTextEdit>
#include <QtWidgets/QProgressBar>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QTabWidget>
#include <QtWidgets/QTableView>

#include <algorithm>
#include <utility>

namespace steelyard {
namespace {

constexpr qsizetype kMostReported = 500;

}  // namespace

void ImportPage::chooseFile()
{
    m_services.prompter.chooseFileToOpen(
        this, {tr("Import a logbook"), {}, tr("Logbooks (*.csv *.tsv *.txt);;All files (*)"), {}},
        [this](const QString& path) { openFile(path); });
}

void ImportPage::openFile(const QString& path)
{
    if (m_importJob.isRunning()) return;
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        m_file->setText(tr("“%1” can’t be opened: %2").arg(QFileInfo(path).fileName(), file.errorString()));
        return;
    }
    m_path = path;
    m_file->setText(path);
    m_head = file.read(kGuessBytes);
    m_matches->clear();
    m_names->setNames(m_services.importer->names());
    m_options->setAthletes(m_names->names().athletes);
    beginWith(m_services.importer->guess(m_head));
}

// A mapping that a file with these columns came in with before goes before any guess.
void ImportPage::beginWith(const LogbookGuess& guess)
{
    m_guess = guess;
    m_choices.mapping = guess.mapping;
    m_datesOpen = guess.datesAmbiguous;
    m_namesShown = false;
    {
        const QSignalBlocker quiet(m_agreed);
        m_agreed->setChecked(false);
    }
    m_choices.discomfortAgreed = false;
    m_tabs->setCurrentIndex(0);
    fillKept();
    const QByteArray before = m_memory.of(headerSignature(guess.mapping, guess.header));
    if (const auto kept = readMapping(before); !before.isEmpty() && kept) takeMapping(*kept);
    showChoices();
    preview();
}

// How this very file is written, it says itself; what its columns and names mean was said before.
void ImportPage::takeMapping(const LogbookMapping& kept)
{
    const auto fitting = fitMapping(kept, m_guess.header);
    if (!fitting) {
        m_notice->setText(tr("The kept mapping asks for columns that this file hasn’t."));
        m_notice->show();
        return;
    }
    LogbookMapping mapping = *fitting;
    mapping.encoding = m_choices.mapping.encoding;
    mapping.separator = m_choices.mapping.separator;
    mapping.skip = m_choices.mapping.skip;
    mapping.hasHeader = m_choices.mapping.hasHeader;
    mapping.decimalMark = m_choices.mapping.decimalMark;
    if (!m_guess.datesAmbiguous) mapping.dateOrder = m_guess.mapping.dateOrder;
    m_datesOpen = false;
    m_choices.mapping = mapping;
}

void ImportPage::showChoices()
{
    const ImportPreview first = m_services.importer->firstRows(m_head, m_choices);
    const auto beyond = [&](const auto& column) { return std::get<int>(column.second) > first.header.size(); };
    std::erase_if(m_choices.mapping.columns, beyond);
    std::erase_if(m_choices.mapping.sets, [&](const ColumnNames& set) { return std::ranges::any_of(set, beyond); });
    m_options->fill(m_choices.mapping, m_guess.mapping.sets);
    m_columns->fill(m_choices.mapping, first.header, m_guess.hints);
    showRows(first);
    m_datesText->setText(tr("Dates such as %1 can be read either way. Which comes first?").arg(m_guess.exampleDate));
    m_datesQuestion->setVisible(m_datesOpen);
}

void ImportPage::showRows(ImportPreview preview)
{
    constexpr int widest = 240;
    m_model->setPreview(std::move(preview), m_choices.mapping);
    m_rows->resizeColumnsToContents();
    for (int column = 0; column < m_model->columnCount(); ++column)
        m_rows->setColumnWidth(column,
                               std::min(widest, m_rows->columnWidth(column) + fontMetrics().averageCharWidth()));
}

void ImportPage::choicesChanged()
{
    if (m_path.isEmpty()) return;
    const DateOrder before = m_choices.mapping.dateOrder;
    m_options->apply(m_choices.mapping);
    m_columns->apply(m_choices.mapping);
    if (m_choices.mapping.dateOrder != before) m_datesOpen = false;
    showChoices();
    preview();
}

void ImportPage::answerDates(DateOrder order)
{
    m_datesOpen = false;
    m_choices.mapping.dateOrder = order;
    showChoices();
    preview();
}

void ImportPage::namesChosen()
{
    if (m_matches->apply(m_choices.mapping)) preview();
}

void ImportPage::preview()
{
    m_previewJob.cancel();
    m_readable = false;
    const int asked = ++m_asked;
    m_counts->setText(tr("Reading the file…"));
    m_previewJob = m_services.jobs.run(
        this, tr("Previewing a logbook"),
        [importer = m_services.importer, path = m_path, choices = m_choices](const Progress& progress) {
            return importer->preview(path, choices, progress);
        },
        [this, asked](Result<ImportPreview> answer) {
            if (asked == m_asked) take(std::move(answer));
        });
    m_tick.start();
    updateButtons();
}

void ImportPage::take(Result<ImportPreview> preview)
{
    m_previewJob = {};
    m_tick.stop();
    if (!preview) {
        m_counts->setText(preview.error().code == ErrorCode::Cancelled ? tr("Stopped. Nothing was written.")
                                                                       : preview.error().what);
        return updateButtons();
    }
    m_readable = true;
    fillReport(*preview);
    fillNotice(*preview);
    fillCounts(*preview);
    fillAgreed(*preview);
    takeNames(*preview);
    showRows(std::move(*preview));
    updateButtons();
    // Names that clearly mean something come in as that, so what is to come has to be counted anew.
    if (m_matches->apply(m_choices.mapping)) return this->preview();
    if (std::exchange(m_namesShown, true)) return;
    if (m_matches->rowCount() > 0)
        showNames();
    else if (m_model->preview().badRows > 0)
        m_tabs->setCurrentIndex(2);
}

void ImportPage::takeNames(const ImportPreview& preview)
{
    m_matches->setNames(preview.exercises, preview.athletes, m_choices.mapping);
    m_tabs->setTabText(1, m_matches->rowCount() == 0 ? tr("&Names") : tr("&Names (%1)").arg(m_matches->rowCount()));
    m_tabs->setTabText(2, preview.badRows == 0 ? tr("&Problems") : tr("&Problems (%1)").arg(preview.badRows));
}

void ImportPage::showNames()
{
    if (m_matches->rowCount() == 0) return;
    m_tabs->setCurrentIndex(1);
    m_names->takeFocus();
}

void ImportPage::fillReport(const ImportPreview& preview)
{
    QStringList lines;
    const auto say = [&](const ImportTrouble& trouble) {
        const QString column = preview.header.value(trouble.source);
        QString where = column.isEmpty() ? tr("Line %1").arg(trouble.line)
                                         : tr("Line %1, “%2”").arg(QString::number(trouble.line), column);
        if (!trouble.what.isEmpty()) where += QStringLiteral(", ") + trouble.what;
        lines += where + QStringLiteral(": ") + trouble.mend;
    };
    for (const ImportTrouble& trouble : preview.troubles) {
        if (lines.size() == kMostReported) break;
        say(trouble);
    }
    if (const auto left = static_cast<int>(preview.troubles.size()) - static_cast<int>(kMostReported); left > 0)
        lines += tr("… and %n more.", nullptr, left);
    for (const ImportTrouble& row : preview.passedOver) say(row);
    if (!preview.unknownColumns.isEmpty())
        lines += tr("Kept as notes, since the logbook has no such column: %1")
                     .arg(preview.unknownColumns.join(QStringLiteral(", ")));
    m_report->setPlainText(lines.join(u'\n'));
}

// A file that was here before, by its content.
void ImportPage::fillNotice(const ImportPreview& preview)
{
    const auto day = m_memory.cameIn(preview.fingerprint);
    m_notice->setVisible(day.has_value());
    if (!day) return;
    m_notice->setText(preview.newSets == 0
                          ? tr("This file came in on %1. All of its sets are in the book.").arg(format::date(*day))
                          : tr("This file came in on %1. Since then some of its sets were taken out again or changed.")
                                .arg(format::date(*day)));
}

void ImportPage::fillCounts(const ImportPreview& preview)
{
    const QStringList missing = ColumnTable::missing(m_choices.mapping);
    if (!missing.isEmpty()) {
        m_counts->setText(tr("Say which column of the file holds: %1.").arg(missing.join(QStringLiteral(", "))));
        return;
    }
    if (!preview.refusal.isEmpty()) return m_counts->setText(preview.refusal);
    m_counts->setText(
        tr("New sets: %1. Already there: %2. Rows that can’t be read: %3. New lifters: %4. New exercises: %5.")
            .arg(QString::number(preview.newSets), QString::number(preview.alreadyThere),
                 QString::number(preview.badRows), QString::number(preview.newAthletes.size()),
                 QString::number(preview.newExercises.size())));
    m_counts->setToolTip(format::plainToolTip((preview.newAthletes + preview.newExercises).join(QStringLiteral(", "))));
}

// Shown only where the file has discomfort of lifters who have not agreed that it is kept.
void ImportPage::fillAgreed(const ImportPreview& preview)
{
    m_agreed->setVisible(m_choices.discomfortAgreed || !preview.discomfortLeftOut.isEmpty());
    if (preview.discomfortLeftOut.isEmpty()) return;
    m_agreed->setText(tr("Discomfort of %n lifter(s) is left out. &They agreed that it is kept: bring it in, too",
                         nullptr, static_cast<int>(preview.discomfortLeftOut.size())));
    m_agreed->setToolTip(format::plainToolTip(preview.discomfortLeftOut.join(QStringLiteral(", "))));
}

void ImportPage::updateButtons()
{
    const bool importing = m_importJob.isRunning();
    const bool busy = importing || m_previewJob.isRunning();
    const ImportPreview& preview = m_model->preview();
    const bool clean = preview.badRows == 0 || m_choices.setBadRowsAside;
    const bool whole = ColumnTable::missing(m_choices.mapping).isEmpty() && !m_datesOpen;
    m_import->setEnabled(m_readable && !busy && clean && whole && preview.refusal.isEmpty() && preview.newSets > 0);
    m_stop->setVisible(busy);
    m_progress->setVisible(busy);
    m_aside->setEnabled(!importing);
    for (QWidget* part : {static_cast<QWidget*>(m_columns), static_cast<QWidget*>(m_options),
                          static_cast<QWidget*>(m_kept), static_cast<QWidget*>(m_keep), static_cast<QWidget*>(m_names)})
        part->setEnabled(!importing && !m_path.isEmpty());
    m_forget->setEnabled(!importing && m_kept->currentIndex() > 0);
}

void ImportPage::bringIn()
{
    m_progress->setValue(0);
    m_importJob =
        m_services.importer->start(this, m_path, m_choices, [this](const Result<int>& sets) { finished(sets); });
    m_tick.start();
    updateButtons();
}

void ImportPage::finished(const Result<int>& sets)
{
    m_tick.stop();
    m_importJob = {};
    m_readable = false;  // what was new is there now
    if (sets) {
        const ImportPreview& shown = m_model->preview();
        QString text = tr("%n set(s) came in. Undo takes them out again.", nullptr, *sets);
        if (const int aside = m_choices.setBadRowsAside ? shown.badRows : 0; aside > 0)
            text += u' ' + tr("%n row(s) set aside: %1", nullptr, aside).arg(LogbookImporter::setAsidePath(m_path));
        m_counts->setText(text);
        m_memory.bringsIn(shown.fingerprint, m_services.today);
        m_memory.remember(headerSignature(m_guess.mapping, m_guess.header),
                          writeMapping(toKeep(m_choices.mapping, m_guess.header)));
        Q_EMIT imported(*sets);
    } else {
        m_readable = true;
        m_counts->setText(sets.error().code == ErrorCode::Cancelled ? tr("Stopped. Nothing was written.")
                                                                    : sets.error().what);
    }
    updateButtons();
}

void ImportPage::fillKept()
{
    const QSignalBlocker quiet(m_kept);
    m_kept->clear();
    m_kept->addItem(tr("as guessed"));
    m_kept->addItems(m_memory.names());
}

void ImportPage::chooseKept(int index)
{
    if (m_path.isEmpty()) return;
    if (index <= 0) return beginWith(m_guess);
    if (const auto kept = readMapping(m_memory.kept(m_kept->itemText(index)))) {
        takeMapping(*kept);
        showChoices();
        preview();
    }
}

void ImportPage::keepMapping()
{
    m_ask->ask({tr("Keep this mapping as"), m_kept->currentIndex() > 0 ? m_kept->currentText() : QString()},
               [this](const QString& typed) -> QString {
                   const QString name = typed.trimmed();
                   if (name.isEmpty()) return tr("It needs a name.");
                   m_memory.keep(name, writeMapping(toKeep(m_choices.mapping, m_guess.header)));
                   fillKept();
                   const QSignalBlocker quiet(m_kept);
                   m_kept->setCurrentIndex(m_kept->findText(name, Qt::MatchFixedString));
                   updateButtons();
                   return {};
               });
}

void ImportPage::forgetMapping()
{
    m_memory.forget(m_kept->currentText());
    fillKept();
    updateButtons();
}

void ImportPage::dragEnterEvent(QDragEnterEvent* event)
{
    if (event->mimeData()->hasUrls() && event->mimeData()->urls().front().isLocalFile()) event->acceptProposedAction();
}

void ImportPage::dropEvent(QDropEvent* event)
{
    const QList<QUrl> urls = event->mimeData()->urls();
    if (!urls.isEmpty() && urls.front().isLocalFile()) openFile(urls.front().toLocalFile());
}

}  // namespace steelyard
