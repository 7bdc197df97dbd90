#include "answers/answers.hpp"
#include "base/number_text.hpp"
#include "materials/solids.hpp"
#include "output/sheet/parts.hpp"

#include <cmath>

namespace evenfall::sheet {

using units::number_text;
using units::Unit;

double ledger_kg(const SheetInput& job, ledger::Kind kind, std::size_t item) {
    ledger::Sum sum;
    for (const ledger::Line& line : job.evaluation.ledger) {
        if (line.kind == kind && line.item == static_cast<int>(item)) sum += line;
    }
    return sum.mass.kg;
}

double usual_hours(const document::Coat& coat) {
    if (coat.material == "ca") return 1.0;
    if (coat.material == "acrylic_paint") return 2.0;
    if (coat.material == "epoxy" || coat.material == "polyurethane") return 24.0;
    return 12.0;
}

std::string mm_text(double metres, int decimals) {
    return number_text(metres, Unit::mm, decimals);
}
std::string g_text(double kilograms, int decimals) {
    return number_text(kilograms, Unit::gram, decimals);
}

std::string signed_g_text(double kilograms) {
    const std::string text = g_text(kilograms);
    const bool plus = kilograms > 0.0 && text.find_first_of("123456789") != std::string::npos;
    return plus ? '+' + text : text;
}

std::string bit_inch_text(double diameter_m) {
    const double nearest_m = units::m_from_inch(std::round(units::inch_from_m(diameter_m) * 64.0) / 64.0);
    const std::string text = units::inch_text(diameter_m) + " in";
    return std::abs(nearest_m - diameter_m) < 5e-5 ? text : "near " + text;
}

std::string hole_name(const document::Document& document, std::size_t hole) {
    const std::string& name = document.holes[hole].name;
    return name.empty() ? std::to_string(hole + 1) : name;
}

std::string material_text(const std::string& id) {
    const materials::Solid* solid = materials::find_solid(id);
    return solid != nullptr ? std::string(solid->name) : id;
}

std::string fall_text(const std::optional<Fall>& fall, MassInWater in_water) {
    if (!fall) {
        switch (behaviour_of(in_water)) {
        case Behaviour::floats:
            return "floats";
        case Behaviour::suspends:
            return "hangs still";
        case Behaviour::falls:
            return "–";
        }
    }
    return number_text(fall->speed_m_s, Unit::s_per_ft, 2) + " s/ft, " +
           number_text(fall->speed_m_s, Unit::mm_per_s, 0) + " mm/s";
}

const char* stage_text(Stage stage) {
    switch (stage) {
    case Stage::carved:
        return "carved";
    case Stage::drilled:
        return "drilled, pocketed";
    case Stage::hardware:
        return "hardware in";
    case Stage::leaded:
        return "leaded, capped";
    case Stage::sealed:
        return "sealed";
    case Stage::painted:
        return "painted";
    case Stage::clear_coated:
        return "clear coated";
    case Stage::dressed:
        return "dressed";
    }
    return "";
}

} // namespace evenfall::sheet
