//! `explain limits`.

use super::sheet::Sheet;
use crate::analysis::limits::Limits;
use crate::output::number::six_digits;

/// The limits a tank is judged by.
pub fn sheet() -> Sheet {
    let mut sheet = Sheet::new(&["key", "limit", "unit", "decides", "meaning", "source"]);
    for (at, limit) in Limits::default().all().into_iter().enumerate() {
        let decides = if at < 4 {
            "the ready day"
        } else {
            "nothing: shown beside it"
        };
        sheet.row([
            limit.key.to_string(),
            six_digits(limit.value),
            limit.unit.to_string(),
            decides.to_string(),
            limit.meaning.to_string(),
            limit.source.line(),
        ]);
    }
    sheet.foot("Change one in a scenario under [limits], for example: oxygen = \"6 mg/L\"");
    sheet
}
