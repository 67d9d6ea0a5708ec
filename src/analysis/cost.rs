//! What a run costs in water and gas, where prices are given.

/// Prices by name, and the waters that fillings are blended of.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Prices {
    /// Money per litre of a water, per gram of gas (named `gas`), or per litre of water that a dechlorinator
    /// (so named) makes ready.
    pub by_name: Vec<(String, f64)>,
    /// Share and name of each water of the first filling.
    pub fill: Vec<(f64, String)>,
    /// Share and name of each water of every change.
    pub refill: Vec<(f64, String)>,
    /// Whether a dechlorinator goes into the first filling, and into every change.
    pub treated: [bool; 2],
}

/// Name of the price of gas.
pub const GAS: &str = "gas";
/// Name of the price of what makes chlorine harmless.
pub const DECHLORINATOR: &str = "dechlorinator";

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
    /// The bill of a run: waters by name, gas, and a dechlorinator that has a price; empty where no price is
    /// given at all.
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
                name: GAS.into(),
                amount: taken.gas_g,
                unit: "g",
                money: None,
            });
        }
        let treated_l = self.treated_l(taken);
        if treated_l > 0.0 && self.of(DECHLORINATOR).is_some() {
            items.push(Item {
                name: DECHLORINATOR.into(),
                amount: treated_l,
                unit: "L",
                money: None,
            });
        }
        for item in &mut items {
            item.money = self.of(&item.name).map(|each| each * item.amount);
        }
        items
    }
    /// What a bill comes to, without what has no price; none where no price is given at all.
    pub fn total(&self, taken: &Taken) -> Option<f64> {
        let bill = self.bill(taken);
        (!bill.is_empty()).then(|| bill.iter().filter_map(|item| item.money).sum())
    }
    /// Names of what is taken and has no price.
    pub fn without_price(&self, taken: &Taken) -> Vec<String> {
        let bill = self.bill(taken).into_iter();
        bill.filter(|item| item.money.is_none())
            .map(|item| item.name)
            .collect()
    }
    fn of(&self, name: &str) -> Option<f64> {
        let mut prices = self.by_name.iter();
        prices
            .find(|(known, _)| known == name)
            .map(|(_, each)| *each)
    }
    fn treated_l(&self, taken: &Taken) -> f64 {
        let [fill, refill] = self.treated;
        f64::from(u8::from(fill)) * taken.litres_filled
            + f64::from(u8::from(refill)) * taken.litres_refilled
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
            treated: [true, true],
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
    fn a_dechlorinator_is_paid_for_by_the_litre_it_makes_ready() {
        let prices = Prices {
            by_name: vec![(DECHLORINATOR.into(), 0.01)],
            fill: vec![(1.0, "tap".into())],
            refill: vec![(1.0, "tap".into())],
            treated: [false, true],
        };
        let taken = Taken {
            litres_filled: 50.0,
            litres_refilled: 200.0,
            gas_g: 0.0,
        };
        assert_eq!(prices.total(&taken), Some(2.0));
        assert_eq!(prices.without_price(&taken), ["tap"]);
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
