#pragma once

// The text of the keypad's value line and what it means. Pure: no ImGui.

#include "widgets/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace evenfall::shell::widgets {

/// What a number is and what it may be. Limits and value in SI; they need not be shown in the same unit.
struct NumberSpec {
    Quantity quantity = Quantity::number;
    double least = 0.0;
    double most = 0.0;
    std::optional<double>
        step;          ///< of the − and + keys, in the SI of the quantity; absent = usual_step of the unit
    int decimals = -1; ///< as shown; −1 = the unit's usual ones
};

/// Typed digits → number, the way a carver writes: "15.8", "15,8", "−3", "7/64", "1 3/8". nullopt when it is
/// no number.
[[nodiscard]] std::optional<double> typed_number(std::string_view text);

/// Greatest number of characters the value line takes.
inline constexpr std::size_t entry_length = 12;

class KeypadEntry {
public:
    /// Starts with the value shown and marked as a whole: the first digit replaces it.
    KeypadEntry() = default;
    KeypadEntry(const NumberSpec& spec, double value_si, Unit unit);

    /// One key: '0'–'9', '.' (',' means the same), '/', ' ', '-' (begins a negative number, or turns the sign
    /// of one under way), '\b' (takes one back), '\x7f' (clears). Keys that would make nonsense (second point
    /// or bar) are ignored.
    void press(char key);
    /// Turns the sign round and keeps the digits; a digit that then replaces a marked value keeps the sign.
    void turn_sign();
    /// Steps up (+1) or down (−1) from what stands there, onto a whole multiple of the step, held within the
    /// limits.
    void step(int direction);
    /// Shows the same amount in another unit of the quantity. Unreadable text is kept as it is.
    void change_unit(Unit unit);

    [[nodiscard]] const std::string& text() const { return text_; }
    [[nodiscard]] bool whole_marked() const { return fresh_; } ///< next digit replaces all
    [[nodiscard]] Unit unit() const { return unit_; }
    [[nodiscard]] const NumberSpec& spec() const { return spec_; }
    /// The amount in SI; nullopt while the text is no number.
    [[nodiscard]] std::optional<double> amount() const;
    /// "" when the amount may be set, else one sentence that names the limit.
    [[nodiscard]] std::string refusal() const;
    /// "0.5 to 30.0 mm"
    [[nodiscard]] std::string limits_text() const;

private:
    void show(double si);

    NumberSpec spec_;
    Unit unit_ = Unit::one;
    std::string text_;
    bool fresh_ = true;
    bool sign_chosen_ = false;           ///< turned since the value was shown
    std::optional<double> untouched_si_; ///< the exact amount behind the text until a key changes it
};

} // namespace evenfall::shell::widgets
