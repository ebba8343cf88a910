// Puts a backup in the opened book's place: gets it ready while the book is open, closes the book, waits until nothing works on it any
// more, swaps the two and opens the book again.
//
//   restoreBook({window, jobs, prompter, clock, shelf, close, open, say}, wish);
//
// Whatever fails is told, and the book that then stands in the place is opened.
#pragma once

#include "core/care/book_restore.h"

#include <QtCore/QPointer>
#include <QtWidgets/QWidget>

namespace steelyard {

class JobRunner;
class Prompter;

struct RestoreStage {
    QWidget* window;
    JobRunner& jobs;
    Prompter& prompter;
    const Clock& clock;
    BackupShelf shelf;
    std::function<void()> close;
    std::function<void(const QString& book)> open;
    std::function<void(const QString& text)> say;
};

void restoreBook(const RestoreStage& stage, const RestoreWish& wish);

}  // namespace steelyard
