// Who may write to a book: one program at a time, by <book>.lock beside it.
//
//   const BookHold hold = holdBook(path);
//   if (!hold) ... hold.holder has it, or the folder can't be written
//
// Let go when it dies; a program that was killed holds nobody up.
#pragma once

#include <QtCore/QString>

#include <memory>

class QLockFile;

namespace steelyard {

struct BookHold {
    BookHold();
    BookHold(BookHold&&) noexcept;
    BookHold& operator=(BookHold&&) noexcept;
    ~BookHold();
    explicit operator bool() const { return lock != nullptr; }

    std::unique_ptr<QLockFile> lock;
    QString holder;  // "steelyard, process 4711 on nook"; empty when it is ours, or nobody's
};

[[nodiscard]] BookHold holdBook(const QString& path);

}  // namespace steelyard
