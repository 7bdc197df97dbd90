// Any bytes as a document of structs, past reader and JSON: a sound one or one just beside its limits, worked
// through by everything that can be asked of it. The first byte says whether it strays, the second what is
// asked.

#include "fuzz/drawn_document.hpp"
#include "fuzz/evaluation_laws.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace evenfall;
    fuzz::Bytes bytes(data, size);
    if (bytes.once_in(4)) bytes.go_astray();
    const unsigned asked = bytes.byte();
    document::Document document = fuzz::DrawnDocument(bytes).draw();

    const Outcome<document::Document> read = read_document(write_document(document));
    const Outcome<Evaluation> raw = evaluate(document);
    if (!raw.ok()) fuzz::must_explain(raw.problems());
    if (!read.ok()) {
        fuzz::must_explain(read.problems());
        fuzz::must(!raw.ok() || bytes.astray(), "what can be worked through can be written and read");
        return 0;
    }
    fuzz::must_keep(*read);
    document = *read;
    const Outcome<Evaluation> evaluation = evaluate(document);
    if (!evaluation.ok()) return 0;

    fuzz::must_add_up(*evaluation);
    fuzz::must_add_a_part(document, *evaluation, bytes);
    static_cast<void>(output::answers_json(document, *evaluation));
    switch (asked & 7u) {
    case 0:
        fuzz::must_swim(document, *evaluation, bytes.usual(0.2, 3.0, 0.001, 100.0));
        break;
    case 1:
        fuzz::must_hinge(document, *evaluation);
        break;
    case 2:
        fuzz::must_plan(document);
        break;
    case 3:
        fuzz::must_know(document);
        break;
    case 4:
        fuzz::must_teach(document);
        break;
    case 5:
        fuzz::must_print(document, bytes);
        break;
    case 6:
        fuzz::must_compare(document, *evaluation, bytes);
        break;
    default:
        fuzz::must_beat(document, *evaluation);
        break;
    }
    return 0;
}
