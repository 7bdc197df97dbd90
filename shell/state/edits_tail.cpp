#include "state/edits.hpp"

#include "starter.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::state {
Edit on_tail(std::function<void(document::Tail&)> change) {
    return on_document([change = std::move(change)](document::Document& d) {
        if (d.tail) change(*d.tail);
    });
}

document::CurvePoints& line_of(document::Tail& tail, TailLine line) {
    return line == TailLine::top ? tail.back : line == TailLine::bottom ? tail.belly : tail.half_thickness;
}

Edit add_tail() {
    return on_document([](document::Document& d) { starter::add_soft_tail(d); });
}

Edit remove_tail() {
    return on_document([](document::Document& d) {
        d.tail.reset();
        std::erase_if(d.corrections,
                      [](const document::Correction& c) { return c.of == document::Cause::tail; });
    });
}

} // namespace evenfall::shell::state
