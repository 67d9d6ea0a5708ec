//! Each input alone from end to end: how far the output goes, and which way.

use super::index::{Index, Kind};

/// The outputs along the steps of each input.
#[derive(Debug, Clone)]
pub struct Steps {
    inputs: Vec<Option<Along>>,
}

/// The outputs along the steps of one input.
#[derive(Debug, Clone, Copy)]
struct Along {
    first: f64,
    last: f64,
    least: f64,
    most: f64,
}

impl Steps {
    /// Nothing yet.
    pub fn new(inputs: usize) -> Steps {
        Steps {
            inputs: vec![None; inputs],
        }
    }

    /// Takes in the next step of every input, in their order.
    pub fn take(&mut self, outputs: &[f64]) {
        for (along, &output) in self.inputs.iter_mut().zip(outputs) {
            let seen = along.get_or_insert(Along {
                first: output,
                last: output,
                least: output,
                most: output,
            });
            seen.last = output;
            seen.least = seen.least.min(output);
            seen.most = seen.most.max(output);
        }
    }

    /// Range, with its ends as interval, and rise of each input.
    pub fn indices(&self) -> Vec<Index> {
        let seen = self.inputs.iter().enumerate();
        let seen = seen.filter_map(|(at, along)| Some((at, along.as_ref()?)));
        let both = |(at, along): (usize, &Along)| {
            let ends = [along.least, along.most];
            [
                Index::new(Kind::Range, at, along.most - along.least, Some(ends)),
                Index::new(Kind::Rise, at, along.last - along.first, None),
            ]
        };
        seen.flat_map(both).collect()
    }
}
