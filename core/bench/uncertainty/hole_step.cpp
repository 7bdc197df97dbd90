#include "bench/uncertainty/hole_step.hpp"

#include "body/bore.hpp"
#include "document/work_done.hpp"

namespace evenfall {

HoleStep hole_step(const document::Document& document, std::size_t index, const shape::Body& body) {
    const document::Hole& hole = document.holes[index];
    HoleStep step;
    step.hole = static_cast<int>(index);
    step.material = hole.fill.value_or(document::Fill{}).material;
    step.diameter_m = hole.diameter_m;
    step.depth_m = hole.depth_m;
    step.drills = hole.depth_m > 0.0 && !document::is_cut(hole);
    if (hole.depth_m > 0.0) {
        const holes::HoleContents contents = holes::contents(hole, holes::place(hole, body));
        step.fill_kg = contents.fill_kg;
        step.column_m = contents.fill_column_m;
    }
    if (!(step.fill_kg > 0.0)) step.work = hole.depth_m > 0.0 ? HoleWork::leave_empty : HoleWork::leave_whole;
    return step;
}

} // namespace evenfall
