//! What studies find, through the door that takes rows: against tables of a reference library, exact values, and
//! rows made by hand.

mod support;

use std::f64::consts::PI;

use firstfill::analysis::sensitivity::saltelli::Design;
use firstfill::analysis::study::findings::index::{Index, Kind};
use firstfill::analysis::study::findings::judged::{Standing, judged};
use firstfill::analysis::study::findings::lead::{Footing, Lead};
use firstfill::analysis::study::findings::{Findings, Gathering};
use firstfill::analysis::study::group::Group;
use firstfill::analysis::study::input::Spread;
use firstfill::analysis::study::method::{By, Method};
use firstfill::analysis::study::{Row, Study};
use firstfill::base::sobol;
use support::check::Check;
use support::study::{findings, row, study};
use support::table::Table;

/// A function with known shares.
type Function = fn(&[f64]) -> f64;

/// A milestone without a day in it, for functions of any value.
const ANY: &str = "tan_peak_mg_n_per_l";

/// Ishigami & Homma 1990, with a = 7 and b = 0.1; inputs from −π to π.
fn ishigami(x: &[f64]) -> f64 {
    let [a, b, c] = [0, 1, 2].map(|at| PI * (2.0 * x[at] - 1.0));
    a.sin() + 7.0 * b.sin().powi(2) + 0.1 * c.powi(4) * a.sin()
}

/// The constants of Sobol's function g (Saltelli & Sobol' 1995).
const A: [f64; 8] = [0.0, 1.0, 4.5, 9.0, 99.0, 99.0, 99.0, 99.0];

fn g8(x: &[f64]) -> f64 {
    let factor = |(x, a): (&f64, f64)| ((4.0 * x - 2.0).abs() + a) / (1.0 + a);
    x.iter().zip(A).map(factor).product()
}

fn variance(by: By, second_order: bool) -> Method {
    Method::Variance { second_order, by }
}

fn only(findings: &Findings, kind: Kind) -> Vec<Index> {
    findings.found[0].of(kind).copied().collect()
}

/// Rows of unshifted Sobol' points, as the library takes them.
fn unshifted(study: &Study, of: fn(&[f64]) -> f64) -> Findings {
    let inputs = study.inputs.len();
    let design = Design {
        inputs,
        second_order: false,
    };
    let mut gathering = Gathering::new(study);
    for number in 0..study.rows() {
        let (point, place) = (
            number / design.rows() as u64,
            number as usize % design.rows(),
        );
        let at = |dimension| f64::from(sobol::digits(point as u32, dimension)) / 4_294_967_296.0;
        let places = (0..inputs).map(|input| design.coordinate(design.row(place), input, at));
        gathering.take(&row(number, places.collect(), of));
    }
    gathering.findings()
}

#[test]
fn shares_of_streamed_rows_are_those_of_a_reference_library() {
    let table = Table::read("sobol_indices");
    let (names, orders) = (table.words("function"), table.words("second_order"));
    let numbers = table.numbers(["n", "var", "s1_salib", "st_salib"]);
    let mut check = Check::of("Shares of variance of streamed rows, 1,024 points");
    let functions: [(&str, Function, usize); 2] = [("ishigami", ishigami, 3), ("g8", g8, 8)];
    for (name, of, inputs) in functions {
        let study = study(inputs, variance(By::Input, false), 1024, ANY);
        let found = unshifted(&study, of);
        let [first, total] = [Kind::First, Kind::Total].map(|kind| only(&found, kind));
        for (at, [points, input, s1, st]) in numbers.iter().copied().enumerate() {
            if (names[at], points, orders[at]) == (name, 1024.0, "no") {
                let input = input as usize - 1;
                check.see(first[input].value - s1, (name, input, "first"));
                check.see(total[input].value - st, (name, input, "total"));
            }
        }
    }
    check.holds(2 * 11);
}

#[test]
fn shares_of_groups_come_to_the_exact_ones() {
    let mut check = Check::of("Shares of variance by group, 4,096 points, exact values");
    // x2 adds up with x1 and x3 together, so first and total of a group are the same
    let mut three = study(3, variance(By::Group, false), 4096, ANY);
    three.inputs[1].group = Group::Gas;
    let found = findings(&three, ishigami);
    let exact = [0.557_588_86, 0.442_411_14];
    // of a product: V = Π(1 + V_i) − 1 with V_i = 1/(3(1 + a_i)²), of a group that of its factors
    let mut eight = study(8, variance(By::Group, false), 4096, ANY);
    let groups = [0, 0, 1, 1, 2, 2, 2, 2].map(|at| [Group::Plants, Group::Soil, Group::Water][at]);
    for (input, group) in eight.inputs.iter_mut().zip(groups) {
        input.group = group;
    }
    let found_of_eight = findings(&eight, g8);
    let one_and = |of: Option<Group>| -> f64 {
        let factors = groups
            .iter()
            .zip(A)
            .filter(|(group, _)| of.is_none_or(|of| of == **group));
        factors
            .map(|(_, a)| 1.0 + 1.0 / (3.0 * (1.0 + a) * (1.0 + a)))
            .product()
    };
    let all = one_and(None);
    for (at, share) in exact.into_iter().enumerate() {
        check.see(
            only(&found, Kind::First)[at].value - share,
            ("ishigami", at, "first"),
        );
        check.see(
            only(&found, Kind::Total)[at].value - share,
            ("ishigami", at, "total"),
        );
    }
    for (at, group) in [Group::Soil, Group::Plants, Group::Water]
        .into_iter()
        .enumerate()
    {
        let own = one_and(Some(group));
        let (first, total) = ((own - 1.0) / (all - 1.0), (all - all / own) / (all - 1.0));
        check.see(
            only(&found_of_eight, Kind::First)[at].value - first,
            ("g8", at, "first"),
        );
        check.see(
            only(&found_of_eight, Kind::Total)[at].value - total,
            ("g8", at, "total"),
        );
    }
    check.holds(4 + 6);
    let names: Vec<&str> = found
        .factors
        .iter()
        .map(|factor| factor.name.as_str())
        .collect();
    assert_eq!(names, ["x1", "x2", "x3", "soil", "gas"]);
    assert_eq!(
        only(&found, Kind::Total)[0].factor,
        3,
        "indices name the groups"
    );
    assert_eq!(three.rows_per_member(), 4, "two clouds and a row per group");
}

#[test]
fn pairs_and_what_inputs_do_with_others_come_to_the_exact_ones() {
    let study = study(3, variance(By::Input, true), 4096, ANY);
    let found = findings(&study, |x| x[0] * x[1] + x[2]);
    let mut check = Check::of("Shares of pairs of streamed rows, product and sum");
    for (index, exact) in only(&found, Kind::Second).iter().zip([1.0, 0.0, 0.0]) {
        check.see(index.value - exact / 19.0, (index.factor, index.other));
        let [low, high] = index.interval.unwrap();
        assert!(low <= exact / 19.0 && exact / 19.0 <= high, "{index:?}");
    }
    for (index, exact) in only(&found, Kind::Together).iter().zip([1.0, 1.0, 0.0]) {
        check.see(index.value - exact / 19.0, index.factor);
    }
    check.holds(6);
    let judged = judged(&found.found[0]).unwrap();
    assert_eq!(judged.strongest(), 2);
    let together: Vec<usize> = judged.together.iter().map(|(factor, _)| *factor).collect();
    assert!(
        together.len() == 2 && !together.contains(&2),
        "{together:?}"
    );
    assert_eq!(
        (judged.pairs.len(), judged.pairs[0].0, judged.pairs[0].1),
        (1, 0, 1)
    );
}

#[test]
fn effects_of_streamed_rows_are_those_of_a_reference_library() {
    let design = Table::read("morris_design_ishigami_levels");
    let rows = design.numbers(["l1", "l2", "l3", "y"]);
    let study = study(3, Method::Trajectories { levels: 4 }, rows.len() / 4, ANY);
    let mut gathering = Gathering::new(&study);
    for (number, [levels @ .., _]) in rows.into_iter().enumerate() {
        let places = levels.map(|level| level / 3.0).to_vec();
        gathering.take(&row(number as u64, places, ishigami));
    }
    let found = gathering.findings();
    let measures = Table::read("morris_measures");
    let expected = measures.numbers(["mu_salib", "mu_star_salib", "sigma_salib"]);
    let mut check = Check::of("Measures of elementary effects of streamed rows");
    for (place, kind) in [Kind::Mu, Kind::MuStar, Kind::Sigma]
        .into_iter()
        .enumerate()
    {
        let indices = only(&found, kind);
        assert_eq!(indices.len(), 3);
        for (index, expected) in indices.iter().zip(&expected) {
            check.see(index.value - expected[place], (kind, index.factor));
        }
    }
    check.holds(9);
    let exact = Table::read("morris_measures").numbers(["var", "mu_star_exact"]);
    for (index, [_, exact]) in only(&found, Kind::MuStar).iter().zip(exact) {
        let [low, high] = index.interval.unwrap();
        assert!(low <= exact && exact <= high, "{index:?} {exact}");
    }
}

#[test]
fn ranks_and_distances_of_points_see_what_each_can_see() {
    let study = study(4, Method::Points, 4096, ANY);
    let found = findings(&study, ishigami);
    let [ranks, pawn] = [Kind::Rank, Kind::Pawn].map(|kind| only(&found, kind));
    let chance = only(&found, Kind::PawnByChance)[0].value;
    assert!(ranks[0].interval.unwrap()[0] > 0.3, "{:?}", ranks[0]);
    let [low, high] = ranks[3].interval.unwrap();
    assert!(
        low < 0.0 && high > 0.0 && high - low < 0.1,
        "{:?}",
        ranks[3]
    );
    assert!(pawn[1].value > 3.0 * chance && pawn[3].value < 1.5 * chance);
    let judged = judged(&found.found[0]).unwrap();
    assert_eq!(judged.leading, Kind::Rank);
    assert_eq!(judged.all(Standing::Matters), [0]);
    assert!(judged.all(Standing::Bends).contains(&1), "{judged:?}");
    assert_eq!(judged.all(Standing::Ignorable), [3]);
}

#[test]
fn ready_days_beyond_the_run_are_counted_and_turn_the_verdict_to_ranks() {
    // day 20 to 100 over the first input; a run of 56 days does not see the second half of them
    let late = |span: f64| move |x: &[f64]| (20.0 + span * x[0] + x[1]).floor().min(57.0);
    let study = study(3, variance(By::Input, false), 512, "ready_day");
    let found = findings(&study, late(80.0));
    let share = found.found[0].share_beyond();
    // 36.5 of 80 days lie within the run
    assert!((share - (1.0 - 36.5 / 80.0)).abs() < 0.01, "{share}");
    assert_eq!(judged(&found.found[0]).unwrap().leading, Kind::Rank);
    assert_eq!(only(&found, Kind::Total).len(), 3, "shares are still told");
    let early = findings(&study, late(40.0));
    assert_eq!(early.found[0].lead().unwrap().footing, Footing::Own);
    assert_eq!(judged(&early.found[0]).unwrap().leading, Kind::Total);
}

#[test]
fn of_late_tanks_that_leads_which_there_is() {
    let late = |x: &[f64]| (20.0 + 80.0 * x[0] + x[1]).floor().min(57.0);
    let lead = |inputs: usize, method: Method, members: usize| {
        let found = findings(&study(inputs, method, members, "ready_day"), late);
        assert!(found.found[0].is_late());
        let judged = judged(&found.found[0]).unwrap();
        let lead = found.found[0].lead().unwrap();
        assert_eq!((judged.leading, judged.footing), (lead.kind, lead.footing));
        (lead, judged.all(Standing::Matters))
    };
    let with = |kind, footing| Lead { kind, footing };
    let shares = variance(By::Input, false);
    let (ranks, _) = lead(3, shares, 512);
    assert_eq!(ranks, with(Kind::Rank, Footing::Ranks));
    // fewer points than inputs have no ranks, fewer than two slots no distances
    let (distances, matter) = lead(130, variance(By::Group, false), 128);
    assert_eq!(distances, with(Kind::Pawn, Footing::Distances));
    assert!(
        matter.is_empty(),
        "so few points go along with each other: {matter:?}"
    );
    let (care, matter) = lead(60, shares, 20);
    assert_eq!(care, with(Kind::Total, Footing::Care));
    assert!(matter.is_empty(), "{matter:?}");
    let (care, _) = lead(3, Method::OneAtATime, 9);
    assert_eq!(care, with(Kind::Range, Footing::Care));
    let (ranks, _) = lead(3, Method::Points, 512);
    assert_eq!(ranks, with(Kind::Rank, Footing::Ranks));
}

#[test]
fn by_ranks_matters_what_moves_the_output_far_and_not_what_moves_it_regularly() {
    let study = study(4, Method::Points, 400, ANY);
    // the second input moves it by 3 of 100, and always the same way; the third by more than the first, less regularly
    let regular = |x: &[f64]| 10.0 * x[0] + 0.3 * x[1];
    let found = findings(&study, regular);
    let rank = only(&found, Kind::Rank)[1];
    assert!(rank.value > 0.9, "{rank:?}");
    let told = judged(&found.found[0]).unwrap();
    assert_eq!(told.all(Standing::Matters), [0]);
    assert_eq!(told.all(Standing::Regular), [1]);
    // of two that matter the one that moves it further stands first
    let bent = |x: &[f64]| 5.0 * x[0] + 8.0 * (x[1] - 0.3).abs();
    let told = judged(&findings(&study, bent).found[0]).unwrap();
    let matter = told.all(Standing::Matters);
    let distance = |factor| {
        let found = findings(&study, bent);
        found.found[0].at(Kind::Pawn, factor).unwrap().value
    };
    assert!(
        matter
            .windows(2)
            .all(|two| distance(two[0]) >= distance(two[1])),
        "{matter:?}"
    );
    // without distances nothing is said for sure
    let mut without = found.found[0].clone();
    without
        .indices
        .retain(|index| !matches!(index.kind, Kind::Pawn | Kind::PawnByChance));
    let told = judged(&without).unwrap();
    assert!(told.all(Standing::Matters).is_empty(), "{told:?}");
}

/// One run in a few hundred goes far up where both inputs are high; elsewhere it rises with the first.
fn now_and_then(x: &[f64]) -> f64 {
    let spike = if x[0] > 0.95 && x[1] > 0.95 {
        60.0
    } else {
        0.0
    };
    x[0] + spike
}

#[test]
fn where_a_few_runs_carry_the_variance_nothing_is_ranked_by_its_shares() {
    let study = study(3, variance(By::Input, false), 2048, ANY);
    let found = &findings(&study, now_and_then).found[0];
    let tail = found.carried_by_few().unwrap();
    assert!(
        tail.share > 0.9 && (tail.runs, tail.of) == (20, 2048),
        "{tail:?}"
    );
    let judged = judged(found).unwrap();
    assert_eq!((judged.leading, judged.strongest()), (Kind::Rank, 0));
    // without ranks, as of few kept rows, nothing is said for sure
    let mut without = found.clone();
    let is_of_ranks = |kind| matches!(kind, Kind::Rank | Kind::Pawn | Kind::PawnByChance);
    without.indices.retain(|index| !is_of_ranks(index.kind));
    let judged = firstfill::analysis::study::findings::judged::judged(&without).unwrap();
    assert_eq!(judged.leading, Kind::Total);
    let unsure = judged
        .order
        .iter()
        .all(|(_, standing)| *standing == Standing::Between);
    assert!(unsure, "{judged:?}");
    // the same without the spike is sure, and its shares lead
    let calm = &findings(&study, |x| x[0] + 0.1 * x[1]).found[0];
    assert!(calm.carried_by_few().is_none());
    assert_eq!(calm.lead().unwrap().footing, Footing::Own);
    let told = calm.tail.unwrap().share;
    assert!(told < 0.05, "{told}");
}

#[test]
fn effects_of_a_few_trajectories_without_an_interval_are_not_sure() {
    let study = study(3, Method::Trajectories { levels: 4 }, 8, ANY);
    let mut found = findings(&study, |x| 2.0 * x[0] + x[1]).found.swap_remove(0);
    assert_eq!(judged(&found).unwrap().all(Standing::Matters), [0, 1]);
    for index in &mut found.indices {
        index.interval = None;
    }
    assert!(judged(&found).unwrap().all(Standing::Matters).is_empty());
}

#[test]
fn what_the_ready_tanks_have_in_common_is_found_with_its_quarters() {
    let mut study = study(3, Method::Latin, 0, "ready_day");
    study.method = Method::Points;
    study.members = 4096;
    study.inputs[1].spread = Spread::Even {
        low: 10.0,
        high: 20.0,
    };
    // ready by day 21 where the second input lies below 14
    let found = findings(&study, |x| if x[1] < 0.4 { 21.0 } else { 40.0 });
    let regions = found.regions.unwrap();
    assert_eq!(
        (regions.by_day, regions.rows[0] + regions.rows[1]),
        (21, 4096)
    );
    assert!((regions.rows[0] as f64 / 4096.0 - 0.4).abs() < 0.001);
    let clear: Vec<usize> = regions.clear().map(|apart| apart.input).collect();
    assert_eq!(clear, [1]);
    let region = regions.inputs[0].region;
    assert_eq!(region.apart, 1.0);
    // halves of 10 to 14, and of 14 to 20
    assert!((region.meeting[1] - 12.0).abs() < 0.01 && (region.others[1] - 17.0).abs() < 0.01);
    let of_ready = &regions.inputs[0].shares[0];
    assert!((of_ready.iter().sum::<f64>() - 1.0).abs() < 1e-12);
    assert_eq!(of_ready[8..], [0.0; 8]);
}

#[test]
fn a_member_with_a_failed_row_is_left_out_and_counted() {
    let study = study(3, variance(By::Input, false), 64, ANY);
    let mut whole = Gathering::new(&study);
    let mut broken = Gathering::new(&study);
    let per_member = study.rows_per_member() as u64;
    for number in 0..study.rows() {
        let good = row(number, study.places(number), ishigami);
        let is_last = number / per_member == 63;
        let failed = Row {
            outputs: None,
            ..good.clone()
        };
        broken.take(if number == study.rows() - 2 {
            &failed
        } else {
            &good
        });
        if !is_last {
            whole.take(&good);
        }
    }
    let (whole, broken) = (whole.findings(), broken.findings());
    let counts = broken.counts;
    assert_eq!(
        (counts.rows, counts.failed, counts.members, counts.left_out),
        (320, 1, 64, 1)
    );
    assert_eq!(only(&broken, Kind::Total), only(&whole, Kind::Total));
}

#[test]
fn intervals_narrow_as_a_study_grows_and_a_study_that_was_stopped_can_be_asked() {
    let study = study(3, variance(By::Input, false), 2048, ANY);
    let mut gathering = Gathering::new(&study);
    assert!(gathering.findings().found[0].sizes.is_empty());
    let per_member = study.rows_per_member() as u64;
    for number in 0..1000 * per_member + 2 {
        gathering.take(&row(number, study.places(number), ishigami));
    }
    let found = gathering.findings();
    let sizes = &found.found[0].sizes;
    let members: Vec<u64> = sizes.iter().map(|size| size.members).collect();
    assert_eq!(members, [16, 32, 64, 128, 256, 512, 1000]);
    // to the root of the number, with some room for chance
    assert!(sizes[6].widest < 0.3 * sizes[1].widest, "{sizes:?}");
    let widest = only(&found, Kind::Total)
        .iter()
        .map(Index::width)
        .fold(0.0, f64::max);
    assert_eq!(sizes[6].widest, widest);
}

#[test]
fn one_at_a_time_tells_how_far_and_which_way() {
    let study = study(3, Method::OneAtATime, 5, ANY);
    let mut gathering = Gathering::new(&study);
    for number in 0..15_u64 {
        let (step, input) = (number / 3, number as usize % 3);
        let mut places = vec![0.5; 3];
        places[input] = step as f64 / 4.0;
        // rises by 2, bends by 1, does nothing
        gathering.take(&row(number, places, |x| {
            2.0 * x[0] + 4.0 * (x[1] - 0.5) * (x[1] - 0.5)
        }));
    }
    let found = gathering.findings();
    let [range, rise] = [Kind::Range, Kind::Rise].map(|kind| only(&found, kind));
    assert_eq!(
        range.iter().map(|index| index.value).collect::<Vec<_>>(),
        [2.0, 1.0, 0.0]
    );
    assert_eq!(range[1].interval, Some([1.0, 2.0]));
    assert_eq!(
        rise.iter().map(|index| index.value).collect::<Vec<_>>(),
        [2.0, 0.0, 0.0]
    );
    assert!(only(&found, Kind::Rank).is_empty());
    assert_eq!(judged(&found.found[0]).unwrap().strongest(), 0);
}

#[test]
fn a_failed_step_takes_nothing_from_the_other_inputs() {
    let study = study(2, Method::OneAtATime, 3, ANY);
    let mut gathering = Gathering::new(&study);
    for number in 0..6_u64 {
        let mut run = row(number, study.places(number), |x| 2.0 * x[0] + x[1]);
        if number == 0 {
            run.outputs = None; // the first input at its lower end
        }
        gathering.take(&run);
    }
    let found = gathering.findings();
    let told = |kind| -> Vec<(usize, f64)> {
        let all = only(&found, kind).into_iter();
        all.map(|index| (index.factor, index.value)).collect()
    };
    assert_eq!(told(Kind::Range), [(0, 1.0), (1, 1.0)]);
    assert_eq!(
        told(Kind::Rise),
        [(1, 1.0)],
        "the first came to one end only"
    );
    assert_eq!((found.counts.failed, found.counts.left_out), (1, 0));
}

#[test]
fn what_never_changes_has_nothing_to_tell() {
    for method in [
        variance(By::Input, true),
        Method::Trajectories { levels: 4 },
        Method::Points,
    ] {
        let found = findings(&study(3, method, 32, ANY), |_| 5.0);
        let told = judged(&found.found[0]);
        let largest = found.found[0].indices.iter().map(|index| index.value.abs());
        assert_eq!(largest.fold(0.0, f64::max), 0.0, "{method:?}");
        assert!(
            told.is_none_or(|told| told.all(Standing::Matters).is_empty()),
            "{method:?}"
        );
    }
}
