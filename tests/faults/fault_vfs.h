// A file system between SQLite and the real one, for tests: it can fail at the N-th call, and it remembers what was written since each
// file was last synced, so that the files can be had as a loss of power at this moment could leave them.
//
//   FaultVfs& disk = FaultVfs::installed();     // from now on every connection of this process goes through it
//   disk.failAt(17, Fault::Once);               // ... work ...; disk.calm();
//   disk.record([&] { ... });                   // called after each change
//   disk.afterPowerLoss(random, folder);        // the books and journals that changed, into that folder
//
// What a loss of power may do, as sqlite.org/atomiccommit.html (2, 9) describes disks: of what was not synced any part arrives, in any
// order, in pieces of 512 bytes; what was synced stays.
#pragma once

#include <QtCore/QByteArray>
#include <QtCore/QString>

#include <functional>
#include <map>
#include <optional>
#include <random>
#include <vector>

namespace steelyard::test {

enum class Fault { Once, FromThenOn };

class FaultVfs {
public:
    static FaultVfs& installed();

    void failAt(int call, Fault fault);
    void calm();
    [[nodiscard]] int calls() const { return m_calls; }  // since failAt() or calm()
    [[nodiscard]] bool hasFailed() const { return m_failed; }

    // From now on, until `record({})`. The files are taken as synced as they stand.
    void record(std::function<void()> afterEachChange);
    void afterPowerLoss(std::mt19937& random, const QString& folder) const;

    // For the methods of its files.
    [[nodiscard]] bool refuses();
    void wasOpened(const QString& path);
    void wasWritten(const QString& path, qint64 offset, const QByteArray& bytes);
    void wasCut(const QString& path, qint64 size);
    void wasDeleted(const QString& path);
    void wasSynced(const QString& path);

private:
    using Content = std::optional<QByteArray>;  // nothing: no such file
    struct Change {
        enum class Kind { Write, Cut, Delete } kind;
        qint64 at = 0;
        QByteArray bytes;
    };
    struct File {
        Content synced;
        std::vector<Change> pending;
    };
    void changed(const QString& path, Change change);
    static void apply(const Change& change, Content& content);
    static Content lose(const File& file, std::mt19937& random);

    int m_calls = 0;
    int m_failAt = 0;
    Fault m_fault = Fault::Once;
    bool m_failed = false;
    std::function<void()> m_afterEachChange;
    std::map<QString, File> m_files;
};

}  // namespace steelyard::test
