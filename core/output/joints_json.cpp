#include "output/joints_json.hpp"

#include "document/json_text.hpp"
#include "output/trees.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::output {

namespace {

Tree both(const std::array<double, 2>& rad) {
    return {{"port_deg", degrees(rad[0])}, {"starboard_deg", degrees(rad[1])}};
}

Tree swings(const std::array<joints::Swing, 2>& s) {
    return both({s[0].angle_rad, s[1].angle_rad});
}

Tree bits_tree(const bits::BitOfEachSystem& list) {
    Tree out = Tree::array();
    for (const auto& bit : list) {
        if (bit) out.push_back({{"bit", bit->name()}, {"diameter_mm", millimetres(bit->diameter_m)}});
    }
    return out;
}

Tree eye_tree(const joints::EyeAnswer& eye) {
    Tree t{{"z_mm", millimetres(eye.place.z_m)}};
    if (!eye.room) return t;
    t["pocket"] = *eye.place.pocket + 1;
    t["beside_mm"] = millimetres(eye.room->beside_m);
    t["behind_mm"] = millimetres(eye.room->behind_m);
    if (eye.room->up_down_m) t["up_down_mm"] = millimetres(*eye.room->up_down_m);
    t["opens"] = eye.room->opens;
    return t;
}

Tree strength_tree(const wire::Strength& s) {
    return {{"eye_n", number(s.eye_n)},
            {"pull_out_n", number(s.pull_out_n)},
            {"pin_shear_n", number(s.pin_shear_n)},
            {"pin_bend_n", number(s.pin_bend_n)},
            {"wood_n", number(s.wood_n)},
            {"wall_n", number(s.wall_n)},
            {"weakest", weakest_word(s.weakest)},
            {"least_n", number(s.least_n)},
            {"safety", number(s.safety)}};
}

const char* stop_word(joints::StoppedBy stop) {
    switch (stop) {
    case joints::StoppedBy::nothing:
        return "nothing";
    case joints::StoppedBy::wood:
        return "wood";
    case joints::StoppedBy::pocket_mouth:
        return "wire at the pocket's mouth";
    case joints::StoppedBy::eyes:
        return "eye on eye";
    }
    return "";
}

Tree slop_tree(const std::optional<joints::LinkPlay>& play) {
    if (!play) return nullptr;
    return {{"fore_aft_mm", millimetres(play->fore_aft_m)},
            {"up_down_mm", millimetres(play->up_down_m)},
            {"sideways_mm", millimetres(play->sideways_m)}};
}

Tree joint_tree(const joints::JointAnswer& j) {
    Tree walls = list_of(j.walls, [](const joints::Wall& wall) {
        Tree t{{"between", wall_kind_word(wall.between)}, {"thickness_mm", millimetres(wall.thickness_m)}};
        if (wall.hole) t["hole"] = *wall.hole + 1;
        return t;
    });
    const double needed = std::max(j.mouth_m[0].value_or(0.0), j.mouth_m[1].value_or(0.0));
    return {{"pin", {{"x_mm", millimetres(j.place.pin.x_m)}, {"y_mm", millimetres(j.place.pin.y_m)}}},
            {"swing", both(j.swing_rad)},
            {"bare", swings(j.bare)},
            {"finished", swings(j.finished)},
            {"wire", both(j.wire_rad)},
            {"eyes_meet", both(j.eyes_rad)},
            {"stopped_by", {{"port", stop_word(j.stopped_by[0])}, {"starboard", stop_word(j.stopped_by[1])}}},
            {"mouth_needed_mm", needed > 0.0 ? millimetres(needed) : Tree(nullptr)},
            {"eyes", list_of(j.eyes, eye_tree)},
            {"slop", slop_tree(j.play)},
            {"play_per_eye_mm", millimetres(j.play_per_eye_m)},
            {"sag_deg", degrees(j.sag_rad)},
            {"rocks_deg", degrees(j.rocks_rad)},
            {"walls", std::move(walls)},
            {"eye_wire",
             {{"cut_mm", millimetres(j.eye.cut_m)},
              {"finished_mm", millimetres(j.eye.finished_m)},
              {"twist_outside_mm", millimetres(j.eye.twist_outside_m)},
              {"mass_g", grams(j.eye.mass_kg)},
              {"bend_round_mm", millimetres(j.eye.mandrel_m)},
              {"overbend_percent", number(100.0 * j.eye.overbend)},
              {"bits", bits_tree(j.eye_bits)}}},
            {"pin_bits", bits_tree(j.pin_bits)},
            {"strength", strength_tree(j.strength)}};
}

} // namespace

const char* wall_kind_word(joints::WallKind between) {
    switch (between) {
    case joints::WallKind::pin_and_face:
        return "pin and face";
    case joints::WallKind::pin_and_skin:
        return "pin and skin";
    case joints::WallKind::pin_and_hole:
        return "pin and hole";
    case joints::WallKind::pocket_and_skin:
        return "pocket and skin";
    case joints::WallKind::pocket_and_hole:
        return "pocket and hole";
    }
    return "";
}

const char* weakest_word(wire::Weakest weakest) {
    switch (weakest) {
    case wire::Weakest::eye_opens:
        return "eye opens";
    case wire::Weakest::twist_pulls_out:
        return "twist pulls out";
    case wire::Weakest::pin_shears:
        return "pin shears";
    case wire::Weakest::pin_bends:
        return "pin bends";
    case wire::Weakest::wood_under_pin:
        return "wood under the pin";
    case wire::Weakest::wall_before_pin:
        return "wall before the pin";
    }
    return "";
}

std::string joints_json(const document::Document& document, const joints::JointsAnswer& answer,
                        const units::UnitSet& units) {
    Tree hooks = list_of(answer.hooks, [](const joints::HookFoul& foul) {
        const char* what = foul.what == joints::FoulKind::hook    ? "hook"
                           : foul.what == joints::FoulKind::joint ? "joint"
                                                                  : "tail";
        const char* bent = foul.bent == joints::SwingSide::port ? "port" : "starboard";
        return Tree{{"part", foul.part + 1},
                    {"fouls", what},
                    {"other", foul.other < 0 ? Tree(nullptr) : Tree(foul.other + 1)},
                    {"over_mm", millimetres(foul.over_m)},
                    {"bent", foul.bent ? Tree(bent) : Tree(nullptr)}};
    });
    return document::laid_out_text({{"name", document.name},
                                    {"coat_on_faces_mm", millimetres(answer.films.on_faces_m)},
                                    {"coat_in_pockets_mm", millimetres(answer.films.in_pockets_m)},
                                    {"line_n", number(answer.line_n)},
                                    {"joints", list_of(answer.joints, joint_tree)},
                                    {"wrap", both(answer.wrap_rad)},
                                    {"turn_radius_mm",
                                     {{"port", millimetres(answer.turn_radius_m[0])},
                                      {"starboard", millimetres(answer.turn_radius_m[1])}}},
                                    {"hooks", std::move(hooks)},
                                    {"warnings", problem_list(answer.warnings, units)}});
}

} // namespace evenfall::output
