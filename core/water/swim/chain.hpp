#pragma once

// A jointed lure as a chain of stiff segments, seen from above, towed by its line tie: all that the equations
// of its swimming need, in one water. Made from a document by workshop/swim_chain.hpp; tests make their own.

#include <array>
#include <cstddef>
#include <vector>

namespace evenfall::swim {

inline constexpr std::size_t most_segments = 6;

/// A piece of a segment across its length.
struct Slice {
    double s_m = 0.0;      ///< its middle, aft of the segment's fore hinge (of the line tie in the first)
    double length_m = 0.0; ///< along the lure
    double height_m = 0.0;
    double added_kg_m = 0.0; ///< added mass for motion to the side, a metre of length; of a fin that of a
                             ///< long plate as high as it is
    double cross_kg_m = 0.0; ///< ½ρ·Cd·height·length, without the end effect
    double skin = 0.0;      ///< ½ρ·1.3·1.328·√(ν/L)·girth·length [kg/m·(m/s)^½]: laminar friction
    bool is_fin = false;    ///< then all but added mass is that beyond the wood it overlaps
    double wood_kg_m = 0.0; ///< of a fin: added mass of the wood that it overlaps
};

/// A hook or another small part: ½ρ·CdA where it hangs.
struct Drag {
    double s_m = 0.0;
    double drag_kg_m = 0.0;
};

struct Segment {
    double length_m = 0.0; ///< from hinge to hinge; of the last one to its end, fin included
    double mass_kg = 0.0;
    double moment_kg_m = 0.0;   ///< of mass, about the fore hinge, aft positive
    double inertia_kg_m2 = 0.0; ///< of mass, about the fore hinge, upright axis
    double surge_kg = 0.0;      ///< added mass for motion along
    double form_kg_m = 0.0;     ///< ½ρ·CdA along, of its form
    std::vector<Slice> slices;  ///< fore to aft, those of the fin last
    std::vector<Drag> parts;
};

/// The joint ahead of a segment.
struct Joint {
    std::array<double, 2> stop_rad{}; ///< how far it swings to port and to starboard, ≥ 0
    double pin_radius_m = 0.0;
};

struct Chain {
    std::vector<Segment> segments; ///< nose to tail, 2 to most_segments
    std::vector<Joint> joints;     ///< one less
    double tie_x_m = 0.0;          ///< of the line tie, from the nose
    double length_m = 0.0;         ///< of the lure, with a tail; Re and time steps go by it
    double water_kg_m3 = 0.0;
    bool soft_tail = false; ///< its fin bends
};

/// How it is towed. With plain hinges beats per metre hardly depend on the speed: friction and Re alone do.
struct Tow {
    double speed_m_s = 0.5;
    double joint_friction_n_m = 1e-5; ///< of each joint besides its pin: paint, binding
    double line_m = 8.0;              ///< from 2 to 25 m beats change by 1 %
};

} // namespace evenfall::swim
