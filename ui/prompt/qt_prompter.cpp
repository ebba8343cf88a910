#include "ui/prompt/qt_prompter.h"

#include <QtWidgets/QFileDialog>
#include <QtWidgets/QMessageBox>
#include <QtWidgets/QPushButton>

namespace steelyard {
namespace {

QMessageBox* plainMessageBox(QWidget* parent, const QString& title, const QString& text, const QString& detail)
{
    auto* box = new QMessageBox(QMessageBox::NoIcon, title, text, QMessageBox::NoButton, parent);
    box->setAttribute(Qt::WA_DeleteOnClose);
    box->setTextFormat(Qt::PlainText);  // names may look like mark-up
    box->setInformativeText(detail);
    return box;
}

void openFileDialog(QWidget* parent, const FileQuestion& question, QFileDialog::AcceptMode mode,
                    std::function<void(const QString&)> then)
{
    auto* dialog = new QFileDialog(parent, question.title, question.suggestion, question.filter);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setAcceptMode(mode);
    dialog->setFileMode(mode == QFileDialog::AcceptSave ? QFileDialog::AnyFile : QFileDialog::ExistingFile);
    dialog->setDefaultSuffix(question.suffix);
    if (mode == QFileDialog::AcceptSave && !question.suggestion.isEmpty()) dialog->selectFile(question.suggestion);
    QObject::connect(dialog, &QFileDialog::fileSelected, parent, std::move(then));
    dialog->open();
}

}  // namespace

void QtPrompter::ask(QWidget* parent, const Question& question, std::function<void()> then)
{
    QMessageBox* box = plainMessageBox(parent, question.title, question.text, question.detail);
    auto* yes = box->addButton(question.yes, QMessageBox::AcceptRole);
    box->setDefaultButton(box->addButton(QMessageBox::Cancel));
    QObject::connect(yes, &QPushButton::clicked, parent, std::move(then));
    box->open();
}

void QtPrompter::tellError(QWidget* parent, const QString& doing, const Error& error)
{
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

}  // namespace steelyard
