#include "widgets/keypad_entry.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall::shell::widgets;
using Catch::Matchers::WithinRel;

namespace {

const NumberSpec depth{Quantity::length, 0.0, 0.030, {}, -1};
const NumberSpec pitch{Quantity::angle, -0.5, 0.5, {}, -1};
const NumberSpec fall{Quantity::fall, 0.02, 3.048, {}, -1};

KeypadEntry typed(const NumberSpec& spec, Unit unit, std::string_view keys) {
    KeypadEntry entry(spec, 0.0125, unit);
    for (const char key : keys)
        entry.press(key);
    return entry;
}

// A typed decimal and its product with a unit are each a rounding or two away from the double compared with.
constexpr double rounding = 1e-14;

} // namespace

TEST_CASE("a keypad reads decimals with point or comma", "[shell][keypad]") {
    for (const char* keys : {"15.8", "15,8"}) {
        const KeypadEntry entry = typed(depth, Unit::mm, keys);
        CHECK(entry.text() == "15.8");
        REQUIRE(entry.amount());
        CHECK_THAT(*entry.amount(), WithinRel(0.0158, rounding));
        CHECK(entry.refusal().empty());
    }
}

TEST_CASE("a keypad reads fractions of an inch", "[shell][keypad]") {
    CHECK_THAT(*typed(depth, Unit::inch_fraction, "7/64").amount(), WithinRel(7.0 / 64.0 * 0.0254, rounding));
    CHECK_THAT(*typed(depth, Unit::inch_fraction, "1 3/8").amount(), WithinRel(1.375 * 0.0254, rounding));
    CHECK_FALSE(typed(depth, Unit::inch_fraction, "7/").amount());
    CHECK_FALSE(typed(depth, Unit::inch_fraction, "7/0").amount());
    CHECK_FALSE(typed(depth, Unit::inch_fraction, "1 3/").amount());
    CHECK_THAT(*typed(depth, Unit::inch_fraction, "1 ").amount(), WithinRel(0.0254, rounding));
}

TEST_CASE("keys that would make nonsense do nothing", "[shell][keypad]") {
    CHECK(typed(depth, Unit::mm, "1..5").text() == "1.5");
    CHECK(typed(depth, Unit::mm, "/5").text() == "5");
    CHECK(typed(depth, Unit::inch_fraction, "7//8").text() == "7/8");
    CHECK(typed(depth, Unit::inch_fraction, "7/8.").text() == "7/8");
    CHECK(typed(depth, Unit::inch_fraction, "1  3/8").text() == "1 3/8");
    CHECK(typed(depth, Unit::mm, "x5e2").text() == "52");
    CHECK(typed(depth, Unit::mm, ".5").text() == "0.5");
    CHECK(typed(depth, Unit::mm, "1234567890123456").text().size() == entry_length);
}

TEST_CASE("the first digit replaces the value that was there, and an untouched value stays exact",
          "[shell][keypad]") {
    KeypadEntry entry(depth, 0.0123456789, Unit::mm);
    CHECK(entry.text() == "12.3");
    CHECK(entry.whole_marked());
    CHECK(*entry.amount() == 0.0123456789);
    entry.press('8');
    CHECK(entry.text() == "8");
    CHECK_FALSE(entry.whole_marked());
}

TEST_CASE("backspace takes one sign, and a marked value as a whole", "[shell][keypad]") {
    KeypadEntry entry = typed(depth, Unit::mm, "15.8\b");
    CHECK(entry.text() == "15.");
    entry.press('\b');
    CHECK(entry.text() == "15");
    KeypadEntry marked(depth, 0.0125, Unit::mm);
    marked.press('\b');
    CHECK(marked.text().empty());
    CHECK_FALSE(marked.amount());
    CHECK_FALSE(marked.refusal().empty());
    marked.press('\b');
    CHECK(marked.text().empty());
}

TEST_CASE("a minus sign begins a negative number and the sign key turns a number round", "[shell][keypad]") {
    CHECK(typed(pitch, Unit::degree, "-3").text() == "−3");
    CHECK_THAT(*typed(pitch, Unit::degree, "-3").amount(), WithinRel(-3.0 * 0.017453292519943295, rounding));
    KeypadEntry entry = typed(pitch, Unit::degree, "3");
    entry.turn_sign();
    CHECK(entry.text() == "−3");
    entry.turn_sign();
    CHECK(entry.text() == "3");
    KeypadEntry marked(pitch, 0.05, Unit::degree);
    marked.turn_sign();
    marked.press('4');
    CHECK(marked.text() == "−4");
    KeypadEntry lone = typed(pitch, Unit::degree, "-\b");
    CHECK(lone.text().empty());
}

TEST_CASE("beyond the limits the keypad refuses with a sentence that names them in the unit shown",
          "[shell][keypad]") {
    KeypadEntry entry = typed(depth, Unit::mm, "31");
    CHECK(entry.refusal().find("0 to 30\u00a0mm") != std::string::npos);
    CHECK(typed(depth, Unit::mm, "30").refusal().empty());
    CHECK(typed(depth, Unit::mm, "0").refusal().empty());
    KeypadEntry negative = typed(depth, Unit::mm, "1");
    negative.turn_sign();
    CHECK_FALSE(negative.refusal().empty());
}

TEST_CASE("limits shown in any unit may be typed", "[shell][keypad]") {
    const NumberSpec length{Quantity::length, 0.020, 1.0, {}, -1};
    for (const Unit unit : units_of(Quantity::length)) {
        const std::string limits = KeypadEntry(length, 0.1, unit).limits_text();
        const std::string low = limits.substr(0, limits.find(" to "));
        std::string high = limits.substr(limits.find(" to ") + 4);
        high.resize(high.find("\u00a0"));
        CAPTURE(limits);
        CHECK(typed(length, unit, low).refusal().empty());
        CHECK(typed(length, unit, high).refusal().empty());
    }
    const std::string slowest = KeypadEntry(fall, 0.15, Unit::s_per_ft).limits_text();
    CHECK(slowest == "0.1 to 15.24\u00a0s/ft");
    CHECK(typed(fall, Unit::s_per_ft, "15.24").refusal().empty());
    CHECK_FALSE(typed(fall, Unit::s_per_ft, "15.3").refusal().empty());
}

TEST_CASE("a change of unit shows the same amount", "[shell][keypad]") {
    KeypadEntry entry(depth, 0.0127, Unit::mm);
    entry.change_unit(Unit::inch_fraction);
    CHECK(entry.text() == "1/2");
    CHECK(*entry.amount() == 0.0127);
    entry.change_unit(Unit::gram); // not a length
    CHECK(entry.unit() == Unit::inch_fraction);
}

TEST_CASE("steps land on whole steps and stop at the limits", "[shell][keypad]") {
    KeypadEntry entry(depth, 0.0123, Unit::mm);
    entry.step(1);
    CHECK(entry.text() == "12.5");
    entry.step(1);
    CHECK(entry.text() == "13");
    entry.step(-1);
    CHECK(entry.text() == "12.5");
    for (int i = 0; i < 100; ++i)
        entry.step(1);
    CHECK(entry.text() == "30");
    CHECK(entry.refusal().empty());
    for (int i = 0; i < 100; ++i)
        entry.step(-1);
    CHECK(entry.text() == "0");
    KeypadEntry inches(depth, 0.0254, Unit::inch_fraction);
    inches.step(-1);
    CHECK(inches.text() == "63/64");
    KeypadEntry own_step({Quantity::length, 0.0, 1.0, 0.010, -1}, 0.1, Unit::mm);
    own_step.step(1);
    CHECK(own_step.text() == "110");
}

TEST_CASE("a step of the rate of fall goes by time, not by speed", "[shell][keypad]") {
    KeypadEntry entry(fall, 0.3048 / 1.9, Unit::s_per_ft);
    entry.step(1);
    CHECK(entry.text() == "1.95");
    CHECK_THAT(*entry.amount(), WithinRel(0.3048 / 1.95, rounding));
}
