#include "workshop/swim_limits.hpp"

#include "base/sentence.hpp"
#include "base/trade.hpp"
#include "water/fall/drag.hpp"
#include "water/swim/draws.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::swim {

namespace {

struct Limits {
    double least, most;
    [[nodiscard]] bool hold(double value) const { return value >= least && value <= most; }
};
constexpr Limits long_for_height{4.0, 7.0};
constexpr Limits high_for_width{1.2, 2.5};
constexpr Limits swing_rad{units::rad_from_deg(5.0), most_swing_rad};
constexpr std::size_t least_segments = 2;
constexpr double segment_for_height = 0.8;
constexpr double tie_for_length = 0.08;
constexpr double weight_for_mass = 0.15;
constexpr double least_reynolds = 1e4;
constexpr double face_for_height = 0.5; ///< own estimate: a nose cut off higher than that is a flat face
constexpr double lip_for_length = 0.03; ///< own estimate: what sits further ahead of the nose is a lip

Sentence times(double value) {
    return Amount{value, units::Quantity::number, 1};
}

Sentence percent(double share) {
    return Amount{100.0 * share, units::Quantity::number, 0} + Sentence(" %");
}

class Check {
public:
    Check(const document::Document& document, const shape::Body& body, const Held& held)
        : document_(document), body_(body), held_(held) {
        for (const fall::Strip& s : fall::strips(*body.lines)) {
            width_m_ = std::max(width_m_, s.width_m);
            height_m_ = std::max(height_m_, s.chord_m);
        }
    }

    void shape() {
        const double length = body_.lines->length_m();
        if (!long_for_height.hold(length / height_m_))
            add("/shape", "a body 4 to 7 times as long as high; this one is " + times(length / height_m_) +
                              " times as long");
        if (!high_for_width.hold(height_m_ / width_m_))
            add("/shape", "a body 1.2 to 2.5 times as high as wide; this one is " +
                              times(height_m_ / width_m_) + " times as high");
        const double face = 2.0 * body_.lines->at(body_.lines->nose_m()).half_height_m;
        if (face > face_for_height * height_m_)
            add("/shape", "a nose that is no flat face; this one is cut off " + length_text(face) + " high");
        const double reynolds = Tow{}.speed_m_s * length / held_.kinematic_m2_s;
        if (reynolds < least_reynolds)
            add("/shape", "a lure long enough for this water; this one has only " + length_text(length));
    }

    void segments() {
        for (std::size_t i = 0; i < body_.segments.size(); ++i) {
            const double from = i == 0 ? body_.lines->nose_m() : document_.joints[i - 1].at_m;
            const double to = i == document_.joints.size() ? body_.lines->tail_m() : document_.joints[i].at_m;
            double height = 0.0;
            for (const fall::Strip& s : fall::strips(*body_.lines)) {
                if (s.x_m >= from && s.x_m <= to) height = std::max(height, s.chord_m);
            }
            if (to - from < segment_for_height * height)
                add("/joints", "segments at least 0.8 times as long as high; segment " +
                                   std::to_string(i + 1) + " is " + length_text(to - from) + " long and " +
                                   length_text(height) + " high");
        }
    }

    void swings(const std::vector<Joint>& joints) {
        for (std::size_t i = 0; i < joints.size(); ++i) {
            for (const double swing : joints[i].stop_rad) {
                if (swing_rad.hold(swing)) continue;
                add("/joints/" + std::to_string(i),
                    "joints that swing by " +
                        range_text(swing_rad.least, swing_rad.most, units::Quantity::angle) +
                        " to either side; joint " + std::to_string(i + 1) + " swings by " +
                        angle_text(swing));
                break;
            }
        }
    }

    void tie_and_weight() {
        const double length = body_.lines->length_m();
        if (held_.tie_x_m > tie_for_length * length)
            add("/hangers/" + std::to_string(held_.tie),
                "a line tied within " + length_text(tie_for_length * length) +
                    " of the nose; here it is tied " + length_text(held_.tie_x_m) + " behind it");
        for (std::size_t i = 0; i < document_.parts.size(); ++i) {
            if (document_.parts[i].at_m.x < -lip_for_length * length)
                add("/parts/" + std::to_string(i), "a lure without a lip; part " + std::to_string(i + 1) +
                                                       " sits " + length_text(-document_.parts[i].at_m.x) +
                                                       " ahead of the nose");
        }
        if (std::abs(held_.in_water_kg) > weight_for_mass * held_.mass_kg)
            add("",
                "a lure that weighs less than 15 % of its mass in water, or lifts by less; this one has " +
                    percent(std::abs(held_.in_water_kg) / held_.mass_kg));
    }

    void number() {
        const std::size_t n = body_.segments.size();
        if (n < least_segments || n > most_segments)
            add("/joints", "lures of " + std::to_string(least_segments) + " to " +
                               std::to_string(most_segments) + " segments; this one has " +
                               std::to_string(n));
    }

    Problems problems;

private:
    void add(std::string path, Sentence what) {
        problems.push_back({ProblemCode::swim_unknown, std::move(path), "",
                            "How it swims can be told only of " + std::move(what) + "."});
    }

    const document::Document& document_;
    const shape::Body& body_;
    const Held& held_;
    double width_m_ = 0.0, height_m_ = 0.0;
};

} // namespace

Problems beyond_limits(const document::Document& document, const shape::Body& body,
                       const std::vector<Joint>& joints, const Held& held) {
    Check check(document, body, held);
    check.number();
    const bool is_chain = check.problems.empty();
    check.shape();
    if (is_chain) {
        check.segments();
        check.swings(joints);
    }
    check.tie_and_weight();
    return check.problems;
}

} // namespace evenfall::swim
