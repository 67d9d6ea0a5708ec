//! What a scenario means: litres, days, events, waters, words.

mod support;

use firstfill::analysis::case::{Case, SetBy};
use firstfill::base::clock::{DAY, HOUR, TimeOfDay};
use firstfill::base::units;
use firstfill::engine::event::{Event, EventKind};
use firstfill::engine::input::{GasHours, GasPlan, ModelInput, TopUp};
use firstfill::model::parameter_set::{Origin, ParameterSet};
use firstfill::model::parameters;
use firstfill::scenario;
use firstfill::scenario::keys::KEYS;

const WHOLE: &str = include_str!("scenarios/whole.toml");

/// A small tank of 59.4 L without soil.
const TANK: &str = "[tank]\ninside = \"60 x 30 x 36 cm\"\nwater_line = \"33 cm\"\n";

fn case(text: &str) -> Case {
    match scenario::read_text("tank.toml", text) {
        Ok(loaded) => loaded.case,
        Err(problems) => panic!("{problems}"),
    }
}

/// The small tank, with more lines below it.
fn tank(more: &str) -> Case {
    case(&format!("{TANK}{more}"))
}

/// The small tank, filled on a Saturday at ten.
fn dated(more: &str) -> Case {
    case(&format!("start = \"2027-03-06 10:00\"\n{TANK}{more}"))
}

/// Equal but for the rounding of one or two operations.
fn close(got: f64, wanted: f64) {
    assert!(
        (got - wanted).abs() <= 1e-12 * wanted.abs().max(1e-3),
        "{got} is not {wanted}"
    );
}

fn days_of(case: &Case, name: &str) -> Vec<u32> {
    let named = |event: &&Event| event.name == name;
    case.input
        .events
        .iter()
        .filter(named)
        .map(|e| e.minute / DAY)
        .collect()
}

/// Everything that will be run, as text, with numbers to ten digits; what set them is left out.
fn printed(case: &Case) -> String {
    let values: Vec<(&str, f64)> = case
        .input
        .parameters
        .iter()
        .map(|(spec, value, _)| (spec.id, value))
        .collect();
    let mut input = case.input.clone();
    input.parameters = ParameterSet::default();
    let text = format!("{values:?} {input:?}");
    let is_part = |c: char| c.is_ascii_digit() || c == '.' || c == '-' || c == 'e';
    let mut out = String::new();
    let mut number = String::new();
    for c in text.chars().chain([' ']) {
        if is_part(c) {
            number.push(c);
            continue;
        }
        match number.parse::<f64>() {
            Ok(value) => out += &format!("{value:.9e}"),
            Err(_) => out += &number,
        }
        number.clear();
        out.push(c);
    }
    out
}

// the file as a whole

#[test]
fn the_whole_example_becomes_the_case_it_describes() {
    let case = case(WHOLE);
    assert_eq!(case.name, "sixty, heavy early changes");
    close(case.input.tank.volume_l, 47.4); // 60·30·33 cm − 9 L − 3 L
    assert_eq!(case.input.filled_at, 10 * HOUR);
    assert_eq!((case.input.last_day, case.input.lookahead_days), (56, 14));
    assert_eq!(case.away, [(14, 18)]);
    assert_eq!(case.input.unfed, [(14, 18)]);
    assert_eq!(days_of(&case, "changes.early"), [1, 2, 3, 4, 5, 6, 7]);
    assert_eq!(days_of(&case, "changes.next"), [8, 10, 12, 20]);
    // Sundays from day 21 on, and through the look-ahead: day 1 was a Sunday
    assert_eq!(days_of(&case, "changes.late"), [22, 29, 36, 43, 50, 57, 64]);
    let left_out: Vec<u32> = case.left_out.iter().map(|(day, _)| *day).collect();
    assert_eq!(left_out, [14, 15, 16, 18]);
    assert!(case.notices.is_empty(), "{:?}", case.notices);
}

#[test]
fn the_smallest_file_says_that_no_changes_are_planned() {
    let case = tank("");
    close(case.input.tank.volume_l, 59.4);
    assert!(case.input.events.is_empty() && case.input.light.is_empty());
    assert!(matches!(case.input.gas, GasPlan::None));
    assert_eq!(case.notices, ["no water changes planned"]);
    assert_eq!((case.name.as_str(), case.input.filled_at), ("tank", 0));
}

#[test]
fn a_file_cut_short_anywhere_gives_problems_or_a_case_but_no_panic() {
    for end in (0..WHOLE.len())
        .step_by(3)
        .filter(|&end| WHOLE.is_char_boundary(end))
    {
        if let Err(problems) = scenario::read_text("cut.toml", &WHOLE[..end]) {
            assert!(problems.render(false).contains("nothing was run"));
        }
    }
}

#[test]
fn a_range_past_the_end_is_cut_and_told() {
    let text = format!(
        "length = 20\n{TANK}[changes]\nweekly = {{ days = \"7..56\", every = 7, share = \"50 %\" }}\n"
    );
    let case = self::case(&text);
    assert_eq!(
        days_of(&case, "changes.weekly"),
        [7, 14, 21, 28],
        "28 lies in the look-ahead"
    );
    assert!(
        case.notices[0].contains("goes on past day 20"),
        "{:?}",
        case.notices
    );
}

#[test]
fn changes_named_one_by_one_go_on_beyond_the_end_as_in_the_last_two_weeks() {
    let changes = |entry: &str| {
        let case = case(&format!(
            "length = 20\n{TANK}[changes]\nown = {{ {entry}, share = \"50 %\" }}\n"
        ));
        assert!(case.notices.is_empty(), "{:?}", case.notices);
        days_of(&case, "changes.own")
    };
    let listed = changes("days = [3, 6, 7, 13, 20]");
    assert_eq!(
        listed,
        [3, 6, 7, 13, 20, 21, 27, 34],
        "6 lies a fortnight before the last day"
    );
    // however it is written, it is the same plan
    assert_eq!(changes("days = \"9..20\", every = 7"), [9, 16, 23, 30]);
    assert_eq!(changes("days = [9, 16]"), [9, 16, 23, 30]);
    assert_eq!(changes("days = \"20..20\""), [20, 34]);
    assert_eq!(
        changes("day = 20"),
        [20],
        "the one day of an entry is one day"
    );
}

#[test]
fn a_byte_order_mark_and_windows_line_ends_change_nothing() {
    let windows = format!("\u{feff}{}", WHOLE.replace('\n', "\r\n"));
    assert_eq!(printed(&case(&windows)), printed(&case(WHOLE)));
}

#[test]
fn the_order_of_sections_and_entries_does_not_matter() {
    let mut sections: Vec<String> = WHOLE
        .replace("\n[", "\n\u{0}[")
        .split('\u{0}')
        .map(reversed)
        .collect();
    sections[1..].reverse();
    let turned = sections.concat();
    assert_ne!(turned, WHOLE);
    assert_eq!(printed(&case(&turned)), printed(&case(WHOLE)));
}

/// A section with its lines below the title in reverse order.
fn reversed(section: &str) -> String {
    let mut lines: Vec<&str> = section.lines().collect();
    let from = usize::from(section.starts_with('['));
    lines[from..].reverse();
    lines.iter().map(|line| format!("{line}\n")).collect()
}

#[test]
fn equivalent_ways_to_write_give_the_same_run() {
    let pairs = [
        (
            "\"60 x 30 x 36 cm\"",
            "\"600mm × 0.3 m × 14.173228346456692 in\"",
        ),
        ("\"33 cm\"", "\"0.33 m\""),
        ("hardscape = \"3 L\"", "hardscape = \"3000 ml\""),
        ("\"24.5 °C\"", "\"76.1 °F\""),
        ("\"4 dKH\"", "\"1.4266 meq/L\""),
        ("\"8 dGH\"", "\"1.4266 mmol/l\""),
        ("\"9 mg NO3/L\"", "\"9 ppm as NO₃\""),
        ("\"1 mg Cl2/L\"", "\"1 mg/l\""),
        ("\"11:30..18:30\"", "{ from = \"11:30\", for = \"7 h\" }"),
        (
            "\"20:00..08:00\"",
            "{ from = \"20:00\", for = \"0.5 days\" }",
        ),
        ("\"medium\" ", "\"60 umol/m^2/s\" "),
        ("\"90 µmol/m²/s\"", "\"90 PAR\""),
        ("\"1 L/min\"", "\"60 L/h\""),
        ("\"600 L/h\"", "\"10 l/min\""),
        ("\"0.5 L\"", "\"500 mL\""),
        ("\"3 mg K/L\"", "\"3 mg/L K\""),
        ("\"0.5 g\"", "\"500 mg\""),
        ("\"2 %/day\"", "\"0.12 g/day\""),
        ("\"0.7 /day\"", "\"0.7 d⁻¹\""),
        ("[\"2027-03-20..2027-03-24\"]", "\"14..18\""),
        ("[2, 13, 28]", "[2, \"2027-03-19\", 2027-04-03]"),
        ("\"2027-03-06 10:00\"", "2027-03-06T10:00:00"),
        (
            "days = \"1..7\", every = 1",
            "days = [1, 2, 3, \"4..7\"], every = 1",
        ),
    ];
    let wanted = printed(&case(WHOLE));
    for (one, other) in pairs {
        assert!(WHOLE.contains(one), "{one} is not in the file");
        let text = WHOLE.replacen(one, other, 1);
        assert_eq!(printed(&case(&text)), wanted, "{one} against {other}");
    }
}

#[test]
fn every_documented_key_is_known_to_the_reader() {
    for key in KEYS {
        let path = key.path.replace("NAME", "x");
        let size = "tank.inside = \"60 x 30 x 36 cm\"\ntank.water_line = \"33 cm\"\n";
        let size: String = size
            .lines()
            .filter(|line| !line.starts_with(&path))
            .map(|line| format!("{line}\n"))
            .collect();
        let text = format!("{size}{path} = {}\n", key.example);
        if let Err(problems) = scenario::read_text("key.toml", &text) {
            let said = problems.render(false);
            let unknown = said.contains("unknown name") || said.contains("allowed:");
            assert!(!unknown, "{} = {}\n{said}", key.path, key.example);
        }
    }
}

#[test]
fn every_unit_of_a_parameter_can_be_read() {
    for spec in parameters::all() {
        assert!(
            units::of_label(spec.unit).is_some(),
            "{}: {}",
            spec.id,
            spec.unit
        );
    }
}

#[test]
fn every_default_of_the_documentation_can_be_written_down() {
    // keys with a provenance have a value as default: writing it must change nothing
    let bare = printed(&tank(""));
    for key in KEYS
        .iter()
        .filter(|key| !key.provenance.is_empty() && !key.path.contains("NAME"))
    {
        let (section, name) = key.path.rsplit_once('.').unwrap_or(("", key.path));
        let plain = key.default.parse::<i64>().is_ok() || key.default.parse::<bool>().is_ok();
        let value = if plain {
            key.default.to_string()
        } else {
            format!("\"{}\"", key.default)
        };
        if matches!(section, "air" | "light" | "soil") {
            continue; // these sections need more than one key
        }
        let text = match section {
            "" => format!("{name} = {value}\n{TANK}"),
            "tank" => format!("{TANK}{name} = {value}\n"),
            _ => format!("{TANK}[{section}]\n{name} = {value}\n"),
        };
        assert_eq!(printed(&case(&text)), bare, "{}", key.path);
    }
}

/// The base reference run in everyday words; its tank is 50 L with 300 mg of gas dissolved an hour.
const BASE: &str = "length = 55\n[tank]\ninside = \"60 x 30 x 36 cm\"\nnet_volume = \"50 L\"\n\
    [soil]\namount = \"9.4 L\"\n\
    [changes]\nfirst = { days = [\"1..7\", 9, 11, 13, 16, 19, 23, 26, 30, 37, 44, 51], every = 1, share = \"50 %\" }\n\
    [doses]\nweekly = { days = [1, 8, 15, 22, 29, 36, 43, 50], time = \"09:36\", potassium = \"3 mg K/L\", iron = \"0.05 mg/L\" }\n\
    [light]\non = \"10:00..18:00\"\nat_soil = \"100 µmol/m²/s\"\n[gas]\non = \"09:00..17:00\"\nrate = \"300 mg/h\"\ndissolved = \"100 %\"\n\
    [plants]\nstems = { cover = \"45 %\" }\ncarpet = { cover = \"30 %\" }\nrosette = { cover = \"10 %\" }\n";

#[test]
fn the_base_reference_run_can_be_written_as_a_scenario() {
    let written = case(BASE).input;
    let wanted = support::reference::input("base");
    assert_eq!((written.fill, written.refill), (wanted.fill, wanted.refill));
    assert_eq!(written.stands, wanted.stands);
    assert_eq!(
        (written.filled_at, written.last_day),
        (wanted.filled_at, wanted.last_day)
    );
    close(written.tank.volume_l, wanted.tank.volume_l);
    close(written.tank.soil_l, wanted.tank.soil_l);
    // the reference rounds its glass to 0.83 m²
    assert!((written.tank.wall_m2 - wanted.tank.wall_m2).abs() < 0.005);
    let light = |input: &ModelInput| (input.light[0].window, input.light[0].value);
    assert_eq!(light(&written), light(&wanted));
    let sorted = |input: &ModelInput| -> Vec<(u32, String)> {
        let mut list: Vec<(u32, String)> = input
            .events
            .iter()
            .map(|e| (e.minute, format!("{:?}", e.kind)))
            .collect();
        list.sort();
        list
    };
    assert_eq!(sorted(&written), sorted(&wanted));
    let gas = |input: &ModelInput| match &input.gas {
        GasPlan::Rate { lines, .. } => lines[0].value * input.parameters.get("eta_CO2"),
        other => panic!("{other:?}"),
    };
    close(gas(&written), gas(&wanted));
}

// volumes

#[test]
fn soil_and_hardscape_push_water_away_and_walls_lose_heat() {
    let case = tank("hardscape = \"3 L\"\n[soil]\nkind = \"rich\"\namount = \"9 L\"\n");
    let dimensions = case.input.tank;
    close(dimensions.volume_l, 47.4);
    close(dimensions.surface_m2, 0.18);
    close(dimensions.bed_m2, 0.18);
    close(dimensions.wall_m2, 2.0 * 0.9 * 0.36 + 0.18);
    close(dimensions.soil_l, 9.0);
}

#[test]
fn an_inert_bed_takes_room_but_gives_nothing() {
    let case = tank("[soil]\nkind = \"inert\"\namount = \"9 L\"\n");
    close(case.input.tank.volume_l, 50.4);
    assert_eq!(case.input.tank.soil_l, 0.0);
}

#[test]
fn from_net_volume_and_surface_a_tank_twice_as_long_as_wide_is_assumed() {
    let case = case(
        "[tank]\nnet_volume = \"47 L\"\nsurface = \"0.18 m²\"\nhardscape = \"1 L\"\n[soil]\namount = \"6 L\"\n",
    );
    close(case.input.tank.volume_l, 47.0);
    let height = 0.054 / 0.18 + 0.03;
    close(case.input.tank.wall_m2, 2.0 * (0.6 + 0.3) * height + 0.18);
    assert!(
        case.notices.iter().any(|n| n.contains("is assumed")),
        "{:?}",
        case.notices
    );
}

// days

#[test]
fn entries_that_reach_the_last_day_go_on_through_the_look_ahead() {
    let case = tank(
        "[changes]\nweekly = { days = \"7..56\", every = 7, share = \"50 %\" }\n\
         first = { days = \"1..6\", every = 2, share = \"50 %\" }\nlast = { day = 55, share = \"20 %\" }\n",
    );
    assert_eq!(
        days_of(&case, "changes.weekly"),
        [7, 14, 21, 28, 35, 42, 49, 56, 63, 70]
    );
    assert_eq!(days_of(&case, "changes.first"), [1, 3, 5]);
    assert_eq!(days_of(&case, "changes.last"), [55]);
}

#[test]
fn away_days_leave_everything_out_that_hands_do() {
    let case = dated(
        "[changes]\naway = \"3..5\"\ndaily = { days = \"1..7\", every = 1, share = \"10 %\" }\n\
         [gas]\non = \"10:00..18:00\"\nhold = \"20 mg/L\"\ntuned_on = [2, 4]\n\
         [plants]\nstems = { cover = \"40 %\" }\n\
         [trims]\ncut = { day = 4, share = \"30 %\" }\n[cleanings]\nfilter = { day = 5, share = \"50 %\" }\n\
         [siphons]\nsoil = { day = 3, share = \"50 %\" }\n[wipes]\nglass = { day = 3, share = \"50 %\" }\n\
         [doses]\niron = { day = 4, iron = \"0.1 mg/L\" }\n[stock]\nfish = { day = 4, count = 3, each = \"1 g\" }\n",
    );
    assert_eq!(days_of(&case, "changes.daily"), [1, 2, 6, 7]);
    let left_out: Vec<(u32, &str)> = case
        .left_out
        .iter()
        .map(|(d, n)| (*d, n.as_str()))
        .collect();
    assert_eq!(
        left_out,
        [
            (3, "changes.daily"),
            (3, "siphons.soil"),
            (3, "wipes.glass"),
            (4, "changes.daily"),
            (4, "doses.iron"),
            (4, "gas.tuned_on"),
            (4, "trims.cut"),
            (5, "changes.daily"),
            (5, "cleanings.filter"),
        ]
    );
    assert!(matches!(&case.input.gas, GasPlan::Hold { tuned_on, .. } if tuned_on == &[2]));
    assert_eq!(
        days_of(&case, "stock.fish"),
        [4],
        "animals go in on the written day"
    );
    assert_eq!(case.input.unfed, [(3, 5)]);
}

#[test]
fn missed_changes_are_left_out_but_doses_are_given() {
    let case = tank(
        "[changes]\nmissed = [14]\nweekly = { days = \"7..28\", every = 7, share = \"50 %\" }\n\
         [doses]\nweekly = { days = \"7..28\", every = 7, iron = \"0.1 mg/L\" }\n",
    );
    assert_eq!(days_of(&case, "changes.weekly"), [7, 21, 28]);
    assert_eq!(days_of(&case, "doses.weekly"), [7, 14, 21, 28]);
    assert_eq!(case.left_out, [(14, "changes.weekly".to_string())]);
}

#[test]
fn events_of_one_minute_follow_the_fixed_order() {
    let case = tank(
        "[seed]\na = { day = 2, amount = \"1 L\" }\n[doses]\na = { day = 2, iron = \"0.1 mg/L\" }\n\
         [changes]\nz = { day = 2, share = \"50 %\" }\n[trims]\na = { day = 2, share = \"10 %\" }\n",
    );
    let names: Vec<&str> = case.input.events.iter().map(|e| e.name.as_str()).collect();
    assert_eq!(names, ["trims.a", "changes.z", "doses.a", "seed.a"]);
}

#[test]
fn events_have_their_times_and_none_comes_before_the_filling() {
    let case = dated(
        "[changes]\ntime = \"08:15\"\na = { day = 3, share = \"50 %\" }\nb = { day = 4, time = \"21:00\", share = \"50 %\" }\n\
         [plants]\nmoss = { cover = \"10 %\" }\nstems = { cover = \"10 %\", day = 5 }\n\
         [seed]\nx = { day = 0, amount = \"1 L\" }\n[stock]\nf = { day = 9, count = 1, each = \"1 g\" }\n",
    );
    let at = |name: &str| {
        let minute = case
            .input
            .events
            .iter()
            .find(|e| e.name == name)
            .map(|e| e.minute);
        let minute = minute.unwrap_or_else(|| panic!("{name} is not there"));
        (minute / DAY, TimeOfDay::of(minute).to_string())
    };
    assert_eq!(at("changes.a"), (3, "08:15".to_string()));
    assert_eq!(at("changes.b"), (4, "21:00".to_string()));
    assert_eq!(at("plants.moss"), (0, "10:00".to_string()), "at filling");
    assert_eq!(at("plants.stems"), (5, "08:15".to_string()));
    assert_eq!(
        at("seed.x"),
        (0, "10:00".to_string()),
        "the tank is full at ten"
    );
    assert_eq!(at("stock.f"), (9, "12:00".to_string()));
}

#[test]
fn a_dark_start_moves_light_gas_and_plants_to_the_day_after() {
    let case = tank(
        "[start_up]\ndark = \"4 weeks\"\n[light]\non = \"10:00..18:00\"\n[gas]\nrate = \"2.4 g/day\"\non = \"09:00..17:00\"\n\
         [plants]\nstems = { cover = \"40 %\" }\n",
    );
    assert_eq!(case.input.light[0].from_day, 28);
    assert!(matches!(&case.input.gas, GasPlan::Rate { lines, .. } if lines[0].from_day == 28));
    assert_eq!(days_of(&case, "plants.stems"), [28]);
    assert_eq!(case.input.stands[0].planted_at / DAY, 28);
}

#[test]
fn dry_weeks_are_days_before_filling() {
    assert_eq!(tank("[start_up]\ndry = \"4 weeks\"\n").input.dry_days, 28.0);
}

// timers

#[test]
fn a_timer_is_noted_as_from_and_for() {
    let case = tank("[air]\non = \"20:00..08:00\"\nflow = \"1 L/min\"\n");
    let value = |path: &str| {
        let found = case.resolved.iter().find(|r| r.path == path);
        found.map(|r| r.value.clone()).unwrap_or_default()
    };
    assert_eq!(
        (value("air.on.from"), value("air.on.for")),
        ("20:00".into(), "12 h".into())
    );
    assert_eq!(case.input.air[0].window.minutes(), 12 * HOUR);
}

#[test]
fn steps_keep_what_they_do_not_say() {
    let case = tank(
        "[light]\non = \"10:00..16:00\"\nat_soil = \"low\"\n[light.steps]\n\
         b = { day = 20, on = \"10:00..18:00\" }\na = { day = 10, at_soil = \"high\" }\n",
    );
    let lines: Vec<(u32, String, f64)> = case
        .input
        .light
        .iter()
        .map(|line| (line.from_day, line.window.to_string(), line.value))
        .collect();
    // words of the documentation: low 30, high 110 µmol/m²/s
    assert_eq!(
        lines,
        [
            (0, "10:00..16:00".to_string(), 30.0),
            (10, "10:00..16:00".to_string(), 110.0),
            (20, "10:00..18:00".to_string(), 110.0),
        ]
    );
    assert_eq!(case.switches.len(), 3);
}

// gas

fn rate_mg_per_h(gas: &str) -> f64 {
    match tank(&format!("[gas]\non = \"10:00..18:00\"\n{gas}\n"))
        .input
        .gas
    {
        GasPlan::Rate { lines, .. } => lines[0].value,
        other => panic!("{other:?}"),
    }
}

#[test]
fn gas_per_day_is_spread_over_the_gas_hours() {
    close(rate_mg_per_h("rate = \"2.4 g/day\""), 300.0);
    close(rate_mg_per_h("rate = \"300 mg/h\""), 300.0);
    close(rate_mg_per_h("rate = \"5 mg/min\""), 300.0);
}

#[test]
fn a_bubble_weighs_what_its_sphere_holds() {
    // 3, 4, 5, 6 mm at 1.80 g/L: 0.025, 0.060, 0.118, 0.204 mg by calculation; 5e-4 is their rounding
    for (mm, mg) in [(3, 0.025), (4, 0.060), (5, 0.118), (6, 0.204)] {
        let rate = rate_mg_per_h(&format!("rate = \"1 bubbles/s\"\nbubble = \"{mm} mm\""));
        assert!(
            (rate / 3600.0 - mg).abs() < 5e-4,
            "{mm} mm: {} mg",
            rate / 3600.0
        );
    }
    let default = rate_mg_per_h("rate = \"60 bubbles/min\"");
    close(
        default,
        rate_mg_per_h("rate = \"1 bubbles/s\"\nbubble = \"4.5 mm\""),
    );
}

#[test]
fn without_hours_the_hours_of_a_target_are_found() {
    let case = tank("[light]\non = \"10:00..18:00\"\n[gas]\nhold = \"35 mg/L\"\nfirst_day = 3\n");
    assert!(matches!(
        case.input.gas,
        GasPlan::Hold {
            target_mg_per_l: 35.0,
            hours: GasHours::Found { from_day: 3 },
            ..
        }
    ));
    assert!(
        case.notices
            .iter()
            .any(|n| n.contains("above the limit of 30 mg/L")),
        "{:?}",
        case.notices
    );
}

// waters

#[test]
fn the_rest_of_a_blend_is_tap_or_what_rest_names() {
    let soft = tank("[water.ro]\n[refill]\nblend = { ro = \"75 %\" }\n");
    close(soft.input.refill.alkalinity_meq_per_l, 0.35665);
    close(soft.input.refill.potassium_mg_per_l, 0.5);
    assert_eq!(
        soft.input.fill, soft.input.refill,
        "the first filling is the refill"
    );
    let rest = tank(
        "[water.rain]\n[water.well]\nalkalinity = \"8 dKH\"\n[refill]\nblend = { rain = \"50 %\" }\nrest = \"well\"\n",
    );
    close(rest.input.refill.alkalinity_meq_per_l, 4.0 * 0.35665);
}

#[test]
fn the_first_filling_may_be_of_another_water() {
    let case = tank("[water.ro]\n[fill]\nrest = \"ro\"\n");
    assert_eq!(case.input.fill.alkalinity_meq_per_l, 0.0);
    close(case.input.refill.alkalinity_meq_per_l, 4.0 * 0.35665);
}

#[test]
fn other_waters_start_pure_and_in_balance_with_the_room() {
    let ro = tank("[room]\ntemperature = \"25 °C\"\n[water.ro]\n[refill]\nrest = \"ro\"\n")
        .input
        .refill;
    // Benson & Krause 1984: 8.263 mg/L at 25 °C; half its last digit
    assert!(
        (ro.oxygen_mg_per_l - 8.263).abs() < 5e-4,
        "{}",
        ro.oxygen_mg_per_l
    );
    // 0.9 mg/L of CO2 (44.0095 g/mol) and a little bicarbonate of its own acidity
    let carbon = ro.inorganic_carbon_mmol_per_l;
    assert!(carbon > 0.9 / 44.0095 && carbon < 0.024, "{carbon}");
    assert_eq!(
        (
            ro.alkalinity_meq_per_l,
            ro.chlorine_mg_cl2_per_l,
            ro.temperature_c
        ),
        (0.0, 0.0, 25.0)
    );
}

#[test]
fn a_dechlorinator_frees_the_ammonia_of_chloramine_and_may_be_left_out() {
    let treated = tank("[water.tap]\nchloramine = \"2 mg Cl2/L\"\n")
        .input
        .refill;
    close(treated.tan_mg_n_per_l, 2.0 * 14.007 / 70.906);
    assert_eq!(treated.chloramine_mg_cl2_per_l, 0.0);
    let raw = tank("[water.tap]\nchloramine = \"2 mg Cl2/L\"\n[refill]\ndechlorinator = false\n")
        .input
        .refill;
    assert_eq!(
        (raw.tan_mg_n_per_l, raw.chloramine_mg_cl2_per_l),
        (0.0, 2.0)
    );
    close(raw.chlorine_mg_cl2_per_l, 0.3);
}

#[test]
fn ph_and_carbon_dioxide_of_the_tap_say_the_same() {
    let by_co2 = tank("[water.tap]\nco2 = \"5 mg/L\"\ntemperature = \"25 °C\"\n")
        .input
        .refill;
    let still = firstfill::chemistry::still_water::StillWater {
        t_c: 25.0,
        ionic_strength_mol_per_l: by_co2.ionic_strength_mol_per_l(),
        alkalinity_meq_per_l: by_co2.alkalinity_meq_per_l,
    };
    let (ph, _) = still.ph_and_co2(by_co2.inorganic_carbon_mmol_per_l);
    let by_ph = tank(&format!(
        "[water.tap]\nph = {ph}\ntemperature = \"25 °C\"\n"
    ))
    .input
    .refill;
    let apart = by_ph.inorganic_carbon_mmol_per_l - by_co2.inorganic_carbon_mmol_per_l;
    assert!(apart.abs() < 1e-8, "{apart}"); // the pH is solved to 1e-12
}

#[test]
fn topping_up_is_pure_none_or_a_named_water_at_room_temperature() {
    let water = |more: &str| match tank(more).input.top_up {
        TopUp::Automatic(water) => Some(water),
        TopUp::None => None,
    };
    assert_eq!(water("").map(|w| w.alkalinity_meq_per_l), Some(0.0));
    assert!(water("top_up = \"none\"\n").is_none());
    let tap = water("top_up = \"tap\"\n[water.tap]\ntemperature = \"10 °C\"\n");
    assert_eq!(
        tap.map(|w| (w.alkalinity_meq_per_l > 1.0, w.temperature_c)),
        Some((true, 22.0))
    );
}

// words and parameters

#[test]
fn the_kind_of_soil_scales_what_it_holds() {
    let held = |kind: &str| {
        let case = tank(&format!("[soil]\nkind = \"{kind}\"\namount = \"9 L\"\n"));
        ["q0", "N_o0", "P0", "E_H0"].map(|id| case.input.parameters.get(id))
    };
    // as the model documents them: mild, medium, rich
    assert_eq!(held("mild"), [45.0, 100.0, 10.0, 30.0]);
    assert_eq!(held("medium"), [90.0, 200.0, 20.0, 60.0]);
    assert_eq!(held("rich"), [180.0, 400.0, 40.0, 120.0]);
}

#[test]
fn an_old_soil_holds_less_and_says_so() {
    let case = tank("[soil]\namount = \"9 L\"\nage = \"100 days\"\n");
    close(
        case.input.parameters.get("q0"),
        90.0 * firstfill::base::maths::exp(-0.35),
    );
    assert!(
        case.notices
            .iter()
            .any(|n| n.contains("70 % of what a new one holds")),
        "{:?}",
        case.notices
    );
}

#[test]
fn a_word_for_the_surface_sets_the_transfer_velocity() {
    for (word, velocity) in [
        ("still", 0.3),
        ("gentle ripple", 0.5),
        ("ripple", 0.75),
        ("strong ripple", 2.0),
        ("splash", 4.0),
    ] {
        let case = tank(&format!("[surface]\nkind = \"{word}\"\n"));
        close(case.input.parameters.get("k_600"), velocity);
    }
    let given = tank("[surface]\ntransfer = \"5 cm/h\"\nfilm = \"seen\"\n");
    close(given.input.parameters.get("k_600"), 1.2);
    close(given.input.parameters.get("film"), 0.7);
}

#[test]
fn an_override_beats_the_word() {
    let case = tank(
        "[surface]\nkind = \"splash\"\n[parameters]\nk_600 = { value = \"0.6 m/day\", why = \"fitted\" }\n",
    );
    close(case.input.parameters.get("k_600"), 0.6);
    assert_eq!(
        case.input.parameters.origin("k_600"),
        &Origin::Given {
            why: "fitted".to_string()
        }
    );
    let path = |r: &&firstfill::analysis::case::Resolved| r.path == "parameters.k_600";
    let resolved = case.resolved.iter().find(path).map(|r| r.set_by.clone());
    assert_eq!(resolved, Some(SetBy::Override("fitted".to_string())));
}

#[test]
fn a_parameter_outside_its_plausible_range_is_used_and_told() {
    let case = tank("[parameters]\nmu_NOB = { value = \"3 /day\", why = \"to see\" }\n");
    close(case.input.parameters.get("mu_NOB"), 3.0);
    assert!(
        case.notices
            .iter()
            .any(|n| n.contains("outside the plausible range 0.4 to 1.1 /day")),
        "{:?}",
        case.notices
    );
}

#[test]
fn parameters_take_any_unit_of_their_kind() {
    let value = |id: &str, text: &str| {
        let line = format!("[parameters]\n{id} = {{ value = {text}, why = \"test\" }}\n");
        tank(&line).input.parameters.get(id)
    };
    close(value("mu_NOB", "\"70 %/day\""), 0.7);
    close(value("k_600", "\"5 cm/h\""), 1.2);
    close(value("tau_ind", "\"90 min\""), 1.5);
    close(value("phi_filt", "0.7"), 0.7);
    close(value("phi_filt", "\"70 %\""), 0.7);
    close(value("feed", "\"1.5 %/day\""), 1.5);
}

#[test]
fn the_way_plants_were_grown_sets_melt_and_recovery() {
    let stand = |more: &str| {
        let case = tank(&format!("[plants]\nstems = {{ cover = \"40 %\"{more} }}\n"));
        let stand = case.input.stands[0].clone();
        (stand.melt_frac, stand.acclimates, stand.density_g_per_m2)
    };
    assert_eq!(stand(""), (0.25, true, 30.0));
    assert_eq!(
        stand(", grown = \"tissue culture\", density = \"dense\""),
        (0.15, true, 80.0)
    );
    assert_eq!(
        stand(", grown = \"under water\", density = \"12 g/m²\""),
        (0.0, false, 12.0)
    );
}

#[test]
fn room_lid_heater_and_gas_are_heard() {
    let case = tank(
        "lid = true\nheater = \"none\"\n[room]\ntemperature = \"19 °C\"\nhumidity = \"40 %\"\nco2 = \"800 ppm\"\naltitude = \"500 m\"\n\
         [gas]\non = \"10:00..18:00\"\nrate = \"2 g/day\"\ndissolved = \"90 %\"\nstop_at = \"25 mg/L\"\n",
    );
    let input = &case.input;
    assert_eq!((input.heating.set_c, input.heating.start_c), (None, 19.0));
    assert_eq!(
        (input.room.temperature_c, input.room.humidity_frac),
        (19.0, 0.4)
    );
    assert_eq!(input.tank.altitude_m, 500.0);
    close(input.parameters.get("lid"), 0.2);
    close(input.parameters.get("co2_room"), 800.0);
    close(input.parameters.get("eta_CO2"), 0.9);
    assert!(matches!(
        input.gas,
        GasPlan::Rate {
            cut_off_mg_per_l: Some(25.0),
            ..
        }
    ));
}

#[test]
fn seeds_stock_and_leftovers_become_amounts() {
    let case = tank(
        "[seed]\nlevel = \"live medium\"\nsponge = { day = 1, amount = \"0.5 L\" }\n\
         [stock]\nfish = { day = 42, count = 12, each = \"0.5 g\" }\n\
         shrimp = { day = 50, kind = \"shrimp\", count = 10, each = \"0.2 g\", feed = \"0.05 g/day\", protein = \"35 %\" }\n\
         [uneaten]\npinch = { day = 5, amount = \"0.2 g\" }\n",
    );
    assert_eq!(case.input.seed_level, 100.0);
    let kind = |name: &str| {
        let event = case.input.events.iter().find(|event| event.name == name);
        event.map(|event| event.kind.clone())
    };
    assert_eq!(
        kind("seed.sponge"),
        Some(EventKind::Seed {
            mg_cod: [2.5, 1.0, 2.5]
        })
    );
    let Some(EventKind::Stock(fish)) = kind("stock.fish") else {
        panic!("no fish")
    };
    close(fish.mass_g, 6.0);
    close(fish.feed_g_per_day, 0.12); // 2 %/day when nothing is said
    let Some(EventKind::Stock(shrimp)) = kind("stock.shrimp") else {
        panic!("no shrimp")
    };
    assert!(shrimp.shrimp && !fish.shrimp);
    close(shrimp.feed_g_per_day, 0.05);
    close(shrimp.protein_frac, 0.35);
    assert_eq!(
        kind("uneaten.pinch"),
        Some(EventKind::Uneaten {
            feed_g: 0.2,
            protein_frac: 0.4
        })
    );
}

#[test]
fn power_cuts_may_pass_midnight_and_have_a_battery() {
    let case = tank(
        "[air]\non = \"20:00..08:00\"\nflow = \"1 L/min\"\n[power_cuts]\n\
         night = { day = 18, off = \"22:00..04:00\", battery_air = true }\n\
         long = { day = 3, off = { from = \"06:00\", for = \"30 h\" }, battery_air = \"0.5 L/min\" }\n",
    );
    let cuts: Vec<(u32, u32, f64)> = case
        .input
        .power_cuts
        .iter()
        .map(|cut| (cut.from, cut.until, cut.battery_air_l_per_min))
        .collect();
    assert_eq!(
        cuts,
        [
            (3 * DAY + 6 * HOUR, 4 * DAY + 12 * HOUR, 0.5),
            (18 * DAY + 22 * HOUR, 19 * DAY + 4 * HOUR, 1.0),
        ]
    );
}

#[test]
fn limits_and_prices_are_read_in_their_units() {
    let case = tank(
        "[limits]\nnitrite = \"0.25 mg NO2/L\"\nco2 = \"20 mg/L\"\nph_jump = 0.3\n[prices]\ntap = \"4 /m³\"\ngas = \"12 /kg\"\n",
    );
    close(case.limits.nitrite.value, 0.25 * 14.007 / 46.005);
    assert!(case.limits.nitrite.given && !case.limits.oxygen.given);
    close(case.limits.co2.value, 20.0);
    close(case.limits.ph_jump.value, 0.3);
    assert_eq!(case.prices.by_name[0].0, "gas");
    close(case.prices.by_name[0].1, 0.012);
    close(case.prices.by_name[1].1, 0.004);
}

#[test]
fn the_film_area_of_the_filter_reaches_the_tank() {
    assert_eq!(
        tank("[filter]\nfilm_area = \"4 m²\"\n").input.tank.film_m2,
        Some(4.0)
    );
}

// based_on

fn layered(below: &str, above: &str) -> Case {
    let folder = tempfile::tempdir().expect("a temporary folder can be made");
    let write = |name: &str, text: &str| {
        std::fs::write(folder.path().join(name), text).expect("a file can be written");
    };
    write("below.toml", below);
    write("above.toml", &format!("based_on = \"below.toml\"\n{above}"));
    match scenario::load(&folder.path().join("above.toml")) {
        Ok(loaded) => {
            assert_eq!(loaded.files.len(), 2);
            assert!(loaded.text.starts_with("based_on"));
            loaded.case
        }
        Err(problems) => panic!("{problems}"),
    }
}

#[test]
fn an_empty_layer_changes_nothing_but_the_name() {
    let mut above = layered(WHOLE, "");
    assert_eq!(printed(&above), printed(&case(WHOLE)));
    above = layered(WHOLE, "name = \"another\"\n");
    assert_eq!(above.name, "another");
}

#[test]
fn layers_merge_tables_and_replace_values_and_lists() {
    let case = layered(
        WHOLE,
        "[changes.early]\nshare = \"70 %\"\n[gas]\ntuned_on = [5]\n[tank]\ntemperature = \"26 °C\"\n",
    );
    let early = |event: &&Event| event.name == "changes.early";
    let event = case.input.events.iter().find(early).map(|e| e.kind.clone());
    assert_eq!(event, Some(EventKind::Change { share: 0.7 }));
    assert_eq!(days_of(&case, "changes.early").len(), 7, "the days stay");
    assert!(matches!(&case.input.gas, GasPlan::Hold { tuned_on, .. } if tuned_on == &[5]));
    assert_eq!(case.input.heating.set_c, Some(26.0));
}

#[test]
fn none_takes_out_an_entry_a_key_or_a_section() {
    let case = layered(
        WHOLE,
        "gas = \"none\"\n[changes]\nearly = \"none\"\naway = \"none\"\nlate = { on = \"none\", every = 7 }\n[plants]\nfront = \"none\"\n",
    );
    assert!(days_of(&case, "changes.early").is_empty());
    assert!(case.away.is_empty() && case.left_out.is_empty());
    assert_eq!(days_of(&case, "changes.late")[..2], [21, 28]);
    assert!(matches!(case.input.gas, GasPlan::None));
    assert_eq!(case.input.stands.len(), 1);
}

#[test]
fn a_value_of_another_kind_replaces() {
    let case = layered(WHOLE, "[air]\non = { from = \"22:00\", for = \"9 h\" }\n");
    assert_eq!(case.input.air[0].window.to_string(), "22:00..07:00");
}

#[test]
fn a_part_of_a_timer_can_be_changed_from_above() {
    let window = |above: &str| layered(WHOLE, above).input.air[0].window.to_string();
    assert_eq!(window("[air]\non.for = \"9 h\"\n"), "20:00..05:00");
    assert_eq!(window("[air.on]\nfrom = \"22:00\"\n"), "22:00..10:00");
    assert_eq!(window("[air]\non = \"21:00..07:00\"\n"), "21:00..07:00");
}

#[test]
fn every_value_has_one_dotted_path() {
    let flat = scenario::paths::flat("whole.toml", WHOLE);
    let value = |path: &str| {
        flat.iter()
            .find(|(p, _)| p == path)
            .map(|(_, v)| v.as_str())
    };
    assert_eq!(value("changes.early.share"), Some("50 %"));
    assert_eq!(value("parameters.mu_NOB.value"), Some("0.7 /day"));
    assert_eq!(value("air.on.from"), Some("20:00"));
    assert_eq!(value("air.on.for"), Some("12 h"));
    let mut paths: Vec<&String> = flat.iter().map(|(path, _)| path).collect();
    let all = paths.len();
    paths.sort();
    paths.dedup();
    assert_eq!(paths.len(), all);
}

#[test]
fn a_residual_left_in_and_animals_left_unfed_are_said() {
    let plan = "[tank]\nnet_volume = \"50 L\"\nsurface = \"0.18 m²\"\n[water.tap]\nchloramine = \"1.5 mg Cl2/L\"\n\
                [refill]\ndechlorinator = TREATED\n[changes]\naway = [\"40..46\"]\n\
                [stock]\nfirst = { day = 35, kind = \"fish\", count = 6, each = \"0.5 g\" }\n";
    let said = |treated: &str| {
        let text = plan.replace("TREATED", treated);
        firstfill::scenario::read_text("plan.toml", &text)
            .unwrap_or_else(|problems| panic!("{problems}"))
            .case
            .notices
            .join("\n")
    };
    let untreated = said("false"); // with the 0.3 mg/L of chlorine that tap water has by default
    assert!(
        untreated.contains("1.8 mg Cl2/L of chlorine or chloramine"),
        "{untreated}"
    );
    assert!(
        untreated.contains("nobody feeds the animals on days 40 to 46"),
        "{untreated}"
    );
    assert!(!said("true").contains("chloramine"));
}

#[test]
fn the_cards_of_the_kit_are_read_in_their_unit_and_default_to_the_usual_ones() {
    let kit = tank("").kit;
    assert_eq!(kit, firstfill::analysis::kit::TestKit::default());
    let written = tank(
        "[test_kit]\nammonia = \"0, 0.1, 0.2, 0.5, 1, 2, 5, 10 mg NH4/L\"\nnitrite = \"0, 0.02, 0.3 mg N/L\"\n",
    )
    .kit;
    assert_eq!(
        written.ammonia, kit.ammonia,
        "the documented steps are the usual ones"
    );
    assert_eq!(written.nitrite.unit, "mg N/L");
    let steps: Vec<f64> = written.nitrite.steps.iter().map(|s| s.mg_n_per_l).collect();
    assert_eq!(steps, [0.0, 0.02, 0.3]);
}

#[test]
fn a_bag_of_soil_has_its_size_or_the_usual_one() {
    let soil = |bag: &str| tank(&format!("[soil]\namount = \"9 L\"\n{bag}")).soil_bag_l;
    close(soil(""), 3.0);
    close(soil("bag = \"8 L\"\n"), 8.0);
}

#[test]
fn water_that_brings_too_little_chloride_is_noticed_unless_it_is_dosed() {
    let is_told = |chloride: &str, more: &str| {
        let case = tank(&format!(
            "[water.ro]\nchloride = \"{chloride} mg/L\"\n[refill]\nblend = {{ ro = \"100 %\" }}\n{more}"
        ));
        let mut notices = case.notices.iter();
        notices.any(|notice| notice.contains(&format!("{chloride} mg/L of chloride")))
    };
    // 20 times the limit of nitrite, 0.08 mg N/L
    assert!(is_told("0", "") && is_told("1.5", ""));
    assert!(!is_told("1.7", ""));
    assert!(!is_told(
        "0",
        "[doses]\nsalt = { day = 1, chloride = \"20 mg/L\" }\n"
    ));
    assert!(!is_told("1.5", "[limits]\nchloride_per_nitrite = 10\n"));
}
