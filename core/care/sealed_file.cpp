#include "core/care/sealed_file.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFile>
#include <QtCore/QSaveFile>
#include <QtCore/QtEndian>

#include <sodium.h>

#include <algorithm>
#include <array>
#include <cstring>

namespace steelyard {
namespace {

struct SealText {
    Q_DECLARE_TR_FUNCTIONS(SealText)
};

constexpr std::array<char, 8> kMagic{'S', 'Y', 'R', 'D', 'S', 'E', 'A', 'L'};
constexpr quint16 kFormat = 1;
constexpr quint16 kArgon2id = 1;
constexpr quint32 kPiece = 65'536;
constexpr std::uint64_t kFewestPasses = 2;
constexpr std::uint64_t kMostPasses = 10;
constexpr std::uint64_t kLeastMemory = 19ULL << 20;
constexpr std::uint64_t kMostMemory = 2ULL << 30;

constexpr std::size_t kFormatAt = kMagic.size();
constexpr std::size_t kDerivationAt = kFormatAt + sizeof(quint16);
constexpr std::size_t kPassesAt = kDerivationAt + sizeof(quint16);
constexpr std::size_t kMemoryAt = kPassesAt + sizeof(quint64);
constexpr std::size_t kSaltAt = kMemoryAt + sizeof(quint64);
constexpr std::size_t kPieceAt = kSaltAt + crypto_pwhash_SALTBYTES;
constexpr std::size_t kStreamAt = kPieceAt + sizeof(quint32);
constexpr std::size_t kHeaderBytes = kStreamAt + crypto_secretstream_xchacha20poly1305_HEADERBYTES;
static_assert(kHeaderBytes == 72);
constexpr std::size_t kSealedPiece = kPiece + crypto_secretstream_xchacha20poly1305_ABYTES;

using Header = std::array<unsigned char, kHeaderBytes>;

template <class Number>
void put(Header& header, std::size_t at, Number value)
{
    qToLittleEndian(value, header.data() + at);
}

template <class Number>
Number take(const Header& header, std::size_t at)
{
    return qFromLittleEndian<Number>(header.data() + at);
}

struct StreamKey {
    StreamKey() { sodium_mlock(bytes.data(), bytes.size()); }
    ~StreamKey() { sodium_munlock(bytes.data(), bytes.size()); }  // wipes
    StreamKey(const StreamKey&) = delete;
    StreamKey& operator=(const StreamKey&) = delete;
    std::array<unsigned char, crypto_secretstream_xchacha20poly1305_KEYBYTES> bytes{};
};

Result<void> deriveKey(StreamKey& key, const Passphrase& passphrase, const Header& header)
{
    const auto letters = passphrase.bytes();
    const int made =
        crypto_pwhash(key.bytes.data(), key.bytes.size(), reinterpret_cast<const char*>(letters.data()), letters.size(),
                      header.data() + kSaltAt, take<quint64>(header, kPassesAt),
                      static_cast<std::size_t>(take<quint64>(header, kMemoryAt)), crypto_pwhash_ALG_ARGON2ID13);
    if (made == 0) return {};
    return fail(ErrorCode::Storage,
                SealText::tr("Working with this passphrase needs %1 MB of free memory, and there is less. Close other "
                             "programs and try again.")
                    .arg(take<quint64>(header, kMemoryAt) >> 20));
}

// Takes the place of its target only when finish() succeeded; readable by the owner only from its first byte.
class WholeTarget {
public:
    explicit WholeTarget(const QString& path) : m_file(path)
    {
        // The place is never written directly, not even where nothing can be renamed.
        m_file.setDirectWriteFallback(false);
    }
    [[nodiscard]] Result<void> open()
    {
        if (!m_file.open(QIODevice::WriteOnly)) return failed();
        m_file.setPermissions(QFileDevice::ReadOwner
                              | QFileDevice::WriteOwner);  // a stick that knows no owners refuses
        return {};
    }
    [[nodiscard]] Result<void> write(std::span<const unsigned char> bytes)
    {
        const auto size = static_cast<qint64>(bytes.size());
        if (m_file.write(reinterpret_cast<const char*>(bytes.data()), size) == size) return {};
        return failed();
    }
    [[nodiscard]] Result<void> finish()
    {
        // What is buffered is written now, so that a full disk shows before the place is taken.
        if (m_file.flush() && m_file.error() == QFileDevice::NoError && m_file.commit()) return {};
        return failed();
    }

private:
    [[nodiscard]] Result<void> failed() const
    {
        return fail(ErrorCode::Storage, SealText::tr("“%1” can't be written: %2. What stood there is untouched.")
                                            .arg(m_file.fileName(), m_file.errorString()));
    }
    QSaveFile m_file;
};

class Source {
public:
    explicit Source(const QString& path) : m_file(path) {}
    [[nodiscard]] Result<void> open()
    {
        if (!m_file.exists())
            return fail(ErrorCode::NotFound, SealText::tr("There is no file “%1”.").arg(m_file.fileName()));
        if (m_file.open(QIODevice::ReadOnly)) return {};
        return failed();
    }
    // Fewer bytes than asked for: the file ends there.
    [[nodiscard]] Result<std::size_t> read(std::span<unsigned char> into)
    {
        const qint64 got = m_file.read(reinterpret_cast<char*>(into.data()), static_cast<qint64>(into.size()));
        if (got >= 0) return static_cast<std::size_t>(got);
        STEELYARD_CHECK(failed());
        return 0;
    }
    [[nodiscard]] double share() const
    {
        return m_file.size() > 0 ? static_cast<double>(m_file.pos()) / static_cast<double>(m_file.size()) : 1;
    }
    [[nodiscard]] qint64 position() const { return m_file.pos(); }

private:
    [[nodiscard]] Result<void> failed() const
    {
        return fail(ErrorCode::Storage,
                    SealText::tr("“%1” can't be read: %2.").arg(m_file.fileName(), m_file.errorString()));
    }
    QFile m_file;
};

Result<void> stopWhenAsked(const Progress& progress)
{
    if (progress.cancelled()) return fail(ErrorCode::Cancelled, SealText::tr("It was stopped; nothing was changed."));
    return {};
}

Result<void> checkHeader(const Header& header, std::size_t got, const QString& path)
{
    if (got < kMagic.size() || !std::equal(kMagic.begin(), kMagic.end(), header.begin()))
        return fail(ErrorCode::Invalid, SealText::tr("“%1” is no sealed file of Steelyard.").arg(path));
    if (got < kHeaderBytes)
        return fail(ErrorCode::Invalid, SealText::tr("“%1” ends in its first bytes: it isn't whole.").arg(path));
    if (take<quint16>(header, kFormatAt) > kFormat || take<quint16>(header, kDerivationAt) > kArgon2id)
        return fail(ErrorCode::NewerFormat,
                    SealText::tr("“%1” was sealed by a newer Steelyard. Update the program to open it.").arg(path));
    const SealCost cost{take<quint64>(header, kPassesAt), take<quint64>(header, kMemoryAt)};
    if (take<quint16>(header, kFormatAt) != kFormat || take<quint16>(header, kDerivationAt) != kArgon2id
        || take<quint32>(header, kPieceAt) != kPiece || !cost.isWithinLimits())
        return fail(ErrorCode::Invalid, SealText::tr("The first bytes of “%1” are damaged or forged.").arg(path));
    return {};
}

class Opener {
public:
    Opener(Source& source, WholeTarget& target, const QString& path) : m_source(source), m_target(target), m_path(path)
    {}

    [[nodiscard]] Result<void> run(const Passphrase& passphrase, const Progress& progress)
    {
        STEELYARD_TRY(const auto got, m_source.read(m_header));
        STEELYARD_CHECK(checkHeader(m_header, got, m_path));
        StreamKey key;
        STEELYARD_CHECK(deriveKey(key, passphrase, m_header));
        if (crypto_secretstream_xchacha20poly1305_init_pull(&m_stream, m_header.data() + kStreamAt, key.bytes.data())
            != 0)
            return damaged();
        while (!m_ended) {
            STEELYARD_CHECK(stopWhenAsked(progress));
            STEELYARD_CHECK(openPiece());
            progress.report(m_source.share());
        }
        return {};
    }

private:
    [[nodiscard]] Result<void> openPiece()
    {
        STEELYARD_TRY(const auto got, m_source.read(m_sealed));
        if (got < crypto_secretstream_xchacha20poly1305_ABYTES)
            return fail(ErrorCode::Invalid, SealText::tr("“%1” isn't whole: its end is missing.").arg(m_path));
        unsigned long long opened = 0;
        unsigned char tag = 0;
        const bool first = m_opened == 0;
        if (crypto_secretstream_xchacha20poly1305_pull(&m_stream, m_plain.data(), &opened, &tag, m_sealed.data(), got,
                                                       first ? m_header.data() : nullptr, first ? kHeaderBytes : 0)
            != 0)
            return damaged();
        ++m_opened;
        m_ended = tag == crypto_secretstream_xchacha20poly1305_TAG_FINAL;
        // The last is shorter and all others are whole, so what follows an end can only have become part of the last piece.
        const bool whole = opened == kPiece;
        if (m_ended == whole || (!m_ended && tag != crypto_secretstream_xchacha20poly1305_TAG_MESSAGE))
            return damaged();
        return m_target.write({m_plain.data(), static_cast<std::size_t>(opened)});
    }
    // Until the first piece is open nobody can tell one from the other.
    [[nodiscard]] Result<void> damaged() const
    {
        if (m_opened == 0)
            return fail(ErrorCode::Invalid,
                        SealText::tr("The passphrase is another one, or “%1” was damaged. Check capital letters and "
                                     "the keyboard's language, then try again.")
                            .arg(m_path));
        return fail(ErrorCode::Invalid,
                    SealText::tr("The passphrase is right, but “%1” was damaged or changed before byte %2. Nothing of "
                                 "it was kept; use another copy.")
                        .arg(m_path)
                        .arg(m_source.position()));
    }

    Source& m_source;
    WholeTarget& m_target;
    const QString& m_path;
    Header m_header{};
    crypto_secretstream_xchacha20poly1305_state m_stream{};
    std::array<unsigned char, kSealedPiece> m_sealed{};
    std::array<unsigned char, kPiece> m_plain{};
    qint64 m_opened = 0;
    bool m_ended = false;
};

Header makeHeader(const SealCost& cost)
{
    Header header{};
    std::copy(kMagic.begin(), kMagic.end(), header.begin());
    put(header, kFormatAt, kFormat);
    put(header, kDerivationAt, kArgon2id);
    put<quint64>(header, kPassesAt, cost.passes);
    put<quint64>(header, kMemoryAt, cost.memoryBytes);
    randombytes_buf(header.data() + kSaltAt, crypto_pwhash_SALTBYTES);
    put(header, kPieceAt, kPiece);
    return header;
}

Result<void> sealPieces(Source& source, WholeTarget& target, Header header, const StreamKey& key,
                        const Progress& progress)
{
    crypto_secretstream_xchacha20poly1305_state stream;
    crypto_secretstream_xchacha20poly1305_init_push(&stream, header.data() + kStreamAt, key.bytes.data());
    STEELYARD_CHECK(target.write(header));
    auto plain = std::make_unique<std::array<unsigned char, kPiece>>();
    auto sealed = std::make_unique<std::array<unsigned char, kSealedPiece>>();
    for (bool first = true, ended = false; !ended; first = false) {
        STEELYARD_CHECK(stopWhenAsked(progress));
        STEELYARD_TRY(const auto got, source.read(*plain));
        ended = got < kPiece;  // a file of whole pieces ends with an empty one
        unsigned long long size = 0;
        crypto_secretstream_xchacha20poly1305_push(&stream, sealed->data(), &size, plain->data(), got,
                                                   first ? header.data() : nullptr, first ? kHeaderBytes : 0,
                                                   ended ? crypto_secretstream_xchacha20poly1305_TAG_FINAL
                                                         : crypto_secretstream_xchacha20poly1305_TAG_MESSAGE);
        STEELYARD_CHECK(target.write({sealed->data(), static_cast<std::size_t>(size)}));
        progress.report(source.share());
    }
    sodium_memzero(plain->data(), plain->size());
    return {};
}

}  // namespace

bool SealCost::isWithinLimits() const
{
    return passes >= kFewestPasses && passes <= kMostPasses && memoryBytes >= kLeastMemory
           && memoryBytes <= kMostMemory;
}

Result<void> sealFile(const QString& from, const QString& to, const Passphrase& passphrase, const SealCost& cost,
                      const Progress& progress)
{
    if (!cost.isWithinLimits())
        return fail(ErrorCode::Invalid, SealText::tr("A seal takes 2 to 10 passes over 19 MiB to 2 GiB of memory."));
    Source source(from);
    STEELYARD_CHECK(source.open());
    WholeTarget target(to);
    STEELYARD_CHECK(target.open());
    const Header header = makeHeader(cost);
    StreamKey key;
    STEELYARD_CHECK(deriveKey(key, passphrase, header));
    STEELYARD_CHECK(sealPieces(source, target, header, key, progress));
    return target.finish();
}

Result<void> openSealedFile(const QString& from, const QString& to, const Passphrase& passphrase,
                            const Progress& progress)
{
    Source source(from);
    STEELYARD_CHECK(source.open());
    WholeTarget target(to);
    STEELYARD_CHECK(target.open());
    const auto opener = std::make_unique<Opener>(source, target, from);
    STEELYARD_CHECK(opener->run(passphrase, progress));
    return target.finish();
}

Result<bool> isSealedFile(const QString& path)
{
    Source source(path);
    STEELYARD_CHECK(source.open());
    std::array<unsigned char, kMagic.size()> first{};
    STEELYARD_TRY(const auto got, source.read(first));
    return got == first.size() && std::equal(kMagic.begin(), kMagic.end(), first.begin());
}

}  // namespace steelyard
