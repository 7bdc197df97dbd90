#pragma once

#include "widgets/keypad_entry.hpp"
#include "widgets/ui.hpp"

namespace evenfall::shell::widgets {

/// The page's own keypad: a sheet over the panel (landscape) or from below (phone). Fields open it and
/// collect from it. Ids: keypad.0 … keypad.9, keypad.point, keypad.bar, keypad.space, keypad.sign,
/// keypad.back, keypad.less, keypad.more, keypad.unit.<i>, keypad.clear, keypad.cancel, keypad.ok.
class Keypad {
public:
    /// Opens for a field. `may_clear` adds the key that leaves the amount out.
    void open(std::string_view field_id, std::string_view label, double value_si, const NumberSpec& spec,
              Unit unit, bool may_clear = false);
    void close();
    [[nodiscard]] bool is_open() const { return open_; }
    [[nodiscard]] const std::string& field() const { return field_; }

    /// What was set for this field, once. The keypad stays open until settle().
    struct Result {
        std::optional<double> amount_si; ///< nullopt = left out
    };
    [[nodiscard]] std::optional<Result> collect(std::string_view field_id);

    /// After the edit was tried: "" closes the keypad, a sentence keeps it open and is shown in place.
    /// Does nothing unless a result was collected since; one that no field came for is given up.
    void settle(std::string_view refusal);

    /// Draws the sheet and reads the physical keyboard. `place` is where the sheet lies when fully out.
    void draw(Ui& ui, const Rect& screen, const Rect& place, bool from_below);

    /// The unit chosen in the keypad, to be kept by the settings.
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
    float out_ = 0.0f; ///< how far the sheet has slid, 0 to 1
    std::string field_;
    std::string label_;
    KeypadEntry entry_;
    std::string refusal_;
    std::optional<Result> result_;
    bool collected_ = false;
    std::optional<std::pair<Quantity, Unit>> unit_choice_;
};

} // namespace evenfall::shell::widgets
