// A small source of chance with its own distributions, so that a seed gives the same club with every standard library.
#pragma once

#include <QtCore/QUuid>

#include <cstdint>
#include <random>
#include <vector>

namespace steelyard {

class ClubRandom {
public:
    explicit ClubRandom(std::uint64_t seed) : m_engine(seed) {}

    [[nodiscard]] double uniform();  // [0, 1)
    [[nodiscard]] double uniform(double low, double high);
    [[nodiscard]] int integer(int low, int high);  // both ends included
    [[nodiscard]] bool chance(double probability) { return uniform() < probability; }
    [[nodiscard]] double normal();  // mean 0, SD 1
    [[nodiscard]] QUuid uuid();
    template <class T>
    [[nodiscard]] const T& pick(const std::vector<T>& from)
    {
        return from[static_cast<std::size_t>(integer(0, static_cast<int>(from.size()) - 1))];
    }

private:
    std::mt19937_64 m_engine;
};

}  // namespace steelyard
