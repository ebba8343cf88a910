// Erasing a lifter from the opened book, or what it keeps of their health: the book is closed, so that nothing on screen, in memory
// or in a worker still holds them, then opened again.
//
//   eraseFromBook({this, jobs, clock, settings, book.path(), [this] { closeBook(); }, [this](auto& path, auto& outcome) {...}}, wish);
//
// The work runs in the background. Afterwards the book's files are looked through byte by byte, and the settings lose the name.
// Nothing is called after `owner` died.
#pragma once

#include "core/care/erasure.h"

#include <functional>

class QObject;
class QSettings;

namespace steelyard {

class JobRunner;

struct EraseWish {
    Id<Athlete> athlete;
    PersonTraces traces;
    bool healthOnly = false;  // a withdrawn consent: only what is kept of their health
};

struct EraseOutcome {
    Id<Athlete> athlete;
    bool done = false;
    QString receipt;  // for the coach; without a name
};

struct EraseSteps {
    QObject* owner;
    JobRunner& jobs;
    const Clock& clock;
    QSettings& settings;
    QString book;
    QString shelf;  // folder of its backups, which keeps the mark too; empty: none are made
    std::function<void()> close;
    std::function<void(const QString& book, const EraseOutcome&)> open;
};

void eraseFromBook(const EraseSteps& steps, const EraseWish& wish);

// What the page about one lifter's data begins with, and asks for.
struct LifterDataStart {
    std::optional<Id<Athlete>> athlete;
    QString receipt;     // of what was just removed; may be empty
    QStringList copies;  // backups and other copies of the book
    std::function<void(const EraseWish&)> erase;
};

}  // namespace steelyard
