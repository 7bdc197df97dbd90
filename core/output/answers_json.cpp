#include "output/answers_json.hpp"

#include "base/trade.hpp"
#include "document/json_text.hpp"
#include "output/trees.hpp"

namespace evenfall::output {
namespace {

void put_fall(Tree& tree, const std::string& prefix, const std::optional<Fall>& fall) {
    tree[prefix + "fall_mm_s"] = fall ? speed(fall->speed_m_s) : Tree(nullptr);
    tree[prefix + "fall_slow_mm_s"] = fall ? speed(fall->slow_m_s) : Tree(nullptr);
    tree[prefix + "fall_fast_mm_s"] = fall ? speed(fall->fast_m_s) : Tree(nullptr);
    tree[prefix + "fall_pitch_deg"] = fall ? degrees(fall->pitch_rad) : Tree(nullptr);
    tree[prefix + "fall_forward_mm_s"] = fall ? speed(fall->forward_m_s) : Tree(nullptr);
}

std::string behaviour_word(Behaviour behaviour) {
    switch (behaviour) {
    case Behaviour::floats:
        return "floats";
    case Behaviour::suspends:
        return "suspends";
    case Behaviour::falls:
        return "falls";
    }
    return {};
}

Tree segment_tree(const SegmentAnswer& segment) {
    return {{"name", segment.name},
            {"volume_cm3", cubic_centimetres(segment.wood_m3)},
            {"displaced_cm3", cubic_centimetres(segment.displaced_m3)},
            {"mass_g", grams(segment.mass.kg)},
            {"in_water_g", grams(segment.in_water.kg)},
            {"g_mm", point(segment.g_m)},
            {"b_mm", point(segment.b_m)}};
}

Tree coat_tree(const document::Document& document, const CoatAnswer& coat) {
    return {{"name", document.coats[static_cast<std::size_t>(coat.coat)].name},
            {"mass_g", grams(coat.mass.kg)},
            {"displaced_cm3", cubic_centimetres(coat.displaced_m3)},
            {"in_water_g", grams(coat.in_water.kg)},
            {"felt_percent", number(100.0 * coat.in_water_share)}};
}

Tree stage_tree(const StageAnswer& stage) {
    Tree tree{{"stage", stage_word(stage.stage)},
              {"mass_g", grams(stage.mass.kg)},
              {"mass_sigma_g", grams(stage.mass_sigma.kg)},
              {"displaced_cm3", cubic_centimetres(stage.displaced_m3)},
              {"in_water_g", grams(stage.in_water.kg)},
              {"in_tub_g", grams(stage.in_tub.kg)},
              {"g_mm", point(stage.g_m)},
              {"b_mm", point(stage.b_m)}};
    put_fall(tree, "", stage.fall);
    put_fall(tree, "tub_", stage.tub_fall);
    return tree;
}

Tree answers_tree(const document::Document& document, const Answers& answers, const units::UnitSet& units) {
    Tree tree{{"name", document.name},
              {"mass_g", grams(answers.mass.kg)},
              {"mass_sigma_g", grams(answers.mass_sigma.kg)},
              {"displaced_cm3", cubic_centimetres(answers.displaced_m3)},
              {"in_water_g", grams(answers.in_water.kg)},
              {"in_water_sigma_g", grams(answers.in_water_sigma.kg)},
              {"behaviour", behaviour_word(answers.behaviour)}};
    put_fall(tree, "", answers.fall);
    const auto& way = answers.under_water;
    tree["under_water_mm_s"] = way ? speed(way->speed_m_s) : Tree(nullptr);
    tree["under_water_slow_mm_s"] = way ? speed(way->slow_m_s) : Tree(nullptr);
    tree["under_water_fast_mm_s"] = way ? speed(way->fast_m_s) : Tree(nullptr);
    tree["pitch_deg"] = degrees(answers.pitch_rad);
    tree["roll_deg"] = degrees(answers.roll_rad);
    tree["bg_mm"] = millimetres(answers.bg_m);
    tree["g_mm"] = point(answers.g_m);
    tree["b_mm"] = point(answers.b_m);
    tree["water_kg_m3"] = number(answers.water_density_kg_m3);
    tree["segments"] = list_of(answers.segments, segment_tree);
    tree["stages"] = list_of(answers.stages, stage_tree);
    tree["coats"] = list_of(answers.coats, [&](const CoatAnswer& coat) { return coat_tree(document, coat); });
    tree["warnings"] = problem_list(answers.warnings, units);
    return tree;
}

} // namespace

std::string answers_json(const document::Document& document, const Evaluation& evaluation,
                         std::optional<double> chance, const units::UnitSet& units) {
    Tree tree = answers_tree(document, evaluation.answers, units);
    tree["stages_with_all"] = list_of(stages_with_all(document, evaluation), stage_tree);
    if (chance) tree["chance_percent"] = number(100.0 * *chance);
    return document::laid_out_text(tree);
}

namespace {

Tree limit_tree(HoleLimit limit) {
    switch (limit) {
    case HoleLimit::none:
        break;
    case HoleLimit::empty:
        return "empty";
    case HoleLimit::least:
        return "least";
    case HoleLimit::full:
        return "full";
    }
    return nullptr;
}

Tree miss_tree(const std::optional<TargetMiss>& miss, const char* key, double per_core) {
    if (!miss) return nullptr;
    return {{key, number(miss->by * per_core)}, {"bands", number(miss->bands)}};
}

} // namespace

std::string lead_json(const LeadPlan& plan, const units::UnitSet& units) {
    Tree tree = answers_tree(plan.document, plan.after, units);
    tree["met"] = plan.met;
    tree["fills"] = list_of(plan.holes, [&](const HolePlan& hole) {
        return Tree{{"hole", hole.hole + 1},
                    {"name", plan.document.holes[static_cast<std::size_t>(hole.hole)].name},
                    {"material", hole.material},
                    {"mass_g", grams(hole.mass_kg)},
                    {"depth_mm", millimetres(hole.depth_m)},
                    {"column_mm", millimetres(hole.column_m)},
                    {"limit", limit_tree(hole.limit)}};
    });
    tree["misses"] = {{"fall", miss_tree(plan.fall, "mm_s", units::mm_from_m(1.0))},
                      {"weight", miss_tree(plan.weight, "g", units::g_from_kg(1.0))},
                      {"hang", miss_tree(plan.hang, "deg", units::deg_from_rad(1.0))}};
    tree["shortfalls"] = problem_list(plan.shortfalls, units);
    tree["before"] = answers_tree(plan.document, plan.before, units);
    return document::laid_out_text(tree);
}

} // namespace evenfall::output
