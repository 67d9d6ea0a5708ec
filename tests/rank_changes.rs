//! The worth of every change: pairs of runs that differ in it alone, what may go together, where one more helps,
//! days away, the chart, and the command.

#[path = "support/apart.rs"]
mod apart;

use std::cmp::Ordering;
use std::fs;
use std::path::Path;
use std::sync::LazyLock;

use apart::{all_words_are_drawn, space, words_apart};
use assert_cmd::Command;
use tempfile::TempDir;

use firstfill::analysis::case::Case;
use firstfill::analysis::change_worth::doubling::better_first;
use firstfill::analysis::change_worth::effects::{
    Effects, JUDGED, LIMITING, Loss, MOST_DELAY_DAYS,
};
use firstfill::analysis::change_worth::pairs::{NEAR_MINUTES, near};
use firstfill::analysis::change_worth::planned::{Change, doubled, planned, without};
use firstfill::analysis::change_worth::{ChangeWorth, each_alone};
use firstfill::analysis::compare::Common;
use firstfill::analysis::compare::effect::Effect;
use firstfill::analysis::ensemble::{self, Ask};
use firstfill::analysis::figure_list::FIGURES;
use firstfill::analysis::levers::paired::Paired;
use firstfill::analysis::levers::trials::Trials;
use firstfill::analysis::outcome::Outcome;
use firstfill::base::clock::DAY;
use firstfill::base::stop::Stop;
use firstfill::output::change_worth::table::table;
use firstfill::output::chart::change_worth::figure;
use firstfill::output::chart::figure::Shape;
use firstfill::output::chart::rect::Rect;
use firstfill::output::chart::{Figure, png, svg};
use firstfill::output::place::Written;
use firstfill::output::text::closing;
use firstfill::scenario;

/// Few members show as well as many whether numbers are the same.
const COMMON: Common = Common {
    members: 20,
    seed: 3,
};

/// An invented tank: three early changes, two late ones that look harmless alone but not together, and one that
/// falls on days away.
const TANK: &str = r#"
length = 24
start = "2027-03-06 10:00"
[tank]
inside = "60 x 30 x 36 cm"
water_line = "33 cm"
temperature = "26 °C"
[soil]
kind = "medium"
amount = "6 L"
[light]
on = "11:00..18:00"
at_soil = "60 µmol/m²/s"
[changes]
away = ["2027-03-18..2027-03-19"]
early = { days = "2..6", every = 2, share = "40 %" }
middle = { day = 13, share = "30 %" }
late = { day = 23, share = "2 %" }
last = { day = 24, time = "20:00", share = "2 %" }
[plants]
stems = { cover = "40 %" }
"#;

fn case_of(text: &str) -> Case {
    let loaded = scenario::load_kept(vec![("tank.toml".into(), text.into())]);
    loaded.unwrap_or_else(|problems| panic!("{problems}")).case
}

fn shipped(name: &str) -> Case {
    let loaded = scenario::load(Path::new(&format!("scenarios/{name}.toml")));
    loaded.unwrap_or_else(|problems| panic!("{problems}")).case
}

fn ranked(case: &Case) -> ChangeWorth {
    ChangeWorth::of(case, COMMON, &Stop::default(), |_, _| {}).unwrap()
}

static CASE: LazyLock<Case> = LazyLock::new(|| case_of(TANK));
static WORTH: LazyLock<ChangeWorth> = LazyLock::new(|| ranked(&CASE));
/// The same with late changes so small that both may go.
static TINY: LazyLock<Case> = LazyLock::new(|| case_of(&TANK.replace("\"2 %\"", "\"0.2 %\"")));
static TINY_WORTH: LazyLock<ChangeWorth> = LazyLock::new(|| ranked(&TINY));

/// What leaving out some changes does, by the trials of the levers.
fn by_trials(case: &Case, out: &[&Change]) -> Effects {
    let stop = Stop::default();
    let trials = Trials::of(case, COMMON.seed, &stop);
    let plan = trials.plan(COMMON.members, &mut || {}).unwrap();
    let with = trials.with(&without(out), COMMON.members, &mut || {});
    Effects::of(&plan, &with.unwrap(), case.input.last_day)
}

#[test]
fn leaving_out_a_change_that_never_happened_is_zero_to_the_bit() {
    let never = Change {
        minute: 9 * DAY + 570,
        name: "changes.never".into(),
        share: 0.5,
    };
    let effects = by_trials(&CASE, &[&never]);
    assert_eq!(effects.ready.changed, 0);
    assert_eq!(effects.days_later().to_bits(), 0.0_f64.to_bits());
    for on in &effects.judged {
        assert_eq!(on.effect.points, [0.0; 5], "{}", on.figure.name);
        assert_eq!(on.effect.mean.to_bits(), 0.0_f64.to_bits());
    }
    assert_eq!(effects.litres_saved.to_bits(), 0.0_f64.to_bits());
    assert!(effects.loss().is_none());
}

#[test]
fn each_change_alone_equals_paired_runs_of_trials_to_the_bit() {
    assert_eq!(WORTH.changes.len(), 5);
    let stop = Stop::default();
    let trials = Trials::of(&CASE, COMMON.seed, &stop);
    let plan = trials.plan(COMMON.members, &mut || {}).unwrap();
    for place in [0, 2, 4] {
        let change = &WORTH.changes[place];
        let with = trials.with(&without(&[change]), COMMON.members, &mut || {});
        let with = with.unwrap();
        let alone = &WORTH.alone[place];
        assert_eq!(alone.ready, Paired::of(&plan, &with, CASE.input.last_day));
        for (name, on) in JUDGED.iter().zip(&alone.judged) {
            let listed = FIGURES.iter().find(|figure| figure.name == *name).unwrap();
            let effect = Effect::of(&plan, &with, |told| (listed.read)(&told.figures));
            assert_eq!(Some(&on.effect), effect.as_ref(), "{name}");
        }
    }
    assert_eq!(WORTH.alone, each_alone(&CASE, COMMON, &stop).unwrap());
}

#[test]
fn members_that_are_no_multiple_of_four_run_the_same() {
    let odd = Common {
        members: 22,
        ..COMMON
    };
    let more = each_alone(&CASE, odd, &Stop::default()).unwrap();
    assert_eq!(more[0].ready.pairs, 22);
    let stop = Stop::default();
    let trials = Trials::of(&CASE, odd.seed, &stop);
    let plan = trials.plan(22, &mut || {}).unwrap();
    let with = trials.with(&without(&[&WORTH.changes[1]]), 22, &mut || {});
    let paired = Paired::of(&plan, &with.unwrap(), CASE.input.last_day);
    assert_eq!(more[1].ready, paired);
}

#[test]
fn the_drop_list_ends_in_what_a_fresh_run_of_that_plan_gives() {
    let worth = &TINY_WORTH;
    let dropped: Vec<usize> = worth.drop.dropped().map(|tried| tried.change).collect();
    assert_eq!(dropped, [3, 4]);
    let out: Vec<&Change> = dropped.iter().map(|&n| &worth.changes[n]).collect();
    let last = worth.drop.last().unwrap();
    assert_eq!(last.together, by_trials(&TINY, &out));
    assert!(last.loss.is_none() && last.together.days_later() <= MOST_DELAY_DAYS);
    for on in last.together.judged.iter().take(LIMITING) {
        assert!(on.worse_by() <= on.figure.told_from, "{}", on.figure.name);
    }
    let mut order = worth.drop.order();
    assert_eq!(order[..dropped.len()], dropped);
    order.sort_unstable();
    assert_eq!(order, [0, 1, 2, 3, 4], "each has its place");
}

#[test]
fn what_stays_is_in_the_tank_again_when_the_next_one_is_tried() {
    let hours = (10..16)
        .map(|hour| format!("at_{hour} = {{ day = 4, time = \"{hour}:00\", share = \"1 %\" }}\n"));
    let early = "early = { days = \"2..6\", every = 2, share = \"40 %\" }\n";
    let case = case_of(&TANK.replace(early, &hours.collect::<String>()));
    let worth = ranked(&case);
    let goes: Vec<bool> = (worth.drop.tried.iter())
        .map(|tried| tried.loss.is_none())
        .collect();
    let first_stays = goes.iter().position(|goes| !goes).expect("one stays");
    assert!(
        goes[first_stays..].contains(&true),
        "one goes after it: {goes:?}"
    );
    let out = worth
        .drop
        .dropped()
        .map(|tried| &worth.changes[tried.change]);
    let together = by_trials(&case, &out.collect::<Vec<_>>());
    assert_eq!(worth.drop.last().unwrap().together, together);
}

#[test]
fn litres_saved_are_the_litres_of_what_is_dropped() {
    let volume = TINY.input.tank.volume_l;
    let dropped = TINY_WORTH.drop.dropped();
    let litres = dropped.map(|tried| TINY_WORTH.changes[tried.change].share * volume);
    let saved = TINY_WORTH.drop.last().unwrap().together.litres_saved;
    // what has evaporated is topped up all the time, so that the water present is the volume; 1e-9 is rounding
    let litres: f64 = litres.sum();
    assert!(
        (saved - litres).abs() < 1e-9 * volume,
        "{saved} of {litres} L"
    );
}

#[test]
fn of_two_changes_that_look_harmless_alone_but_not_together_one_stays() {
    let (late, last) = (3, 4);
    assert!(WORTH.alone[late].loss().is_none() && WORTH.alone[last].loss().is_none());
    let both = by_trials(&CASE, &[&WORTH.changes[late], &WORTH.changes[last]]);
    let Some(Loss::Worse(figure, _)) = both.loss() else {
        panic!("{:?}", both.loss())
    };
    assert_eq!(figure.name, "nitrite_peak_mg_n_per_l");
    assert!(WORTH.drop.drops(late) && !WORTH.drop.drops(last));
    let tried: Vec<usize> = WORTH.drop.tried.iter().map(|tried| tried.change).collect();
    assert_eq!(tried, [late, last]);
    assert_eq!(
        WORTH.drop.tried[1].together, both,
        "told with what both would lose"
    );
}

#[test]
fn only_changes_within_seven_days_are_paired_and_each_pair_once() {
    let case = shipped("heavy-early-changes");
    let changes = planned(&case.input);
    let pairs = near(&changes);
    let apart = |[a, b]: [usize; 2]| changes[b].minute - changes[a].minute;
    assert!(
        pairs
            .iter()
            .all(|&pair| pair[0] < pair[1] && apart(pair) <= NEAR_MINUTES)
    );
    let all = (0..changes.len()).flat_map(|a| (a + 1..changes.len()).map(move |b| [a, b]));
    let wanted: Vec<[usize; 2]> = all.filter(|&pair| apart(pair) <= NEAR_MINUTES).collect();
    assert_eq!(pairs, wanted);
    let own: Vec<[usize; 2]> = WORTH.pairs.iter().map(|pair| pair.changes).collect();
    assert_eq!(own, near(&WORTH.changes));
}

#[test]
fn two_together_less_each_alone_is_what_is_told_of_a_pair() {
    let pair = &WORTH.pairs[0];
    let [a, b] = pair.changes;
    let both = by_trials(&CASE, &[&WORTH.changes[a], &WORTH.changes[b]]);
    for (at, (figure, beyond)) in pair.judged.iter().enumerate() {
        let of = |effects: &Effects| effects.judged[at].effect.mean;
        let sum = of(&both) - of(&WORTH.alone[a]) - of(&WORTH.alone[b]);
        // means of the same twenty numbers, added in another order
        assert!(
            (sum - beyond.mean).abs() < 1e-9 * (1.0 + sum.abs()),
            "{}",
            figure.name
        );
    }
    let later = both.days_later() - WORTH.alone[a].days_later() - WORTH.alone[b].days_later();
    assert!((later - pair.days_later.mean).abs() < 1e-9);
    let effects = WORTH.pairs.iter().flat_map(|pair| {
        let judged = pair.judged.iter().map(|(_, effect)| effect);
        judged.chain([&pair.days_later])
    });
    for effect in effects {
        // hours, days, mg N/L and dKH that move at all move by more than rounding
        assert!(
            effect.mean == 0.0 || effect.mean.abs() > 1e-12,
            "{}",
            effect.mean
        );
    }
}

#[test]
fn threads_change_nothing() {
    let pool = |threads: usize| {
        let pool = rayon_pool(threads);
        pool.install(|| ranked(&CASE))
    };
    let one = pool(1);
    assert_eq!(one.alone, WORTH.alone);
    assert_eq!(one.pairs, WORTH.pairs);
    assert_eq!(one.drop.order(), WORTH.drop.order());
    assert_eq!(one.one_more, WORTH.one_more);
}

fn rayon_pool(threads: usize) -> rayon::ThreadPool {
    let builder = rayon::ThreadPoolBuilder::new().num_threads(threads);
    builder.build().expect("threads")
}

#[test]
fn one_more_is_tried_on_every_day_on_which_somebody_is_there_and_no_water_is_changed() {
    let more = WORTH.one_more.as_ref().expect("days are free");
    let days: Vec<u32> = more.tried.iter().map(|(change, _)| change.day()).collect();
    // day 0 is the filling; changes on 2, 4, 6, 23 and 24; away on 12 and 13
    let free = (1..=24).filter(|day| ![2, 4, 6, 12, 13, 23, 24].contains(day));
    assert_eq!(days, free.collect::<Vec<u32>>());
    assert_eq!(more.share, 0.4, "the middle of 2, 2, 40, 40 and 40 %");
    let best = more
        .tried
        .iter()
        .map(|(_, effects)| effects.ready.mean_days);
    let best = best.fold(f64::NEG_INFINITY, f64::max);
    // twenty members are fewer than 64, so the second run is the first
    assert_eq!(more.best.1.ready.mean_days, best);
}

#[test]
fn an_absence_tells_what_was_missed_and_doubles_a_change_near_it() {
    let absence = WORTH.absence.as_ref().expect("two days away");
    let [missed] = absence.missed.as_slice() else {
        panic!("{:?}", absence.missed)
    };
    assert_eq!((missed.day(), missed.name.as_str()), (13, "changes.middle"));
    let at_home = absence.at_home.as_ref().expect("a change is missed");
    assert!(at_home.litres_saved < 0.0, "it takes water");
    let (place, effects) = absence.doubled.as_ref().expect("changes are near");
    let change = &WORTH.changes[*place];
    let more = (change.doubled_share() - change.share) * CASE.input.tank.volume_l;
    assert!((effects.litres_saved + more).abs() < 1e-6, "{effects:?}");
    let stop = Stop::default();
    let trials = Trials::of(&CASE, COMMON.seed, &stop);
    let plan = trials.plan(COMMON.members, &mut || {}).unwrap();
    for other in &WORTH.changes {
        let with = trials.with(&doubled(other), COMMON.members, &mut || {});
        let with = Effects::of(&plan, &with.unwrap(), CASE.input.last_day);
        let is_better = better_first(&with, effects) == Ordering::Less;
        // all changes of this plan are near the absence
        assert!(!is_better, "day {} would be better", other.day());
    }
    if let Some(reduced) = &absence.reduced {
        assert!(reduced.doubled.is_none_or(|doubled| doubled == *place));
        assert!(reduced.effects.loss().is_none());
        assert!(reduced.stay.len() < WORTH.changes.len());
    }
}

#[test]
fn light_on_ammonia_counts_hours_in_which_both_are_over_and_can_be_edited() {
    let hours = |text: &str| {
        let case = case_of(text);
        let ask = Ask {
            case: &case,
            members: 1,
            drawn_days: &[],
        };
        let ran = ensemble::run(ask, |_| case.input.clone(), &Stop::default(), |_, _| {});
        let told = ran.unwrap().members.remove(0).told.unwrap();
        told.figures.hours.light_with_ammonia
    };
    let with = |limits: &str| hours(&format!("{TANK}\n[limits]\n{limits}\n"));
    let usual = hours(TANK);
    let same = "bright_light = \"50 µmol/m²/s\"\nammonia_in_light = \"0.5 mg N/L\"";
    assert_eq!(with(same), usual);
    assert!(usual > 0.0);
    // seven hours of light a day over 25 days, in all of which there is a trace of ammonia; 1e-6 is rounding
    let all = with("ammonia_in_light = \"0 mg N/L\"");
    assert!((all - 175.0).abs() < 1e-6, "{all}");
    assert_eq!(with("bright_light = \"61 µmol/m²/s\""), 0.0);
}

fn figure_of(case: &Case, worth: &ChangeWorth) -> Figure {
    figure(case, &Outcome::of(case).unwrap(), worth)
}

fn nothing_overlaps(figure: &Figure) {
    words_apart(&figure.name, figure);
    all_words_are_drawn(&figure.name, figure);
    let bars = figure.panels.iter().flat_map(|panel| {
        panel.lines.iter().map(|line| {
            let half = line.pen.width / 2.0;
            let [(x, a), (_, b)] = [0, 1].map(|n| panel.at(line.points[n]));
            Rect::new(x - half, a.min(b), x + half, a.max(b))
        })
    });
    let discs = |shape: &&Shape| !matches!(shape, Shape::Disc(..));
    let drawn = figure.shapes.iter().filter(discs).map(space);
    let drawn: Vec<Rect> = drawn.chain(bars).collect();
    for label in &figure.labels {
        let hit = drawn.iter().find(|space| space.overlaps(&label.space));
        assert_eq!(hit, None, "“{}” {:?}", label.words(), label.space);
    }
    for panel in &figure.panels {
        let holds = |(_, y): &(f64, f64)| panel.up.holds(*y);
        assert!(panel.values().iter().all(holds), "{}", panel.title);
    }
    assert!(png(&svg(figure)).is_ok());
}

#[test]
fn no_word_of_the_chart_lies_on_a_bar_or_on_another_word() {
    nothing_overlaps(&figure_of(&CASE, &WORTH));
    for name in ["handover-in-may", "dark-start"] {
        let case = shipped(name);
        let bare = ChangeWorth {
            changes: planned(&case.input),
            alone: each_alone(&case, COMMON, &Stop::default()).unwrap(),
            pairs: Vec::new(),
            drop: firstfill::analysis::change_worth::drop::DropList {
                tried: Vec::new(),
                kept_alone: Vec::new(),
            },
            one_more: None,
            absence: None,
            ..WORTH.clone()
        };
        nothing_overlaps(&figure_of(&case, &bare));
    }
}

#[test]
fn changes_that_may_go_are_filled_circles_with_their_numbers() {
    let figure = figure_of(&CASE, &WORTH);
    let discs = figure
        .shapes
        .iter()
        .filter(|shape| matches!(shape, Shape::Disc(..)));
    let goes = WORTH.drop.dropped().count();
    // an open one is a disc with a white one upon it
    assert_eq!(discs.count(), 2 * WORTH.changes.len() - goes);
    for number in 1..=WORTH.changes.len() {
        let said = figure
            .labels
            .iter()
            .any(|label| label.words() == number.to_string());
        assert!(said, "{number}");
    }
    let csv = String::from_utf8(table(&CASE, &WORTH).csv().unwrap().bytes()).unwrap();
    let filled = csv.lines().filter(|line| line.contains(",yes,")).count();
    assert_eq!(filled, goes);
}

fn room(text: &str) -> TempDir {
    let room = tempfile::tempdir().expect("a temporary folder");
    fs::write(room.path().join("tank.toml"), text).expect("a scenario");
    room
}

fn firstfill(room: &TempDir, words: &[&str]) -> Command {
    let mut command = Command::cargo_bin("firstfill").expect("the program");
    command.args(words).current_dir(room.path());
    command
}

#[test]
fn the_command_writes_its_folder_and_one_screen() {
    let room = room(TANK);
    let words = [
        "rank-changes",
        "tank.toml",
        "--members",
        "20",
        "--seed",
        "3",
    ];
    let output = firstfill(&room, &words).output().unwrap();
    assert!(output.status.success(), "{output:?}");
    let text = String::from_utf8(output.stdout).unwrap();
    assert!(
        text.lines().count() <= 44,
        "{} lines:\n{text}",
        text.lines().count()
    );
    assert!(
        text.lines().all(|line| line.chars().count() <= 100),
        "{text}"
    );
    assert!(text.contains("never replaces a test before animals go in"));
    insta::assert_snapshot!(text);
    let folder = room.path().join("output/rank-changes-tank");
    let mut found: Vec<String> = fs::read_dir(&folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    found.sort();
    let names = [
        "away.csv",
        "changes.csv",
        "columns.csv",
        "drop.csv",
        "manifest.json",
        "one-more.csv",
        "pairs.csv",
        "rank-changes.png",
        "rank-changes.svg",
    ];
    assert_eq!(found, names);
    let again = ["run", "output/rank-changes-tank/manifest.json"];
    let refused = firstfill(&room, &again).output().unwrap();
    let told = String::from_utf8(refused.stderr).unwrap();
    assert!(told.contains("is of `firstfill rank-changes`"), "{told}");
    let mut printed = firstfill(&room, &words);
    let printed = printed
        .args(["--format", "csv", "--no-charts"])
        .output()
        .unwrap();
    let csv = fs::read_to_string(folder.join("changes.csv")).unwrap();
    assert_eq!(String::from_utf8(printed.stdout).unwrap(), csv);
    assert!(
        !room
            .path()
            .join("output/rank-changes-tank-2/rank-changes.png")
            .exists()
    );
}

#[test]
fn the_screen_of_a_long_calendar_with_days_away_is_short() {
    let case = case_of(&TANK.replace("\"2..6\", every = 2", "\"1..22\", every = 1"));
    let worth = ranked(&case);
    assert!(worth.changes.len() > 20 && worth.absence.is_some());
    let mut page = firstfill::output::text::change_worth::page(&case, &worth);
    let written = Written {
        folder: "output/rank-changes".into(),
        renamed: false,
        replaced: false,
    };
    let files = ["changes.csv".into(), "rank-changes.png".into()];
    closing(
        &mut page,
        Path::new("output/rank-changes"),
        &written,
        &files,
    );
    let text = anstream::adapter::strip_str(&page.render(100)).to_string();
    let lines = text.lines().count();
    assert!(lines <= 44, "{lines} lines:\n{text}");
    nothing_overlaps(&figure_of(&case, &worth));
}

#[test]
fn a_plan_without_changes_is_refused_with_what_to_try() {
    let (before, after) = TANK.split_once("[changes]").unwrap();
    let (_, plants) = after.split_once("[plants]").unwrap();
    let room = room(&format!("{before}[plants]{plants}"));
    let output = firstfill(&room, &["rank-changes", "tank.toml"])
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(2));
    insta::assert_snapshot!(String::from_utf8(output.stderr).unwrap());
    assert!(!room.path().join("output").exists());
}

#[test]
fn a_plan_with_one_change_is_ranked_without_pairs() {
    let (before, after) = TANK.split_once("[changes]").unwrap();
    let (_, plants) = after.split_once("[plants]").unwrap();
    let one = "[changes]\nonly = { day = 9, share = \"50 %\" }\n";
    let room = room(&format!("{before}{one}[plants]{plants}"));
    let words = [
        "rank-changes",
        "tank.toml",
        "--members",
        "20",
        "--no-charts",
    ];
    let output = firstfill(&room, &words).output().unwrap();
    assert!(output.status.success(), "{output:?}");
    let text = String::from_utf8(output.stdout).unwrap();
    assert!(
        text.contains("One more") && !text.contains("Pairs"),
        "{text}"
    );
}
