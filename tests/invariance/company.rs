//! Runs in company: several threads at once.

use firstfill::engine::input::ModelInput;

use crate::support::drive::left_by;
use crate::support::random_tank;

#[test]
fn runs_on_several_threads_are_the_runs_of_one() {
    let inputs: Vec<ModelInput> = (0..48).map(|number| random_tank::tank(number, 3)).collect();
    let alone: Vec<_> = inputs.iter().map(left_by).collect();
    for threads in [2, 3, 8] {
        let share = inputs.len().div_ceil(threads);
        let together: Vec<_> = std::thread::scope(|scope| {
            let work: Vec<_> = inputs
                .chunks(share)
                .map(|inputs| scope.spawn(|| inputs.iter().map(left_by).collect::<Vec<_>>()))
                .collect();
            work.into_iter()
                .flat_map(|thread| thread.join().unwrap())
                .collect()
        });
        assert!(together == alone, "{threads} threads");
    }
}
