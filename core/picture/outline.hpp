#pragma once

#include "picture/ring.hpp"

#include <memory>
#include <optional>

namespace evenfall::picture {

/// How to look for the outline. Lengths are in pixels of the picture as given.
struct OutlineOptions {
    double sensitivity = 1.0; ///< 0.2 to 5: above 1 fainter lines count, and more grain with them
    std::optional<double>
        gap_px; ///< widest gap in the line that may be bridged, 0 to 500; absent: 1/60 of the longer side
    std::optional<Spot> part_from; ///< look only between these two corners
    std::optional<Spot> part_to;
};

/// The outline found.
struct Contour {
    Ring points;             ///< closed, in pixels of the picture as given, clockwise as seen
    bool drawn_line = false; ///< a pencil line, followed along its middle; else the rim of a piece
    double backed = 0.0;     ///< share of its length with a clear edge or line under it; the rest is bridged
    double area_px2 = 0.0;
    double working_scale = 1.0; ///< pixels of the picture in one pixel of the reduced one that was looked at
};

/// Looks for the outline of a pencil sketch or of a piece on a plain ground, in slices: for a page that shows
/// progress and can stop. The samples of the picture are read in the first slice only.
///
///   grey, reduced → smoothed → edges → gaps closed → largest patch enclosed → each spot of its border moved
///   along its normal onto the line's middle or the steepest place of the rim → smoothed
///
/// Where   the piece or sketch must lie within the part looked at, ground all round it. A stroke wider than
///         about 1/100 of the picture counts as a rim. Shadows with hard edges are taken for the rim;
///         perspective is not taken out.
/// Error   drawn ellipses with grain of 0.02 of full brightness, light falling off by half and a gap are met
///         within half a pixel (tests/unit/picture/outline_test.cpp). A gap is crossed straight.
class OutlineSearch {
public:
    [[nodiscard]] static Outcome<OutlineSearch> begin(const Picture& picture,
                                                      const OutlineOptions& options = {});

    OutlineSearch(OutlineSearch&&) noexcept;
    OutlineSearch& operator=(OutlineSearch&&) noexcept;
    ~OutlineSearch();

    /// One slice of work. True while there is more to do.
    bool advance();

    [[nodiscard]] double done_share() const; ///< 0 to 1

    /// After the last slice: the outline, or the problem that none closes.
    [[nodiscard]] Outcome<Contour> result() const;

private:
    struct Work;
    explicit OutlineSearch(std::unique_ptr<Work> work);
    std::unique_ptr<Work> work_;
};

/// All slices at once.
[[nodiscard]] Outcome<Contour> find_outline(const Picture& picture, const OutlineOptions& options = {});

} // namespace evenfall::picture
