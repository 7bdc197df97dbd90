// An evaluation that reuses what another one worked through has the same answers, bit for bit: after any
// edit, and whatever lure the other one was of.

#include "bench/uncertainty/random.hpp"
#include "support/random_lures.hpp"

#include <catch2/catch_test_macros.hpp>

#include <functional>
#include <vector>

using namespace evenfall;

namespace {

class Numbers {
public:
    explicit Numbers(const Evaluation& evaluation) {
        const Answers& a = evaluation.answers;
        add(a.mass.kg, a.mass_sigma.kg, a.displaced_m3, a.in_water.kg, a.in_water_sigma.kg, a.g_m, a.b_m,
            a.bg_m, a.pitch_rad, a.roll_rad, a.fall, a.under_water);
        for (const SegmentAnswer& s : a.segments)
            add(s.wood_m3, s.displaced_m3, s.mass.kg, s.in_water.kg, s.g_m, s.b_m);
        for (const StageAnswer& s : a.stages) {
            add(s.mass.kg, s.mass_sigma.kg, s.displaced_m3, s.g_m, s.b_m, s.in_water.kg, s.in_tub.kg, s.fall,
                s.tub_fall);
        }
        for (const CoatAnswer& c : a.coats)
            add(c.mass.kg, c.displaced_m3, c.in_water.kg, c.in_water_share);
        for (const shape::Segment& s : evaluation.body.segments)
            add(s.x_from_m, s.x_to_m, s.volume_m3, s.centroid_m, s.skin_m2, s.skin_centroid_m, s.curvature_m);
        for (const ledger::Line& line : evaluation.ledger)
            add(line.mass_kg, line.displaced_m3, line.at_m);
        for (const Problem& warning : a.warnings)
            words_.push_back(warning.sentence);
    }
    bool operator==(const Numbers&) const = default;

private:
    void one(double value) { values_.push_back(value); }
    void one(const Vec3& v) { add(v.x, v.y, v.z); }
    void one(const Fall& f) { add(f.speed_m_s, f.slow_m_s, f.fast_m_s, f.pitch_rad, f.forward_m_s); }
    template <class T>
    void one(const std::optional<T>& held) {
        values_.push_back(held ? 1.0 : 0.0);
        if (held) one(*held);
    }
    template <class... All>
    void add(const All&... all) {
        (one(all), ...);
    }

    std::vector<double> values_;
    std::vector<Sentence> words_;
};

using Edit = std::function<void(document::Document&)>;

/// One edit of everything that an evaluation might keep, and of what it must not keep.
std::vector<std::pair<const char*, Edit>> edits() {
    using document::Document;
    return {
        {"back line", [](Document& d) { d.shape.back[d.shape.back.size() / 2].value += 2e-4; }},
        {"width", [](Document& d) { d.shape.half_width[d.shape.half_width.size() / 2].value += 2e-4; }},
        {"section",
         [](Document& d) {
             for (document::CurvePoint& p : d.shape.section.curve())
                 p.value *= 0.99;
         }},
        {"caliper reading", [](Document& d) { d.shape.measured.clear(); }},
        {"carving", [](Document& d) { d.shape.carving = document::Carving::rough; }},
        {"a joint's place",
         [](Document& d) {
             if (!d.joints.empty()) d.joints.front().at_m += 1e-4;
         }},
        {"a joint's relief",
         [](Document& d) {
             if (!d.joints.empty()) d.joints.back().relief_aft_rad *= 0.9;
         }},
        {"a hinge",
         [](Document& d) {
             if (!d.joints.empty()) d.joints.front().hinge = document::Hinge{};
         }},
        {"a pocket's width",
         [](Document& d) {
             if (!d.pockets.empty()) d.pockets.front().width_m *= 0.95;
         }},
        {"a pocket that floods",
         [](Document& d) {
             if (!d.pockets.empty()) d.pockets.front().floods = !d.pockets.front().floods;
         }},
        {"coats into pockets",
         [](Document& d) {
             for (document::Coat& c : d.coats)
                 c.on_pockets = !c.on_pockets;
         }},
        {"a hole's depth",
         [](Document& d) {
             if (!d.holes.empty()) d.holes.front().depth_m *= 0.9;
         }},
        {"wood", [](Document& d) { d.wood.moisture_percent += 1.0; }},
        {"water", [](Document& d) { d.water.temperature_c = 4.0; }},
    };
}

} // namespace

TEST_CASE("an evaluation that reuses another one's body is the same bit for bit",
          "[properties][random][reuse]") {
    std::optional<Kept> other;
    int reused = 0;
    support::each_random_lure(977, 120, [&](const support::RandomLure& lure, int) {
        const Numbers anew(lure.evaluation);
        if (other) {
            const auto after_another = evaluate(lure.document, &*other);
            REQUIRE(after_another.ok());
            CHECK(Numbers(*after_another) == anew);
        }
        for (const auto& [name, edit] : edits()) {
            INFO(name);
            document::Document changed = lure.document;
            edit(changed);
            const auto as_new = evaluate(changed);
            const auto after_edit = evaluate(changed, &lure.evaluation.kept);
            REQUIRE(as_new.ok() == after_edit.ok());
            if (!as_new) continue;
            CHECK(Numbers(*after_edit) == Numbers(*as_new));
            reused += after_edit->kept.geometry.wood == lure.evaluation.kept.geometry.wood ? 1 : 0;
            const auto back = evaluate(lure.document, &after_edit->kept);
            REQUIRE(back.ok());
            CHECK(Numbers(*back) == anew);
        }
        other = lure.evaluation.kept;
    });
    CHECK(reused > 500);
}
