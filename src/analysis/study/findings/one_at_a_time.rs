//! Each input alone from end to end: how far the output goes, and which way.

use super::index::{Index, Kind};

/// The outputs along the steps of each input.
#[derive(Debug, Clone)]
pub struct Steps {
    /// How many steps each input takes.
    steps: u64,
    inputs: Vec<Option<Along>>,
}

/// The outputs along the steps of one input; at its ends none where that run failed.
#[derive(Debug, Clone, Copy)]
struct Along {
    first: Option<f64>,
    last: Option<f64>,
    least: f64,
    most: f64,
}

impl Steps {
    /// Nothing yet.
    pub fn new(inputs: usize, steps: u64) -> Steps {
        Steps {
            steps,
            inputs: vec![None; inputs],
        }
    }

    /// Takes in a step of every input, in their order; none of runs that failed.
    pub fn take(&mut self, step: u64, outputs: impl Iterator<Item = Option<f64>>) {
        for (along, output) in self.inputs.iter_mut().zip(outputs) {
            let Some(output) = output else {
                continue;
            };
            let seen = along.get_or_insert(Along {
                first: None,
                last: None,
                least: output,
                most: output,
            });
            if step == 0 {
                seen.first = Some(output);
            }
            if step + 1 == self.steps {
                seen.last = Some(output);
            }
            seen.least = seen.least.min(output);
            seen.most = seen.most.max(output);
        }
    }

    /// Range, with its ends as interval, and rise of each input that came to both ends.
    pub fn indices(&self) -> Vec<Index> {
        let seen = self.inputs.iter().enumerate();
        let seen = seen.filter_map(|(at, along)| Some((at, along.as_ref()?)));
        let both = |(at, along): (usize, &Along)| {
            let ends = [along.least, along.most];
            let rise = along
                .last
                .zip(along.first)
                .map(|(last, first)| last - first);
            let range = Index::new(Kind::Range, at, along.most - along.least, Some(ends));
            let rise = rise.map(|rise| Index::new(Kind::Rise, at, rise, None));
            std::iter::once(range).chain(rise)
        };
        seen.flat_map(both).collect()
    }
}
