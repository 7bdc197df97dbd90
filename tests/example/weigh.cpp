// What a recipe's finished lure weighs, in air and in water, and how fast it falls: the smallest program on
// the core.
#include <evenfall.hpp>

#include <cstdio>
#include <fstream>
#include <iterator>
#include <string>

int main(int argc, char** argv) {
    std::ifstream file(argc > 1 ? argv[1] : "");
    const std::string text{std::istreambuf_iterator<char>(file), {}};

    const auto document = evenfall::read_document(text);
    const auto evaluation = document ? evenfall::evaluate(*document) : document.problems();
    if (!evaluation) {
        for (const evenfall::Problem& problem : evaluation.problems())
            std::puts(problem.sentence.text(evenfall::units::metric).c_str());
        return 2;
    }
    const evenfall::Answers& answers = evaluation->answers;
    std::printf("%s: %.2f g, in water %.2f g", document->name.c_str(), 1e3 * answers.mass.kg,
                1e3 * answers.in_water.kg);
    if (answers.fall) std::printf(", falls at %.0f mm/s", 1e3 * answers.fall->speed_m_s);
    std::puts(".");
    return 0;
}
