#include "cli/commands.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "evenfall.hpp"
#include "output.hpp"

#include <algorithm>
#include <cmath>
#include <memory>

namespace evenfall::cli {

namespace {

using units::number_text;
using units::Unit;

std::string angle(double rad) {
    return number_text(rad, Unit::degree, 1) + "°";
}

std::string both(const std::array<double, 2>& rad) {
    return angle(rad[0]) + " / " + angle(rad[1]);
}

std::string newtons(double n) {
    return number_text(n, Unit::one, 0) + " N";
}

std::string bits_text(const bits::BitOfEachSystem& list, const Numbers& in) {
    const std::string text = bits::names(list, in.units);
    return text.empty() ? "no standard bit" : text;
}

std::string swing_table(const document::Document& document, const evenfall::joints::JointsAnswer& answer,
                        const Numbers& in) {
    using enum Table::Side;
    const std::string mm = std::string(1, ' ').append(in.length_symbol());
    Table table({left, right, right, right, right, right, right, right});
    table.row({"joint", "at" + mm, "bare", "finished", "wire stops", "eyes meet", "play" + mm, "sag"});
    const auto where_stopped = [](const std::array<double, 2>& rad) {
        return std::min(rad[0], rad[1]) < evenfall::joints::most_swing_rad ? both(rad) : "–";
    };
    for (std::size_t k = 0; k < answer.joints.size(); ++k) {
        const evenfall::joints::JointAnswer& j = answer.joints[k];
        table.row({std::to_string(k + 1), in.length(document.joints[k].at_m, 1),
                   both({j.bare[0].angle_rad, j.bare[1].angle_rad}),
                   both({j.finished[0].angle_rad, j.finished[1].angle_rad}), where_stopped(j.wire_rad),
                   where_stopped(j.eyes_rad), in.thickness(j.play_per_eye_m, 1), angle(j.sag_rad)});
    }
    return table.text(in);
}

std::string slop_lines(const evenfall::joints::JointsAnswer& answer, const Numbers& in) {
    const std::string mm = std::string(1, ' ').append(in.length_symbol());
    std::string text;
    for (std::size_t k = 0; k < answer.joints.size(); ++k) {
        const auto& [play, rocks] = std::pair(answer.joints[k].play, answer.joints[k].rocks_rad);
        if (rocks) {
            text += "Joint " + std::to_string(k + 1) +
                    " hangs on one eye: the tail rocks out of the level by up to " + angle(*rocks) +
                    " before the eye binds, if pocket and wood let it\n";
        }
        if (!play) continue;
        text += "Joint " + std::to_string(k + 1) + ", linked eyes, play from stop to stop: fore-aft " +
                in.thickness(play->fore_aft_m) + mm + ", up-down " + in.thickness(play->up_down_m) + mm +
                ", sideways " + in.thickness(play->sideways_m) + mm + "\n";
    }
    return text.empty() ? text : '\n' + text;
}

std::string wire_table(const evenfall::joints::JointsAnswer& answer, const Numbers& in) {
    const std::string mm = std::string(1, ' ').append(in.length_symbol());
    using enum Table::Side;
    Table table({left, right, right, right, right, left, right, left});
    table.row({"joint", "eyes", "cut" + mm, "bend round" + mm, "over-bend 90° by", "bit for the twist",
               "holds", "weakest"});
    for (std::size_t k = 0; k < answer.joints.size(); ++k) {
        const evenfall::joints::JointAnswer& j = answer.joints[k];
        table.row({std::to_string(k + 1), std::to_string(j.place.eyes.size()), in.length(j.eye.cut_m, 1),
                   in.thickness(j.eye.mandrel_m), angle(j.eye.overbend * units::rad_from_deg(90.0)),
                   bits_text(j.eye_bits, in), newtons(j.strength.least_n),
                   output::weakest_word(j.strength.weakest)});
    }
    return table.text(in);
}

std::string joints_text(const document::Document& document, const evenfall::joints::JointsAnswer& answer,
                        const Numbers& in) {
    const std::string mm = std::string(1, ' ').append(in.length_symbol());
    if (answer.joints.empty()) return document.name + "\n\nOne piece: no joints.\n";
    std::string text = document.name + "\n\nSwing, tail to port / to starboard, with " +
                       in.thickness(answer.films.on_faces_m) + mm + " of film on each face\n\n" +
                       swing_table(document, answer, in) + slop_lines(answer, in);
    text += "\nAll joints together " + both(answer.wrap_rad);
    const auto radius = [&](double m) { return std::isfinite(m) ? in.length(m, 0) : std::string("–"); };
    const auto& turn_m = answer.turn_radius_m;
    if (std::isfinite(std::min(turn_m[0], turn_m[1])))
        text += ", tightest even turn " + radius(turn_m[0]) + " / " + radius(turn_m[1]) + mm + " radius";
    text +=
        "\n\nWire and pins, against a line of " + newtons(answer.line_n) + "\n\n" + wire_table(answer, in);
    text += "\nOver-bend: spring hard wire opens again, soft wire hardly. Worked from a yield of 0.8 of the "
            "strength (common practice, no source): try a scrap.";
    text += "\nStrengths are estimates: pull one hinge of your own until it gives before you trust a lure to "
            "it.\n";
    for (const Problem& warning : answer.warnings)
        text += "! " + warning.sentence.text(in.units) + '\n';
    return text;
}

Ended run(const PresetOptions& o, const Printing& in) {
    const Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return document.problems();
    const auto answer = evenfall::joints::joint_answers(*document);
    if (!answer.ok()) return answer.problems();
    o.json ? print(output::joints_json(*document, *answer, in.json))
           : print(joints_text(*document, *answer, in), in);
    return done;
}

} // namespace

void joints(Options& options) {
    declare<PresetOptions>(options, "how far each joint swings, its wire, bits, walls and strength", run);
}

} // namespace evenfall::cli
