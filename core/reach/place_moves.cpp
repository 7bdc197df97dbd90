// Hook hangers and joints at another place.

#include "body/curve.hpp"
#include "body/hinge_place.hpp"
#include "materials/tackle.hpp"
#include "reach/costs.hpp"
#include "reach/moves.hpp"

#include <cmath>

namespace evenfall::reach {

namespace {

constexpr double step_m = 5e-4;
constexpr int most_hanger_steps = 30;
constexpr int most_joint_steps = 12;
constexpr double same_place_m = 1.5e-3; ///< of a hanger and what hangs on it

Sentence where_to(int steps, double sign) {
    return length_text(steps * step_m) + (sign > 0.0 ? " farther aft" : " farther forward");
}

std::string hanger_text(const document::Document& d, std::size_t k) {
    return d.hangers[k].name.empty() ? "Hanger " + std::to_string(k + 1)
                                     : "Hanger “" + d.hangers[k].name + "”";
}

/// The parts that hang on a belly hanger.
std::vector<std::size_t> hung_on(const document::Document& d, const document::Hanger& hanger) {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < d.parts.size(); ++i) {
        if (d.parts[i].stage == Stage::rigged && std::abs(d.parts[i].at_m.x - hanger.x_m) < same_place_m)
            out.push_back(i);
    }
    return out;
}

void add_hanger(const Piece& piece, std::size_t k, std::vector<Move>& out) {
    const document::Document& document = piece.document;
    const document::Hanger& hanger = document.hangers[k];
    const std::vector<std::size_t> parts = hung_on(document, hanger);
    if (hanger.on != document::HangerOn::belly || parts.empty()) return;
    for (const double sign : {1.0, -1.0}) {
        Move m;
        m.kind = Kind::hanger_moved;
        m.most = most_hanger_steps;
        m.once = cost_of(m.kind).once;
        m.each = cost_of(m.kind).each * step_m * 1e3;
        m.apply = [k, parts, sign](document::Document& d, int steps) {
            const shape::Curve belly(d.shape.belly);
            const double from_m = d.hangers[k].x_m;
            const double to_m = from_m + sign * steps * step_m;
            d.hangers[k].x_m = to_m;
            for (const std::size_t i : parts) {
                d.parts[i].at_m.x += to_m - from_m;
                d.parts[i].at_m.z += belly.at(to_m).value - belly.at(from_m).value;
            }
        };
        m.says = [name = hanger_text(document, k), sign](int steps) {
            return Sentence(name + " ") + where_to(steps, sign);
        };
        out.push_back(std::move(m));
    }
}

void add_joint(std::size_t k, std::vector<Move>& out) {
    for (const double sign : {1.0, -1.0}) {
        Move m;
        m.kind = Kind::joint_moved;
        m.most = most_joint_steps;
        m.once = cost_of(m.kind).once;
        m.each = cost_of(m.kind).each * step_m * 1e3;
        m.apply = [k, sign](document::Document& d, int steps) {
            document::Joint& joint = d.joints[k];
            const double by_m = sign * steps * step_m;
            const document::Hinge hinge = joint.hinge.value_or(document::Hinge{});
            const joints::Pin pin{joint.at_m + hinge.pin_aft_m, hinge.pin_off_m};
            joint.at_m += by_m;
            for (document::Pocket& pocket : d.pockets) {
                if (!joints::holds_axis(pocket, pin)) continue;
                pocket.x_from_m += by_m;
                pocket.x_to_m += by_m;
            }
        };
        m.says = [k, sign](int steps) {
            return Sentence("Joint " + std::to_string(k + 1) + " ") + where_to(steps, sign);
        };
        out.push_back(std::move(m));
    }
}

} // namespace

void add_place_moves(const Piece& piece, std::vector<Move>& out) {
    if (piece.is_wood || piece.done < Stage::hardware) {
        for (std::size_t k = 0; k < piece.document.hangers.size(); ++k)
            add_hanger(piece, k, out);
    }
    if (!piece.is_wood) return;
    for (std::size_t k = 0; k < piece.document.joints.size(); ++k)
        add_joint(k, out);
}

} // namespace evenfall::reach
