#include "state/edits.hpp"

#include "body.hpp"

#include "look/words_state.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <string_view>
#include <utility>

namespace evenfall::shell::state {
namespace {

template <class T>
Edit on_entry(std::vector<T> document::Document::*list, int index, std::function<void(T&)> change) {
    return [=](document::Document d) {
        auto& entries = d.*list;
        if (index >= 0 && index < static_cast<int>(entries.size()))
            change(entries[static_cast<std::size_t>(index)]);
        return d;
    };
}

/// A change of a list: an entry removed, inserted or exchanged with another.
struct ListChange {
    enum { taken_out, put_in, changed_places } how;
    int at = 0;
    int other = 0;

    /// New index of an entry; −1 where it was removed.
    [[nodiscard]] int operator()(int i) const {
        if (how == changed_places) return i == at ? other : i == other ? at : i;
        if (how == put_in) return i < at ? i : i + 1;
        return i == at ? -1 : i < at ? i : i - 1;
    }
};
ListChange taken_out(int at) {
    return {ListChange::taken_out, at};
}
ListChange put_in(int at) {
    return {ListChange::put_in, at};
}

/// Corrections of a list's entries follow them. An absent index means the first entry; for carved size, the
/// whole body.
void follow(document::Document& d, document::Cause cause, ListChange moves) {
    for (auto c = d.corrections.begin(); c != d.corrections.end();) {
        const int from = c->item.value_or(0);
        const bool meant = c->of == cause && (c->item || cause != document::Cause::carved_size);
        const int to = meant ? moves(from) : from;
        if (to != from) c->item = to;
        c = to < 0 ? d.corrections.erase(c) : c + 1;
    }
}

template <class T>
Edit remove_entry(std::vector<T> document::Document::*list, int index,
                  document::Cause cause = document::Cause::none,
                  document::Cause other = document::Cause::none) {
    return [=](document::Document d) {
        auto& entries = d.*list;
        if (index < 0 || index >= static_cast<int>(entries.size())) return d;
        entries.erase(entries.begin() + index);
        follow(d, cause, taken_out(index));
        follow(d, other, taken_out(index));
        return d;
    };
}

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

/// Ends of the segments along the body, nose and tail included: a new cut or hole keeps away from them.
std::vector<double> cuts_m(const document::Document& d) {
    std::vector<double> cuts{0.0};
    for (const auto& joint : d.joints)
        cuts.push_back(joint.at_m);
    cuts.push_back(drawn_length_m(d));
    return cuts;
}

/// The station that is farthest from every cut and every hole that `counts`.
double roomiest_x_m(const document::Document& d, const std::function<bool(const document::Hole&)>& counts) {
    const auto cuts = cuts_m(d);
    const double length = drawn_length_m(d);
    double best = 0.5 * length;
    double best_room = -1.0;
    constexpr int stations = 200;
    for (int i = 1; i < stations; ++i) {
        const double x = length * i / stations;
        double room = std::numeric_limits<double>::infinity();
        for (double cut : cuts)
            room = std::min(room, std::abs(x - cut));
        for (const auto& hole : d.holes) {
            if (counts(hole)) room = std::min(room, std::abs(x - hole.x_m) - 0.5 * hole.diameter_m);
        }
        if (room > best_room + 1e-9) {
            best_room = room;
            best = x;
        }
    }
    return std::round(best * 1e4) / 1e4;
}

} // namespace

Edit on_joint(int index, std::function<void(document::Joint&)> change) {
    return on_entry(&document::Document::joints, index, std::move(change));
}
Edit on_hole(int index, std::function<void(document::Hole&)> change) {
    return on_entry(&document::Document::holes, index, std::move(change));
}
Edit on_pocket(int index, std::function<void(document::Pocket&)> change) {
    return on_entry(&document::Document::pockets, index, std::move(change));
}
Edit on_hanger(int index, std::function<void(document::Hanger&)> change) {
    return on_entry(&document::Document::hangers, index, std::move(change));
}
Edit on_part(int index, std::function<void(document::Part&)> change) {
    return on_entry(&document::Document::parts, index, std::move(change));
}
Edit on_coat(int index, std::function<void(document::Coat&)> change) {
    return on_entry(&document::Document::coats, index, std::move(change));
}

Edit on_reading(int index, std::function<void(document::Reading&)> change) {
    return on_entry(&document::Document::log, index, std::move(change));
}

Edit add_reading(document::Reading reading) {
    return on_document(
        [reading = std::move(reading)](document::Document& d) { document::put_down(d, reading); });
}

Edit remove_reading(int index) {
    return remove_entry(&document::Document::log, index);
}

void exclude_because(document::Reading& reading, const std::string& why) {
    reading.excluded = true;
    if (reading.note.size() + why.size() + 2 <= document::max_text)
        reading.note += (reading.note.empty() ? "" : "; ") + why;
}

Edit toggle_excluded(int index) {
    return on_reading(index, [](document::Reading& r) { r.excluded = !r.excluded; });
}

namespace {

/// Segments that nobody named are called by their number from the nose, whatever came or went before them.
void number_segments(std::vector<std::string>& names) {
    const std::string_view unnamed = look::words::new_segment;
    for (std::size_t i = 0; i < names.size(); ++i) {
        const std::string& name = names[i];
        if (name.starts_with(unnamed) && name.find_first_not_of("0123456789", unnamed.size()) == name.npos)
            names[i] = std::string(unnamed) + std::to_string(i + 1);
    }
}

} // namespace

Edit add_joint() {
    return on_document([](document::Document& d) {
        document::Joint joint = d.joints.empty() ? document::Joint{} : d.joints.front();
        joint.at_m = roomiest_x_m(d, [](const document::Hole&) { return true; });
        std::size_t fore = 0;
        while (fore < d.joints.size() && d.joints[fore].at_m < joint.at_m)
            ++fore;
        const auto place = static_cast<std::ptrdiff_t>(fore);
        const int cut = static_cast<int>(fore);
        const ListChange moves = put_in(cut + 1);
        follow_in_log(d, cut, cut, moves);
        follow(d, document::Cause::carved_size, moves);
        // Both halves are of the wood that was measured.
        for (std::size_t i = 0, count = d.corrections.size();
             i < count && d.corrections.size() < document::max_corrections; ++i) {
            if (!is_of(d.corrections[i], cut)) continue;
            d.corrections.push_back(d.corrections[i]);
            d.corrections.back().item = cut + 1;
        }
        for (auto& part : d.parts) {
            if (part.segment)
                part.segment =
                    *part.segment == cut && part.at_m.x > joint.at_m ? cut + 1 : moves(*part.segment);
        }
        d.joints.insert(d.joints.begin() + place, joint);
        d.segment_names.resize(std::max(d.segment_names.size(), fore + 1));
        d.segment_names.insert(d.segment_names.begin() + place + 1, look::words::new_segment);
        number_segments(d.segment_names);
    });
}

namespace {

joints::Pin pin_of(const document::Joint& joint) {
    const document::Hinge hinge = joint.hinge.value_or(document::Hinge{});
    return {joint.at_m + hinge.pin_aft_m, hinge.pin_off_m};
}

/// Replaces a joint; the pockets that held its pin's axis keep their place about it.
void put_joint(document::Document& d, std::size_t index, const document::Joint& joint) {
    const joints::Pin was = pin_of(d.joints[index]);
    const joints::Pin is = pin_of(joint);
    for (document::Pocket& pocket : d.pockets) {
        if (!joints::holds_axis(pocket, was)) continue;
        pocket.x_from_m += is.x_m - was.x_m;
        pocket.x_to_m += is.x_m - was.x_m;
        pocket.y_m += is.y_m - was.y_m;
    }
    d.joints[index] = joint;
}

} // namespace

Edit set_joint(int index, const document::Joint& joint) {
    return on_document([index, joint](document::Document& d) {
        if (index < 0 || index >= static_cast<int>(d.joints.size())) return;
        put_joint(d, static_cast<std::size_t>(index), joint);
    });
}

Edit spread_joints() {
    return on_document([](document::Document& d) {
        const auto segments = static_cast<double>(d.joints.size() + 1);
        // From the tail on or from the nose on, so that no pocket is taken for that of a joint it only
        // passes.
        const auto at = [&](std::size_t k) {
            return std::round(drawn_length_m(d) * static_cast<double>(k + 1) / segments * 1e4) / 1e4;
        };
        const document::Document before = d;
        for (std::size_t k = 0; k < d.joints.size(); ++k) {
            document::Document one = before;
            document::Joint joint = before.joints[k];
            joint.at_m = at(k);
            put_joint(one, k, joint);
            d.joints[k] = joint;
            for (std::size_t p = 0; p < d.pockets.size(); ++p) {
                if (joints::holds_axis(before.pockets[p], pin_of(before.joints[k])))
                    d.pockets[p] = one.pockets[p];
            }
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

Edit add_hole() {
    return on_document([](document::Document& d) {
        document::Hole hole;
        if (!d.holes.empty()) {
            // Same bit as the last hole, with the same limits.
            hole.diameter_m = d.holes.back().diameter_m;
            hole.max_depth_m = d.holes.back().max_depth_m;
            hole.wall_m = d.holes.back().wall_m;
            hole.end = d.holes.back().end;
            hole.cap = d.holes.back().cap;
        }
        hole.x_m = roomiest_x_m(
            d, [](const document::Hole& other) { return other.from == document::HoleFrom::belly; });
        d.holes.push_back(hole);
    });
}

Edit plug_hole(int index) {
    return on_hole(index, [](document::Hole& hole) {
        hole.use = document::HoleUse::fixed;
        hole.fill.reset();
        hole.cap = document::Cap{"dowel", hole.depth_m};
    });
}

Edit remove_hole(int index) {
    return remove_entry(&document::Document::holes, index, document::Cause::fill_mass,
                        document::Cause::cap_mass);
}

Edit duplicate_hole(int index) {
    return on_document([index](document::Document& d) {
        if (index < 0 || index >= static_cast<int>(d.holes.size())) return;
        document::Hole copy = d.holes[static_cast<std::size_t>(index)];
        copy.x_m += copy.diameter_m + copy.wall_m;
        copy.name.clear();
        copy.before.clear();
        if (copy.use != document::HoleUse::fixed) copy.use = document::HoleUse::ballast;
        d.holes.insert(d.holes.begin() + index + 1, copy);
        follow(d, document::Cause::fill_mass, put_in(index + 1));
        follow(d, document::Cause::cap_mass, put_in(index + 1));
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

Edit add_hanger() {
    return on_document([](document::Document& d) {
        document::Hanger hanger;
        const auto is_tie = [](const document::Hanger& h) { return h.on == document::HangerOn::nose; };
        if (std::none_of(d.hangers.begin(), d.hangers.end(), is_tie)) {
            hanger.name = look::words::new_line_tie;
            hanger.on = document::HangerOn::nose;
            hanger.z_m = 0.5 * (d.shape.back.front().value + d.shape.belly.front().value);
        } else {
            hanger.x_m = roomiest_x_m(
                d, [](const document::Hole& other) { return other.from == document::HoleFrom::belly; });
        }
        d.hangers.push_back(hanger);
    });
}

Edit remove_hanger(int index) {
    return remove_entry(&document::Document::hangers, index, document::Cause::hanger_mass);
}

Edit add_part(Stage stage) {
    return on_document([stage](document::Document& d) {
        document::Part part;
        part.stage = stage;
        part.name = stage == Stage::rigged ? look::words::new_hook : look::words::new_eye;
        part.mass_kg = stage == Stage::rigged ? 0.0015 : 0.0005;
        part.at_m.x = std::round(0.4 * drawn_length_m(d) * 1e3) / 1e3;
        part.at_m.z = stage == Stage::rigged ? -0.7 * drawn_height_m(d) : 0.0;
        part.embedded = stage == Stage::rigged ? 0.0 : 0.5;
        d.parts.push_back(part);
    });
}

Edit remove_part(int index) {
    return remove_entry(&document::Document::parts, index, document::Cause::part_mass);
}

Edit duplicate_part(int index) {
    return on_document([index](document::Document& d) {
        if (index < 0 || index >= static_cast<int>(d.parts.size())) return;
        d.parts.insert(d.parts.begin() + index + 1, d.parts[static_cast<std::size_t>(index)]);
        follow(d, document::Cause::part_mass, put_in(index + 1));
    });
}

Edit add_pocket() {
    return on_document([](document::Document& d) {
        document::Pocket pocket;
        pocket.name = look::words::new_pocket;
        const double length = drawn_length_m(d);
        pocket.x_from_m = length - 0.010;
        pocket.x_to_m = length;
        pocket.width_m = 0.0015;
        d.pockets.push_back(pocket);
    });
}

Edit remove_pocket(int index) {
    return remove_entry(&document::Document::pockets, index);
}

Edit add_coat(Stage stage) {
    return on_document([stage](document::Document& d) {
        document::Coat coat;
        coat.stage = stage;
        if (stage == Stage::sealed) {
            coat.name = look::words::new_sealer;
            coat.kind = document::CoatKind::soaks;
            coat.material = "ca";
            coat.mass_kg = 0.001;
        } else if (stage == Stage::painted) {
            coat.name = look::words::new_paint;
            coat.material = "acrylic_paint";
            coat.thickness_m = 0.00004;
        } else {
            coat.name = look::words::new_clear_coat;
            coat.thickness_m = 0.0003;
        }
        // After the last coat of its own or an earlier stage: the list is the order of application.
        auto place = d.coats.begin();
        for (auto it = d.coats.begin(); it != d.coats.end(); ++it) {
            if (it->stage <= stage) place = it + 1;
        }
        for (auto it = d.coats.begin(); it != d.coats.end(); ++it) {
            if (it->stage == stage) coat.material = it->material;
        }
        follow(d, document::Cause::coat_amount, put_in(static_cast<int>(place - d.coats.begin())));
        d.coats.insert(place, coat);
    });
}

Edit remove_coat(int index) {
    return remove_entry(&document::Document::coats, index, document::Cause::coat_amount);
}

Edit move_coat(int index, int by) {
    return on_document([index, by](document::Document& d) {
        const int other = index + by;
        const int count = static_cast<int>(d.coats.size());
        if (index < 0 || other < 0 || index >= count || other >= count) return;
        std::swap(d.coats[static_cast<std::size_t>(index)], d.coats[static_cast<std::size_t>(other)]);
        follow(d, document::Cause::coat_amount, {ListChange::changed_places, index, other});
    });
}

} // namespace evenfall::shell::state
