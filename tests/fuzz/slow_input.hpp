#pragma once

// Bytes → a lure with a long log, made to be slow: few bytes stand for up to two hundred readings at odds, of
// several lures, before and after changes of the holes, in many waters, with many things hung on.

#include "base/trade.hpp"
#include "fuzz/drawn_document.hpp"
#include "reach.hpp"
#include "support/limit_lures.hpp"
#include "support/presets.hpp"

#include <array>
#include <cmath>
#include <optional>

namespace evenfall::fuzz {

struct SlowInput {
    std::size_t asked = 0; ///< which verb
    document::Document document;
    reach::Goal goal;
};

class SlowInputs {
public:
    explicit SlowInputs(Bytes& bytes) : b_(bytes) {}

    /// Absent where the document cannot be read, or its lure cannot be built.
    std::optional<SlowInput> draw() {
        SlowInput out;
        out.asked = b_.byte();
        const unsigned base = b_.byte();
        const unsigned groups = b_.byte() % 5;
        std::vector<document::Reading> log;
        int changes = 0;
        for (unsigned k = 0; k < groups; ++k)
            add_group(log, changes);
        out.document = lure(base);
        if (log.size() > document::max_readings) log.resize(document::max_readings);
        out.document.log = std::move(log);
        change_holes(out.document, changes);
        const auto read = read_document(document::write_compact(out.document));
        if (!read.ok()) return std::nullopt;
        out.document = *read;
        out.goal.targets = out.document.targets;
        out.goal.chance = b_.yes() ? std::optional(b_.usual(0.5, 0.95, 0.01, 0.99)) : std::nullopt;
        return out;
    }

private:
    document::Document lure(unsigned base) {
        static const std::array demos{
            support::preset_named("millrace-170"), support::preset_named("quarry-230"),
            support::preset_named("reedline-120"), support::preset_named("estuary-150")};
        static const document::Document full = support::at_the_limits();
        document::Document out = base % 8 < 4 ? demos[base % 4] : base % 8 < 6 ? full : drawn();
        if (base % 8 < 6 && (base & 8u) != 0u) {
            for (document::Hole& hole : out.holes) // afloat, and its lead still to be planned
                hole.fill.reset();
        }
        if ((base & 16u) != 0u) ask_otherwise(out.targets);
        if ((base & 32u) != 0u) out.holes.resize(out.holes.size() / 2);
        return out;
    }

    document::Document drawn() {
        document::Document out = DrawnDocument(b_).draw();
        out.corrections.clear();
        return out;
    }

    void ask_otherwise(document::Targets& t) {
        t.by = b_.one_of(document::TargetBy::in_water);
        t.fall_m_s = units::m_from_mm(b_.usual(20, 400, 1, 1500));
        t.in_water_kg = units::kg_from_g(b_.usual(-10, 10, -200, 200));
        t.pitch_rad = units::rad_from_deg(b_.usual(-20, 20, -45, 45));
    }

    /// Readings of one kind that differ from each other.
    void add_group(std::vector<document::Reading>& log, int& changes) {
        using document::ReadingKind;
        const auto kind = b_.one_of(ReadingKind::beats);
        const Stage stage = b_.one_of(Stage::rigged);
        const std::size_t count = 1 + b_.byte() * document::max_readings / 256;
        const double about = b_.share();
        const double scatter = static_cast<double>(b_.byte()) / 255.0;
        const int lures = 1 + static_cast<int>(b_.below(document::max_lures));
        const int of_changes = static_cast<int>(b_.below(document::max_hole_changes + 1));
        const std::size_t hung = b_.below(document::max_hung + 1);
        const unsigned flags = b_.byte();
        for (std::size_t n = 0; n < count; ++n) {
            const int i = static_cast<int>(n);
            document::Reading r;
            r.kind = kind;
            r.stage = (flags & 1u) != 0u ? static_cast<Stage>(n % stage_count) : stage;
            if ((flags & 2u) != 0u) r.lure = i % lures;
            if ((flags & 4u) != 0u && of_changes > 0) r.before_change = i % of_changes;
            r.stands = (flags & 8u) != 0u;
            set_value(r, about * (1.0 + scatter * std::sin(2.4 * i + 0.7)));
            const bool in_water = kind != ReadingKind::dry_weight && kind != ReadingKind::board &&
                                  kind != ReadingKind::caliper && kind != ReadingKind::beats;
            if ((flags & 16u) != 0u && in_water) r.temperature_c = 4.0 + 0.1 * i;
            const bool may_hang = r.stage >= Stage::leaded && (in_water || kind == ReadingKind::dry_weight);
            for (std::size_t k = 0; k < hung && (flags & 32u) != 0u && may_hang; ++k)
                r.with.push_back({document::HungKind::weight, {}, 1e-4 * (1.0 + i + 7.0 * k), "lead"});
            if ((flags & 64u) != 0u && may_hang && r.with.empty()) r.with = document::all_hung_on();
            if ((flags & 128u) != 0u) sure(r);
            log.push_back(std::move(r));
        }
        changes = std::max(changes, of_changes);
    }

    /// `share`: about 0 to 2, of a usual range.
    static void set_value(document::Reading& r, double share) {
        using document::ReadingKind;
        switch (r.kind) {
        case ReadingKind::dry_weight:
        case ReadingKind::held_under:
            r.mass_kg = 0.001 + 0.15 * share;
            break;
        case ReadingKind::hung_in_water:
            r.mass_kg = 0.02 * (share - 0.5);
            break;
        case ReadingKind::board:
            r.mass_kg = 0.01 + 0.3 * share;
            r.length_m = 0.2;
            r.width_m = 0.03;
            r.height_m = 0.045;
            break;
        case ReadingKind::tub_fall:
            r.depth_m = 0.5;
            r.time_s = 0.3 + 20.0 * share * share;
            break;
        case ReadingKind::suspends:
            r.mass_kg = 0.0001 + 0.02 * share;
            r.clip_material = "lead";
            break;
        case ReadingKind::freeboard:
            r.freeboard_m = 0.02 * share;
            break;
        case ReadingKind::hang_angle:
            r.angle_rad = units::rad_from_deg(60.0 * (share - 0.5));
            break;
        case ReadingKind::caliper:
            r.x_m = 0.06;
            r.width_m = 0.002 + 0.03 * share;
            break;
        case ReadingKind::beats:
            r.beats = 1.0 + 30.0 * share;
            r.travel_m = 5.0;
            break;
        }
    }

    /// Readings far more exact than a bench's: none of them can be believed beside another.
    static void sure(document::Reading& r) {
        r.*document::number_of(r).sigma =
            1e-3 * std::abs((r.*document::number_of(r).value).value_or(1.0)) + 1e-6;
    }

    /// Each hole a little shallower before each change, as many holes as a text has room for.
    void change_holes(document::Document& d, int changes) {
        const std::size_t most = b_.below(document::max_holes) + 1;
        for (std::size_t h = 0; h < d.holes.size() && h < most && changes > 0; ++h) {
            document::Hole& hole = d.holes[h];
            hole.before.clear();
            for (int k = 0; k < changes; ++k)
                hole.before.push_back({k, hole.depth_m * (0.5 + 0.5 * k / changes), hole.fill});
        }
    }

    Bytes& b_;
};

} // namespace evenfall::fuzz
