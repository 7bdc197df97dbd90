#include "materials/tackle.hpp"

#include <array>

namespace evenfall::materials {

namespace {

constexpr std::array table{
    Hook{"14", 0.20e-3, 0.012}, Hook{"12", 0.28e-3, 0.014}, Hook{"10", 0.42e-3, 0.016},
    Hook{"8", 0.65e-3, 0.019},  Hook{"6", 0.95e-3, 0.022},  Hook{"4", 1.45e-3, 0.026},
    Hook{"2", 2.25e-3, 0.031},  Hook{"1", 3.0e-3, 0.035},   Hook{"1/0", 4.0e-3, 0.039},
    Hook{"2/0", 5.3e-3, 0.044}, Hook{"3/0", 7.0e-3, 0.049},
};

} // namespace

std::span<const Hook> hooks() {
    return table;
}

} // namespace evenfall::materials
