#pragma once

#include "base/number_text.hpp"
#include "words/language.hpp"

#include <string>

namespace evenfall::output {

/// Numbers of tables and sheets: in the units that are set, without their symbols. `decimals` as in
/// units::number_text.
struct Numbers {
    units::UnitSet units;
    words::Speech speech{}; ///< for whoever shows the whole text

    [[nodiscard]] std::string length(double metres, int decimals = 1) const;
    /// Of bits, wire, rod and film.
    [[nodiscard]] std::string thickness(double metres, int decimals = 2) const;
    [[nodiscard]] std::string mass(double kilograms, int decimals = 2) const;
    [[nodiscard]] std::string signed_mass(double kilograms) const;
    [[nodiscard]] std::string temperature(double celsius, int decimals) const;
    /// As a way in time, so that ± and bands of it make sense.
    [[nodiscard]] std::string speed(double metres_per_second) const;

    [[nodiscard]] std::string length_symbol() const; ///< of lengths and thicknesses: "mm" or "in"
    [[nodiscard]] std::string mass_symbol() const;
    [[nodiscard]] std::string temperature_symbol() const;
    [[nodiscard]] std::string speed_symbol() const;
};

} // namespace evenfall::output
