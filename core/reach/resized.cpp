#include "reach/resized.hpp"

#include "body/curve.hpp"
#include "document/scale.hpp"
#include "document/work_done.hpp"
#include "materials/bits.hpp"
#include "materials/solids.hpp"
#include "materials/tackle.hpp"
#include "reach/hooks.hpp"
#include "reach/shop_bits.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace evenfall::reach {

namespace {

/// Wire, and rod for pins, as it is sold by the metre. Common practice, no source.
constexpr std::array wires_m{0.4e-3, 0.5e-3, 0.6e-3, 0.7e-3, 0.8e-3, 0.9e-3, 1.0e-3, 1.1e-3,
                             1.2e-3, 1.4e-3, 1.5e-3, 1.6e-3, 1.8e-3, 2.0e-3, 2.5e-3, 3.0e-3};
constexpr double thinnest_wall_m = 1.5e-3;
constexpr double same_m = 5e-5;

/// The size nearest to a length; the length itself where its share is nothing new.
double nearest(std::span<const double> sizes_m, double wanted_m) {
    return *std::min_element(sizes_m.begin(), sizes_m.end(), [&](double a, double b) {
        return std::abs(a - wanted_m) < std::abs(b - wanted_m);
    });
}

double tenth_mm(double m) {
    return std::round(m * 1e4) / 1e4;
}

/// Tells once for each kind of thing what is chosen instead of what.
class Chosen {
public:
    void tell(const char* what, double was_m, double is_m) {
        if (std::abs(is_m - was_m) < same_m) return;
        const Sentence says =
            what + thickness_text(is_m, 2) + " instead of " + thickness_text(was_m, 2) + ".";
        tell(says);
    }
    void tell(const Sentence& says) {
        if (std::find(said_.begin(), said_.end(), says) == said_.end()) said_.push_back(says);
    }
    [[nodiscard]] std::vector<Sentence> all() && { return std::move(said_); }

private:
    std::vector<Sentence> said_;
};

/// Turns of a twist that is `share` times as long, of other wire.
double turns_for(double turns, double share, double was_m, double is_m) {
    return std::max(1.0, std::round(turns * share * was_m / is_m));
}

void resize_hinges(document::Document& d, double share, double sizes, Chosen& chosen) {
    for (document::Joint& joint : d.joints) {
        joint.gap_m = tenth_mm(joint.gap_m * sizes);
        if (!joint.hinge) continue;
        document::Hinge& h = *joint.hinge;
        const double wire_m = nearest(wires_m, h.wire_m * sizes);
        const double pin_m = nearest(wires_m, h.pin_diameter_m * sizes);
        chosen.tell("Wire of hinges: ", h.wire_m, wire_m);
        if (h.kind == document::HingeKind::pinned) chosen.tell("Pins: ", h.pin_diameter_m, pin_m);
        // An eye keeps the play that it has on its pin, or on the other eye.
        const bool linked = h.kind == document::HingeKind::linked;
        h.eye_inside_m += linked ? wire_m - h.wire_m : pin_m - h.pin_diameter_m;
        h.turns = turns_for(h.turns, share, h.wire_m, wire_m);
        h.glued_m = std::max(1e-3, std::floor(h.glued_m * share * 1e3) / 1e3);
        h.pin_aft_m = tenth_mm(h.pin_aft_m * share);
        h.pin_off_m *= share;
        if (h.upper_z_m) *h.upper_z_m *= share;
        if (h.lower_z_m) *h.lower_z_m *= share;
        h.wire_m = wire_m;
        h.pin_diameter_m = pin_m;
        h.mass_kg.reset(); // that was weighed of the others
    }
}

void resize_hangers(document::Document& d, double share, double sizes, Chosen& chosen) {
    for (document::Hanger& h : d.hangers) {
        const double wire_m = nearest(wires_m, h.wire_m * sizes);
        chosen.tell("Wire of hangers: ", h.wire_m, wire_m);
        h.turns = turns_for(h.turns, share, h.wire_m, wire_m);
        h.depth_m = std::max(2e-3, std::round(h.depth_m * share * 2e3) / 2e3);
        h.wire_m = wire_m;
        h.mass_kg.reset();
    }
}

/// Hooks keep their hangers' places, and hang below the belly by their own size.
void resize_parts(document::Document& d, const document::Document& old, double share, double sizes,
                  Chosen& chosen) {
    const auto table = materials::hooks();
    const shape::Curve was(old.shape.belly);
    const shape::Curve is(d.shape.belly);
    for (std::size_t i = 0; i < d.parts.size(); ++i) {
        document::Part& part = d.parts[i];
        const document::Part& before = old.parts[i];
        if (materials::is_soft(part.material)) part.mass_kg *= share * share * share;
        if (!is_hook(part)) continue;
        part.at_m.z = is.at(part.at_m.x).value + before.at_m.z - was.at(before.at_m.x).value;
        const int now = nearest_hook(part);
        const double reach_m = table[static_cast<std::size_t>(now)].reach_m * sizes;
        const auto next = std::min_element(table.begin(), table.end(), [&](const auto& a, const auto& b) {
            return std::abs(a.reach_m - reach_m) < std::abs(b.reach_m - reach_m);
        });
        change_hook(part, static_cast<int>(next - table.begin()) - now);
        if (next - table.begin() != now)
            chosen.tell("Hooks: size " + std::string(next->size) + " instead of " +
                        std::string(table[static_cast<std::size_t>(now)].size) + ".");
    }
}

void resize_holes(document::Document& d, double share, double sizes, Chosen& chosen) {
    const std::vector<double> bits_m = shop_bits_m(d);
    for (document::Hole& hole : d.holes) {
        const double was_m = hole.diameter_m;
        hole.diameter_m = nearest(bits_m, was_m * sizes);
        if (std::abs(hole.diameter_m - was_m) > same_m)
            chosen.tell("Bits: " + bits::bit_text(hole.diameter_m) + " instead of " + bits::bit_text(was_m) +
                        ".");
        if (hole.fill && hole.fill->stock_diameter_m) *hole.fill->stock_diameter_m *= hole.diameter_m / was_m;
        hole.wall_m = std::max(std::min(hole.wall_m, thinnest_wall_m), tenth_mm(hole.wall_m * share));
        hole.x_m = tenth_mm(hole.x_m);
    }
}

} // namespace

Resized resized(const document::Document& document, double share, double sizes) {
    Resized out{document, {}};
    document::Document& d = out.document;
    document::begin_anew(d.holes);
    d.log.clear();
    d.shape.measured.clear();
    document::stretch_along(d, share);
    document::stretch_across(d, share);
    document::stretch_up(d, share);
    if (share != 1.0 || sizes != 1.0) {
        Chosen chosen;
        for (document::Pocket& pocket : d.pockets)
            pocket.width_m *= share;
        resize_hinges(d, share, sizes, chosen);
        resize_hangers(d, share, sizes, chosen);
        resize_parts(d, document, share, sizes, chosen);
        resize_holes(d, share, sizes, chosen);
        out.chosen = std::move(chosen).all();
    }
    for (document::Coat& coat : d.coats) {
        if (coat.mass_kg) *coat.mass_kg *= share * share;
    }
    d.targets.in_water_kg *= share * share * share;
    return out;
}

} // namespace evenfall::reach
