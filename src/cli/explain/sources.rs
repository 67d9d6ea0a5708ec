//! `explain sources`.

use super::sheet::Sheet;
use crate::base::sources::{ALL_WORKS, Work};
use crate::model::parameters;

/// Every publication, with the parameters that rest on it.
pub fn sheet() -> Sheet {
    let mut sheet = Sheet::new(&["key", "publication", "parameters"]);
    for work in ALL_WORKS {
        sheet.row([
            work.key.to_string(),
            work.text.to_string(),
            resting_on(work),
        ]);
    }
    sheet.foot("Works without parameters give constants, criteria or limits.");
    sheet
}

fn resting_on(work: &Work) -> String {
    let ids: Vec<&str> = parameters::all()
        .iter()
        .filter(|spec| spec.source.works.contains(work))
        .map(|spec| spec.id)
        .collect();
    ids.join(", ")
}
