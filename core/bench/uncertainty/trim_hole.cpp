#include "bench/lead/candidates.hpp"
#include "bench/uncertainty/posterior.hpp"
#include "body/hole_checks.hpp"
#include "ledger/build.hpp"
#include "materials/bits.hpp"
#include "materials/solids.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::bench {

std::optional<double> trim_place(const ledger::LedgerInputs& w, double x_m, double diameter_m,
                                 double depth_m) {
    document::Document trial = *w.document;
    if (trial.holes.size() >= document::max_holes) return std::nullopt;
    document::Hole hole;
    hole.diameter_m = diameter_m;
    hole.depth_m = depth_m;
    trial.holes.push_back(hole);
    std::vector<holes::Bore> bores = w.bores;
    bores.emplace_back();
    const auto zones = fittings::keep_out(trial, *w.body);
    const auto is_clear = [&] {
        return std::none_of(zones.begin(), zones.end(), [&](const fittings::KeepOut& zone) {
            return holes::comes_near(trial.holes.back(), bores.back(), zone, joints::thin_wall_m);
        });
    };
    constexpr double step_m = 0.003;
    for (int i = 0; i < 25; ++i) {
        trial.holes.back().x_m = x_m + step_m * ((i + 1) / 2) * (i % 2 == 0 ? 1.0 : -1.0);
        bores.back() = holes::place(trial.holes.back(), *w.body);
        if (bores.back().segment >= 0 && is_clear() &&
            holes::check(trial, *w.body, bores, bores.size() - 1).empty())
            return trial.holes.back().x_m;
    }
    return std::nullopt;
}

TrimHole trim_hole(const Posterior& s, const Finished& f) {
    TrimHole t;
    const document::Document& document = s.model->document();
    // Weight and what drag makes of the weight that is asked for.
    const Eigen::Vector2d want(1.0, f.target.scales_with_drag ? -f.target.target_kg : 0.0);
    const Eigen::Matrix2d weight_and_drag = f.forecast.covariance.topLeftCorner<2, 2>();
    t.reserve_kg = 2.0 * std::sqrt(std::max(want.dot(weight_and_drag * want), 0.0));
    const auto inputs = ledger::ledger_inputs(document, s.model->evaluation().body);
    if (!inputs) return t;
    const bool drilled = s.stage >= Stage::drilled;
    for (const lead::Candidate& c : lead::candidates(*inputs, lead::Which::leaded_too)) {
        const document::Hole& hole = document.holes[c.hole];
        const holes::HoleContents contents = holes::contents(hole, inputs->bores[c.hole]);
        const double room =
            (drilled && hole.depth_m > 0.0 ? contents.room_m : c.upper_m) - contents.fill_column_m;
        const bool fresh = hole.depth_m <= 0.0;
        if (drilled && fresh) continue;
        t.room_up_kg +=
            std::max(room, 0.0) * c.fill_area_m2 * (c.density_kg_m3 - (drilled ? 0.0 : inputs->wood_kg_m3));
        t.room_down_kg += contents.fill_kg;
    }
    t.needed = t.reserve_kg > t.room_up_kg || t.reserve_kg > t.room_down_kg;
    const materials::Solid* lead = materials::find_solid("lead");
    if (lead == nullptr) return t;
    t.diameter_m = 0.00635;
    for (const document::Hole& hole : document.holes) {
        if (hole.use != document::HoleUse::fixed) t.diameter_m = std::max(t.diameter_m, hole.diameter_m);
    }
    constexpr double cap_m = 0.002;
    const double area = std::numbers::pi / 4.0 * t.diameter_m * t.diameter_m;
    t.depth_m = cap_m + t.reserve_kg / (area * (lead->density_kg_m3.value - inputs->wood_kg_m3));
    // Lead under B turns nothing.
    t.x_m = f.balance.b_m[0].value;
    if (!t.needed) return t;
    const bool up = t.reserve_kg > t.room_up_kg;
    const Sentence amount = mass_text(t.reserve_kg) + " in water either way";
    // Not where a joint, a pocket or another hole is.
    const auto place =
        up && t.depth_m < 0.03 ? trim_place(*inputs, t.x_m, t.diameter_m, t.depth_m) : std::nullopt;
    if (place) {
        t.x_m = *place;
        t.sentence = "What is not known yet may ask for " + amount + "; the holes have room for " +
                     mass_text(std::max(t.room_up_kg, 0.0)) + " more. Keep the belly clear near " +
                     length_text(t.x_m, 0) + " from the nose for a trim hole, bit " +
                     bits::bit_text(t.diameter_m, 1) + ", up to " + length_text(t.depth_m) + " deep.";
    } else if (up) {
        t.sentence = "What is not known yet may ask for " + amount +
                     ", more than one trim hole can hold near its middle: weigh the lure first.";
    } else {
        t.sentence = "What is not known yet may ask for " + amount + ", but only " +
                     mass_text(t.room_down_kg) +
                     " can be drilled out of the holes: weigh the lure before the lead goes in.";
    }
    return t;
}

} // namespace evenfall::bench
