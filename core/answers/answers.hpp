#pragma once

// A document worked through: every answer about the finished lure and about each stage on the way.

#include "base/outcome.hpp"
#include "body/body.hpp"
#include "document/document.hpp"
#include "ledger/line.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace evenfall {

/// Does it stay up or go down, in the fishing water and finished?
enum class Behaviour {
    floats,      ///< lighter than the water it pushes aside by more than `still_band`
    suspends, ///< within the band
    falls,
};

/// The steady fall that the lure settles into: the stable one nearest to its hang (fall/descent.hpp). Speeds
/// in m/s, down positive. slow and fast are the model's own doubt: end effect, parts' drag, turning moment.
struct Fall {
    double speed_m_s = 0.0;
    double slow_m_s = 0.0;
    double fast_m_s = 0.0;
    double pitch_rad = 0.0;   ///< while it falls, nose-up positive; not the hang pitch
    double forward_m_s = 0.0; ///< glide over ground, nose-ward positive
};

/// Mass and buoyancy of one stage of the build.
struct StageAnswer {
    Stage stage = Stage::carved;
    double mass_kg = 0.0;
    double mass_sigma_kg = 0.0;
    double displaced_m3 = 0.0;
    Vec3 g_m;
    Vec3 b_m;
    double in_water_kg = 0.0; ///< fishing water
    double in_tub_kg = 0.0;   ///< tub water
    std::optional<Fall>
        fall; ///< fishing water; absent where it does not sink, or finds no steady way of falling
    std::optional<Fall> tub_fall;
};

struct SegmentAnswer {
    std::string name;
    double wood_m3 = 0.0;      ///< solid wood, before holes
    double displaced_m3 = 0.0; ///< finished
    double mass_kg = 0.0;      ///< finished
    double in_water_kg = 0.0;
    Vec3 g_m;
    Vec3 b_m;
};

/// What one coat adds, all segments and pockets together: the sum of its lines in the ledger.
struct CoatAnswer {
    int coat = 0; ///< index into document.coats
    double mass_kg = 0.0;
    double displaced_m3 = 0.0; ///< by how much it makes the lure larger; 0 where it soaks in
    double in_water_kg = 0.0; ///< by how much it makes the lure heavier in the fishing water; < 0 where it is
                              ///< lighter than water
    double felt_share =
        0.0; ///< in_water over mass: 1 − ρw/ρ of a film outside, 1 of what soaks in; 0 without mass
};

/// Everything the bench wants to know of the finished lure, and of each stage on the way.
struct Answers {
    double water_density_kg_m3 = 0.0;
    double mass_kg = 0.0;
    double mass_sigma_kg = 0.0;
    double displaced_m3 = 0.0;
    double in_water_kg = 0.0;
    double in_water_sigma_kg = 0.0;
    Vec3 g_m;
    Vec3 b_m;
    double bg_m = 0.0;               ///< B above G; must be positive to stay upright under water
    std::optional<double> pitch_rad; ///< hang under water, nose-up positive; absent where bg ≤ 0
    std::optional<double> roll_rad;  ///< to starboard positive; absent where bg ≤ 0
    Behaviour behaviour = Behaviour::falls;
    std::optional<Fall> fall;
    std::vector<SegmentAnswer> segments;
    std::array<StageAnswer, stage_count> stages;
    std::vector<CoatAnswer> coats; ///< one for each of the document's coats
    Problems warnings;             ///< things a carver should know that are no refusal
};

/// A document worked through. Holds what the page draws.
struct Evaluation {
    shape::Body body;
    ledger::Ledger ledger;
    Answers answers;
};

/// Document → answers. Refuses what cannot be built (holes through the wall, crossed profile, joints out of
/// order …): twenty problems at most.
[[nodiscard]] Outcome<Evaluation> evaluate(const document::Document& document);

} // namespace evenfall
