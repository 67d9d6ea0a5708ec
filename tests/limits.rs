//! The US criteria for ammonia against every value that is printed in them.

mod support;

use firstfill::analysis::criteria::{acute_mg_n_per_l, chronic_mg_n_per_l};
use support::check::Check;
use support::table::Table;

/// Units of the second significant figure that lie between two values.
fn second_figures_apart(found: f64, printed: f64) -> f64 {
    let unit = 10f64.powi(printed.log10().floor() as i32 - 1);
    (found - printed) / unit
}

#[test]
fn all_54_printed_criteria_come_out_at_two_significant_figures() {
    let table = Table::read("epa2013_ammonia_values");
    let words = table.words("criterion").into_iter();
    let cases = words.zip(table.words("case"));
    let columns = ["temp_c", "ph", "tan_mg_n_l"];
    let mut check = Check::of("Ammonia criteria, acute and chronic, all 54 printed values");
    for ((criterion, case), [t, ph, printed]) in cases.zip(table.numbers(columns)) {
        let ours = match criterion {
            "chronic_ccc" => chronic_mg_n_per_l(ph, t),
            "acute_cmc" => acute_mg_n_per_l(ph, t, case == "oncorhynchus_present"),
            other => panic!("{other}"),
        };
        check.see(
            second_figures_apart(ours, printed),
            (criterion, case, t, ph),
        );
    }
    check.holds(54);
}
