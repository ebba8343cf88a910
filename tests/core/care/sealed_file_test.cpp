#include "core/care/sealed_file.h"

#include "tests/support/temp_dir.h"

#include <QtCore/QCryptographicHash>
#include <QtCore/QProcess>
#include <QtCore/QtEndian>

#include <gtest/gtest.h>

#include <random>

namespace steelyard {
namespace {

using testing_support::TempDir;

constexpr qsizetype kHeader = 72;
constexpr qsizetype kPiece = 65'536;
constexpr qsizetype kSealedPiece = kPiece + 17;
const QString kWords = QStringLiteral("Zwölf krumme Gurken – ja");

Passphrase passphrase(const QString& text = kWords)
{
    auto made = Passphrase::make(text);
    if (!made) qFatal("%s", qPrintable(made.error().what));
    return *std::move(made);
}

QByteArray noise(qsizetype size)
{
    std::mt19937 random(static_cast<unsigned>(size));
    QByteArray bytes(size, Qt::Uninitialized);
    for (char& byte : bytes) byte = static_cast<char>(random());
    return bytes;
}

class SealedFile : public testing::Test {
protected:
    TempDir m_dir;

    QByteArray sealed(const QByteArray& plain)
    {
        const QString from = m_dir.write(u"plain", plain);
        EXPECT_TRUE(sealFile(from, m_dir.path(u"sealed"), passphrase(), SealCost::least(), {}));
        return m_dir.read(u"sealed");
    }
    // What opening these bytes says; empty when they open. The place that they would go to keeps what it holds.
    QString saidOf(const QByteArray& bytes, const QString& words = kWords)
    {
        const QString from = m_dir.write(u"changed", bytes);
        const QString to = m_dir.write(u"target", "as it was");
        const auto opened = openSealedFile(from, to, passphrase(words), {});
        if (opened) return {};
        EXPECT_EQ(m_dir.read(u"target"), "as it was");
        EXPECT_EQ(QDir(m_dir.path()).entryList({QStringLiteral("target*")}, QDir::Files | QDir::Hidden).size(), 1);
        return opened.error().what;
    }
};

TEST_F(SealedFile, OpensToWhatWentIn)
{
    for (const qsizetype size : {qsizetype{0}, qsizetype{1}, kPiece - 1, kPiece, kPiece + 1, 3 * kPiece}) {
        const QByteArray plain = noise(size);
        const QByteArray bytes = sealed(plain);
        EXPECT_EQ(bytes.size(), kHeader + (size / kPiece + 1) * 17 + size);
        EXPECT_TRUE(openSealedFile(m_dir.path(u"sealed"), m_dir.path(u"opened"), passphrase(), {}));
        EXPECT_EQ(m_dir.read(u"opened"), plain) << size;
        EXPECT_EQ(QFileInfo(m_dir.path(u"opened")).permissions() & 0x0fff, QFile::Permissions(0x0600) & 0x0fff);
    }
    EXPECT_TRUE(isSealedFile(m_dir.path(u"sealed")).value());
    EXPECT_FALSE(isSealedFile(m_dir.path(u"plain")).value());
}

TEST_F(SealedFile, IsNeverTheSameTwiceAndShowsNothingOfItsContent)
{
    const QByteArray plain = QByteArray("Ada Fulcrum ").repeated(400);
    const QByteArray first = sealed(plain);
    EXPECT_NE(first, sealed(plain));
    EXPECT_FALSE(first.contains("Fulcrum"));
    EXPECT_EQ(QFileInfo(m_dir.path(u"sealed")).permissions() & 0x0fff, QFile::Permissions(0x0600) & 0x0fff);
}

TEST_F(SealedFile, EveryByteOfItsHeaderMatters)
{
    const QByteArray bytes = sealed(noise(300));
    for (qsizetype at = 0; at < kHeader; ++at) {
        QByteArray changed = bytes;
        changed[at] = static_cast<char>(changed[at] ^ 0x01);
        EXPECT_FALSE(saidOf(changed).isEmpty()) << "byte " << at;
    }
}

TEST_F(SealedFile, AChangedBitIsNoticedAndNamedByItsPlace)
{
    const QByteArray bytes = sealed(noise(2 * kPiece + 100));
    std::mt19937 random(5);
    for (int i = 0; i < 60; ++i) {
        QByteArray changed = bytes;
        const qsizetype at = kHeader + static_cast<qsizetype>(random() % static_cast<unsigned>(bytes.size() - kHeader));
        changed[at] = static_cast<char>(changed[at] ^ (1 << random() % 8));
        const QString said = saidOf(changed);
        EXPECT_FALSE(said.isEmpty()) << "byte " << at;
        EXPECT_EQ(said.contains(QStringLiteral("The passphrase is right")), at >= kHeader + kSealedPiece) << at;
    }
}

TEST_F(SealedFile, MissingSwappedRepeatedAndAddedPiecesAreNoticed)
{
    const QByteArray bytes = sealed(noise(3 * kPiece));
    const auto piece = [&](qsizetype number) { return bytes.mid(kHeader + number * kSealedPiece, kSealedPiece); };
    const QByteArray head = bytes.left(kHeader);
    EXPECT_TRUE(saidOf(head + piece(0) + piece(1) + piece(2) + piece(3)).isEmpty());
    EXPECT_TRUE(
        saidOf(head + piece(0) + piece(2) + piece(1) + piece(3)).contains(QStringLiteral("damaged or changed")));
    EXPECT_TRUE(saidOf(head + piece(0) + piece(0) + piece(1) + piece(2) + piece(3))
                    .contains(QStringLiteral("damaged or changed")));
    EXPECT_TRUE(saidOf(head + piece(0) + piece(2) + piece(3)).contains(QStringLiteral("damaged or changed")));
    EXPECT_TRUE(saidOf(bytes + bytes).contains(QStringLiteral("damaged or changed")));
    EXPECT_TRUE(saidOf(bytes + 'x').contains(QStringLiteral("damaged or changed")));
    for (qsizetype kept = 0; kept <= 3; ++kept)
        EXPECT_TRUE(saidOf(bytes.left(kHeader + kept * kSealedPiece)).contains(QStringLiteral("isn't whole"))) << kept;
    EXPECT_FALSE(saidOf(bytes.left(kHeader + kSealedPiece + 40)).isEmpty());
    EXPECT_TRUE(saidOf(bytes.left(30)).contains(QStringLiteral("isn't whole")));
    EXPECT_TRUE(saidOf({}).contains(QStringLiteral("no sealed file")));
}

TEST_F(SealedFile, AnotherPassphraseOpensNothing)
{
    const QByteArray bytes = sealed("secret");
    EXPECT_TRUE(saidOf(bytes, QStringLiteral("zwölf krumme Gurken – ja")).contains(QStringLiteral("another one")));
    EXPECT_TRUE(saidOf(bytes, kWords + u' ').contains(QStringLiteral("another one"))) << "nothing is trimmed";
    EXPECT_TRUE(saidOf(bytes, kWords.normalized(QString::NormalizationForm_D)).isEmpty()) << "the same letters";
}

TEST_F(SealedFile, AForgedHeaderReservesNothing)
{
    const QByteArray bytes = sealed("secret");
    const auto with = [&](qsizetype at, quint64 value) {
        QByteArray changed = bytes;
        qToLittleEndian(value, changed.data() + at);
        return changed;
    };
    constexpr qsizetype kPassesAt = 12;
    constexpr qsizetype kMemoryAt = 20;
    for (const QByteArray& forged : {with(kPassesAt, 1), with(kPassesAt, 11), with(kPassesAt, ~quint64{0}),
                                     with(kMemoryAt, 4ULL << 40), with(kMemoryAt, 1ULL << 20), with(kMemoryAt, 0)})
        EXPECT_TRUE(saidOf(forged).contains(QStringLiteral("forged")));
    QByteArray newer = bytes;
    newer[8] = 2;
    EXPECT_TRUE(saidOf(newer).contains(QStringLiteral("newer Steelyard")));
}

TEST_F(SealedFile, StopsWhenAskedAndLeavesNothing)
{
    const QString from = m_dir.write(u"plain", noise(3 * kPiece));
    std::stop_source stop;
    const Progress progress([&](double) { stop.request_stop(); }, stop.get_token());
    const auto made = sealFile(from, m_dir.path(u"sealed"), passphrase(), SealCost::least(), progress);
    ASSERT_FALSE(made);
    EXPECT_EQ(made.error().code, ErrorCode::Cancelled);
    EXPECT_EQ(QDir(m_dir.path()).entryList(QDir::Files | QDir::Hidden), QStringList{QStringLiteral("plain")});
}

TEST_F(SealedFile, SaysWhatCannotBeReadOrWritten)
{
    const auto none = sealFile(m_dir.path(u"nothing"), m_dir.path(u"sealed"), passphrase(), SealCost::least(), {});
    EXPECT_EQ(none.error().code, ErrorCode::NotFound);
    const QString from = m_dir.write(u"plain", "x");
    const auto nowhere = sealFile(from, m_dir.path(u"no/folder"), passphrase(), SealCost::least(), {});
    EXPECT_EQ(nowhere.error().code, ErrorCode::Storage);
    EXPECT_FALSE(sealFile(from, m_dir.path(u"sealed"), passphrase(), {1, 1 << 20}, {})) << "too cheap to guess";
}

// Written by tests/reference/sealed_file.py, which knows the format by its description and libsodium by PyNaCl.
TEST_F(SealedFile, OpensWhatAnotherProgramSealed)
{
    const QString known = QStringLiteral(STEELYARD_SOURCE_DIR "/tests/data/sealed/by_another_program.sealed");
    const auto opened = openSealedFile(known, m_dir.path(u"opened"), passphrase(), {});
    ASSERT_TRUE(opened) << opened.error().what.toStdString();
    const QByteArray plain = m_dir.read(u"opened");
    EXPECT_EQ(plain.size(), 70'000);
    EXPECT_EQ(QCryptographicHash::hash(plain, QCryptographicHash::Sha256).toHex(),
              "85ae35420b39ad38769eae5b4e596a48fe310789a5e4aaeefbcd1443bdbc6613");
}

TEST_F(SealedFile, IsOpenedByAnotherProgram)
{
    const QByteArray plain = noise(2 * kPiece + 5);
    (void)sealed(plain);
    QProcess python;
    python.start(QStringLiteral("/usr/bin/python3"),
                 {QStringLiteral(STEELYARD_SOURCE_DIR "/tests/reference/sealed_file.py"), QStringLiteral("open"),
                  m_dir.path(u"sealed"), m_dir.path(u"opened")});
    python.write(kWords.toUtf8());
    python.closeWriteChannel();
    ASSERT_TRUE(python.waitForFinished(60'000));
    EXPECT_EQ(python.exitCode(), 0) << python.readAllStandardError().toStdString();
    EXPECT_EQ(m_dir.read(u"opened"), plain);
}

TEST(Passphrase, HasTwelveLettersOrMore)
{
    EXPECT_FALSE(Passphrase::make(QStringLiteral("eleven lett")));
    EXPECT_TRUE(Passphrase::make(QStringLiteral("twelve lette")));
    EXPECT_FALSE(Passphrase::make(QString(6, QChar(0x1F600 & 0xffff)))) << "six are six, whatever bytes they take";
    EXPECT_FALSE(Passphrase::make(QString(2'000, u'x')));
    EXPECT_FALSE(Passphrase::make(QStringLiteral("half a letter: ") + QChar(0xD83D)));
}

TEST(Passphrase, IsWipedFromTheTextItCameFrom)
{
    QString text = QStringLiteral("twelve letters");
    text.detach();
    const QChar* letters = text.constData();
    QChar before = letters[0];
    EXPECT_EQ(before, u't');
    wipe(text);
    EXPECT_TRUE(text.isEmpty());
}

}  // namespace
}  // namespace steelyard
