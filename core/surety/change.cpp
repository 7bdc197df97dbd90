#include "surety/change.hpp"

#include "balance/hang.hpp"
#include "holes/bore.hpp"
#include "materials/solids.hpp"
#include "plan/candidates.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace evenfall::bench {

namespace {

ledger::Sum sum_of_hole(const ledger::Woodwork& w, std::size_t index, const preset::Hole& hole) {
    ledger::Ledger lines;
    ledger::append_hole(w, index, hole, lines);
    ledger::Sum sum;
    for (const ledger::Line& line : lines) sum += line;
    return sum;
}

/// The finished lure with other fills.
class Changed {
public:
    Changed(const ledger::Woodwork& w, const std::vector<Leeway>& leeways, const ledger::Sum& finished)
        : w_(w), leeways_(leeways), finished_(finished) {
        for (const Leeway& l : leeways_) before_.push_back(sum_of_hole(w_, l.hole, w_.document->holes[l.hole]));
    }

    [[nodiscard]] ledger::Sum with(const std::vector<std::pair<std::size_t, double>>& by) const {
        ledger::Sum sum = finished_;
        for (const auto& [which, kg] : by) {
            const Leeway& l = leeways_[which];
            sum += sum_of_hole(w_, l.hole, changed_hole(w_, l, kg));
            ledger::Sum old = before_[which];
            old.mass_kg = -old.mass_kg;
            old.displaced_m3 = -old.displaced_m3;
            old.mass_moment_kg_m *= -1.0;
            old.displaced_moment_m4 *= -1.0;
            sum += old;
        }
        return sum;
    }

private:
    const ledger::Woodwork& w_;
    const std::vector<Leeway>& leeways_;
    ledger::Sum finished_;
    std::vector<ledger::Sum> before_;
};

bool within(const Leeway& l, double kg) { return kg >= l.least_kg - 1e-9 && kg <= l.most_kg + 1e-9; }

/// Off in weight and in moment about the asked pitch.
std::array<double, 2> off_of(const ledger::Sum& sum, const ChangeAim& aim) {
    return {sum.in_water_kg(aim.water_kg_m3) - aim.in_water_kg, balance::pitch_residual_kg_m(sum, aim.pitch_rad)};
}

double pitch_off(const ledger::Sum& sum, const ChangeAim& aim) {
    const balance::Hang hang = balance::hang(sum);
    return hang.pitch_rad ? std::abs(*hang.pitch_rad - aim.pitch_rad) : 10.0;
}

constexpr double met_kg = 2e-6;

/// Newton's method in one fill: the weight is straight but for a fresh hole's cap.
std::optional<double> single(const Changed& changed, const Leeway& l, std::size_t which, const ChangeAim& aim) {
    double kg = l.fresh ? 0.5 * l.most_kg : 0.0;
    for (int i = 0; i < 6; ++i) {
        constexpr double step = 1e-6;
        const double off = off_of(changed.with({{which, kg}}), aim)[0];
        const double slope = (off_of(changed.with({{which, kg + step}}), aim)[0] - off) / step;
        if (!(std::abs(slope) > 1e-3)) return std::nullopt;
        const double by = -off / slope;
        kg += by;
        if (std::abs(by) < 1e-9) break;
    }
    if (!within(l, kg)) return std::nullopt;
    return kg;
}

std::optional<std::array<double, 2>> pair(const Changed& changed, const Leeway& a, std::size_t at_a, const Leeway& b,
                                          std::size_t at_b, const ChangeAim& aim) {
    std::array<double, 2> kg{a.fresh ? 0.5 * a.most_kg : 0.0, b.fresh ? 0.5 * b.most_kg : 0.0};
    const auto off = [&](double first, double second) { return off_of(changed.with({{at_a, first}, {at_b, second}}), aim); };
    for (int i = 0; i < 8; ++i) {
        constexpr double step = 1e-6;
        const auto now = off(kg[0], kg[1]);
        const auto first = off(kg[0] + step, kg[1]);
        const auto second = off(kg[0], kg[1] + step);
        const double j00 = (first[0] - now[0]) / step, j01 = (second[0] - now[0]) / step;
        const double j10 = (first[1] - now[1]) / step, j11 = (second[1] - now[1]) / step;
        const double det = j00 * j11 - j01 * j10;
        if (!(std::abs(det) > 1e-5)) return std::nullopt;  // the two holes stand at one place
        const double by0 = -(now[0] * j11 - now[1] * j01) / det;
        const double by1 = -(now[1] * j00 - now[0] * j10) / det;
        kg[0] += by0;
        kg[1] += by1;
        if (!(std::abs(kg[0]) < 1.0 && std::abs(kg[1]) < 1.0)) return std::nullopt;
        if (std::abs(by0) < 1e-9 && std::abs(by1) < 1e-9) break;
    }
    if (!within(a, kg[0]) || !within(b, kg[1])) return std::nullopt;
    return kg;
}

}  // namespace

std::vector<Leeway> leeways(const ledger::Woodwork& w) {
    std::vector<Leeway> out;
    for (const plan::Candidate& c : plan::candidates(w)) {
        const preset::Hole& hole = w.document->holes[c.hole];
        Leeway l;
        l.hole = c.hole;
        if (hole.depth_m <= 0.0) {
            if (c.depth_is_cut || c.upper_m < 0.001) continue;
            l.fresh = true;
            l.most_kg = (c.fill_area_m2 * c.upper_m + c.cone_m3) * c.density_kg_m3;
            out.push_back(l);
            continue;
        }
        const holes::Contents contents = holes::contents(hole, w.bores[c.hole]);
        l.least_kg = -contents.fill_kg;
        l.most_kg = std::max(contents.room_m - contents.fill_column_m, 0.0) * c.fill_area_m2 * c.density_kg_m3;
        if (l.most_kg - l.least_kg > 1e-6) out.push_back(l);
    }
    return out;
}

preset::Hole changed_hole(const ledger::Woodwork& w, const Leeway& l, double change_kg) {
    preset::Hole hole = w.document->holes[l.hole];
    preset::Fill fill = hole.fill.value_or(preset::Fill{});
    const holes::Contents contents = holes::contents(hole, w.bores[l.hole]);
    fill.length_m.reset();
    fill.mass_kg = std::max((l.fresh ? 0.0 : contents.fill_kg) + change_kg, 0.0);
    hole.fill = fill;
    if (l.fresh) {
        const materials::Solid* solid = materials::find_solid(fill.material);
        const double d = fill.stock_diameter_m.value_or(hole.diameter_m);
        const double cone = fill.stock_diameter_m ? 0.0 : w.bores[l.hole].cone_m3;
        const double volume = solid != nullptr ? *fill.mass_kg / solid->density_kg_m3.value : 0.0;
        const double column = std::max(volume - cone, 0.0) / (0.25 * 3.14159265358979323846 * d * d);
        hole.depth_m = column + holes::covered_m(hole, w.bores[l.hole]);
    }
    return hole;
}

Change solve_change(const ledger::Woodwork& w, const std::vector<Leeway>& leeways, const ledger::Sum& finished, const ChangeAim& aim) {
    const Changed changed(w, leeways, finished);
    Change best;
    best.sum = finished;
    const auto take = [&](std::vector<std::pair<std::size_t, double>> by) {
        best.by = std::move(by);
        best.sum = changed.with(best.by);
        best.weight_met = std::abs(off_of(best.sum, aim)[0]) < met_kg;
        best.pitch_met = pitch_off(best.sum, aim) <= aim.pitch_slack_rad;
    };

    double nearest = 1e9;
    std::optional<std::pair<std::size_t, double>> one;
    for (std::size_t i = 0; i < leeways.size(); ++i) {
        const auto kg = single(changed, leeways[i], i, aim);
        if (!kg) continue;
        const double off = pitch_off(changed.with({{i, *kg}}), aim);
        if (off < nearest) {
            nearest = off;
            one = {i, *kg};
        }
    }
    if (one && nearest <= aim.pitch_slack_rad) {
        take({*one});
        return best;
    }
    double least = 1e9;
    std::optional<std::vector<std::pair<std::size_t, double>>> two;
    for (std::size_t a = 0; a < leeways.size(); ++a) {
        for (std::size_t b = a + 1; b < leeways.size(); ++b) {
            const auto kg = pair(changed, leeways[a], a, leeways[b], b, aim);
            if (!kg) continue;
            const double moved = std::abs((*kg)[0]) + std::abs((*kg)[1]);
            if (moved >= least) continue;
            least = moved;
            two = {{a, (*kg)[0]}, {b, (*kg)[1]}};
        }
    }
    if (two) {
        take(*two);
        return best;
    }
    if (one) {
        take({*one});
        return best;
    }
    // No hole alone reaches the weight: fill (or empty) them in turn, those that harm the pitch least first.
    const double off = off_of(finished, aim)[0];
    std::vector<std::size_t> order(leeways.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    const Vec3 b = finished.b_m();
    std::sort(order.begin(), order.end(), [&](std::size_t i, std::size_t k) {
        return std::abs(w.bores[leeways[i].hole].x_m - b.x) < std::abs(w.bores[leeways[k].hole].x_m - b.x);
    });
    std::vector<std::pair<std::size_t, double>> all;
    double left = -off;
    for (const std::size_t i : order) {
        const Leeway& l = leeways[i];
        if (l.fresh) continue;
        const double kg = std::clamp(left, l.least_kg, l.most_kg);
        if (std::abs(kg) < 1e-7) continue;
        all.push_back({i, kg});
        left -= kg;
    }
    if (!all.empty()) take(std::move(all));
    return best;
}

}  // namespace evenfall::bench
