#include "bench/uncertainty/observation.hpp"

#include "bench/uncertainty/uncertainty.hpp"
#include "document/field_table.hpp"
#include "ledger/carved_size.hpp"
#include "materials/solids.hpp"
#include "materials/water_properties.hpp"
#include "water/afloat/float_answers.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>

namespace evenfall {

double time_from_rest_s(double depth_m, double speed_m_s, double acceleration_length_m) {
    // M·dv/dt = W − k·v² gives depth = ℓ·ln cosh(v·t/ℓ), ℓ = M/k (own derivation; any textbook on fall with
    // drag squared). acosh(eˣ) = x + ln(1 + √(1 − e^(−2x))), which does not overflow.
    const double x = depth_m / acceleration_length_m;
    return acceleration_length_m / speed_m_s * (x + std::log1p(std::sqrt(-std::expm1(-2.0 * x))));
}

} // namespace evenfall

namespace evenfall::bench {

using document::Reading;
using document::ReadingKind;

double clip_share(const Reading& r, double water_kg_m3) {
    constexpr double least = 0.01;
    const materials::Solid* solid =
        r.clip_material.empty() ? nullptr : materials::find_solid(r.clip_material);
    const double share = solid == nullptr ? 1.0 : 1.0 - water_kg_m3 / solid->density_kg_m3.value;
    return std::copysign(std::max(std::abs(share), least), share);
}

bool Observer::Key::operator<(const Key& o) const {
    return std::tie(stage, density, viscosity) < std::tie(o.stage, o.density, o.viscosity);
}

materials::WaterProperties Observer::tub(const Reading& r) const {
    if (!r.temperature_c) return model_.water().tub;
    const auto water =
        materials::water_properties(*r.temperature_c, model_.document().tub.salinity_g_kg, "/log");
    return water ? *water : model_.water().tub;
}

FallModel& Observer::falls(Stage stage, const materials::WaterProperties& water) {
    const Key key{stage, water.density_kg_m3, water.viscosity_pa_s};
    const auto at = falls_.find(key);
    return at != falls_.end() ? at->second
                              : falls_.emplace(key, model_.fall_model(stage, water)).first->second;
}

const afloat::FloatingHull& Observer::hull(Stage stage) {
    const auto at = hulls_.find(stage);
    if (at != hulls_.end()) return at->second;
    ledger::Ledger lines;
    for (const ledger::Line& line : model_.ledger()) {
        if (line.stage <= stage) lines.push_back(line);
    }
    return hulls_.try_emplace(stage, model_.evaluation().body, lines, model_.document()).first->second;
}

Freeboards& Observer::freeboards(Stage stage, const Vec3& g_m, double water_kg_m3) {
    const afloat::FloatingHull& floating = hull(stage);
    for (Freeboards& known : freeboards_) {
        if (known.is_of(floating, g_m, water_kg_m3)) return known;
    }
    // Lures of one log take turns; where G has moved on, what it was before is not asked again.
    constexpr std::size_t most = 16;
    if (freeboards_.size() >= most) freeboards_.pop_front();
    return freeboards_.emplace_back(floating, g_m, water_kg_m3);
}

namespace {

double board_density(const Reading& r) {
    const double volume = r.length_m.value_or(0.0) * r.width_m.value_or(0.0) * r.height_m.value_or(0.0);
    return volume > 0.0 ? r.mass_kg.value_or(0.0) / volume : 0.0;
}

double board_sigma(const Reading& r) {
    double square = board_scatter * board_scatter;
    for (const auto& side : {r.length_m, r.width_m, r.height_m}) {
        if (side) square += (block_side_sigma_m / *side) * (block_side_sigma_m / *side);
    }
    if (r.mass_kg) square += std::pow(r.mass_sigma_kg.value_or(scale_sigma_kg) / *r.mass_kg, 2);
    return board_density(r) * std::sqrt(square);
}

/// The usual standard deviation of a mass, unless the reading gives its own.
template <const double& usual_kg>
double mass_sigma(const Reading& r) {
    return r.mass_sigma_kg.value_or(usual_kg);
}

template <const double& usual_m>
double length_sigma(const Reading& r) {
    return r.length_sigma_m.value_or(usual_m);
}

Observation observation_of(const ReadingCase& c, const Linearised& predicted) {
    return {main_number(c.reading), predicted.value, predicted.slope, own_sigma(c.reading)};
}

std::optional<Observation> observe_dry_weight(const ReadingCase& c) {
    const double on_mass = 1.0 + air_kg_m3 / scale_weights_kg_m3;
    return observation_of(c, on_mass * c.balance.mass_kg - air_kg_m3 * c.balance.displaced_m3);
}

std::optional<Observation> observe_held_under(const ReadingCase& c) {
    return observation_of(c, c.water.density_kg_m3 * c.balance.displaced_m3);
}

std::optional<Observation> observe_hung_in_water(const ReadingCase& c) {
    return observation_of(c, c.balance.in_water_kg);
}

/// The ledger's own wood: mass over volume of the solid segments, by its density and its moisture.
std::optional<Observation> observe_board(const ReadingCase& c) {
    const ledger::Sum wood = ledger::sum_of(c.model.evaluation().ledger, ledger::Kind::wood);
    std::vector<Eigen::Index> of_wood;
    double factor = 1.0;
    for (Eigen::Index i = 0; i < c.model.count(); ++i) {
        const Input& input = c.model.input(i);
        if (input.cause != document::Cause::wood_density && input.cause != document::Cause::moisture)
            continue;
        of_wood.push_back(i);
        factor *= factor_of(input, c.u(i));
    }
    if (of_wood.empty()) return std::nullopt;
    Linearised density{wood.mass.kg / wood.displaced_m3 * factor, Eigen::VectorXd::Zero(c.model.count())};
    for (const Eigen::Index i : of_wood) {
        const Input& input = c.model.input(i);
        density.slope(i) = density.value * factor_slope_of(input, c.u(i)) / factor_of(input, c.u(i));
    }
    Observation o = observation_of(c, density);
    o.read += air_kg_m3 * (1.0 - o.read / scale_weights_kg_m3);
    return o;
}

std::optional<Observation> observe_suspends(const ReadingCase& c) {
    const double share = clip_share(c.reading, c.water.density_kg_m3);
    Observation o = observation_of(c, c.balance.in_water_kg);
    o.read *= -share;
    o.sigma *= std::abs(share);
    o.reversed = share >= 0.0;
    return o;
}

std::optional<Observation> observe_tub_fall(const ReadingCase& c) {
    const Balance& b = c.balance;
    FallModel& falls = c.observer.falls(c.reading.stage, c.water);
    const double drag = c.model.drag(c.u);
    const double depth = c.reading.depth_m.value_or(0.5);
    Observation o = observation_of(c, b.in_water_kg);
    const auto kg = falls.in_water_for_time(b.sum, drag, depth, o.read);
    if (!kg) return std::nullopt;
    // The same lure, G where it is, as heavy as the reading says.
    ledger::Sum as_read = b.sum;
    const double extra = *kg - b.in_water_kg.value;
    as_read.mass.kg += extra;
    as_read.mass_moment_kg_m += extra * b.sum.g_m();
    const auto s = falls.slopes(as_read, drag);
    if (!s || !(s->per_kg > 0.0)) return std::nullopt;
    // Time depends on speed v and acceleration length ℓ, and ℓ is proportional to v²/weight.
    const double v = s->speed_m_s;
    const double length = falls.acceleration_length_m(b.sum, *kg, v);
    constexpr double step = 1e-5;
    const double time = time_from_rest_s(depth, v, length);
    const double per_speed =
        (time_from_rest_s(depth, v * (1.0 + step), length * (1.0 + 2.0 * step)) - time) / (v * step);
    const double per_log_length = (time_from_rest_s(depth, v, length * (1.0 + step)) - time) / step;
    const double per_kg = per_speed * s->per_kg - per_log_length / *kg;
    o.read = *kg;
    o.sigma /= std::abs(per_kg);
    o.reversed = true;
    // With the time fixed, the weight it asks for depends on drag and on where G lies.
    o.slope += per_speed / per_kg * (s->per_aft_m * b.aft_m.slope + s->per_below_m * b.bg_across_m.slope);
    o.slope(c.model.drag_index()) +=
        per_speed / per_kg * s->per_log_drag * c.model.input(c.model.drag_index()).relative;
    return o;
}

std::optional<Observation> observe_freeboard(const ReadingCase& c) {
    Observation o = observation_of(c, c.balance.in_water_kg);
    Freeboards& freeboards =
        c.observer.freeboards(c.reading.stage, c.balance.sum.g_m(), c.water.density_kg_m3);
    const auto weight = freeboards.in_water_for(o.read);
    if (!weight) return std::nullopt;
    o.sigma *= std::abs(weight->per_m);
    o.read = weight->in_water_kg;
    o.reversed = true;
    return o;
}

std::optional<Observation> observe_hang_angle(const ReadingCase& c) {
    const auto hang = Model::hang(c.balance);
    if (!hang) return std::nullopt;
    return observation_of(c, *hang);
}

/// The factor of a cause so far, from the document's corrections.
double correction_of(const document::Document& document, document::Cause cause, int group) {
    double factor = 1.0;
    for (const document::Correction& c : document.corrections) {
        if (c.of == cause && document::group_of(c) == group) factor *= c.factor;
    }
    return factor;
}

/// Twice how far the skin stands out from the drawing: carved size of the whole body and of the segment, and
/// the films on it by then.
std::optional<Observation> observe_caliper(const ReadingCase& c) {
    const Model& model = c.model;
    const shape::Body& body = model.evaluation().body;
    const double x = c.reading.x_m.value_or(0.0);
    const int at = shape::segment_at(body, x);
    if (at < 0) return std::nullopt;
    const shape::Segment& segment = body.segments[static_cast<std::size_t>(at)];
    const shape::Station station = body.lines->at(x);
    Linearised across{2.0 * (c.reading.height_m ? station.half_height_m : station.half_width_m),
                      Eigen::VectorXd::Zero(model.count())};
    // Adds twice the thickness (factor − 1)·depth_m, factor being that of a cause and group, corrected so
    // far.
    const auto add = [&](document::Cause cause, int group, double depth_m, double corrected, double nothing) {
        double factor = corrected;
        for (Eigen::Index i = 0; i < model.count(); ++i) {
            const Input& input = model.input(i);
            if (input.cause != cause || input.group != group) continue;
            factor *= factor_of(input, c.u(i));
            across.slope(i) += 2.0 * depth_m * corrected * factor_slope_of(input, c.u(i));
        }
        across.value += 2.0 * depth_m * (factor - nothing);
    };
    const ledger::CarvedSize whole = ledger::carved_size(model.document(), body);
    const auto add_size = [&](int group, double depth_m) {
        add(document::Cause::carved_size, group, depth_m,
            correction_of(model.document(), document::Cause::carved_size, group), 1.0);
    };
    add_size(0, whole.volume_m3 / whole.skin_m2);
    if (body.segments.size() > 1) add_size(at + 1, segment.volume_m3 / segment.skin_m2);
    double faces_m2 = 0.0;
    for (const shape::Face& face : segment.faces)
        faces_m2 += face.area_m2;
    for (const ledger::Line& line : model.ledger()) {
        if (line.kind != ledger::Kind::coat || line.segment != at || line.pocket >= 0 ||
            line.stage > c.reading.stage)
            continue;
        const document::Coat& coat = model.document().coats[static_cast<std::size_t>(line.item)];
        if (!coat.on_skin) continue;
        const double area_m2 = segment.skin_m2 + (coat.on_joint_faces ? faces_m2 : 0.0);
        // A film of thickness t fills S·t + M·t² (Steiner, ledger/coats.cpp). The line is corrected already.
        const double even_m = line.displaced_m3 / area_m2;
        const double film_m = even_m - segment.curvature_m / (segment.skin_m2 + faces_m2) * even_m * even_m;
        add(document::Cause::coat_amount, line.item, film_m, 1.0, 0.0);
    }
    return observation_of(c, across);
}

constexpr const char* always_used = "it does not fit what is built.";

constexpr std::array methods{
    ReadingMethod{ReadingKind::dry_weight, mass_sigma<scale_sigma_kg>, observe_dry_weight, 0, always_used},
    ReadingMethod{ReadingKind::held_under, mass_sigma<held_under_sigma_kg>, observe_held_under, 0,
                  always_used},
    ReadingMethod{ReadingKind::hung_in_water, mass_sigma<hung_sigma_kg>, observe_hung_in_water, 0,
                  always_used},
    ReadingMethod{ReadingKind::board, board_sigma, observe_board, 0, "nothing is open about its wood."},
    ReadingMethod{ReadingKind::tub_fall,
                  [](const Reading& r) {
                      const double usual =
                          std::hypot(stopwatch_sigma_s, fall_scatter * r.time_s.value_or(0.0));
                      return r.time_sigma_s.value_or(usual);
                  },
                  observe_tub_fall, 1, "with no weight does it fall so far in that time."},
    ReadingMethod{ReadingKind::suspends, mass_sigma<clip_sigma_kg>, observe_suspends, 0, always_used},
    ReadingMethod{ReadingKind::freeboard, length_sigma<freeboard_sigma_m>, observe_freeboard, 6,
                  "with no weight does it float upright and show so much."},
    ReadingMethod{ReadingKind::hang_angle,
                  [](const Reading& r) { return r.angle_sigma_rad.value_or(angle_sigma_rad); },
                  observe_hang_angle, 0, "it hangs at no angle of its own."},
    ReadingMethod{ReadingKind::caliper, length_sigma<caliper_sigma_m>, observe_caliper, 0,
                  "there is no wood at that place."},
    ReadingMethod{ReadingKind::beats, [](const Reading& r) { return r.beats_sigma.value_or(0.0); },
                  [](const ReadingCase&) { return std::optional<Observation>(); }, 0,
                  "it tells how it swims."},
};
constexpr bool in_order_of_kinds() {
    for (std::size_t i = 0; i < methods.size(); ++i) {
        if (methods[i].kind != static_cast<ReadingKind>(i)) return false;
    }
    return true;
}
static_assert(in_order_of_kinds() && methods.size() == document::table::reading_kinds.size());

} // namespace

const ReadingMethod& method_of(ReadingKind kind) {
    return methods[static_cast<std::size_t>(kind)];
}

double own_sigma(const Reading& r) {
    return method_of(r.kind).own_sigma(r);
}

double main_number(const Reading& r) {
    if (r.kind == ReadingKind::board) return board_density(r);
    return (r.*number_of(r).value).value_or(0.0) - r.holder_kg.value_or(0.0);
}

Observer::~Observer() = default;

Observer& Observer::of(const Model& as_read) {
    auto& observer = others_[&as_read];
    if (observer == nullptr) observer = std::make_unique<Observer>(as_read);
    return *observer;
}

std::optional<Observation> Observer::observe(const Reading& r, const Eigen::VectorXd& u) {
    const Model* model = model_.as_read(r);
    if (model == nullptr) return std::nullopt;
    return model == &model_ ? observe_here(r, u) : of(*model).observe_here(r, u);
}

std::optional<Observation> Observer::observe_here(const Reading& r, const Eigen::VectorXd& u) {
    const materials::WaterProperties water = tub(r);
    const Balance& now = balance(r.stage, r.segment.value_or(-1), u, water.density_kg_m3);
    return method_of(r.kind).observe({*this, model_, r, u, water, now});
}

const Balance& Observer::balance(Stage stage, int segment, const Eigen::VectorXd& u, double water_kg_m3) {
    if (kept_at_.size() != u.size() || kept_at_ != u) {
        kept_at_ = u;
        kept_.clear();
    }
    for (const KeptBalance& kept : kept_) {
        if (kept.stage == stage && kept.segment == segment && kept.water_kg_m3 == water_kg_m3)
            return kept.balance;
    }
    kept_.push_back({stage, segment, water_kg_m3, model_.balance(stage, segment, u, water_kg_m3)});
    return kept_.back().balance;
}

} // namespace evenfall::bench
