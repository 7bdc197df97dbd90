#include "output/sheet/writers.hpp"

namespace evenfall::sheet {

namespace {

void put(std::string& out, const char* name, const std::string& words) {
    out += '<';
    out += name;
    out += '>';
    out += xml(words);
    out += "</";
    out += std::string_view(name).substr(0, std::string_view(name).find(' '));
    out += ">\n";
}

/// The text of a page as headings, paragraphs and tables, for screen readers.
std::string spoken(const Page& page) {
    std::string out;
    bool in_table = false;
    for (const SpokenText& said : page.said) {
        const bool is_row = said.kind == SpokenText::Kind::head || said.kind == SpokenText::Kind::row;
        if (in_table && (!is_row || said.kind == SpokenText::Kind::head)) out += "</table>\n";
        if (is_row && (!in_table || said.kind == SpokenText::Kind::head)) out += "<table>\n";
        in_table = is_row;
        if (!is_row) {
            put(out, said.kind == SpokenText::Kind::heading ? "h3" : "p", said.cells.front());
            continue;
        }
        out += "<tr>";
        for (const std::string& cell : said.cells)
            put(out, said.kind == SpokenText::Kind::head && !cell.empty() ? "th scope=\"col\"" : "td", cell);
        out += "</tr>\n";
    }
    return in_table ? out + "</table>\n" : out;
}

} // namespace

std::string html_pages(const Layout& layout) {
    const std::string w = mm_number(layout.width_mm), h = mm_number(layout.height_mm);
    std::string out;
    for (const Page& page : layout.pages) {
        out += "<section class=\"leaf\"><svg aria-hidden=\"true\" xmlns=\"http://www.w3.org/2000/svg\" "
               "width=\"" +
               w + "mm\" height=\"" + h + "mm\" viewBox=\"0 0 " + w + ' ' + h + "\">\n" + svg_items(page) +
               "</svg>\n<div class=\"said\">\n<h2>" + xml(page.title) + "</h2>\n" + spoken(page) +
               "</div></section>";
    }
    return out;
}

std::string html(const Layout& layout, const Faces& faces) {
    return "<!DOCTYPE html>\n<html lang=\"" + layout.language +
           "\">\n<head>\n<meta charset=\"utf-8\">\n"
           "<meta name=\"viewport\" content=\"width=device-width\">\n<title>" +
           xml(layout.title) + "</title>\n<style>\n" + svg_style(faces) +
           "@page{size:" + mm_number(layout.width_mm) + "mm " + mm_number(layout.height_mm) +
           "mm;margin:0}\n"
           "html,body{margin:0;padding:0}\n"
           ".leaf{position:relative;break-after:page;break-inside:avoid;overflow:hidden}\n"
           ".leaf svg{display:block;background:#fff;overflow:hidden}\n"
           ".leaf:last-child{break-after:auto}\n"
           "@media screen{body{background:#e4dfd3;padding:4mm 0}.leaf{width:max-content;margin:0 auto "
           "4mm;box-shadow:0 0 1.5mm #0003}"
           ".said{position:absolute;width:1px;height:1px;top:0;overflow:hidden;clip-path:inset(50%)}}\n"
           "@media print{.said{display:none}}\n"
           "</style>\n</head>\n<body>\n"
           // No white space between pages: some browsers would print it as a page of its own.
           + html_pages(layout) + "</body>\n</html>\n";
}

} // namespace evenfall::sheet
