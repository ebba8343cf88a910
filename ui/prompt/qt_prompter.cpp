#include "ui/prompt/qt_prompter.h"

#include "ui/format/people.h"
#include "ui/widgets/ampersands.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QDir>
#include <QtCore/QFileInfo>
#include <QtPrintSupport/QPrintPreviewDialog>
#include <QtPrintSupport/QPrinter>
#include <QtPrintSupport/QPrinterInfo>
#include <QtWidgets/QFileDialog>
#include <QtWidgets/QLabel>
#include <QtWidgets/QMessageBox>
#include <QtWidgets/QPushButton>

#include <memory>

namespace steelyard {
namespace {

struct PrompterText {
    Q_DECLARE_TR_FUNCTIONS(PrompterText)
};

QMessageBox* plainMessageBox(QWidget* parent, const QString& title, const QString& text, const QString& detail)
{
    auto* box = new QMessageBox(QMessageBox::NoIcon, format::people(title), format::people(text), QMessageBox::NoButton,
                                parent);
    box->setAttribute(Qt::WA_DeleteOnClose);
    box->setInformativeText(format::people(detail));
    // Names may look like mark-up. The box itself has this for its first text alone.
    for (auto* label : box->findChildren<QLabel*>()) label->setTextFormat(Qt::PlainText);
    return box;
}

void openFileDialog(QWidget* parent, const FileQuestion& question, QFileDialog::AcceptMode mode,
                    std::function<void(const QString&)> then)
{
    const QFileInfo suggestion(question.suggestion);
    const bool isFolder = question.suggestion.isEmpty() || suggestion.isDir();
    // A new account may have no folder for documents yet; the dialog would begin wherever the program was started.
    const QString folder = isFolder ? question.suggestion : suggestion.path();
    auto* dialog =
        new QFileDialog(parent, question.title, QFileInfo::exists(folder) ? folder : QDir::homePath(), question.filter);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setAcceptMode(mode);
    dialog->setFileMode(mode == QFileDialog::AcceptSave ? QFileDialog::AnyFile : QFileDialog::ExistingFile);
    dialog->setDefaultSuffix(question.suffix);
    if (mode == QFileDialog::AcceptSave && !isFolder) dialog->selectFile(suggestion.fileName());
    QObject::connect(dialog, &QFileDialog::fileSelected, parent, std::move(then));
    dialog->open();
}

}  // namespace

void QtPrompter::ask(QWidget* parent, const Question& question, std::function<void()> then)
{
    QMessageBox* box = plainMessageBox(parent, question.title, question.text, question.detail);
    auto* yes = box->addButton(keepingAmpersands(question.yes), QMessageBox::AcceptRole);
    box->setDefaultButton(box->addButton(QMessageBox::Cancel));
    QObject::connect(yes, &QPushButton::clicked, parent, std::move(then));
    box->open();
}

void QtPrompter::tellError(QWidget* parent, const QString& doing, const Error& error)
{
    if (m_note) m_note(error);
    QMessageBox* box = plainMessageBox(parent, doing, doing, error.what);
    box->setDetailedText(error.detail);
    box->addButton(QMessageBox::Close);
    box->open();
}

void QtPrompter::chooseFileToOpen(QWidget* parent, const FileQuestion& question,
                                  std::function<void(const QString&)> then)
{
    openFileDialog(parent, question, QFileDialog::AcceptOpen, std::move(then));
}

void QtPrompter::chooseFileToSave(QWidget* parent, const FileQuestion& question,
                                  std::function<void(const QString&)> then)
{
    openFileDialog(parent, question, QFileDialog::AcceptSave, std::move(then));
}

void QtPrompter::chooseFolder(QWidget* parent, const FileQuestion& question, std::function<void(const QString&)> then)
{
    auto* dialog = new QFileDialog(parent, question.title, question.suggestion);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setFileMode(QFileDialog::Directory);
    dialog->setOption(QFileDialog::ShowDirsOnly);
    QObject::connect(dialog, &QFileDialog::fileSelected, parent, std::move(then));
    dialog->open();
}

bool QtPrompter::previewPrint(QWidget* parent, const PrintQuestion& question)
{
    if (QPrinterInfo::availablePrinterNames().isEmpty()) return false;
    auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
    printer->setDocName(question.title);
    printer->setPageSize(question.paper);
    printer->setFullPage(true);
    auto* dialog = new QPrintPreviewDialog(printer.get(), parent);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setWindowTitle(question.title);
    // The dialog uses the printer until it is gone, so the connection keeps the printer.
    QObject::connect(dialog, &QPrintPreviewDialog::paintRequested, dialog,
                     [this, parent, printer, paint = question.paintPages](QPrinter* target) {
                         if (!paint(*target))
                             tellError(parent, PrompterText::tr("The printer stopped before the last page"),
                                       {ErrorCode::Storage, PrompterText::tr("Check the printer, then print again.")});
                     });
    dialog->open();
    return true;
}

}  // namespace steelyard
