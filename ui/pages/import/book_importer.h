// The import screen's importer for an open book: reads and previews on a worker's own connection; what came in joins the
// book's history as one edit that can be undone. Rows with problems, when set aside, are written beside the file first.
#pragma once

#include "ui/pages/import/logbook_importer.h"

namespace steelyard {

class BackupKeeper;
class Book;

class BookImporter final : public LogbookImporter {
public:
    // `backups` keeps one before each import; null: none is kept.
    BookImporter(Book& book, JobRunner& jobs, BackupKeeper* backups = nullptr);

    [[nodiscard]] LogbookGuess guess(const QByteArray& head) const override;
    [[nodiscard]] ImportNames names() const override;
    [[nodiscard]] ImportPreview firstRows(const QByteArray& head, const ImportChoices& choices) const override;
    [[nodiscard]] Result<ImportPreview> preview(const QString& path, const ImportChoices& choices,
                                                const Progress& progress) const override;
    JobHandle start(QObject* owner, const QString& path, const ImportChoices& choices,
                    std::function<void(Result<int>)> done) override;

private:
    Book& m_book;
    JobRunner& m_jobs;
    QPointer<BackupKeeper> m_backups;
    // What a preview needs that still runs when the book is closed.
    QString m_path;
    QDate m_today;
};

}  // namespace steelyard
