#pragma once

// Parts of the hull along x and their cut by the water surface. Private to the hull.

#include "base/quadrature.hpp"
#include "body/lines.hpp"
#include "water/afloat/immersion.hpp"
#include "water/afloat/unit_rim.hpp"

#include <array>
#include <cstddef>
#include <map>
#include <optional>

namespace evenfall::afloat {

/// The unit rims of a hull; their addresses stay valid. A body of constant parameter needs only one. Where
/// parameter varies along a curved family, rims half a percent of parameter apart are used, scaled to the
/// true area.
class UnitRims {
public:
    explicit UnitRims(const shape::SectionFamily& family) : family_(&family) {}

    [[nodiscard]] const UnitRim& of(double parameter);
    [[nodiscard]] const UnitRim& box();

private:
    const shape::SectionFamily* family_;
    std::map<double, UnitRim> rims_;
    const UnitRim* last_ = nullptr;
    std::optional<UnitRim> box_;
};

/// One cross-section of a hull at its place.
struct Section {
    double x_m = 0.0;          ///< in the axes of the lure
    double dx_m = 0.0;         ///< quadrature weight
    double half_width_m = 0.0; ///< times the unit rim
    double half_height_m = 0.0;
    double centre_y_m = 0.0;
    double centre_z_m = 0.0;
    const UnitRim* rim = nullptr;
    std::optional<RimLimit> limit;

    [[nodiscard]] const RimLimit* limit_or_null() const { return limit ? &*limit : nullptr; }
};

/// End of a segment at a joint: wood where |y| ≤ (x − x_m)·side/tangent; side +1 at its fore end, −1 at its
/// aft end.
struct Flank {
    double x_m = 0.0;
    double tangent = 0.0; ///< 0 = flat: no limit
    double side = 1.0;
};

/// From the drawn lines to the skin of one coated segment, in the lines' own x and z: half width = grow·(a +
/// film), half height = grow·(b + film), x and z shifted.
struct Skin {
    const shape::Lines* lines = nullptr;
    double film_m = 0.0;
    double grow = 1.0;
    double shift_x_m = 0.0;
    double shift_z_m = 0.0;
    Flank fore;
    Flank aft;
};

/// The water surface, with what every section needs of it.
struct WaterPlane {
    Vec3 up;
    double depth_m = 0.0;
    LevelAxes level;
    double x_origin_m = 0.0; ///< x from which distances along the waterplane are measured
    double x_offset_m = 0.0; ///< added to (x − x_origin)/tilt for r·along

    WaterPlane(const Vec3& up_, double depth_);
};

/// Running sums, by x and by the coordinate across; converted to Immersion at the end.
struct Sums {
    double volume = 0.0;
    double x = 0.0, y = 0.0, z = 0.0;                                  ///< ∫x dV …
    double area = 0.0, l = 0.0, t = 0.0, ll = 0.0, lt = 0.0, tt = 0.0; ///< ∫dA, ∫X dA, ∫Y dA, …

    void add(const Sums& o, double factor);
};

enum class Wetness { dry, cut, wet };

/// Lowest and highest up·r of a section.
struct Span {
    double low_m = 0.0;
    double high_m = 0.0;
};
[[nodiscard]] Span span_of(const Section& section, const Vec3& up);

/// A part of the hull within which the lines are smooth. It has sections at Gauss points and at both ends.
class Panel {
public:
    static constexpr std::size_t most_sections = 4;

    /// A segment's bare skin between two x, with `order` sections (2 to 4). Soft ends: the width grows like
    /// √x there.
    Panel(const Skin& skin, double from_m, double to_m, bool soft_from, bool soft_to, std::size_t order,
          UnitRims& rims);

    /// A box; factor −1 subtracts it.
    Panel(const UnitRim& square, const Vec3& centre, const Vec3& half_size, double factor);

    /// Scales the sections about their centres, or moves the panel, for the skin's final adjustment.
    void grow(double factor);
    void shift(double x_m, double z_m);

    /// `fore` is the wetness of its fore end where known (the aft end of the panel before); on return it is
    /// that of its aft end, or empty where that was not needed.
    void add_wet(const WaterPlane& plane, Sums& out, std::optional<Wetness>& fore) const;

    [[nodiscard]] const Sums& whole() const { return whole_; }
    [[nodiscard]] double factor() const { return factor_; }
    [[nodiscard]] double from_m() const { return ends_[0].x_m; }
    [[nodiscard]] double to_m() const { return ends_[1].x_m; }
    [[nodiscard]] std::size_t size() const { return size_; }
    [[nodiscard]] const Section& section(std::size_t k) const { return sections_[k]; } ///< in order of x
    [[nodiscard]] const Section& end(std::size_t k) const { return ends_[k]; }         ///< 0 fore, 1 aft

private:
    [[nodiscard]] Section section_at(double x_m) const;
    void take_stock();
    [[nodiscard]] bool add_alike(const WaterPlane& plane, Wetness wetness, Sums& out) const;
    void add_split(const WaterPlane& plane, Sums& out) const;
    void add_stretch(const WaterPlane& plane, const SoftInterval& interval, Wetness wetness, Sums& out) const;
    [[nodiscard]] double crossing(const WaterPlane& plane, double from_m, double to_m, bool of_high) const;

    const Skin* skin_ = nullptr;
    double factor_ = 1.0;
    std::size_t size_ = 0;
    bool soft_from_ = false;
    bool soft_to_ = false;
    std::array<Section, most_sections> sections_;
    std::array<Section, 2> ends_;
    Sums whole_;
    Vec3 middle_; ///< of the enclosing box
    Vec3 half_size_;
};

/// A section of the skin at x of the lines, with the unit rim of nearly equal parameter, scaled to the true
/// area.
[[nodiscard]] Section skin_section(const Skin& skin, double line_x_m, const shape::Station& station,
                                   const UnitRim& rim);
[[nodiscard]] shape::Station station_at(const Skin& skin, double line_x_m);

} // namespace evenfall::afloat
