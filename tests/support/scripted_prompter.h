// A Prompter that answers from a script and keeps what it was told.
#pragma once

#include "ui/prompt/prompter.h"

#include <QtCore/QStringList>

namespace steelyard {

class ScriptedPrompter final : public Prompter {
public:
    bool agree = true;
    QString path;  // of the file that is chosen; empty: the coach leaves the dialog
    std::function<bool(const PrintQuestion&)> printer;  // absent: this machine has none
    QStringList asked;
    QStringList errors;

    void ask(QWidget*, const Question& question, std::function<void()> then) override
    {
        asked.push_back(question.text);
        if (agree) then();
    }
    void tellError(QWidget*, const QString& doing, const Error& error) override { errors << doing + error.what; }
    void chooseFileToOpen(QWidget*, const FileQuestion& question, std::function<void(const QString&)> then) override
    {
        choose(question, then);
    }
    void chooseFileToSave(QWidget*, const FileQuestion& question, std::function<void(const QString&)> then) override
    {
        choose(question, then);
    }
    void chooseFolder(QWidget*, const FileQuestion& question, std::function<void(const QString&)> then) override
    {
        choose(question, then);
    }
    bool previewPrint(QWidget*, const PrintQuestion& question) override { return printer && printer(question); }

private:
    void choose(const FileQuestion& question, const std::function<void(const QString&)>& then)
    {
        asked.push_back(question.title);
        if (!path.isEmpty()) then(path);
    }
};

}  // namespace steelyard
