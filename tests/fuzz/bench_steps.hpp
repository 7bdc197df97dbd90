#pragma once

// What a builder does to a lure on the bench, drawn from bytes: readings, ticks at holes, edits.

#include "base/trade.hpp"
#include "fuzz/drawn_document.hpp"
#include "starter.hpp"
#include "state/edits.hpp"
#include "support/invented_lures.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

namespace evenfall::fuzz {

/// A lure to begin with: a demo lure, one from a card, or one drawn; absent where it cannot be built.
inline std::optional<document::Document> drawn_lure(Bytes& b) {
    static const std::array demos{support::preset_named("millrace-170"), support::preset_named("quarry-230"),
                                  support::preset_named("reedline-120"),
                                  support::preset_named("estuary-150")};
    const unsigned sort = b.byte() % 8;
    if (sort == 7) {
        const auto read = read_document(write_document(DrawnDocument(b).draw()));
        if (!read.ok() || !evaluate(*read).ok()) return std::nullopt;
        return *read;
    }
    if (sort < 6) return demos[b.below(demos.size())];
    starter::LureCard card;
    card.form = b.one_of(starter::Form::round);
    card.length_m = units::m_from_mm(b.usual(100, 250, 60, 400));
    card.segments = 1 + static_cast<int>(b.below(starter::most_segments));
    card.hooks = static_cast<int>(b.below(starter::most_hooks + 1));
    card.tail = b.one_of(starter::TailFin::soft);
    card.fall = b.one_of(starter::WantedFall::fast);
    const auto made = starter::new_lure(card);
    if (!made.ok()) return std::nullopt;
    return *made;
}

/// A reading that a scale, tub or rule would give of a lure that is a little other than its recipe, or one
/// that slipped; absent where there is nothing to read, as of a floating lure in the tub.
class BenchReadings {
public:
    BenchReadings(Bytes& bytes, unsigned lure) : b_(bytes), lure_(lure) {}

    std::optional<document::Reading> take(const document::Document& document) {
        if (b_.once_in(4)) return DrawnDocument(b_).draw_reading(document);
        const document::LogState log = document::log_state(document);
        document::Reading r = of_kind(b_.below(9), document);
        r.stage = static_cast<Stage>(std::min(static_cast<std::size_t>(log.stage) + b_.below(3),
                                              static_cast<std::size_t>(stage_count - 1)));
        if (r.stage >= Stage::leaded && r.stage < Stage::rigged && b_.yes() && !r.segment && may_hang(r.kind))
            r.with = document::all_hung_on();
        if (log.lure > 0) r.lure = log.lure;
        if (b_.once_in(16)) r.lure = log.lure + 1; // the next lure of the recipe
        invented::Recipe recipe(document);
        bench::Random truth(18, lure_ + static_cast<unsigned>(document::lure_of(r)));
        bench::Random error(19, b_.byte());
        if (!recipe.take(r, recipe.truth(truth), error)) return std::nullopt;
        if (b_.once_in(4)) slip(*(r.*document::number_of(r).value));
        return r;
    }

private:
    static bool may_hang(document::ReadingKind kind) {
        return kind != document::ReadingKind::board && kind != document::ReadingKind::caliper;
    }

    document::Reading of_kind(std::size_t kind, const document::Document& document) {
        using document::ReadingKind;
        switch (kind) {
        case 0:
        case 1: {
            document::Reading r =
                invented::weighed(kind == 0 ? ReadingKind::dry_weight : ReadingKind::held_under, {});
            if (b_.once_in(4)) r.segment = static_cast<int>(b_.below(document.segment_names.size()));
            return r;
        }
        case 2:
            return invented::weighed(ReadingKind::hung_in_water, {});
        case 3:
            return invented::timed({}, b_.usual(0.3, 1.0, 0.02, 20));
        case 4:
            return invented::clipped({});
        case 5:
            return invented::weighed(ReadingKind::freeboard, {});
        case 6:
            return invented::weighed(ReadingKind::hang_angle, {});
        case 7: {
            const double length_m = document.shape.back.back().x_m;
            document::Reading r = invented::calipered({}, length_m * b_.share());
            (b_.yes() ? r.width_m : r.height_m) = 0.0;
            return r;
        }
        default:
            return invented::board();
        }
    }

    /// The decimal point, ounces for grams, or just off.
    void slip(double& number) {
        constexpr std::array factors{10.0, 0.1, 28.349523125, 1.0 / 28.349523125, 1.1, 0.9, 1.5, 0.5};
        number *= factors[b_.below(factors.size())];
    }

    Bytes& b_;
    unsigned lure_;
};

/// One edit as the page makes it.
class BenchEdits {
public:
    /// One draw a statement: compilers differ in which argument of a call they work out first.
    explicit BenchEdits(Bytes& b)
        : b_(b), what_(b.below(20)), pick_(b.byte()), yes_(b.yes()), by_(b.usual(0.9, 1.1, 0.3, 3)) {}

    shell::state::Edit draw(const document::Document& d) {
        using namespace shell::state;
        switch (what_) {
        case 0:
            return other_joint(d);
        case 1:
            return on_coat(any(d.coats), [by = by_](document::Coat& c) {
                std::optional<double>& amount = c.thickness_m ? c.thickness_m : c.mass_kg;
                amount = *amount * by;
            });
        case 2:
            return scale_width(drawn_width_m(d) * by_);
        case 3:
            return scale_height(drawn_height_m(d) * by_);
        case 4:
            return scale_whole(drawn_length_m(d) * by_);
        case 5:
            return other_wood();
        case 6:
            return other_targets();
        case 7:
            return yes_ ? add_joint() : remove_joint(any(d.joints));
        case 8:
            return on_part(any(d.parts), [by = by_](document::Part& p) { p.mass_kg *= by; });
        case 9:
            return yes_ ? remove_part(any(d.parts)) : duplicate_part(any(d.parts));
        case 10:
            return yes_ ? remove_coat(any(d.coats)) : add_coat(Stage::clear_coated);
        case 11:
            return yes_ ? remove_reading(any(d.log)) : toggle_excluded(any(d.log));
        case 12:
            return other_belly(d);
        default:
            return other_holes(d);
        }
    }

private:
    template <class T>
    [[nodiscard]] int any(const std::vector<T>& list) const {
        return list.empty() ? 0 : static_cast<int>(pick_ % list.size());
    }

    shell::state::Edit other_holes(const document::Document& d) {
        using namespace shell::state;
        const int hole = any(d.holes);
        switch (what_) {
        case 13:
            return yes_ ? add_hole() : remove_hole(hole);
        case 14:
            return yes_ ? duplicate_hole(hole) : plug_hole(hole);
        case 15:
        case 16:
            return on_hole(hole, [by = units::m_from_mm(b_.usual(-5, 5, -100, 100))](document::Hole& h) {
                h.x_m += by;
            });
        case 17:
        case 18:
            return on_hole(hole, [to = units::m_from_mm(b_.usual(3, 20, 0, 100))](document::Hole& h) {
                h.depth_m = to;
            });
        default:
            return on_hole(hole, [by = by_](document::Hole& h) { h.diameter_m *= by; });
        }
    }

    shell::state::Edit other_joint(const document::Document& d) {
        if (d.joints.empty()) return shell::state::add_joint();
        const int index = any(d.joints);
        document::Joint joint = d.joints[static_cast<std::size_t>(index)];
        joint.at_m += units::m_from_mm(b_.usual(-4, 4, -100, 100));
        joint.gap_m *= by_;
        return shell::state::set_joint(index, joint);
    }

    shell::state::Edit other_belly(const document::Document& d) {
        const int index = any(d.shape.belly);
        const document::CurvePoint at = d.shape.belly[static_cast<std::size_t>(index)];
        return shell::state::move_curve_point(shell::state::CurveKind::belly, index, at.x_m, at.value * by_);
    }

    shell::state::Edit other_wood() {
        const auto woods = materials::woods();
        const auto species = woods[pick_ % woods.size()].id;
        const std::optional<double> weighed =
            yes_ ? std::optional(b_.usual(300, 700, 50, 1500)) : std::nullopt;
        return shell::state::on_document([=](document::Document& d) {
            d.wood.species = std::string(species);
            d.wood.density_kg_m3 = weighed;
        });
    }

    shell::state::Edit other_targets() {
        document::Targets asked;
        asked.by = b_.one_of(document::TargetBy::in_water);
        asked.matters_more = b_.one_of(document::MattersMore::hang);
        asked.fall_m_s = units::m_from_mm(b_.usual(50, 350, 1, 5000));
        asked.in_water_kg = units::kg_from_g(b_.usual(-5, 8, -5000, 5000));
        asked.pitch_rad = units::rad_from_deg(b_.usual(-10, 10, -80, 80));
        return shell::state::on_document([=](document::Document& d) { d.targets = asked; });
    }

    Bytes& b_;
    std::size_t what_;
    unsigned pick_;
    bool yes_;
    double by_;
};

} // namespace evenfall::fuzz
