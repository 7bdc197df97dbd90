#pragma once

#include "widgets/keypad_entry.hpp"
#include "widgets/ui.hpp"

namespace evenfall::shell::widgets {

/// The page's own keypad: a sheet over the panel (landscape) or from below (phone). Fields open it and
/// collect its result. Ids: keypad.0 … keypad.9, keypad.point, keypad.bar, keypad.space, keypad.sign,
/// keypad.back, keypad.less, keypad.more, keypad.unit.<i>, keypad.clear, keypad.cancel, keypad.ok.
class Keypad {
public:
    /// Opens for a field. `may_clear` adds the key that leaves the value out.
    void open(std::string_view field_id, std::string_view label, double value_si, const NumberSpec& spec,
              Unit unit, bool may_clear = false);
    void close();
    [[nodiscard]] bool is_open() const { return open_; }
    [[nodiscard]] const std::string& field() const { return field_; }

    /// The value set for this field, returned once. The keypad stays open until settle().
    struct Result {
        std::optional<double> amount_si; ///< nullopt = left out
    };
    [[nodiscard]] std::optional<Result> collect(std::string_view field_id);

    /// To be called after the edit was tried: "" closes the keypad, a sentence keeps it open and is shown.
    /// Does nothing unless a result was collected since; a result that no field collects is discarded.
    void settle(std::string_view refusal);

    /// Draws the sheet and reads the physical keyboard. `place` is the sheet's final position.
    void draw(Ui& ui, const Rect& screen, const Rect& place, bool from_below);

    /// The unit chosen in the keypad, to be stored in the settings.
    [[nodiscard]] std::optional<std::pair<Quantity, Unit>> take_unit_choice();

private:
    void press(char key);
    void set();
    void clear_amount();
    void read_keyboard();
    void draw_value(Ui& ui, const Rect& rect);
    void draw_units(Ui& ui, const Rect& rect);
    void draw_keys(Ui& ui, const Rect& rect);

    bool open_ = false;
    bool may_clear_ = false;
    float out_ = 0.0f; ///< progress of the sheet's slide, 0 to 1
    std::string field_;
    std::string label_;
    KeypadEntry entry_;
    std::string refusal_;
    std::optional<Result> result_;
    bool collected_ = false;
    std::optional<std::pair<Quantity, Unit>> unit_choice_;
};

} // namespace evenfall::shell::widgets
