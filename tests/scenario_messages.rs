//! The exact text of every message a scenario can get.

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
    what_keepers_call_kh_is_sent_to_its_name: "[water.tap]\nkh = \"4 dKH\"\n";
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
    a_range_that_falls: "[room]\ntemperature = \"22..18 °C\"\n";
    a_range_with_an_end_out_of_bounds: "[soil]\namount = \"9 L..20000 L\"\n";
    a_range_without_a_unit: "[water.tap]\nalkalinity = \"3..4\"\n";
    a_range_of_a_share_above_all: "[parameters]\nfilm = { value = \"0.8..1.2\", why = \"seen\" }\n";
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
    a_water_line_and_a_net_volume: "net_volume = \"40 L\"\n";
    a_bed_without_an_amount_of_light_hours: "[light]\nat_soil = \"high\"\n";
    air_without_a_flow: "[air]\non = \"20:00..08:00\"\n";
    more_plantings_than_the_model_holds: "[plants]\na = { group = \"moss\", cover = \"1 %\" }\nb = { group = \"moss\", cover = \"1 %\" }\nc = { group = \"moss\", cover = \"1 %\" }\nd = { group = \"moss\", cover = \"1 %\" }\ne = { group = \"moss\", cover = \"1 %\" }\nf = { group = \"moss\", cover = \"1 %\" }\ng = { group = \"moss\", cover = \"1 %\" }\nh = { group = \"moss\", cover = \"1 %\" }\ni = { group = \"moss\", cover = \"1 %\" }\n";
    a_ph_without_alkalinity: "[water.ro]\nph = 8.2\n";
    a_power_cut_of_no_length: "[power_cuts]\nstorm = { day = 18, off = \"14:00..14:00\" }\n";
    a_top_up_of_a_water_nobody_described: "top_up = \"rian\"\n[water.rain]\n";
    a_seed_level_that_is_none: "[seed]\nlevel = \"a lot\"\n";
    a_limit_in_the_wrong_unit: "[limits]\nnitrite = \"5 mg Cl2/L\"\n";
    plants_that_cover_more_than_the_bed: "[plants]\nstems = { cover = \"60 %\" }\ncarpet = { cover = \"50 %\" }\n";
    a_planting_that_does_not_say_its_group: "[plants]\nfront = { cover = \"60 %\" }\n";
    gas_with_hold_and_rate: "[gas]\non = \"10:00..18:00\"\nhold = \"28 mg/L\"\nrate = \"2 g/day\"\n";
    gas_with_neither: "[gas]\non = \"10:00..18:00\"\n";
    gas_at_a_rate_without_hours: "[gas]\nrate = \"2 g/day\"\n";
    gas_hours_to_be_found_without_light: "[gas]\nhold = \"28 mg/L\"\n";
    a_list_where_a_section_is_needed: "[[changes]]\nday = 3\n";
    a_text_where_a_section_is_needed: "[water]\ntap = \"4 dKH\"\n";
    a_controller_with_a_tuned_valve: "[gas]\nhold = \"28 mg/L\"\nstop_at = \"30 mg/L\"\n";
    a_surface_with_a_word_and_a_number: "[surface]\nkind = \"ripple\"\ntransfer = \"0.75 m/day\"\n";
    a_blend_over_100_percent: "[water.ro]\n[water.rain]\n[refill]\nblend = { ro = \"60 %\", rain = \"50 %\" }\n";
    a_blend_of_a_water_nobody_described: "[refill]\nblend = { ro = \"60 %\" }\n";
    a_tap_with_ph_and_co2: "[water.tap]\nph = 7.6\nco2 = \"5 mg/L\"\n";
    battery_air_without_an_air_flow: "[power_cuts]\nstorm = { day = 18, off = \"14:00..20:00\", battery_air = true }\n";
    feed_without_animals: "[stock]\nfirst = { day = 42, feed = \"2 %/day\" }\n";
    a_dose_of_nothing: "[doses]\nweekly = { day = 8 }\n";
    a_trim_of_plants_that_are_not_there: "[plants]\nstems = { cover = \"40 %\" }\n[trims]\nfirst = { day = 20, plants = \"stem\", share = \"40 %\" }\n";
    a_card_of_one_step: "[test_kit]\nnitrite = \"0.5 mg NO2/L\"\n";
    a_card_that_falls: "[test_kit]\nnitrite = \"0, 1, 0.5 mg NO2/L\"\n";
    a_card_of_two_units: "[test_kit]\nnitrite = \"0 mg N/L, 0.5, 1 mg NO2/L\"\n";
    a_card_of_milligrams_of_what: "[test_kit]\nammonia = \"0, 0.5, 1 mg/L\"\n";
    a_card_without_quotes: "[test_kit]\nammonia = [0, 0.5]\n";
    a_card_below_nothing: "[test_kit]\nammonia = \"-1, 0.5 mg N/L\"\n";
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

#[test]
fn a_file_without_a_tank() {
    insta::assert_snapshot!(said("name = \"no tank\"\n"));
}

#[test]
fn a_tank_of_no_size() {
    insta::assert_snapshot!(said("[tank]\ntemperature = \"24 °C\"\n"));
}

#[test]
fn a_tank_without_a_water_line() {
    insta::assert_snapshot!(said("[tank]\ninside = \"60 x 30 x 36 cm\"\n"));
}

#[test]
fn a_water_line_above_the_rim() {
    insta::assert_snapshot!(said(
        "[tank]\ninside = \"60 x 30 x 36 cm\"\nwater_line = \"40 cm\"\n"
    ));
}

#[test]
fn a_water_line_above_the_rim_hides_no_other_mistake() {
    insta::assert_snapshot!(said(
        "[tank]\ninside = \"60 x 30 x 36 cm\"\nwater_line = \"40 cm\"\nhardscape = \"3 L\"\n\
         [soil]\namount = \"90 L\"\n[plants]\nstems = { cover = \"140 %\" }\n"
    ));
}

#[test]
fn inside_measures_of_two_lengths() {
    insta::assert_snapshot!(said(
        "[tank]\ninside = \"60 x 30 cm\"\nwater_line = \"33 cm\"\n"
    ));
}

#[test]
fn inside_measures_without_a_unit() {
    insta::assert_snapshot!(said(
        "[tank]\ninside = \"60 x 30 x 36\"\nwater_line = \"33 cm\"\n"
    ));
}

#[test]
fn a_net_volume_that_does_not_fit() {
    insta::assert_snapshot!(said(
        "[tank]\ninside = \"60 x 30 x 36 cm\"\nnet_volume = \"60 L\"\n[soil]\namount = \"9 L\"\n"
    ));
}

#[test]
fn a_net_volume_without_a_surface() {
    insta::assert_snapshot!(said("[tank]\nnet_volume = \"47 L\"\n"));
}

#[test]
fn all_problems_come_at_once_and_in_order() {
    insta::assert_snapshot!(said(
        "[tank]\ninside = \"60 x 30 x 36 cm\"\nwater_line = 33\ntemperature = \"299 °C\"\nlenght = 3\n\
         [light]\non = \"10:00..25:00\"\n[chagnes]\nx = { day = 1 }\n"
    ));
}

#[test]
fn more_than_twenty_problems_are_counted() {
    let keys: String = (0..30).map(|n| format!("nonsense_{n} = {n}\n")).collect();
    let text = said(&format!("{TANK}{keys}"));
    assert_eq!(text.matches("unknown name").count(), 20);
    assert!(
        text.ends_with("and 10 more\n\n30 problems in tank.toml; nothing was run\n"),
        "{text}"
    );
}

#[test]
fn a_tab_does_not_move_the_caret() {
    insta::assert_snapshot!(said(&format!("{TANK}hardscape\t=\t3\n")));
}

#[test]
fn windows_line_ends_do_not_show_in_a_message() {
    let text = format!("{TANK}hardscape = 3\n");
    assert_eq!(said(&text.replace('\n', "\r\n")), said(&text));
}

#[test]
fn nothing_a_user_wrote_can_steer_the_terminal() {
    let text = said(&format!(
        "{TANK}hardscape = \"\\u001b[2J\\n{}\"\n",
        "x".repeat(5000)
    ));
    assert!(!text.contains('\u{1b}'), "{text}");
    let title = text.lines().next().unwrap_or("");
    assert!(
        title.chars().count() < 220 && title.ends_with('…'),
        "{title}"
    );
}

#[test]
fn colour_is_given_on_request_only() {
    let problems = scenario::read_text("tank.toml", "x = 1\n").expect_err("x is no key");
    assert!(problems.render(true).contains('\u{1b}'));
    assert!(!problems.render(false).contains('\u{1b}'));
}

// files

/// A folder with files in it.
fn folder(files: &[(&str, &[u8])]) -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a temporary folder can be made");
    for (name, bytes) in files {
        std::fs::write(folder.path().join(name), bytes).expect("a file can be written");
    }
    folder
}

fn load_said(folder: &tempfile::TempDir, name: &str) -> String {
    let path = if name.is_empty() {
        folder.path().to_path_buf()
    } else {
        folder.path().join(name)
    };
    match scenario::load(&path) {
        Ok(_) => panic!("no problem found"),
        Err(problems) => problems
            .render(false)
            .replace(&folder.path().display().to_string(), "here"),
    }
}

#[test]
fn a_missing_file() {
    insta::assert_snapshot!(load_said(&folder(&[]), "tank.toml"));
}

#[test]
fn a_folder_instead_of_a_file() {
    insta::assert_snapshot!(load_said(&folder(&[]), ""));
}

#[test]
fn an_empty_file() {
    insta::assert_snapshot!(load_said(&folder(&[("tank.toml", b"")]), "tank.toml"));
}

#[test]
fn a_file_of_comments_only() {
    insta::assert_snapshot!(load_said(
        &folder(&[("tank.toml", b"# soon\n")]),
        "tank.toml"
    ));
}

#[test]
fn bytes_that_are_not_utf_8() {
    let bytes = b"[tank]\nname = \"K\xF6ln\"\n";
    insta::assert_snapshot!(load_said(&folder(&[("tank.toml", bytes)]), "tank.toml"));
}

#[test]
fn a_file_of_50_mb_is_refused_unread() {
    let folder = folder(&[("film.toml", b"")]);
    let file = std::fs::File::create(folder.path().join("film.toml")).expect("it can be made");
    file.set_len(50_000_000).expect("it can be made long");
    let begun = std::time::Instant::now();
    insta::assert_snapshot!(load_said(&folder, "film.toml"));
    // reading 50 MB and parsing it takes seconds here; refusing by size takes none
    assert!(begun.elapsed().as_millis() < 500);
}

#[test]
fn based_on_a_file_that_is_missing_shows_the_chain() {
    let a = b"based_on = \"b.toml\"\n";
    let b =
        b"based_on = \"c.toml\"\n[tank]\ninside = \"60 x 30 x 36 cm\"\nwater_line = \"33 cm\"\n";
    insta::assert_snapshot!(load_said(
        &folder(&[("a.toml", a), ("b.toml", b)]),
        "a.toml"
    ));
}

#[test]
fn based_on_in_a_loop_shows_the_chain() {
    let a =
        b"based_on = \"b.toml\"\n[tank]\ninside = \"60 x 30 x 36 cm\"\nwater_line = \"33 cm\"\n";
    let b = b"based_on = \"a.toml\"\n";
    insta::assert_snapshot!(load_said(
        &folder(&[("a.toml", a), ("b.toml", b)]),
        "a.toml"
    ));
}

#[test]
fn based_on_that_is_no_name() {
    insta::assert_snapshot!(said(&format!("based_on = 3\n{TANK}")));
}

#[test]
fn a_problem_in_the_file_below_points_into_that_file() {
    let below = format!("{TANK}hardscape = 3\n");
    let above = "based_on = \"below.toml\"\n[tank]\ntemperature = \"24 °C\"\n";
    let files = [
        ("below.toml", below.as_bytes()),
        ("above.toml", above.as_bytes()),
    ];
    insta::assert_snapshot!(load_said(&folder(&files), "above.toml"));
}

#[test]
fn an_inherited_every_beside_an_own_on_points_into_both_files() {
    let below =
        format!("{TANK}[changes]\nlate = {{ days = \"1..56\", every = 7, share = \"40 %\" }}\n");
    let above =
        "based_on = \"below.toml\"\nstart = \"2027-03-06\"\n[changes]\nlate = { on = [\"Sun\"] }\n";
    let files = [
        ("below.toml", below.as_bytes()),
        ("above.toml", above.as_bytes()),
    ];
    insta::assert_snapshot!(load_said(&folder(&files), "above.toml"));
}

#[test]
fn a_mistake_in_the_light_is_told_once_and_not_as_missing_light() {
    let text = said(&format!(
        "{TANK}[light]\non = \"10:00\"\n[gas]\nhold = \"28 mg/L\"\n"
    ));
    assert!(
        text.ends_with("1 problem in tank.toml; nothing was run\n"),
        "{text}"
    );
}
