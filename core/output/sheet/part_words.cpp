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

std::string mm_text(double metres, int decimals) {
    return number_text(metres, Unit::mm, decimals);
}
std::string g_text(double kilograms, int decimals) {
    return number_text(kilograms, Unit::gram, decimals);
}

std::string signed_g_text(double kilograms) {
    return units::with_plus(kilograms, g_text(kilograms));
}

std::string hole_name(const document::Document& document, std::size_t hole) {
    const std::string& name = document.holes[hole].name;
    return name.empty() ? std::to_string(hole + 1) : name;
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

} // namespace evenfall::sheet
