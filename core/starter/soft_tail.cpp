#include "body/body.hpp"
#include "document/field_of.hpp"
#include "starter/new_lure.hpp"
#include "starter/rounded.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::starter {

namespace {

bool ends_at(const document::Pocket& pocket, double x_m) {
    return pocket.x_to_m > x_m - 1e-6 && pocket.x_from_m < x_m - 0.001;
}

std::optional<document::Tenon> tenon_for(const document::Pocket& slot, double end_m, double half_m,
                                         double z_m) {
    using document::Tenon;
    constexpr document::NumberField along = document::field_of<&Tenon::length_m>;
    constexpr document::NumberField broad = document::field_of<&Tenon::thickness_m>;
    constexpr document::NumberField up = document::field_of<&Tenon::height_m>;
    const shape::Box box = shape::box_of(slot);
    const double high = std::min({half_m, box.z_to_m - z_m, z_m - box.z_from_m});
    const double across = 2.0 * std::min(box.y_to_m, -box.y_from_m);
    const Tenon tenon{std::min(end_m - box.x_from_m, most_si(along)), std::min(across, most_si(broad)),
                      2.0 * high};
    if (tenon.length_m >= least_si(along) && tenon.thickness_m >= least_si(broad) &&
        tenon.height_m >= least_si(up))
        return tenon;
    return std::nullopt;
}

} // namespace

void add_soft_tail(document::Document& d) {
    const double end = d.shape.back.empty() ? 0.0 : d.shape.back.back().x_m;
    if (!(end > 0.0)) return;
    const double above = d.shape.back.back().value;
    const double below = d.shape.belly.back().value;
    const double length = tenth_mm(0.25 * end);
    const double half = std::max(tenth_mm(0.5 * (above - below)), 0.004);
    const double thick = std::clamp(tenth_mm(d.shape.half_width.back().value), 0.001, 0.003);
    document::Tail tail;
    tail.x_m = end;
    tail.z_m = tenth_mm(0.5 * (above + below));
    tail.back = {{0.0, half},
                 {0.4 * length, tenth_mm(0.6 * half)},
                 {0.8 * length, tenth_mm(1.3 * half)},
                 {length, half}};
    tail.belly = tail.back;
    for (auto& point : tail.belly)
        point.value = -point.value;
    tail.half_thickness = {{0.0, thick}, {length, 0.0005}};
    auto slot = std::find_if(d.pockets.begin(), d.pockets.end(),
                             [end](const document::Pocket& p) { return ends_at(p, end); });
    if (slot == d.pockets.end() && d.pockets.size() < document::max_pockets) {
        document::Pocket cut;
        cut.name = "Slot";
        cut.x_from_m = end - 0.010;
        cut.x_to_m = end;
        cut.width_m = 0.002;
        slot = d.pockets.insert(d.pockets.end(), cut);
    }
    if (slot != d.pockets.end()) tail.tenon = tenon_for(*slot, end, half, tail.z_m);
    d.tail = tail;
}

} // namespace evenfall::starter
