#pragma once

#include "base/vec3.hpp"
#include "body/body.hpp"

#include <vector>

namespace evenfall::fittings {

enum class FittingKind {
    hinge_eye, ///< one twisted eye of a hinge
    hinge_pin,
    hanger,
};

/// A piece of wire built into the wood. What the ledger weighs, the room that holes leave, the drawing and
/// the sheet all come from here.
struct Fitting {
    FittingKind kind = FittingKind::hinge_eye;
    int item = 0;               ///< joint or hanger
    int segment = 0;            ///< that holds it
    Vec3 mouth_m;               ///< where it enters the wood; of a pin its lower end
    Vec3 into;                  ///< unit vector from there along the wire
    double in_wood_m = 0.0;     ///< how far it goes in
    double bored_m = 0.0;       ///< how deep its hole is; of a hinge eye at least its glued depth
    double hole_m = 0.0;        ///< diameter of its hole
    double wire_m3 = 0.0;       ///< volume of the wire
    double outside_m3 = 0.0;    ///< of that, outside the wood: what displaces water
    double gap_m3 = 0.0;        ///< between wire and hole, to be filled with glue; hangers only (a hinge's:
                                ///< glue::glued_eyes)
    Vec3 at_m;                  ///< centre of the wire's mass; an eye counts at its middle
    double eye_inside_m = 0.0;  ///< 0 without an eye
    std::vector<Vec3> eyes_m{}; ///< middles of its eyes
};

/// Eyes and pins of every joint with a hinge or with pockets round its pin, in the order of joints, then all
/// hangers. Left out: wire that twisted_eye() refuses, a pin outside the wood.
///
/// Lengths: an eye as wire::twisted_eye; a screw or straight wire has a full ring of wire, diameter inside +
/// wire, and one straight wire of the depth (or the wood's whole thickness) by plain geometry. A screw has no
/// gap: it presses its way into the wood.
[[nodiscard]] std::vector<Fitting> fittings(const document::Document& document, const shape::Body& body);

/// True where the builder has said anything of this joint's hinge: it is drawn, or pockets stand round its
/// pin.
[[nodiscard]] bool has_hinge(const document::Document& document, const shape::Body& body, int joint);

} // namespace evenfall::fittings
