//! What a scenario means.

use firstfill::scenario;

const WHOLE: &str = include_str!("scenarios/whole.toml");

#[test]
fn the_whole_example_loads() {
    let loaded = scenario::read_text("whole.toml", WHOLE).unwrap_or_else(|p| panic!("{p}"));
    println!("{:#?}", loaded.case.facts);
    println!("{:#?}", loaded.case.notices);
    println!("{:#?}", loaded.case.left_out);
    println!("{:#?}", loaded.case.switches);
    for r in &loaded.case.resolved {
        println!("{:35} {:30} {:?}", r.path, r.value, r.set_by);
    }
    for e in &loaded.case.input.events {
        println!("{:?}", e);
    }
    println!("{:#?}", loaded.case.input.tank);
    println!("{:#?}", loaded.case.input.refill);
}
