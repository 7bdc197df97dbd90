#include "document/link.hpp"

namespace evenfall::document {

// Part of container version 1: a single changed byte makes every old link unreadable (a test holds its
// checksum). Deflate points back into this text, and short distances cost least, so the likeliest pieces
// stand last.
std::string_view link_dictionary() {
    return R"({"evenfall":1,"name":"","note":"","wood":{"species":"western_redcedar","species":"hard_maple","species":"yellow_poplar",)"
           R"("moisture_percent":8,"density_kg_m3":4,"density_spread_percent":2},"water":{"temperature_C":8},"water":{"temperature_C":20,"salinity_g_kg":25},)"
           R"("tub":{"temperature_C":20},"tub":{"temperature_C":18},"section":{"kind":"chamfered","kind":"free","fullness":[[0,2.2],[,"half_outline":[[0,-1],[0,1]]}},)"
           R"("targets":{"in_water_g":0,"targets":{"in_water_g":-1,"pitch_deg":-2,"fall_band_percent":15,"pitch_band_deg":3}})"
           R"("Fore body","Aft body","Body"],"material":"tungsten","material":"bismuth","material":"tin","material":"brass","material":"nylon","material":"copper",)"
           R"("use":"drilled","use":"fixed","from":"back","end":"point_118","cap":null,"length_mm":,"stock_diameter_mm":6,"fill":{"material":"tungsten","mass_g":)"
           R"("mass_sigma_g":0.,"floods":false,"y_mm":-1,"segment":1,"segment":2,"segment":3,"spread_percent":30,"surfaces":["skin"]},)"
           R"("shape":{"top_mm":[[0,0],[2,5],[4,6],[5,8],[6,9],[8,10],[10,12],[12,13],[15,15],[20,16],[25,17],[30,18],[35,19],[40,20],[45,20],[50,20],[55,20],)"
           R"([60,19.5],[65,19.5],[70,19],[75,18.5],[80,18],[85,17.5],[90,17],[95,16],[100,15.5],[105,15],[110,14],[115,13.5],[120,12],[125,11.5],[130,10.5],)"
           R"([135,10],[140,9],[145,8.5],[150,8],[155,7.5],[160,7],[165,6.5],[170,6]],"bottom_mm":[[0,-2],[3,-6],[5,-8],[10,-11],[15,-13],[20,-15],[30,-17],)"
           R"([40,-18],[50,-18],[60,-18],[75,-17],[90,-16],[110,-14],[130,-11],[150,-8.5],[170,-7]],"half_width_mm":[[0,2],[3,4],[5,5],[10,7],[15,8.5],[20,9.5],)"
           R"([30,11],[45,11.5],[60,12],[75,11.5],[90,11],[110,9],[130,7],[150,4.5],[170,2.5]],"section":{"fullness":2.6}},"section":{"fullness":2.3}},)"
           R"("segments":["Head","Shoulder","Middle","Waist","Tail"],"segments":["Head","Tail"],"segments":["Head","Middle","Tail"],)"
           R"("joints":[{"at_mm":6,"gap_mm":2.5,"relief_fore_deg":15,"relief_aft_deg":25},{"at_mm":1,"gap_mm":3,"relief_fore_deg":20,"relief_aft_deg":20}],)"
           R"("holes":[{"name":"1 head","x_mm":24,"diameter_mm":8,"depth_mm":12.5,"fill":{"mass_g":4.35},"cap":{"material":"epoxy"},"cap":{"material":"dowel"},"cap":{"length_mm":3},)"
           R"("max_depth_mm":22,"wall_mm":2.5},{"name":"2 head","x_mm":36,"diameter_mm":8,"depth_mm":11.2,"fill":{"mass_g":3.62},"max_depth_mm":20},)"
           R"({"name":"4 middle","x_mm":8,"depth_mm":9.7,"fill":{"mass_g":2.84},"max_depth_mm":18},{"x_mm":,"depth_mm":7.9,"fill":{"mass_g":1.76},"max_depth_mm":16}],)"
           R"("pockets":[{"name":"Tail slot","x_from_mm":158,"x_to_mm":170,"width_mm":2},{"name":"Eye pocket, upper","x_from_mm":61,"x_to_mm":65,"width_mm":3.5,"z_from_mm":6,"z_to_mm":11},)"
           R"({"name":"Eye pocket, lower","x_from_mm":65,"x_to_mm":70,"z_from_mm":-11,"z_to_mm":-6}],)"
           R"("parts":[{"name":"Line tie","mass_g":0.4,"x_mm":8,"z_mm":0,"embedded_percent":70},{"name":"Hook hanger, front","mass_g":0.4,"x_mm":42,"z_mm":-15,"embedded_percent":75},)"
           R"({"name":"Eyes, front joint","mass_g":0.7,"x_mm":62,"z_mm":0,"embedded_percent":60},{"name":"Pin, front joint","mass_g":0.35,"x_mm":65,"z_mm":0,"embedded_percent":80},)"
           R"({"name":"Eyes, rear joint","mass_g":0.6,"x_mm":118,"embedded_percent":60},{"name":"Pin, rear joint","mass_g":0.3,"x_mm":120,"embedded_percent":80},)"
           R"({"name":"Glass eye, port","stage":"dressed","material":"glass","mass_g":0.5,"x_mm":14,"y_mm":-7,"z_mm":4,"embedded_percent":80},)"
           R"({"name":"Glass eye, starboard","stage":"dressed","material":"glass","mass_g":0.5,"x_mm":14,"y_mm":7,"z_mm":4},)"
           R"({"name":"Hook and ring, front","stage":"dressed","material":"steel","mass_g":1.9,"x_mm":48,"z_mm":-28},{"name":"Hook and ring, rear","stage":"dressed","material":"steel","mass_g":1.6,"x_mm":100,"z_mm":-26},)"
           R"({"name":"Soft tail","stage":"dressed","material":"plastisol","mass_g":2.4,"x_mm":176,"z_mm":0}],)"
           R"("coats":[{"name":"Sealer","stage":"sealed","kind":"soaks","material":"ca","mass_g":1.2},{"name":"Primer and paint","stage":"painted","material":"acrylic_paint","thickness_mm":0.08},)"
           R"({"name":"Clear coat","thickness_mm":0.35}],"targets":{"fall_mm_s":160,"pitch_deg":-3}})";
}

} // namespace evenfall::document
