#include "output/reach_json.hpp"

#include "document/json_text.hpp"
#include "output/trees.hpp"

namespace evenfall::output {

namespace {

const char* kind_word(reach::Kind kind) {
    switch (kind) {
    case reach::Kind::another_hole:
        return "another_hole";
    case reach::Kind::deeper_holes:
        return "deeper_holes";
    case reach::Kind::wider_bits:
        return "wider_bits";
    case reach::Kind::other_metal:
        return "other_metal";
    case reach::Kind::other_wood:
        return "other_wood";
    case reach::Kind::thickness:
        return "thickness";
    case reach::Kind::belly:
        return "belly";
    case reach::Kind::back:
        return "back";
    case reach::Kind::hook_size:
        return "hook_size";
    case reach::Kind::hanger_moved:
        return "hanger_moved";
    case reach::Kind::coat_more:
        return "coat_more";
    case reach::Kind::coat_less:
        return "coat_less";
    case reach::Kind::joint_moved:
        return "joint_moved";
    case reach::Kind::tail_size:
        return "tail_size";
    }
    return "";
}

const char* fall_word(starter::WantedFall fall) {
    switch (fall) {
    case starter::WantedFall::floats:
        return "floats";
    case starter::WantedFall::suspends:
        return "suspends";
    case starter::WantedFall::slow:
        return "slow";
    case starter::WantedFall::medium:
        return "medium";
    case starter::WantedFall::fast:
        return "fast";
    case starter::WantedFall::by_speed:
        break;
    }
    return "by_speed";
}

void add_figures(Tree& tree, const reach::Figures& f) {
    tree["mass_g"] = grams(f.mass_kg);
    tree["in_water_g"] = grams(f.in_water_kg);
    tree["fall_mm_s"] = speed(f.fall_m_s);
    tree["pitch_deg"] = degrees(f.pitch_rad);
    tree["bg_mm"] = millimetres(f.bg_m);
    tree["chance_percent"] = number(100.0 * f.chance);
}

Tree point_tree(const reach::MapPoint& p) {
    return {{"in_water_g", grams(p.in_water_kg)},
            {"fall_mm_s", speed(p.fall_m_s)},
            {"pitch_deg", degrees(p.pitch_rad)}};
}

} // namespace

std::string reach_json(const reach::Ways& ways, const reach::ReachMap& map, const units::UnitSet& units) {
    Tree tree{{"name", ways.document.name}, {"met", ways.met}};
    Tree before = Tree::object();
    add_figures(before, ways.before);
    tree["before"] = std::move(before);
    tree["shortfalls"] = problem_list(ways.shortfalls, units);
    tree["ways"] = list_of(ways.ways, [&](const reach::Way& way) {
        Tree one{{"change", way.change.text(units)},
                 {"kinds", list_of(way.kinds, [](reach::Kind kind) { return Tree(kind_word(kind)); })},
                 {"cost", number(way.cost)}};
        add_figures(one, way.after);
        one["also"] = list_of(way.also, [&](const Sentence& says) { return Tree(says.text(units)); });
        return one;
    });
    tree["map"] = {{"border", list_of(map.border, point_tree)},
                   {"asked", point_tree(map.asked)},
                   {"inside", map.inside},
                   {"nearest", point_tree(map.nearest)}};
    return document::laid_out_text(tree);
}

std::string family_json(const std::vector<reach::Member>& members, const units::UnitSet& units) {
    Tree tree;
    tree["members"] = list_of(members, [&](const reach::Member& member) {
        double fill_kg = 0.0;
        for (const HolePlan& hole : member.plan.holes)
            fill_kg += hole.mass_kg;
        Tree one{{"fall", fall_word(member.fall)}, {"met", member.plan.met}, {"fill_g", grams(fill_kg)}};
        add_figures(one, member.figures);
        one["shortfalls"] = problem_list(member.plan.shortfalls, units);
        return one;
    });
    return document::laid_out_text(tree);
}

} // namespace evenfall::output
