#pragma once

#include "document_fields.hpp"
#include "steps/desk.hpp"

#include <functional>
#include <span>

namespace evenfall::shell::steps {

/// How the page shows a number where the unit of its field does not say enough.
struct Shown {
    std::optional<Quantity> quantity{}; ///< else by the field's unit
    std::optional<double> step{};       ///< as NumberSpec has it
    int decimals = -1;
};

/// The quantity of numbers in a unit of the field table.
[[nodiscard]] Quantity quantity_in(std::string_view unit);

/// A field of the document as the keypad asks for it: the limits are those of the table.
[[nodiscard]] NumberSpec spec_of(const document::NumberField& field, const Shown& shown = {});

/// Rows over a copy of one entry of the document. Each row shows a value of the copy and sets it when the
/// builder does; after all rows, the step writes a changed copy back by one edit, labelled by the row that
/// was used.
class Fields {
public:
    /// `kind` and `index` name the entry for the history, "Depth of hole 2"; with an empty kind, the row's
    /// label is used.
    Fields(PanelContext& context, std::string id, std::string_view kind = {}, int index = 0)
        : desk_(context), id_(std::move(id)), kind_(kind), index_(index) {}

    /// A number of the entry, within the limits of its field; an optional one must be there.
    template <auto Member, class T>
    void number(std::string_view key, std::string_view label, T& entry, std::string_view below = {},
                const Shown& shown = {}) {
        number(key, label, value_of(std::invoke(Member, entry)), spec_of(document::field_of<Member>, shown),
               below);
    }
    /// One that may be left out; the keypad begins at `start` then.
    template <auto Member, class T>
    void optional_number(std::string_view key, std::string_view label, T& entry, double start,
                         std::string_view absent, std::string_view below = {}, const Shown& shown = {}) {
        optional_number(key, label, std::invoke(Member, entry), start,
                        spec_of(document::field_of<Member>, shown), absent, below);
    }
    void number(std::string_view key, std::string_view label, double& value, const NumberSpec& spec,
                std::string_view below = {});
    void optional_number(std::string_view key, std::string_view label, std::optional<double>& value,
                         double start, const NumberSpec& spec, std::string_view absent,
                         std::string_view below = {});
    /// True when another one was picked; with `none` "" stands for that.
    bool material(std::string_view key, std::string_view label, materials::Use use, std::string& value,
                  std::string_view none = {}, std::string_view none_below = {});
    void text(std::string_view key, std::string_view label, std::string& value);
    void toggle(std::string_view key, std::string_view label, bool& value, std::string_view below = {});
    /// One of a few; true when another one was tapped. `said` replaces the label in the history.
    bool choice(std::string_view key, std::string_view label, std::span<const std::string_view> names,
                int& on, std::string_view said = {});
    template <class E>
    bool choice(std::string_view key, std::string_view label, std::span<const std::string_view> names, E& on,
                std::string_view said = {}) {
        int number = static_cast<int>(on);
        if (!choice(key, label, names, number, said)) return false;
        on = static_cast<E>(number);
        return true;
    }

    [[nodiscard]] std::string id(std::string_view key) const { return id_ + std::string(key); }
    /// The history's label for a change of this entry.
    [[nodiscard]] std::string said(std::string_view what) const;
    /// Marks the copy as changed.
    void changed(std::string_view what) { history_ = said(what); }

    /// Writes the copy back where a row was used. `of` names the row's owner in the history, "Temperature:
    /// Tub".
    template <class Maker>
    void put(const Maker& edit, std::string_view of = {}) {
        if (history_.empty()) return;
        if (!of.empty()) history_.append(": ").append(of);
        desk_.change(history_, edit());
    }

private:
    static double& value_of(double& held) { return held; }
    static double& value_of(std::optional<double>& held) { return *held; }

    PanelContext& desk_;
    std::string id_;
    std::string_view kind_;
    int index_;
    std::string history_;
};

} // namespace evenfall::shell::steps
