#include "state/drawer.hpp"

#include "document_fields.hpp"
#include "evenfall.hpp"
#include "look/words_drawer.hpp"
#include "output.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace evenfall::shell::state {
namespace {

namespace words = look::words;
using Json = document::Tree;

constexpr int drawer_version = 1;
constexpr std::array<const char*, 3> kind_words{"part", "wire", "stock"};
constexpr std::size_t longest_name = 80;

/// Reads one piece key by key, and keeps the first problem.
struct Reader {
    const Json& json;
    std::string path;
    std::optional<Problem> problem{};
    std::vector<std::string> known{};

    void refuse(ProblemCode code, const std::string& key, const Sentence& limit, const char* sentence) {
        if (problem) return;
        problem = Problem{code, key.empty() ? path : path + "/" + key, limit,
                          "“" + key + "” " + sentence + limit + "."};
    }
    const Json* find(const char* key) {
        known.emplace_back(key);
        const auto found = json.find(key);
        return found == json.end() ? nullptr : &*found;
    }
    /// In SI, within the limits of the field of the document that the number is meant for.
    std::optional<double> number(const char* key, const document::NumberField& field, bool needed) {
        const Sentence limit = document::limit_text(field);
        const Json* found = find(key);
        if (found == nullptr) {
            if (needed) refuse(ProblemCode::missing_key, key, limit, words::drawer_lacks);
            return std::nullopt;
        }
        if (!found->is_number()) {
            refuse(ProblemCode::wrong_type, key, limit, words::drawer_no_number);
            return std::nullopt;
        }
        const double value = found->get<double>();
        if (!(value >= field.min && value <= field.max)) {
            refuse(ProblemCode::out_of_range, key, limit, words::drawer_off_limits);
            return std::nullopt;
        }
        return document::to_si(field, value);
    }
    std::string text(const char* key, bool needed) {
        const Json* found = find(key);
        if (found != nullptr && found->is_string()) return found->get<std::string>();
        if (found != nullptr || needed) refuse(ProblemCode::wrong_type, key, "", words::drawer_no_text);
        return {};
    }
    void no_others() {
        for (const auto& [key, value] : json.items()) {
            if (std::find(known.begin(), known.end(), key) == known.end())
                refuse(ProblemCode::unknown_key, key, "", words::drawer_unknown);
        }
    }
};

Outcome<DrawerItem> read_thing(const Json& json, const std::string& path) {
    Reader r{json, path};
    if (!json.is_object()) {
        r.refuse(ProblemCode::wrong_type, "", "", words::drawer_no_thing);
        return *r.problem;
    }
    DrawerItem thing;
    const std::string kind = r.text("kind", true);
    const auto known = std::find(kind_words.begin(), kind_words.end(), kind);
    if (known == kind_words.end())
        r.refuse(ProblemCode::unknown_name, "kind", "part, wire, stock", words::drawer_off_limits);
    else
        thing.kind = static_cast<DrawerItemKind>(known - kind_words.begin());
    thing.name = r.text("name", true);
    if (thing.name.empty() || thing.name.size() > longest_name)
        r.refuse(ProblemCode::out_of_range, "name", "1 to 80 bytes", words::drawer_off_limits);
    if (thing.kind != DrawerItemKind::wire) {
        thing.material = r.text("material", true);
        if (materials::find_solid(thing.material) == nullptr)
            r.refuse(ProblemCode::unknown_name, "material", "", words::drawer_no_material);
    }
    if (thing.kind == DrawerItemKind::part) {
        using document::Part;
        thing.mass_kg = r.number("mass_g", document::field_of<&Part::mass_kg>, true).value_or(0.0);
        thing.mass_sigma_kg = r.number("sigma_g", document::field_of<&Part::mass_sigma_kg>, false);
        thing.reach_m = r.number("reach_mm", document::field_of<&Part::reach_m>, false);
        const std::string stage = r.text("put_on", true);
        // "dressed": files of before 1.2
        const auto& stages = document::table::part_stages;
        const auto word = std::find_if(stages.begin(), stages.end(), [&](const auto& w) {
            return w.word == (stage == "dressed" ? "rigged" : stage);
        });
        if (word == stages.end())
            r.refuse(ProblemCode::unknown_name, "put_on", "hardware, painted, rigged",
                     words::drawer_off_limits);
        else
            thing.put_on = word->value;
    } else {
        thing.diameter_m =
            r.number("diameter_mm", document::field_of<&document::Fill::stock_diameter_m>, true)
                .value_or(0.0);
    }
    if (thing.kind == DrawerItemKind::wire) {
        const std::string temper = r.text("temper", true);
        if (temper != "spring" && temper != "soft")
            r.refuse(ProblemCode::unknown_name, "temper", "spring, soft", words::drawer_off_limits);
        thing.temper = temper == "soft" ? document::WireTemper::soft : document::WireTemper::spring;
    }
    r.no_others();
    if (r.problem) return *r.problem;
    return thing;
}

} // namespace

std::size_t Drawer::place_of(DrawerItemKind kind, const std::string& name) const {
    std::size_t i = 0;
    while (i < things_.size() && (things_[i].kind != kind || things_[i].name != name))
        ++i;
    return i;
}

bool Drawer::holds(DrawerItemKind kind, const std::string& name) const {
    return place_of(kind, name) < things_.size();
}

bool Drawer::put(DrawerItem thing) {
    thing.name = document::printable(thing.name, longest_name);
    const std::size_t place = place_of(thing.kind, thing.name);
    if (thing.name.empty() || place >= most_things) return false;
    if (place == things_.size()) things_.emplace_back();
    things_[place] = std::move(thing);
    ++revision_;
    return true;
}

void Drawer::remove(std::size_t index) {
    if (index >= things_.size()) return;
    things_.erase(things_.begin() + static_cast<std::ptrdiff_t>(index));
    ++revision_;
}

bool Drawer::replace(std::size_t index, DrawerItem thing) {
    if (index >= things_.size()) return false;
    thing.name = document::printable(thing.name, longest_name);
    const std::size_t other = place_of(thing.kind, thing.name);
    if (thing.name.empty() || (other < things_.size() && other != index)) return false;
    things_[index] = std::move(thing);
    ++revision_;
    return true;
}

std::string write_drawer(const Drawer& drawer) {
    Json things = Json::array();
    // Numbers as they were typed: a milligram and 0.01 mm are below what is weighed and measured here.
    const auto rounded = [](double value) { return std::round(value * 1e4) / 1e4; };
    for (const DrawerItem& thing : drawer.things()) {
        Json json{{"kind", kind_words[static_cast<std::size_t>(thing.kind)]}, {"name", thing.name}};
        if (thing.kind != DrawerItemKind::wire) json["material"] = thing.material;
        if (thing.kind == DrawerItemKind::part) {
            json["mass_g"] = rounded(units::g_from_kg(thing.mass_kg));
            if (thing.mass_sigma_kg) json["sigma_g"] = rounded(units::g_from_kg(*thing.mass_sigma_kg));
            if (thing.reach_m) json["reach_mm"] = rounded(units::mm_from_m(*thing.reach_m));
            json["put_on"] = document::word_of(document::table::part_stages, thing.put_on);
        } else {
            json["diameter_mm"] = rounded(units::mm_from_m(thing.diameter_m));
        }
        if (thing.kind == DrawerItemKind::wire)
            json["temper"] = thing.temper == document::WireTemper::soft ? "soft" : "spring";
        things.push_back(std::move(json));
    }
    return document::laid_out_text({{"evenfall_drawer", drawer_version}, {"things", std::move(things)}});
}

Outcome<Drawer> read_drawer(const std::string& text) {
    const auto refused = [](ProblemCode code, const char* path, const char* sentence) {
        return Problem{code, path, "", sentence};
    };
    if (text.size() > most_drawer_bytes) return refused(ProblemCode::too_large, "", words::drawer_too_large);
    const auto parsed = document::parse_guarded(text, most_drawer_bytes);
    if (!parsed.ok() || !parsed->is_object())
        return refused(ProblemCode::not_json, "", words::drawer_damaged);
    const Json& json = *parsed;
    const auto version = json.find("evenfall_drawer");
    if (version == json.end() || !version->is_number_integer() || version->get<int>() != drawer_version)
        return refused(ProblemCode::unknown_version, "/evenfall_drawer", words::drawer_other_version);
    const auto things = json.find("things");
    if (things == json.end() || !things->is_array() || json.size() != 2)
        return refused(ProblemCode::missing_key, "/things", words::drawer_damaged);
    if (things->size() > most_things)
        return refused(ProblemCode::too_large, "/things", words::drawer_too_large);
    Drawer drawer;
    for (std::size_t i = 0; i < things->size(); ++i) {
        auto thing = read_thing((*things)[i], "/things/" + std::to_string(i));
        if (!thing.ok()) return thing.problems();
        drawer.put(std::move(thing).value());
    }
    return drawer;
}

DrawerItem drawer_item_of(const document::Part& part) {
    DrawerItem thing;
    thing.name = part.name;
    thing.material = part.material;
    thing.mass_kg = part.mass_kg;
    thing.mass_sigma_kg = part.mass_sigma_kg;
    thing.reach_m = part.reach_m;
    thing.put_on = part.stage;
    return thing;
}

Edit add_part_from(const DrawerItem& thing) {
    return on_document([thing](document::Document& d) {
        d = add_part(thing.put_on)(std::move(d));
        auto& part = d.parts.back();
        part.name = thing.name;
        part.material = thing.material;
        part.mass_kg = thing.mass_kg;
        part.mass_sigma_kg = thing.mass_sigma_kg;
        part.reach_m = thing.reach_m;
    });
}

} // namespace evenfall::shell::state
