//! Inputs that cannot vary on their own: what one says hangs on the other, so that neither has a share of its own.

use crate::analysis::uncertain::Varied;
use crate::analysis::uncertain::moves::Place;

use super::family::Family;
use super::input::Input;

/// Two inputs, or more, that cannot vary on their own, and why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tied {
    /// Their names, in the order of the inputs.
    pub names: Vec<String>,
    /// Why.
    pub why: &'static str,
}

const ONE_PLACE: &str = "both set the same number, and the one that is read last holds";
const SQUEEZED: &str = "the beds come to more than the whole ground, and are squeezed to fit";
const ONE_SOIL: &str = "pore water follows from Kd and q0: of the three, two say all";

/// All inputs that cannot vary on their own, each time once.
pub fn tied(family: &Family, inputs: &[Input]) -> Vec<Tied> {
    let mut all: Vec<Tied> = Vec::new();
    let of_variants = family.variants().iter().flat_map(|variant| {
        let places = one_place(variant.uncertain().rows());
        let covers = squeezed(variant.uncertain().rows());
        places.into_iter().chain(covers)
    });
    for tied in of_variants.chain(one_soil(inputs)) {
        if !all.contains(&tied) {
            all.push(tied);
        }
    }
    all
}

/// Rows that go to the same place of the tank.
fn one_place(rows: &[Varied]) -> Vec<Tied> {
    let pairs = (0..rows.len()).flat_map(|a| (a + 1..rows.len()).map(move |b| (a, b)));
    let meet = |a: &Varied, b: &Varied| {
        let mut places = a.moves().iter().map(|to| to.place);
        places.any(|place| b.moves().iter().any(|to| to.place == place))
    };
    pairs
        .filter(|&(a, b)| meet(&rows[a], &rows[b]))
        .map(|(a, b)| Tied {
            names: vec![rows[a].name.clone(), rows[b].name.clone()],
            why: ONE_PLACE,
        })
        .collect()
}

/// Covers whose high points come to more than the whole bed.
fn squeezed(rows: &[Varied]) -> Option<Tied> {
    let is_cover = |row: &&Varied| {
        let mut places = row.moves().iter().map(|to| to.place);
        places.any(|place| matches!(place, Place::Cover(_)))
    };
    let covers: Vec<&Varied> = rows.iter().filter(is_cover).collect();
    let highest: f64 = covers.iter().map(|row| row.shape.points().1).sum();
    (covers.len() > 1 && highest > 1.0).then(|| Tied {
        names: covers.iter().map(|row| row.name.clone()).collect(),
        why: SQUEEZED,
    })
}

/// Pore water beside `Kd`, of which it is the other face.
fn one_soil(inputs: &[Input]) -> Option<Tied> {
    let faces = ["C_p0", "Kd"];
    let is_there = |name: &&str| inputs.iter().any(|input| input.name == **name);
    faces.iter().all(is_there).then(|| Tied {
        names: faces.map(String::from).to_vec(),
        why: ONE_SOIL,
    })
}
