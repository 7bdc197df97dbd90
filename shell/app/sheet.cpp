#include "app/app.hpp"

#include "app/parts.hpp"
#include "look/font_data.hpp"
#include "output.hpp"

namespace evenfall::shell {

std::string_view App::typeface(bool semibold) {
    const auto bytes = [](const unsigned char* data, unsigned size) {
        return std::string_view(reinterpret_cast<const char*>(data), size);
    };
    return semibold ? bytes(look::font_semibold, look::font_semibold_size)
                    : bytes(look::font_regular, look::font_regular_size);
}

std::string App::sheet_file(SheetForm form, const std::string& address) const {
    const state::SheetSettings& wish = parts_->session.view.sheet;
    SheetOptions options;
    options.format = form == SheetForm::leaves ? SheetFormat::html_pages
                     : form == SheetForm::pdf  ? SheetFormat::pdf
                     : form == SheetForm::svg  ? SheetFormat::svg
                                               : SheetFormat::html;
    options.units = parts_->session.settings.units;
    options.speech = parts_->translator.speech();
    options.paper = wish.paper;
    options.lures = wish.lures;
    options.address = address;
    options.typefaces = {typeface(false), typeface(true)};
    std::vector<BatchPart> batch{{parts_->session.kept(), wish.lures}};
    for (const state::KeptRecipe& recipe : parts_->motion.recipes) {
        const auto lures = wish.with.find(recipe.id);
        if (lures != wish.with.end()) batch.push_back({recipe.document, lures->second});
    }
    const auto made =
        batch.size() > 1 ? build_batch_sheet(batch, options) : build_sheet(parts_->session.kept(), options);
    if (made) return *made;
    if (form != SheetForm::leaves) return {};
    return "<p>" + sheet::xml(said(sentences(made.problems(), options.units))) + "</p>";
}

} // namespace evenfall::shell
