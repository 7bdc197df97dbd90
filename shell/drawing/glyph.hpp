#pragma once

// The generic symbol for a part, and the room it needs beside the body. Pure.

#include "body.hpp"
#include "evenfall.hpp"

namespace evenfall::shell::drawing {

enum class Glyph {
    wire_eye,     ///< ring with its shank: eyes, hangers, twisted wire
    through_wire, ///< one wire from nose to tail, a ring at both ends
    pin,          ///< hinge pin, a line through the body
    hook,         ///< below the belly on a ring
    soft_tail,    ///< dashed outline behind the body
    glass_eye,    ///< ring with a dark centre
    ring,         ///< split ring
    bead,         ///< anything else: a small square at its centre of mass
};

/// A wire eye nearer to the nose than this share of the length points forward; beyond the other it points
/// aft.
inline constexpr double nose_share = 0.12;
inline constexpr double tail_share = 0.95;

/// By the words of its name first, then by its stage and place. `belly_z_m` is the belly's height at the
/// part.
[[nodiscard]] Glyph glyph_of(const document::Part& part, double belly_z_m, double length_m);

/// Where a hook's ring is attached: to the nearest hanger, to the tail's end, or to the belly itself.
struct HookHanger {
    double x_m = 0.0;
    double z_m = 0.0;
};
[[nodiscard]] HookHanger hook_hanger(const document::Document& document, const shape::Lines& lines,
                                     const document::Part& hook);

/// How far a hook reaches below its ring: twice the distance to its centre of mass, at least 10 mm.
[[nodiscard]] double hook_drop_m(const document::Part& hook, const HookHanger& from);

/// Where a soft tail ends: as far behind its centre of mass as the body's end is before it, plus a little
/// inside the body.
[[nodiscard]] double tail_end_m(const document::Part& part, double length_m);

} // namespace evenfall::shell::drawing
