#include "state/edits.hpp"

#include "body.hpp"
#include "document_fields.hpp"
#include "look/words_state.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::state {
namespace {

/// To 0.1 mm, the accuracy of knife and ruler.
double tenth_mm(double m) {
    return std::round(m * 1e4) / 1e4;
}

bool ends_at(const document::Pocket& pocket, double x_m) {
    return pocket.x_to_m > x_m - 1e-6 && pocket.x_from_m < x_m - 0.001;
}

} // namespace

Edit on_tail(std::function<void(document::Tail&)> change) {
    return on_document([change = std::move(change)](document::Document& d) {
        if (d.tail) change(*d.tail);
    });
}

document::CurvePoints& line_of(document::Tail& tail, TailLine line) {
    return line == TailLine::top ? tail.back : line == TailLine::bottom ? tail.belly : tail.half_thickness;
}

void stretch_tail(document::Tail& tail, double along, double up, double across) {
    for (const TailLine line : {TailLine::top, TailLine::bottom, TailLine::half_thickness}) {
        for (auto& point : line_of(tail, line)) {
            point.x_m *= along;
            point.value *= line == TailLine::half_thickness ? across : up;
        }
    }
}

Edit add_tail() {
    return on_document([](document::Document& d) {
        const double end = drawn_length_m(d);
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
            cut.name = look::words::new_pocket;
            cut.x_from_m = end - 0.010;
            cut.x_to_m = end;
            cut.width_m = 0.002;
            slot = d.pockets.insert(d.pockets.end(), cut);
        }
        if (slot != d.pockets.end()) {
            const shape::Box box = shape::box_of(*slot);
            const double high = std::min({half, box.z_to_m - tail.z_m, tail.z_m - box.z_from_m});
            const double across = 2.0 * std::min(box.y_to_m, -box.y_from_m);
            using document::Tenon;
            constexpr document::NumberField along = document::field_of<&Tenon::length_m>;
            constexpr document::NumberField broad = document::field_of<&Tenon::thickness_m>;
            constexpr document::NumberField up = document::field_of<&Tenon::height_m>;
            const Tenon tenon{std::min(end - box.x_from_m, most_si(along)), std::min(across, most_si(broad)),
                              2.0 * high};
            if (tenon.length_m >= least_si(along) && tenon.thickness_m >= least_si(broad) &&
                tenon.height_m >= least_si(up))
                tail.tenon = tenon;
        }
        d.tail = tail;
    });
}

Edit remove_tail() {
    return on_document([](document::Document& d) {
        d.tail.reset();
        std::erase_if(d.corrections,
                      [](const document::Correction& c) { return c.of == document::Cause::tail; });
    });
}

} // namespace evenfall::shell::state
