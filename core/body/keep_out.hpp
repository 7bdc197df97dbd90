#pragma once

#include "body/body.hpp"

#include <string>
#include <vector>

namespace evenfall::joints {

/// Wood round pockets, pins and wire is thin below this. Common practice, no source.
inline constexpr double thin_wall_m = 1.5e-3;

} // namespace evenfall::joints

namespace evenfall::fittings {

enum class BuiltIn { pocket, hinge_eye, hinge_pin, hanger, part };

/// The box round something built into the wood, without a wall.
struct KeepOut {
    BuiltIn what = BuiltIn::pocket;
    int item = 0; ///< pocket, joint, hanger or part
    shape::Box box;

    /// The box with the wall that has to stay round it (joints::thin_wall_m).
    [[nodiscard]] shape::Box with_wall() const;
};

/// All places that a bit has to stay out of: pockets, hinge wires and pins, hangers, and hardware embedded in
/// the wood. Of such a part only the centre is known: a usual twist is assumed round it.
[[nodiscard]] std::vector<KeepOut> keep_out(const document::Document& document, const shape::Body& body);

/// "the wire of joint 2", "pocket 3", "the hanger Front": in a sentence.
[[nodiscard]] std::string built_in_text(const document::Document& document, const KeepOut& zone);

} // namespace evenfall::fittings
