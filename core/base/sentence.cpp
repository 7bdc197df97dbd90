#include "base/sentence.hpp"

#include <utility>

namespace evenfall {

using units::Quantity;
using units::Rounding;

Sentence::Sentence(Piece piece) {
    if (const auto* words = std::get_if<std::string>(&piece); words != nullptr && words->empty()) return;
    pieces_.push_back(std::move(piece));
}

Sentence& Sentence::operator+=(Sentence more) {
    for (Piece& piece : more.pieces_) {
        const auto* words = std::get_if<std::string>(&piece);
        auto* before = pieces_.empty() ? nullptr : std::get_if<std::string>(&pieces_.back());
        if (words != nullptr && before != nullptr)
            *before += *words;
        else
            pieces_.push_back(std::move(piece));
    }
    return *this;
}

std::string Sentence::text(const units::UnitSet& units) const {
    std::string text;
    for (const Piece& piece : pieces_) {
        if (const auto* words = std::get_if<std::string>(&piece)) {
            text += *words;
        } else if (const auto* either = std::get_if<BySystem>(&piece)) {
            text += units.inches() ? either->inches : either->metric;
        } else {
            const Amount& a = std::get<Amount>(piece);
            std::string number = units::number_text(a.value, a.quantity, units, a.decimals, a.rounding);
            text += a.with_symbol ? units::with_symbol(std::move(number), units.of(a.quantity)) : number;
        }
    }
    return text;
}

Sentence length_text(double metres, int decimals) {
    return Amount{metres, Quantity::length, decimals};
}
Sentence thickness_text(double metres, int decimals) {
    return Amount{metres, Quantity::thickness, decimals};
}
Sentence mass_text(double kilograms, int decimals) {
    return Amount{kilograms, Quantity::mass, decimals};
}
Sentence angle_text(double radians) {
    return Amount{radians, Quantity::angle, 1};
}
Sentence speed_text(double metres_per_second) {
    return Amount{metres_per_second, Quantity::speed, 1};
}

Sentence reading_text(double value, Quantity quantity) {
    const int decimals = quantity == Quantity::angle || quantity == Quantity::number ? 1
                         : quantity == Quantity::density                             ? 0
                                                                                     : 2;
    return Amount{value, quantity, decimals};
}

Sentence bare_length_text(double metres, int decimals) {
    return Amount{metres, Quantity::length, decimals, Rounding::nearest, false};
}

Sentence plain_text(double value, Quantity quantity) {
    return Amount{value, quantity};
}

Sentence range_text(double least, double most, Quantity quantity, int decimals) {
    return Sentence(Amount{least, quantity, decimals, Rounding::up, false}) + " to " +
           Amount{most, quantity, decimals, Rounding::down};
}
Sentence at_least_text(double least, Quantity quantity) {
    return Amount{least, quantity, units::plain, Rounding::up};
}
Sentence at_most_text(double most, Quantity quantity) {
    return Amount{most, quantity, units::plain, Rounding::down};
}

std::string hole_text(std::size_t index, const std::string& name) {
    const std::string number = std::to_string(index + 1);
    if (name.rfind(number, 0) == 0) return "Hole " + name;
    return "Hole " + number + (name.empty() ? "" : " (" + name + ")");
}

std::string hole_label(std::size_t index, const std::string& name) {
    const std::string number = std::to_string(index + 1);
    if (name.empty() || name.rfind(number, 0) == 0) return name.empty() ? number : name;
    return number + " " + name;
}

std::string pointer(const char* list, std::size_t index, const char* key) {
    return "/" + std::string(list) + "/" + std::to_string(index) + "/" + key;
}

} // namespace evenfall
