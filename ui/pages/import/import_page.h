// Bringing in a logbook: choose or drop a file, see how it was understood, mend the choices, import.
//
//   auto* page = new ImportPage(importer, prompter, jobs, parent);
//   connect(page, &ImportPage::imported, ...);
//
// Nothing is written before “Import” is pressed; what is then written is one edit that can be undone. Preview and import
// run in the background; a preview asked for later replaces an earlier one.
#pragma once

#include "ui/pages/import/logbook_importer.h"

#include <QtCore/QTimer>
#include <QtWidgets/QWidget>

class QCheckBox;
class QComboBox;
class QLabel;
class QPlainTextEdit;
class QProgressBar;
class QPushButton;
class QTableView;
class QTableWidget;

namespace steelyard {

class ImportPreviewModel;
class Prompter;

class ImportPage final : public QWidget {
    Q_OBJECT

public:
    ImportPage(LogbookImporter& importer, Prompter& prompter, JobRunner& jobs, QWidget* parent = nullptr);
    ~ImportPage() override;
    void openFile(const QString& path);
    void chooseFile();
    [[nodiscard]] const ImportChoices& choices() const { return m_choices; }

Q_SIGNALS:
    void imported(int sets);
    void closed();

protected:
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    [[nodiscard]] QLayout* makeFileRow();
    [[nodiscard]] QLayout* makeChoiceRow();
    [[nodiscard]] QLayout* makeTables();
    [[nodiscard]] QLayout* makeDoRow();
    void fillChoices();
    void fillColumns(const QStringList& header);
    void choicesChanged();
    void preview();
    void take(Result<ImportPreview> preview);
    void bringIn();
    void finished(const Result<int>& sets);
    void updateButtons();
    [[nodiscard]] QString missingColumns() const;

    LogbookImporter& m_importer;
    Prompter& m_prompter;
    JobRunner& m_jobs;
    QString m_path;
    ImportChoices m_choices;
    bool m_filling = false;   // widgets are being set from m_choices
    bool m_readable = false;  // the newest preview came and fits m_choices
    int m_asked = 0;
    JobHandle m_previewJob;
    JobHandle m_importJob;
    QTimer m_tick;

    QLabel* m_file = nullptr;
    QComboBox* m_encoding = nullptr;
    QComboBox* m_separator = nullptr;
    QComboBox* m_decimal = nullptr;
    QComboBox* m_dates = nullptr;
    QComboBox* m_unit = nullptr;
    QTableWidget* m_columns = nullptr;
    ImportPreviewModel* m_model = nullptr;
    QTableView* m_rows = nullptr;
    QPlainTextEdit* m_report = nullptr;
    QLabel* m_counts = nullptr;
    QCheckBox* m_aside = nullptr;
    QProgressBar* m_progress = nullptr;
    QPushButton* m_import = nullptr;
    QPushButton* m_stop = nullptr;
};

}  // namespace steelyard
