#pragma once

#include "body/glued_eyes.hpp"
#include "document/document.hpp"

#include <array>
#include <optional>
#include <vector>

namespace evenfall::glue {

enum class GlueKind { thin_ca, thick_ca, epoxy };
inline constexpr std::size_t glue_kind_count = 3;

/// Widest gap that each glue fills: thin cyanoacrylate wicks into narrow gaps, thick stays in wider ones,
/// slow epoxy fills the rest. Common practice, no source: the label comes first.
inline constexpr std::array<double, glue_kind_count> fills_to_m{0.10e-3, 0.30e-3, 2.0e-3};

/// Working time by the label [s]. Defaults: common practice, no source.
struct WorkingTimes {
    double thin_ca_s = 5.0;
    double thick_ca_s = 30.0;
    double epoxy_s = 1200.0;
    [[nodiscard]] double of(GlueKind sort) const {
        return sort == GlueKind::thin_ca ? thin_ca_s : sort == GlueKind::thick_ca ? thick_ca_s : epoxy_s;
    }
};

/// The fastest glue that fills this gap and stays workable during fitting; epoxy where neither cyanoacrylate
/// does.
[[nodiscard]] GlueKind glue_for(double width_m, double fitting_s, const WorkingTimes& times);

/// Baking soda in a hole: 1.0 g/cm³ loose to lightly tapped (from memory, 0.9 to 1.1), of crystals of 2.20
/// g/cm³ (CRC Handbook, from memory), so 1 − 1.0/2.2 = 0.55 of the volume is air, which thin cyanoacrylate
/// fills.
inline constexpr double soda_bulk_kg_m3 = 1000.0;
inline constexpr double soda_crystal_kg_m3 = 2200.0;
inline constexpr double soda_voids = 1.0 - soda_bulk_kg_m3 / soda_crystal_kg_m3;
/// Liquid cyanoacrylate: 1.05 to 1.10 g/cm³, from memory.
inline constexpr double liquid_ca_kg_m3 = 1070.0;

struct GlueRequest {
    int lures = 1;     ///< 1 to 1000
    double loss = 0.5; ///< left in cup and on the applicator, and wiped off, over all that is used, 0 to 0.9;
                       ///< common practice, no source
    double fitting_s = 60.0;    ///< time to insert and align the eyes of one joint, 1 s to 2 h
    WorkingTimes times;         ///< 1 s to 24 h each
    std::optional<int> hangers; ///< hook hangers, twisted of one wire; absent: those the document describes,
                                ///< else one for each of its hooks. 0 to 20
    EyeHole hanger{2.0e-3, 0.9e-3, 4.05e-3, 0.020};
};

/// The eyes of one joint, or all hangers.
struct GluedRow {
    std::optional<int> joint; ///< absent: the hangers
    int eyes = 0;             ///< per lure
    double gap_m3 = 0.0;      ///< round one eye; the mean where they differ
    double width_m = 0.0;
    GlueKind sort = GlueKind::epoxy;
    double glue_kg = 0.0; ///< per lure, without loss
};

/// A hole capped with baking soda soaked with thin cyanoacrylate.
struct CapRow {
    int hole = 0;
    double volume_m3 = 0.0; ///< area of the hole times length of the cap, flush with the skin; plus the drill
                            ///< point where the whole hole is cap
    double soda_kg = 0.0;
    double ca_m3 = 0.0;
};

struct GlueAnswer {
    std::vector<GluedRow> rows;
    std::vector<CapRow> caps;
    std::array<double, glue_kind_count>
        take_m3{}; ///< for all lures, loss included; thin cyanoacrylate including the caps
    std::array<double, glue_kind_count> take_kg{};
    double soda_kg = 0.0; ///< for all lures
    Problems warnings;
};

/// All glue of a lure with a cut body. A hinge that names its glue gets that one; others the result of
/// `glue_for`. Refuses by name: "/lures", "/loss", "/fitting_s", "/times/…", "/hangers", and the hanger's
/// "/wire_mm" and the like.
[[nodiscard]] Outcome<GlueAnswer> glue(const document::Document& document, const shape::Body& body,
                                       const GlueRequest& request);

} // namespace evenfall::glue
