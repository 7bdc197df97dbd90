#pragma once

// A picture behind the drawing: a photograph or scan of a sketch or of a carved piece. It stays on the
// device, separate from the lure. Marks on it give nose, tail and scale; its outline can be traced.

#include "evenfall.hpp"
#include "picture.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace evenfall::shell::state {

/// Marks on the picture, in its pixels: nose and tail of the lure, and two points a known distance apart.
enum class Mark { nose, tail, rule_from, rule_to };
inline constexpr std::size_t mark_count = 4;

/// Placement of a picture in the side view: metres ↔ pixels of the picture. Rotated so that nose and tail are
/// level, back up.
struct PicturePlacement {
    picture::Spot nose;
    double m_per_px = 1e-4;
    double along_x = 1.0, along_y = 0.0; ///< from nose to tail, in the picture
    double up_x = 0.0, up_y = -1.0;      ///< towards the back, in the picture

    struct World {
        double x_m = 0.0;
        double z_m = 0.0;
    };
    [[nodiscard]] World world_of(picture::Spot spot) const;
    [[nodiscard]] picture::Spot spot_of(double x_m, double z_m) const;
};

class Backdrop {
public:
    static constexpr int greatest_side = 2048;

    [[nodiscard]] bool there() const { return ready_; }
    [[nodiscard]] int width() const { return width_; }
    [[nodiscard]] int height() const { return height_; }
    [[nodiscard]] const std::vector<std::uint8_t>& rgba() const { return rgba_; }

    /// Allocates a picture of this size, to be filled row by row from the top, RGBA. The old one is
    /// discarded. nullptr where it is smaller than 24 or larger than 2048 pixels on a side; then the old one
    /// stays.
    std::uint8_t* make_room(int width, int height);
    /// The picture is filled. Sets the marks as saved (marks_text), or nose and tail near its sides,
    /// `length_m` apart.
    void ready(const std::string& marks, double length_m);
    void take_away();

    [[nodiscard]] picture::Spot mark(Mark which) const { return marks_[static_cast<std::size_t>(which)]; }
    /// Sets a mark, limited to the picture.
    void put_mark(Mark which, picture::Spot spot);
    /// Moves a mark by thousandths of the picture's width, aft and up as the picture lies; used by keys and
    /// buttons.
    void nudge_mark(Mark which, double aft, double up);
    Mark chosen = Mark::nose; ///< the mark that nudges move
    [[nodiscard]] double rule_length_m() const { return apart_m_; }
    void set_apart_m(double rule_length_m);
    [[nodiscard]] bool by_rule() const { return by_rule_; }
    void set_by_rule(bool by_rule);
    [[nodiscard]] float strength() const { return strength_; }
    void set_strength(double share);

    /// The present placement; while a mark is held, the placement when it was grabbed, so that the picture
    /// stays still.
    [[nodiscard]] PicturePlacement placement() const;
    std::optional<Mark> held{};
    void hold(std::optional<Mark> mark);

    /// Marks, distance and strength as text for the device to save, and a number that increases with each
    /// change of them.
    [[nodiscard]] std::string marks_text() const;
    [[nodiscard]] unsigned revision() const { return revision_; }

    /// Starts tracing the outline; search_on() does it in slices.
    void start_search();
    void stop_search() { search_.reset(); }
    [[nodiscard]] bool searching() const { return search_.has_value(); }
    [[nodiscard]] double done_share() const { return search_ ? search_->done_share() : 0.0; }
    /// One slice of work. After the last one: the profile, or why there is none; before that nullopt.
    [[nodiscard]] std::optional<Outcome<picture::Profile>> search_on();

    /// The picture's texture in the window that draws it; 0 where it has none yet.
    std::uintptr_t texture = 0;

private:
    [[nodiscard]] PicturePlacement placement_by_marks() const;

    int width_ = 0;
    int height_ = 0;
    bool ready_ = false;
    std::vector<std::uint8_t> rgba_;
    std::array<picture::Spot, mark_count> marks_{};
    double apart_m_ = 0.1;
    bool by_rule_ = false;
    float strength_ = 0.6f;
    std::optional<PicturePlacement> frozen_;
    unsigned revision_ = 0;
    std::optional<picture::OutlineSearch> search_;
};

} // namespace evenfall::shell::state
