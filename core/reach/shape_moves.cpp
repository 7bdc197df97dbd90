// Thicker or thinner: from side to side, belly or back.

#include "body/curve.hpp"
#include "reach/costs.hpp"
#include "reach/moves.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::reach {

namespace {

constexpr double step_m = 1e-4;
constexpr double most_share = 0.25; ///< of the thickness or height, either way

// Shares of the length: a line moves fully between the first and the last, and is faired into the ends; one
// half of it is faired out in the middle.
constexpr double fair_share = 0.15;
constexpr double half_from_share = 0.35;
constexpr double half_to_share = 0.65;

enum class Stretch { whole, fore, aft };

/// How far a point of a line moves, as a share of the change.
double share_at(double along, Stretch stretch, bool faired) {
    const double ends = faired ? std::min({1.0, along / fair_share, (1.0 - along) / fair_share}) : 1.0;
    const double fore = std::clamp((half_to_share - along) / (half_to_share - half_from_share), 0.0, 1.0);
    return ends * (stretch == Stretch::whole ? 1.0 : stretch == Stretch::fore ? fore : 1.0 - fore);
}

/// Moves a line of the drawing up by so much.
void move_line(document::CurvePoints& line, double up_m, Stretch stretch) {
    const double length_m = line.back().x_m;
    const bool faired = line.size() > 3; // else the line has no point between its ends to be moved alone
    for (document::CurvePoint& p : line)
        p.value += up_m * share_at(p.x_m / length_m, stretch, faired);
}

/// What hangs below the belly goes up and down with it.
void carry_hooks(document::Document& d, const document::CurvePoints& old_belly) {
    const shape::Curve was(old_belly);
    const shape::Curve is(d.shape.belly);
    for (document::Part& part : d.parts) {
        if (part.stage != Stage::rigged || part.at_m.z > was.at(part.at_m.x).value) continue;
        part.at_m.z += is.at(part.at_m.x).value - was.at(part.at_m.x).value;
    }
}

Sentence line_says(const char* line, const char* word, int steps, double length_m, Stretch stretch) {
    const double from = (stretch == Stretch::aft ? half_to_share : fair_share) * length_m;
    const double to = (stretch == Stretch::fore ? half_from_share : 1.0 - fair_share) * length_m;
    return Sentence(line) + length_text(steps * step_m) + word + " from " + bare_length_text(from, 0) +
           " to " + length_text(to, 0) + ", faired out beyond";
}

void add_line(const Piece& piece, Kind kind, Stretch stretch, std::vector<Move>& out) {
    const document::Shape& shape = piece.document.shape;
    const double length_m = shape.back.back().x_m;
    const double height_m = shape::Curve(shape.back).greatest() - shape::Curve(shape.belly).least();
    const bool belly = kind == Kind::belly;
    for (const bool fuller : {true, false}) {
        Move m;
        m.kind = kind;
        m.most = static_cast<int>(std::floor(most_share * height_m / step_m));
        m.once = cost_of(kind).once;
        m.each = cost_of(kind).each * step_m * 1e3;
        const double up_m = (belly == fuller ? -1.0 : 1.0) * step_m;
        m.apply = [belly, up_m, stretch](document::Document& d, int steps) {
            const document::CurvePoints old_belly = d.shape.belly;
            move_line(belly ? d.shape.belly : d.shape.back, steps * up_m, stretch);
            if (belly) carry_hooks(d, old_belly);
        };
        m.says = [=](int steps) {
            return belly ? line_says("Belly ", fuller ? " fuller" : " flatter", steps, length_m, stretch)
                         : line_says("Back ", fuller ? " higher" : " lower", steps, length_m, stretch);
        };
        out.push_back(std::move(m));
    }
}

} // namespace

void add_shape_moves(const Piece& piece, std::vector<Move>& out) {
    if (!piece.is_wood) return;
    const document::Shape& shape = piece.document.shape;
    const double thickness_m = 2.0 * shape::Curve(shape.half_width).greatest();
    for (const double sign : {1.0, -1.0}) {
        Move m;
        m.kind = Kind::thickness;
        m.most = static_cast<int>(std::floor(most_share * thickness_m / step_m));
        m.once = cost_of(m.kind).once;
        m.each = cost_of(m.kind).each * step_m * 1e3;
        m.apply = [=](document::Document& d, int steps) {
            for (document::CurvePoint& p : d.shape.half_width)
                p.value *= 1.0 + sign * steps * step_m / thickness_m;
        };
        m.says = [=](int steps) {
            return Sentence("Body ") + length_text(steps * step_m) + (sign > 0.0 ? " thicker" : " thinner") +
                   " from side to side, " + length_text(thickness_m + sign * steps * step_m) +
                   " at the thickest";
        };
        out.push_back(std::move(m));
    }
    for (const Kind kind : {Kind::belly, Kind::back}) {
        const auto& line = kind == Kind::belly ? shape.belly : shape.back;
        add_line(piece, kind, Stretch::whole, out);
        if (line.size() < 4) continue;
        add_line(piece, kind, Stretch::fore, out);
        add_line(piece, kind, Stretch::aft, out);
    }
}

} // namespace evenfall::reach
