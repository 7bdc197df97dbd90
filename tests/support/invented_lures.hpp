#pragma once

// Random lures made from a document by its model, "built" and measured: the true values are known, so the
// answers can be compared with them.

#include "bench/uncertainty/posterior.hpp"
#include "bench/uncertainty/random.hpp"
#include "document/read.hpp"
#include "support/presets.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>
#include <string>

namespace evenfall::invented {

using support::preset_named;

/// The default lure as version 1 of the form was delivered: its hinge wires and hangers are parts.
inline document::Document early_millrace() {
    std::ifstream file(EVENFALL_TESTS_DIR "/regression/version-1/millrace-170.json", std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    return read_document(text).value();
}

/// A document with its model; makes true lures and the readings that a bench would take of them.
class Recipe {
public:
    explicit Recipe(const document::Document& document)
        : model_(bench::Model::of(document).value()), observer_(model_) {}

    [[nodiscard]] const bench::Model& model() const { return model_; }

    [[nodiscard]] Eigen::VectorXd truth(bench::Random& random) const {
        Eigen::VectorXd u(model_.count());
        for (Eigen::Index i = 0; i < u.size(); ++i)
            u(i) = random.normal();
        return u;
    }

    /// The reading that scale, watch or ruler would give for the true lure; false where there is nothing to
    /// read (it floats).
    bool take(document::Reading& r, const Eigen::VectorXd& u, bench::Random& random) {
        using document::ReadingKind;
        document::Reading empty = r;
        if (r.kind == ReadingKind::board) {
            const double rho = board_density(u) - bench::air_kg_m3;
            r.mass_kg = rho * *r.length_m * *r.width_m * *r.height_m;
            r.mass_kg = *r.mass_kg * (1.0 + bench::own_sigma(r) / bench::main_number(r) * random.normal());
            return true;
        }
        empty.*document::number_of(r).value = r.kind == ReadingKind::tub_fall ? 1.0 : 0.0;
        const auto expected = reading_value(empty, u);
        if (!expected) return false;
        if (r.kind == ReadingKind::tub_fall) {
            r.time_s = *expected;
            r.time_s = *expected + bench::own_sigma(r) * random.normal();
            return *r.time_s > 0.1;
        }
        const double read = *expected + bench::own_sigma(r) * random.normal();
        r.*document::number_of(r).value = read + r.holder_kg.value_or(0.0);
        return r.kind != ReadingKind::suspends || read > 0.0;
    }

    /// True inputs of the same lure for this recipe, whose holes are other ones: an input that it has and the
    /// other has not is as drawn.
    [[nodiscard]] Eigen::VectorXd same_truth(const Recipe& other, const Eigen::VectorXd& u) const {
        Eigen::VectorXd same = Eigen::VectorXd::Zero(model_.count());
        for (Eigen::Index i = 0; i < same.size(); ++i) {
            const auto k = other.index_of(model_.input(i).cause, model_.input(i).group);
            if (k) same(i) = u(*k);
        }
        return same;
    }

    [[nodiscard]] std::optional<Eigen::Index> index_of(document::Cause cause, int group) const {
        for (Eigen::Index i = 0; i < model_.count(); ++i) {
            if (model_.input(i).cause == cause && model_.input(i).group == group) return i;
        }
        return std::nullopt;
    }

    /// The true lure as a document: evaluate() then gives its true behaviour.
    [[nodiscard]] document::Document as_built(const Eigen::VectorXd& u) const {
        return bench::with_corrections(model_, u, Eigen::VectorXd::Zero(u.size()));
    }

private:
    /// The reading's main value without an error; absent where there is none (a lure that does not sink, in
    /// the tub).
    [[nodiscard]] std::optional<double> reading_value(const document::Reading& r, const Eigen::VectorXd& u) {
        const materials::WaterProperties water = observer_.tub(r);
        const bool with_all = r.with == document::all_hung_on();
        const bench::Model& model = with_all ? model_.with_all() : model_;
        if (r.kind == document::ReadingKind::tub_fall) {
            const ledger::Sum sum = model.sum(r.stage, -1, u);
            bench::FallModel& falls = (with_all ? observer_.with_all() : observer_).falls(r.stage, water);
            const auto speed = falls.speed_m_s(sum, model.drag(u));
            if (!speed) return std::nullopt;
            return time_from_rest_s(
                *r.depth_m, *speed,
                falls.acceleration_length_m(sum, sum.in_water(water.density_kg_m3).kg, *speed));
        }
        if (r.kind == document::ReadingKind::suspends) {
            return -model.sum(r.stage, -1, u).in_water(water.density_kg_m3).kg /
                   bench::clip_share(r, water.density_kg_m3);
        }
        const auto seen = observer_.observe(r, u);
        return seen ? std::optional(seen->predicted) : std::nullopt;
    }

    [[nodiscard]] double board_density(const Eigen::VectorXd& u) {
        document::Reading r;
        r.kind = document::ReadingKind::board;
        r.mass_kg = 0.1;
        r.length_m = 0.2;
        r.width_m = 0.03;
        r.height_m = 0.04;
        return observer_.observe(r, u)->predicted;
    }

    bench::Model model_;
    bench::Observer observer_;
};

inline document::Reading weighed(document::ReadingKind kind, Stage stage) {
    document::Reading r;
    r.kind = kind;
    r.stage = stage;
    return r;
}

inline document::Reading timed(Stage stage, double depth_m) {
    document::Reading r;
    r.kind = document::ReadingKind::tub_fall;
    r.stage = stage;
    r.depth_m = depth_m;
    return r;
}

/// Hooks and tail hung on for it.
inline document::Reading with_all(document::Reading r) {
    r.with = document::all_hung_on();
    return r;
}

inline document::Reading clipped(Stage stage) {
    document::Reading r = weighed(document::ReadingKind::suspends, stage);
    r.clip_material = "lead";
    return r;
}

/// Width at a place.
inline document::Reading calipered(Stage stage, double x_m) {
    document::Reading r = weighed(document::ReadingKind::caliper, stage);
    r.x_m = x_m;
    return r;
}

inline document::Reading board() {
    document::Reading r = weighed(document::ReadingKind::board, Stage::carved);
    r.length_m = 0.2;
    r.width_m = 0.03;
    r.height_m = 0.045;
    return r;
}

/// Timed by a video of so many frames a second: start and stop to the frame, and the falls themselves differ.
inline document::Reading by_video(document::Reading r, double frames_per_s, double speed_m_s) {
    const double frame_s = std::sqrt(2.0 / 12.0) / frames_per_s; // each end even over one frame
    r.time_sigma_s = std::hypot(frame_s, bench::fall_scatter * *r.depth_m / speed_m_s);
    return r;
}

/// Whether the lure's fall and hang are within the targets of its document.
inline Chances is_right(const document::Document& as_built, const Answers& answers) {
    Chances c;
    const document::Targets& t = as_built.targets;
    if (t.by == document::TargetBy::in_water) {
        const double band_kg = std::max(t.fall_band * std::abs(t.in_water_kg),
                                        0.002 * answers.water_density_kg_m3 * answers.displaced_m3);
        c.fall = std::abs(answers.in_water.kg - t.in_water_kg) <= band_kg ? 1.0 : 0.0;
    } else {
        c.fall =
            answers.fall && std::abs(answers.fall->speed_m_s / t.fall_m_s - 1.0) <= t.fall_band ? 1.0 : 0.0;
    }
    c.pitch = answers.pitch_rad && std::abs(*answers.pitch_rad - t.pitch_rad) <= t.pitch_band_rad ? 1.0 : 0.0;
    c.both = c.fall * c.pitch;
    return c;
}

} // namespace evenfall::invented
