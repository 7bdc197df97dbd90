#pragma once

// The text of the keypad's value line and its value. Pure: no ImGui.

#include "widgets/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace evenfall::shell::widgets {

/// Quantity and limits of a number. Limits and value in SI; they may be shown in another unit.
struct NumberSpec {
    Quantity quantity = Quantity::number;
    double least = 0.0;
    double most = 0.0;
    std::optional<double> step; ///< of the − and + keys, in SI; absent = usual_step of the unit
    int decimals = -1;          ///< −1 = the unit's usual number of decimals
};

/// Typed text → number, in the formats carvers use: "15.8", "15,8", "−3", "7/64", "1 3/8". nullopt where it
/// is no number.
[[nodiscard]] std::optional<double> typed_number(std::string_view text);

/// Maximum number of characters in the value line.
inline constexpr std::size_t entry_length = 12;

class KeypadEntry {
public:
    /// Starts with the whole value selected: the first digit replaces it.
    KeypadEntry() = default;
    KeypadEntry(const NumberSpec& spec, double value_si, Unit unit);

    /// One key: '0'–'9', '.' (or ','), '/', ' ', '-' (starts a negative number, or changes the sign), '\b'
    /// (backspace), '\x7f' (clear). Keys that would make an invalid number (second point or fraction bar) are
    /// ignored.
    void press(char key);
    /// Changes the sign and keeps the digits; a digit that then replaces a selected value keeps the sign.
    void turn_sign();
    /// Goes one step up (+1) or down (−1) to a whole multiple of the step, within the limits.
    void step(int direction);
    /// Shows the same value in another unit of the quantity. Invalid text stays unchanged.
    void change_unit(Unit unit);

    [[nodiscard]] const std::string& text() const { return text_; }
    [[nodiscard]] bool whole_marked() const { return fresh_; } ///< the next digit replaces everything
    [[nodiscard]] Unit unit() const { return unit_; }
    [[nodiscard]] const NumberSpec& spec() const { return spec_; }
    /// The value in SI; nullopt while the text is no number.
    [[nodiscard]] std::optional<double> amount() const;
    /// "" where the value is allowed, else one sentence that names the limit.
    [[nodiscard]] std::string refusal() const;
    /// "0.5 to 30.0 mm"
    [[nodiscard]] std::string limits_text() const;

private:
    void show(double si);

    NumberSpec spec_;
    Unit unit_ = Unit::one;
    std::string text_;
    bool fresh_ = true;
    bool sign_chosen_ = false;           ///< sign changed since the value was shown
    std::optional<double> untouched_si_; ///< the exact value of the text until a key changes it
};

} // namespace evenfall::shell::widgets
