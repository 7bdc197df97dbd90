#include "sheet/writers.hpp"

namespace evenfall::sheet {

std::string html(const Layout& layout, const Faces& faces) {
    const std::string w = mm_number(layout.width_mm), h = mm_number(layout.height_mm);
    std::string out = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                      "<meta name=\"viewport\" content=\"width=device-width\">\n<title>" +
                      xml(layout.title) + "</title>\n<style>\n" + svg_style(faces) + "@page{size:" + w + "mm " + h +
                      "mm;margin:0}\n"
                      "html,body{margin:0;padding:0}\n"
                      "svg.page{display:block;break-after:page;break-inside:avoid;background:#fff;overflow:hidden}\n"
                      "svg.page:last-child{break-after:auto}\n"
                      "@media screen{body{background:#e4dfd3;padding:4mm 0}svg.page{margin:0 auto 4mm;box-shadow:0 0 1.5mm #0003}}\n"
                      "</style>\n</head>\n<body>\n";
    for (const Page& page : layout.pages) {
        out += "<svg class=\"page\" role=\"img\" aria-label=\"" + xml(page.title) +
               "\" xmlns=\"http://www.w3.org/2000/svg\" width=\"" + w + "mm\" height=\"" + h + "mm\" viewBox=\"0 0 " + w + ' ' + h +
               "\">\n" + svg_items(page) + "</svg>\n";
    }
    // Pages follow one another without a blank between, which some browsers would print as a page of its own.
    out.erase(out.size() - 1);
    return out + "</body>\n</html>\n";
}

}  // namespace evenfall::sheet
