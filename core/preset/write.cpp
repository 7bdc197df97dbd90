#include "preset/write.hpp"

#include "evenfall.hpp"
#include "preset/field_table.hpp"
#include "preset/json_text.hpp"

#include <functional>

namespace evenfall::preset {
namespace {

enum class Form {
    full,     ///< every field that holds something
    compact,  ///< only what differs from its default
};

/// Turns one struct into one JSON object; see preset/field_table.hpp for the calls. Keys come in the table's order.
template <class T>
class Writer {
public:
    Writer(Form form, const T& object) : form_(form), object_(object) {}

    [[nodiscard]] const Tree& tree() const { return tree_; }

    void version(std::string_view key, int version) { tree_[std::string(key)] = version; }

    template <class A>
    void number(const NumberField& field, A at) {
        const double value = to_trade(field, std::invoke(at, object_));
        put(field.key, value, !field.required && value == to_trade(field, std::invoke(at, defaults_)));
    }

    template <class A>
    void optional_number(const NumberField& field, A at) {
        if (const auto& held = std::invoke(at, object_)) put(field.key, to_trade(field, *held), false);
    }

    template <class A>
    void ordinal(const NumberField& field, A at) {
        if (const auto& held = std::invoke(at, object_)) put(field.key, *held + 1, false);
    }

    template <class A>
    void text(const TextField& field, A at) {
        const std::string& held = std::invoke(at, object_);
        // An empty name says nothing; it is left out even of the full form, where that is what reads back.
        const bool is_default = held == std::invoke(at, defaults_);
        put(field.key, held, is_default, is_default && held.empty());
    }

    template <class A>
    void wood(std::string_view key, A at) {
        text({key, key}, at);
    }

    template <class A>
    void material(std::string_view key, materials::Use, A at) {
        text({key, key}, at);
    }

    template <class Words, class A>
    void choice(std::string_view key, const Words& words, A at) {
        const auto held = std::invoke(at, object_);
        for (const auto& word : words) {
            if (word.value == held) put(key, std::string(word.word), held == std::invoke(at, defaults_));
        }
    }

    template <class A>
    void yes_no(std::string_view key, A at) {
        put(key, std::invoke(at, object_), std::invoke(at, object_) == std::invoke(at, defaults_));
    }

    template <class Flags>
    void flags(std::string_view key, const Flags& all) {
        Tree words = Tree::array();
        bool is_default = true;
        for (const auto& flag : all) {
            if (object_.*flag.member) words.push_back(std::string(flag.word));
            is_default = is_default && object_.*flag.member == defaults_.*flag.member;
        }
        put(key, std::move(words), is_default);
    }

    template <class A, class B>
    void exactly_one(const NumberField& field_a, A a, const NumberField& field_b, B b) {
        optional_number(field_a, a);
        optional_number(field_b, b);
    }

    template <class A, class B, class W, class E>
    void either(const NumberField& field_a, A a, E word_a, const NumberField& field_b, B b, E, W which) {
        if (std::invoke(which, object_) == word_a) put(field_a.key, to_trade(field_a, std::invoke(a, object_)), false);
        else put(field_b.key, to_trade(field_b, std::invoke(b, object_)), false);
    }

    template <class A>
    void number_or_points(const PointsField& field, A at) {
        const auto& held = std::invoke(at, object_);
        const auto pairs = [&](const CurvePoints& points) {
            if (points.size() == 1 && to_trade(field.first, points[0].x_m) == 0.0) {
                return Tree(to_trade(field.second, points[0].value));
            }
            return as_pairs(field, points, &CurvePoint::x_m, &CurvePoint::value);
        };
        Tree tree = pairs(held);
        const bool is_default = tree == pairs(std::invoke(at, defaults_));
        put(field.key, std::move(tree), is_default);
    }

    template <class A, class F, class S>
    void points(const PointsField& field, A at, F first, S second) {
        const auto& held = std::invoke(at, object_);
        const bool nothing = held.empty() && !field.required;
        put(field.key, as_pairs(field, held, first, second), nothing, nothing);
    }

    template <class A>
    void object(std::string_view key, std::string_view, A at, bool required = false) {
        Tree tree = written(std::invoke(at, object_));
        const bool nothing = tree.empty() && !required;
        put(key, std::move(tree), nothing);
    }

    template <class A>
    void optional_object(std::string_view key, std::string_view, A at) {
        const auto& held = std::invoke(at, object_);
        const auto& usual = std::invoke(at, defaults_);
        if (!held) {
            put(key, nullptr, !usual.has_value(), !usual.has_value());
            return;
        }
        Tree tree = written(*held);
        const bool is_default = usual.has_value() && tree.empty();
        put(key, std::move(tree), is_default);
    }

    template <class A>
    void list(const ListField& field, A at) {
        const auto& held = std::invoke(at, object_);
        Tree entries = Tree::array();
        for (const auto& entry : held) entries.push_back(written(entry));
        put(field.key, std::move(entries), held.empty(), held.empty());
    }

    template <class A>
    void names(const ListField& field, A at) {
        put(field.key, Tree(std::invoke(at, object_)), false);
    }

private:
    template <class Points, class F, class S>
    static Tree as_pairs(const PointsField& field, const Points& points, F first, S second) {
        Tree pairs = Tree::array();
        for (const auto& point : points) {
            pairs.push_back(Tree::array({to_trade(field.first, std::invoke(first, point)),
                                         to_trade(field.second, std::invoke(second, point))}));
        }
        return pairs;
    }

    template <class U>
    [[nodiscard]] Tree written(const U& object) const {
        Writer<U> writer(form_, object);
        describe(writer, Of<U>{});
        return writer.tree_.is_null() ? Tree::object() : writer.tree_;
    }

    void put(std::string_view key, Tree value, bool is_default, bool says_nothing = false) {
        if (says_nothing || (is_default && form_ == Form::compact)) return;
        tree_[std::string(key)] = std::move(value);
    }

    template <class>
    friend class Writer;

    Form form_;
    const T& object_;
    const T defaults_{};
    Tree tree_;
};

Tree tree_of(const Document& document, Form form) {
    Writer<Document> writer(form, document);
    describe(writer, Of<Document>{});
    return writer.tree();
}

}  // namespace

std::string write_compact(const Document& document) { return compact_text(tree_of(document, Form::compact)); }

bool same(const Document& a, const Document& b) { return write_compact(a) == write_compact(b); }

}  // namespace evenfall::preset

namespace evenfall {

std::string write_document(const preset::Document& document) {
    return preset::laid_out_text(preset::tree_of(document, preset::Form::full));
}

}  // namespace evenfall
