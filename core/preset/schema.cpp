#include "preset/schema.hpp"

#include "materials/woods.hpp"
#include "preset/field_table.hpp"
#include "preset/json_text.hpp"

#include <functional>
#include <initializer_list>

namespace evenfall::preset {
namespace {

Tree number_schema(const NumberField& field) {
    Tree schema{{"type", "number"}, {"minimum", field.min}, {"maximum", field.max}};
    if (!field.unit.empty()) schema["$comment"] = "unit: " + std::string(field.unit);
    return schema;
}

Tree pair_schema(const PointsField& field) {
    return {{"type", "array"},
            {"prefixItems", Tree::array({number_schema(field.first), number_schema(field.second)})},
            {"items", false},
            {"minItems", 2}};
}

Tree points_schema(const PointsField& field) {
    return {{"type", "array"}, {"items", pair_schema(field)}, {"minItems", field.min_count}, {"maxItems", max_curve_points}};
}

/// Characters, not bytes, are what a schema counts; so this allows a little more than the reader does.
Tree text_schema() { return {{"type", "string"}, {"maxLength", max_text}}; }

Tree required_keys(std::initializer_list<std::string_view> keys) {
    Tree list = Tree::array();
    for (const std::string_view key : keys) list.push_back(std::string(key));
    Tree schema = Tree::object();
    schema["required"] = std::move(list);
    return schema;
}

template <class Words>
Tree word_schema(const Words& words) {
    Tree all = Tree::array();
    for (const auto& word : words) all.push_back(std::string(word.word));
    return {{"enum", std::move(all)}};
}

/// Describes one struct; see preset/field_table.hpp for the calls. Defaults come from the struct itself.
template <class T>
class Describer {
public:
    [[nodiscard]] Tree schema() const {
        Tree schema{{"type", "object"}, {"additionalProperties", false}};
        if (!required_.empty()) schema["required"] = required_;
        schema["properties"] = properties_;
        for (const auto& [key, value] : rules_.items()) schema[key] = value;
        return schema;
    }

    void version(std::string_view key, int version) { put(key, {{"const", version}}, true); }

    template <class A>
    void number(const NumberField& field, A at) {
        Tree schema = number_schema(field);
        if (!field.required) schema["default"] = to_trade(field, std::invoke(at, defaults_));
        put(field.key, std::move(schema), field.required);
    }

    template <class A>
    void optional_number(const NumberField& field, A) {
        put(field.key, number_schema(field), field.required);
    }

    template <class A>
    void ordinal(const NumberField& field, A) {
        Tree schema = number_schema(field);
        schema["type"] = "integer";
        put(field.key, std::move(schema));
    }

    template <class A>
    void text(const TextField& field, A at) {
        Tree schema = text_schema();
        schema["default"] = std::invoke(at, defaults_);
        put(field.key, std::move(schema));
    }

    template <class A>
    void wood(std::string_view key, A at) {
        Tree ids = Tree::array();
        for (const materials::Wood& wood : materials::woods()) ids.push_back(std::string(wood.id));
        put(key, {{"enum", std::move(ids)}, {"default", std::invoke(at, defaults_)}});
    }

    template <class A>
    void material(std::string_view key, materials::Use use, A at) {
        Tree ids = Tree::array();
        for (const materials::Solid& solid : materials::solids()) {
            if (solid.serves(use)) ids.push_back(std::string(solid.id));
        }
        put(key, {{"enum", std::move(ids)}, {"default", std::invoke(at, defaults_)}});
    }

    template <class Words, class A>
    void choice(std::string_view key, const Words& words, A at) {
        Tree schema = word_schema(words);
        for (const auto& word : words) {
            if (word.value == std::invoke(at, defaults_)) schema["default"] = std::string(word.word);
        }
        put(key, std::move(schema));
    }

    template <class A>
    void yes_no(std::string_view key, A at) {
        put(key, {{"type", "boolean"}, {"default", std::invoke(at, defaults_)}});
    }

    template <class Flags>
    void flags(std::string_view key, const Flags& all) {
        Tree usual = Tree::array();
        for (const auto& flag : all) {
            if (defaults_.*flag.member) usual.push_back(std::string(flag.word));
        }
        put(key, {{"type", "array"}, {"items", word_schema(all)}, {"minItems", 1}, {"default", std::move(usual)}});
    }

    template <class A, class B>
    void exactly_one(const NumberField& field_a, A, const NumberField& field_b, B) {
        put(field_a.key, number_schema(field_a));
        put(field_b.key, number_schema(field_b));
        rules_["oneOf"] = Tree::array({required_keys({field_a.key}), required_keys({field_b.key})});
    }

    template <class A, class B, class W, class E>
    void either(const NumberField& field_a, A a, E, const NumberField& field_b, B, E, W) {
        number(field_a, a);
        put(field_b.key, number_schema(field_b));
        rules_["not"] = required_keys({field_a.key, field_b.key});
    }

    template <class A>
    void number_or_points(const PointsField& field, A) {
        put(field.key, {{"anyOf", Tree::array({number_schema(field.second), points_schema(field)})}}, field.required);
    }

    template <class A, class F, class S>
    void points(const PointsField& field, A, F, S) {
        put(field.key, points_schema(field), field.required);
    }

    template <class A>
    void object(std::string_view key, std::string_view, A at, bool required = false) {
        put(key, schema_of(std::invoke(at, defaults_)), required);
    }

    template <class A>
    void optional_object(std::string_view key, std::string_view, A at) {
        using Inner = typename std::decay_t<decltype(std::invoke(at, defaults_))>::value_type;
        put(key, {{"oneOf", Tree::array({{{"type", "null"}}, schema_of(Inner{})})}});
    }

    template <class A>
    void list(const ListField& field, A at) {
        using Inner = typename std::decay_t<decltype(std::invoke(at, defaults_))>::value_type;
        put(field.key, {{"type", "array"}, {"maxItems", field.max_count}, {"items", schema_of(Inner{})}});
    }

    template <class A>
    void names(const ListField& field, A) {
        put(field.key, {{"type", "array"}, {"minItems", 1}, {"maxItems", field.max_count}, {"items", text_schema()}}, true);
    }

private:
    template <class U>
    static Tree schema_of(const U&) {
        Describer<U> describer;
        describe(describer, Of<U>{});
        return describer.schema();
    }

    void put(std::string_view key, Tree schema, bool required = false) {
        properties_[std::string(key)] = std::move(schema);
        if (required) required_.push_back(std::string(key));
    }

    const T defaults_{};
    Tree properties_ = Tree::object();
    Tree required_ = Tree::array();
    Tree rules_ = Tree::object();
};

}  // namespace

std::string schema_text() {
    Describer<Document> describer;
    describe(describer, Of<Document>{});
    Tree schema{{"$schema", "https://json-schema.org/draft/2020-12/schema"},
                {"title", "Evenfall document, version " + std::to_string(document_version)},
                {"description", "One jointed wooden lure: everything its builder decides. x runs aft from the nose, y to starboard, "
                                "z up from the datum line; pitch is positive nose-up."}};
    const Tree body = describer.schema();
    for (const auto& [key, value] : body.items()) schema[key] = value;
    return laid_out_text(schema);
}

}  // namespace evenfall::preset
