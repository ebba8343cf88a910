// The Prompter of the running program: message boxes, file dialogs and the print preview, which open without an event loop of their own.
#pragma once

#include "ui/prompt/prompter.h"

namespace steelyard {

class QtPrompter final : public Prompter {
public:
    using Note = std::function<void(const Error&)>;
    // `note` hears of every error that is told.
    explicit QtPrompter(Note note = {}) : m_note(std::move(note)) {}
    void ask(QWidget* parent, const Question&, std::function<void()> then) override;
    void tellError(QWidget* parent, const QString& doing, const Error&) override;
    void chooseFileToOpen(QWidget* parent, const FileQuestion&, std::function<void(const QString&)> then) override;
    void chooseFileToSave(QWidget* parent, const FileQuestion&, std::function<void(const QString&)> then) override;
    void chooseFolder(QWidget* parent, const FileQuestion& question, std::function<void(const QString&)> then) override;
    bool previewPrint(QWidget* parent, const PrintQuestion&) override;

private:
    Note m_note;
};

}  // namespace steelyard
