#pragma once

// What is said before hands and lungs can be hurt, in one place for page, program and sheet. Common practice;
// labels, safety sheets and local rules go first.

namespace evenfall::cautions {

inline constexpr const char* lead = "Wash your hands after lead, make no dust, never sand it dry, and keep "
                                    "it from children and food. Melt it "
                                    "only outdoors or under strong extraction, bone-dry. Some waters forbid "
                                    "lead tackle: tungsten, bismuth, tin "
                                    "and steel are in the tables. Local rules decide.";

} // namespace evenfall::cautions
