#include "output/numbers.hpp"

namespace evenfall::output {

using units::number_text;
using units::Quantity;

std::string Numbers::length(double metres, int decimals) const {
    return number_text(metres, Quantity::length, units, decimals);
}
std::string Numbers::thickness(double metres, int decimals) const {
    return number_text(metres, Quantity::thickness, units, decimals);
}
std::string Numbers::mass(double kilograms, int decimals) const {
    return number_text(kilograms, Quantity::mass, units, decimals);
}
std::string Numbers::signed_mass(double kilograms) const {
    return units::with_plus(kilograms, mass(kilograms));
}
std::string Numbers::temperature(double celsius, int decimals) const {
    return number_text(celsius, Quantity::temperature, units, decimals);
}
std::string Numbers::speed(double metres_per_second) const {
    return number_text(metres_per_second, units.way_in_time(), units.inches() ? 2 : 0);
}

std::string Numbers::length_symbol() const {
    return std::string(symbol(units.length));
}
std::string Numbers::mass_symbol() const {
    return std::string(symbol(units.mass));
}
std::string Numbers::temperature_symbol() const {
    return std::string(symbol(units.temperature));
}
std::string Numbers::speed_symbol() const {
    return std::string(symbol(units.way_in_time()));
}

} // namespace evenfall::output
