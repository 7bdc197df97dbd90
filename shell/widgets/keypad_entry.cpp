#include "widgets/keypad_entry.hpp"

#include "evenfall.hpp"
#include "look/words.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::widgets {
namespace {

constexpr std::string_view minus_sign = "−"; // U+2212, three bytes

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/// Without trailing zeros: "12.50" → "12.5", "3.0" → "3". Typing continues from there.
std::string without_tail(std::string text) {
    if (text.find('.') == std::string::npos) return text;
    while (text.back() == '0')
        text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text;
}

} // namespace

std::optional<double> typed_number(std::string_view text) {
    const auto read = units::read_number(text, units::Unit::one);
    return read ? std::optional(*read) : std::nullopt;
}

KeypadEntry::KeypadEntry(const NumberSpec& spec, double value_si, Unit unit) : spec_(spec), unit_(unit) {
    show(value_si);
}

void KeypadEntry::show(double si) {
    text_ = without_tail(typed_number_text(si, unit_, spec_.decimals));
    if (!std::isfinite(to_unit(si, unit_))) text_.clear();
    fresh_ = true;
    sign_chosen_ = false;
    untouched_si_ = si;
}

void KeypadEntry::press(char key) {
    if (key == ',') key = '.';
    if (key == '-') {
        if (!fresh_) return turn_sign();
        text_ = minus_sign;
        fresh_ = false;
        untouched_si_.reset();
        return;
    }
    if (key == '\x7f' || (key == '\b' && fresh_)) {
        text_.clear();
    } else if (key == '\b') {
        if (text_ == minus_sign) {
            text_.clear();
        } else if (!text_.empty()) {
            text_.pop_back();
        }
    } else {
        std::string next = text_;
        if (fresh_)
            next = sign_chosen_ && text_.starts_with(minus_sign) ? std::string(minus_sign) : std::string();
        const bool has_bar = next.find('/') != std::string::npos;
        const bool has_point = next.find('.') != std::string::npos;
        const bool has_space = next.find(' ') != std::string::npos;
        const bool after_digit = !next.empty() && is_digit(next.back());
        const bool known = is_digit(key) || key == '.' || key == '/' || key == ' ';
        if (!known || next.size() >= entry_length + (next.starts_with(minus_sign) ? minus_sign.size() : 0))
            return;
        if (key == '.' && (has_point || has_bar || has_space)) return;
        if (key == '/' && (has_bar || has_point || !after_digit)) return;
        if (key == ' ' && (has_space || has_bar || has_point || !after_digit)) return;
        if (key == '.' && !after_digit) next += '0';
        text_ = next + key;
    }
    fresh_ = false;
    untouched_si_.reset();
}

void KeypadEntry::turn_sign() {
    if (text_.starts_with(minus_sign)) {
        text_.erase(0, minus_sign.size());
    } else {
        text_.insert(0, minus_sign);
    }
    sign_chosen_ = true;
    untouched_si_.reset();
}

void KeypadEntry::step(int direction) {
    const double step = spec_.step ? std::abs(to_unit(*spec_.step, unit_)) : usual_step(unit_);
    const double ends[] = {to_unit(spec_.least, unit_), to_unit(spec_.most, unit_)};
    const auto [low, high] = std::minmax(ends[0], ends[1]);
    const double from = amount() ? to_unit(*amount(), unit_) : low;
    if (!std::isfinite(from) || !(step > 0.0)) return;
    const double steps = from / step;
    // From a value between two steps, the first press goes to the next step in that direction.
    constexpr double same = 1e-6;
    const double next = direction > 0 ? std::floor(steps + same) + 1.0 : std::ceil(steps - same) - 1.0;
    show(from_unit(std::clamp(next * step, low, high), unit_));
}

void KeypadEntry::change_unit(Unit unit) {
    const auto fitting = units_of(spec_.quantity);
    if (unit == unit_ || std::find(fitting.begin(), fitting.end(), unit) == fitting.end()) return;
    const auto held = amount();
    unit_ = unit;
    if (held) show(*held);
}

std::optional<double> KeypadEntry::amount() const {
    if (untouched_si_) return untouched_si_;
    const auto typed = typed_number(text_);
    return typed ? std::optional(from_unit(*typed, unit_)) : std::nullopt;
}

std::string KeypadEntry::refusal() const {
    const auto held = amount();
    if (!held || !std::isfinite(*held)) return look::words::keypad_no_number;
    // Limits are in SI and values typed in a shop unit: a tolerance keeps rounding from being a refusal.
    const double hair = 1e-9 * std::max({std::abs(spec_.least), std::abs(spec_.most), 1e-12});
    if (*held >= spec_.least - hair && *held <= spec_.most + hair) return {};
    return look::words::keypad_outside + std::string(" ") + limits_text() + ".";
}

std::string KeypadEntry::limits_text() const {
    // Limits shown must be accepted when typed: they are rounded inward to the resolution of the value line.
    const double ends[] = {to_unit(spec_.least, unit_), to_unit(spec_.most, unit_)};
    const auto [low, high] = std::minmax(ends[0], ends[1]);
    const double grain = resolution(unit_, spec_.decimals);
    constexpr double same = 1e-6;
    const auto text_of = [this](double shown) {
        return as_shown(without_tail(typed_number_text(from_unit(shown, unit_), unit_, spec_.decimals)));
    };
    std::string text = text_of(std::ceil(low / grain - same) * grain);
    if (std::isfinite(high)) {
        text += std::string(" ") + look::words::to + " " + text_of(std::floor(high / grain + same) * grain);
    } else {
        text.insert(0, std::string(look::words::from) + " ");
    }
    const std::string_view sign = symbol(unit_);
    if (sign.empty()) return text;
    if (unit_ != Unit::degree) text += "\u00a0";
    return text + std::string(sign);
}

} // namespace evenfall::shell::widgets
