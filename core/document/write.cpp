#include "document/write.hpp"

#include "document/json_text.hpp"
#include "document/walk.hpp"

#include <optional>

namespace evenfall::document {
namespace {

enum class Form {
    full,    ///< every field that holds something
    compact, ///< only what differs from its default
};

template <class T>
Tree tree_of(Form form, const T& object);

/// Turns one struct into one JSON object, with the struct's defaults at hand. Keys come in the table's order.
class Writer {
public:
    explicit Writer(Form form) : form_(form) {}

    Tree tree = Tree::object();

    void version(std::string_view key, int version) { put(key, version, false); }
    void number(const NumberField& field, double held, double usual) {
        const double value = to_trade(field, held);
        put(field.key, value, !field.required && value == to_trade(field, usual));
    }
    void optional_number(const NumberField& field, const std::optional<double>& held,
                         const std::optional<double>&) {
        if (held) put(field.key, to_trade(field, *held), false);
    }
    void exactly_one(const NumberField&, std::optional<double>, const NumberField&, std::optional<double>) {}
    template <class E>
    void either(const NumberField& a, double held_a, E word_a, const NumberField& b, double held_b, E,
                E which) {
        if (which == word_a)
            put(a.key, to_trade(a, held_a), false);
        else
            put(b.key, to_trade(b, held_b), false);
    }
    void ordinal(const NumberField& field, const std::optional<int>& held, const std::optional<int>&) {
        if (held) put(field.key, *held + 1, false);
    }
    /// An empty name says nothing; it is left out even of the full form, where that is what reads back.
    void text(const TextField& field, const std::string& held, const std::string& usual) {
        put(field.key, held, held == usual, held == usual && held.empty());
    }
    void wood(std::string_view key, const std::string& held, const std::string& usual) {
        text({key, key}, held, usual);
    }
    void material(std::string_view key, materials::Use, const std::string& held, const std::string& usual) {
        text({key, key}, held, usual);
    }
    template <class Words, class E>
    void choice(std::string_view key, const Words& words, E held, E usual) {
        const std::string_view word = word_of(words, held);
        if (!word.empty()) put(key, std::string(word), held == usual);
    }
    void yes_no(std::string_view key, bool held, bool usual) { put(key, held, held == usual); }
    template <class Flags, class T>
    void flags(std::string_view key, const Flags& all, const T& object, const T& usual) {
        Tree words = flag_words(all, object);
        const bool is_default = words == flag_words(all, usual);
        put(key, std::move(words), is_default);
    }
    void number_or_points(const PointsField& field, const CurvePoints& held, const CurvePoints& usual) {
        Tree written = number_or_pairs(field, held);
        const bool is_default = written == number_or_pairs(field, usual);
        put(field.key, std::move(written), is_default, held.empty());
    }
    template <class P>
    void points(const PointsField& field, const std::vector<P>& held, double P::*first, double P::*second) {
        const bool nothing = held.empty() && !field.required;
        put(field.key, pairs(field, held, first, second), nothing, nothing);
    }
    template <class T>
    void object(std::string_view key, std::string_view, bool required, const T& held, const T&) {
        Tree inner = tree_of(form_, held);
        const bool nothing = inner.empty() && !required;
        put(key, std::move(inner), nothing);
    }
    template <class T>
    void optional_object(std::string_view key, std::string_view, const std::optional<T>& held,
                         const std::optional<T>& usual) {
        if (!held) return put(key, nullptr, !usual, !usual);
        Tree inner = tree_of(form_, *held);
        const bool is_default = usual && inner.empty();
        put(key, std::move(inner), is_default);
    }
    template <class T>
    void list(const ListField& field, const std::vector<T>& held) {
        Tree entries = Tree::array();
        for (const T& entry : held)
            entries.push_back(tree_of(form_, entry));
        put(field.key, std::move(entries), held.empty(), held.empty());
    }
    void names(const ListField& field, const std::vector<std::string>& held) { put(field.key, held, false); }

private:
    template <class P>
    static Tree pairs(const PointsField& field, const std::vector<P>& held, double P::*first,
                      double P::*second) {
        Tree all = Tree::array();
        for (const P& point : held) {
            all.push_back(
                Tree::array({to_trade(field.first, point.*first), to_trade(field.second, point.*second)}));
        }
        return all;
    }

    /// One point at 0 is the same all along, and written as a number.
    static Tree number_or_pairs(const PointsField& field, const CurvePoints& held) {
        if (held.size() == 1 && to_trade(field.first, held[0].x_m) == 0.0)
            return to_trade(field.second, held[0].value);
        return pairs(field, held, &CurvePoint::x_m, &CurvePoint::value);
    }

    void put(std::string_view key, Tree value, bool is_default, bool says_nothing = false) {
        if (says_nothing || (is_default && form_ == Form::compact)) return;
        tree[std::string(key)] = std::move(value);
    }

    Form form_;
};

template <class T>
Tree tree_of(Form form, const T& object) {
    Writer writer(form);
    walk(writer, object, defaults<T>());
    return std::move(writer.tree);
}

} // namespace

std::string write_compact(const Document& document) {
    return compact_text(tree_of(Form::compact, document));
}

Problems too_long_to_open(const Document& document) {
    if (write_document(document).size() <= max_document_bytes) return {};
    return {
        {ProblemCode::too_large, "", "256 kB",
         "As a file this recipe is longer than 256 kB, which is the limit: it could not be opened again."}};
}

bool same(const Document& a, const Document& b) {
    return write_compact(a) == write_compact(b);
}

} // namespace evenfall::document

namespace evenfall {

std::string write_document(const document::Document& document) {
    return document::laid_out_text(document::tree_of(document::Form::full, document));
}

} // namespace evenfall
