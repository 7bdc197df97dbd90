#include "look/words_state.hpp"
#include "state/edits.hpp"
#include "state/list_change.hpp"

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

Edit toggle_stands(int index) {
    return on_reading(index, [](document::Reading& r) { r.stands = !r.stands; });
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
