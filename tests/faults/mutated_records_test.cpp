// Records that were handed over and changed on the way, their JSON and their table: values of another kind, enormous numbers, names that
// are nobody's, entries twice, gone or in another's place. Whatever they have become, reading one never ends the program; it comes in
// as a sound book, or is refused in words and leaves the book as empty as it was.
// Three hundred of them; ten thousand with STEELYARD_FAULTS=long.
#include "core/book/verify.h"
#include "core/exchange/book_dump.h"
#include "core/exchange/book_export.h"
#include "core/exchange/book_import.h"
#include "tests/faults/fault_length.h"
#include "tests/support/full_book.h"
#include "tests/support/temp_book.h"
#include "tests/support/temp_dir.h"

#include <QtCore/QJsonArray>
#include <QtCore/QJsonDocument>
#include <QtCore/QJsonObject>

#include <iostream>
#include <random>

namespace steelyard::test {
namespace {

// Walks to one value of a document, the same for the same seed, and puts something else there.
class JsonMutation {
public:
    explicit JsonMutation(unsigned seed) : m_random(seed) {}

    QJsonObject of(QJsonObject document)
    {
        const int changes = between(1, 3);
        for (int i = 0; i < changes; ++i) document = inside(document).toObject();
        return document;
    }

    int between(int low, int high) { return std::uniform_int_distribution<int>(low, high)(m_random); }

private:
    QJsonValue inside(const QJsonValue& value)
    {
        const bool deeper = between(0, 5) > 0;
        if (value.isObject() && !value.toObject().isEmpty()) return insideObject(value.toObject(), deeper);
        if (value.isArray() && !value.toArray().isEmpty()) return insideArray(value.toArray(), deeper);
        return another(value);
    }
    QJsonValue insideObject(QJsonObject object, bool deeper)
    {
        const QString key = object.keys().at(between(0, static_cast<int>(object.size()) - 1));
        const int what = deeper ? 9 : between(0, 3);
        if (what == 0)
            object.remove(key);
        else if (what == 1)
            object.insert(key + QStringLiteral("x"), object.value(key));
        else
            object.insert(key, what == 2 ? another(object.value(key)) : inside(object.value(key)));
        return object;
    }
    QJsonValue insideArray(QJsonArray array, bool deeper)
    {
        const int at = between(0, static_cast<int>(array.size()) - 1);
        switch (deeper ? 9 : between(0, 3)) {
        case 0:
            array.removeAt(at);
            break;
        case 1:
            array.append(array.at(at));
            break;
        case 2:
            array.replace(at, another(array.at(at)));
            break;
        default:
            array.replace(at, inside(array.at(at)));
        }
        return array;
    }
    QJsonValue another(const QJsonValue& value)
    {
        switch (between(0, 13)) {
        case 0:
            return QJsonValue();
        case 1:
            return true;
        case 2:
            return -1;
        case 3:
            return 1e308;
        case 4:
            return 9007199254740993.0;
        case 5:
            return 0.1;
        case 6:
            return QString();
        case 7:
            return QString(5000, u'x');
        case 8:
            return QStringLiteral("'); DROP TABLE athlete; --");
        case 9:
            return QStringLiteral("9999-99-99");
        case 10:
            return QStringLiteral("00000000-0000-0000-0000-000000000000");
        case 11:
            return QString(QChar(0xD800)) + QStringLiteral("\u202Ea\u0000b");
        case 12:
            return value.isString() ? QJsonValue(value.toString().repeated(2)) : QJsonValue(QJsonArray{value});
        default:
            return QJsonObject{{QStringLiteral("x"), value}};
        }
    }
    std::mt19937 m_random;
};

// Fields and lines of the table in another's place; a byte that is another.
QByteArray mutatedTable(const QByteArray& csv, JsonMutation& random)
{
    QList<QByteArray> lines = csv.split('\n');
    const int at = random.between(1, static_cast<int>(lines.size()) - 1);
    QList<QByteArray> fields = lines[at].split(',');
    const int field = random.between(0, static_cast<int>(fields.size()) - 1);
    switch (random.between(0, 4)) {
    case 0:
        lines.removeAt(at);
        break;
    case 1:
        lines.append(lines[at]);
        break;
    case 2:
        fields[field] = "=1e400";
        lines[at] = fields.join(',');
        break;
    case 3:
        fields.swapItemsAt(0, field);
        lines[at] = fields.join(',');
        break;
    default:
        if (!lines[at].isEmpty()) lines[at][random.between(0, static_cast<int>(lines[at].size()) - 1)] = '\xFE';
    }
    return lines.join('\n');
}

TEST(MutatedRecords, ComeInAsSoundBooksOrAreRefusedInWordsAndLeaveNothing)
{
    TempBook base;
    const auto full = must(Book::create(base.file(QStringLiteral("full.steelyard")), base.clock()));
    fillFullBook(*full);
    const testing_support::TempDir folder;
    must(exportBook(full->database(), folder.path(), std::nullopt, {}));
    const QByteArray csv = folder.read(u"logbook.csv");
    const QJsonObject json = QJsonDocument::fromJson(folder.read(u"book.json")).object();
    ASSERT_FALSE(json.isEmpty());
    auto into = must(Book::create(base.file(QStringLiteral("into0.steelyard")), base.clock()));
    const QByteArray empty = must(dumpContent(into->database()));
    int in = 0;
    int words = 0;
    const unsigned records = faultsAreLong() ? 10'000 : 300;
    for (unsigned seed = 1; seed <= records; ++seed) {
        JsonMutation random(seed);
        const bool table = random.between(0, 4) == 0;
        (void)folder.write(u"logbook.csv", table ? mutatedTable(csv, random) : csv);
        (void)folder.write(u"book.json", QJsonDocument(table ? json : random.of(json)).toJson());
        const auto read = importExport(*into, folder.path(), {});
        if (!read) {
            ++words;
            EXPECT_FALSE(read.error().what.isEmpty()) << "seed " << seed;
            EXPECT_EQ(read.error().code, ErrorCode::Invalid)
                << "seed " << seed << ' ' << qPrintable(read.error().what + read.error().detail);
            ASSERT_EQ(must(dumpContent(into->database())), empty) << "seed " << seed;
            continue;
        }
        ++in;
        EXPECT_EQ(must(verifyBook(into->database(), {})).findings, QStringList()) << "seed " << seed;
        into = must(Book::create(base.file(QStringLiteral("into%1.steelyard").arg(seed)), base.clock()));
    }
    std::cout << records << " mutated records: " << in << " came in as sound books, " << words << " were refused\n";
    EXPECT_GT(words, static_cast<int>(records / 4)) << "most mutations do harm";
    EXPECT_GT(in, 0) << "some do none";
}

}  // namespace
}  // namespace steelyard::test
