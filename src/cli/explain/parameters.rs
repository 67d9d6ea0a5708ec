//! `explain parameters`.

use super::sheet::Sheet;
use crate::model::parameters;
use crate::output::number::six_digits;

/// Every number of the model.
pub fn sheet() -> Sheet {
    let mut sheet = Sheet::new(&["id", "default", "unit", "low", "high", "meaning", "source"]);
    for spec in parameters::all() {
        sheet.row([
            spec.id.to_string(),
            six_digits(spec.default),
            spec.unit.to_string(),
            six_digits(spec.low),
            six_digits(spec.high),
            spec.meaning.to_string(),
            spec.source.line(),
        ]);
    }
    sheet.foot(
        "Change one in a scenario: [parameters]  mu_NOB = { value = \"0.7 /day\", why = \"cool room\" }",
    );
    sheet
}
