#include "base/unit_set.hpp"

namespace evenfall::units {

Unit UnitSet::of(Quantity quantity) const {
    switch (quantity) {
    case Quantity::length:
        return length;
    case Quantity::thickness:
        return inches() ? Unit::inch : Unit::mm;
    case Quantity::depth:
        return inches() ? Unit::foot : Unit::m;
    case Quantity::mass:
        return mass;
    case Quantity::speed:
        return fall;
    case Quantity::temperature:
        return temperature;
    case Quantity::retrieve:
        return inches() ? Unit::ft_per_s : Unit::m_per_s;
    case Quantity::beats:
        return inches() ? Unit::per_10_ft : Unit::per_m;
    case Quantity::share:
        return Unit::percent;
    case Quantity::angle:
        return Unit::degree;
    case Quantity::density:
        return Unit::kg_per_m3;
    case Quantity::volume:
        return Unit::cm3;
    case Quantity::salinity:
        return Unit::g_per_kg;
    case Quantity::time:
        return Unit::second;
    case Quantity::number:
        break;
    }
    return Unit::one;
}

bool inches_rule(std::string_view locale) {
    return locale.find("_US") != std::string_view::npos || locale.find("-US") != std::string_view::npos;
}

} // namespace evenfall::units
