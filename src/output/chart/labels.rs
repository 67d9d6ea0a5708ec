//! Where words go: names moved apart as little as possible, words beside a mark where it is empty.

use super::rect::{Point, Rect};

/// Moves places apart so that neighbours are at least `gap` from each other and all lie between
/// `low` and `high`, with the least sum of squared moves; order is kept.
///
/// After taking off `rank · gap` the wanted places must only not fall, which is isotonic
/// regression; neighbours that do are pooled to their mean (pool adjacent violators). There must
/// be room: `gap · (count − 1) ≤ high − low`, else the gap is shrunk until there is.
pub fn spread(wanted: &[f64], gap: f64, low: f64, high: f64) -> Vec<f64> {
    let count = wanted.len();
    if count == 0 {
        return Vec::new();
    }
    let gap = gap.min((high - low) / (count.max(2) - 1) as f64);
    let mut order: Vec<usize> = (0..count).collect();
    order.sort_by(|&a, &b| wanted[a].total_cmp(&wanted[b]));
    let mut blocks: Vec<(f64, usize)> = Vec::new();
    for (rank, &i) in order.iter().enumerate() {
        blocks.push((wanted[i] - gap * rank as f64, 1));
        while let [.., (a, n), (b, m)] = blocks[..] {
            if a < b {
                break;
            }
            blocks.truncate(blocks.len() - 2);
            let mean = (a * n as f64 + b * m as f64) / (n + m) as f64;
            blocks.push((mean, n + m));
        }
    }
    let last = high - gap * (count - 1) as f64;
    let means = blocks
        .into_iter()
        .flat_map(|(mean, n)| std::iter::repeat_n(mean.clamp(low, last.max(low)), n));
    let mut placed = vec![0.0; count];
    for ((rank, &i), mean) in order.iter().enumerate().zip(means) {
        placed[i] = mean + gap * rank as f64;
    }
    placed
}

/// What words have to keep off.
#[derive(Debug, Clone, Default)]
pub struct Taken {
    /// Boxes of other words and of marks.
    pub boxes: Vec<Rect>,
    /// Curves: never crossed.
    pub curves: Vec<Vec<Point>>,
    /// Fine lines with what it costs to cross them: crossed when nothing better is found.
    pub fine: Vec<([Point; 2], f64)>,
}

/// Clear space around words, pixels.
const CLEAR: f64 = 3.0;

impl Taken {
    /// What a box would cost, none when something is under it; fine lines are a nuisance.
    pub fn cost(&self, space: &Rect) -> Option<f64> {
        let wide = space.grown(CLEAR);
        if self.boxes.iter().any(|b| b.overlaps(&wide)) {
            return None;
        }
        if self.curves.iter().any(|path| wide.is_on(path)) {
            return None;
        }
        let crossed = self
            .fine
            .iter()
            .filter(|(line, _)| space.is_crossed_by(line[0], line[1]));
        Some(crossed.map(|(_, cost)| cost).sum())
    }
    /// Whether a box has nothing under it.
    pub fn is_free(&self, space: &Rect) -> bool {
        self.cost(space).is_some()
    }
    /// The best box of a size for words about the point `mark`, inside `within`: near, and with
    /// nothing under it. None when there is no such place.
    pub fn beside(&self, mark: Point, size: (f64, f64), within: &Rect) -> Option<Rect> {
        let near = around(mark, size).into_iter();
        self.best(near.chain(raster(size, within)), mark, within)
    }
    fn best(
        &self,
        places: impl Iterator<Item = (f64, Rect)>,
        mark: Point,
        within: &Rect,
    ) -> Option<Rect> {
        let mut best: Option<(f64, Rect)> = None;
        for (dislike, space) in places.filter(|(_, space)| within.holds(space)) {
            let far = distance(mark, space.nearest(mark)) + dislike;
            if best.is_some_and(|(cost, _)| cost <= far) {
                continue;
            }
            if let Some(cost) = self.cost(&space).map(|c| c + far)
                && best.is_none_or(|(least, _)| cost < least)
            {
                best = Some((cost, space));
            }
        }
        best.map(|(_, space)| space)
    }
}

fn distance(a: Point, b: Point) -> f64 {
    ((a.0 - b.0) * (a.0 - b.0) + (a.1 - b.1) * (a.1 - b.1)).sqrt()
}

/// Boxes close to a mark, right side first, each with how much it is disliked.
fn around((x, y): Point, (width, height): (f64, f64)) -> Vec<(f64, Rect)> {
    let mut places = Vec::new();
    for away in [9.0, 14.0, 20.0, 28.0] {
        let sides = [
            (0.0, x + away, y - height / 2.0 - away / 2.0),
            (0.0, x + away, y - height / 2.0 + away / 2.0),
            (0.5, x + away, y - height / 2.0),
            (1.0, x + away * 0.7, y - height - away * 0.7),
            (1.0, x + away * 0.7, y + away * 0.7),
            (1.5, x - width - away, y - height / 2.0 - away / 2.0),
            (1.5, x - width - away, y - height / 2.0 + away / 2.0),
            (2.0, x - width - away * 0.7, y - height - away * 0.7),
            (2.0, x - width - away * 0.7, y + away * 0.7),
            (2.0, x - width / 2.0, y - height - away),
            (2.0, x - width / 2.0, y + away),
        ];
        places.extend(sides.map(|(dislike, left, top)| {
            (dislike, Rect::new(left, top, left + width, top + height))
        }));
    }
    places
}

/// Boxes all over a rectangle.
fn raster((width, height): (f64, f64), within: &Rect) -> impl Iterator<Item = (f64, Rect)> {
    let (left, top) = (within.left, within.top);
    let columns = ((within.width() - width) / 12.0).max(0.0) as u32;
    let rows = ((within.height() - height) / 6.0).max(0.0) as u32;
    (0..=columns).flat_map(move |column| {
        (0..=rows).map(move |row| {
            let (x, y) = (left + 12.0 * f64::from(column), top + 6.0 * f64::from(row));
            (8.0, Rect::new(x, y, x + width, y + height))
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn names_keep_their_gap_their_order_and_their_room(
            wanted in prop::collection::vec(0.0..200.0_f64, 1..9)
        ) {
            let placed = spread(&wanted, 17.0, 0.0, 200.0);
            let mut pairs: Vec<(f64, f64)> = wanted.iter().copied().zip(placed).collect();
            pairs.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
            for two in pairs.windows(2) {
                // 1e-9: means of a few numbers of size 200 are exact to some 1e-13
                prop_assert!(two[1].1 - two[0].1 >= 17.0 - 1e-9, "{:?}", two);
            }
            prop_assert!(pairs.iter().all(|p| (-1e-9..=200.0 + 1e-9).contains(&p.1)));
        }
    }

    #[test]
    fn names_that_have_room_stay_where_they_want_to_be() {
        assert_eq!(spread(&[50.0, 10.0], 17.0, 0.0, 100.0), [50.0, 10.0]);
    }

    #[test]
    fn two_names_for_one_place_part_evenly() {
        assert_eq!(spread(&[50.0, 50.0], 17.0, 0.0, 100.0), [41.5, 58.5]);
    }

    #[test]
    fn words_avoid_a_curve_and_other_words() {
        let within = Rect::new(0.0, 0.0, 300.0, 100.0);
        let mut taken = Taken {
            curves: vec![vec![(0.0, 50.0), (300.0, 50.0)]],
            ..Taken::default()
        };
        let first = taken.beside((100.0, 50.0), (80.0, 13.0), &within).unwrap();
        assert!(!first.is_on(&taken.curves[0]));
        taken.boxes.push(first);
        let second = taken.beside((100.0, 50.0), (80.0, 13.0), &within).unwrap();
        assert!(!second.overlaps(&first));
    }

    #[test]
    fn words_that_fit_nowhere_are_not_placed() {
        let within = Rect::new(0.0, 0.0, 60.0, 100.0);
        let place = Taken::default().beside((30.0, 50.0), (80.0, 13.0), &within);
        assert_eq!(place, None);
    }
}
