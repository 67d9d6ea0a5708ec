//! What a run costs in water and gas, where prices are given.

/// Prices by name, and the waters that fillings are blended of.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Prices {
    /// Money per litre of a water, or per gram of gas (named `gas`).
    pub by_name: Vec<(String, f64)>,
    /// Share and name of each water of the first filling.
    pub fill: Vec<(f64, String)>,
    /// Share and name of each water of every change.
    pub refill: Vec<(f64, String)>,
}

/// One line of the bill.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// What it is.
    pub name: String,
    /// How much of it, litres or grams.
    pub amount: f64,
    /// `L` or `g`.
    pub unit: &'static str,
    /// What it costs; none where no price is given.
    pub money: Option<f64>,
}

/// What a run takes.
#[derive(Debug, Clone, Copy)]
pub struct Taken {
    /// Water of the first filling, L.
    pub litres_filled: f64,
    /// Water of the changes, L.
    pub litres_refilled: f64,
    /// Gas from the cylinder, g.
    pub gas_g: f64,
}

impl Prices {
    /// The bill of a run, waters by name and gas last; empty where no price is given at all.
    pub fn bill(&self, taken: &Taken) -> Vec<Item> {
        if self.by_name.is_empty() {
            return Vec::new();
        }
        let mut items: Vec<Item> = Vec::new();
        let parts = |blend: &[(f64, String)], litres: f64| -> Vec<(String, f64)> {
            blend
                .iter()
                .map(|(share, name)| (name.clone(), share * litres))
                .collect()
        };
        let waters = parts(&self.fill, taken.litres_filled)
            .into_iter()
            .chain(parts(&self.refill, taken.litres_refilled));
        for (name, litres) in waters {
            match items.iter_mut().find(|item| item.name == name) {
                Some(item) => item.amount += litres,
                None => items.push(Item {
                    name,
                    amount: litres,
                    unit: "L",
                    money: None,
                }),
            }
        }
        items.sort_by(|a, b| a.name.cmp(&b.name));
        if taken.gas_g > 0.0 {
            items.push(Item {
                name: "gas".into(),
                amount: taken.gas_g,
                unit: "g",
                money: None,
            });
        }
        for item in &mut items {
            let price = self.by_name.iter().find(|(name, _)| *name == item.name);
            item.money = price.map(|(_, each)| each * item.amount);
        }
        items
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bill_adds_fillings_and_changes_and_says_what_has_no_price() {
        let prices = Prices {
            by_name: vec![("gas".into(), 0.02), ("tap".into(), 0.004)],
            fill: vec![(1.0, "tap".into())],
            refill: vec![(0.75, "tap".into()), (0.25, "ro".into())],
        };
        let bill = prices.bill(&Taken {
            litres_filled: 50.0,
            litres_refilled: 200.0,
            gas_g: 100.0,
        });
        let words: Vec<(String, f64, Option<f64>)> = bill
            .into_iter()
            .map(|item| (item.name, item.amount, item.money))
            .collect();
        assert_eq!(
            words,
            [
                ("ro".into(), 50.0, None),
                ("tap".into(), 200.0, Some(0.8)),
                ("gas".into(), 100.0, Some(2.0))
            ]
        );
    }

    #[test]
    fn without_prices_there_is_no_bill() {
        let taken = Taken {
            litres_filled: 50.0,
            litres_refilled: 200.0,
            gas_g: 100.0,
        };
        assert!(Prices::default().bill(&taken).is_empty());
    }
}
