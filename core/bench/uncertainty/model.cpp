#include "bench/uncertainty/model.hpp"

#include "base/trade.hpp"
#include "document/work_done.hpp"
#include "ledger/hung_on.hpp"
#include "water/fall/drag_items.hpp"
#include "water/hang.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace evenfall::bench {

namespace {

/// Spread of the logarithm of drag where the lure has no way under water to take it from: that of the end
/// effect alone.
constexpr double usual_drag_spread = 0.18;

/// The model's band of the fall's speed counts as one standard deviation to each side: how often real lures
/// fall within it has not been measured, so no more is claimed. Speed is nearly proportional to drag^(−½).
double drag_spread(const document::Document& document, const Answers& answers) {
    for (const document::Correction& c : document.corrections) {
        if (c.of == document::Cause::drag && c.spread) return *c.spread;
    }
    const std::optional<Fall>& way = answers.under_water;
    if (!way || !(way->fast_m_s / way->slow_m_s > 1.0)) return usual_drag_spread;
    return std::log(way->fast_m_s / way->slow_m_s);
}

Linearised from(const UncertainSums::Slopes& slopes, Eigen::Index row, double value) {
    return {value, slopes.row(row).transpose()};
}

std::string with_name(const std::string& what, std::size_t index, const std::string& name) {
    return what + ' ' + std::to_string(index + 1) + (name.empty() ? "" : " (" + name + ")");
}

} // namespace

Model::Model(document::Document document, Evaluation evaluation, const Waters& water)
    : document_(std::move(document)), evaluation_(std::make_shared<const Evaluation>(std::move(evaluation))),
      ledger_(evaluation_->ledger), water_(water), sums_(ledger_),
      drag_correction_(fall::drag_correction(document_)), inputs_(sums_.inputs()) {
    inputs_.push_back({document::Cause::drag, 0, drag_spread(document_, evaluation_->answers)});
}

Outcome<Model> Model::of(const document::Document& document, const Kept* before) {
    Outcome<Evaluation> evaluation = evaluate(document, before);
    if (!evaluation) return evaluation.problems();
    const auto water = waters_of(document);
    if (!water) return water.problems();
    Model model(document, std::move(evaluation).value(), *water);
    model.add_earlier();
    model.add_hung();
    return model;
}

void Model::add_earlier() {
    std::vector<Input> all(inputs_.begin(), inputs_.end() - 1);
    const Input drag = inputs_.back();
    std::vector<std::pair<int, std::shared_ptr<Model>>> earlier;
    for (const document::Reading& r : document_.log) {
        const auto is_made = [&](const auto& e) { return e.first == r.before_change; };
        if (r.excluded || !r.before_change || std::any_of(earlier.begin(), earlier.end(), is_made)) continue;
        document::Document then = document::before_change(document_, *r.before_change);
        then.log.clear();
        Outcome<Evaluation> evaluation = evaluate(then, &evaluation_->kept);
        if (!evaluation) continue;
        const Model model(std::move(then), std::move(evaluation).value(), water_);
        all = UncertainSums(model.ledger_, all).inputs();
        earlier.emplace_back(*r.before_change, std::make_shared<Model>(model));
    }
    if (earlier.empty()) return;
    inputs_ = all;
    inputs_.push_back(drag);
    for (const auto& [change, model] : earlier) {
        model->sums_ = UncertainSums(model->ledger_, all);
        model->inputs_ = inputs_;
        as_read_.push_back({change, {}, model});
    }
}

void Model::add_hung() {
    const std::vector<Input> all(inputs_.begin(), inputs_.end() - 1);
    std::vector<AsRead> hung;
    const auto add = [&](std::optional<int> before_change, const document::HungList& with) {
        const Model* lure = find(before_change, {});
        if (lure == nullptr || with.empty()) return;
        for (const AsRead& known : hung) {
            if (known.before_change == before_change && known.with == with) return;
        }
        Model model = *lure;
        model.as_read_.clear();
        model.ledger_ = ledger::with_hung_on(std::move(model.ledger_), with, model.evaluation_->answers.g_m);
        model.sums_ = UncertainSums(model.ledger_, all);
        hung.push_back({before_change, with, std::make_shared<const Model>(std::move(model))});
    };
    add({}, document::all_hung_on());
    for (const document::Reading& r : document_.log) {
        if (!r.excluded) add(r.before_change, r.with);
    }
    as_read_.insert(as_read_.end(), hung.begin(), hung.end());
}

const Model* Model::find(std::optional<int> before_change, const document::HungList& with) const {
    if (!before_change && with.empty()) return this;
    for (const AsRead& known : as_read_) {
        if (known.before_change == before_change && known.with == with) return known.model.get();
    }
    return nullptr;
}

const Model* Model::as_read(const document::Reading& reading) const {
    return find(reading.before_change, reading.with);
}

const Model& Model::with_all() const {
    return *find({}, document::all_hung_on());
}

std::string Model::name_of(const Input& input) const {
    const auto i = static_cast<std::size_t>(input.group);
    switch (input.cause) {
    case document::Cause::wood_density:
        return "wood density";
    case document::Cause::moisture:
        return "wood moisture";
    case document::Cause::wood_gradient:
        return "wood from head to tail";
    case document::Cause::carved_size:
        if (i == 0) return "carved size";
        return with_name("size of segment", i - 1,
                         i <= document_.segment_names.size() ? document_.segment_names[i - 1] : "");
    case document::Cause::part_mass:
        return with_name("part", i, i < document_.parts.size() ? document_.parts[i].name : "");
    case document::Cause::fill_mass:
        return with_name("fill of hole", i, i < document_.holes.size() ? document_.holes[i].name : "");
    case document::Cause::cap_mass:
        return with_name("cap of hole", i, i < document_.holes.size() ? document_.holes[i].name : "");
    case document::Cause::coat_amount:
        return with_name("coat", i, i < document_.coats.size() ? document_.coats[i].name : "");
    case document::Cause::hinge_mass:
        return "hinge of joint " + std::to_string(i + 1);
    case document::Cause::hanger_mass:
        return with_name("hanger", i, i < document_.hangers.size() ? document_.hangers[i].name : "");
    case document::Cause::tail:
        return i == 0 ? "the tail's plastic" : "the tail's size";
    case document::Cause::drag:
        return "drag";
    case document::Cause::beats:
    case document::Cause::none:
        break;
    }
    return "";
}

std::vector<double> Model::factors(const Eigen::VectorXd& u) const {
    std::vector<double> f(inputs_.size());
    for (std::size_t i = 0; i < f.size(); ++i)
        f[i] = factor_of(inputs_[i], u(static_cast<Eigen::Index>(i)));
    return f;
}

double Model::drag(const Eigen::VectorXd& u) const {
    return drag_correction_ * factor_of(inputs_.back(), u(drag_index()));
}

ledger::Sum Model::sum(Stage through, int segment, const Eigen::VectorXd& u) const {
    return sums_.sum(through, segment, factors(u));
}

Balance Model::balance(Stage through, int segment, const Eigen::VectorXd& u, double water_kg_m3) const {
    const std::vector<double> f = factors(u);
    std::vector<double> slope(f.size());
    for (std::size_t i = 0; i < f.size(); ++i)
        slope[i] = factor_slope_of(inputs_[i], u(static_cast<Eigen::Index>(i)));
    UncertainSums::Slopes d;
    Balance out;
    out.sum = sums_.sum(through, segment, f, slope, d);
    out.mass_kg = from(d, 0, out.sum.mass.kg);
    out.displaced_m3 = from(d, 1, out.sum.displaced_m3);
    out.in_water_kg = {out.sum.in_water(water_kg_m3).kg,
                       out.mass_kg.slope - water_kg_m3 * out.displaced_m3.slope};
    const Vec3 g = out.sum.g_m();
    const Vec3 b = out.sum.b_m();
    const std::array<double, 3> at_g{g.x, g.y, g.z};
    const std::array<double, 3> at_b{b.x, b.y, b.z};
    for (std::size_t k = 0; k < 3; ++k) {
        const auto row = static_cast<Eigen::Index>(k);
        out.g_m[k] = from(d, 2 + row, at_g[k]);
        out.b_m[k] = from(d, 5 + row, at_b[k]);
        if (out.sum.mass.kg != 0.0)
            out.g_m[k].slope = (out.g_m[k].slope - at_g[k] * out.mass_kg.slope) / out.sum.mass.kg;
        if (out.sum.displaced_m3 != 0.0)
            out.b_m[k].slope = (out.b_m[k].slope - at_b[k] * out.displaced_m3.slope) / out.sum.displaced_m3;
    }
    out.aft_m = {g.x - b.x, out.g_m[0].slope - out.b_m[0].slope};
    out.below_m = {b.z - g.z, out.b_m[2].slope - out.g_m[2].slope};
    out.bg_across_m = out.below_m;
    if (out.below_m.value > 0.0 && g.y != b.y) {
        out.bg_across_m.value = water::bg_across_m(b - g);
        out.bg_across_m.slope =
            ((b.y - g.y) * (out.b_m[1].slope - out.g_m[1].slope) + out.below_m.value * out.below_m.slope) /
            out.bg_across_m.value;
    }
    return out;
}

std::optional<Linearised> Model::hang(const Balance& b) {
    if (!(b.below_m.value > 0.0)) return std::nullopt;
    const double square = b.bg_across_m.value * b.bg_across_m.value + b.aft_m.value * b.aft_m.value;
    return Linearised{std::atan2(b.aft_m.value, b.bg_across_m.value),
                      (b.bg_across_m.value * b.aft_m.slope - b.aft_m.value * b.bg_across_m.slope) / square};
}

FallModel Model::fall_model(Stage stage, const materials::WaterProperties& water) const {
    return {evaluation_->kept.hull, fall::mass_properties_of(ledger_, stage),
            fall::drag_items(*evaluation_->body.lines, document_, ledger_, stage), water};
}

std::optional<LinearisedFall> Model::fall(FallModel& falls, const Balance& b,
                                          const Eigen::VectorXd& u) const {
    const auto s = falls.slopes(b.sum, drag(u));
    if (!s) return std::nullopt;
    const Eigen::VectorXd by_place = s->per_aft_m * b.aft_m.slope + s->per_below_m * b.bg_across_m.slope;
    LinearisedFall fall{{s->speed_m_s, s->per_kg * b.in_water_kg.slope + by_place}, b.in_water_kg};
    fall.speed_m_s.slope(drag_index()) += s->per_log_drag * inputs_.back().relative;
    if (s->per_kg > 0.0) {
        fall.equivalent_kg.slope += by_place / s->per_kg;
        fall.weight_per_drag = -s->per_log_drag / (s->per_kg * b.in_water_kg.value);
    }
    return fall;
}

} // namespace evenfall::bench
