#include "core/exchange/new_book.h"

#include <QtCore/QFile>

#include <map>

namespace steelyard {
namespace {

// RFC 4122, version 5, in a namespace of our own: a name always gives the same UUID.
QUuid starterUuid(const QStringList& names)
{
    static const QUuid space(QStringLiteral("{6f1c2f0e-53a7-4f6e-9a7d-0c6b6f0f5a11}"));
    return QUuid::createUuidV5(space, names.join(QLatin1Char('\n')));
}

class LibraryFiller {
public:
    explicit LibraryFiller(Transaction& transaction) : m_transaction(transaction), m_library(transaction.database()) {}

    Result<void> fill(const StarterLibrary& library)
    {
        for (const Muscle& muscle : library.muscles) {
            STEELYARD_TRY(const auto id, m_library.insert(m_transaction, muscle));
            m_muscles.emplace(muscle.key, id);
        }
        for (const Grip& grip : library.grips) {
            STEELYARD_TRY(const auto id,
                          m_library.insert(m_transaction, grip, starterUuid({QStringLiteral("grip"), grip.name})));
            m_grips.emplace(grip.name, id);
        }
        for (const StarterExercise& exercise : library.exercises) STEELYARD_CHECK(fill(exercise));
        const GymRepository gyms(m_transaction.database());
        for (const Gym& gym : library.gyms)
            STEELYARD_CHECK(gyms.insert(m_transaction, gym, starterUuid({QStringLiteral("gym"), gym.name})));
        return {};
    }

private:
    Result<void> fill(const StarterExercise& starter)
    {
        Exercise exercise{starter.name, {}, false};
        for (const auto& [muscle, share] : starter.shares) exercise.shares.push_back({m_muscles.at(muscle), share});
        STEELYARD_TRY(const auto id, m_library.insert(m_transaction, exercise,
                                                      starterUuid({QStringLiteral("exercise"), starter.name})));
        for (const StarterVariant& variant : starter.variants) STEELYARD_CHECK(fill(variant, id, starter.name));
        return {};
    }

    Result<void> fill(const StarterVariant& starter, Id<Exercise> exercise, const QString& exerciseName)
    {
        Variant variant{.exercise = exercise};
        variant.name = starter.name;
        variant.implement = starter.implement;
        variant.position = starter.position;
        variant.path = starter.path;
        variant.loading = starter.loading;
        variant.barMass = starter.barMass;
        variant.step = starter.step;
        variant.backLoading = starter.backLoading;
        variant.sides = starter.sides;
        variant.travel = starter.travel;
        variant.band = starter.band;
        variant.usualGrip = m_grips.at(starter.grip);
        variant.isDefault = starter.isDefault;
        const QStringList names{QStringLiteral("variant"), exerciseName, starter.name};
        STEELYARD_TRY(const auto id, m_library.insert(m_transaction, variant, starterUuid(names)));
        for (const StarterStandard& one : starter.standards) {
            RepStandard standard{.variant = id};
            standard.name = one.name;
            standard.start = one.start;
            standard.end = one.end;
            standard.path = one.path;
            standard.body = one.body;
            standard.lowering = one.lowering;
            standard.leastTravelPercent = one.leastTravelPercent;
            standard.isDefault = one.isDefault;
            STEELYARD_CHECK(m_library.insert(m_transaction, standard, starterUuid(names + QStringList{one.name})));
        }
        return {};
    }

    Transaction& m_transaction;
    LibraryRepository m_library;
    std::map<QString, Id<Muscle>> m_muscles;
    std::map<QString, Id<Grip>> m_grips;
};

Result<void> fillNewBook(Book& book)
{
    STEELYARD_TRY(const StarterLibrary library, builtInStarterLibrary());
    STEELYARD_TRY(auto transaction, Transaction::begin(book.database()));
    STEELYARD_CHECK(fillStarterLibrary(transaction, library));
    return transaction.commit();
}

}  // namespace

Result<void> fillStarterLibrary(Transaction& transaction, const StarterLibrary& library)
{
    return LibraryFiller(transaction).fill(library);
}

Result<std::unique_ptr<Book>> newBook(const QString& path, const Clock& clock)
{
    STEELYARD_TRY(auto book, Book::create(path, clock));
    if (const auto filled = fillNewBook(*book); !filled) {
        book.reset();
        QFile::remove(path);  // ours, made a moment ago
        return fail(filled.error());
    }
    return book;
}

}  // namespace steelyard
