#pragma once

// From an idea to a lure that can be built: a card of few choices → a whole document with its lead planned.

#include "base/outcome.hpp"
#include "document/document.hpp"

#include <optional>
#include <string>

namespace evenfall::starter {

/// Shape of the body before it is changed by hand.
enum class Form {
    full,    ///< a stout fore body that tapers to the tail
    slender, ///< low and long
    deep,    ///< high and flat-sided
    round,   ///< a round bar, drawn in at both ends
};

/// What the finished lure should do in the fishing water.
enum class WantedFall { floats, suspends, slow, medium, fast, by_speed };

enum class TailFin {
    none,
    soft, ///< cast of soft plastic, in a slot
};

inline constexpr int most_segments = 6;
inline constexpr int most_hooks = 2;

struct LureCard {
    std::string name = "New lure";
    Form form = Form::full;
    double length_m = 0.16;            ///< 60 to 400 mm
    std::optional<double> height_m;    ///< absent: usual for the form
    std::optional<double> thickness_m; ///< absent: usual for form and height
    int segments = 3;                  ///< 1 to most_segments
    std::string wood = "basswood";     ///< id in materials/woods
    int hooks = 2;                     ///< 0 to most_hooks
    TailFin tail = TailFin::soft;
    WantedFall fall = WantedFall::slow;
    double speed_m_s = 0.2; ///< by_speed: least_speed_m_s to greatest_speed_m_s

    bool operator==(const LureCard&) const = default;
};

inline constexpr double least_speed_m_s = 0.03;
inline constexpr double greatest_speed_m_s = 1.0;
inline constexpr double least_length_m = 0.06;
inline constexpr double greatest_length_m = 0.4;

/// Height and thickness where the card gives none.
[[nodiscard]] double usual_height_m(Form form, double length_m);
[[nodiscard]] double usual_thickness_m(Form form, double height_m);

/// Speeds of the words: slow 0.12, medium 0.22, fast 0.35 m/s. Common practice, no source.
[[nodiscard]] double speed_of(const LureCard& card);

/// Sets the targets of a whole lure to what a card asks of its fall: a speed, or the weight in water of one
/// that floats or suspends. The hang asked for stays.
void ask_for_fall(document::Document& document, const LureCard& card);

/// The lure: body, joints with hinges and their pockets, line tie, hooks on hangers, slot and tail, usual
/// coats, lead holes, targets, lead planned. It evaluates, it has no warnings of its own (answers and
/// joints), its plan is met, and everything in it can be changed afterwards.
///
/// Refused with the choice that forbids it: "/length_mm", "/height_mm", "/thickness_mm", "/segments",
/// "/wood",
/// "/hooks", "/fall".
[[nodiscard]] Outcome<document::Document> new_lure(const LureCard& card);

/// Adds a paddle as high as the end of the wood, a quarter as long as the lure, with a tenon for the slot
/// that ends there; where there is none, a slot is added too.
void add_soft_tail(document::Document& document);

} // namespace evenfall::starter
