#include "document/schema.hpp"

#include "document/json_text.hpp"
#include "document/table.hpp"
#include "materials/woods.hpp"

#include <initializer_list>

namespace evenfall::document {
namespace {

Tree number_schema(const NumberField& field) {
    Tree schema{{"type", "number"}, {"minimum", field.min}, {"maximum", field.max}};
    if (!field.unit.empty()) schema["$comment"] = "unit: " + std::string(field.unit);
    return schema;
}

Tree points_schema(const Field& field) {
    const Tree pair{{"type", "array"},
                    {"prefixItems", Tree::array({number_schema(field.number), number_schema(field.second)})},
                    {"items", false},
                    {"minItems", 2}};
    return {{"type", "array"}, {"items", pair}, {"minItems", field.min_count}, {"maxItems", field.max_count}};
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

Tree word_schema(const Field& field) {
    Tree all = Tree::array();
    for (const FieldWord& word : field.words)
        all.push_back(std::string(word.word));
    return {{"enum", std::move(all)}};
}

/// Describes one struct by its table.
class Describer {
public:
    explicit Describer(const Table& table) : usual_(table.defaults) {
        for (const Field& field : table.fields)
            describe(field);
    }

    [[nodiscard]] Tree schema() const {
        Tree schema{{"type", "object"}, {"additionalProperties", false}};
        if (!required_.empty()) schema["required"] = required_;
        schema["properties"] = properties_;
        for (const auto& [key, value] : rules_.items())
            schema[key] = value;
        return schema;
    }

private:
    void describe(const Field& field) {
        switch (field.sort) {
        case Sort::version:
            put(field.key, {{"const", field.version}}, true);
            break;
        case Sort::number:
            number(field.number, field.offset, field.required);
            break;
        case Sort::optional_number:
            put(field.key, number_schema(field.number), field.required);
            break;
        case Sort::ordinal: {
            Tree schema = number_schema(field.number);
            schema["type"] = "integer";
            put(field.key, std::move(schema));
            break;
        }
        case Sort::text: {
            Tree schema = text_schema();
            schema["default"] = value_at<std::string>(usual_, field.offset);
            put(field.key, std::move(schema));
            break;
        }
        case Sort::wood: {
            Tree ids = Tree::array();
            for (const materials::Wood& wood : materials::woods())
                ids.push_back(std::string(wood.id));
            put_ids(field, std::move(ids));
            break;
        }
        case Sort::material: {
            Tree ids = Tree::array();
            for (const materials::Solid& solid : materials::solids()) {
                if (solid.serves(field.use)) ids.push_back(std::string(solid.id));
            }
            put_ids(field, std::move(ids));
            break;
        }
        case Sort::choice: {
            Tree schema = word_schema(field);
            schema["default"] = std::string(word_of(field, choice_at(usual_, field.offset)));
            put(field.key, std::move(schema));
            break;
        }
        case Sort::yes_no:
            put(field.key, {{"type", "boolean"}, {"default", value_at<bool>(usual_, field.offset)}});
            break;
        case Sort::flags: {
            Tree usual = Tree::array();
            for (const FieldWord& flag : field.words) {
                if (value_at<bool>(usual_, flag.value)) usual.push_back(std::string(flag.word));
            }
            put(field.key, {{"type", "array"},
                            {"items", word_schema(field)},
                            {"minItems", 1},
                            {"default", std::move(usual)}});
            break;
        }
        case Sort::exactly_one:
            put(field.number.key, number_schema(field.number));
            put(field.second.key, number_schema(field.second));
            rules_["oneOf"] =
                Tree::array({required_keys({field.number.key}), required_keys({field.second.key})});
            break;
        case Sort::either:
            number(field.number, field.offset, field.number.required);
            put(field.second.key, number_schema(field.second));
            rules_["not"] = required_keys({field.number.key, field.second.key});
            break;
        case Sort::number_or_points:
            put(field.key, {{"anyOf", Tree::array({number_schema(field.second), points_schema(field)})}},
                field.required);
            break;
        case Sort::points:
            put(field.key, points_schema(field), field.required);
            break;
        case Sort::object:
            put(field.key, Describer(field.inner()).schema(), field.required);
            break;
        case Sort::optional_object:
            put(field.key, {{"oneOf", Tree::array({{{"type", "null"}}, Describer(field.inner()).schema()})}});
            break;
        case Sort::list:
            put(field.key, {{"type", "array"},
                            {"maxItems", field.max_count},
                            {"items", Describer(field.inner()).schema()}});
            break;
        case Sort::names:
            put(field.key,
                {{"type", "array"}, {"minItems", 1}, {"maxItems", field.max_count}, {"items", text_schema()}},
                true);
            break;
        }
    }

    void number(const NumberField& field, std::size_t offset, bool required) {
        Tree schema = number_schema(field);
        if (!required) schema["default"] = to_trade(field, value_at<double>(usual_, offset));
        put(field.key, std::move(schema), required);
    }

    void put_ids(const Field& field, Tree ids) {
        put(field.key, {{"enum", std::move(ids)}, {"default", value_at<std::string>(usual_, field.offset)}});
    }

    void put(std::string_view key, Tree schema, bool required = false) {
        properties_[std::string(key)] = std::move(schema);
        if (required) required_.push_back(std::string(key));
    }

    const void* usual_;
    Tree properties_ = Tree::object();
    Tree required_ = Tree::array();
    Tree rules_ = Tree::object();
};

} // namespace

std::string schema_text() {
    Tree schema{
        {"$schema", "https://json-schema.org/draft/2020-12/schema"},
        {"title", "Evenfall document, version " + std::to_string(document_version)},
        {"description",
         "One jointed wooden lure: everything its builder decides. x runs aft from the nose, y to starboard, "
         "z up from the datum line; pitch is positive nose-up."}};
    const Tree body = Describer(document_table()).schema();
    for (const auto& [key, value] : body.items())
        schema[key] = value;
    return laid_out_text(schema);
}

} // namespace evenfall::document
