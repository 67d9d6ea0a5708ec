//! `[doses]`: what is dosed, per litre of the water present.

use crate::base::units::{Kind, everyday};
use crate::engine::event::{Dose, EventKind};
use crate::scenario::draft::Draft;
use crate::scenario::problem::Problem;
use crate::scenario::reader::Reader;
use crate::scenario::repeats;

/// Reads `[doses]`.
pub fn read(file: &Reader<'_>, draft: &mut Draft<'_>) {
    for entry in file.section("doses").named("NAME") {
        let when = repeats::when(&entry, draft);
        let dose = dose(&entry);
        entry.close();
        if let (Some(when), Some(dose)) = (when, dose) {
            draft.schedule(&entry.path, &when, &EventKind::Dose(dose));
        }
    }
}

fn dose(entry: &Reader<'_>) -> Option<Dose> {
    use everyday::{ALKALINITY, AMMONIA, CHLORIDE, HARDNESS, IRON, NITRATE, PHOSPHATE, POTASSIUM};
    let mut is_bad = false;
    let mut read = |key, kind: &'static Kind, most| {
        let amount = entry.quantity(key, kind, (0.0, most));
        is_bad |= amount.is_bad();
        amount.or(0.0)
    };
    let dose = Dose {
        ammonium_mg_n_per_l: read("ammonium", &AMMONIA, 50.0),
        ammonia_mg_n_per_l: read("ammonia", &AMMONIA, 50.0),
        nitrate_mg_n_per_l: read("nitrate", &NITRATE, 50.0),
        phosphate_mg_p_per_l: read("phosphate", &PHOSPHATE, 50.0),
        potassium_mg_per_l: read("potassium", &POTASSIUM, 500.0),
        iron_mg_per_l: read("iron", &IRON, 10.0),
        bicarbonate_meq_per_l: read("alkalinity", &ALKALINITY, 10.0),
        hardness_meq_per_l: read("hardness", &HARDNESS, 20.0),
        chloride_mg_per_l: read("chloride", &CHLORIDE, 5000.0),
    };
    if is_bad {
        return None;
    }
    if dose == Dose::default() {
        if let Some(place) = &entry.place {
            entry.desk.problem(
                Problem::at(place, format!("{} doses nothing", entry.path))
                    .help("say what goes in, for example potassium = \"3 mg K/L\""),
            );
        }
        return None;
    }
    Some(dose)
}
