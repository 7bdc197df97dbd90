#include "answers/answers.hpp"
#include "base/number_text.hpp"
#include "output/sheet/parts.hpp"

namespace evenfall::sheet {

using units::number_text;
using units::Unit;

double ledger_kg(const SheetInput& job, ledger::Kind kind, std::size_t item) {
    return ledger::sum_of(job.evaluation.ledger, kind, static_cast<int>(item)).mass.kg;
}

double usual_hours(const document::Coat& coat) {
    if (coat.material == "uv_resin") return 0.5;
    if (coat.material == "ca") return 1.0;
    if (coat.material == "acrylic_paint" || coat.material == "primer") return 2.0;
    if (coat.material == "epoxy" || coat.material == "polyurethane") return 24.0;
    return 12.0;
}

std::string hole_name(const document::Document& document, std::size_t hole) {
    const std::string& name = document.holes[hole].name;
    return name.empty() ? std::to_string(hole + 1) : name;
}

std::string speed_text(double metres_per_second, const units::UnitSet& units) {
    const auto in = [&](Unit unit) {
        return units::with_symbol(number_text(metres_per_second, unit, unit == Unit::mm_per_s ? 0 : 2), unit);
    };
    return units.inches() ? in(units.fall) : in(Unit::s_per_ft) + ", " + in(Unit::mm_per_s);
}

std::string percent(double share) {
    return number_text(share, Unit::percent, 0) + " %";
}

std::string fall_text(const std::optional<Fall>& fall, Behaviour behaviour, const units::UnitSet& units) {
    if (!fall) {
        switch (behaviour) {
        case Behaviour::floats:
            return "floats";
        case Behaviour::suspends:
            return "suspends";
        case Behaviour::falls:
            return "–";
        }
    }
    return speed_text(fall->speed_m_s, units);
}

} // namespace evenfall::sheet
