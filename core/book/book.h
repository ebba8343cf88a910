// An opened book: the connection, the repositories, the history of edits and the hub that tells of changes. The screen and
// the console work on the same thing.
//
//   STEELYARD_TRY(auto book, Book::open(path, clock));
//   STEELYARD_TRY(const auto athletes, book->athletes().all());
//   STEELYARD_CHECK(book->history().perform(addAthlete(athlete)));
//
// One program writes: it holds <book>.lock. A second one gets the book read-only, and holder() says who has it.
// Worker threads don't share a Book; they read through Database::openReader(book.path()).
#pragma once

#include "core/base/clock.h"
#include "core/edits/edit_history.h"
#include "core/storage/athlete_repository.h"
#include "core/storage/block_repository.h"
#include "core/storage/decision_repository.h"
#include "core/storage/gym_repository.h"
#include "core/storage/library_repository.h"
#include "core/storage/logbook_repository.h"
#include "core/storage/reading_parameter_repository.h"
#include "core/storage/rule_setting_repository.h"
#include "core/storage/trial_repository.h"

class QLockFile;

namespace steelyard {

class Book {
public:
    // A new book without anything in it; exchange/starter_library fills in the library.
    [[nodiscard]] static Result<std::unique_ptr<Book>> create(const QString& path, const Clock& clock);
    [[nodiscard]] static Result<std::unique_ptr<Book>> open(const QString& path, const Clock& clock);
    // For work that only reads: takes no lock and never waits for one.
    [[nodiscard]] static Result<std::unique_ptr<Book>> openForReading(const QString& path, const Clock& clock);
    ~Book();

    [[nodiscard]] const QString& path() const { return m_database->path(); }
    [[nodiscard]] const Clock& clock() const { return m_clock; }
    [[nodiscard]] bool isReadOnly() const { return m_database->isReadOnly(); }
    // Who has the book open for writing, when it isn't us: "steelyard, process 4711 on host nook". Else empty.
    [[nodiscard]] const QString& holder() const { return m_holder; }

    [[nodiscard]] Database& database() const { return *m_database; }
    [[nodiscard]] EditHistory& history() { return m_history; }
    [[nodiscard]] ChangeHub& hub() { return m_hub; }

    [[nodiscard]] AthleteRepository athletes() const { return AthleteRepository(*m_database); }
    [[nodiscard]] LibraryRepository library() const { return LibraryRepository(*m_database); }
    [[nodiscard]] GymRepository gyms() const { return GymRepository(*m_database); }
    [[nodiscard]] LogbookRepository logbook() const { return LogbookRepository(*m_database); }
    [[nodiscard]] DecisionRepository decisions() const { return DecisionRepository(*m_database); }
    [[nodiscard]] BlockRepository blocks() const { return BlockRepository(*m_database); }
    [[nodiscard]] TrialRepository trials() const { return TrialRepository(*m_database); }
    [[nodiscard]] ReadingParameterRepository readingParameters() const
    {
        return ReadingParameterRepository(*m_database);
    }
    [[nodiscard]] RuleSettingRepository ruleSettings() const { return RuleSettingRepository(*m_database); }

private:
    Book(std::unique_ptr<Database> database, std::unique_ptr<QLockFile> lock, QString holder, const Clock& clock);

    std::unique_ptr<QLockFile> m_lock;
    std::unique_ptr<Database> m_database;
    QString m_holder;
    const Clock& m_clock;
    ChangeHub m_hub;
    EditHistory m_history;
};

}  // namespace steelyard
