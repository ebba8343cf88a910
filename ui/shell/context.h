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
class SecretStore;

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
    // Where the coach lets passphrases be remembered (core/care/secret_store.h). Absent: nowhere.
    SecretStore* secrets = nullptr;
};

}  // namespace steelyard
