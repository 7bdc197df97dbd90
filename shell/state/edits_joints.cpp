// Changes of joints: what is cut there, what hangs there, and what follows a joint that moves.

#include "body.hpp"
#include "look/words_state.hpp"
#include "state/edits.hpp"
#include "state/list_change.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <utility>

namespace evenfall::shell::state {
namespace {

bool is_of(const document::Correction& c, int segment) {
    return c.of == document::Cause::carved_size && c.item == segment;
}

/// Weights of a single segment follow it. A reading whose segment was divided, or joined to its neighbour, is
/// excluded with a note.
void follow_in_log(document::Document& d, int fore, int aft, ListChange moves) {
    for (auto& r : d.log) {
        if (!r.segment) continue;
        if (*r.segment < fore || *r.segment > aft) {
            r.segment = moves(*r.segment);
            continue;
        }
        const auto number = static_cast<std::size_t>(*r.segment);
        std::string why = look::words::was_segment;
        why += number < d.segment_names.size() ? d.segment_names[number] : std::to_string(number + 1);
        exclude_because(r, why);
        r.segment = fore;
    }
}

/// Segments that nobody named are called by their number from the nose, whatever came or went before them.
void number_segments(std::vector<std::string>& names) {
    const std::string_view unnamed = look::words::new_segment;
    for (std::size_t i = 0; i < names.size(); ++i) {
        const std::string& name = names[i];
        if (name.starts_with(unnamed) && name.find_first_not_of("0123456789", unnamed.size()) == name.npos)
            names[i] = std::string(unnamed) + std::to_string(i + 1);
    }
}

joints::Pin pin_of(const document::Joint& joint) {
    const document::Hinge hinge = joint.hinge.value_or(document::Hinge{});
    return {joint.at_m + hinge.pin_aft_m, hinge.pin_off_m};
}

/// Pockets that hold a joint's pin in `before` keep their place about it where it stands now.
void carry_pockets(document::Document& d, const document::Document& before, const document::Joint& was,
                   const document::Joint& is) {
    const joints::Pin from = pin_of(was);
    const joints::Pin to = pin_of(is);
    for (std::size_t p = 0; p < d.pockets.size(); ++p) {
        if (!joints::holds_axis(before.pockets[p], from)) continue;
        document::Pocket& pocket = d.pockets[p];
        pocket.x_from_m += to.x_m - from.x_m;
        pocket.x_to_m += to.x_m - from.x_m;
        pocket.y_m += to.y_m - from.y_m;
    }
}

/// Cuts the lure once more, with a joint made like another.
void cut_at(document::Document& d, double x_m, document::Joint joint) {
    if (joint.hinge) {
        joint.hinge->mass_kg.reset();   // that was of the other one's wire
        joint.hinge->upper_z_m.reset(); // eyes stand as high as the body allows here
        joint.hinge->lower_z_m.reset();
    }
    joint.at_m = x_m;
    std::size_t fore = 0;
    while (fore < d.joints.size() && d.joints[fore].at_m < joint.at_m)
        ++fore;
    const auto place = static_cast<std::ptrdiff_t>(fore);
    const int cut = static_cast<int>(fore);
    const ListChange moves = put_in(cut + 1);
    follow_in_log(d, cut, cut, moves);
    follow(d, document::Cause::carved_size, moves);
    follow(d, document::Cause::hinge_mass, put_in(cut));
    // Both halves are of the wood that was measured.
    for (std::size_t i = 0, count = d.corrections.size();
         i < count && d.corrections.size() < document::max_corrections; ++i) {
        if (!is_of(d.corrections[i], cut)) continue;
        d.corrections.push_back(d.corrections[i]);
        d.corrections.back().item = cut + 1;
    }
    for (auto& part : d.parts) {
        if (part.segment)
            part.segment = *part.segment == cut && part.at_m.x > joint.at_m ? cut + 1 : moves(*part.segment);
    }
    d.joints.insert(d.joints.begin() + place, joint);
    d.segment_names.resize(std::max(d.segment_names.size(), fore + 1));
    d.segment_names.insert(d.segment_names.begin() + place + 1, look::words::new_segment);
    number_segments(d.segment_names);
}

} // namespace

Edit add_joint() {
    return on_document([](document::Document& d) {
        const document::Joint like = d.joints.empty() ? document::Joint{} : d.joints.front();
        cut_at(d, roomiest_x_m(d, [](const document::Hole&) { return true; }), like);
    });
}

Edit copy_joint(int index) {
    return on_document([index](document::Document& d) {
        if (index < 0 || index >= static_cast<int>(d.joints.size())) return;
        const auto fore = static_cast<std::size_t>(index);
        const document::Joint like = d.joints[fore];
        const double aft_m = fore + 1 < d.joints.size() ? d.joints[fore + 1].at_m : drawn_length_m(d);
        cut_at(d, std::round(0.5 * (like.at_m + aft_m) * 1e4) / 1e4, like);
    });
}

Edit set_joint(int index, const document::Joint& joint) {
    return on_document([index, joint](document::Document& d) {
        if (index < 0 || index >= static_cast<int>(d.joints.size())) return;
        document::Joint& was = d.joints[static_cast<std::size_t>(index)];
        carry_pockets(d, document::Document(d), was, joint);
        was = joint;
    });
}

Edit spread_joints() {
    return on_document([](document::Document& d) {
        const document::Document before = d;
        const auto segments = static_cast<double>(d.joints.size() + 1);
        for (std::size_t k = 0; k < d.joints.size(); ++k) {
            const double share = static_cast<double>(k + 1) / segments;
            d.joints[k].at_m = std::round(drawn_length_m(d) * share * 1e4) / 1e4;
            carry_pockets(d, before, before.joints[k], d.joints[k]);
        }
    });
}

Edit same_for_all_joints(int index) {
    return on_document([index](document::Document& d) {
        if (index < 0 || index >= static_cast<int>(d.joints.size())) return;
        const document::Joint made = d.joints[static_cast<std::size_t>(index)];
        for (document::Joint& joint : d.joints) {
            const document::Joint was = std::exchange(joint, made);
            joint.at_m = was.at_m;
            if (!joint.hinge) continue;
            // Eyes stand as high as the body allows at their own joint.
            joint.hinge->upper_z_m = was.hinge ? was.hinge->upper_z_m : std::nullopt;
            joint.hinge->lower_z_m = was.hinge ? was.hinge->lower_z_m : std::nullopt;
            // What was weighed was this joint's own wire.
            joint.hinge->mass_kg = was.hinge ? was.hinge->mass_kg : std::nullopt;
        }
    });
}

Edit remove_joint(int index) {
    return on_document([index](document::Document& d) {
        if (index < 0 || index >= static_cast<int>(d.joints.size())) return;
        const ListChange moves = taken_out(index + 1);
        follow_in_log(d, index, index + 1, moves);
        // A correction of one half only does not apply to both.
        std::erase_if(d.corrections, [index, all = d.corrections](const document::Correction& c) {
            if (!is_of(c, index) && !is_of(c, index + 1)) return false;
            return std::none_of(all.begin(), all.end(), [&](const document::Correction& other) {
                return is_of(other, 2 * index + 1 - *c.item) && other.factor == c.factor &&
                       other.spread == c.spread;
            });
        });
        follow(d, document::Cause::carved_size, moves);
        follow(d, document::Cause::hinge_mass, taken_out(index));
        for (auto& part : d.parts) {
            if (part.segment && *part.segment > index) --*part.segment;
        }
        d.joints.erase(d.joints.begin() + index);
        if (index + 1 < static_cast<int>(d.segment_names.size())) {
            d.segment_names.erase(d.segment_names.begin() + index + 1);
            number_segments(d.segment_names);
        }
    });
}

std::vector<int> parts_of_hinge(const document::Document& d, int joint) {
    constexpr double near_m = 0.015;
    constexpr double least_belly_share = 0.35; // below this height above the belly it is a hook's hanger
    std::vector<int> out;
    if (joint < 0 || joint >= static_cast<int>(d.joints.size())) return out;
    const auto away = [&](std::size_t j, double x_m) { return std::abs(d.joints[j].at_m - x_m); };
    for (std::size_t i = 0; i < d.parts.size(); ++i) {
        const document::Part& part = d.parts[i];
        if (part.stage != Stage::hardware || part.embedded <= 0.0 || materials::is_soft(part.material))
            continue;
        const double here = away(static_cast<std::size_t>(joint), part.at_m.x);
        bool nearest = here <= near_m;
        for (std::size_t j = 0; j < d.joints.size(); ++j)
            nearest = nearest && here <= away(j, part.at_m.x);
        const double belly = shape::Curve(d.shape.belly).at(part.at_m.x).value;
        const double back = shape::Curve(d.shape.back).at(part.at_m.x).value;
        if (nearest && part.at_m.z > belly + least_belly_share * (back - belly))
            out.push_back(static_cast<int>(i));
    }
    return out;
}

Edit let_hinge_weigh(int joint) {
    return on_document([joint](document::Document& d) {
        if (joint < 0 || joint >= static_cast<int>(d.joints.size())) return;
        auto& hinge = d.joints[static_cast<std::size_t>(joint)].hinge;
        if (!hinge) return;
        hinge->weighs = true;
        const std::vector<int> typed = parts_of_hinge(d, joint);
        for (auto i = typed.rbegin(); i != typed.rend(); ++i)
            d = remove_part(*i)(std::move(d));
    });
}

Edit draw_hinge(int index) {
    return [index](document::Document d) {
        // Where its wire is typed in as parts it is not to be weighed twice.
        const bool typed = !parts_of_hinge(d, index).empty();
        return on_joint(index, [typed](document::Joint& joint) {
            document::Hinge hinge;
            hinge.weighs = !typed;
            hinge.temper = document::usual_temper;
            hinge.glue = document::HingeGlue::epoxy;
            joint.hinge = hinge;
        })(std::move(d));
    };
}

} // namespace evenfall::shell::state
