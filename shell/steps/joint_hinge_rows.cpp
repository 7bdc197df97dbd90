#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "evenfall.hpp"
#include "look/words_glue.hpp"
#include "look/words_help.hpp"
#include "look/words_joints.hpp"
#include "look/words_steps.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using document::Hinge;
using state::on_joint;
using widgets::Unit;

void hinge_fields(PanelContext& context, int index, Hinge h) {
    Fields f(context, "joints." + std::to_string(index) + ".hinge", words::joint_kind, index);
    const auto pick = [&](std::string_view key, const char* label, std::array<std::string_view, 2> names,
                          auto& on) { f.choice(key, label, names, on); };
    pick(".kind", words::hinge_kind_field, {words::hinge_pinned, words::hinge_linked}, h.kind);
    pick(".eyes_on", words::hinge_eyes, {words::hinge_eyes_fore, words::hinge_eyes_aft}, h.eyes_on);
    f.number<&Hinge::pin_aft_m>(".pin_aft", words::pin_place, h, words::pin_place_below);
    f.number<&Hinge::pin_off_m>(".pin_off", words::pin_off, h, words::pin_off_below);
    if (h.kind == document::HingeKind::linked) {
        f.number<&Hinge::lean_rad>(".lean", words::eyes_lean, h, words::eyes_lean_below);
    } else {
        f.number<&Hinge::pin_diameter_m>(".pin", words::pin_size, h);
    }
    f.number<&Hinge::wire_m>(".wire", words::wire_size, h);
    wire_from_drawer(context, index);
    f.number<&Hinge::eye_inside_m>(".eye", words::eye_size, h);
    f.optional_number<&Hinge::upper_z_m>(".upper", words::upper_eye, h, 0.0, words::eye_absent,
                                         words::eye_height_below);
    f.optional_number<&Hinge::lower_z_m>(".lower", words::lower_eye, h, 0.0, words::eye_absent,
                                         words::eye_height_below);
    f.number<&Hinge::glued_m>(".glued", words::glued_depth, h);
    const std::array<std::string_view, 3> glues{words::hinge_glue_none, words::hinge_glue_ca,
                                                words::hinge_glue_epoxy};
    f.choice(".glue", words::hinge_glue, glues, h.glue);
    constexpr document::NumberField turns = document::field_of<&Hinge::turns>;
    const int by = widgets::stepper(context.ui, f.id(".turns"), words::twist_turns, static_cast<int>(h.turns),
                                    static_cast<int>(turns.min), static_cast<int>(turns.max));
    if (by != 0) {
        h.turns = static_cast<int>(h.turns) + by;
        f.changed(words::twist_turns);
    }
    pick(".temper", words::wire_temper, {words::temper_spring, words::temper_soft}, h.temper);
    f.toggle(".weighs", words::hinge_weighs, h.weighs, words::hinge_weighs_below);
    if (h.weighs)
        f.optional_number<&Hinge::mass_kg>(".mass", words::hinge_mass, h, 0.001, words::hinge_mass_absent);
    f.put([&] { return on_joint(index, [h](document::Joint& j) { j.hinge = h; }); });
    if (!h.weighs && !state::parts_of_hinge(context.document(), index).empty()) {
        widgets::note(context.ui, words::hinge_parts_note);
        if (widgets::button(context.ui, f.id(".take_over"), words::hinge_takes_over))
            context.change(f.said(words::hinge_weighs), state::let_hinge_weigh(index));
    }
}

std::string bits_text(const PanelContext& context, const bits::BitOfEachSystem& list) {
    const std::string text = bits::names(list, context.ui.units);
    return text.empty() ? std::string(words::no_bit) : text;
}

const char* wall_words(joints::WallKind between) {
    switch (between) {
    case joints::WallKind::pin_and_face:
        return words::wall_pin_face;
    case joints::WallKind::pin_and_skin:
        return words::wall_pin_skin;
    case joints::WallKind::pin_and_hole:
        return words::wall_pin_hole;
    case joints::WallKind::pocket_and_skin:
        return words::wall_pocket_skin;
    case joints::WallKind::pocket_and_hole:
        return words::wall_pocket_hole;
    }
    return "";
}

void eye_rows(PanelContext& context, const joints::JointAnswer& j) {
    widgets::Ui& ui = context.ui;
    const std::string_view unit = unit_of(context, Quantity::length);
    const Hinge& hinge = j.place.hinge;
    const auto length = [&](double m) { return text_of(context, m, Quantity::length); };
    const auto from_wire = [&](bool tapped) {
        if (!tapped) return;
        widgets::went_in(ui, words::went_wire, length(hinge.wire_m));
        widgets::went_in(ui, words::went_eye, length(hinge.eye_inside_m));
        widgets::went_in(ui, words::went_turns, std::to_string(static_cast<int>(hinge.turns)));
    };
    from_wire(widgets::figure_row(ui, words::cut_row, number_of(context, j.eye.cut_m, Quantity::length), unit,
                                  words::cut_row_below, help::Topic::eye_wire));
    from_wire(widgets::figure_row(ui, words::bend_row, number_of(context, j.eye.mandrel_m, Quantity::length),
                                  unit, words::bend_row_below, help::Topic::eye_wire));
    from_wire(
        widgets::figure_row(ui, words::overbend_row,
                            number_of(context, j.eye.overbend * units::rad_from_deg(90.0), Quantity::angle),
                            unit_of(context, Quantity::angle), words::overbend_below, help::Topic::eye_wire));
    if (widgets::figure_row(ui, words::bit_row, bits_text(context, j.eye_bits), {}, {}, help::Topic::bits))
        widgets::went_in(ui, words::went_twist_width, length(j.eye.twist_outside_m));
    if (hinge.kind == document::HingeKind::pinned &&
        widgets::figure_row(ui, words::pin_bit_row, bits_text(context, j.pin_bits), {}, {},
                            help::Topic::bits))
        widgets::went_in(ui, words::went_pin, length(hinge.pin_diameter_m));
}

void play_rows(PanelContext& context, const joints::JointAnswer& j) {
    widgets::Ui& ui = context.ui;
    const std::string_view unit = unit_of(context, Quantity::length);
    const Hinge& hinge = j.place.hinge;
    const auto row = [&](const char* label, double value, Quantity quantity, std::string_view below) {
        if (!widgets::figure_row(ui, label, number_of(context, value, quantity),
                                 quantity == Quantity::angle ? unit_of(context, quantity) : unit, below,
                                 help::Topic::play))
            return;
        widgets::went_in(ui, words::went_eye, text_of(context, hinge.eye_inside_m, Quantity::length));
        const bool pinned = hinge.kind == document::HingeKind::pinned;
        widgets::went_in(ui, pinned ? words::went_pin : words::went_wire,
                         text_of(context, pinned ? hinge.pin_diameter_m : hinge.wire_m, Quantity::length));
    };
    row(words::play_row, j.play_per_eye_m, Quantity::length,
        std::string(words::play_sag) + " " + text_of(context, j.sag_rad, Quantity::angle));
    if (j.rocks_rad) row(words::rocks_row, *j.rocks_rad, Quantity::angle, words::rocks_below);
    if (!j.play) return;
    row(words::slop_fore_aft, j.play->fore_aft_m, Quantity::length, words::slop_below);
    row(words::slop_up_down, j.play->up_down_m, Quantity::length, {});
    row(words::slop_sideways, j.play->sideways_m, Quantity::length, {});
}

void strength_row(PanelContext& context, const wire::Strength& strength, double line_n) {
    widgets::Ui& ui = context.ui;
    const auto newtons = [](double n) { return widgets::number_text(n, Unit::one, 0); };
    if (!widgets::figure_row(ui, words::strength_row, newtons(strength.least_n), words::newton,
                             widgets::number_text(strength.safety, Unit::one, 1) + " " +
                                 words::strength_times,
                             help::Topic::strength))
        return;
    const auto part = [&](const char* label, double n) {
        if (n > 0.0) widgets::went_in(ui, label, newtons(n));
    };
    part(words::went_eye_opens, strength.eye_n);
    part(words::went_pull_out, strength.pull_out_n);
    part(words::went_pin_shears, strength.pin_shear_n);
    part(words::went_pin_bends, strength.pin_bend_n);
    part(words::went_wood_crushes, strength.wood_n);
    part(words::went_wall_shears, strength.wall_n);
    part(words::went_line, line_n);
}

void answer_rows(PanelContext& context, const joints::JointAnswer& j, double line_n) {
    widgets::subheading(context.ui, words::wire_group);
    eye_rows(context, j);
    play_rows(context, j);
    widgets::subheading(context.ui, words::walls_group);
    for (const auto& wall : j.walls) {
        std::string label = wall_words(wall.between);
        if (wall.hole) {
            label += ' ';
            label += std::to_string(*wall.hole + 1);
        }
        widgets::figure_row(context.ui, label, number_of(context, wall.thickness_m, Quantity::length),
                            unit_of(context, Quantity::length), {}, help::Topic::walls);
    }
    widgets::subheading(context.ui, words::strength_group);
    strength_row(context, j.strength, line_n);
    widgets::note(context.ui, words::strength_note);
}

} // namespace

void joint_hinge_rows(PanelContext& context, int index) {
    const auto& joint = context.document().joints[static_cast<std::size_t>(index)];
    const std::string id = "joints." + std::to_string(index) + ".hinge";
    if (widgets::toggle(context.ui, id, words::hinge_drawn, joint.hinge.has_value(),
                        words::hinge_drawn_below)) {
        context.change(label_of(words::hinge_drawn, words::joint_kind, index),
                       joint.hinge ? on_joint(index, [](document::Joint& j) { j.hinge.reset(); })
                                   : state::draw_hinge(index));
    }
    if (!joint.hinge) return;
    hinge_fields(context, index, *joint.hinge);
    const joints::JointsAnswer* answer = context.motion.joints.of(context.session);
    if (answer != nullptr && static_cast<std::size_t>(index) < answer->joints.size())
        answer_rows(context, answer->joints[static_cast<std::size_t>(index)], answer->line_n);
}

} // namespace evenfall::shell::steps
