//! `explain milestones`.

use super::sheet::Sheet;
use crate::analysis::study::milestone;

/// Everything that a study can look at, in the order of its tables.
pub fn sheet() -> Sheet {
    let mut sheet = Sheet::new(&["milestone", "unit", "meaning"]);
    for one in milestone::all() {
        let unit = if one.unit == "1" { "" } else { one.unit };
        sheet.row([one.name, unit, one.what].map(String::from));
    }
    sheet.foot("Name them in a study file: milestones = [\"ready_day\", \"tan_peak_mg_n_per_l\"]");
    sheet
}
