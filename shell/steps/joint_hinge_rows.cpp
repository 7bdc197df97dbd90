#include "steps/step_panels.hpp"

#include "look/words_glue.hpp"
#include "look/words_joints.hpp"
#include "look/words_steps.hpp"
#include "units/trade.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using preset::Hinge;
using state::on_joint;
using widgets::Unit;

state::Edit on_hinge(int index, std::function<void(Hinge&)> change) {
    return on_joint(index, [change = std::move(change)](preset::Joint& j) {
        if (j.hinge) change(*j.hinge);
    });
}

template <class E, std::size_t n>
void pick(Desk& desk, int index, const std::string& id, const char* label, const std::array<std::string_view, n>& names, E Hinge::*member, E value) {
    if (const auto tapped = widgets::choice(desk.ui, id, label, names, static_cast<int>(value))) {
        const E chosen = static_cast<E>(*tapped);
        desk.change(label_of(label, words::joint_kind, index), on_hinge(index, [member, chosen](Hinge& h) { h.*member = chosen; }));
    }
}

void length(Desk& desk, int index, const std::string& id, const char* label, double value, double least, double most, double Hinge::*member,
            const char* below = "") {
    number(desk, id, label, value, {Quantity::length, least, most, {}, -1}, label_of(label, words::joint_kind, index),
           [index, member](double v) { return on_hinge(index, [member, v](Hinge& h) { h.*member = v; }); }, below);
}

void hinge_fields(Desk& desk, int index, const Hinge& h) {
    const std::string id = "joints." + std::to_string(index) + ".hinge";
    pick(desk, index, id + ".kind", words::hinge_kind_field, std::array<std::string_view, 2>{words::hinge_pinned, words::hinge_linked}, &Hinge::kind, h.kind);
    pick(desk, index, id + ".eyes_on", words::hinge_eyes, std::array<std::string_view, 2>{words::hinge_eyes_fore, words::hinge_eyes_aft}, &Hinge::eyes_on, h.eyes_on);
    length(desk, index, id + ".pin_aft", words::pin_place, h.pin_aft_m, -0.03, 0.03, &Hinge::pin_aft_m, words::pin_place_below);
    length(desk, index, id + ".pin_off", words::pin_off, h.pin_off_m, -0.02, 0.02, &Hinge::pin_off_m, words::pin_off_below);
    if (h.kind == preset::HingeKind::linked) {
        number(desk, id + ".lean", words::eyes_lean, h.lean_rad, {Quantity::angle, 0.0, units::rad_from_deg(90.0), {}, -1},
               label_of(words::eyes_lean, words::joint_kind, index),
               [index](double v) { return on_hinge(index, [v](Hinge& now) { now.lean_rad = v; }); }, words::eyes_lean_below);
    } else {
        length(desk, index, id + ".pin", words::pin_size, h.pin_diameter_m, 0.0003, 0.006, &Hinge::pin_diameter_m);
    }
    length(desk, index, id + ".wire", words::wire_size, h.wire_m, 0.0002, 0.003, &Hinge::wire_m);
    wire_from_drawer(desk, index);
    length(desk, index, id + ".eye", words::eye_size, h.eye_inside_m, 0.0005, 0.03, &Hinge::eye_inside_m);
    length(desk, index, id + ".glued", words::glued_depth, h.glued_m, 0.0, 0.1, &Hinge::glued_m);
    pick(desk, index, id + ".glue", words::hinge_glue, std::array<std::string_view, 3>{words::hinge_glue_none, words::hinge_glue_ca, words::hinge_glue_epoxy},
         &Hinge::glue, h.glue);
    const int by = widgets::stepper(desk.ui, id + ".turns", words::twist_turns, static_cast<int>(h.turns), 0, 40);
    if (by != 0) {
        desk.change(label_of(words::twist_turns, words::joint_kind, index),
                    on_hinge(index, [turns = static_cast<int>(h.turns) + by](Hinge& now) { now.turns = turns; }));
    }
    pick(desk, index, id + ".temper", words::wire_temper, std::array<std::string_view, 2>{words::temper_spring, words::temper_soft}, &Hinge::temper, h.temper);
}

std::string bits_text(const std::array<std::optional<bits::Bit>, bits::system_count>& list) {
    std::string text;
    for (const auto& bit : list) {
        if (!bit) continue;
        if (!text.empty()) text += ", ";
        text += bit->name();
    }
    return text.empty() ? std::string(words::no_bit) : text;
}

const char* wall_words(joints::Between between) {
    switch (between) {
    case joints::Between::pin_and_face: return words::wall_pin_face;
    case joints::Between::pin_and_skin: return words::wall_pin_skin;
    case joints::Between::pin_and_hole: return words::wall_pin_hole;
    case joints::Between::pocket_and_skin: return words::wall_pocket_skin;
    case joints::Between::pocket_and_hole: return words::wall_pocket_hole;
    }
    return "";
}

void answer_rows(Desk& desk, const joints::JointAnswer& j) {
    const std::string_view unit = unit_of(desk, Quantity::length);
    widgets::subheading(desk.ui, words::wire_group);
    widgets::figure_row(desk.ui, words::cut_row, number_of(desk, j.eye.cut_m, Quantity::length), unit, words::cut_row_below);
    widgets::figure_row(desk.ui, words::bend_row, number_of(desk, j.eye.mandrel_m, Quantity::length), unit, words::bend_row_below);
    widgets::figure_row(desk.ui, words::overbend_row, number_of(desk, j.eye.overbend * units::rad_from_deg(90.0), Quantity::angle),
                        unit_of(desk, Quantity::angle), words::overbend_below);
    widgets::figure_row(desk.ui, words::bit_row, bits_text(j.eye_bits), {});
    if (j.place.hinge.kind == preset::HingeKind::pinned) widgets::figure_row(desk.ui, words::pin_bit_row, bits_text(j.pin_bits), {});
    widgets::figure_row(desk.ui, words::play_row, number_of(desk, j.play_per_eye_m, Quantity::length), unit,
                        std::string(words::play_sag) + " " + text_of(desk, j.sag_rad, Quantity::angle));
    if (j.rocks_rad)
        widgets::figure_row(desk.ui, words::rocks_row, number_of(desk, *j.rocks_rad, Quantity::angle), unit_of(desk, Quantity::angle), words::rocks_below);
    if (j.slop) {
        widgets::figure_row(desk.ui, words::slop_fore_aft, number_of(desk, j.slop->fore_aft_m, Quantity::length), unit, words::slop_below);
        widgets::figure_row(desk.ui, words::slop_up_down, number_of(desk, j.slop->up_down_m, Quantity::length), unit);
        widgets::figure_row(desk.ui, words::slop_sideways, number_of(desk, j.slop->sideways_m, Quantity::length), unit);
    }
    widgets::subheading(desk.ui, words::walls_group);
    for (const auto& wall : j.walls) {
        std::string label = wall_words(wall.between);
        if (wall.hole) {
            label += ' ';
            label += std::to_string(*wall.hole + 1);
        }
        widgets::figure_row(desk.ui, label, number_of(desk, wall.thickness_m, Quantity::length), unit);
    }
    widgets::subheading(desk.ui, words::strength_group);
    widgets::figure_row(desk.ui, words::strength_row, widgets::number_text(j.strength.least_n, Unit::none, 0), words::newton,
                        widgets::number_text(j.strength.safety, Unit::none, 1) + " " + words::strength_times);
    widgets::note(desk.ui, words::strength_note);
}

} // namespace

void joint_hinge_rows(Desk& desk, int index) {
    const auto& joint = desk.document().joints[static_cast<std::size_t>(index)];
    const std::string id = "joints." + std::to_string(index) + ".hinge";
    if (widgets::toggle(desk.ui, id, words::hinge_drawn, joint.hinge.has_value(), words::hinge_drawn_below)) {
        desk.change(label_of(words::hinge_drawn, words::joint_kind, index), on_joint(index, [](preset::Joint& j) {
                        if (j.hinge) j.hinge.reset();
                        else j.hinge = Hinge{};
                    }));
    }
    if (!joint.hinge) return;
    hinge_fields(desk, index, *joint.hinge);
    const joints::JointsAnswer* answer = desk.motion.joints.of(desk.session);
    if (answer != nullptr && static_cast<std::size_t>(index) < answer->joints.size())
        answer_rows(desk, answer->joints[static_cast<std::size_t>(index)]);
}

} // namespace evenfall::shell::steps
