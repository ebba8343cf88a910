// Bringing in a logbook: choose or drop a file, see how it was understood, mend the choices, match the names, import.
//
//   auto* page = new ImportPage({importer, prompter, jobs, settings, book.path(), today}, parent);
//   connect(page, &ImportPage::imported, ...);
//
// Nothing is written before “Import” is pressed; what is then written is one edit that can be undone. Preview and import
// run in the background; a preview asked for later replaces an earlier one.
#pragma once

#include "ui/pages/import/import_memory.h"
#include "ui/pages/import/logbook_importer.h"

#include <QtCore/QTimer>
#include <QtWidgets/QWidget>

#include <memory>

class QCheckBox;
class QComboBox;
class QLabel;
class QPlainTextEdit;
class QProgressBar;
class QPushButton;
class QSettings;
class QTableView;
class QTabWidget;

namespace steelyard {

class AskedLine;
class ColumnTable;
class ElidedLabel;
class FileOptions;
class ImportPreviewModel;
class NameMatchModel;
class NameMatchView;
class Prompter;

class ImportPage final : public QWidget {
    Q_OBJECT

public:
    struct Services {
        std::shared_ptr<LogbookImporter> importer;  // a preview that runs on keeps it
        Prompter& prompter;
        JobRunner& jobs;
        QSettings* settings = nullptr;
        QString bookPath = {};
        QDate today = {};
    };
    explicit ImportPage(const Services& services, QWidget* parent = nullptr);
    ~ImportPage() override;
    void openFile(const QString& path);
    void chooseFile();
    // The names to match come to the front, if there are any.
    void showNames();
    [[nodiscard]] const ImportChoices& choices() const { return m_choices; }
    [[nodiscard]] bool isSettled() const { return !m_previewJob.isRunning() && !m_importJob.isRunning(); }

Q_SIGNALS:
    void imported(int sets);
    void closed();

protected:
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    [[nodiscard]] QLayout* makeFileRow();
    [[nodiscard]] QWidget* makeNotice();
    [[nodiscard]] QWidget* makeDatesQuestion();
    [[nodiscard]] QTabWidget* makeTabs();
    [[nodiscard]] QLayout* makeDoRow();
    void beginWith(const LogbookGuess& guess);
    void takeMapping(const LogbookMapping& kept);
    void showChoices();
    void showRows(ImportPreview preview);
    void choicesChanged();
    void namesChosen();
    void answerDates(DateOrder order);
    void preview();
    void take(Result<ImportPreview> preview);
    void takeNames(const ImportPreview& preview);
    void fillReport(const ImportPreview& preview);
    void fillNotice(const ImportPreview& preview);
    void fillCounts(const ImportPreview& preview);
    void fillAgreed(const ImportPreview& preview);
    void bringIn();
    void finished(const Result<int>& sets);
    void updateButtons();
    void fillKept();
    void chooseKept(int index);
    void keepMapping();
    void forgetMapping();

    Services m_services;
    ImportMemory m_memory;
    QString m_path;
    QByteArray m_head;
    LogbookGuess m_guess;
    ImportChoices m_choices;
    bool m_datesOpen = false;   // which order is meant was not said yet
    bool m_readable = false;    // the newest preview came and fits m_choices
    bool m_namesShown = false;  // of this file, before the coach chose a tab
    int m_asked = 0;
    JobHandle m_previewJob;
    JobHandle m_importJob;
    QTimer m_tick;

    ElidedLabel* m_file = nullptr;
    QComboBox* m_kept = nullptr;
    QPushButton* m_keep = nullptr;
    QPushButton* m_forget = nullptr;
    AskedLine* m_ask = nullptr;
    FileOptions* m_options = nullptr;
    QLabel* m_notice = nullptr;
    QWidget* m_datesQuestion = nullptr;
    QLabel* m_datesText = nullptr;
    ColumnTable* m_columns = nullptr;
    QTabWidget* m_tabs = nullptr;
    ImportPreviewModel* m_model = nullptr;
    QTableView* m_rows = nullptr;
    NameMatchModel* m_matches = nullptr;
    NameMatchView* m_names = nullptr;
    QPlainTextEdit* m_report = nullptr;
    QLabel* m_counts = nullptr;
    QCheckBox* m_aside = nullptr;
    QCheckBox* m_agreed = nullptr;
    QProgressBar* m_progress = nullptr;
    QPushButton* m_import = nullptr;
    QPushButton* m_stop = nullptr;
};

}  // namespace steelyard
