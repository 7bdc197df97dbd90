#include "output/swim_json.hpp"

#include "bench/beats.hpp"
#include "document/json_text.hpp"
#include "output/trees.hpp"

namespace evenfall::output {

namespace {

Tree beats_tree(const std::optional<swim::Beats>& b) {
    if (!b) return nullptr;
    return {{"low", number(b->low)}, {"mid", number(b->mid)}, {"high", number(b->high)}};
}

Tree swing_tree(const std::optional<swim::Beats>& b) {
    if (!b) return nullptr;
    return {{"low", millimetres(b->low)}, {"mid", millimetres(b->mid)}, {"high", millimetres(b->high)}};
}

Tree ratio_tree(const std::array<double, 3>& ratio) {
    return Tree::array({number(ratio[0]), number(ratio[1]), number(ratio[2])});
}

Tree change_tree(const swim::Change& c) {
    return {{"beats", told_word(c.beats)},
            {"swing", told_word(c.swing)},
            {"beats_ratio", ratio_tree(c.beats_ratio)},
            {"swing_ratio", ratio_tree(c.swing_ratio)},
            {"both_swim", c.both_swim},
            {"swims_before", c.swims_before}};
}

} // namespace

std::string swim_json(const document::Document& document, const swim::SwimAnswer& a,
                      const swim::Change* against_other, std::optional<double> speed_m_s) {
    std::optional<swim::Beats> beats;
    int counts = 0;
    if (a.beats_per_m) {
        const bench::KnownBeats known = bench::known_beats(document, *a.beats_per_m);
        beats = known.per_m;
        counts = known.counts;
    }
    Tree t{{"verdict", way_word(a.way)},
           {"swims", a.swims},
           {"of", a.of},
           {"beats_per_m", beats_tree(beats)},
           {"counts", counts},
           {"beats_per_m_worked_out", beats_tree(a.beats_per_m)},
           {"joints", list_of(a.joints,
                              [](const swim::JointSwing& j) {
                                  return Tree{{"swing_deg", degrees(j.swing_rad)}, {"at_stop", j.at_stop}};
                              })},
           {"lag_deg", list_of(a.lag_rad, [](double rad) { return degrees(rad); })},
           {"tail_swing_mm", swing_tree(a.tail_swing_m)}};
    if (speed_m_s) {
        std::optional<swim::Beats> a_second = beats;
        if (beats)
            a_second =
                swim::Beats{beats->low * *speed_m_s, beats->mid * *speed_m_s, beats->high * *speed_m_s};
        t["speed_m_s"] = number(*speed_m_s);
        t["beats_per_s"] = beats_tree(a_second);
    }
    if (against_other != nullptr) t["against"] = change_tree(*against_other);
    t["caution"] = a.caution.empty() ? Tree(nullptr) : Tree(a.caution);
    t["left_out"] = swim_left_out();
    return document::laid_out_text(t);
}

const char* way_word(swim::Way way) {
    switch (way) {
    case swim::Way::swims:
        return "swims";
    case swim::Way::swims_once_jerked:
        return "swims once jerked";
    case swim::Way::leans:
        return "leans";
    case swim::Way::straight:
        return "runs straight";
    case swim::Way::irregular:
        return "irregular";
    case swim::Way::glides:
        return "glides wide, no beat";
    }
    return "";
}

const char* told_word(swim::Told told) {
    switch (told) {
    case swim::Told::more:
        return "more";
    case swim::Told::less:
        return "less";
    case swim::Told::not_told:
        return "no change that can be told";
    }
    return "";
}

const char* swim_left_out() {
    return "For level swimming at a steady speed, seen from above; roll, pitch, a bending tail, swinging "
           "hooks and pauses are left out. Never checked against a real lure: count yours. Beats a metre "
           "are known to about a third before you count, to a tenth after. How wide it swings may be half or "
           "double. Whether a lure without a tail starts by itself cannot be told.";
}

} // namespace evenfall::output
