#include "document/work_done.hpp"

#include <algorithm>
#include <utility>

namespace evenfall::document {

namespace {

bool same_fill(const std::optional<Fill>& a, const std::optional<Fill>& b) {
    if (!a || !b) return !a && !b;
    return a->material == b->material && a->mass_kg == b->mass_kg && a->length_m == b->length_m &&
           a->stock_diameter_m == b->stock_diameter_m;
}

/// The change whose readings are all marked already, or a new one that marks those that are not.
int next_change(Document& document) {
    int last = -1;
    bool unmarked = false;
    const auto is_unmarked = [](const Reading& r) { return !r.before_change && r.stage >= Stage::drilled; };
    for (const Reading& r : document.log) {
        last = std::max(last, r.before_change.value_or(-1));
        unmarked = unmarked || is_unmarked(r);
    }
    if (!unmarked) return last;
    const int change = std::min(last + 1, max_hole_changes - 1);
    for (Reading& r : document.log) {
        if (is_unmarked(r)) r.before_change = change;
    }
    return change;
}

} // namespace

LogState log_state(const Document& document) {
    LogState state;
    for (const Reading& r : document.log) {
        if (!r.excluded) state.lure = std::max(state.lure, lure_of(r));
    }
    for (const Reading& r : document.log) {
        if (r.excluded || lure_of(r) != state.lure || is_of_swim(r.kind)) continue;
        // A board is weighed before there is a lure, whatever stage stands beside it.
        if (r.kind != ReadingKind::board) state.stage = std::max(state.stage, r.stage);
        state.has_readings = true;
    }
    return state;
}

Stage stage_of_holes(const Document& document) {
    bool any = false;
    Stage stage = Stage::leaded;
    for (const Hole& hole : document.holes) {
        if (hole.use == HoleUse::fixed || hole.depth_m <= 0.0) continue;
        any = true;
        if (hole.use == HoleUse::ballast) return Stage::carved;
        if (hole.use == HoleUse::drilled) stage = Stage::drilled;
    }
    return any ? stage : Stage::carved;
}

Document as_it_lies(Document document, Stage stage) {
    for (Hole& hole : document.holes) {
        if (hole.use == HoleUse::fixed || hole.depth_m <= 0.0) continue;
        if (stage >= Stage::leaded)
            hole.use = HoleUse::leaded;
        else if (stage >= Stage::drilled && hole.use == HoleUse::ballast)
            hole.use = HoleUse::drilled;
    }
    return document;
}

Document as_it_lies(Document document) {
    const Stage stage = std::max(log_state(document).stage, stage_of_holes(document));
    return as_it_lies(std::move(document), stage);
}

void begin_anew(std::vector<Hole>& holes) {
    for (Hole& hole : holes) {
        if (hole.use == HoleUse::drilled || hole.use == HoleUse::leaded) hole.use = HoleUse::ballast;
    }
}

void put_down(Document& document, Reading reading) {
    if (lure_of(reading) > log_state(document).lure) begin_anew(document.holes);
    document.log.push_back(std::move(reading));
}

Document before_change(Document document, int change) {
    for (Hole& hole : document.holes) {
        const auto then = std::find_if(hole.before.begin(), hole.before.end(),
                                       [&](const HoleBefore& b) { return b.change.value_or(0) >= change; });
        if (then == hole.before.end()) continue;
        hole.depth_m = then->depth_m;
        hole.fill = then->fill;
    }
    return document;
}

void change_holes(Document& document, const std::vector<Hole>& holes) {
    const std::size_t old = document.holes.size();
    const auto is_changed = [&](std::size_t i) {
        return i >= old || holes[i].depth_m != document.holes[i].depth_m ||
               !same_fill(holes[i].fill, document.holes[i].fill);
    };
    bool any = false;
    for (std::size_t i = 0; i < holes.size(); ++i)
        any = any || is_changed(i);
    const int change = any ? next_change(document) : -1;
    for (std::size_t i = 0; i < holes.size(); ++i) {
        Hole hole = holes[i];
        hole.before = i < old ? document.holes[i].before : std::vector<HoleBefore>{};
        const bool known = !hole.before.empty() && hole.before.back().change.value_or(0) >= change;
        if (is_changed(i) && change >= 0 && !known) {
            HoleBefore was;
            was.change = change;
            if (i < old) {
                was.depth_m = document.holes[i].depth_m;
                was.fill = document.holes[i].fill;
            }
            hole.before.push_back(std::move(was));
        }
        if (i < old)
            document.holes[i] = std::move(hole);
        else
            document.holes.push_back(std::move(hole));
    }
}

} // namespace evenfall::document
