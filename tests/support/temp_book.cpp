#include "tests/support/temp_book.h"

#include "core/storage/statement.h"

#include <QtCore/QFile>

namespace steelyard::test {

TempBook::TempBook(QDate today) : m_clock(today)
{
    m_book = must(Book::create(path(), m_clock));
    auto tx = must(Transaction::begin(m_book->database()));
    const auto library = m_book->library();
    const auto muscle = must(library.insert(tx, Muscle{QStringLiteral("biceps"), QStringLiteral("Biceps")}));
    const auto exercise = must(library.insert(tx, Exercise{QStringLiteral("Arm curl"), {{muscle, 1.0}}, false}));
    const auto grip = must(library.insert(
        tx, Grip{QStringLiteral("supinated, medium"), HandOrientation::Supinated, HandSpacing::Medium, {}}));
    Variant variant{.exercise = exercise};
    variant.name = QStringLiteral("straight bar, upright");
    variant.implement = Implement::StraightBar;
    variant.barMass = Load::parseWithUnit(u"10 kg");
    variant.usualGrip = grip;
    variant.isDefault = true;
    const auto variantId = must(library.insert(tx, variant));
    RepStandard standard{.variant = variantId};
    standard.name = QStringLiteral("strict");
    standard.isDefault = true;
    const auto standardId = must(library.insert(tx, standard));
    Athlete athlete;
    athlete.name = QStringLiteral("Ada Fulcrum");
    athlete.consents = {HealthConsent::given(QDate(2020, 1, 1))};
    const auto athleteId = must(m_book->athletes().insert(tx, athlete));
    m_line = LiftLine{athleteId, variantId, grip, standardId};
    must(tx.commit());
}

QByteArray rawDump(Database& db)
{
    QByteArray dump;
    std::vector<std::string> tables;
    {
        auto st =
            must(db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' "
                            "AND name <> 'edit_step' ORDER BY name"));
        while (must(st.step())) tables.emplace_back(st.bytes(0));
    }
    for (const std::string& table : tables) {
        auto columns = must(db.integer("SELECT count(*) FROM pragma_table_info('" + table + "')"));
        auto st = must(db.prepare("SELECT * FROM " + table + " ORDER BY 1, 2"));
        while (must(st.step())) {
            dump += table.c_str();
            for (int column = 0; column < static_cast<int>(columns); ++column)
                dump += '|' + (st.isNull(column) ? QByteArray("NULL") : st.text(column).toUtf8());
            dump += '\n';
        }
    }
    return dump;
}

QByteArray fileBytes(const QString& path)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) qFatal("can't read %s", qUtf8Printable(path));
    return file.readAll();
}

SetEntry workSet(const char* load, int reps, std::optional<int> off)
{
    SetEntry set;
    set.load = Load::parse(std::string_view(load), MassUnit::kg).value();
    set.reps = reps;
    set.off = off;
    return set;
}

}  // namespace steelyard::test
