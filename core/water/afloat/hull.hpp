#pragma once

// The floating hull: everything in the ledger that displaces water, as shapes that a plane can cut.

#include "body/body.hpp"
#include "document/document.hpp"
#include "ledger/line.hpp"
#include "water/afloat/immersion.hpp"
#include "water/afloat/panel.hpp"

#include <memory>
#include <span>
#include <vector>

namespace evenfall::afloat {

/// A part outside the wood: immersed like a sphere of its displaced volume.
struct Ball {
    Vec3 centre_m;
    double radius_m = 0.0;
    double factor = 1.0; ///< −1: subtracted
};

/// Shapes for the displacement in the ledger. Built once per document, evaluated many times.
///
///   segments  sections of the drawn lines between their faces, without V reliefs and gaps, with the films of
///             the coats: skin and faces move out by the film's thickness, then sections are scaled and
///             shifted slightly so that volume and centroid of each segment match its wood and film lines
///   pockets   and holes that flood: boxes, subtracted (a hole as a square column of equal area)
///   parts     spheres of their displaced volume at their place
///
/// Fully submerged it has exactly the ledger's displaced volume and centre, to rounding. Air trapped in a
/// pocket, and water running out of one, are not modelled.
///
/// Error: volume and centre of a cut within 1e-4 of the whole compared with a mesh of the same lines
/// (tests/mesh); for closed forms see tests/published/flotation_*.
class FloatingHull {
public:
    FloatingHull(const shape::Body& body, std::span<const ledger::Line> lines,
                 const document::Document& document);
    FloatingHull(FloatingHull&&) = default;
    FloatingHull& operator=(FloatingHull&&) = default;

    /// The part under the plane up·r = depth. `up` is a unit vector in the lure's axes.
    [[nodiscard]] Immersion immersed(const Vec3& up, double depth_m) const;

    /// The depth at which `volume_m3` is under water, for volumes from 0 to volume_m3(). `start_m` may be any
    /// guess. Newton's method within a bracket; volume within 1e-12 of the whole.
    [[nodiscard]] double depth_for(const Vec3& up, double volume_m3, double start_m) const;

    [[nodiscard]] double volume_m3() const { return whole_.volume; }
    [[nodiscard]] Vec3 centroid_m() const;

    /// Lowest and highest up·r of wood, films, soft tail and parts.
    [[nodiscard]] Span span(const Vec3& up) const;
    /// The same for the wood and its films alone.
    [[nodiscard]] Span wood_span(const Vec3& up) const;
    /// The same for one end of the wood: 0 nose, 1 tail.
    [[nodiscard]] Span end_span(const Vec3& up, std::size_t which) const;

    /// Share of the back line (middle plane, without gaps) above the plane.
    [[nodiscard]] double back_line_out(const Vec3& up, double depth_m) const;

    [[nodiscard]] double length_m() const { return length_m_; }
    [[nodiscard]] double nose_x_m() const { return panels_.front().from_m(); }
    [[nodiscard]] double tail_x_m() const { return panels_[wood_panels_ - 1].to_m(); }

    /// True where port and starboard are mirror images, parts included.
    [[nodiscard]] bool is_mirrored() const { return mirrored_; }

private:
    void add_segment(const shape::Body& body, std::size_t segment, std::span<const ledger::Line> lines,
                     const document::Document& document);
    void add_openings(const shape::Body& body, std::span<const ledger::Line> lines,
                      const document::Document& document);
    void add_ball(const ledger::Line& line);
    [[nodiscard]] bool is_each_mirrored() const;

    std::shared_ptr<const shape::Lines> lines_; ///< skins point to them
    std::unique_ptr<UnitRims> rims_;
    std::vector<Skin> skins_;   ///< one per segment; must not move once panels point to them
    std::vector<Panel> panels_; ///< wood from nose to tail, then boxes
    std::size_t wood_panels_ = 0;
    std::vector<Ball> balls_;
    Sums whole_;
    double length_m_ = 0.0;
    bool mirrored_ = false;
};

} // namespace evenfall::afloat
