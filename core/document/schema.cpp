#include "document/schema.hpp"

#include "document/json_text.hpp"
#include "document/walk.hpp"
#include "materials/woods.hpp"

#include <initializer_list>

namespace evenfall::document {
namespace {

Tree number_schema(const NumberField& field) {
    Tree schema{{"type", "number"}, {"minimum", field.min}, {"maximum", field.max}};
    if (!field.unit.empty()) schema["$comment"] = "unit: " + std::string(field.unit);
    return schema;
}

Tree points_schema(const PointsField& field) {
    const Tree pair{{"type", "array"},
                    {"prefixItems", Tree::array({number_schema(field.first), number_schema(field.second)})},
                    {"items", false},
                    {"minItems", 2}};
    return {
        {"type", "array"}, {"items", pair}, {"minItems", field.min_count}, {"maxItems", max_curve_points}};
}

/// Characters, not bytes, are what a schema counts; so this allows a little more than the reader does.
Tree text_schema() {
    return {{"type", "string"}, {"maxLength", max_text}};
}

Tree required_keys(std::initializer_list<std::string_view> keys) {
    Tree list = Tree::array();
    for (const std::string_view key : keys)
        list.push_back(std::string(key));
    Tree schema = Tree::object();
    schema["required"] = std::move(list);
    return schema;
}

template <class Words>
Tree word_schema(const Words& words) {
    Tree all = Tree::array();
    for (const auto& word : words)
        all.push_back(std::string(word.word));
    return {{"enum", std::move(all)}};
}

Tree with_default(Tree schema, Tree usual) {
    schema["default"] = std::move(usual);
    return schema;
}

template <class T>
Tree schema_of();

/// Describes one struct; its values are the defaults.
class Describer {
public:
    [[nodiscard]] Tree schema() const {
        Tree schema{{"type", "object"}, {"additionalProperties", false}};
        if (!required_.empty()) schema["required"] = required_;
        schema["properties"] = properties_;
        for (const auto& [key, value] : rules_.items())
            schema[key] = value;
        return schema;
    }

    void version(std::string_view key, int version) {
        put("$schema", {{"type", "string"}});
        put(key, {{"const", version}}, true);
    }
    void number(const NumberField& field, double usual) {
        Tree schema = number_schema(field);
        if (!field.required) schema["default"] = to_trade(field, usual);
        put(field.key, std::move(schema), field.required);
    }
    void optional_number(const NumberField& field, const std::optional<double>&) {
        put(field.key, number_schema(field), field.required);
    }
    void ordinal(const NumberField& field, const std::optional<int>&) {
        Tree schema = number_schema(field);
        schema["type"] = "integer";
        put(field.key, std::move(schema));
    }
    void text(const TextField& field, const std::string& usual) {
        put(field.key, with_default(text_schema(), usual));
    }
    void wood(std::string_view key, const std::string& usual) {
        Tree ids = Tree::array();
        for (const materials::Wood& wood : materials::woods())
            ids.push_back(std::string(wood.id));
        put(key, {{"enum", std::move(ids)}, {"default", usual}});
    }
    void material(std::string_view key, materials::Use use, const std::string& usual) {
        Tree ids = Tree::array();
        for (const materials::Solid& solid : materials::solids()) {
            if (solid.serves(use)) ids.push_back(std::string(solid.id));
        }
        put(key, {{"enum", std::move(ids)}, {"default", usual}});
    }
    template <class Words, class E>
    void choice(std::string_view key, const Words& words, E usual) {
        put(key, with_default(word_schema(words), std::string(word_of(words, usual))));
    }
    void yes_no(std::string_view key, bool usual) { put(key, {{"type", "boolean"}, {"default", usual}}); }
    template <class Flags, class T>
    void flags(std::string_view key, const Flags& all, const T& usual) {
        put(key, {{"type", "array"},
                  {"items", word_schema(all)},
                  {"minItems", 1},
                  {"default", flag_words(all, usual)}});
    }
    void exactly_one(const NumberField& a, std::optional<double>, const NumberField& b,
                     std::optional<double>) {
        rules_["oneOf"] = Tree::array({required_keys({a.key}), required_keys({b.key})});
    }
    template <class E>
    void either(const NumberField& a, double usual, E, const NumberField& b, double, E, E) {
        number(a, usual);
        put(b.key, number_schema(b));
        rules_["not"] = required_keys({a.key, b.key});
    }
    void number_or_points(const PointsField& field, const CurvePoints&) {
        put(field.key, {{"anyOf", Tree::array({number_schema(field.second), points_schema(field)})}},
            field.required);
    }
    template <class P>
    void points(const PointsField& field, const std::vector<P>&, double P::*, double P::*) {
        put(field.key, points_schema(field), field.required);
    }
    template <class T>
    void object(std::string_view key, std::string_view, bool required, const T&) {
        put(key, schema_of<T>(), required);
    }
    template <class T>
    void optional_object(std::string_view key, std::string_view, const std::optional<T>&) {
        put(key, {{"oneOf", Tree::array({{{"type", "null"}}, schema_of<T>()})}});
    }
    template <class T>
    void list(const ListField& field, const std::vector<T>&) {
        put(field.key, {{"type", "array"}, {"maxItems", field.max_count}, {"items", schema_of<T>()}});
    }
    void names(const ListField& field, const std::vector<std::string>&) {
        put(field.key,
            {{"type", "array"}, {"minItems", 1}, {"maxItems", field.max_count}, {"items", text_schema()}},
            true);
    }

private:
    void put(std::string_view key, Tree schema, bool required = false) {
        properties_[std::string(key)] = std::move(schema);
        if (required) required_.push_back(std::string(key));
    }

    Tree properties_ = Tree::object();
    Tree required_ = Tree::array();
    Tree rules_ = Tree::object();
};

template <class T>
Tree schema_of() {
    Describer describer;
    walk(describer, defaults<T>());
    return describer.schema();
}

} // namespace

std::string schema_text() {
    Tree schema{
        {"$schema", "https://json-schema.org/draft/2020-12/schema"},
        {"$id", "urn:evenfall:document:" + std::to_string(document_version)},
        {"title", "Evenfall document, version " + std::to_string(document_version)},
        {"description",
         "One jointed wooden lure: everything its builder decides. x runs aft from the nose, y to starboard, "
         "z up from the datum line; pitch is positive nose-up."}};
    const Tree body = schema_of<Document>();
    for (const auto& [key, value] : body.items())
        schema[key] = value;
    return laid_out_text(schema);
}

} // namespace evenfall::document
