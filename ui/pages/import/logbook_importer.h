// What the import screen needs from the importing side: guess how a file is written, preview it, bring it in.
//
//   ImportGuess guess = importer.guess(head);
//   importer.preview(path, choices, progress)   // any thread; changes nothing
//   importer.start(this, path, choices, done)   // in the background; one edit that can be undone, all or nothing
//
// Rows and columns of the file count from 0; row 0 is the first row below the header.
#pragma once

#include "core/base/progress.h"
#include "core/exchange/exercise_likeness.h"
#include "core/exchange/logbook_guess.h"
#include "ui/jobs/job.h"

#include <functional>

namespace steelyard {

struct ImportChoices {
    LogbookMapping mapping;  // columns by number
    bool setBadRowsAside = false;
    bool discomfortAgreed = false;  // the coach says so of lifters without a consent; else their discomfort stays out
    friend bool operator==(const ImportChoices&, const ImportChoices&) = default;
};

struct ImportTrouble {
    int line = 0;     // of the file, from 1
    int row = -1;     // of those that are shown; -1: not among them
    int source = -1;  // column of the file; -1: the row as a whole
    QString what;     // what stands there
    QString mend;     // what should
    friend bool operator==(const ImportTrouble&, const ImportTrouble&) = default;
};

struct ImportPreview {
    QStringList header;
    std::vector<QStringList> rows;  // the first ones
    std::vector<int> lines;         // where they begin in the file, from 1
    std::vector<ImportTrouble> troubles;
    std::vector<ImportTrouble> passedOver;  // rows that are no sets and not wrong
    QStringList unknownColumns;             // kept as notes
    std::vector<NameInFile> exercises;
    std::vector<NameInFile> athletes;
    int badRows = 0;
    QStringList newAthletes;
    QStringList newExercises;
    QStringList discomfortLeftOut;  // lifters
    int newSets = 0;
    int alreadyThere = 0;
    QString fingerprint;  // of the file's content
    QString refusal;      // why nothing can come in with these choices, whatever the rows hold; the header stands
    friend bool operator==(const ImportPreview&, const ImportPreview&) = default;
};

// What names can be matched with.
struct ImportNames {
    std::vector<ExerciseName> exercises;  // by name, each alone and with its variants
    QStringList athletes;
};

class LogbookImporter {
public:
    static constexpr int kPreviewRows = 50;
    static constexpr std::size_t kMostTroubles = 1000;  // kept; more are counted only
    virtual ~LogbookImporter() = default;
    // Where the bad rows of a file go when they are set aside.
    [[nodiscard]] static QString setAsidePath(const QString& path) { return path + QStringLiteral(".set-aside.csv"); }
    // From the first part of the file.
    [[nodiscard]] virtual LogbookGuess guess(const QByteArray& head) const = 0;
    [[nodiscard]] virtual ImportNames names() const = 0;
    // The header and first rows alone, at once.
    [[nodiscard]] virtual ImportPreview firstRows(const QByteArray& head, const ImportChoices&) const = 0;
    [[nodiscard]] virtual Result<ImportPreview> preview(const QString& path, const ImportChoices&,
                                                        const Progress&) const = 0;
    // `done` gets the number of sets that came in; it isn't called after the owner died.
    virtual JobHandle start(QObject* owner, const QString& path, const ImportChoices&,
                            std::function<void(Result<int>)> done) = 0;
};

}  // namespace steelyard
