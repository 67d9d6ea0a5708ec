//! How long the ranking of changes takes, without pairs and lists.
//!
//! `cargo bench --bench rank_changes` prints the table. Floor on two free cores: twenty changes on 256 members 6 s.
//! On a busy machine look at the fastest column.

use std::path::Path;

use firstfill::analysis::case::Case;
use firstfill::analysis::change_worth::each_alone;
use firstfill::analysis::change_worth::planned::planned;
use firstfill::analysis::compare::Common;
use firstfill::base::stop::Stop;
use firstfill::scenario;

/// How many changes the plan has.
const CHANGES: usize = 20;

fn main() {
    divan::main();
}

/// The shipped plan with early changes and one more, which makes twenty.
fn twenty() -> Case {
    let files = [
        ("scenarios/heavy-early-changes.toml", "heavy.toml"),
        ("scenarios/sixty.toml", "sixty.toml"),
    ];
    let kept = files.map(|(path, name)| {
        let text = std::fs::read_to_string(Path::new(path)).expect("it ships");
        let more = "late  = { days = \"22..56\", on = [\"Sun\"], share = \"40 %\" }";
        let text = text.replace(
            more,
            &format!("{more}\nmore = {{ day = 25, share = \"40 %\" }}"),
        );
        (name.into(), text)
    });
    let case = scenario::load_kept(kept.into()).expect("it is right").case;
    assert_eq!(planned(&case.input).len(), CHANGES);
    case
}

/// Twenty changes, each left out alone on 256 members.
#[divan::bench(sample_count = 5, sample_size = 1)]
fn twenty_changes(bencher: divan::Bencher<'_, '_>) {
    let case = twenty();
    let common = Common {
        members: 256,
        seed: 1,
    };
    bencher.bench_local(|| each_alone(divan::black_box(&case), common, &Stop::default()).unwrap());
}
