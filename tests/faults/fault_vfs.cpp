#include "tests/faults/fault_vfs.h"

#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>

#include <sqlite3.h>

#include <algorithm>
#include <cstring>

namespace steelyard::test {
namespace {

constexpr qint64 kSector = 512;

sqlite3_vfs* realDisk()
{
    static sqlite3_vfs* const disk = [] {
        sqlite3_initialize();
        return sqlite3_vfs_find(nullptr);
    }();
    return disk;
}

FaultVfs* theDisk = nullptr;

struct FaultFile {
    sqlite3_file base;  // first: SQLite sees only this
    char* path;
    sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};

FaultFile* own(sqlite3_file* file)
{
    return reinterpret_cast<FaultFile*>(file);
}

sqlite3_file* real(sqlite3_file* file)
{
    return own(file)->real();
}

QString pathOf(sqlite3_file* file)
{
    return QString::fromUtf8(own(file)->path);
}

int closeFile(sqlite3_file* file)
{
    const int code = real(file)->pMethods->xClose(real(file));
    sqlite3_free(own(file)->path);
    own(file)->path = nullptr;
    return code;
}

int readFile(sqlite3_file* file, void* into, int count, sqlite3_int64 at)
{
    if (theDisk->refuses()) return SQLITE_IOERR_READ;
    return real(file)->pMethods->xRead(real(file), into, count, at);
}

int writeFile(sqlite3_file* file, const void* from, int count, sqlite3_int64 at)
{
    if (theDisk->refuses()) return SQLITE_IOERR_WRITE;
    const int code = real(file)->pMethods->xWrite(real(file), from, count, at);
    if (code == SQLITE_OK) theDisk->wasWritten(pathOf(file), at, QByteArray(static_cast<const char*>(from), count));
    return code;
}

int truncateFile(sqlite3_file* file, sqlite3_int64 size)
{
    if (theDisk->refuses()) return SQLITE_IOERR_TRUNCATE;
    const int code = real(file)->pMethods->xTruncate(real(file), size);
    if (code == SQLITE_OK) theDisk->wasCut(pathOf(file), size);
    return code;
}

// The real disk need not sync: what is synced here is what this file system says is. That also makes thousands of commits quick.
int syncFile(sqlite3_file* file, int)
{
    if (theDisk->refuses()) return SQLITE_IOERR_FSYNC;
    theDisk->wasSynced(pathOf(file));
    return SQLITE_OK;
}

int sizeOfFile(sqlite3_file* file, sqlite3_int64* size)
{
    if (theDisk->refuses()) return SQLITE_IOERR_FSTAT;
    return real(file)->pMethods->xFileSize(real(file), size);
}

int lockFile(sqlite3_file* file, int level)
{
    return real(file)->pMethods->xLock(real(file), level);
}
int unlockFile(sqlite3_file* file, int level)
{
    return real(file)->pMethods->xUnlock(real(file), level);
}
int isReserved(sqlite3_file* file, int* out)
{
    return real(file)->pMethods->xCheckReservedLock(real(file), out);
}
int control(sqlite3_file* file, int op, void* arg)
{
    return real(file)->pMethods->xFileControl(real(file), op, arg);
}
int sectorSize(sqlite3_file* file)
{
    return real(file)->pMethods->xSectorSize(real(file));
}
int characteristics(sqlite3_file* file)
{
    return real(file)->pMethods->xDeviceCharacteristics(real(file));
}

int mapShared(sqlite3_file* file, int page, int size, int extend, void volatile** out)
{
    if (theDisk->refuses()) return SQLITE_IOERR_SHMMAP;
    return real(file)->pMethods->xShmMap(real(file), page, size, extend, out);
}
int lockShared(sqlite3_file* file, int at, int n, int flags)
{
    return real(file)->pMethods->xShmLock(real(file), at, n, flags);
}
void barrier(sqlite3_file* file)
{
    real(file)->pMethods->xShmBarrier(real(file));
}
int unmapShared(sqlite3_file* file, int remove)
{
    return real(file)->pMethods->xShmUnmap(real(file), remove);
}

const sqlite3_io_methods kMethods = {2,        closeFile,   readFile,        writeFile,  truncateFile,
                                     syncFile, sizeOfFile,  lockFile,        unlockFile, isReserved,
                                     control,  sectorSize,  characteristics, mapShared,  lockShared,
                                     barrier,  unmapShared, nullptr,         nullptr};

int openFile(sqlite3_vfs*, sqlite3_filename name, sqlite3_file* file, int flags, int* outFlags)
{
    FaultFile* fault = own(file);
    fault->base.pMethods = nullptr;
    fault->path = nullptr;
    fault->real()->pMethods = nullptr;
    if (theDisk->refuses()) return SQLITE_CANTOPEN;
    const int code = realDisk()->xOpen(realDisk(), name, fault->real(), flags, outFlags);
    if (code != SQLITE_OK) {
        if (fault->real()->pMethods) fault->real()->pMethods->xClose(fault->real());
        return code;
    }
    fault->path = sqlite3_mprintf("%s", name ? name : "");
    if (!fault->path) {
        fault->real()->pMethods->xClose(fault->real());
        return SQLITE_NOMEM;
    }
    fault->base.pMethods = &kMethods;
    if (flags & (SQLITE_OPEN_MAIN_DB | SQLITE_OPEN_WAL)) theDisk->wasOpened(pathOf(file));
    return SQLITE_OK;
}

int deleteFile(sqlite3_vfs*, const char* name, int syncFolder)
{
    if (theDisk->refuses()) return SQLITE_IOERR_DELETE;
    const int code = realDisk()->xDelete(realDisk(), name, syncFolder);
    if (code == SQLITE_OK) theDisk->wasDeleted(QString::fromUtf8(name));
    return code;
}

QByteArray contentOf(const QString& path)
{
    // Not through a plain handle of its own, whose closing would cancel SQLite's locks: there is only one process here.
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

}  // namespace

FaultVfs& FaultVfs::installed()
{
    if (!theDisk) {
        static FaultVfs disk;
        static sqlite3_vfs vfs = *realDisk();
        theDisk = &disk;
        vfs.zName = "fault";
        vfs.szOsFile += static_cast<int>(sizeof(FaultFile));
        vfs.xOpen = openFile;
        vfs.xDelete = deleteFile;
        sqlite3_vfs_register(&vfs, 1);
    }
    return *theDisk;
}

void FaultVfs::failAt(int call, Fault fault)
{
    calm();
    m_failAt = call;
    m_fault = fault;
}

void FaultVfs::calm()
{
    m_failAt = 0;
    m_calls = 0;
    m_failed = false;
}

bool FaultVfs::refuses()
{
    ++m_calls;
    if (m_failAt == 0) return false;
    const bool now = m_fault == Fault::Once ? m_calls == m_failAt : m_calls >= m_failAt;
    m_failed = m_failed || now;
    return now;
}

void FaultVfs::record(std::function<void()> afterEachChange)
{
    m_files.clear();
    m_afterEachChange = std::move(afterEachChange);
}

void FaultVfs::wasOpened(const QString& path)
{
    if (m_afterEachChange && !m_files.contains(path)) m_files[path].synced = contentOf(path);
}

void FaultVfs::changed(const QString& path, Change change)
{
    if (!m_afterEachChange || !m_files.contains(path)) return;
    m_files[path].pending.push_back(std::move(change));
    m_afterEachChange();
}

void FaultVfs::wasWritten(const QString& path, qint64 offset, const QByteArray& bytes)
{
    changed(path, {Change::Kind::Write, offset, bytes});
}

void FaultVfs::wasCut(const QString& path, qint64 size)
{
    changed(path, {Change::Kind::Cut, size, {}});
}

void FaultVfs::wasDeleted(const QString& path)
{
    changed(path, {Change::Kind::Delete, 0, {}});
}

void FaultVfs::wasSynced(const QString& path)
{
    const auto it = m_files.find(path);
    if (!m_afterEachChange || it == m_files.end()) return;
    for (const Change& change : it->second.pending) apply(change, it->second.synced);
    it->second.pending.clear();
    m_afterEachChange();
}

void FaultVfs::apply(const Change& change, Content& content)
{
    if (change.kind == Change::Kind::Delete) {
        content.reset();
        return;
    }
    if (!content) content.emplace();
    const qint64 least = change.at + change.bytes.size();
    if (change.kind == Change::Kind::Cut) {
        content->resize(std::min<qsizetype>(content->size(), change.at));
        return;
    }
    if (content->size() < least) content->append(QByteArray(least - content->size(), '\0'));
    std::memcpy(content->data() + change.at, change.bytes.constData(), static_cast<std::size_t>(change.bytes.size()));
}

FaultVfs::Content FaultVfs::lose(const File& file, std::mt19937& random)
{
    std::vector<Change> pieces;
    for (const Change& change : file.pending) {
        if (change.kind != Change::Kind::Write) {
            pieces.push_back(change);
            continue;
        }
        for (qint64 at = change.at; at < change.at + change.bytes.size();) {
            const qint64 end = std::min((at / kSector + 1) * kSector, change.at + change.bytes.size());
            pieces.push_back({Change::Kind::Write, at, change.bytes.mid(at - change.at, end - at)});
            at = end;
        }
    }
    // None, all, the first few, or any of them in any order.
    const auto upTo = [&](std::size_t most) { return std::uniform_int_distribution<std::size_t>(0, most)(random); };
    Content content = file.synced;
    switch (upTo(5)) {
    case 0:
        pieces.clear();
        break;
    case 1:
        break;
    case 2:
        pieces.resize(upTo(pieces.size()));
        break;
    default: {
        // That a file was removed may itself be lost; then what came to its place is lost too.
        const auto deleted = std::find_if(pieces.begin(), pieces.end(),
                                          [](const Change& each) { return each.kind == Change::Kind::Delete; });
        if (deleted != pieces.end() && upTo(1) == 0) {
            pieces.erase(deleted, pieces.end());
        } else if (deleted != pieces.end()) {
            pieces.erase(pieces.begin(), deleted + 1);
            content.reset();
        }
        std::shuffle(pieces.begin(), pieces.end(), random);
        pieces.resize(upTo(pieces.size()));
    }
    }
    for (const Change& piece : pieces) apply(piece, content);
    return content;
}

void FaultVfs::afterPowerLoss(std::mt19937& random, const QString& folder) const
{
    for (const auto& [path, file] : m_files) {
        const Content content = lose(file, random);
        QFile image(QDir(folder).filePath(QFileInfo(path).fileName()));
        image.remove();
        if (!content || !image.open(QIODevice::WriteOnly)) continue;
        image.write(*content);
    }
}

}  // namespace steelyard::test
