#pragma once

#include "base/number_text.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace evenfall {

/// A quantity within a sentence. Value in the core's unit.
struct Amount {
    double value = 0.0;
    units::Quantity quantity = units::Quantity::number;
    int decimals = units::plain; ///< of the metric unit, see units::number_text
    units::Rounding rounding = units::Rounding::nearest;
    bool with_symbol = true;

    bool operator==(const Amount&) const = default;
};

/// What is told to a reader, before it is known which units he has set: words and quantities in a row.
/// Whoever shows it asks for its text in those units.
class Sentence {
public:
    Sentence() = default;
    Sentence(std::string words) : Sentence(Piece(std::move(words))) {}
    Sentence(std::string_view words) : Sentence(std::string(words)) {}
    Sentence(const char* words) : Sentence(std::string(words)) {}
    Sentence(const Amount& amount) : Sentence(Piece(amount)) {}
    /// Words that are others for those who work in inches: "half a metre", "two feet".
    [[nodiscard]] static Sentence by_system(std::string metric, std::string inches) {
        return Sentence(Piece(BySystem{std::move(metric), std::move(inches)}));
    }

    [[nodiscard]] bool empty() const { return pieces_.empty(); }
    [[nodiscard]] std::string text(const units::UnitSet& units) const;

    Sentence& operator+=(Sentence more);
    friend Sentence operator+(Sentence first, Sentence more) { return std::move(first += std::move(more)); }
    bool operator==(const Sentence&) const = default;

private:
    struct BySystem {
        std::string metric, inches;
        bool operator==(const BySystem&) const = default;
    };
    using Piece = std::variant<std::string, Amount, BySystem>;

    explicit Sentence(Piece piece);

    std::vector<Piece> pieces_;
};

// Quantities for sentences, rounded for reading. Examples in metric units.

[[nodiscard]] Sentence length_text(double metres, int decimals = 1); ///< 0.0123 → "12.3 mm"
[[nodiscard]] Sentence thickness_text(double metres,
                                      int decimals = 1); ///< of wire or film: 0.0008 → "0.8 mm"
[[nodiscard]] Sentence mass_text(double kilograms, int decimals = 2); ///< 0.00642 → "6.42 g"
[[nodiscard]] Sentence angle_text(double radians);                    ///< −0.0524 → "−3.0°"
[[nodiscard]] Sentence speed_text(double metres_per_second);          ///< 0.1203 → "120.3 mm/s"

/// As it is read on the bench: "31.20 g", "4.30 s", "2.0°", "512 kg/m³".
[[nodiscard]] Sentence reading_text(double value, units::Quantity quantity);

/// The number alone, for the first of two with one symbol: 0.0123 → "12.3".
[[nodiscard]] Sentence bare_length_text(double metres, int decimals = 1);

/// Without zeros behind: 0.045 → "45 mm".
[[nodiscard]] Sentence plain_text(double value, units::Quantity quantity);

/// "0.2 to 3 mm". In other units rounded inwards, so that whoever keeps to it keeps to the limits.
[[nodiscard]] Sentence range_text(double least, double most, units::Quantity quantity,
                                  int decimals = units::plain);
[[nodiscard]] Sentence at_least_text(double least, units::Quantity quantity); ///< "1 mm", rounded up
[[nodiscard]] Sentence at_most_text(double most, units::Quantity quantity);   ///< "20 mm", rounded down

[[nodiscard]] std::string
hole_text(std::size_t index, const std::string& name); ///< 1, "" → "Hole 2"; with a name "Hole 2 (front)"
/// For tables: 1, "" → "2"; with a name "2 front"; a name that has the number already stays as it is.
[[nodiscard]] std::string hole_label(std::size_t index, const std::string& name);

/// "/holes/3/depth_mm"
[[nodiscard]] std::string pointer(const char* list, std::size_t index, const char* key);

} // namespace evenfall
