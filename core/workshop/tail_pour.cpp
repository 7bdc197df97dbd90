#include "workshop/tail_pour.hpp"

#include "base/limits.hpp"
#include "base/trade.hpp"
#include "body/tail_loft.hpp"

#include <cmath>

namespace evenfall::tail {

namespace {

using units::Unit;

struct Named {
    const char* word;
    const char* parts_path;
    const char* density_path;
    const char* parts;
    const char* density;
};

constexpr std::array<Named, ingredient_count> names{{
    {"old", "/blend/old", "/blend/old_g_cm3", "The parts of old plastic", "The density of old plastic"},
    {"fresh", "/blend/fresh", "/blend/fresh_g_cm3", "The parts of fresh plastic",
     "The density of fresh plastic"},
    {"softener", "/blend/softener", "/blend/softener_g_cm3", "The parts of softener",
     "The density of softener"},
    {"hardener", "/blend/hardener", "/blend/hardener_g_cm3", "The parts of hardener",
     "The density of hardener"},
    {"colour", "/blend/colour", "/blend/colour_g_cm3", "The parts of colour", "The density of colour"},
}};

Problems off_limits(const PourRequest& r) {
    Problems out;
    const auto number = [&out](const char* path, const char* what, double value, double least, double most,
                               Unit unit = Unit::one, int decimals = 0) {
        units::check_limit({path, what, value, least, most, unit, decimals}, out);
    };
    number("/tails", "The number of tails", r.tails, 1.0, 1000.0);
    number("/shrink", "The shrinkage", r.shrink, 0.0, 0.2, Unit::percent);
    number("/sprue", "The share of sprue", r.sprue, 0.0, 0.9, Unit::percent);
    number("/loss", "The loss", r.loss, 0.0, 0.9, Unit::percent);
    number("/wall_mm", "The wall of rubber", r.wall_m, 0.001, 0.05, Unit::mm);
    number("/rubber_g_cm3", "The rubber's density", r.rubber_kg_m3, 900.0, 2000.0, Unit::g_per_cm3, 1);
    double parts = 0.0;
    for (std::size_t i = 0; i < ingredient_count; ++i) {
        number(names[i].parts_path, names[i].parts, r.blend.of[i].parts, 0.0, 1000.0);
        number(names[i].density_path, names[i].density, r.blend.of[i].kg_m3, 800.0, 2000.0, Unit::g_per_cm3,
               1);
        parts += r.blend.of[i].parts;
    }
    if (out.empty() && !(parts > 0.0)) {
        out.push_back({ProblemCode::out_of_range, "/blend", "one part at least",
                       "The blend holds nothing: name one part at least."});
    }
    return out;
}

} // namespace

const char* ingredient_word(Ingredient ingredient) {
    return names[static_cast<std::size_t>(ingredient)].word;
}

Outcome<TailCasting> pour(const document::Tail& tail, const ledger::Ledger& ledger, const PourRequest& r) {
    if (Problems problems = off_limits(r); !problems.empty()) return problems;
    const auto body = shaped(tail);
    if (!body) return body.problems();
    TailCasting p;
    // Corrections of size and plastic are in the ledger: behind its root the tail displaces its whole volume.
    double size = 1.0;
    for (const ledger::Line& line : ledger) {
        if (line.kind != ledger::Kind::tail) continue;
        p.cast.mass_kg += line.mass_kg;
        if (line.item == 0) size = line.displaced_m3 / body->segments[0].volume_m3;
    }
    p.tenon_m3 = size * tenon_m3(tail);
    p.cast.volume_m3 = size * body->segments[0].volume_m3 + p.tenon_m3;
    p.cavity_m3 = p.cast.volume_m3 / (1.0 - r.shrink);
    const double wall = 2.0 * r.wall_m;
    p.box_m = extent(tail) * std::cbrt(size / (1.0 - r.shrink)) + Vec3{wall, r.open ? r.wall_m : wall, wall};
    p.rubber.volume_m3 = p.box_m.x * p.box_m.y * p.box_m.z - p.cavity_m3;
    p.rubber.mass_kg = p.rubber.volume_m3 * r.rubber_kg_m3;
    p.poured_kg = p.cast.mass_kg * r.tails / (1.0 - r.sprue);
    p.heated_kg = p.poured_kg / (1.0 - r.loss);
    double whole = 0.0;
    const auto weight = [&](const Share& s) { return s.parts * (r.blend.by_volume ? s.kg_m3 : 1.0); };
    for (const Share& s : r.blend.of)
        whole += weight(s);
    for (std::size_t i = 0; i < ingredient_count; ++i) {
        const double kg = p.heated_kg * weight(r.blend.of[i]) / whole;
        p.blend[i] = {kg, kg / r.blend.of[i].kg_m3};
    }
    return p;
}

} // namespace evenfall::tail
