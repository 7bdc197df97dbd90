#include "starter/lead_holes.hpp"

#include "base/trade.hpp"
#include "bench/lead/lead_plan.hpp"
#include "body/body.hpp"
#include "body/hole_checks.hpp"
#include "workshop/joint_answers.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace evenfall::starter {

namespace {

/// Bits from wide to narrow, by what half the body's width there allows.
constexpr std::array bits_m{10.0e-3, 8.0e-3, 6.5e-3, 5.0e-3, 4.0e-3, 3.0e-3};
constexpr double least_depth_m = 5e-3;
constexpr double step_m = 1e-3;
constexpr double usual_wall_m = 3e-3;
constexpr double thin_lure_wall_m = 1.5e-3;

/// A hole with the greatest depth that the wood allows there.
struct Place {
    document::Hole hole;
    double depth_m = 0.0;
};

/// More wood between two holes than must be: the lure may become a little shorter, by a sketch for one.
constexpr double room_to_shrink_m = 0.0003;

/// A stretch of one segment.
struct Stretch {
    double from_m = 0.0;
    double to_m = 0.0;
};

/// A long segment is several stretches, so that its holes do not all crowd where it is deepest.
std::vector<Stretch> stretches_of(const shape::Body& body) {
    constexpr double longest_share = 0.25;
    std::vector<Stretch> out;
    for (const shape::Segment& s : body.segments) {
        const double length_m = s.x_to_m - s.x_from_m;
        const double parts = std::max(1.0, std::round(length_m / (longest_share * body.lines->length_m())));
        for (double k = 0.0; k < parts; k += 1.0)
            out.push_back({s.x_from_m + k / parts * length_m, s.x_from_m + (k + 1.0) / parts * length_m});
    }
    return out;
}

/// Holes of one width under the belly of a stretch, where they go deepest.
class Packing {
public:
    Packing(const document::Document& document, const shape::Body& body) : document_(document), body_(body) {}

    /// At most `most` holes, of the bit that makes the most room for lead.
    [[nodiscard]] std::vector<document::Hole> holes_in(const Stretch& s, std::size_t most,
                                                       double share_of_width) const {
        const double width_m = 2.0 * body_.lines->at(0.5 * (s.from_m + s.to_m)).half_width_m;
        std::vector<document::Hole> best;
        double best_m3 = 0.0;
        for (const double bit_m : bits_m) {
            if (bit_m > share_of_width * width_m) continue;
            std::vector<document::Hole> holes;
            double room_m3 = 0.0;
            for (const Place& place : chosen(places(s, bit_m), most)) {
                holes.push_back(place.hole);
                room_m3 += bit_m * bit_m * (place.depth_m - document::Cap{}.length_m);
            }
            if (room_m3 <= best_m3) continue;
            best_m3 = room_m3;
            best = std::move(holes);
        }
        return best;
    }

private:
    [[nodiscard]] std::vector<Place> places(const Stretch& s, double bit_m) const {
        std::vector<Place> all;
        for (double x_m = std::ceil((s.from_m + 0.5 * bit_m) / step_m) * step_m; x_m <= s.to_m - 0.5 * bit_m;
             x_m += step_m) {
            Place place;
            place.hole.x_m = std::round(x_m * 1e4) / 1e4;
            place.hole.diameter_m = bit_m;
            place.hole.wall_m = bit_m < 6e-3 ? thin_lure_wall_m : usual_wall_m;
            place.hole.max_depth_m =
                std::floor(1.6 * body_.lines->at(place.hole.x_m).half_height_m * 1e3) / 1e3; // a fifth stays
            place.depth_m = depth_at(place.hole);
            if (place.depth_m >= least_depth_m) all.push_back(place);
        }
        return all;
    }

    /// The deepest that keep their walls to each other, nose to tail.
    static std::vector<Place> chosen(std::vector<Place> all, std::size_t most) {
        std::stable_sort(all.begin(), all.end(),
                         [](const Place& a, const Place& b) { return a.depth_m > b.depth_m + 1e-6; });
        std::vector<Place> out;
        for (const Place& place : all) {
            const double apart_m = place.hole.diameter_m + place.hole.wall_m + room_to_shrink_m;
            const bool clear = std::all_of(out.begin(), out.end(), [&](const Place& other) {
                return std::abs(other.hole.x_m - place.hole.x_m) >= apart_m;
            });
            if (clear && out.size() < most) out.push_back(place);
        }
        std::sort(out.begin(), out.end(),
                  [](const Place& a, const Place& b) { return a.hole.x_m < b.hole.x_m; });
        return out;
    }

    [[nodiscard]] double depth_at(const document::Hole& hole) const {
        document::Document trial = document_;
        trial.holes = {hole};
        trial.holes[0].depth_m = least_depth_m;
        const std::vector<holes::Bore> bores{holes::place(hole, body_)};
        if (bores[0].segment < 0 || !holes::check(trial, body_, bores).empty()) return 0.0;
        return holes::free_depth(trial, 0, body_, bores, {}).depth_m;
    }

    const document::Document& document_;
    const shape::Body& body_;
};

struct Attempt {
    double share;       ///< of the stretches, from the nose
    std::size_t each;   ///< holes in a stretch
    double width_share; ///< bit over the body's width
};
constexpr std::array attempts{Attempt{0.6, 2, 0.5}, Attempt{1.0, 2, 0.5}, Attempt{1.0, 4, 0.6}};

/// Degrees from what is asked, the nearest first.
constexpr std::array hang_steps_deg{0.0, -2.0, 2.0, -4.0, -7.0, 4.0, -10.0};

void drop_empty(document::Document& d) {
    std::erase_if(d.holes, [](const document::Hole& h) { return h.depth_m <= 0.0; });
}

bool has_warnings(const document::Document& d) {
    const auto evaluation = evaluate(d);
    if (!evaluation || !evaluation->answers.warnings.empty()) return true;
    const auto joints = joints::joint_answers(d, evaluation->body);
    return !joints || !joints->warnings.empty();
}

Problem refusal(const std::optional<Problem>& why) {
    Problem refused{ProblemCode::cannot_be_met, "/fall", "",
                    "No place for the lead keeps this lure upright."};
    if (why) {
        refused.limit = why->limit;
        refused.sentence = why->sentence;
    }
    return refused;
}

} // namespace

Outcome<document::Document> with_lead(const document::Document& body) {
    const auto bare = evaluate(body);
    if (!bare) return bare.problems();
    const Packing packing(body, bare->body);
    const std::vector<Stretch> stretches = stretches_of(bare->body);
    std::array<std::vector<document::Hole>, attempts.size()> tried;
    for (std::size_t a = 0; a < attempts.size(); ++a) {
        const auto used = static_cast<std::size_t>(
            std::ceil(attempts[a].share * static_cast<double>(stretches.size()) - 1e-9));
        for (std::size_t s = 0; s < used; ++s) {
            for (const document::Hole& hole :
                 packing.holes_in(stretches[s], attempts[a].each, attempts[a].width_share))
                if (tried[a].size() < document::max_holes) tried[a].push_back(hole);
        }
    }
    std::optional<Problem> why;
    for (const double hang_deg : hang_steps_deg) {
        for (std::size_t a = 0; a < attempts.size(); ++a) {
            if (a > 0 && tried[a].size() == tried[a - 1].size()) continue; // no other holes
            document::Document d = body;
            d.targets.matters_more = document::MattersMore::fall; // what is short then tells what to try
            d.targets.pitch_rad += hang_deg * units::degree_rad;
            d.holes = tried[a];
            Outcome<LeadPlan> plan = plan_lead(d);
            if (!plan) return plan.problems();
            if (plan->met) {
                document::Document planned = std::move(plan->document);
                planned.targets.matters_more = body.targets.matters_more;
                drop_empty(planned);
                if (!has_warnings(planned)) return planned;
            } else {
                why = plan->shortfalls.front();
                // Too heavy or too light whatever it hangs at: another hang does not help.
                if (a + 1 == attempts.size() && why->path != "/targets/pitch_deg") return refusal(why);
            }
        }
    }
    return refusal(why);
}

} // namespace evenfall::starter
