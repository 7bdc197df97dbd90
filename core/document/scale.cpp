#include "document/scale.hpp"

namespace evenfall::document {

namespace {

void scale_depths(Document& d, double k) {
    for (auto& hole : d.holes) {
        hole.depth_m *= k;
        hole.max_depth_m *= k;
        if (hole.fill && hole.fill->mass_kg) *hole.fill->mass_kg *= k;
        if (hole.fill && hole.fill->length_m) *hole.fill->length_m *= k;
    }
}

} // namespace

void stretch_tail(Tail& tail, double along, double up, double across) {
    for (CurvePoints* line : {&tail.back, &tail.belly, &tail.half_thickness}) {
        for (auto& point : *line) {
            point.x_m *= along;
            point.value *= line == &tail.half_thickness ? across : up;
        }
    }
}

void stretch_up(Document& d, double k) {
    for (auto& point : d.shape.back)
        point.value *= k;
    for (auto& point : d.shape.belly)
        point.value *= k;
    for (auto& hanger : d.hangers)
        hanger.z_m *= k;
    for (auto& part : d.parts)
        part.at_m.z *= k;
    for (auto& reading : d.shape.measured) {
        if (reading.height_m) *reading.height_m *= k;
    }
    for (auto& pocket : d.pockets) {
        if (pocket.z_from_m) *pocket.z_from_m *= k;
        if (pocket.z_to_m) *pocket.z_to_m *= k;
    }
    if (d.tail) {
        stretch_tail(*d.tail, 1.0, k, 1.0);
        d.tail->z_m *= k;
        if (d.tail->tenon) d.tail->tenon->height_m *= k;
    }
    scale_depths(d, k);
}

void stretch_across(Document& d, double k) {
    for (auto& point : d.shape.half_width)
        point.value *= k;
    for (auto& reading : d.shape.measured) {
        if (reading.width_m) *reading.width_m *= k;
    }
    for (auto& hole : d.holes)
        hole.y_m *= k;
    for (auto& part : d.parts)
        part.at_m.y *= k;
    for (auto& pocket : d.pockets)
        pocket.y_m *= k;
    if (d.tail) stretch_tail(*d.tail, 1.0, 1.0, k);
}

void stretch_along(Document& d, double k) {
    for (auto* points : {&d.shape.back, &d.shape.belly, &d.shape.half_width, &d.shape.section.curve()}) {
        for (auto& point : *points)
            point.x_m *= k;
    }
    for (auto& reading : d.shape.measured)
        reading.x_m *= k;
    for (auto& joint : d.joints)
        joint.at_m *= k;
    for (auto& hole : d.holes)
        hole.x_m *= k;
    for (auto& hanger : d.hangers)
        hanger.x_m *= k;
    for (auto& part : d.parts)
        part.at_m.x *= k;
    for (auto& pocket : d.pockets) {
        pocket.x_from_m *= k;
        pocket.x_to_m *= k;
    }
    if (d.tail) {
        stretch_tail(*d.tail, k, 1.0, 1.0);
        d.tail->x_m *= k;
        if (d.tail->tenon) d.tail->tenon->length_m *= k;
    }
}

} // namespace evenfall::document
