// What the shell hands to every page. All of it outlives the page.
#pragma once

class QSettings;

namespace steelyard {

class BackupKeeper;
class Book;
class Clock;
class JobRunner;
class Prompter;
class ReviewStore;

struct UiContext {
    Book& book;
    ReviewStore& reviews;
    Prompter& prompter;
    const Clock& clock;
    JobRunner& jobs;
    // Ways of looking that outlive the program; nothing about lifters. Absent: they are forgotten with the window.
    QSettings* settings = nullptr;
    // Absent: nothing is backed up (tests, pictures).
    BackupKeeper* backups = nullptr;
};

}  // namespace steelyard
