// Everything that stops and asks. Pages hold a Prompter, never a message box, a file dialog or a print dialog; tests hand in a scripted
// one. Nothing waits: the answer comes to `then`, and only if the coach gave one (and `parent` still lives).
//
//   prompter.chooseFileToOpen(this, {tr("Open a book"), {}, tr("Books (*.steelyard)")}, [this](const QString& path) {...});
//
// What a line in place can say needs no prompt.
#pragma once

#include "core/base/result.h"

#include <QtCore/QString>
#include <QtGui/QPageSize>

#include <functional>

class QPrinter;
class QWidget;

namespace steelyard {

struct Question {
    QString title;
    QString text;    // what will happen
    QString detail;  // what it means for their data; may be empty
    QString yes;     // the button that does it, named by the deed: "Remove the set"
};

struct FileQuestion {
    QString title;
    QString suggestion;  // folder or file to start from; may be empty
    QString filter;      // "Books (*.steelyard)"
    QString suffix;      // appended when saving and none was typed: "steelyard"
};

struct PrintQuestion {
    QString title;
    QPageSize paper;                            // to begin with; the coach may choose another in the preview
    std::function<bool(QPrinter&)> paintPages;  // every page, each time the preview asks; false: the printer gave up
};

class Prompter {
public:
    virtual ~Prompter() = default;
    // `then` runs when the coach agrees.
    virtual void ask(QWidget* parent, const Question&, std::function<void()> then) = 0;
    // What happened, what it means, what to do; `doing` heads it: "The book could not be opened".
    virtual void tellError(QWidget* parent, const QString& doing, const Error&) = 0;
    virtual void chooseFileToOpen(QWidget* parent, const FileQuestion&, std::function<void(const QString&)> then) = 0;
    virtual void chooseFileToSave(QWidget* parent, const FileQuestion&, std::function<void(const QString&)> then) = 0;
    // `suggestion` is where to begin; filter and suffix mean nothing here.
    virtual void chooseFolder(QWidget* parent, const FileQuestion&, std::function<void(const QString&)> then) = 0;
    // Shows the pages as they will come out, and prints from there. False: this machine has no printer.
    [[nodiscard]] virtual bool previewPrint(QWidget* parent, const PrintQuestion&) = 0;
};

}  // namespace steelyard
