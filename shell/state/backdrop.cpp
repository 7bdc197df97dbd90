#include "state/backdrop.hpp"

#include "evenfall.hpp"
#include "output.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::state {
namespace {

using Json = document::Tree;
constexpr std::array<const char*, mark_count> mark_words{"nose", "tail", "rule_from", "rule_to"};
constexpr double least_apart_m = 0.001;
constexpr double most_apart_m = 2.0;

double between(picture::Spot a, picture::Spot b) {
    return std::hypot(b.x - a.x, b.y - a.y);
}

} // namespace

PicturePlacement::World PicturePlacement::world_of(picture::Spot spot) const {
    const double x = spot.x - nose.x;
    const double y = spot.y - nose.y;
    return {m_per_px * (x * along_x + y * along_y), m_per_px * (x * up_x + y * up_y)};
}

picture::Spot PicturePlacement::spot_of(double x_m, double z_m) const {
    // The two directions are perpendicular unit vectors.
    return {nose.x + (x_m * along_x + z_m * up_x) / m_per_px,
            nose.y + (x_m * along_y + z_m * up_y) / m_per_px};
}

std::uint8_t* Backdrop::make_room(int width, int height) {
    const auto fits = [](int side) { return side >= picture::least_side && side <= greatest_side; };
    if (!fits(width) || !fits(height)) return nullptr;
    take_away();
    width_ = width;
    height_ = height;
    rgba_.assign(4u * static_cast<std::size_t>(width) * static_cast<std::size_t>(height), 255);
    return rgba_.data();
}

void Backdrop::ready(const std::string& marks, double length_m) {
    if (rgba_.empty()) return;
    const double w = width_;
    const double h = height_;
    marks_ = {
        picture::Spot{0.08 * w, 0.5 * h}, {0.92 * w, 0.5 * h}, {0.2 * w, 0.85 * h}, {0.8 * w, 0.85 * h}};
    apart_m_ = std::clamp(length_m, least_apart_m, most_apart_m);
    by_rule_ = false;
    strength_ = 0.6f;
    ready_ = true;
    ++revision_;
    const auto parsed = document::parse_guarded(marks);
    if (!parsed.ok() || !parsed->is_object()) return;
    const Json& json = *parsed;
    const auto number = [&](const char* key, double otherwise) {
        const auto found = json.find(key);
        return found != json.end() && found->is_number() ? found->get<double>() : otherwise;
    };
    for (std::size_t i = 0; i < mark_count; ++i) {
        const auto found = json.find(mark_words[i]);
        if (found == json.end() || !found->is_array() || found->size() != 2 || !(*found)[0].is_number() ||
            !(*found)[1].is_number())
            continue;
        put_mark(static_cast<Mark>(i), {(*found)[0].get<double>(), (*found)[1].get<double>()});
    }
    set_apart_m(units::m_from_mm(number("apart_mm", units::mm_from_m(apart_m_))));
    set_strength(number("strength", 0.6));
    const auto by_rule = json.find("by_rule");
    by_rule_ = by_rule != json.end() && by_rule->is_boolean() && by_rule->get<bool>();
}

void Backdrop::take_away() {
    const unsigned revision = revision_ + 1;
    *this = Backdrop();
    revision_ = revision;
}

void Backdrop::put_mark(Mark which, picture::Spot spot) {
    if (!std::isfinite(spot.x) || !std::isfinite(spot.y)) return;
    marks_[static_cast<std::size_t>(which)] = {std::clamp(spot.x, 0.0, static_cast<double>(width_)),
                                               std::clamp(spot.y, 0.0, static_cast<double>(height_))};
    ++revision_;
}

void Backdrop::set_apart_m(double rule_length_m) {
    if (!(rule_length_m >= least_apart_m && rule_length_m <= most_apart_m)) return;
    apart_m_ = rule_length_m;
    ++revision_;
}

void Backdrop::set_by_rule(bool by_rule) {
    by_rule_ = by_rule;
    ++revision_;
}

void Backdrop::set_strength(double share) {
    strength_ = static_cast<float>(std::clamp(share, 0.05, 1.0));
    ++revision_;
}

PicturePlacement Backdrop::placement_by_marks() const {
    constexpr double least_px = 4.0; // two marks closer than this give neither scale nor direction
    PicturePlacement placement;
    placement.nose = mark(Mark::nose);
    const picture::Spot tail = mark(Mark::tail);
    const double long_px = std::max(between(placement.nose, tail), least_px);
    if (between(placement.nose, tail) >= least_px) {
        placement.along_x = (tail.x - placement.nose.x) / long_px;
        placement.along_y = (tail.y - placement.nose.y) / long_px;
    }
    const double rule_px = std::max(between(mark(Mark::rule_from), mark(Mark::rule_to)), least_px);
    placement.m_per_px = apart_m_ / (by_rule_ ? rule_px : long_px);
    // Perpendicular to it, towards the upper side of the picture: a lure drawn with its nose to the right is
    // mirrored.
    placement.up_x = placement.along_y;
    placement.up_y = -placement.along_x;
    if (placement.up_y > 0.0) {
        placement.up_x = -placement.up_x;
        placement.up_y = -placement.up_y;
    }
    return placement;
}

void Backdrop::nudge_mark(Mark which, double aft, double up) {
    const PicturePlacement at = placement();
    const double px = width_ / 1000.0;
    const picture::Spot spot = mark(which);
    put_mark(which, {spot.x + px * (aft * at.along_x + up * at.up_x),
                     spot.y + px * (aft * at.along_y + up * at.up_y)});
}

PicturePlacement Backdrop::placement() const {
    return frozen_ ? *frozen_ : placement_by_marks();
}

void Backdrop::hold(std::optional<Mark> mark) {
    held = mark;
    if (mark)
        frozen_ = placement_by_marks();
    else
        frozen_.reset();
}

std::string Backdrop::marks_text() const {
    Json json{{"apart_mm", units::mm_from_m(apart_m_)}, {"by_rule", by_rule_}, {"strength", strength_}};
    for (std::size_t i = 0; i < mark_count; ++i)
        json[mark_words[i]] = {marks_[i].x, marks_[i].y};
    return document::compact_text(json);
}

void Backdrop::start_search() {
    if (!ready_) return;
    auto begun = picture::OutlineSearch::begin({width_, height_, 4, rgba_});
    if (begun.ok()) search_ = std::move(begun).value();
}

std::optional<Outcome<picture::Profile>> Backdrop::search_on() {
    if (!search_ || search_->advance()) return std::nullopt;
    const Outcome<picture::Contour> found = search_->result();
    search_.reset();
    if (!found.ok()) return Outcome<picture::Profile>(found.problems());
    picture::Scale scale;
    const bool rule = by_rule_;
    scale.from = mark(rule ? Mark::rule_from : Mark::nose);
    scale.to = mark(rule ? Mark::rule_to : Mark::tail);
    scale.distance_m = apart_m_;
    scale.nose = mark(Mark::nose);
    scale.tail = mark(Mark::tail);
    return picture::profile_from(*found, scale);
}

} // namespace evenfall::shell::state
