#pragma once

#include "base/outcome.hpp"
#include "base/trade.hpp"
#include "materials/bits.hpp"
#include "materials/wire_strength.hpp"
#include "materials/wire_twist.hpp"
#include "workshop/eye_room.hpp"
#include "workshop/hook_swing.hpp"
#include "workshop/linked_eyes.hpp"
#include "workshop/swing.hpp"
#include "workshop/walls.hpp"

#include <array>

namespace evenfall::joints {

/// Strength of line assumed where the document gives none: 20 lb.
inline constexpr double usual_line_n = units::n_from_lbf(20.0);

/// A strength below this multiple of the line's is too little: a jerk loads more than the line's steady pull.
inline constexpr double least_safety = 2.0;

struct EyeAnswer {
    EyePlace place;
    std::optional<EyeRoom> room; ///< absent without a pocket
};

/// What stops a joint's swing first.
enum class StoppedBy { nothing, wood, pocket_mouth, eyes };

/// Answers for one joint.
struct JointAnswer {
    HingePlace place;
    std::array<Swing, 2> bare;     ///< wood on wood; by Way
    std::array<Swing, 2> finished; ///< with all films on its faces
    std::array<double, 2>
        wire_rad{}; ///< where the twist meets the pocket's mouth; most_swing_rad where nothing stops it
    std::array<double, 2>
        eyes_rad{}; ///< where linked eyes meet each other; most_swing_rad where the finished wood stops first
    std::array<double, 2> swing_rad{}; ///< the smallest of finished, wire and eyes
    std::array<StoppedBy, 2> stopped_by{};
    std::vector<EyeAnswer> eyes;
    std::array<std::optional<double>, 2> mouth_m{
        {0.0, 0.0}}; ///< width of the pockets' mouth for the full swing of the wood to that side, by Way; 0
                     ///< where wide enough, absent where no width is enough
    double play_per_eye_m = 0.0;  ///< eye's inside less pin, or less wire with linked eyes
    std::optional<LinkPlay> play; ///< play of linked eyes
    double sag_rad =
        0.0; ///< sag of the tail by that play, either way: each eye moves half its play off the pin's axis,
             ///< one fore, one aft; 0 with one eye. Linked: one pair taut, the other pushed together
    /// A single eye on a pin: how far the tail rocks out of the level before wire meets pin on both sides.
    /// The hole of a ring of round wire, seen along the pin, is (D + d)·cosθ − d wide: θ = acos((pin + d)/(D
    /// + d)), by plain geometry. Pocket and wood may stop it earlier. Absent for linked eyes, which rock as
    /// they swing.
    std::optional<double> rocks_rad;
    std::vector<Wall> walls;
    wire::TwistAnswer eye;
    double twist_reach_m = 0.0;  ///< length of wire in the wood that holds it, at the eye where it is least
    double pin_length_m = 0.0;   ///< from 2 mm inside the belly to 2 mm inside the back; 0 without a pin
    double pin_middle_z_m = 0.0; ///< height of its middle
    bits::BitOfEachSystem eye_bits; ///< for the twist, with clearance for glue
    bits::BitOfEachSystem pin_bits; ///< for the pin (bits::for_pin)
    wire::Strength strength;
};

struct JointsAnswer {
    FilmThickness films; ///< on each joint face, and on the walls of the pockets
    double line_n = usual_line_n;
    std::vector<JointAnswer> joints;
    std::array<double, 2> wrap_rad{}; ///< sum over all joints, by Way
    std::array<double, 2> turn_radius_m{};
    std::vector<HookFoul> hooks;
    Problems warnings;
};

/// All answers about the joints of a document that evaluates. Refuses what evaluate() refuses of shape and
/// joints, and hinges whose wire cannot be bent ("/joints/0/hinge/turns").
[[nodiscard]] Outcome<JointsAnswer> joint_answers(const document::Document& document);

/// The same for a body that is already cut.
[[nodiscard]] Outcome<JointsAnswer> joint_answers(const document::Document& document,
                                                  const shape::Body& body);

} // namespace evenfall::joints
