//! `explain keys` and `explain study`.

use super::sheet::Sheet;
use crate::scenario::keys::{KEYS, Key, STUDY_KEYS};

/// Every key of a scenario file, in the order of the documentation.
pub fn sheet() -> Sheet {
    let mut sheet = listed(KEYS);
    sheet.foot("NAME is a name of your own. A key a.b.c may be written as c = ... under [a.b].");
    sheet
}

/// Every key of a study file.
pub fn of_studies() -> Sheet {
    let mut sheet = listed(STUDY_KEYS);
    sheet.foot(
        "NAME is the id of a parameter (explain parameters) or a dotted path of the scenario (explain keys).",
    );
    sheet
}

fn listed(keys: &[Key]) -> Sheet {
    let mut sheet = Sheet::new(&["key", "meaning", "written like", "when left out"]);
    for key in keys {
        let left_out = if key.provenance.is_empty() {
            key.default.to_string()
        } else {
            format!("{} ({})", key.default, key.provenance)
        };
        sheet.row([
            key.path.to_string(),
            key.meaning.to_string(),
            key.example.to_string(),
            left_out,
        ]);
    }
    sheet
}
