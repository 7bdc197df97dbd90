#include "state/list_change.hpp"

#include "look/words_state.hpp"
#include "state/edits.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace evenfall::shell::state {
namespace {

/// Ends of the segments along the body, nose and tail included: a new cut or hole keeps away from them.
std::vector<double> cuts_m(const document::Document& d) {
    std::vector<double> cuts{0.0};
    for (const auto& joint : d.joints)
        cuts.push_back(joint.at_m);
    cuts.push_back(drawn_length_m(d));
    return cuts;
}

} // namespace

int ListChange::operator()(int i) const {
    if (how == changed_places) return i == at ? other : i == other ? at : i;
    if (how == put_in) return i < at ? i : i + 1;
    return i == at ? -1 : i < at ? i : i - 1;
}
ListChange taken_out(int at) {
    return {ListChange::taken_out, at};
}
ListChange put_in(int at) {
    return {ListChange::put_in, at};
}

namespace {

/// A reading with a part hung on that is there no longer is excluded with a note.
void follow_hung(document::Document& d, ListChange moves) {
    for (document::Reading& r : d.log) {
        const std::size_t hung = r.with.size();
        std::erase_if(r.with, [&](document::HungOn& on) {
            if (on.part) on.part = moves(*on.part);
            return on.part && *on.part < 0;
        });
        if (r.with.size() < hung) exclude_because(r, look::words::hung_part_is_gone);
    }
}

} // namespace

void follow(document::Document& d, document::Cause cause, ListChange moves) {
    if (cause == document::Cause::part_mass) follow_hung(d, moves);
    for (auto c = d.corrections.begin(); c != d.corrections.end();) {
        const int from = c->item.value_or(0);
        const bool meant = c->of == cause && (c->item || cause != document::Cause::carved_size);
        const int to = meant ? moves(from) : from;
        if (to != from) c->item = to;
        c = to < 0 ? d.corrections.erase(c) : c + 1;
    }
}

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

} // namespace evenfall::shell::state
