// Deeper and wider holes, and another one.

#include "base/number_text.hpp"
#include "body/hole_checks.hpp"
#include "materials/bits.hpp"
#include "reach/costs.hpp"
#include "reach/moves.hpp"
#include "reach/shop_bits.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::reach {

namespace {

constexpr double deeper_step_m = 1e-3;
constexpr int most_deeper = 30;
constexpr int most_wider = 4;
constexpr double places_apart_m = 3e-3;
constexpr double least_depth_m = 5e-3;
constexpr double usual_wall_m = 3e-3;

/// "hole 1 (front), hole 3"; "all holes" of several that are all.
std::string holes_text(const document::Document& d, const std::vector<std::size_t>& holes, bool all) {
    if (all && holes.size() > 1) return "all holes";
    std::string text;
    for (const std::size_t i : holes)
        text += (text.empty() ? "h" : ", h") + hole_text(i, d.holes[i].name).substr(1);
    return text;
}

/// A move of each hole alone, and of all of them together.
template <class Make>
void for_each_and_all(const std::vector<std::size_t>& holes, const Make& make) {
    for (const std::size_t i : holes)
        make(std::vector<std::size_t>{i}, false);
    if (holes.size() > 1) make(holes, true);
}

void add_deeper(const Piece& piece, std::vector<Move>& out) {
    const document::Document& document = piece.document;
    std::vector<std::size_t> stopped; // by the builder's own stop, or by what is drilled
    for (const lead::Candidate& c : piece.candidates) {
        if (c.depth_is_fixed || c.limit.stop == holes::DepthStop::bit) stopped.push_back(c.hole);
    }
    for_each_and_all(stopped, [&](const std::vector<std::size_t>& holes, bool all) {
        Move m;
        m.kind = Kind::deeper_holes;
        m.most = most_deeper;
        m.once = cost_of(m.kind).once * static_cast<double>(holes.size());
        m.each = cost_of(m.kind).each * deeper_step_m * 1e3 * static_cast<double>(holes.size());
        m.apply = [holes](document::Document& d, int steps) {
            for (const std::size_t i : holes) {
                document::Hole& hole = d.holes[i];
                const double by_m = steps * deeper_step_m;
                hole.max_depth_m = std::max(hole.max_depth_m, hole.depth_m) + by_m;
                if (hole.use == document::HoleUse::drilled) hole.depth_m += by_m;
            }
        };
        m.says = [&document, holes, all](int steps) {
            return "Up to " + length_text(steps * deeper_step_m) + " deeper in " +
                   holes_text(document, holes, all);
        };
        out.push_back(std::move(m));
    });
}

/// The bit so many sizes wider; absent where the shop has none.
std::optional<double> wider_m(const std::vector<double>& bits, double diameter_m, int sizes) {
    const auto next = std::upper_bound(bits.begin(), bits.end(), diameter_m + 1e-5);
    if (bits.end() - next < sizes) return std::nullopt;
    return next[sizes - 1];
}

void add_wider(const Piece& piece, const std::vector<double>& bits, std::vector<Move>& out) {
    const document::Document& document = piece.document;
    std::vector<std::size_t> free;
    for (const lead::Candidate& c : piece.candidates) {
        if (!c.depth_is_fixed && wider_m(bits, document.holes[c.hole].diameter_m, most_wider))
            free.push_back(c.hole);
    }
    for_each_and_all(free, [&](const std::vector<std::size_t>& holes, bool all) {
        Move m;
        m.kind = Kind::wider_bits;
        m.most = most_wider;
        m.once = cost_of(m.kind).once * static_cast<double>(holes.size());
        m.each = cost_of(m.kind).each * static_cast<double>(holes.size());
        m.apply = [holes, bits](document::Document& d, int steps) {
            for (const std::size_t i : holes) {
                document::Hole& hole = d.holes[i];
                const double to_m = wider_m(bits, hole.diameter_m, steps).value_or(hole.diameter_m);
                // A rod goes with its hole.
                if (hole.fill && hole.fill->stock_diameter_m)
                    *hole.fill->stock_diameter_m += to_m - hole.diameter_m;
                hole.diameter_m = to_m;
            }
        };
        m.says = [&document, bits, holes, all](int steps) -> Sentence {
            const double was_m = document.holes[holes.front()].diameter_m;
            const double to_m = wider_m(bits, was_m, steps).value_or(was_m);
            const bool alike = std::all_of(holes.begin(), holes.end(), [&](std::size_t i) {
                return std::abs(document.holes[i].diameter_m - was_m) < 1e-5;
            });
            if (!alike)
                return "Bits " + std::to_string(steps) +
                       (steps > 1 ? " sizes wider in " : " size wider in ") +
                       holes_text(document, holes, all);
            return "Bit of " + bits::bit_text(to_m) + " instead of " + bits::bit_text(was_m) + " in " +
                   holes_text(document, holes, all);
        };
        out.push_back(std::move(m));
    });
}

/// Looks for places of another hole, the present ones as deep as the plan may drill them.
class Places {
public:
    explicit Places(const Piece& piece)
        : body_(*piece.inputs.body), trial_(piece.document), bores_(piece.inputs.bores) {
        for (const lead::Candidate& c : piece.candidates) {
            if (!c.depth_is_fixed && c.upper_m > 0.0) planned_.emplace_back(c.hole, c.limit.depth_m);
        }
        trial_.holes.emplace_back();
        bores_.emplace_back();
    }

    /// The deepest between two places, of one bit; absent where none is deep enough.
    [[nodiscard]] std::optional<document::Hole> deepest(double from_m, double to_m,
                                                        const document::Hole& like) {
        std::optional<document::Hole> best;
        double best_m = least_depth_m;
        for (double x_m = from_m; x_m <= to_m; x_m += places_apart_m) {
            document::Hole& hole = trial_.holes.back();
            hole = like;
            hole.x_m = std::round(x_m * 2e3) / 2e3;
            const double half_m = body_.lines->at(hole.x_m).half_height_m;
            hole.max_depth_m = std::floor(1.6 * half_m * 1e3) / 1e3; // a fifth stays
            bores_.back() = holes::place(hole, body_);
            if (bores_.back().segment < 0) continue;
            const double depth_m =
                holes::free_depth(trial_, trial_.holes.size() - 1, body_, bores_, planned_).depth_m;
            if (depth_m <= best_m) continue;
            best_m = depth_m;
            best = hole;
        }
        return best;
    }

private:
    const shape::Body& body_;
    document::Document trial_;
    std::vector<holes::Bore> bores_;
    std::vector<std::pair<std::size_t, double>> planned_;
};

/// A hole from the belly as the lure's others are.
document::Hole usual_hole(const Piece& piece) {
    document::Hole hole;
    hole.wall_m = usual_wall_m;
    if (piece.candidates.empty()) return hole;
    const document::Hole& first = piece.document.holes[piece.candidates.front().hole];
    hole.diameter_m = first.diameter_m;
    hole.wall_m = first.wall_m;
    hole.end = first.end;
    hole.cap = first.cap;
    hole.fill = document::Fill{piece.candidates.front().material, 0.0, {}, {}};
    return hole;
}

void add_another(const Piece& piece, const std::vector<double>& bits, std::vector<Move>& out) {
    if (piece.document.holes.size() >= document::max_holes) return;
    if (!piece.is_wood && piece.done >= Stage::sealed) return;
    Places places(piece);
    const document::Hole usual = usual_hole(piece);
    std::vector<double> widths{usual.diameter_m};
    const auto thin = std::lower_bound(bits.begin(), bits.end(), 0.7 * usual.diameter_m);
    if (thin != bits.end() && *thin < usual.diameter_m) widths.push_back(*thin);
    for (const shape::Segment& s : piece.inputs.body->segments) {
        const double middle_m = 0.5 * (s.x_from_m + s.x_to_m);
        for (const auto& [from_m, to_m] : {std::pair{s.x_from_m, middle_m}, std::pair{middle_m, s.x_to_m}}) {
            for (const double width_m : widths) {
                document::Hole like = usual;
                like.diameter_m = width_m;
                const auto hole = places.deepest(from_m + 0.5 * width_m, to_m - 0.5 * width_m, like);
                if (!hole) continue;
                Move m;
                m.kind = Kind::another_hole;
                m.once = cost_of(m.kind).once;
                m.apply = [hole = *hole](document::Document& d, int) { d.holes.push_back(hole); };
                m.says = [hole = *hole](int) {
                    return "Another hole under the belly, bit of " + bits::bit_text(hole.diameter_m) + ", " +
                           length_text(hole.x_m) + " from the nose";
                };
                out.push_back(std::move(m));
            }
        }
    }
}

} // namespace

void add_hole_moves(const Piece& piece, std::vector<Move>& out) {
    const std::vector<double> bits = shop_bits_m(piece.document);
    add_deeper(piece, out);
    add_wider(piece, bits, out);
    add_another(piece, bits, out);
}

} // namespace evenfall::reach
