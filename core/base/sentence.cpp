#include "base/sentence.hpp"

#include "base/number_text.hpp"

namespace evenfall {

std::string millimetres_text(double metres) {
    return units::number_text(metres, units::Unit::mm, 1) + " mm";
}
std::string grams_text(double kilograms) {
    return units::number_text(kilograms, units::Unit::gram, 2) + " g";
}
std::string degrees_text(double radians) {
    return units::number_text(radians, units::Unit::degree, 1) + "°";
}

std::string hole_text(std::size_t index, const std::string& name) {
    const std::string number = std::to_string(index + 1);
    return "Hole " + number + (name.empty() || name == number ? "" : " (" + name + ")");
}

std::string pointer(const char* list, std::size_t index, const char* key) {
    return "/" + std::string(list) + "/" + std::to_string(index) + "/" + key;
}

} // namespace evenfall
