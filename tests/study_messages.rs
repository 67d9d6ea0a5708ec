//! The exact text of every message a study file can get.

use std::path::PathBuf;

use firstfill::scenario::study::{Asking, load_kept};

const TANK: &str = include_str!("../scenarios/sixty.toml");
/// A study without a mistake, cut into its two sections.
const HEAD: &str = "[study]\nscenario = \"tank.toml\"\nmethod = \"points\"\nmembers = 64\n";
const INPUTS: &str = "[inputs]\nmu_NOB = \"usual\"\n";

fn texts(study: &str) -> Vec<(PathBuf, String)> {
    vec![
        ("study.toml".into(), study.to_string()),
        ("tank.toml".into(), TANK.to_string()),
        ("short.toml".into(), "based_on = \"tank.toml\"\nlength = 40\n[changes]\nlate = { days = \"15..40\", on = [\"Sun\"], share = \"40 %\" }\n[doses]\nweekly = { days = \"8..40\", every = 7, iron = \"0.05 mg/L\" }\n".into()),
        ("bare.toml".into(), TANK.replace("early = {", "soon = {")),
        ("broken.toml".into(), "[tank]\ninside = \"60 x 30\"\n".into()),
    ]
}

fn said(study: &str) -> String {
    match load_kept(texts(study), Asking::default()) {
        Ok(_) => panic!("no problem found in:\n{study}"),
        Err(problems) => problems.render(false),
    }
}

/// One test per message: a sentence, and the whole study.
macro_rules! messages {
    ($($name:ident: $text:expr;)*) => {
        $(#[test] fn $name() { insta::assert_snapshot!(said(&$text)); })*
    };
}

/// A study of these inputs.
fn of(inputs: &str) -> String {
    format!("{HEAD}[inputs]\n{inputs}")
}

/// A study whose first section ends like this.
fn with(head: &str) -> String {
    format!("{HEAD}{head}{INPUTS}")
}

#[test]
fn the_small_study_has_no_mistake() {
    assert!(load_kept(texts(&with("")), Asking::default()).is_ok());
}

#[test]
fn a_scenario_in_place_of_a_study() {
    insta::assert_snapshot!(said(TANK));
}

// the first section
messages! {
    an_empty_file_is_no_study: "";
    a_syntax_error_is_shown: "[study\n";
    a_missing_method_shows_the_line_to_add: format!("[study]\nscenario = \"tank.toml\"\n{INPUTS}");
    a_misspelt_method_gets_the_nearest_one: format!("[study]\nscenario = \"tank.toml\"\nmethod = \"variances\"\n{INPUTS}");
    a_scenario_that_is_not_there: format!("[study]\nscenario = \"tnk.toml\"\nmethod = \"points\"\n{INPUTS}");
    a_scenario_with_a_mistake_shows_it: format!("[study]\nscenario = \"broken.toml\"\nmethod = \"points\"\n{INPUTS}");
    scenarios_of_different_length: format!("[study]\nscenario = [\"tank.toml\", \"short.toml\"]\nmethod = \"points\"\n{INPUTS}");
    an_unknown_milestone_gets_the_nearest_one: with("milestones = [\"ready_dya\", \"tan_peak_mg_n_per_l\"]\n");
    an_unknown_milestone_gets_those_that_share_its_words: with("milestones = [\"ammonia peak\"]\n");
    an_unknown_milestone_of_no_known_words: with("milestones = [\"moonlight\"]\n");
    a_day_after_the_end: with("ready_by = 90\n");
    an_odd_number_of_levels: format!("[study]\nscenario = \"tank.toml\"\nmethod = \"trajectories\"\nlevels = 5\n{INPUTS}");
    a_key_of_another_method: with("levels = 4\n");
    too_few_members_of_points: format!("[study]\nscenario = \"tank.toml\"\nmethod = \"points\"\nmembers = 39\n{INPUTS}");
    too_few_members_of_variance: format!("[study]\nscenario = \"tank.toml\"\nmethod = \"variance\"\nmembers = 15\n{INPUTS}");
}

// inputs
messages! {
    a_study_of_nothing: HEAD;
    a_study_of_no_inputs: format!("{HEAD}[inputs]\n");
    a_misspelt_parameter_gets_the_nearest_one: of("mu_NBO = \"usual\"\n");
    a_misspelt_path_gets_the_nearest_one: of("water.tap.alkalinty = \"3..4 dKH\"\n");
    a_misspelt_entry_gets_the_nearest_one: of("changes.erly.share = { settings = [\"20 %\", \"40 %\"] }\n");
    a_misspelt_group_gets_the_nearest_one: of("usual = [\"soli\"]\n");
    what_does_not_vary_says_why: of("usual = [\"Kd\", \"v_b\"]\n");
    a_path_without_a_usual_spread: of("water.tap.alkalinity = \"usual\"\n");
    a_single_value_does_not_vary: of("mu_NOB = 0.5\n");
    a_range_of_no_width: of("mu_NOB = \"0.5..0.5 /day\"\n");
    an_even_range_of_no_width: of("water.tap.alkalinity = { from = \"4 dKH\", to = \"4 dKH\" }\n");
    a_range_in_the_wrong_unit: of("water.tap.alkalinity = \"3..4 L\"\n");
    a_range_out_of_bounds: of("changes.early.share = { settings = [\"20 %\", \"140 %\"] }\n");
    a_range_where_only_settings_do: of("changes.early.share = \"20..40 %\"\n");
    a_range_of_days_where_only_settings_do: of("changes.early.every = \"1..5\"\n");
    an_even_range_where_only_settings_do: of("changes.early.share = { from = \"20 %\", to = \"80 %\" }\n");
    a_number_without_a_usual_spread: of("changes.early.every = \"usual\"\n");
    a_share_without_a_usual_spread: of("changes.early.share = \"usual\"\n");
    a_word_without_a_usual_spread: of("surface.kind = \"usual\"\n");
    one_setting_does_not_vary: of("changes.early.every = { settings = [2] }\n");
    a_setting_twice: of("changes.early.every = { settings = [2, 3, 2] }\n");
    settings_between_whole_days: of("changes.early.every = { settings = \"1..4:3\" }\n");
    more_combinations_than_are_kept: of("changes.early.every = { settings = \"1..14:14\" }\nchanges.early.share = { settings = \"10 %..80 %:20\" }\n");
    a_group_of_something_else: format!("{}[groups]\nmu_AOB = \"water\"\nmu_NOB = \"wter\"\n", with(""));
    problems_of_values_are_told_beside_those_of_words: of("mu_NOB = \"0.5..0.5 /day\"\nwater.tap.alkalinity = \"5..3 dKH\"\nmu_NBO = \"usual\"\n");
    a_scenario_listed_twice: format!("[study]\nscenario = [\"tank.toml\", \"tank.toml\"]\nmethod = \"points\"\n{INPUTS}");
    an_entry_that_one_of_two_scenarios_lacks: format!("[study]\nscenario = [\"tank.toml\", \"bare.toml\"]\nmethod = \"points\"\n{INPUTS}changes.early.share = {{ settings = [\"20 %\", \"40 %\"] }}\n");
    one_member_is_too_few: format!("[study]\nscenario = \"tank.toml\"\nmethod = \"points\"\nmembers = 1\nready_by = 90\n{INPUTS}");
    an_unknown_word_of_a_table: of("mu_NOB = { from = \"0.3 /day\", to = \"0.6 /day\", frm = \"even\" }\n");
}

/// A study of shares of the variance of these inputs.
fn shares(inputs: &str) -> String {
    format!("[study]\nscenario = \"tank.toml\"\nmethod = \"variance\"\n[inputs]\n{inputs}")
}

// inputs that cannot vary on their own
messages! {
    pore_water_and_kd: shares("C_p0 = \"usual\"\nKd = \"2..20 L/kg\"\n");
    covers_that_are_squeezed: shares("plants.stems.cover = \"30..60 %\"\nplants.carpet.cover = \"20..50 %\"\n");
}

#[test]
fn points_bear_inputs_that_hang_on_each_other() {
    let covers = "plants.stems.cover = \"30..60 %\"\nplants.carpet.cover = \"20..50 %\"\n";
    assert!(load_kept(texts(&of(covers)), Asking::default()).is_ok());
}

#[test]
fn a_word_and_the_parameter_it_picks_vary_on_their_own() {
    let both = "surface.kind = { settings = [\"still\", \"ripple\"] }\nk_600_ripple = \"usual\"\n";
    let loaded = load_kept(texts(&shares(both)), Asking::default()).unwrap();
    let varied = |at: usize| loaded.family.variants()[at].uncertain().rows().len();
    assert_eq!([0, 1].map(varied), [0, 1], "it varies where it is picked");
}

#[test]
fn an_input_is_shown_in_the_unit_of_its_range_and_keeps_that_of_the_model() {
    let inputs = "water.tap.alkalinity = \"3..5 dKH\"\nplants.stems.cover = \"10..60 %\"\n\
                  water.tap.nitrate = { from = \"0 mg N/L\", to = \"9 mg N/L\" }\nmu_NOB = \"usual\"\n";
    let study = load_kept(texts(&of(inputs)), Asking::default())
        .unwrap()
        .study;
    let input = |name: &str| {
        study
            .inputs
            .iter()
            .find(|input| input.name == name)
            .unwrap()
    };
    let units = |name: &str| (input(name).unit.as_str(), input(name).shown_unit());
    assert_eq!(units("water.tap.alkalinity"), ("meq/L", "dKH"));
    assert_eq!(units("plants.stems.cover"), ("1", "%"));
    assert_eq!(units("water.tap.nitrate"), ("mg N/L", "mg N/L"));
    assert_eq!(units("mu_NOB"), ("/day", "/day"));
    let at = |name: &str, place: f64| input(name).shown(input(name).at(place));
    // 3 dKH and 10 % in one of twenty, up to rounding of the quantile; 0 and 9 as they are written
    for (name, low) in [("water.tap.alkalinity", 3.0), ("plants.stems.cover", 10.0)] {
        let found = at(name, 0.05);
        assert!((found - low).abs() < 1e-9, "{name}: {found}");
    }
    let ends = [0.0, 1.0].map(|place| at("water.tap.nitrate", place));
    assert_eq!(ends, [0.0, 9.0]);
}
