#pragma once

// The document: everything a builder decides about one lure, and nothing that is computed from it.
// SI inside (m, kg, rad); the JSON form (document/read.hpp, document/write.hpp) speaks trade units.
// Axes: x aft from the nose, y to starboard, z up from the datum line.

#include "base/trade.hpp"
#include "base/vec3.hpp"
#include "document/board.hpp"
#include "document/log.hpp"

#include <optional>
#include <string>
#include <vector>

namespace evenfall::document {

inline constexpr int document_version = 2; ///< that is written; version 1 is read too (version_1.hpp)

// Caps that keep a hostile or broken document from costing more than a moment.
inline constexpr std::size_t max_curve_points = 64;
inline constexpr std::size_t max_joints = 11;
inline constexpr std::size_t max_holes = 40;
inline constexpr std::size_t max_pockets = 40;
inline constexpr std::size_t max_hardware = 60;
inline constexpr std::size_t max_hangers = 20;
inline constexpr std::size_t max_coats = 24;
inline constexpr std::size_t max_text = 400; ///< bytes of one name or note
inline constexpr std::size_t max_document_bytes = 256 * 1024;

/// One point of a drawn curve; between points the curve is a monotone cubic (body/curve.hpp).
struct CurvePoint {
    double x_m = 0.0;
    double value = 0.0; ///< metres for lines of the drawing; a plain number for sections

    bool operator==(const CurvePoint&) const = default;
};
using CurvePoints = std::vector<CurvePoint>;

/// How the cross-section fills its box of half width a and half height b.
enum class SectionKind {
    rounded,   ///< superellipse, |y/a|ⁿ + |z/b|ⁿ = 1, of exponent n
    chamfered, ///< rectangle whose corners are cut off, at 45° in the unit square
    drawn,     ///< one drawn half-section for the whole length, `half_outline` in the unit square
};

/// A point of a drawn half-section, starboard side: y from 0 to 1 (share of half width), z from −1 (belly) to
/// 1 (back).
struct OutlinePoint {
    double y = 0.0;
    double z = 0.0;

    bool operator==(const OutlinePoint&) const = default;
};

struct Section {
    SectionKind kind = SectionKind::rounded;
    CurvePoints exponent{{0.0, 2.4}}; ///< rounded: n along x, 1.2 to 12; one point = the same all along
    CurvePoints corner_cut;           ///< chamfered: the cut as a share of a and b along x, 0 to 1
    std::vector<OutlinePoint>
        half_outline; ///< drawn: from belly centre (0,−1) to back centre (0,1), straight between points

    /// The curve of a kind that has one; a drawn section makes no use of it.
    [[nodiscard]] CurvePoints& curve() { return kind == SectionKind::chamfered ? corner_cut : exponent; }
    [[nodiscard]] const CurvePoints& curve() const {
        return kind == SectionKind::chamfered ? corner_cut : exponent;
    }

    bool operator==(const Section&) const = default;
};

/// How closely the carver follows the drawing (ledger/carved_size.hpp has the millimetres).
enum class Carving { careful, usual, rough };

/// The drawing of the body before it is cut. All three curves run from x = 0 to the same length.
struct Shape {
    CurvePoints back;       ///< z of the back line [m]
    CurvePoints belly;      ///< z of the belly line [m], below the back everywhere
    CurvePoints half_width; ///< y of the width line [m], ≥ 0
    Section section;
    Carving carving = Carving::usual;
    std::vector<Measured> measured{}; ///< in order of x; where given, they replace the drawn width and height
                                      ///< (body/measured.hpp)

    bool operator==(const Shape&) const = default;
};

struct Wood {
    std::string species = "basswood"; ///< id in materials/woods
    double moisture_percent = 12.0;   ///< 0 to 30
    std::optional<double>
        density_kg_m3; ///< weighed by the builder: as it is now, moisture included; replaces the table
    std::optional<double>
        density_spread; ///< relative standard deviation; else the table's 0.10, or 0.02 where weighed
};

/// Water by temperature and absolute salinity (grams of salt per kilogram of sea water, not practical
/// salinity).
struct Water {
    double temperature_c = 15.0; ///< 0 to 40
    double salinity_g_kg = 0.0;  ///< 0 to 40
};

enum class HingeKind {
    pinned, ///< eyes of one segment turn on a pin in the other
    linked, ///< eyes hang in each other, without a pin
};
enum class EyesOn { fore, aft };
enum class WireTemper { spring, soft };
/// Of wire for twisted eyes: annealed wire twists and stays; spring wire is the exception (common practice,
/// no source). A document that leaves it out was written for spring wire.
inline constexpr WireTemper usual_temper = WireTemper::soft;
enum class HingeGlue { none, ca, epoxy };

/// How a joint is hung. Eyes stand level, one above the other, in pockets of the segment that does not hold
/// them.
struct Hinge {
    HingeKind kind = HingeKind::pinned;
    EyesOn eyes_on = EyesOn::fore;
    double pin_aft_m = 0.0; ///< pin's axis behind the middle of the joint's gap; before it negative
    double pin_off_m = 0.0; ///< from the middle plane, to starboard
    double pin_diameter_m = 0.0012;
    WireTemper temper = WireTemper::spring;
    double wire_m = 0.0009;
    double eye_inside_m = 0.002;
    double turns = 6.0;    ///< of the twisted legs
    double glued_m = 0.02; ///< how deep the twist sits in its hole
    std::optional<double>
        upper_z_m; ///< height of the upper eye; absent: the middles of the pockets round the pin
    std::optional<double> lower_z_m;  ///< and of the lower one; with only one of both, the joint has one eye
    HingeGlue glue = HingeGlue::none; ///< that fills the holes of the twists and is weighed with the
                                      ///< hardware; none: not weighed
    double lean_rad = 0.0; ///< linked: how far the fore eye's plane leans out of the level, the aft one
                           ///< square to it; 0 to 90°
    /// Eyes and pin are lines of the ledger by their geometry. Without it they are counted as parts, if at
    /// all: so it is in documents from before this field.
    bool weighs = false;
    std::optional<double> mass_kg; ///< of all its eyes and the pin, weighed; replaces the computed mass
};

enum class HangerKind {
    twisted,  ///< an eye of wire, its legs twisted together and glued into a hole
    screw,    ///< an eye with a shank of one wire, screwed into the wood
    straight, ///< a wire straight through the segment, with an eye at either end
};
enum class HangerOn { nose, tail, belly, back };

/// An eye that a line, a hook or a ring hangs on. It stands square on the wood, on the middle plane.
struct Hanger {
    std::string name;
    HangerKind kind = HangerKind::twisted;
    HangerOn on = HangerOn::belly;
    double x_m = 0.0; ///< on belly and back: from the nose
    double z_m = 0.0; ///< at nose and tail: height
    double wire_m = 0.0009;
    double eye_inside_m = 0.0025;
    double turns = 4.0;                ///< twisted: of the legs
    double depth_m = 0.016;            ///< twisted and screw: of the hole
    HingeGlue glue = HingeGlue::epoxy; ///< twisted and straight: fills the hole round the wire
    std::optional<double> mass_kg;     ///< weighed; replaces the computed mass
};

/// A hinge cut across the body at x: a gap centred on x, each face relieved to a V by its angle.
/// The fore segment keeps x ≤ at − gap/2 − |y|·tan(relief_fore); the aft one x ≥ at + gap/2 +
/// |y|·tan(relief_aft).
struct Joint {
    double at_m = 0.0;
    double gap_m = 0.002;         ///< 0.2 to 20 mm
    double relief_fore_rad = 0.0; ///< 0 to 60°
    double relief_aft_rad = 0.0;
    std::optional<Hinge> hinge{}; ///< absent: a pin in the middle of the gap
};

enum class HoleFrom { belly, back };
enum class HoleEnd { flat, point_118 }; ///< 118° twist-drill point: the cone goes on beyond `depth_m`
enum class HoleUse {
    ballast, ///< the lead plan may choose depth and fill
    drilled, ///< depth is cut already; the lead plan may choose the fill only
    leaded,  ///< the fill is in and capped too: the plan leaves it alone; the bench may drill some of it out
             ///< or lay more on it
    fixed,   ///< stays as it is: a mistake that was plugged, an open hole, a builder's own choice
};

/// What lies at the deep end of a hole. Exactly one of mass and length is given.
struct Fill {
    std::string material = "lead";
    std::optional<double> mass_kg;
    std::optional<double> length_m;         ///< length of stock
    std::optional<double> stock_diameter_m; ///< rod thinner than the hole; absent = fills the hole's width
};

/// What closes a hole, flush with the skin.
struct Cap {
    std::string material = "ca_soda";
    double length_m = 0.002;
};

/// How a hole was before one change of the holes that the bench advised.
struct HoleBefore {
    std::optional<int> change; ///< from 0; absent = the first
    double depth_m = 0.0;
    std::optional<Fill> fill;
};

/// A hole bored straight up from the belly or straight down from the back (axis along z).
/// From the skin inward: cap, void, fill at the deep end. Without cap and with room left it floods.
struct Hole {
    std::string name;
    HoleUse use = HoleUse::ballast;
    HoleFrom from = HoleFrom::belly;
    double x_m = 0.0;
    double y_m = 0.0;
    double diameter_m = 0.00635;
    double depth_m = 0.0; ///< along the axis from the skin; 0 = not drilled (yet)
    HoleEnd end = HoleEnd::flat;
    std::optional<Fill> fill;
    std::optional<Cap> cap = Cap{};
    double max_depth_m = 0.030;       ///< the plan's depth limit for this hole (the stop on the bit)
    double wall_m = 0.003;            ///< wood that must be left to skin, joint face and next hole
    std::vector<HoleBefore> before{}; ///< in order of change; changes that left it alone are not in it
};

/// A box cut out of the wood: eye pocket, tail slot. It counts where it overlaps wood.
struct Pocket {
    std::string name;
    double x_from_m = 0.0;
    double x_to_m = 0.0;
    double y_m = 0.0; ///< centre
    double width_m = 0.004;
    std::optional<double> z_from_m; ///< absent = through the belly
    std::optional<double> z_to_m;   ///< absent = through the back
    bool floods = true;
};

/// Wire, eyes, pins, hooks, rings, glass eyes, a soft tail: anything weighed and put on.
struct Part {
    std::string name;
    Stage stage = Stage::hardware; ///< hardware, painted (before the clear coat: glass eyes) or rigged
    std::string material = "stainless";
    double mass_kg = 0.0;
    std::optional<double> mass_sigma_kg; ///< absent = 3 % of the mass
    Vec3 at_m;                           ///< its own centre of mass
    double embedded = 0.0;               ///< share of its volume that sits in wood that was there (0 to 1)
    std::optional<int> segment;          ///< absent = the segment nearest to at_m.x
    std::optional<double>
        reach_m{}; ///< hooks: from the hanger's eye to the far side of the bend, as it swings
};

/// What of a soft tail sits in its slot: a plate that runs forward from the root, about the tail's axis and
/// the middle plane.
struct Tenon {
    double length_m = 0.0;    ///< along x
    double thickness_m = 0.0; ///< across, along y
    double height_m = 0.0;    ///< along z
};

/// A soft tail by its shape: superellipse sections along an axis that runs aft from the root, level, in the
/// middle plane. All three curves run from the root, x = 0, to the same length.
struct Tail {
    std::string material = "plastisol";  ///< soft plastic or silicone (materials::is_soft)
    std::optional<double> density_kg_m3; ///< of the cast plastic as the builder weighed it; else the table's
    std::optional<double>
        density_spread;         ///< relative standard deviation; else the table's, or 0.02 where weighed
    double x_m = 0.0;           ///< of the root, from the nose: at the end of the wood or behind it
    double z_m = 0.0;           ///< of the axis
    CurvePoints back;           ///< z of the back line over the axis
    CurvePoints belly;          ///< z of the belly line, below the back everywhere but at root and tip
    CurvePoints half_thickness; ///< y, ≥ 0
    double exponent = 2.0;      ///< of the sections, 1.2 to 12
    std::optional<Tenon> tenon;
};

enum class CoatKind {
    soaks, ///< mass in the pores, no new outer volume
    film,  ///< mass and outer volume
};

/// One coat over the surfaces named. Exactly one of thickness and mass is given (soaks: mass).
struct Coat {
    std::string name;
    Stage stage = Stage::clear_coated; ///< sealed, painted or clear_coated
    CoatKind kind = CoatKind::film;
    std::string material = "epoxy";
    std::optional<double> thickness_m;
    std::optional<double> mass_kg; ///< what stays on the lure, all segments together
    std::optional<double> spread;  ///< relative standard deviation; absent = 0.20
    bool on_skin = true;
    bool on_joint_faces = true;
    /// Walls of the pockets too, and then the mouths that the pockets leave in skin and joint faces are not
    /// coated. Without it the coat is laid over skin and faces as if no pocket were there: pockets plugged
    /// while the coat goes on.
    bool on_pockets = false;
    std::string note{}; ///< colour, paint, how it went on
};

enum class TargetBy { fall, in_water };

/// Which target comes first where the holes cannot meet both.
enum class MattersMore { both_alike, fall, hang };

/// What the finished lure is asked to do, in the fishing water.
struct Targets {
    TargetBy by = TargetBy::fall;
    MattersMore matters_more = MattersMore::both_alike; ///< fall: or the weight in water that is asked for
    double fall_m_s = 0.15;                             ///< used when by = fall; > 0
    double in_water_kg = 0.001;                         ///< used when by = in_water; may be negative (floats)
    double pitch_rad = 0.0;                             ///< hang pitch, nose-up positive
    double fall_band = 0.10;                            ///< relative, either side
    double pitch_band_rad = 2.0 * units::degree_rad;
    std::optional<double> line_n{}; ///< breaking strength of the line it is fished on
};

struct Document {
    std::string name = "New lure";
    std::string note;
    Wood wood;
    Water water; ///< where it is fished
    Water tub;   ///< where it is tested
    Shape shape;
    std::vector<std::string> segment_names; ///< nose to tail; joints.size() + 1 of them
    std::vector<Joint> joints;              ///< in order of x
    std::vector<Hanger> hangers;
    std::vector<Hole> holes;
    std::vector<Pocket> pockets;
    std::vector<Part> parts;
    std::vector<Coat> coats; ///< in order of work
    Targets targets;
    std::vector<Reading> log;            ///< in the order they were taken
    std::vector<Correction> corrections; ///< learnt from earlier lures or readings; the ledger carries them
    std::optional<Board> board{};        ///< the board it is sawn from
    std::optional<Tail> tail{};          ///< a soft tail by its shape; one that was weighed whole is a part
    /// Air that stays caught under water, in flooded pockets and under hooks; absent: none.
    std::optional<double> air_m3{};
};

} // namespace evenfall::document
