//! An invented tank of six days as a scenario, so that many runs, or whole commands, take little.

/// The scenario.
pub const TANK: &str = r#"
name = "a short tank"
length = 6
[tank]
inside = "60 x 30 x 36 cm"
water_line = "33 cm"
[soil]
kind = "medium"
amount = "6 L"
[water.tap]
alkalinity = "4 dKH"
[light]
on = "11:00..18:00"
[gas]
on = "10:00..17:00"
hold = "26 mg/L"
tuned_on = [2]
[changes]
early = { days = "1..6", every = 2, share = "50 %" }
[plants]
stems = { cover = "40 %" }
"#;
