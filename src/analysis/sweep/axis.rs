//! What is varied: a value of the scenario, and all it is set to.

/// A value of the scenario that is varied.
#[derive(Debug, Clone, PartialEq)]
pub struct Axis {
    /// Its dotted path in the scenario.
    pub path: String,
    /// What it is in a few words; none where there are none.
    pub name: Option<String>,
    /// Its unit as written; empty for days and counts.
    pub unit: String,
    /// What it is set to, rising.
    pub settings: Vec<Setting>,
}

/// What a value is set to.
#[derive(Debug, Clone, PartialEq)]
pub struct Setting {
    /// The number, in the unit of its axis.
    pub number: f64,
    /// As it is written in a scenario, without quotes: `20 %`, `3`.
    pub words: String,
}

impl Axis {
    /// What it is in a few words, else its path.
    pub fn words(&self) -> &str {
        self.name.as_deref().unwrap_or(&self.path)
    }
    /// The last name of the path: `share` of `changes.early.share`.
    pub fn last_name(&self) -> &str {
        self.path.rsplit('.').next().unwrap_or(&self.path)
    }
}

/// Every point of a grid as places on its axes; the last axis runs fastest.
pub fn points(axes: &[Axis]) -> Vec<Vec<usize>> {
    axes.iter().fold(vec![Vec::new()], |points, axis| {
        let with_all = |point: Vec<usize>| {
            (0..axis.settings.len()).map(move |place| {
                let mut longer = point.clone();
                longer.push(place);
                longer
            })
        };
        points.into_iter().flat_map(with_all).collect()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_axis_runs_fastest() {
        let axis = |count: usize| Axis {
            path: "air.flow".into(),
            name: None,
            unit: String::new(),
            settings: vec![
                Setting {
                    number: 1.0,
                    words: "1".into()
                };
                count
            ],
        };
        let all = points(&[axis(2), axis(3)]);
        assert_eq!(all.len(), 6);
        assert_eq!(all[..4], [vec![0, 0], vec![0, 1], vec![0, 2], vec![1, 0]]);
        assert_eq!(axis(1).last_name(), "flow");
    }
}
