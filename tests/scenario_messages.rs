//! The exact text of every message a scenario can get.

use std::path::Path;

use firstfill::scenario;

/// A small file without a mistake; the mistakes are added to it.
const TANK: &str = "[tank]\ninside = \"60 x 30 x 36 cm\"\nwater_line = \"33 cm\"\n";

fn said(text: &str) -> String {
    match scenario::read_text("tank.toml", text) {
        Ok(loaded) => panic!("no problem found; notices: {:?}", loaded.case.notices),
        Err(problems) => problems.render(false),
    }
}

/// One test per message: a sentence, and what is added to the small file.
macro_rules! messages {
    ($($name:ident: $text:expr;)*) => {
        $(#[test] fn $name() { insta::assert_snapshot!(said(&format!("{TANK}{}", $text))); })*
    };
}

#[test]
fn the_small_file_has_no_mistake() {
    assert!(scenario::read_text("tank.toml", TANK).is_ok());
}

// keys and sections
messages! {
    a_misspelt_key_gets_the_nearest_one: "hardscpe = \"3 L\"\n";
    a_misspelt_section_gets_the_nearest_one: "[lihgt]\non = \"10:00..18:00\"\n";
    a_key_in_the_wrong_section_is_sent_to_its_own: "at_soil = \"medium\"\n";
    a_name_unlike_any_other_lists_the_known_ones: "zzzz = 1\n";
    a_misspelt_key_of_an_entry_gets_the_nearest_one: "[changes]\nearly = { day = 3, shara = \"50 %\" }\n";
    a_section_that_is_a_number_is_refused: "[surface]\nkind = \"ripple\"\n[plants]\nstems = 5\n";
    a_missing_key_shows_the_line_to_add: "[soil]\nkind = \"rich\"\n";
    a_missing_key_of_an_entry_shows_what_to_add: "[changes]\nearly = { day = 3 }\n";
}

// types and syntax
messages! {
    a_text_where_a_number_is_needed: "[stock]\nfirst = { day = 3, count = \"many\", each = \"0.5 g\" }\n";
    a_number_where_true_or_false_is_needed: "lid = 1\n";
    a_word_nobody_knows_gets_the_nearest_one: "[surface]\nkind = \"riple\"\n";
    a_line_without_quotes: "temperature = 24.5 °C\n";
    a_key_given_twice: "hardscape = \"3 L\"\nhardscape = \"4 L\"\n";
    a_line_that_is_no_line: "this is not toml\n[soil\n";
}

// quantities
messages! {
    a_bare_number_shows_the_ways_to_write_it: "hardscape = 3\n";
    a_bare_number_in_quotes_too: "temperature = \"24.5\"\n";
    a_share_without_a_percent_sign: "[changes]\nearly = { day = 3, share = 0.5 }\n";
    a_unit_nobody_knows: "hardscape = \"3 buckets\"\n";
    a_unit_that_is_nearly_right: "temperature = \"24 °Z\"\n";
    a_unit_of_another_kind: "hardscape = \"3 kg\"\n";
    a_gallon_of_either_kind: "hardscape = \"1 gal\"\n";
    nitrite_in_ppm_alone: "[water.tap]\nnitrite = \"5 ppm\"\n";
    ammonia_in_mg_per_l_alone: "[water.tap]\nammonia = \"1 mg/L\"\n";
    nitrate_in_mg_per_l_alone: "[water.tap]\nnitrate = \"20 mg/L\"\n";
    phosphate_in_ppm_alone: "[water.tap]\nphosphate = \"1 ppm\"\n";
    potassium_in_ppm_alone: "[doses]\nweekly = { day = 8, potassium = \"3 ppm\" }\n";
    alkalinity_in_ppm_alone: "[water.tap]\nalkalinity = \"100 ppm\"\n";
    hardness_in_degrees_alone: "[water.tap]\nhardness = \"8 °\"\n";
    a_decimal_comma: "hardscape = \"3,5 L\"\n";
    an_uncertain_quantity: "hardscape = \"3..5 L\"\n";
    an_empty_text: "hardscape = \"\"\n";
    a_word_where_a_quantity_is_needed: "hardscape = \"a bit\"\n";
    a_value_out_of_range_is_told_in_the_same_unit: "temperature = \"299 °C\"\n";
    a_value_out_of_range_in_fahrenheit: "temperature = \"176 °F\"\n";
    a_negative_volume: "hardscape = \"-3 L\"\n";
    a_gas_rate_in_litres: "[gas]\non = \"10:00..18:00\"\nrate = \"2 L/day\"\n";
    feed_without_a_per_day: "[stock]\nfirst = { day = 3, count = 2, each = \"1 g\", feed = \"2 %\" }\n";
}

// times and days
messages! {
    a_time_that_is_none: "[changes]\ntime = \"18:75\"\n";
    a_timer_that_is_none: "[light]\non = \"10 to 18\"\n";
    a_timer_with_a_strange_key: "[light]\non = { from = \"10:00\", until = \"18:00\" }\n";
    lights_that_are_never_on: "[light]\non = \"10:00..10:00\"\n";
    light_of_nothing: "[light]\non = \"10:00..18:00\"\nat_soil = \"0 µmol/m²/s\"\n";
    a_date_without_a_start_shows_the_line_to_add: "[changes]\nearly = { day = \"2027-03-08\", share = \"50 %\" }\n";
    weekdays_without_a_start_show_the_line_to_add: "[changes]\nlate = { days = \"1..56\", on = [\"Sun\"], share = \"50 %\" }\n";
    a_day_after_the_run_ends: "[changes]\nlate = { day = 60, share = \"50 %\" }\n";
    a_range_that_begins_after_the_run_ends: "[changes]\nlate = { days = \"60..70\", every = 2, share = \"50 %\" }\n";
    a_range_the_wrong_way_round: "[changes]\nlate = { days = \"20..7\", every = 2, share = \"50 %\" }\n";
    a_day_that_is_neither_number_nor_date: "[changes]\nlate = { days = \"next week\", share = \"50 %\" }\n";
    a_range_that_does_not_say_how_often: "[changes]\nearly = { days = \"1..7\", share = \"50 %\" }\n";
    every_and_on_together: "[changes]\nearly = { days = \"1..7\", every = 2, on = [\"Sun\"], share = \"50 %\" }\n";
    day_and_days_together: "[changes]\nearly = { day = 3, days = \"1..7\", every = 2, share = \"50 %\" }\n";
    two_changes_at_one_minute: "[changes]\na = { day = 3, share = \"50 %\" }\nb = { days = [1, 3], share = \"20 %\" }\n";
    a_change_over_100_percent: "[changes]\nearly = { day = 3, share = \"120 %\" }\n";
    a_step_before_the_line_it_follows: "[light]\non = \"10:00..18:00\"\n[light.steps]\nmore = { day = 0, at_soil = \"high\" }\n";
}

#[test]
fn a_weekday_that_is_none() {
    let changes = "[changes]\nlate = { days = \"1..56\", on = [\"Sunn\"], share = \"50 %\" }\n";
    insta::assert_snapshot!(said(&format!("start = \"2027-03-06\"\n{TANK}{changes}")));
}

#[test]
fn a_weekday_that_does_not_come() {
    let changes = "[changes]\nlate = { days = \"1..2\", on = [\"Sat\"], share = \"50 %\" }\n";
    insta::assert_snapshot!(said(&format!("start = \"2027-03-06\"\n{TANK}{changes}")));
}

#[test]
fn a_date_before_the_filling() {
    let changes = "[changes]\nlate = { day = \"2027-03-01\", share = \"50 %\" }\n";
    insta::assert_snapshot!(said(&format!("start = \"2027-03-06\"\n{TANK}{changes}")));
}

#[test]
fn a_change_before_the_tank_is_full() {
    let changes = "[changes]\nearly = { day = 0, time = \"09:00\", share = \"50 %\" }\n";
    insta::assert_snapshot!(said(&format!(
        "start = \"2027-03-06 10:00\"\n{TANK}{changes}"
    )));
}

#[test]
fn a_start_that_is_no_date() {
    insta::assert_snapshot!(said(&format!("start = \"6 March\"\n{TANK}")));
}

#[test]
fn a_length_of_no_days() {
    insta::assert_snapshot!(said(&format!("length = 0\n{TANK}")));
}

// what does not fit together
messages! {
    soil_hardscape_and_water_that_do_not_fit: "hardscape = \"40 L\"\n[soil]\namount = \"18 L\"\n";
    a_net_volume_that_does_not_fit: "";
    plants_that_cover_more_than_the_bed: "[plants]\nstems = { cover = \"60 %\" }\ncarpet = { cover = \"50 %\" }\n";
    a_planting_that_does_not_say_its_group: "[plants]\nfront = { cover = \"60 %\" }\n";
    gas_with_hold_and_rate: "[gas]\non = \"10:00..18:00\"\nhold = \"28 mg/L\"\nrate = \"2 g/day\"\n";
    gas_with_neither: "[gas]\non = \"10:00..18:00\"\n";
    gas_at_a_rate_without_hours: "[gas]\nrate = \"2 g/day\"\n";
    a_controller_with_a_tuned_valve: "[gas]\nhold = \"28 mg/L\"\nstop_at = \"30 mg/L\"\n";
    a_surface_with_a_word_and_a_number: "[surface]\nkind = \"ripple\"\ntransfer = \"0.75 m/day\"\n";
    a_blend_over_100_percent: "[water.ro]\n[water.rain]\n[refill]\nblend = { ro = \"60 %\", rain = \"50 %\" }\n";
    a_blend_of_a_water_nobody_described: "[refill]\nblend = { ro = \"60 %\" }\n";
    a_tap_with_ph_and_co2: "[water.tap]\nph = 7.6\nco2 = \"5 mg/L\"\n";
    battery_air_without_an_air_flow: "[power_cuts]\nstorm = { day = 18, off = \"14:00..20:00\", battery_air = true }\n";
    feed_without_animals: "[stock]\nfirst = { day = 42, feed = \"2 %/day\" }\n";
    a_dose_of_nothing: "[doses]\nweekly = { day = 8 }\n";
    a_trim_of_plants_that_are_not_there: "[plants]\nstems = { cover = \"40 %\" }\n[trims]\nfirst = { day = 20, plants = \"stem\", share = \"40 %\" }\n";
    a_price_of_something_unknown: "[prices]\nto = \"0.004 /L\"\n";
}

// parameters
messages! {
    an_unknown_parameter_gets_the_nearest_ones: "[parameters]\nmu_NBO = { value = \"0.7 /day\", why = \"cool room\" }\n";
    an_override_without_a_reason: "[parameters]\nmu_NOB = { value = \"0.7 /day\" }\n";
    an_override_that_is_a_bare_value: "[parameters]\nmu_NOB = \"0.7 /day\"\n";
    an_override_with_an_empty_reason: "[parameters]\nmu_NOB = { value = \"0.7 /day\", why = \"\" }\n";
    an_override_in_a_unit_of_another_kind: "[parameters]\nmu_NOB = { value = \"0.7 mg/L\", why = \"cool room\" }\n";
    an_override_that_is_impossible: "[parameters]\nphi_filt = { value = 1.5, why = \"big filter\" }\n";
}

// files
fn load_said(path: &Path) -> String {
    let folder = path.parent().unwrap_or(path).display().to_string();
    match scenario::load(path) {
        Ok(_) => panic!("no problem found"),
        Err(problems) => problems.render(false).replace(&folder, "here"),
    }
}
