#pragma once

// All answers about a document: the finished lure and each stage of the build.

#include "base/mass.hpp"
#include "base/outcome.hpp"
#include "body/geometry.hpp"
#include "document/document.hpp"
#include "ledger/line.hpp"
#include "materials/water_properties.hpp"
#include "water/fall/hull.hpp"

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace evenfall {

/// What a lure does that is let go under water, by the speed of its steady way there.
enum class Behaviour {
    floats,   ///< rises faster than still_m_s
    suspends, ///< neither rises nor sinks faster than that
    falls,
};

/// The slowest way that is called a rise or a fall: a hand's breadth in ten seconds. Slower than that, a
/// lure hangs still in a carver's eyes, and the water's own motion carries it (common practice, no source).
inline constexpr double still_m_s = 0.010;

/// The main steady fall, or rise: the stable one nearest to its hang pitch (water/fall/descent.hpp). Speeds
/// in m/s, down positive. slow and fast are the ends of the model's own uncertainty: end effect, drag of
/// parts, Munk moment, drag along the body.
struct Fall {
    double speed_m_s = 0.0;
    double slow_m_s = 0.0;
    double fast_m_s = 0.0;
    double pitch_rad = 0.0;   ///< during the fall, nose-up positive; not the hang pitch
    double forward_m_s = 0.0; ///< glide over ground, towards the nose positive
    bool in_drag_laws = true; ///< false: too slow or too fast for them, so slow and fast lie wide
};

/// Behaviour by the speed of its steady way under water, down positive. Without one, by the sign of its
/// weight: within a milligram of zero it suspends.
[[nodiscard]] Behaviour behaviour_of(const std::optional<double>& vertical_m_s, MassInWater in_water);

/// Mass and buoyancy of one stage of the build.
struct StageAnswer {
    Stage stage = Stage::carved;
    Mass mass;
    Mass mass_sigma;
    double displaced_m3 = 0.0;
    Vec3 g_m;
    Vec3 b_m;
    MassInWater in_water;     ///< in the fishing water
    MassInWater in_tub;       ///< in the tub's water
    std::optional<Fall> fall; ///< in the fishing water; absent where it does not fall, or has no steady fall
    std::optional<Fall> tub_fall;
    Behaviour behaviour = Behaviour::falls; ///< in the fishing water
    Behaviour tub_behaviour = Behaviour::falls;
};

struct SegmentAnswer {
    std::string name;
    double wood_m3 = 0.0;      ///< wood before holes and pockets
    double displaced_m3 = 0.0; ///< finished
    Mass mass;                 ///< finished
    MassInWater in_water;
    Vec3 g_m;
    Vec3 b_m;
};

/// What one coat adds in all segments and pockets: the sum of its lines in the ledger.
struct CoatAnswer {
    int coat = 0; ///< index into document.coats
    Mass mass;
    double displaced_m3 = 0.0; ///< volume added to the lure; 0 where it soaks in
    /// Change of weight in water in the fishing water; < 0 for a coat lighter than water.
    MassInWater in_water;
    double in_water_share =
        0.0; ///< in_water over mass: 1 − ρw/ρ for a film on the outside, 1 for what soaks in; 0 without mass
};

/// Properties of a document's two waters.
struct Waters {
    materials::WaterProperties fishing;
    materials::WaterProperties tub;
};
[[nodiscard]] Outcome<Waters> waters_of(const document::Document& document);

/// All answers about the finished lure, and about each stage of the build.
struct Answers {
    double water_density_kg_m3 = 0.0;
    Mass mass;
    Mass mass_sigma;
    double displaced_m3 = 0.0;
    MassInWater in_water;
    MassInWater in_water_sigma;
    Vec3 g_m;
    Vec3 b_m;
    double bg_m = 0.0;               ///< B above G; must be positive to stay upright under water
    std::optional<double> pitch_rad; ///< hang pitch under water, nose-up positive; absent where bg ≤ 0
    std::optional<double> roll_rad;  ///< to starboard positive; absent where bg ≤ 0
    Behaviour behaviour = Behaviour::falls;
    std::optional<Fall> fall; ///< absent where it does not fall, or has no steady fall
    /// Its steady way wholly under water: the fall, the slow drift of one that suspends, or the rise of one
    /// that floats (negative). Absent where it has none, or weighs less than a milligram either way.
    std::optional<Fall> under_water;
    std::vector<SegmentAnswer> segments;
    std::array<StageAnswer, stage_count> stages;
    std::vector<CoatAnswer> coats; ///< one for each of the document's coats
    Problems warnings;             ///< remarks for the carver; the lure can be built all the same
};

/// Whether a steady fall [m/s] is within the band of the one asked for. What has no fall is not.
[[nodiscard]] bool fall_on_target(const document::Targets& targets, const std::optional<double>& speed_m_s);
/// The same of the hang pitch under water.
[[nodiscard]] bool pitch_on_target(const document::Targets& targets, const std::optional<double>& pitch_rad);

/// What an evaluation keeps for the next one.
struct Kept {
    shape::Geometry geometry;
    std::shared_ptr<const fall::HydroBody> hull; ///< of the geometry's body
};

/// Body, ledger and answers of one document. Also holds what the page draws.
struct Evaluation {
    shape::Body body;
    ledger::Ledger ledger;
    Answers answers;
    Kept kept;
};

/// Document → answers. Refuses what cannot be built (holes through the wall, crossed profile, joints out of
/// order …), with at most twenty problems.
///
///   before   what an earlier evaluation kept, or null: where drawing, joints or pockets are still the same,
///            what was made from them is used again. The answers are the same bit for bit, in half the time.
[[nodiscard]] Outcome<Evaluation> evaluate(const document::Document& document, const Kept* before = nullptr);

/// The same lure tested in the tub with all hung on that it has once it is rigged: the stages leaded to clear
/// coated, empty where nothing is hung on. A piece that is leaded only drinks water.
[[nodiscard]] std::vector<StageAnswer> stages_with_all(const document::Document& document,
                                                       const Evaluation& evaluation);

} // namespace evenfall
