#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "evenfall.hpp"
#include "look/words_joints.hpp"
#include "look/words_steps.hpp"
#include "widgets/button.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using state::ItemKind;

std::optional<double> pounds(const std::optional<double>& n) {
    return n ? std::optional<double>(*n / units::pound_force_n) : std::nullopt;
}

void joint_editor(PanelContext& context, int index) {
    using document::Joint;
    Joint joint = context.document().joints[static_cast<std::size_t>(index)];
    Fields f(context, "joints." + std::to_string(index), words::joint_kind, index);
    f.number<&Joint::at_m>(".at", words::joint_at, joint, words::joint_at_below);
    f.number<&Joint::gap_m>(".gap", words::joint_gap, joint, words::joint_gap_below, {{}, 0.0001});
    f.number<&Joint::relief_fore_rad>(".relief_fore", words::relief_fore, joint, words::relief_below);
    f.number<&Joint::relief_aft_rad>(".relief_aft", words::relief_aft, joint);
    f.put([&] { return state::set_joint(index, joint); });
    joint_hinge_rows(context, index);
    widgets::gap();
    const std::size_t count = context.document().joints.size();
    if (widgets::button(context.ui, f.id(".copy"), words::copy_joint, widgets::ButtonKind::plain,
                        count < document::max_joints)) {
        context.change(words::copy_joint, state::copy_joint(index));
    }
    if (count > 1 &&
        widgets::button(context.ui, f.id(".for_all"), words::same_for_all, widgets::ButtonKind::plain)) {
        context.change(words::same_for_all, state::same_for_all_joints(index));
    }
    if (widgets::button(context.ui, f.id(".remove"), words::remove_joint, widgets::ButtonKind::danger)) {
        context.change(std::string(words::take_away) + " " + words::joint_kind + " " +
                           std::to_string(index + 1),
                       state::remove_joint(index));
        context.view.selection = {};
    }
    widgets::gap();
}

} // namespace

void joints_panel(PanelContext& context) {
    const auto& document = context.document();
    widgets::heading(context.ui, words::joints_head, words::joints_below);
    swim_change_rows(context);
    caution_section(context, "section.joints.cautions",
                    {{words::burrs_title, cautions::burrs}, {words::wire_title, cautions::wire}});
    if (document.joints.empty()) widgets::paragraph(context.ui, words::no_joints);
    for (int i = 0; i < static_cast<int>(document.joints.size()); ++i) {
        const std::string title = std::string(words::joint_title) + " " + std::to_string(i + 1);
        const std::string below = segment_name(document, i) + " | " + segment_name(document, i + 1);
        const auto& joint = document.joints[static_cast<std::size_t>(i)];
        const std::string at = number_of(context, joint.at_m, Quantity::length);
        const bool chosen = context.row_chosen(ItemKind::joint, i);
        if (widgets::list_row(
                context.ui, "joints." + std::to_string(i),
                {title, below, at, unit_of(context, Quantity::length), chosen, !chosen, true})) {
            context.choose(ItemKind::joint, i);
        }
        if (chosen) joint_editor(context, i);
    }
    widgets::gap();
    const bool room = document.joints.size() < document::max_joints;
    if (widgets::button(context.ui, "joints.add", words::add_joint, widgets::ButtonKind::plain, room)) {
        context.change(words::add_joint, state::add_joint());
    }

    if (document.joints.size() > 1 && widgets::button(context.ui, "joints.spread", words::spread_joints))
        context.change(words::spread_joints, state::spread_joints());
    swing_rows(context);
    if (!document.joints.empty()) {
        constexpr document::NumberField line = document::field_of<&document::Targets::line_n>;
        optional_number(
            context, "joints.line", words::line_field, pounds(document.targets.line_n), 20.0,
            {Quantity::number, line.min, line.max, 1.0, 0}, words::line_absent, words::line_field,
            [](std::optional<double> v) {
                return state::on_document([v](document::Document& d) {
                    d.targets.line_n = v ? std::optional<double>(units::n_from_lbf(*v)) : std::nullopt;
                });
            },
            words::pound_force_below);
    }

    glue_rows(context);
    widgets::subheading(context.ui, words::segments_group, help::Topic::segments);
    const auto& answers = context.evaluation().answers;
    for (int s = 0; s < static_cast<int>(document.segment_names.size()); ++s) {
        const auto index = static_cast<std::size_t>(s);
        const std::string label = std::string(words::segment_title) + " " + std::to_string(s + 1);
        if (auto named = widgets::text_field(context.ui, "joints.segment." + std::to_string(s), label,
                                             document.segment_names[index])) {
            context.change(std::string(words::name) + " " + words::of + " " + label,
                           state::on_document([index, text = *named](document::Document& d) {
                               if (index < d.segment_names.size()) d.segment_names[index] = text;
                           }));
        }
        if (index < answers.segments.size()) {
            const auto& segment = answers.segments[index];
            widgets::note(context.ui, text_of(context, segment.mass.kg, Quantity::mass) + words::separator +
                                          signed_mass(context, segment.in_water.kg) + " " +
                                          words::in_the_water);
        }
    }
}

} // namespace evenfall::shell::steps
