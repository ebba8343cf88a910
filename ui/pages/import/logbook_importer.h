// What the import screen needs from the importing side: guess how a file is written, preview it, bring it in.
//
//   ImportChoices choices = importer.guess(head);
//   importer.preview(path, choices, progress)   // any thread; changes nothing
//   importer.start(this, path, choices, done)   // in the background; one edit that can be undone, all or nothing
//
// Rows and columns of the file count from 0; row 0 is the first row below the header.
#pragma once

#include "core/base/load.h"
#include "core/base/progress.h"
#include "core/exchange/logbook_mapping.h"
#include "ui/jobs/job.h"

#include <QtCore/QStringList>

#include <functional>

namespace steelyard {

struct ColumnChoice {
    QString column;   // of the logbook: "date", "reps"
    int source = -1;  // of the file; -1: none
    bool needed = false;
    friend bool operator==(const ColumnChoice&, const ColumnChoice&) = default;
};

struct ImportChoices {
    QString encoding = QStringLiteral("utf-8");
    QChar separator = u',';
    bool decimalComma = false;
    DateOrder dates = DateOrder::YearMonthDay;
    MassUnit unit = MassUnit::kg;  // where a row doesn't say
    std::vector<ColumnChoice> columns;
    bool setBadRowsAside = false;
    friend bool operator==(const ImportChoices&, const ImportChoices&) = default;
};

struct ImportTrouble {
    int row = 0;
    int source = -1;  // column of the file; -1: the row as a whole
    QString what;     // what stands there
    QString mend;     // what should
    friend bool operator==(const ImportTrouble&, const ImportTrouble&) = default;
};

struct ImportPreview {
    QStringList header;
    std::vector<QStringList> rows;  // the first ones
    std::vector<ImportTrouble> troubles;
    int badRows = 0;
    int newAthletes = 0;
    int newSets = 0;
    int alreadyThere = 0;
    QString refusal;  // why nothing can come in with these choices, whatever the rows hold; the header stands
    friend bool operator==(const ImportPreview&, const ImportPreview&) = default;
};

class LogbookImporter {
public:
    static constexpr int kPreviewRows = 50;
    virtual ~LogbookImporter() = default;
    // Where the bad rows of a file go when they are set aside.
    [[nodiscard]] static QString setAsidePath(const QString& path) { return path + QStringLiteral(".set-aside.csv"); }
    [[nodiscard]] virtual QStringList encodings() const = 0;
    // From the first part of the file; names every column of the logbook, chosen or not.
    [[nodiscard]] virtual ImportChoices guess(const QByteArray& head) const = 0;
    [[nodiscard]] virtual Result<ImportPreview> preview(const QString& path, const ImportChoices&,
                                                        const Progress&) const = 0;
    // `done` gets the number of sets that came in; it isn't called after the owner died.
    virtual JobHandle start(QObject* owner, const QString& path, const ImportChoices&,
                            std::function<void(Result<int>)> done) = 0;
};

}  // namespace steelyard
