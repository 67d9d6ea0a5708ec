//! `explain keys`.

use super::sheet::Sheet;
use crate::scenario::keys::KEYS;

/// Every key of a scenario file, in the order of the documentation.
pub fn sheet() -> Sheet {
    let mut sheet = Sheet::new(&["key", "meaning", "written like", "when left out"]);
    for key in KEYS {
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
    sheet.foot("NAME is a name of your own. A key a.b.c may be written as c = ... under [a.b].");
    sheet
}
