#include "document/write.hpp"

#include "document/json_text.hpp"
#include "document/table.hpp"

#include <optional>

namespace evenfall::document {
namespace {

enum class Form {
    full,    ///< every field that holds something
    compact, ///< only what differs from its default
};

Tree tree_of(Form form, const Table& table, const void* object);

/// Turns one struct into one JSON object by its table. Keys come in the table's order.
class Writer {
public:
    Writer(Form form, const Table& table, const void* object)
        : form_(form), object_(object), usual_(table.defaults) {
        for (const Field& field : table.fields)
            write(field);
    }

    Tree tree = Tree::object();

private:
    void write(const Field& field) {
        switch (field.sort) {
        case Sort::version:
            put(field.key, field.version, false);
            break;
        case Sort::number: {
            const double value = number(object_, field.number, field.offset);
            put(field.key, value, !field.required && value == number(usual_, field.number, field.offset));
            break;
        }
        case Sort::optional_number:
            optional_number(field.number, field.offset);
            break;
        case Sort::exactly_one:
            optional_number(field.number, field.offset);
            optional_number(field.second, field.second_offset);
            break;
        case Sort::either:
            if (choice_at(object_, field.which_offset) == field.which_first) {
                put(field.number.key, number(object_, field.number, field.offset), false);
            } else {
                put(field.second.key, number(object_, field.second, field.second_offset), false);
            }
            break;
        case Sort::ordinal:
            if (const auto& held = value_at<std::optional<int>>(object_, field.offset))
                put(field.key, *held + 1, false);
            break;
        case Sort::text:
        case Sort::wood:
        case Sort::material:
            text(field);
            break;
        case Sort::choice:
            choice(field);
            break;
        case Sort::yes_no: {
            const bool held = value_at<bool>(object_, field.offset);
            put(field.key, held, held == value_at<bool>(usual_, field.offset));
            break;
        }
        case Sort::flags:
            flags(field);
            break;
        case Sort::number_or_points:
            number_or_points(field);
            break;
        case Sort::points: {
            const bool nothing = count_of(field, object_) == 0 && !field.required;
            put(field.key, pairs(field, object_), nothing, nothing);
            break;
        }
        case Sort::object: {
            Tree inner = tree_of(form_, field.inner(), place_at(object_, field.offset));
            const bool nothing = inner.empty() && !field.required;
            put(field.key, std::move(inner), nothing);
            break;
        }
        case Sort::optional_object:
            optional_object(field);
            break;
        case Sort::list:
            list(field);
            break;
        case Sort::names:
            put(field.key, value_at<std::vector<std::string>>(object_, field.offset), false);
            break;
        }
    }

    static double number(const void* object, const NumberField& field, std::size_t offset) {
        return to_trade(field, value_at<double>(object, offset));
    }

    void optional_number(const NumberField& field, std::size_t offset) {
        if (const auto& held = value_at<std::optional<double>>(object_, offset))
            put(field.key, to_trade(field, *held), false);
    }

    void text(const Field& field) {
        const auto& held = value_at<std::string>(object_, field.offset);
        // An empty name says nothing; it is left out even of the full form, where that is what reads back.
        const bool is_default = held == value_at<std::string>(usual_, field.offset);
        put(field.key, held, is_default, is_default && held.empty());
    }

    void choice(const Field& field) {
        const int held = choice_at(object_, field.offset);
        const std::string_view word = word_of(field, held);
        if (!word.empty()) put(field.key, std::string(word), held == choice_at(usual_, field.offset));
    }

    void flags(const Field& field) {
        Tree words = Tree::array();
        bool is_default = true;
        for (const FieldWord& flag : field.words) {
            const bool held = value_at<bool>(object_, flag.value);
            if (held) words.push_back(std::string(flag.word));
            is_default = is_default && held == value_at<bool>(usual_, flag.value);
        }
        put(field.key, std::move(words), is_default);
    }

    /// One point at 0 is the same all along, and written as a number.
    static Tree number_or_pairs(const Field& field, const void* object) {
        if (count_of(field, object) == 1) {
            const void* point = entry_of(field, object, 0);
            if (number(point, field.number, field.first_offset) == 0.0)
                return number(point, field.second, field.second_offset);
        }
        return pairs(field, object);
    }

    void number_or_points(const Field& field) {
        Tree held = number_or_pairs(field, object_);
        const bool is_default = held == number_or_pairs(field, usual_);
        put(field.key, std::move(held), is_default);
    }

    static Tree pairs(const Field& field, const void* object) {
        Tree all = Tree::array();
        for (std::size_t i = 0; i < count_of(field, object); ++i) {
            const void* point = entry_of(field, object, i);
            all.push_back(Tree::array({number(point, field.number, field.first_offset),
                                       number(point, field.second, field.second_offset)}));
        }
        return all;
    }

    void optional_object(const Field& field) {
        const bool usually = count_of(field, usual_) > 0;
        if (count_of(field, object_) == 0) {
            put(field.key, nullptr, !usually, !usually);
            return;
        }
        Tree inner = tree_of(form_, field.inner(), entry_of(field, object_, 0));
        const bool is_default = usually && inner.empty();
        put(field.key, std::move(inner), is_default);
    }

    void list(const Field& field) {
        Tree entries = Tree::array();
        const std::size_t count = count_of(field, object_);
        for (std::size_t i = 0; i < count; ++i)
            entries.push_back(tree_of(form_, field.inner(), entry_of(field, object_, i)));
        put(field.key, std::move(entries), count == 0, count == 0);
    }

    void put(std::string_view key, Tree value, bool is_default, bool says_nothing = false) {
        if (says_nothing || (is_default && form_ == Form::compact)) return;
        tree[std::string(key)] = std::move(value);
    }

    Form form_;
    const void* object_;
    const void* usual_;
};

Tree tree_of(Form form, const Table& table, const void* object) {
    return std::move(Writer(form, table, object).tree);
}

Tree tree_of(const Document& document, Form form) {
    return tree_of(form, document_table(), &document);
}

} // namespace

std::string write_compact(const Document& document) {
    return compact_text(tree_of(document, Form::compact));
}

bool same(const Document& a, const Document& b) {
    return write_compact(a) == write_compact(b);
}

} // namespace evenfall::document

namespace evenfall {

std::string write_document(const document::Document& document) {
    return document::laid_out_text(document::tree_of(document, document::Form::full));
}

} // namespace evenfall
