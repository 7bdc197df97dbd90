#include "output/uncertainty_json.hpp"

#include "base/trade.hpp"
#include "document/field_table.hpp"
#include "document/json_text.hpp"
#include "output/trees.hpp"

#include <array>

namespace evenfall::output {
namespace {

std::string kind_of(document::ReadingKind kind) {
    return std::string(document::word_of(document::table::reading_kinds, kind));
}

Tree estimate(const Estimate& e, double per_core) {
    return {{"value", number(e.value * per_core)},
            {"sigma", number(e.sigma * per_core)},
            {"sigma_before", number(e.sigma_before * per_core)}};
}
constexpr double gram = units::g_from_kg(1.0);
constexpr double mm = units::mm_from_m(1.0);
constexpr double degree = 1.0 / units::degree_rad;

Tree chances(const Chances& c) {
    return {{"fall", number(c.fall)}, {"pitch", number(c.pitch)}, {"both", number(c.both)}};
}

/// A reading's value in its own unit.
Tree reading(document::ReadingKind kind, double core) {
    return number(units::from_core(core, document::number_of(kind).judged_in));
}

Tree stage_tree(const StagePrediction& s) {
    Tree tree{{"stage", stage_word(s.stage)},
              {"mass_g", estimate(s.mass_kg, gram)},
              {"displaced_g", estimate(s.displaced_kg, gram)},
              {"in_tub_g", estimate(s.in_tub_kg, gram)}};
    tree["tub_fall_mm_s"] = s.tub_fall_m_s ? estimate(*s.tub_fall_m_s, mm) : Tree(nullptr);
    return tree;
}

Tree spread(const Quantiles& s, double per_core) {
    return {{"low_95", number(s.low_95 * per_core)},   {"low_50", number(s.low_50 * per_core)},
            {"middle", number(s.median * per_core)},   {"high_50", number(s.high_50 * per_core)},
            {"high_95", number(s.high_95 * per_core)}, {"mean", number(s.mean * per_core)},
            {"sigma", number(s.sigma * per_core)}};
}

Tree texts(const std::vector<Sentence>& sentences, const units::UnitSet& units) {
    return list_of(sentences, [&](const Sentence& one) { return Tree(one.text(units)); });
}

/// Keys that begin alike: "tub_in_water_g".
void put_tub(Tree& tree, const std::string& prefix, const TubTest& test) {
    tree[prefix + "in_water_g"] = grams(test.in_water_kg);
    tree[prefix + "fall_mm_s"] = speed(test.fall_m_s);
    tree[prefix + "half_metre_s"] = number(test.half_metre_s);
}

Tree test_tree(const std::optional<TubTest>& test) {
    if (!test) return nullptr;
    Tree tree{{"stage", stage_word(test->stage)}};
    put_tub(tree, "tub_", *test);
    return tree;
}

Tree now_tree(const DoNow& now, const units::UnitSet& units) {
    const auto place = [&](Tree row, int hole) {
        const document::Hole& at = now.document.holes[static_cast<std::size_t>(hole)];
        row["x_mm"] = millimetres(at.x_m);
        row["y_mm"] = millimetres(at.y_m);
        row["from"] = std::string(document::word_of(document::table::hole_sides, at.from));
        return row;
    };
    Tree changes = list_of(now.changes, [&](const HoleChange& c) {
        const Tree row{{"hole", c.hole + 1},
                       {"new", c.is_new},
                       {"change_g", grams(c.change_kg)},
                       {"material", c.material},
                       {"bit_mm", millimetres(c.diameter_m)},
                       {"depth_mm", millimetres(c.depth_m)},
                       {"column_mm", millimetres(c.column_m)}};
        return place(row, c.hole);
    });
    Tree holes = list_of(now.holes, [&](const HoleStep& step) {
        constexpr std::array words{"leave_whole", "leave_empty", "fill", "take_out", "add"};
        const Tree row{{"hole", step.hole + 1},
                       {"new", step.is_new},
                       {"work", words[static_cast<std::size_t>(step.work)]},
                       {"material", step.material},
                       {"bit_mm", step.drills ? millimetres(step.diameter_m) : Tree(nullptr)},
                       {"depth_mm", millimetres(step.depth_m)},
                       {"fill_g", grams(step.fill_kg)},
                       {"column_mm", millimetres(step.column_m)}};
        return place(row, step.hole);
    });
    Tree tree{{"stage", stage_word(now.stage)},   {"met", now.met},
              {"chance", chances(now.chances)},   {"lead_is_in", now.lead_is_in},
              {"holes", std::move(holes)},        {"nothing_to_do", now.nothing_to_do},
              {"change_g", grams(now.change_kg)}, {"changes", std::move(changes)}};
    put_tub(tree, "tub_", now.tub);
    tree["with_all"] = test_tree(now.with_all);
    tree["finished_in_water_g"] = grams(now.after.in_water.kg);
    tree["finished_fall_mm_s"] = now.after.fall ? speed(now.after.fall->speed_m_s) : Tree(nullptr);
    tree["finished_pitch_deg"] = degrees(now.after.pitch_rad);
    tree["shortfalls"] = problem_list(now.shortfalls, units);
    tree["steps"] = texts(now.steps, units);
    return tree;
}

} // namespace

std::string uncertainty_json(const document::Document& document, const Uncertainty& s,
                             const std::optional<DoNow>& now, const std::optional<Draws>& draws,
                             const units::UnitSet& units) {
    Tree tree{{"name", document.name},
              {"lure", s.lure + 1},
              {"stage", stage_word(s.stage)},
              {"has_readings", s.has_readings},
              {"mass_g", estimate(s.mass_kg, gram)},
              {"in_water_g", estimate(s.in_water_kg, gram)}};
    tree["fall_mm_s"] = s.fall_m_s ? estimate(*s.fall_m_s, mm) : Tree(nullptr);
    tree["fall_50_80_95_mm_s"] = list_of(s.fall_50_80_95_m_s, [](const Interval& i) {
        return Tree::array({speed(i.low), speed(i.high)});
    });
    tree["under_water"] = {{"low_mm_s", speed(s.under_water.speed_m_s.low)},
                           {"high_mm_s", speed(s.under_water.speed_m_s.high)},
                           {"rises", number(s.under_water.rises)},
                           {"hangs", number(s.under_water.hangs)},
                           {"sinks", number(s.under_water.sinks)}};
    tree["pitch_deg"] = estimate(s.pitch_rad, degree);
    tree["bg_mm"] = estimate(s.bg_m, mm);
    tree["g_sigma_mm"] = point(s.g_sigma_m);
    tree["b_sigma_mm"] = point(s.b_sigma_m);
    tree["asked_in_water_g"] = grams(s.target_in_water_kg);
    tree["weight_band_g"] = grams(s.weight_band_kg);
    tree["chance_now"] = chances(s.chances_now);
    tree["chance_put_right"] = chances(now ? now->chances : s.chances_corrected);
    tree["stages"] = list_of(s.stages, stage_tree);
    tree["stages_with_all"] = list_of(s.stages_with_all, stage_tree);
    tree["inputs"] = list_of(s.inputs, [](const InputEstimate& b) {
        return Tree{{"cause", std::string(document::word_of(document::table::causes, b.cause))},
                    {"name", b.name},
                    {"factor", number(b.factor)},
                    {"spread_percent", number(100.0 * b.spread)},
                    {"spread_before_percent", number(100.0 * b.spread_before)}};
    });
    tree["readings"] = list_of(s.readings, [&](const ReadingFit& v) {
        const document::Reading& r = document.log[v.index];
        return Tree{
            {"reading", v.index + 1},
            {"kind", kind_of(r.kind)},
            {"stage", stage_word(r.stage)},
            {"lure", document::lure_of(r) + 1},
            {"used", v.used},
            {"left_out", v.left_out},
            {"read", reading(r.kind, v.read)},
            {"sigma", reading(r.kind, v.sigma)},
            {"expected", v.used || v.left_out ? reading(r.kind, v.predicted) : Tree(nullptr)},
            {"expected_sigma", v.used || v.left_out ? reading(r.kind, v.predicted_sigma) : Tree(nullptr)},
            {"off", number(v.z_score)},
            {"warning", v.warning.text(units)},
            {"explanations", texts(v.explanations, units)}};
    });
    tree["agreement"] = {{"readings", s.agreement.readings},
                         {"chi_square", number(s.agreement.chi_square)},
                         {"chance", number(s.agreement.chance)},
                         {"warning", s.agreement.warning.text(units)}};
    tree["next"] = list_of(s.next, [](const NextReading& n) {
        return Tree{{"kind", kind_of(n.kind)},
                    {"with_dry_weight", n.with_dry_weight},
                    {"each_segment", n.each_segment},
                    {"stage", stage_word(n.stage)},
                    {"with", n.with_all ? Tree("all") : Tree(nullptr)},
                    {"sigma", reading(n.kind, n.sigma)},
                    {"in_water_sigma_g", grams(n.in_water_sigma_kg)},
                    {"chance", number(n.chance)},
                    {"gain", number(n.gain)}};
    });
    tree["trim_hole"] = {{"needed", s.trim.needed},
                         {"reserve_g", grams(s.trim.reserve_kg)},
                         {"room_up_g", grams(s.trim.room_up_kg)},
                         {"room_down_g", grams(s.trim.room_down_kg)},
                         {"x_mm", millimetres(s.trim.x_m)},
                         {"bit_mm", millimetres(s.trim.diameter_m)},
                         {"depth_mm", millimetres(s.trim.depth_m)},
                         {"sentence", s.trim.sentence.text(units)}};
    if (now) tree["do_now"] = now_tree(*now, units);
    if (draws) {
        tree["draws"] = {{"count", draws->count},
                         {"floats", number(draws->floats)},
                         {"rolls", number(draws->rolls)},
                         {"chance", chances(draws->chances)},
                         {"mass_g", spread(draws->mass_kg, gram)},
                         {"in_water_g", spread(draws->in_water_kg, gram)},
                         {"pitch_deg", spread(draws->pitch_rad, degree)},
                         {"fall_mm_s", spread(draws->fall_m_s, mm)}};
    }
    return document::laid_out_text(tree);
}

} // namespace evenfall::output
