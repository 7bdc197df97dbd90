#include "steps/fields.hpp"

#include "widgets/choice.hpp"

namespace evenfall::shell::steps {

Quantity quantity_in(std::string_view unit) {
    if (unit == "mm") return Quantity::length;
    if (unit == "g") return Quantity::mass;
    if (unit == "°") return Quantity::angle;
    if (unit == "%") return Quantity::percent;
    if (unit == "kg/m³") return Quantity::density;
    if (unit == "mm/s") return Quantity::fall;
    if (unit == "°C") return Quantity::temperature;
    if (unit == "g/kg") return Quantity::salinity;
    if (unit == "s") return Quantity::time;
    if (unit == "cm³") return Quantity::volume;
    return Quantity::number;
}

NumberSpec spec_of(const document::NumberField& field, const Shown& shown) {
    return {shown.quantity.value_or(quantity_in(field.unit)), document::least_si(field),
            document::most_si(field), shown.step, shown.decimals};
}

std::string Fields::said(std::string_view what) const {
    return kind_.empty() ? std::string(what) : label_of(what, kind_, index_);
}

void Fields::number(std::string_view key, std::string_view label, double& value, const NumberSpec& spec,
                    std::string_view below) {
    if (const auto set = widgets::number_field(desk_.ui, id(key), label, value, spec, below)) {
        value = *set;
        changed(label);
    }
}

void Fields::optional_number(std::string_view key, std::string_view label, std::optional<double>& value,
                             double start, const NumberSpec& spec, std::string_view absent,
                             std::string_view below) {
    if (const auto set =
            widgets::optional_number_field(desk_.ui, id(key), label, value, start, spec, absent, below)) {
        value = *set;
        changed(label);
    }
}

bool Fields::material(std::string_view key, std::string_view label, materials::Use use, std::string& value,
                      std::string_view none, std::string_view none_below) {
    const auto picked = pick_material(desk_, id(key), label, use, value, none, none_below);
    if (!picked) return false;
    value = *picked;
    changed(label);
    return true;
}

void Fields::text(std::string_view key, std::string_view label, std::string& value) {
    if (auto typed = widgets::text_field(desk_.ui, id(key), label, value)) {
        value = std::move(*typed);
        changed(label);
    }
}

void Fields::toggle(std::string_view key, std::string_view label, bool& value, std::string_view below) {
    if (widgets::toggle(desk_.ui, id(key), label, value, below)) {
        value = !value;
        changed(label);
    }
}

bool Fields::choice(std::string_view key, std::string_view label, std::span<const std::string_view> names,
                    int& on, std::string_view what) {
    const auto tapped = label.empty() ? widgets::choice(desk_.ui, id(key), names, on)
                                      : widgets::choice(desk_.ui, id(key), label, names, on);
    if (!tapped) return false;
    on = *tapped;
    changed(what.empty() ? label : what);
    return true;
}

} // namespace evenfall::shell::steps
