//! `explain units`.

use super::sheet::Sheet;
use crate::base::units::{Kind, Unit, all_kinds};
use crate::output::number::six_digits;

/// Every unit that can be written, kind by kind.
pub fn sheet() -> Sheet {
    let mut sheet = Sheet::new(&["quantity", "unit", "is", "also written", "for example"]);
    for kind in all_kinds() {
        for (at, unit) in kind.units.iter().enumerate() {
            let example = if at == 0 {
                examples(kind)
            } else {
                String::new()
            };
            sheet.row([
                kind.name.to_string(),
                unit.symbol.to_string(),
                worth(kind, unit),
                unit.spellings.join(", "),
                example,
            ]);
        }
        for unclear in kind.unclear {
            let asked = format!("refused: it could be {}", unclear.meant.join(", "));
            sheet.row([
                kind.name.to_string(),
                unclear.spellings.join(", "),
                asked,
                String::new(),
                String::new(),
            ]);
        }
    }
    sheet.foot("Quantities are written with their unit, in quotes. A unit that could mean several things is refused.\nA reading you are not sure of may be a range: \"3..4 dKH\" is below 3 in one tank of twenty and above 4 in one of twenty. The central run uses its middle: the geometric one; the arithmetic one for temperatures, shares and ranges from 0.");
    sheet
}

/// What one of a unit is in the first unit of its kind.
fn worth(kind: &Kind, unit: &Unit) -> String {
    let base = kind.base().symbol;
    if unit.symbol == base {
        return "the unit of the model".into();
    }
    let one = six_digits(unit.to_base(1.0));
    if unit.shift == 0.0 {
        format!("{one} {base}")
    } else {
        format!(
            "1 {} is {one} {base}, each further one {} {base}",
            unit.symbol,
            six_digits(unit.factor)
        )
    }
}

fn examples(kind: &Kind) -> String {
    let quoted: Vec<String> = kind
        .examples
        .iter()
        .map(|example| format!("\"{example}\""))
        .collect();
    quoted.join("  ")
}
